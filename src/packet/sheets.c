// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/sheets.h"

#include "drawing/crown-template.h"
#include "packet/frame.h"
#include "packet/sheet-pages.h"

#include <glib/gi18n.h>

/* A sheet fills a flow, or draws into the frame at a scale, or draws its pages whole. */
typedef struct {
  const char *title; /* N_() */
  SwSheetFile file;
  gboolean (*applies) (const SwSolution *solution); /* NULL: always */
  void (*fill) (SwFlow *flow);
  void (*draw) (const SwPen *pen, const SwBox *box);
  double (*scale) (const SwPen *pen, const SwBox *box, char label[16]);
  int (*pages) (SwSheets *sheets);
  void (*draw_page) (const SwSheets *sheets, cairo_t *cr, int page);
  gboolean landscape;
} Row;

#define N_FILES 3

struct SwSheets {
  SwPen pen;
  double short_pt, long_pt; /* sides of the paper */
  GArray *sheets;           /* owned: SwSheet */
  GPtrArray *flows;         /* owned: SwFlow or NULL, a row each */
  int counts[N_FILES];
  SwTapePlan tape;
  SwCrownTiles tiles;
};

static gboolean
has_findings (const SwSolution *solution)
{
  return solution->findings->len > 0;
}

static gboolean
is_measured (const SwSolution *solution)
{
  return solution->as_built != NULL;
}

static gboolean
has_cuts (const SwSolution *solution)
{
  return solution->cuts->len > 0;
}

static int
tape_pages (SwSheets *sheets)
{
  sw_tape_plan_init (&sheets->tape, sheets->pen.solution, sheets->long_pt, sheets->short_pt);
  return sheets->tape.pages;
}

static void
draw_tape (const SwSheets *sheets, cairo_t *cr, int page)
{
  sw_tape_draw_page (cr,
                     &sheets->tape,
                     sheets->pen.solution,
                     sheets->pen.style,
                     sheets->pen.language,
                     sheets->long_pt,
                     sheets->short_pt,
                     page);
}

static int
plate_pages (SwSheets *sheets)
{
  sw_crown_tiles_init (&sheets->tiles, sheets->pen.solution, sheets->short_pt, sheets->long_pt);
  return sheets->tiles.pages;
}

static void
draw_plate (const SwSheets *sheets, cairo_t *cr, int page)
{
  sw_crown_template_draw_page (cr,
                               &sheets->tiles,
                               sheets->pen.solution,
                               sheets->pen.style,
                               sheets->pen.language,
                               sheets->short_pt,
                               sheets->long_pt,
                               page);
}

/* In the order of the work. */
static const Row rows[] = {
  { .title = N_ ("Cover"), .fill = sw_cover_fill },
  { .title = N_ ("Findings"), .applies = has_findings, .fill = sw_findings_fill },
  { .title = N_ ("Side view"), .draw = sw_side_sheet_draw, .scale = sw_side_sheet_scale },
  { .title = N_ ("Top view"), .draw = sw_top_sheet_draw, .scale = sw_top_sheet_scale },
  { .title = N_ ("Parts"), .fill = sw_parts_fill },
  { .title = N_ ("Cut list"), .applies = has_cuts, .fill = sw_cuts_fill },
  { .title = N_ ("Build steps"), .fill = sw_steps_fill },
  { .title = N_ ("One strip first"), .fill = sw_first_strip_fill },
  { .title = N_ ("Bench test log"), .fill = sw_bench_log_fill },
  { .title = N_ ("Foot"), .fill = sw_foot_fill },
  { .title = N_ ("How it fits together"), .fill = sw_fits_fill },
  { .title = N_ ("Crown holes"), .fill = sw_crown_holes_fill },
  { .title = N_ ("Ring"), .applies = sw_ring_sheet_applies, .fill = sw_ring_fill },
  { .title = N_ ("Ring marks"), .fill = sw_ring_marks_fill },
  { .title = N_ ("Ring marks as built"), .applies = is_measured, .fill = sw_as_built_fill },
  { .title = N_ ("Power"), .fill = sw_power_fill },
  { .title = N_ ("Data ports"), .fill = sw_ports_fill },
  { .title = N_ ("Raising"), .fill = sw_raising_fill },
  { .title = N_ ("Power on"), .fill = sw_power_on_fill },
  { .title = N_ ("Driver box"), .fill = sw_driver_box_fill },
  { .title = N_ ("Wind"), .fill = sw_wind_fill },
  { .title = N_ ("Weekly check"), .fill = sw_weekly_fill },
  { .title = N_ ("Taking down"), .fill = sw_take_down_fill },
  { .title = N_ ("As built"), .fill = sw_as_built_form_fill },
  { .title = N_ ("Working"), .fill = sw_working_fill, .landscape = TRUE },
  { .title = N_ ("Ring tape"),
    .file = SW_SHEET_RING_TAPE,
    .pages = tape_pages,
    .draw_page = draw_tape,
    .landscape = TRUE },
  { .title = N_ ("Crown plate"),
    .file = SW_SHEET_CROWN_PLATE,
    .pages = plate_pages,
    .draw_page = draw_plate },
};

