// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/frame.h"

#include <glib/gi18n.h>

#define MM SW_POINTS_PER_MM
#define LEFT (20 * MM)
#define EDGE (10 * MM)
#define PAD (4 * MM) /* between the frame and what stands in it */
#define CELL_PAD 3.0
#define TITLE_SIZE 1.25 /* of the normal text: a title that fits one line */
#define FIELDS 7

/* Title and fields of the block at the foot, laid out. */
typedef struct {
  PangoLayout *title; /* owned */
  double title_height, field_height;
} Foot;

static void
foot_init (Foot *foot, const SwPen *pen, double width)
{
  SwWriting writing = { .size = pen->style->text_normal * TITLE_SIZE, .bold = TRUE };
  const char *title = pen->solution->design->title;
  double room = width - 2 * CELL_PAD;

  foot->title = sw_pen_layout (pen, &writing, title);
  if (sw_layout_width (foot->title) > room) { /* long: small, on as many lines as it takes */
    g_object_unref (foot->title);
    writing.size = pen->style->text_small;
    writing.width = room;
    foot->title = sw_pen_layout (pen, &writing, title);
  }
  foot->title_height = sw_layout_height (foot->title) + 2 * CELL_PAD;
  foot->field_height = (pen->style->text_small + pen->style->text_normal) * 1.25 + 2 * CELL_PAD;
}

static SwBox
frame_box (double width, double height)
{
  return (SwBox){ LEFT, EDGE, width - LEFT - EDGE, height - 2 * EDGE };
}

SwBox
sw_frame_area (const SwPen *pen, double width, double height)
{
  SwBox box = frame_box (width, height);
  Foot foot;

  foot_init (&foot, pen, box.width);
  g_object_unref (foot.title);
  return (SwBox){ box.x + PAD,
                  box.y + PAD,
                  box.width - 2 * PAD,
                  box.height - foot.title_height - foot.field_height - 2 * PAD };
}

typedef struct {
  const char *caption, *value;
  double share; /* of the frame's width */
} Field;

static void
draw_field (const SwPen *pen, const SwBox *box, const Field *field)
{
  double room = box->width - 2 * CELL_PAD;
  double x = box->x + CELL_PAD;
  SwWriting small = { .size = pen->style->text_small, .width = room, .one_line = TRUE };
  SwWriting normal = { .size = pen->style->text_normal, .width = room, .one_line = TRUE };
  g_autoptr (PangoLayout) caption = sw_pen_layout (pen, &small, field->caption);
  g_autoptr (PangoLayout) value = sw_pen_layout (pen, &normal, field->value);

  sw_pen_show (pen, SW_INK_SECOND, x, box->y + CELL_PAD * 0.6, caption);
  sw_pen_show (pen,
               SW_INK_MAIN,
               x,
               box->y + box->height - CELL_PAD * 0.6 - sw_layout_height (value),
               value);
}

static void
draw_fields (const SwPen *pen, const SwBox *row, const SwFrame *frame)
{
  gboolean metric = pen->solution->design->units == SW_UNITS_METRIC;
  g_autofree char *number =
    g_strdup_printf (sw_pen_word (pen, N_ ("%d of %d")), frame->number, frame->count);
  g_autofree char *lift = sw_pen_number_or_dash (pen, pen->solution->lift_kg, SW_QUANTITY_MASS);
  const Field fields[FIELDS] = {
    { sw_pen_word (pen, N_ ("Sheet")), frame->title, 0.26 },
    { sw_pen_word (pen, N_ ("Scale")), frame->scale == NULL ? "–" : frame->scale, 0.09 },
    { sw_pen_word (pen, N_ ("Units")),
      metric ? sw_pen_word (pen, N_ ("metric")) : sw_pen_word (pen, N_ ("feet, inches")),
      0.14 },
    { sw_pen_word (pen, N_ ("To lift")), lift, 0.11 },
    { sw_pen_word (pen, N_ ("Date")), "", 0.15 }, /* by hand: nothing here reads a clock */
    { sw_pen_word (pen, N_ ("Drawn by")), "Spirewright", 0.13 },
    { sw_pen_word (pen, N_ ("Sheet number")), number, 0.12 },
  };
  SwBox box = *row;

  for (guint i = 0; i < FIELDS; i++) {
    box.width = row->width * fields[i].share;
    if (i > 0) {
      cairo_move_to (pen->cr, box.x, box.y);
      cairo_rel_line_to (pen->cr, 0, box.height);
    }
    sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thin);
    draw_field (pen, &box, &fields[i]);
    box.x += box.width;
  }
}

void
sw_frame_draw (const SwPen *pen, const SwFrame *frame)
{
  SwBox box = frame_box (frame->width, frame->height);
  SwBox row = box;
  Foot foot;

  foot_init (&foot, pen, box.width);
  row.height = foot.field_height;
  row.y = box.y + box.height - row.height;
  sw_pen_rule (pen, row.x, row.y, row.width);
  sw_pen_rule (pen, row.x, row.y - foot.title_height, row.width);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thin);
  cairo_rectangle (pen->cr, box.x, box.y, box.width, box.height);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thick);
  sw_pen_show (pen,
               SW_INK_MAIN,
               box.x + CELL_PAD,
               row.y - foot.title_height + CELL_PAD,
               foot.title);
  g_object_unref (foot.title);
  draw_fields (pen, &row, frame);
}

/* Metric: ISO 5455 (1, 2, 5 times a power of ten) and the steps between them that stand on
 * metric scale rulers. Inches: those of an architect's scale ruler, 3" = 1'-0" and smaller. */
static const int metric_scales[] = { 1,   2,   5,   10,  20,  25,   50,  75,
                                     100, 125, 200, 250, 500, 1000, 2000 };
static const int inch_scales[] = { 1, 2, 4, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 384, 768 };

double
sw_frame_scale (SwUnits units, double most_scale, char label[16])
{
  const int *scales = units == SW_UNITS_METRIC ? metric_scales : inch_scales;
  guint n =
    units == SW_UNITS_METRIC ? G_N_ELEMENTS (metric_scales) : G_N_ELEMENTS (inch_scales);
  double full = MM * 1000;
  guint i = 0;

  while (i + 1 < n && full / scales[i] > most_scale)
    i++;
  g_snprintf (label, 16, "1:%d", scales[i]);
  return full / scales[i];
}
