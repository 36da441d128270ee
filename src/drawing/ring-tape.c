// SPDX-License-Identifier: GPL-3.0-or-later
/* Seen from outside the ring, azimuth grows to the right: at the front, 0° faces the viewer and
 * 90° is to the viewer's right. So the tape is wrapped with its print outwards and its numbers
 * running to the right.
 */
#include "drawing/ring-tape.h"

#include "drawing/check-bar.h"
#include "drawing/page-title.h"
#include "engine/units.h"

#include <glib/gi18n.h>
#include <math.h>

#define MARGIN_MM 12.0 /* printers leave at least this much */
#define HEAD_MM 22.0
#define LANE_MM 27.0
#define GAP_MM 4.0
#define TAB_MM 10.0       /* glued under the next lane */
#define HEADING_PT 170.0  /* "Ring tape, sheet 99 of 99" and its translations */
#define RIGHT_BARS_MM 8.0 /* kept for the upright check bars */

typedef struct {
  cairo_t *cr;
  const SwTapePlan *plan;
  const SwSolution *solution;
  const SwStyle *style;
  const SwLanguage *language;
  double width_pt, height_pt;
} Tape;

static guint
count_marks (const SwSolution *solution)
{
  return solution->marks->len;
}

static double
mark_arc_m (const SwSolution *solution, guint i)
{
  if (solution->as_built != NULL)
    return g_array_index (solution->as_built->marks, SwAsBuiltMark, i).arc_m;
  return g_array_index (solution->marks, SwRingMark, i).arc_m;
}

static double
tape_length_m (const SwSolution *solution)
{
  const SwShape *shape = &solution->design->shape;

  if (shape->coverage_deg < 360)
    return mark_arc_m (solution, count_marks (solution) - 1);
  if (solution->as_built != NULL)
    return solution->as_built->perimeter_m;
  return 2 * G_PI * (shape->ring_radius_m + solution->ring_od_m / 2);
}

void
sw_tape_plan_init (SwTapePlan *plan,
                   const SwSolution *solution,
                   double width_pt,
                   double height_pt)
{
  double width_mm = width_pt / SW_PT_PER_MM, height_mm = height_pt / SW_PT_PER_MM;
  double room_mm = height_mm - 2 * MARGIN_MM - HEAD_MM - SW_CHECK_BARS_HEIGHT_MM;

  *plan =
    (SwTapePlan){ .length_m = tape_length_m (solution),
                  .lane_m = floor (width_mm - 2 * MARGIN_MM - TAB_MM - RIGHT_BARS_MM) / 1000,
                  .lane_height_m = LANE_MM / 1000,
                  .lanes_per_page =
                    MAX (1, (int) floor ((room_mm + GAP_MM) / (LANE_MM + GAP_MM))),
                  .as_built = solution->as_built != NULL };
  plan->lanes = MAX (1, (int) ceil (plan->length_m / plan->lane_m - 1e-9));
  plan->pages = (plan->lanes + plan->lanes_per_page - 1) / plan->lanes_per_page;
}

/* A, B, … Z, AA, AB, … */
static char *
join_name (int join)
{
  GString *name = g_string_new (NULL);

  for (int n = join + 1; n > 0; n = (n - 1) / 26)
    g_string_prepend_c (name, (char) ('A' + (n - 1) % 26));
  return g_string_free (name, FALSE);
}

static double
lane_top (int row)
{
  return (MARGIN_MM + HEAD_MM + row * (LANE_MM + GAP_MM)) * SW_PT_PER_MM;
}

static double
lane_length_m (const SwTapePlan *plan, int lane)
{
  return MIN (plan->lane_m, plan->length_m - lane * plan->lane_m);
}

static void
thin (const Tape *tape, SwInkId ink)
{
  sw_style_set_ink (tape->style, tape->cr, ink);
  cairo_set_line_width (tape->cr, tape->style->line_thin);
}

