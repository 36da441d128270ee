// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/step-values.h"

#include "engine/bom-counts.h"
#include "engine/units.h"

#include <math.h>
#include <string.h>

#define HEMS_M 0.10 /* as the parts list has it: folded round the two grommets */
#define GUY_ENDS_M 0.5

double
sw_strip_cut_m (const SwSolution *solution)
{
  const SwStrip *strip = &solution->design->strip;
  double below_m = MAX (0, solution->cone.tail_m - strip->tie_length_m);

  return strip->lead_m + solution->cone.run_m + below_m + HEMS_M;
}

int
sw_strips_up (const SwSolution *solution)
{
  int up = 0;

  for (int strip = 1; strip <= solution->design->shape.strip_count; strip++)
    up += sw_data_runs_up (&solution->data, solution->design, strip);
  return up;
}

double
sw_tie_stretch_m (const SwDesign *design)
{
  const SwStrip *strip = &design->strip;

  return strip->tie_n_per_m > 0 ? strip->tension_n / strip->tie_n_per_m : NAN;
}

#define VALUE(name, expression)                                                                \
  static double name (const SwSolution *s)                                                     \
  {                                                                                            \
    return expression;                                                                         \
  }

/* clang-format off */
VALUE (strips, s->design->shape.strip_count)
VALUE (spare, sw_bom_spare_strips (s->design))
VALUE (made, s->design->shape.strip_count + sw_bom_spare_strips (s->design))
VALUE (up, sw_strips_up (s))
VALUE (down, s->design->shape.strip_count - sw_strips_up (s))
VALUE (pixels, s->design->strip.pixels)
VALUE (pitch, s->design->strip.pitch_m)
VALUE (lead, s->design->strip.lead_m)
VALUE (lit, s->cone.run_m)
VALUE (slant, s->cone.slant_m)
VALUE (tail, s->cone.tail_m)
VALUE (tie, s->design->strip.tie_length_m)
VALUE (stretch, sw_tie_stretch_m (s->design))
VALUE (pull, s->design->strip.tension_n)
VALUE (star_pixels, s->topper_pixels->len)
VALUE (star_mass, s->design->topper.mass_kg)
VALUE (stub, s->heights.stub_m)
VALUE (overall, s->cone.overall_height_m)
VALUE (crown, s->design->shape.crown_height_m)
VALUE (ring_height, s->design->shape.ring_height_m)
VALUE (ring_radius, s->design->shape.ring_radius_m)
VALUE (ring_face, s->design->shape.ring_radius_m + s->ring_od_m / 2)
VALUE (spacing, s->cone.chord_ring_m)
VALUE (coverage, s->design->shape.coverage_deg)
VALUE (hook_hole, s->fittings.hook == NULL ? NAN : s->fittings.hook->hole_m)
VALUE (flange_hole, s->fittings.post_top.flange == NULL ? NAN : s->fittings.post_top.flange->hole_m)
VALUE (foot_hole, s->fittings.sleeve_foot.flange == NULL ? NAN : s->fittings.sleeve_foot.flange->hole_m)
VALUE (post, s->heights.post_m)
VALUE (sleeve, s->heights.sleeve_m)
VALUE (sleeve_depth, s->design->stand.sleeve_depth_m)
VALUE (lap_start, s->foot.lap_start_m)
VALUE (lap_depth, s->foot.lap_depth_m)
VALUE (lap_width, s->foot.lap_width_m)
VALUE (bolt_off, s->foot.bolt_off_m)
VALUE (slabs, s->foot.slabs)
VALUE (slabs_each, s->foot.slabs / 4)
VALUE (slab_off, s->foot.slab_off_m)
VALUE (bags, s->foot.bags)
VALUE (cure, SW_BAG_CURE_DAYS)
VALUE (ballast, s->foot.mass_reached_kg)
VALUE (hole_across, s->design->stand.socket_diameter_m)
VALUE (hole_deep, s->design->stand.socket_depth_m + SW_GRAVEL_M)
VALUE (gravel, SW_GRAVEL_M)
VALUE (plumb, SW_PLUMB_M)
VALUE (ring_pieces, s->ring.joints.parts)
VALUE (ring_joints, s->ring.joints.count)
VALUE (ring_sections, s->design->stand.ring_sections)
VALUE (ring_piece, s->ring.joints.part_m)
VALUE (ring_ties, s->design->stand.ring_ties)
VALUE (tie_hold, s->design->stand.tie_hold_n)
VALUE (spokes, s->ring.joints.spokes)
VALUE (guys, s->design->guys.count)
VALUE (guy_height, s->design->guys.height_m)
VALUE (guy_radius, s->design->guys.radius_m)
VALUE (guy_line, hypot (s->design->guys.height_m, s->design->guys.radius_m) + GUY_ENDS_M)
VALUE (guy_pull, s->design->guys.pretension_n)
VALUE (stake_hold, s->design->guys.stake_hold_n)
VALUE (feeders, s->wiring.feeders)
VALUE (feeds, s->power.n_feeds)
VALUE (feeder, s->design->power.feeder_m)
VALUE (volts, s->design->power.supply_v)
VALUE (volts_least, 0.97 * s->design->power.supply_v)
VALUE (volts_most, 1.03 * s->design->power.supply_v)
VALUE (least_volts, s->design->power.min_pixel_v)
VALUE (cap, s->design->power.cap)
VALUE (strip_amps, s->power.strip_current_a)
VALUE (tree_amps, s->power.tree_current_a)
VALUE (worst_volts, s->power.worst_pixel_v)
VALUE (worst_pixel, s->power.worst_pixel)
VALUE (supplies, s->zones.count)
VALUE (boxes, ceil (s->zones.count / 2.0))
VALUE (ports, s->data.ports)
VALUE (data_lead, s->design->data.lead_m)
VALUE (universe, s->design->data.first_universe)
VALUE (lift, s->lift_kg)
VALUE (fall, s->cone.overall_height_m)
/* clang-format on */

