// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/flow.h"

#include <glib/gi18n.h>

#define GAP 5.0       /* points between paragraphs */
#define TICK_SIDE 8.5 /* the box to tick */
#define INDENT 18.0   /* text beside a tick box or a sign */
#define PAD 6.0       /* inside the frame of a caution */

typedef struct {
  const SwBlock *block;
  int page;
  double y;
} Place;

struct SwFlow {
  const SwPen *pen; /* borrowed */
  double width, height;
  GPtrArray *blocks; /* owned: SwBlock */
  GPtrArray *heads;  /* borrowed: SwBlock or NULL, one a block */
  GArray *places;    /* owned: Place; empty until broken into pages */
  double used;       /* height of the first page in use */
  int pages;
};

static void
block_free (gpointer data)
{
  SwBlock *block = data;

  if (block->free != NULL)
    block->free (block->data);
  g_free (block);
}

SwFlow *
sw_flow_new (const SwPen *pen, double width, double height)
{
  SwFlow *flow = g_new0 (SwFlow, 1);

  flow->pen = pen;
  flow->width = width;
  flow->height = height;
  flow->blocks = g_ptr_array_new_with_free_func (block_free);
  flow->heads = g_ptr_array_new ();
  flow->places = g_array_new (FALSE, FALSE, sizeof (Place));
  return flow;
}

void
sw_flow_free (SwFlow *flow)
{
  g_ptr_array_unref (flow->blocks);
  g_ptr_array_unref (flow->heads);
  g_array_unref (flow->places);
  g_free (flow);
}

const SwPen *
sw_flow_pen (const SwFlow *flow)
{
  return flow->pen;
}

double
sw_flow_width (const SwFlow *flow)
{
  return flow->width;
}

const SwBlock *
sw_flow_add (SwFlow *flow, const SwBlock *block, const SwBlock *head)
{
  SwBlock *kept = g_memdup2 (block, sizeof *block);

  g_ptr_array_add (flow->blocks, kept);
  g_ptr_array_add (flow->heads, (gpointer) (guintptr) head);
  return kept;
}

/* A text, with what stands before it. */
typedef struct {
  PangoLayout *layout; /* owned */
  PangoLayout *second; /* owned, nullable: below it, second ink */
  double x;            /* of the text */
  double line_height;  /* of its first line */
  gboolean tick;
  gboolean framed;
  int level; /* SwLevel of the sign; −1: none */
} Text;

static void
text_free (gpointer data)
{
  Text *text = data;

  g_object_unref (text->layout);
  g_clear_object (&text->second);
  g_free (text);
}

static double
first_line_height (PangoLayout *layout)
{
  PangoRectangle line;

  pango_layout_line_get_extents (pango_layout_get_line_readonly (layout, 0), NULL, &line);
  return pango_units_to_double (line.height);
}

static void
draw_tick_box (const SwPen *pen, double x, double y, double line_height)
{
  double top = y + (line_height - TICK_SIDE) / 2;

  cairo_rectangle (pen->cr, x + 1, top, TICK_SIDE, TICK_SIDE);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
}

/* Octagon, triangle, circle: told apart by shape, for a grey printer. */
static void
draw_sign (const SwPen *pen, int level, double x, double y)
{
  static const struct {
    int corners;
    double turn_rad;
    SwInkId ink;
  } signs[] = {
    [SW_LEVEL_STOP] = { 8, G_PI / 8, SW_INK_STOP },
    [SW_LEVEL_WARN] = { 3, -G_PI / 2, SW_INK_WARN },
    [SW_LEVEL_TIP] = { 0, 0, SW_INK_TIP },
  };
  double radius = TICK_SIDE * (signs[level].corners == 3 ? 0.62 : 0.52);
  cairo_matrix_t matrix;

  cairo_get_matrix (pen->cr, &matrix);
  cairo_translate (pen->cr, x + 1 + TICK_SIDE / 2, y);
  cairo_new_path (pen->cr);
  if (signs[level].corners == 0)
    cairo_arc (pen->cr, 0, 0, radius, 0, 2 * G_PI);
  cairo_rotate (pen->cr, signs[level].turn_rad);
  for (int i = 0; i < signs[level].corners; i++) {
    cairo_line_to (pen->cr, radius, 0);
    cairo_rotate (pen->cr, 2 * G_PI / signs[level].corners);
  }
  cairo_set_matrix (pen->cr, &matrix);
  cairo_close_path (pen->cr);
  sw_style_set_ink (pen->style, pen->cr, signs[level].ink);
  if (level == SW_LEVEL_STOP)
    cairo_fill_preserve (pen->cr);
  sw_pen_line (pen, signs[level].ink, pen->style->line_thick);
}

