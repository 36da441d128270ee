// SPDX-License-Identifier: GPL-3.0-or-later
/* Sheets to write on: one strip first, bench test log, as built. */
#include "engine/bom-counts.h"
#include "engine/ring-joints.h"
#include "engine/step-values.h"
#include "packet/form.h"
#include "packet/sheet-pages.h"

#include <glib/gi18n.h>
#include <math.h>

static void
add_lengths (const SwPen *pen, SwTable *form)
{
  const SwSolution *solution = pen->solution;
  const SwStrip *strip = &solution->design->strip;

  sw_form_add (form,
               pen,
               N_ ("Strip material, cut, before the hems are folded"),
               sw_pen_tape (pen, sw_strip_cut_m (solution)));
  sw_form_add (form,
               pen,
               N_ ("Gap at hook: where it hangs to the first pixel"),
               sw_pen_tape (pen, strip->lead_m));
  sw_form_add (form,
               pen,
               N_ ("First pixel to last (lit length), hanging"),
               sw_pen_tape (pen, solution->cone.run_m));
  sw_form_add (form,
               pen,
               N_ ("The same, pulled as it will be"),
               sw_pen_tape (pen, solution->cone.run_m));
  sw_form_add (form,
               pen,
               N_ ("Gap at tie: last pixel to the ring, tie and all"),
               sw_pen_tape (pen, solution->cone.tail_m));
  sw_form_add (form, pen, N_ ("Width"), sw_pen_tape (pen, strip->width_m));
}

static void
add_weights (const SwPen *pen, SwTable *form)
{
  const SwStrip *strip = &pen->solution->design->strip;
  double mass_kg = strip->mass_kg_per_m * pen->solution->cone.slant_m;
  double stretch_m = sw_tie_stretch_m (pen->solution->design);

  sw_form_add (form,
               pen,
               N_ ("Mass of the whole strip"),
               sw_pen_number (pen, mass_kg, SW_QUANTITY_MASS));
  sw_form_add (form,
               pen,
               N_ ("Pull at the tie"),
               sw_pen_number (pen, strip->tension_n, SW_QUANTITY_FORCE));
  sw_form_add (form,
               pen,
               N_ ("Tie’s length unstretched"),
               sw_pen_tape (pen, strip->tie_length_m));
  if (isfinite (stretch_m))
    sw_form_add (form,
                 pen,
                 N_ ("Tie’s length at that pull"),
                 sw_pen_tape (pen, strip->tie_length_m + stretch_m));
}

static void
add_electric (const SwPen *pen, SwTable *form)
{
  const SwPower *power = &pen->solution->power;

  if (!power->feasible)
    return;
  sw_form_add (form,
               pen,
               N_ ("Current, white at the highest brightness allowed"),
               sw_pen_number (pen, power->strip_current_a, SW_QUANTITY_CURRENT));
  sw_form_add (form,
               pen,
               N_ ("Volts at the worst pixel then"),
               sw_pen_number (pen, power->worst_pixel_v, SW_QUANTITY_VOLTAGE));
  sw_form_add (form, pen, N_ ("Current, all pixels dark"), NULL);
}

void
sw_first_strip_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) form = sw_form_new ();

  sw_flow_text (
    flow,
    sw_pen_word (
      pen,
      N_ ("All strips are alike, so one that is wrong is wrong many times. Make one, "
          "hang it up for a night with its pull, light it, and fill this in. Where "
          "found and design differ, enter what you found in Settings, group Strips, "
          "tick that it was measured, and print these sheets again before you cut the "
          "rest.")));
  add_lengths (pen, form);
  add_weights (pen, form);
  add_electric (pen, form);
  sw_flow_table (flow, form);
  sw_flow_tick (
    flow,
    sw_pen_word (pen,
                 N_ ("It fits: no length is off by more than 3 mm (1/8″), current by "
                     "no more than a tenth. Then cut the rest.")));
}

static const SwColumn bench_columns[] = {
  { N_ ("Strip"), SW_TEXT_RIGHT, 0 },
  { N_ ("Pixel string: all lit"), SW_TEXT_CENTRE, 1 },
  { N_ ("In the strip: amps"), SW_TEXT_CENTRE, 1 },
  { N_ ("After an hour: amps"), SW_TEXT_CENTRE, 1 },
  { N_ ("Volts at the far end"), SW_TEXT_CENTRE, 1 },
  { N_ ("Good"), SW_TEXT_CENTRE, 0 },
};