static void
text (const Tape *tape,
      double x,
      double y,
      SwTextAlign align,
      double size,
      gboolean bold,
      const char *words)
{
  SwTextLook look = { .size = size, .align = align, .bold = bold, .tabular = TRUE };

  sw_text_draw (tape->cr, NULL, tape->style, &look, x, y, words);
}

/* Cut lines round the lane, the tab behind its end dashed. */
static void
draw_outline (const Tape *tape, int lane, double x, double y, double length)
{
  const double dashes[] = { 3, 2 };
  double height = LANE_MM * SW_PT_PER_MM, tab = TAB_MM * SW_PT_PER_MM;

  thin (tape, SW_INK_MAIN);
  cairo_rectangle (tape->cr, x, y, length, height);
  cairo_stroke (tape->cr);
  if (lane == tape->plan->lanes - 1)
    return;
  cairo_save (tape->cr);
  cairo_set_dash (tape->cr, dashes, 2, 0);
  cairo_rectangle (tape->cr, x + length, y, tab, height);
  cairo_stroke (tape->cr);
  cairo_restore (tape->cr);
  g_autofree char *name = join_name (lane);
  text (tape,
        x + length + tab / 2,
        y + height - 5,
        SW_TEXT_CENTRE,
        8,
        FALSE,
        sw_language_text (tape->language, N_ ("glue")));
  text (tape, x + length - 4, y + height - 5, SW_TEXT_RIGHT, 11, TRUE, name);
}

static void
draw_left_end (const Tape *tape, int lane, double x, double y)
{
  double height = LANE_MM * SW_PT_PER_MM;

  if (lane == 0)
    return;
  g_autofree char *name = join_name (lane - 1);
  text (tape, x + 4, y + height - 5, SW_TEXT_LEFT, 11, TRUE, name);
}

/* Strips so near that their labels would touch share them: every nth has one. */
static int
label_step (const Tape *tape, double least_mm)
{
  double apart_mm = tape->plan->length_m * 1000 / MAX (count_marks (tape->solution), 1);

  return MAX (1, (int) ceil (least_mm / MAX (apart_mm, 0.01)));
}

static void
draw_label (const Tape *tape, guint i, double x, double y, double arc_m)
{
  g_autofree char *metric = sw_units_format_tape (arc_m, SW_UNITS_METRIC, tape->language);
  g_autofree char *inches = sw_units_format_tape (arc_m, SW_UNITS_US, tape->language);
  gboolean first = i == 0;

  if (first)
    text (tape,
          x + 3,
          y + 46,
          SW_TEXT_LEFT,
          7.6,
          TRUE,
          sw_language_text (tape->language, N_ ("strip 1 here")));
  if (i % label_step (tape, 21) == 0) {
    text (tape, x + 3, y + 26, SW_TEXT_LEFT, 7.2, FALSE, metric);
    text (tape, x + 3, y + 36, SW_TEXT_LEFT, 7.2, FALSE, inches);
  }
}

static void
draw_mark (const Tape *tape, guint i, double x, double y, double arc_m)
{
  gboolean numbered = i % label_step (tape, 8) == 0;
  g_autofree char *number = g_strdup_printf ("%u", i + 1);

  thin (tape, SW_INK_MAIN);
  cairo_move_to (tape->cr, x, y);
  cairo_line_to (tape->cr, x, y + (numbered ? LANE_MM * 0.72 : LANE_MM * 0.4) * SW_PT_PER_MM);
  cairo_stroke (tape->cr);
  if (numbered)
    text (tape, x + 3, y + 14, SW_TEXT_LEFT, 11, TRUE, number);
  draw_label (tape, i, x, y, arc_m);
}

static gboolean
on_lane (const SwTapePlan *plan, int lane, double arc_m)
{
  double start_m = lane * plan->lane_m;
  gboolean last = lane == plan->lanes - 1;

  return arc_m >= start_m - 1e-12 && (arc_m < start_m + plan->lane_m - 1e-12 || last);
}