/* ISO 216 and ANSI/ASME Y14.1, points. */
static const struct {
  double short_pt, long_pt;
} papers[] = {
  [SW_PAPER_A4] = { 210 * SW_POINTS_PER_MM, 297 * SW_POINTS_PER_MM },
  [SW_PAPER_LETTER] = { 8.5 * 72, 11 * 72 },
};

static SwFlow *
filled_flow (const SwSheets *sheets, const Row *row)
{
  double width = row->landscape ? sheets->long_pt : sheets->short_pt;
  double height = row->landscape ? sheets->short_pt : sheets->long_pt;
  SwBox area = sw_frame_area (&sheets->pen, width, height);
  SwFlow *flow = sw_flow_new (&sheets->pen, area.width, area.height);

  if (row != rows)
    sw_flow_title (flow, sw_pen_word (&sheets->pen, row->title)); /* the cover has its own */
  row->fill (flow);
  return flow;
}

#define HEADING_SIZE 2    /* of the normal text, as sw_flow_title () has it */
#define HEADING_ROOM 30.0 /* points it takes above a drawing */

static SwBox
drawing_area (const SwPen *pen, double width, double height)
{
  SwBox area = sw_frame_area (pen, width, height);

  return (SwBox){ area.x, area.y + HEADING_ROOM, area.width, area.height - HEADING_ROOM };
}

static void
draw_heading (const SwPen *pen, const SwBox *area, const char *title)
{
  SwWriting writing = { .size = pen->style->text_normal * HEADING_SIZE,
                        .width = area->width,
                        .bold = TRUE,
                        .one_line = TRUE };
  g_autoptr (PangoLayout) layout = sw_pen_layout (pen, &writing, title);

  sw_pen_show (pen, SW_INK_MAIN, area->x, area->y - HEADING_ROOM, layout);
}

/* A drawing lies the way up in which it gets the larger scale. */
static gboolean
lies_across (const SwSheets *sheets, const Row *row)
{
  double short_pt = sheets->short_pt;
  double long_pt = sheets->long_pt;
  SwBox upright = drawing_area (&sheets->pen, short_pt, long_pt);
  SwBox across = drawing_area (&sheets->pen, long_pt, short_pt);
  char label[16];

  if (row->scale == NULL)
    return row->landscape;
  return row->scale (&sheets->pen, &across, label) >
         row->scale (&sheets->pen, &upright, label) * 1.01;
}

