// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/power-network.h"

#include <math.h>

static void
add_feed (GArray *feeds, int pixel)
{
  for (guint i = 0; i < feeds->len; i++) {
    if (g_array_index (feeds, int, i) == pixel)
      return; /* a feed that falls on a feed is that feed */
  }
  g_array_append_val (feeds, pixel);
}

static int
rising (gconstpointer a, gconstpointer b)
{
  return *(const int *) a - *(const int *) b;
}

GArray *
sw_power_feeds (const SwDesign *design)
{
  const SwPowerSetup *power = &design->power;
  GArray *feeds = g_array_new (FALSE, FALSE, sizeof (int));
  int pixels = design->strip.pixels;

  if (power->feed != SW_FEED_CROWN)
    add_feed (feeds, 1);
  if (power->feed != SW_FEED_RING)
    add_feed (feeds, pixels);
  for (int k = power->inject_every; k > 0 && 1 + k <= pixels; k += power->inject_every)
    add_feed (feeds, 1 + k);
  g_array_sort (feeds, rising);
  return feeds;
}

SwLadder
sw_power_ladder (const SwDesign *design, double share, const GArray *feeds)
{
  const SwPowerSetup *power = &design->power;
  double wire_m = power->wire_per_pixel_m > 0 ? power->wire_per_pixel_m : design->strip.pitch_m;

  return (SwLadder){
    .pixels = design->strip.pixels,
    .supply_v = power->supply_v,
    .pixel_a = power->pixel_a * share,
    .load = power->load,
    .link_ohm = 2 * power->strip_ohm_per_m * wire_m,
    .feed_ohm = 2 * power->feeder_ohm_per_m * power->feeder_m * power->strips_per_feeder,
    .feeds = (const int *) (gconstpointer) feeds->data,
    .n_feeds = feeds->len,
  };
}

typedef struct {
  SwLadderResult strip;
  double tree_a, tree_w, most_feed_a;
} Draw;

static Draw
draw_at (const SwDesign *design, double share, const GArray *feeds, double *feed_a)
{
  SwLadder ladder = sw_power_ladder (design, share, feeds);
  double topper = design->topper.kind == SW_TOPPER_STAR ? design->topper.pixels : 0;
  Draw draw = { .strip = sw_ladder_solve (&ladder, NULL, feed_a) };

  draw.tree_a =
    design->shape.strip_count * draw.strip.current_a + topper * design->power.pixel_a * share;
  draw.tree_w = design->power.supply_v * draw.tree_a;
  for (guint i = 0; i < feeds->len; i++)
    draw.most_feed_a = MAX (draw.most_feed_a, feed_a[i]);
  return draw;
}

/* Exactly full supplies do not ask for one more. */
static int
supplies_for (const SwPowerSetup *power, double tree_w)
{
  double supplies = tree_w / (power->supply_w * power->supply_load_max);

  return (int) MIN (ceil (supplies * (1 - 1e-12)), G_MAXINT);
}

static void
set_at_cap (SwPower *power, const SwDesign *design, const Draw *draw)
{
  power->feasible = TRUE;
  power->strip_current_a = draw->strip.current_a;
  power->tree_current_a = draw->tree_a;
  power->tree_w = draw->tree_w;
  power->worst_pixel_v = draw->strip.worst_v;
  power->worst_pixel = draw->strip.worst_pixel;
  power->strip_drop_v = design->power.supply_v - draw->strip.worst_v;
  power->most_feed_a = draw->most_feed_a;
  power->supplies = supplies_for (&design->power, draw->tree_w);
}

static void
set_average (SwPower *power, const SwDesign *design, const Draw *draw)
{
  power->average_w = draw->tree_w;
  power->evening_kwh = draw->tree_w * design->power.hours_per_evening / 1000;
}

static void
set_full_white (SwPower *power, const Draw *draw)
{
  power->full_white_feasible = TRUE;
  power->full_white_current_a = draw->tree_a;
  power->full_white_w = draw->tree_w;
  power->full_white_worst_v = draw->strip.worst_v;
  power->full_white_most_feed_a = draw->most_feed_a;
}

static const SwPower nothing_solved = {
  .strip_current_a = NAN,
  .tree_current_a = NAN,
  .tree_w = NAN,
  .worst_pixel_v = NAN,
  .strip_drop_v = NAN,
  .average_w = NAN,
  .evening_kwh = NAN,
  .full_white_current_a = NAN,
  .full_white_w = NAN,
  .full_white_worst_v = NAN,
  .full_white_most_feed_a = NAN,
  .most_feed_a = NAN,
};

void
sw_power_init (SwPower *power, const SwDesign *design)
{
  g_autoptr (GArray) feeds = sw_power_feeds (design);
  g_autofree double *feed_a = g_new0 (double, feeds->len);
  Draw draw = draw_at (design, design->power.cap, feeds, feed_a);

  *power = nothing_solved;
  power->n_feeds = (int) feeds->len;
  if (!draw.strip.feasible)
    return;
  set_at_cap (power, design, &draw);
  draw = draw_at (design, MIN (design->power.brightness, design->power.cap), feeds, feed_a);
  set_average (power, design, &draw);
  draw = draw_at (design, 1, feeds, feed_a);
  if (draw.strip.feasible)
    set_full_white (power, &draw);
}

gboolean
sw_power_volts (const SwDesign *design, double share, double *volts)
{
  g_autoptr (GArray) feeds = sw_power_feeds (design);
  SwLadder ladder = sw_power_ladder (design, share, feeds);

  return sw_ladder_solve (&ladder, volts, NULL).feasible;
}
