// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/wiring.h"

#include "engine/fuse.h"

#include <math.h>

static const double mains_of_units[] = { [SW_UNITS_US] = 120, [SW_UNITS_METRIC] = 230 };

int
sw_wiring_shared (const SwDesign *design)
{
  return MIN (design->power.strips_per_feeder, design->shape.strip_count);
}

double
sw_class_2_w (double supply_v)
{
  return MIN (5 * supply_v, 100);
}

static double
feeder_ohm (const SwPowerSetup *power)
{
  return 2 * power->feeder_ohm_per_m * power->feeder_m;
}

static double
star_a (const SwDesign *design)
{
  gboolean lit = design->topper.kind == SW_TOPPER_STAR && design->topper.pixels > 0;

  return lit ? design->topper.pixels * design->power.pixel_a * design->power.cap : NAN;
}

/* What the pixels of one strip turn into light and heat of their own. */
static double
pixel_watts (const SwLadder *ladder, const double *volts)
{
  double sum_v = 0;

  if (ladder->load == SW_LOAD_CONSTANT_POWER)
    return ladder->pixels * ladder->pixel_a * ladder->supply_v;
  for (int i = 0; i < ladder->pixels; i++)
    sum_v += volts[i];
  return sum_v * ladder->pixel_a;
}

/* What the supply gives and no pixel gets stays in the wires. */
static void
set_heat (SwWiring *wiring, const SwDesign *design, const SwLadder *ladder, double pixels_w)
{
  double in_w = 0, feeder_w = 0;

  for (guint i = 0; i < wiring->feeds->len; i++) {
    double strip_a = g_array_index (wiring->feeds, SwFeedPoint, i).strip_a;
    in_w += ladder->supply_v * strip_a;
    feeder_w += strip_a * strip_a * ladder->feed_ohm;
  }
  wiring->strip_heat_w = design->shape.strip_count * MAX (0, in_w - feeder_w - pixels_w);
  wiring->feeder_heat_w = design->shape.strip_count * feeder_w;
  if (!isnan (wiring->star_a))
    wiring->feeder_heat_w += wiring->star_a * wiring->star_a * feeder_ohm (&design->power);
}

static void
set_feeds (SwWiring *wiring, const SwDesign *design, const GArray *feeds, const double *feed_a)
{
  for (guint i = 0; i < feeds->len; i++) {
    SwFeedPoint point = { .pixel = g_array_index (feeds, int, i), .strip_a = feed_a[i] };
    point.feeder_a = feed_a[i] * sw_wiring_shared (design);
    point.fuse_a = sw_fuse_for (point.feeder_a);
    point.drop_v = point.feeder_a * feeder_ohm (&design->power);
    g_array_append_val (wiring->feeds, point);
  }
}

/* A strip's wire is the thinnest behind a fuse: where the feeder's is too large for it, each
 * feed of a strip has one of its own. */
static void
set_fuses (SwWiring *wiring, const SwDesign *design, const SwPower *power)
{
  double strip_most_a = design->power.strip_wire_max_a;
  double own_a = sw_fuse_for (power->most_feed_a);

  wiring->feeder_a = power->most_feed_a * sw_wiring_shared (design);
  wiring->feeder_drop_v = wiring->feeder_a * feeder_ohm (&design->power);
  wiring->feeder_fuse_a = sw_fuse_for (wiring->feeder_a);
  wiring->feeder_full_white_a = power->full_white_most_feed_a * sw_wiring_shared (design);
  wiring->strip_fused = !(wiring->feeder_fuse_a <= strip_most_a);
  wiring->strip_fuse_a = wiring->strip_fused && own_a <= strip_most_a ? own_a : NAN;
  wiring->star_a = star_a (design);
  wiring->star_fuse_a = sw_fuse_for (wiring->star_a);
}

static void
set_mains (SwWiring *wiring, const SwDesign *design, const SwPower *power)
{
  wiring->mains_v = mains_of_units[design->units];
  wiring->mains_w = power->tree_w / SW_SUPPLY_EFFICIENCY;
  wiring->mains_a = wiring->mains_w / wiring->mains_v;
  wiring->mains_most_a = wiring->mains_a / SW_SUPPLY_POWER_FACTOR;
}

static const SwWiring nothing_solved = {
  .feeder_a = NAN,
  .feeder_drop_v = NAN,
  .feeder_fuse_a = NAN,
  .feeder_full_white_a = NAN,
  .strip_fuse_a = NAN,
  .star_a = NAN,
  .star_fuse_a = NAN,
  .strip_heat_w = NAN,
  .feeder_heat_w = NAN,
  .mains_w = NAN,
  .mains_a = NAN,
  .mains_most_a = NAN,
};

static void
count_feeders (SwWiring *wiring, const SwDesign *design, guint feeds)
{
  int shared = sw_wiring_shared (design);

  wiring->groups = (design->shape.strip_count + shared - 1) / shared;
  wiring->feeders = wiring->groups * (int) feeds + !isnan (star_a (design));
}

void
sw_wiring_init (SwWiring *wiring, const SwDesign *design, const SwPower *power)
{
  g_autoptr (GArray) feeds = sw_power_feeds (design);
  SwLadder ladder = sw_power_ladder (design, design->power.cap, feeds);
  g_autofree double *volts = g_new (double, ladder.pixels);
  g_autofree double *feed_a = g_new0 (double, feeds->len);

  *wiring = nothing_solved;
  wiring->feeds = g_array_new (FALSE, FALSE, sizeof (SwFeedPoint));
  wiring->feeder_wire = sw_wire_like (design->power.feeder_ohm_per_m);
  wiring->feeder_awg = wiring->feeder_wire->size;
  wiring->mains_v = mains_of_units[design->units];
  wiring->class_2_w = sw_class_2_w (design->power.supply_v);
  count_feeders (wiring, design, feeds->len);
  if (!power->feasible)
    return;
  sw_ladder_solve (&ladder, volts, feed_a);
  set_feeds (wiring, design, feeds, feed_a);
  set_fuses (wiring, design, power);
  set_heat (wiring, design, &ladder, pixel_watts (&ladder, volts));
  set_mains (wiring, design, power);
}

void
sw_wiring_clear (SwWiring *wiring)
{
  g_clear_pointer (&wiring->feeds, g_array_unref);
}