static void
draw_text (const SwPen *pen, const SwBox *box, gpointer data)
{
  Text *text = data;
  double y = box->y + (text->framed ? PAD : 0);

  if (text->framed) {
    cairo_rectangle (pen->cr, box->x, box->y, box->width, box->height);
    sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thick);
  }
  if (text->tick)
    draw_tick_box (pen, box->x, y, text->line_height);
  if (text->level >= 0)
    draw_sign (pen, text->level, box->x + (text->framed ? PAD : 0), y + text->line_height / 2);
  sw_pen_show (pen, SW_INK_MAIN, box->x + text->x, y, text->layout);
  if (text->second != NULL)
    sw_pen_show (pen,
                 SW_INK_SECOND,
                 box->x + text->x,
                 y + sw_layout_height (text->layout),
                 text->second);
}

/* Takes the layouts of `text`. */
static void
add_text (SwFlow *flow, const Text *text, double gap, gboolean keep)
{
  Text *kept = g_memdup2 (text, sizeof *text);
  double height = sw_layout_height (text->layout) + (text->framed ? 2 * PAD : 0) +
                  (text->second == NULL ? 0 : sw_layout_height (text->second));

  kept->line_height = first_line_height (text->layout);
  sw_flow_add (flow, &(SwBlock){ height, gap, keep, draw_text, kept, text_free }, NULL);
}

static PangoLayout *
paragraph (const SwFlow *flow, double indent, const char *text)
{
  return sw_pen_layout (
    flow->pen,
    &(SwWriting){ .size = flow->pen->style->text_normal, .width = flow->width - indent },
    text);
}

static void
add_bold (SwFlow *flow, const char *text, double size, double gap)
{
  SwWriting writing = { .size = flow->pen->style->text_normal * size,
                        .width = flow->width,
                        .bold = TRUE };

  add_text (flow,
            &(Text){ .layout = sw_pen_layout (flow->pen, &writing, text), .level = -1 },
            gap,
            TRUE);
}

#define LONG_TITLE 60 /* characters: more would fill the sheet's head at full size */

void
sw_flow_title (SwFlow *flow, const char *text)
{
  add_bold (flow, text, g_utf8_strlen (text, -1) > LONG_TITLE ? 1.3 : 2, GAP);
}

void
sw_flow_heading (SwFlow *flow, const char *text)
{
  add_bold (flow, text, 1.2, 3 * GAP);
}

void
sw_flow_text (SwFlow *flow, const char *text)
{
  add_text (flow, &(Text){ .layout = paragraph (flow, 0, text), .level = -1 }, GAP, FALSE);
}

void
sw_flow_tick (SwFlow *flow, const char *text)
{
  add_text (
    flow,
    &(Text){ .layout = paragraph (flow, INDENT, text), .x = INDENT, .tick = TRUE, .level = -1 },
    GAP,
    FALSE);
}

