// SPDX-License-Identifier: GPL-3.0-or-later
/* The cover: what it is, its key numbers, what nobody has looked at yet, what can hurt. And the
 * sheet of findings. */
#include "drawing/side-view.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

#define PICTURE_SHARE 0.42 /* of the width */
#define BESIDE 12.0        /* points between picture and numbers */

/* Findings that say what nobody has looked at or tested yet: a box to tick each. */
static const char *const open_questions[] = {
  "clear-ground-not-looked", "overhead-line-not-looked", "dig-not-marked",     "soil-unknown",
  "stakes-untested",         "ring-ties-untested",       "strip-not-measured", NULL,
};

static gboolean
is_open_question (const SwFinding *finding)
{
  return g_strv_contains (open_questions, finding->code);
}

static void
add_open_questions (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const GArray *findings = pen->solution->findings;
  gboolean any = FALSE;

  for (guint i = 0; i < findings->len; i++) {
    const SwFinding *finding = &g_array_index (findings, SwFinding, i);
    g_autofree char *text = NULL;

    if (!is_open_question (finding))
      continue;
    if (!any)
      sw_flow_heading (flow, sw_pen_word (pen, N_ ("Not looked at yet: tick when done")));
    any = TRUE;
    text = sw_finding_text (finding, pen->solution->design, pen->language);
    sw_flow_tick (flow, text);
  }
}

static void
add_shape_keys (const SwPen *pen, SwTable *table)
{
  const SwCone *cone = &pen->solution->cone;
  const SwShape *shape = &pen->solution->design->shape;

  sw_table_add_fact (table,
                     pen,
                     N_ ("Overall height"),
                     sw_pen_number (pen, cone->overall_height_m, SW_QUANTITY_LENGTH));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Crown height"),
                     sw_pen_number (pen, shape->crown_height_m, SW_QUANTITY_LENGTH));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Ring across"),
                     sw_pen_number (pen, 2 * shape->ring_radius_m, SW_QUANTITY_LENGTH));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Coverage"),
                     sw_pen_number (pen, shape->coverage_deg, SW_QUANTITY_ANGLE));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Spacing at the ring"),
                     sw_pen_tape (pen, cone->spacing_ring_m));
}

static void
add_strip_keys (const SwPen *pen, SwTable *table)
{
  const SwCone *cone = &pen->solution->cone;
  const SwDesign *design = pen->solution->design;

  sw_table_add_fact (
    table,
    pen,
    N_ ("Strips × pixels"),
    g_strdup_printf ("%d × %d", design->shape.strip_count, design->strip.pixels));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Pixels with the star"),
                     g_strdup_printf ("%d", cone->pixels_total));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Strip, hook to tie"),
                     sw_pen_number (pen, cone->slant_m, SW_QUANTITY_LENGTH));
  sw_table_add_fact (table, pen, N_ ("Gap at tie"), sw_pen_tape (pen, cone->tail_m));
}

static void
add_power_keys (const SwPen *pen, SwTable *table)
{
  const SwSolution *solution = pen->solution;
  const SwPower *power = &solution->power;
  double nothing = NAN;

  sw_table_add_fact (table,
                     pen,
                     N_ ("Highest brightness allowed"),
                     sw_pen_number (pen, solution->design->power.cap, SW_QUANTITY_SHARE));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Current at that"),
                     sw_pen_number_or_dash (pen,
                                            power->feasible ? power->tree_current_a : nothing,
                                            SW_QUANTITY_CURRENT));
  sw_table_add_fact (
    table,
    pen,
    N_ ("Power at that"),
    sw_pen_number_or_dash (pen, power->feasible ? power->tree_w : nothing, SW_QUANTITY_POWER));
  sw_table_add_fact (
    table,
    pen,
    N_ ("Ports / universes"),
    g_strdup_printf ("%d / %d", solution->data.ports, solution->data.universes));
  sw_table_add_fact (
    table,
    pen,
    N_ ("Take down before gusts of"),
    isfinite (solution->support.take_down_gust_mps)
      ? sw_pen_number (pen, solution->support.take_down_gust_mps, SW_QUANTITY_SPEED)
      : g_strdup (sw_pen_word (pen, N_ ("none given"))));
}

static SwFlow *
key_numbers (const SwPen *pen, double width)
{
  SwFlow *flow = sw_flow_new (pen, width, G_MAXDOUBLE);
  g_autoptr (SwTable) table = sw_table_new_facts ();
  g_autofree char *price = sw_pen_decimal (pen, pen->solution->cost_to_pay, 2);

  add_shape_keys (pen, table);
  add_strip_keys (pen, table);
  add_power_keys (pen, table);
  sw_table_add_fact (table,
                     pen,
                     N_ ("Parts still to pay"),
                     g_strdup_printf ("%s %s", price, pen->solution->design->prices.currency));
  sw_flow_table (flow, table);
  return flow;
}

