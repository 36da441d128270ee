// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/working-strip.h"

#include "engine/power-network.h"

#include <math.h>

double
sw_pixel_wire_m (const SwDesign *design)
{
  double wire_m = design->power.wire_per_pixel_m;

  return wire_m > 0 ? wire_m : design->strip.pitch_m;
}

typedef struct {
  SwLadder ladder;
  double *volts; /* owned */
  GArray *feeds; /* owned: int */
} Strip;

static gboolean
strip_init (Strip *strip, const SwDesign *design, double share)
{
  strip->feeds = sw_power_feeds (design);
  strip->ladder = sw_power_ladder (design, share, strip->feeds);
  strip->volts = g_new0 (double, strip->ladder.pixels);
  return sw_ladder_solve (&strip->ladder, strip->volts, NULL).feasible;
}

static void
strip_clear (Strip *strip)
{
  g_free (strip->volts);
  g_array_unref (strip->feeds);
}

static double
pixel_amps (const Strip *strip, int pixel)
{
  const SwLadder *ladder = &strip->ladder;

  return ladder->load == SW_LOAD_CONSTANT_POWER
           ? ladder->pixel_a * ladder->supply_v / strip->volts[pixel - 1]
           : ladder->pixel_a;
}

static double
sum_amps (const Strip *strip)
{
  double sum = 0;

  for (int pixel = 1; pixel <= strip->ladder.pixels; pixel++)
    sum += pixel_amps (strip, pixel);
  return sum;
}

/* What leaves a pixel's node towards a neighbour, A. */
static double
amps_towards (const Strip *strip, int pixel, int neighbour)
{
  double ohm = strip->ladder.link_ohm;

  if (neighbour < 1 || neighbour > strip->ladder.pixels || !(ohm > 0))
    return 0;
  return (strip->volts[pixel - 1] - strip->volts[neighbour - 1]) / ohm;
}

/* Feeds that no resistance tells apart share evenly. */
static double
amps_of_feed (const Strip *strip, int pixel)
{
  const SwLadder *ladder = &strip->ladder;

  if (ladder->feed_ohm > 0)
    return (ladder->supply_v - strip->volts[pixel - 1]) / ladder->feed_ohm;
  if (!(ladder->link_ohm > 0))
    return sum_amps (strip) / strip->feeds->len;
  return pixel_amps (strip, pixel) + amps_towards (strip, pixel, pixel - 1) +
         amps_towards (strip, pixel, pixel + 1);
}

static int
lowest_pixel (const Strip *strip)
{
  int lowest = 1;

  for (int pixel = 2; pixel <= strip->ladder.pixels; pixel++) {
    if (strip->volts[pixel - 1] < strip->volts[lowest - 1] - 1e-12 * strip->ladder.supply_v)
      lowest = pixel;
  }
  return lowest;
}

static int
feed_nearest_to (const Strip *strip, int pixel)
{
  int nearest = g_array_index (strip->feeds, int, 0);

  for (guint i = 1; i < strip->feeds->len; i++) {
    int feed = g_array_index (strip->feeds, int, i);
    if (ABS (feed - pixel) < ABS (nearest - pixel))
      nearest = feed;
  }
  return nearest;
}

static void
add_feeds (SwWay *way, const Strip *strip)
{
  double sum = 0;

  way->first_feed_a = amps_of_feed (strip, g_array_index (strip->feeds, int, 0));
  for (guint i = 0; i < strip->feeds->len; i++) {
    double amps = amps_of_feed (strip, g_array_index (strip->feeds, int, i));
    sum += amps;
    way->most_feed_a = MAX (way->most_feed_a, amps);
  }
  way->other_feeds_a = sum - way->most_feed_a;
}

static void
add_means (SwWay *way, const Strip *strip)
{
  int pixels = strip->ladder.pixels;

  for (int i = 0; i < pixels; i++) {
    way->mean_v += strip->volts[i];
    way->mean_per_v += 1 / strip->volts[i];
  }
  way->mean_v /= pixels;
  way->mean_per_v /= pixels;
}

SwWay
sw_way_at (const SwDesign *design, double share)
{
  SwWay way = { .feed_a = NAN, .link_sum_a = NAN };
  Strip strip;

  if (strip_init (&strip, design, share)) {
    int lowest = lowest_pixel (&strip), feed = feed_nearest_to (&strip, lowest);
    double ohm = strip.ladder.link_ohm;
    way = (SwWay){ .feed = feed,
                   .links = lowest - feed,
                   .lowest_v = strip.volts[lowest - 1],
                   .feed_a = amps_of_feed (&strip, feed),
                   .strip_a = sum_amps (&strip) };
    if (ohm > 0)
      way.link_sum_a = (strip.volts[feed - 1] - strip.volts[lowest - 1]) / ohm;
    add_feeds (&way, &strip);
    add_means (&way, &strip);
  }
  strip_clear (&strip);
  return way;
}