typedef struct {
  const char *name;
  double (*value) (const SwSolution *s);
  SwQuantity quantity;
  gboolean tape; /* as a tape measure has it */
} Value;

/* In the alphabet's order of names, a group a quantity. */
static const Value values[] = {
  { "bags", bags, SW_QUANTITY_COUNT, FALSE },
  { "boxes", boxes, SW_QUANTITY_COUNT, FALSE },
  { "cure", cure, SW_QUANTITY_COUNT, FALSE },
  { "down", down, SW_QUANTITY_COUNT, FALSE },
  { "feeders", feeders, SW_QUANTITY_COUNT, FALSE },
  { "feeds", feeds, SW_QUANTITY_COUNT, FALSE },
  { "guys", guys, SW_QUANTITY_COUNT, FALSE },
  { "made", made, SW_QUANTITY_COUNT, FALSE },
  { "pixels", pixels, SW_QUANTITY_COUNT, FALSE },
  { "ports", ports, SW_QUANTITY_COUNT, FALSE },
  { "ring_joints", ring_joints, SW_QUANTITY_COUNT, FALSE },
  { "ring_pieces", ring_pieces, SW_QUANTITY_COUNT, FALSE },
  { "ring_sections", ring_sections, SW_QUANTITY_COUNT, FALSE },
  { "ring_ties", ring_ties, SW_QUANTITY_COUNT, FALSE },
  { "slabs", slabs, SW_QUANTITY_COUNT, FALSE },
  { "slabs_each", slabs_each, SW_QUANTITY_COUNT, FALSE },
  { "spare", spare, SW_QUANTITY_COUNT, FALSE },
  { "spokes", spokes, SW_QUANTITY_COUNT, FALSE },
  { "star_pixels", star_pixels, SW_QUANTITY_COUNT, FALSE },
  { "strips", strips, SW_QUANTITY_COUNT, FALSE },
  { "supplies", supplies, SW_QUANTITY_COUNT, FALSE },
  { "universe", universe, SW_QUANTITY_COUNT, FALSE },
  { "up", up, SW_QUANTITY_COUNT, FALSE },
  { "worst_pixel", worst_pixel, SW_QUANTITY_COUNT, FALSE },
  { "cap", cap, SW_QUANTITY_SHARE, FALSE },
  { "coverage", coverage, SW_QUANTITY_ANGLE, FALSE },
  { "ballast", ballast, SW_QUANTITY_MASS, FALSE },
  { "lift", lift, SW_QUANTITY_MASS, FALSE },
  { "star_mass", star_mass, SW_QUANTITY_MASS, FALSE },
  { "guy_pull", guy_pull, SW_QUANTITY_FORCE, FALSE },
  { "pull", pull, SW_QUANTITY_FORCE, FALSE },
  { "stake_hold", stake_hold, SW_QUANTITY_FORCE, FALSE },
  { "tie_hold", tie_hold, SW_QUANTITY_FORCE, FALSE },
  { "least_volts", least_volts, SW_QUANTITY_VOLTAGE, FALSE },
  { "volts", volts, SW_QUANTITY_VOLTAGE, FALSE },
  { "volts_least", volts_least, SW_QUANTITY_VOLTAGE, FALSE },
  { "volts_most", volts_most, SW_QUANTITY_VOLTAGE, FALSE },
  { "worst_volts", worst_volts, SW_QUANTITY_VOLTAGE, FALSE },
  { "strip_amps", strip_amps, SW_QUANTITY_CURRENT, FALSE },
  { "tree_amps", tree_amps, SW_QUANTITY_CURRENT, FALSE },
  { "crown", crown, SW_QUANTITY_LENGTH, FALSE },
  { "data_lead", data_lead, SW_QUANTITY_LENGTH, FALSE },
  { "fall", fall, SW_QUANTITY_LENGTH, FALSE },
  { "feeder", feeder, SW_QUANTITY_LENGTH, FALSE },
  { "guy_height", guy_height, SW_QUANTITY_LENGTH, FALSE },
  { "guy_line", guy_line, SW_QUANTITY_LENGTH, FALSE },
  { "guy_radius", guy_radius, SW_QUANTITY_LENGTH, FALSE },
  { "overall", overall, SW_QUANTITY_LENGTH, FALSE },
  { "ring_height", ring_height, SW_QUANTITY_LENGTH, FALSE },
  { "bolt_off", bolt_off, SW_QUANTITY_LENGTH, TRUE },
  { "cut", sw_strip_cut_m, SW_QUANTITY_LENGTH, TRUE },
  { "foot_hole", foot_hole, SW_QUANTITY_SHORT_LENGTH, TRUE },
  { "gravel", gravel, SW_QUANTITY_LENGTH, TRUE },
  { "flange_hole", flange_hole, SW_QUANTITY_SHORT_LENGTH, FALSE },
  { "hole_across", hole_across, SW_QUANTITY_LENGTH, TRUE },
  { "hole_deep", hole_deep, SW_QUANTITY_LENGTH, TRUE },
  { "hook_hole", hook_hole, SW_QUANTITY_SHORT_LENGTH, FALSE },
  { "lap_depth", lap_depth, SW_QUANTITY_LENGTH, TRUE },
  { "lap_start", lap_start, SW_QUANTITY_LENGTH, TRUE },
  { "lap_width", lap_width, SW_QUANTITY_LENGTH, TRUE },
  { "lead", lead, SW_QUANTITY_LENGTH, TRUE },
  { "lit", lit, SW_QUANTITY_LENGTH, TRUE },
  { "pitch", pitch, SW_QUANTITY_LENGTH, TRUE },
  { "plumb", plumb, SW_QUANTITY_LENGTH, TRUE },
  { "post", post, SW_QUANTITY_LENGTH, TRUE },
  { "ring_face", ring_face, SW_QUANTITY_LENGTH, TRUE },
  { "ring_piece", ring_piece, SW_QUANTITY_LENGTH, TRUE },
  { "ring_radius", ring_radius, SW_QUANTITY_LENGTH, TRUE },
  { "slab_off", slab_off, SW_QUANTITY_LENGTH, TRUE },
  { "slant", slant, SW_QUANTITY_LENGTH, TRUE },
  { "sleeve", sleeve, SW_QUANTITY_LENGTH, TRUE },
  { "sleeve_depth", sleeve_depth, SW_QUANTITY_LENGTH, TRUE },
  { "spacing", spacing, SW_QUANTITY_LENGTH, TRUE },
  { "stretch", stretch, SW_QUANTITY_LENGTH, TRUE },
  { "stub", stub, SW_QUANTITY_LENGTH, TRUE },
  { "tail", tail, SW_QUANTITY_LENGTH, TRUE },
  { "tie", tie, SW_QUANTITY_LENGTH, TRUE },
};