/* The first `bold` bytes in bold. */
static void
set_bold_start (PangoLayout *layout, gsize bold)
{
  PangoAttrList *attributes = pango_attr_list_copy (pango_layout_get_attributes (layout));
  PangoAttribute *weight = pango_attr_weight_new (PANGO_WEIGHT_BOLD);

  weight->start_index = 0;
  weight->end_index = (guint) bold;
  pango_attr_list_insert (attributes, weight);
  pango_layout_set_attributes (layout, attributes);
  pango_attr_list_unref (attributes);
}

static PangoLayout *
worded_paragraph (const SwFlow *flow, double indent, const char *word, const char *text)
{
  g_autofree char *whole = g_strdup_printf ("%s: %s", word, text);
  PangoLayout *layout = paragraph (flow, indent, whole);

  set_bold_start (layout, strlen (word) + 1);
  return layout;
}

static void
add_signed (SwFlow *flow, SwLevel level, PangoLayout *layout, const char *more)
{
  add_text (flow,
            &(Text){ .layout = layout,
                     .second = more == NULL ? NULL : paragraph (flow, INDENT, more),
                     .x = INDENT,
                     .level = (int) level },
            GAP,
            FALSE);
}

void
sw_flow_signed (SwFlow *flow, SwLevel level, const char *word, const char *text)
{
  add_signed (flow, level, worded_paragraph (flow, INDENT, word, text), NULL);
}

void
sw_flow_finding (SwFlow *flow, SwLevel level, const char *text, const char *more)
{
  const char *word = sw_pen_word (flow->pen, sw_level_labels[level]);

  add_signed (flow, level, worded_paragraph (flow, INDENT, word, text), more);
}

void
sw_flow_caution (SwFlow *flow, const char *word, const char *text)
{
  add_text (flow,
            &(Text){ .layout = worded_paragraph (flow, INDENT + 2 * PAD, word, text),
                     .x = INDENT + PAD,
                     .framed = TRUE,
                     .level = SW_LEVEL_WARN },
            GAP,
            FALSE);
}

void
sw_flow_gap (SwFlow *flow, double height)
{
  sw_flow_add (flow, &(SwBlock){ .height = 0, .gap = height }, NULL);
}

/* What must stand on one page with the block: those it is kept with, itself included. */
static double
kept_height (const SwFlow *flow, guint i)
{
  double height = 0;

  for (; i < flow->blocks->len; i++) {
    const SwBlock *block = g_ptr_array_index (flow->blocks, i);

    height += block->gap + block->height;
    if (!block->keep)
      break;
  }
  return height;
}

static void
place (SwFlow *flow, const SwBlock *block, int page, double *y)
{
  g_array_append_val (flow->places, ((Place){ block, page, *y }));
  *y += block->height;
}

static void
break_pages (SwFlow *flow)
{
  double y = 0;
  int page = 0;
  gboolean fresh = TRUE;

  for (guint i = 0; i < flow->blocks->len; i++) {
    const SwBlock *block = g_ptr_array_index (flow->blocks, i);
    const SwBlock *head = g_ptr_array_index (flow->heads, i);

    if (!fresh && y + kept_height (flow, i) > flow->height) {
      page++;
      y = 0;
      fresh = TRUE;
      if (head != NULL)
        place (flow, head, page, &y);
    }
    y += fresh ? 0 : block->gap;
    place (flow, block, page, &y);
    fresh = FALSE;
    if (page == 0)
      flow->used = y;
  }
  flow->pages = page + 1;
}

int
sw_flow_pages (SwFlow *flow)
{
  if (flow->pages == 0)
    break_pages (flow);
  return flow->pages;
}

double
sw_flow_height (SwFlow *flow)
{
  sw_flow_pages (flow);
  return flow->used;
}

void
sw_flow_draw (const SwFlow *flow, const SwPen *pen, double x, double y, int page)
{
  for (guint i = 0; i < flow->places->len; i++) {
    const Place *at = &g_array_index (flow->places, Place, i);
    SwBox box = { x, y + at->y, flow->width, at->block->height };

    if (at->page == page && at->block->draw != NULL)
      at->block->draw (pen, &box, at->block->data);
  }
}