static void
draw_picture (const SwPen *pen, const SwBox *box)
{
  SwView view = sw_side_view_fit (pen->solution, box->width, box->height);
  SwPicture picture = { .view = &view,
                        .style = pen->style,
                        .language = pen->language,
                        .parts = SW_DRAW_BACKDROP | SW_DRAW_TREE };

  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, box->x, box->y, box->width, box->height);
  cairo_clip (pen->cr);
  cairo_translate (pen->cr, box->x, box->y);
  sw_side_view_draw (pen->cr, &picture, pen->solution);
  cairo_restore (pen->cr);
}

static void
draw_front (const SwPen *pen, const SwBox *box, gpointer data)
{
  SwFlow *numbers = data;
  SwBox picture = { box->x, box->y, box->width * PICTURE_SHARE, box->height };

  draw_picture (pen, &picture);
  sw_flow_draw (numbers, pen, box->x + picture.width + BESIDE, box->y, 0);
}

static void
add_front (SwFlow *flow)
{
  double width = sw_flow_width (flow) * (1 - PICTURE_SHARE) - BESIDE;
  SwFlow *numbers = key_numbers (sw_flow_pen (flow), width);

  sw_flow_add (flow,
               &(SwBlock){ .height = sw_flow_height (numbers),
                           .gap = 8,
                           .draw = draw_front,
                           .data = numbers,
                           .free = (GDestroyNotify) sw_flow_free },
               NULL);
}

static void
add_finding (SwFlow *flow, const SwFinding *finding, gboolean with_remedy)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwDesign *design = pen->solution->design;
  g_autofree char *text = sw_finding_text (finding, design, pen->language);
  g_autofree char *remedy =
    with_remedy ? sw_finding_remedy_text (finding, design, pen->language) : NULL;

  sw_flow_finding (flow, finding->level, text, remedy);
}

/* Those of a level that are not among the open questions, under a heading. */
static void
add_findings (SwFlow *flow, SwLevel level, const char *heading)
{
  const SwPen *pen = sw_flow_pen (flow);
  const GArray *findings = pen->solution->findings;
  gboolean any = FALSE;

  for (guint i = 0; i < findings->len; i++) {
    const SwFinding *finding = &g_array_index (findings, SwFinding, i);

    if (finding->level != level || is_open_question (finding))
      continue;
    if (!any)
      sw_flow_heading (flow, sw_pen_word (pen, heading));
    any = TRUE;
    add_finding (flow, finding, FALSE);
  }
}

/* 10 ft from any line up to 50 kV: 29 CFR 1926.1408, table A. */
#define LINE_CLEARANCE_M 3.05

static void
add_cautions (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autofree char *clear =
    sw_pen_number (pen,
                   pen->solution->cone.overall_height_m + LINE_CLEARANCE_M,
                   SW_QUANTITY_LENGTH);
  g_autofree char *more = sw_pen_number (pen, LINE_CLEARANCE_M, SW_QUANTITY_LENGTH);
  g_autofree char *lines =
    sw_pen_say (pen,
                N_ ("no line within %s of the post’s foot (its height and %s more), so that it "
                    "stays clear even when it falls. Ask the line’s owner; some need more."),
                clear,
                more);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Before work begins")));
  sw_flow_signed (flow, SW_LEVEL_WARN, sw_pen_word (pen, N_ ("Overhead lines")), lines);
  sw_flow_signed (flow,
                  SW_LEVEL_WARN,
                  sw_pen_word (pen, N_ ("Height and weight")),
                  sw_pen_word (pen,
                               N_ ("build it lying down, raise it with enough hands, nobody in "
                                   "the fall circle, and never lean a ladder on the post.")));
  sw_flow_signed (flow,
                  SW_LEVEL_WARN,
                  sw_pen_word (pen, N_ ("Digging")),
                  sw_pen_word (pen,
                               N_ ("have buried services marked before you dig or drive a "
                                   "stake (in the US call 811).")));
  sw_flow_signed (flow,
                  SW_LEVEL_WARN,
                  sw_pen_word (pen, N_ ("Mains and wind")),
                  sw_pen_word (pen,
                               N_ ("read the sheets Power and Wind first. Local codes and "
                                   "licensed practice come before anything said here.")));
}

static char *
summary (const SwPen *pen)
{
  const SwDesign *design = pen->solution->design;
  g_autofree char *height =
    sw_pen_number (pen, pen->solution->cone.overall_height_m, SW_QUANTITY_LENGTH);

  return sw_pen_say (pen,
                     N_ ("Build packet for a mega tree of %d strips, %s tall with all that "
                         "stands on it."),
                     design->shape.strip_count,
                     height);
}

void
sw_cover_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autofree char *what = summary (pen);

  sw_flow_title (flow, pen->solution->design->title);
  sw_flow_text (flow, what);
  add_findings (flow, SW_LEVEL_STOP, N_ ("Do not build this yet"));
  add_front (flow);
  add_open_questions (flow);
  add_cautions (flow);
  add_findings (flow, SW_LEVEL_WARN, N_ ("Warnings"));
}

void
sw_findings_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const GArray *findings = pen->solution->findings;

  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("What this design was found to be short of, worst first: stop "
                     "(it cannot be built so), warning (it can, but know this), tip. "
                     "Below each, what would put it right.")));
  for (guint i = 0; i < findings->len; i++)
    add_finding (flow, &g_array_index (findings, SwFinding, i), TRUE);
}