static const Value *
find (const char *name, gsize length)
{
  for (guint i = 0; i < G_N_ELEMENTS (values); i++) {
    if (strncmp (values[i].name, name, length) == 0 && values[i].name[length] == '\0')
      return &values[i];
  }
  return NULL;
}

double
sw_step_value (const SwSolution *solution, const char *name)
{
  const Value *value = find (name, strlen (name));

  return value == NULL ? NAN : value->value (solution);
}

static void
append_value (GString *text,
              const SwSolution *solution,
              const Value *value,
              const SwLanguage *language)
{
  double number = value->value (solution);
  SwUnits units = solution->design->units;
  g_autofree char *shown = !isfinite (number) ? g_strdup ("–")
                           : value->tape
                             ? sw_units_format_tape (number, units, language)
                             : sw_units_format (number, value->quantity, units, language);

  g_string_append (text, shown);
}

char *
sw_step_text (const SwSolution *solution, const char *id, const SwLanguage *language)
{
  GString *text = g_string_new (NULL);
  const char *rest = sw_language_text (language, id);

  while (*rest != '\0') {
    const char *end = *rest == '{' ? strchr (rest, '}') : NULL;
    const Value *value = end == NULL ? NULL : find (rest + 1, (gsize) (end - rest) - 1);

    if (value != NULL)
      append_value (text, solution, value, language);
    else
      g_string_append_c (text, *rest);
    rest = value != NULL ? end + 1 : rest + 1;
  }
  return g_string_free (text, FALSE);
}