static void
add_bench_row (SwTable *table, const char *name)
{
  const char *cells[] = { name,          SW_CELL_TICK,  SW_CELL_WRITE,
                          SW_CELL_WRITE, SW_CELL_WRITE, SW_CELL_TICK };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
say_bench (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autofree char *words = sw_step_text (
    pen->solution,
    N_ (
      "At {cap} white on {volts} a strip should draw {strip_amps}, and no pixel have less than "
      "{worst_volts}. More than a tenth off: find out why before the next."),
    pen->language);

  sw_flow_text (
    flow,
    sw_pen_word (
      pen,
      N_ ("Three looks: the string of pixels as it came, the finished strip, and the "
          "same strip after an hour lit. A pixel that fails now is changed in five "
          "minutes; on the tree it takes an evening.")));
  if (pen->solution->power.feasible)
    sw_flow_text (flow, words);
}

void
sw_bench_log_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwDesign *design = pen->solution->design;
  g_autoptr (SwTable) table = sw_table_new (bench_columns, G_N_ELEMENTS (bench_columns));

  say_bench (flow);
  for (int strip = 1; strip <= design->shape.strip_count; strip++) {
    g_autofree char *name = g_strdup_printf ("%d", strip);
    add_bench_row (table, name);
  }
  for (int spare = 0; spare < sw_bom_spare_strips (design); spare++)
    add_bench_row (table, sw_pen_word (pen, N_ ("spare")));
  if (pen->solution->topper_pixels->len > 0)
    add_bench_row (table, sw_pen_word (pen, N_ ("star")));
  sw_flow_table (flow, table);
}

#define SPOTS 12 /* places on the ring to measure; four are the least that count */

static const SwColumn spot_columns[] = {
  { N_ ("Azimuth"), SW_TEXT_RIGHT, 0 },
  { N_ ("Design: post’s middle to the pipe’s outer face"), SW_TEXT_RIGHT, 1 },
  { N_ ("Found"), SW_TEXT_RIGHT, 0 },
};

/* Round the whole ring, or from end to end of an arc. */
static double
spot_azimuth_deg (const SwDesign *design, int spot)
{
  const SwShape *shape = &design->shape;
  gboolean arc = design->stand.ring_span == SW_SPAN_ARC && shape->coverage_deg < 360;
  double step_deg = arc ? shape->coverage_deg / (SPOTS - 1) : 360.0 / SPOTS;
  double first_deg = arc ? shape->facing_deg - shape->coverage_deg / 2 : 0;

  return sw_azimuth_wrap_deg (first_deg + spot * step_deg);
}

static void
add_spots (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwDesign *design = pen->solution->design;
  double face_m = design->shape.ring_radius_m + pen->solution->ring_od_m / 2;
  g_autoptr (SwTable) table = sw_table_new (spot_columns, G_N_ELEMENTS (spot_columns));
  g_autofree char *face = sw_pen_tape (pen, face_m);

  for (int spot = 0; spot < SPOTS; spot++) {
    g_autofree char *azimuth =
      sw_pen_number (pen, round (spot_azimuth_deg (design, spot)), SW_QUANTITY_ANGLE);
    const char *cells[] = { azimuth, face, SW_CELL_WRITE };

    sw_table_add (table, SW_ROW_PLAIN, cells);
  }
  sw_flow_table (flow, table);
}

void
sw_as_built_form_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwSolution *solution = pen->solution;
  double face_m = solution->design->shape.ring_radius_m + solution->ring_od_m / 2;
  g_autoptr (SwTable) form = sw_form_new ();

  sw_flow_text (
    flow,
    sw_pen_word (
      pen,
      N_ ("No ring comes out round. Measure it where it stands, enter it in Settings, "
          "group As built, and the marks move so that the spacing is even again. "
          "Azimuth 0° points at the viewer and grows anticlockwise seen from above.")));
  sw_form_add (form,
               pen,
               N_ ("Round the outer face of the ring, if it is whole"),
               sw_pen_tape (pen, 2 * G_PI * face_m));
  sw_form_add (form,
               pen,
               N_ ("Crown’s hooks above the ground"),
               sw_pen_tape (pen, solution->design->shape.crown_height_m));
  sw_form_add (form,
               pen,
               N_ ("Ring’s middle above the ground"),
               sw_pen_tape (pen, solution->design->shape.ring_height_m));
  sw_form_add (form, pen, N_ ("Crown off the ring’s middle, to the viewer’s right"), NULL);
  sw_form_add (form, pen, N_ ("Crown off the ring’s middle, away from the viewer"), NULL);
  sw_flow_table (flow, form);
  add_spots (flow);
}