static void
add_sheets (SwSheets *sheets, guint i)
{
  const Row *row = &rows[i];
  gboolean across = lies_across (sheets, row);
  SwFlow *flow = row->fill == NULL ? NULL : filled_flow (sheets, row);
  int pages = flow != NULL         ? sw_flow_pages (flow)
              : row->pages != NULL ? row->pages (sheets)
                                   : 1;

  g_ptr_array_index (sheets->flows, i) = flow;
  for (int page = 0; page < pages; page++) {
    SwSheet sheet = { .title = sw_pen_word (&sheets->pen, row->title),
                      .file = row->file,
                      .width_pt = across ? sheets->long_pt : sheets->short_pt,
                      .height_pt = across ? sheets->short_pt : sheets->long_pt,
                      .true_size = row->draw_page != NULL,
                      .row = i,
                      .page = page };

    g_array_append_val (sheets->sheets, sheet);
  }
  sheets->counts[row->file] += pages;
}

static void
clear_flow (gpointer flow)
{
  if (flow != NULL)
    sw_flow_free (flow);
}

SwSheets *
sw_sheets_new (const SwSolution *solution, SwPaper paper, const SwLanguage *language)
{
  SwSheets *sheets = g_new0 (SwSheets, 1);

  sw_pen_init (&sheets->pen, solution, language);
  sheets->short_pt = papers[paper].short_pt;
  sheets->long_pt = papers[paper].long_pt;
  sheets->sheets = g_array_new (FALSE, FALSE, sizeof (SwSheet));
  sheets->flows = g_ptr_array_new_with_free_func (clear_flow);
  g_ptr_array_set_size (sheets->flows, G_N_ELEMENTS (rows));
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    if (rows[i].applies == NULL || rows[i].applies (solution))
      add_sheets (sheets, i);
  }
  return sheets;
}

void
sw_sheets_free (SwSheets *sheets)
{
  g_ptr_array_unref (sheets->flows);
  g_array_unref (sheets->sheets);
  sw_pen_clear (&sheets->pen);
  g_free (sheets);
}

guint
sw_sheets_count (const SwSheets *sheets)
{
  return sheets->sheets->len;
}

const SwSheet *
sw_sheets_get (const SwSheets *sheets, guint i)
{
  return &g_array_index (sheets->sheets, SwSheet, i);
}

const char *
sw_sheets_design_title (const SwSheets *sheets)
{
  return sheets->pen.solution->design->title;
}

/* Which sheet of its file it is, from 1: the files stand one after the other. */
static int
number_in_file (const SwSheets *sheets, guint i)
{
  int number = 1;

  while (i > 0 && sw_sheets_get (sheets, i - 1)->file == sw_sheets_get (sheets, i)->file) {
    number++;
    i--;
  }
  return number;
}

static void
draw_framed (const SwSheets *sheets, guint i, const SwPen *pen)
{
  const SwSheet *sheet = sw_sheets_get (sheets, i);
  const Row *row = &rows[sheet->row];
  SwBox text = sw_frame_area (pen, sheet->width_pt, sheet->height_pt);
  SwBox drawing = drawing_area (pen, sheet->width_pt, sheet->height_pt);
  char scale[16];
  SwFrame frame = { sheet->width_pt,
                    sheet->height_pt,
                    sheet->title,
                    NULL,
                    number_in_file (sheets, i),
                    sheets->counts[sheet->file] };

  if (row->scale != NULL) {
    row->scale (pen, &drawing, scale);
    frame.scale = scale;
  }
  sw_frame_draw (pen, &frame);
  if (row->fill != NULL)
    sw_flow_draw (g_ptr_array_index (sheets->flows, sheet->row),
                  pen,
                  text.x,
                  text.y,
                  sheet->page);
  if (row->draw != NULL) {
    draw_heading (pen, &drawing, sheet->title);
    row->draw (pen, &drawing);
  }
}

void
sw_sheets_draw (const SwSheets *sheets, guint i, cairo_t *cr)
{
  const SwSheet *sheet = sw_sheets_get (sheets, i);
  SwPen pen = sheets->pen;

  pen.cr = cr;
  cairo_save (cr);
  if (rows[sheet->row].draw_page != NULL)
    rows[sheet->row].draw_page (sheets, cr, sheet->page);
  else
    draw_framed (sheets, i, &pen);
  cairo_restore (cr);
}