static void
draw_lane (const Tape *tape, int lane, int row)
{
  double x = MARGIN_MM * SW_PT_PER_MM, y = lane_top (row);
  double start_m = lane * tape->plan->lane_m,
         length = lane_length_m (tape->plan, lane) * SW_POINTS_PER_M;

  draw_outline (tape, lane, x, y, length);
  draw_left_end (tape, lane, x, y);
  for (guint i = 0; i < count_marks (tape->solution); i++) {
    double arc_m = mark_arc_m (tape->solution, i);
    if (on_lane (tape->plan, lane, arc_m))
      draw_mark (tape, i, x + (arc_m - start_m) * SW_POINTS_PER_M, y, arc_m);
  }
  if (lane == tape->plan->lanes - 1 && tape->solution->design->shape.coverage_deg >= 360)
    text (tape,
          x + length + 4, /* outside the lane, which may be short */
          y + LANE_MM * SW_PT_PER_MM / 2,
          SW_TEXT_LEFT,
          7.6,
          TRUE,
          sw_language_text (tape->language, N_ ("← meets strip 1")));
}

static char *
length_words (const Tape *tape)
{
  g_autofree char *metric =
    sw_units_format_tape (tape->plan->length_m, SW_UNITS_METRIC, tape->language);
  g_autofree char *inches =
    sw_units_format_tape (tape->plan->length_m, SW_UNITS_US, tape->language);
  const char *ring = tape->plan->as_built
                       ? sw_language_text (tape->language, N_ ("ring as measured"))
                       : sw_language_text (tape->language, N_ ("ring as designed"));

  /* Translators: which ring; whole length in mm and in inches. */
  return g_strdup_printf (
    sw_language_text (
      tape->language,
      N_ ("For the OUTSIDE of the pipe, %s. All lanes joined: %s = %s end to end.")),
    ring,
    metric,
    inches);
}

static void
draw_head (const Tape *tape, int page)
{
  double x = MARGIN_MM * SW_PT_PER_MM, y = MARGIN_MM * SW_PT_PER_MM;
  g_autofree char *pages =
    g_strdup_printf (sw_language_text (tape->language, N_ ("Ring tape, sheet %d of %d")),
                     page + 1,
                     tape->plan->pages);
  g_autofree char *length = length_words (tape);

  sw_style_set_ink (tape->style, tape->cr, SW_INK_MAIN);
  text (tape, x, y + 11, SW_TEXT_LEFT, 12, TRUE, pages);
  sw_page_title_draw (tape->cr,
                      tape->style,
                      &(SwHeadLine){ x, tape->width_pt - x, y + 11, HEADING_PT },
                      tape->solution->design->title);
  text (tape, x, y + 25, SW_TEXT_LEFT, 8.4, FALSE, length);
  text (
    tape,
    x,
    y + 37,
    SW_TEXT_LEFT,
    8.4,
    FALSE,
    sw_language_text (tape->language,
                      N_ ("Print at 100 %. Cut along the lines, glue A on A, B on B. Wrap it "
                          "print outwards: seen from outside, numbers run to the right.")));
  text (tape,
        x,
        y + 49,
        SW_TEXT_LEFT,
        8.4,
        FALSE,
        sw_language_text (
          tape->language,
          N_ ("The paper's own thickness is left out; it takes up about 0.3 mm a turn.")));
}

void
sw_tape_draw_page (cairo_t *cr,
                   const SwTapePlan *plan,
                   const SwSolution *solution,
                   const SwStyle *style,
                   const SwLanguage *language,
                   double width_pt,
                   double height_pt,
                   int page)
{
  Tape tape = { cr, plan, solution, style, language, width_pt, height_pt };
  double margin = MARGIN_MM * SW_PT_PER_MM;

  cairo_save (cr);
  draw_head (&tape, page);
  for (int row = 0;
       row < plan->lanes_per_page && page * plan->lanes_per_page + row < plan->lanes;
       row++)
    draw_lane (&tape, page * plan->lanes_per_page + row, row);
  sw_check_bars_draw (cr, style, language, width_pt, height_pt, margin);
  cairo_restore (cr);
}
