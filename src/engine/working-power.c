// SPDX-License-Identifier: GPL-3.0-or-later
/* working-power.c: what the lights draw. The ladder has no short formula; Kirchhoff's laws
 * round it do: currents at a node add up, and volts along a way add up.
 */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define KIRCHHOFF "Kirchhoff's laws, solved node by node"
#define LADDER                                                                                 \
  N_ (                                                                                         \
    "the ladder of pixels, wires and feeds is solved node by node; the relation holds along "  \
    "the way from the nearest feed to that pixel")
#define ALIKE N_ ("all strips are alike, and fed alike; wires at 20 °C, joints without loss")
#define PLAIN N_ ("plain pixels: each draws the same current at any voltage")
#define LABELS N_ ("supplies as are common; their labels count")
#define REGULATED N_ ("regulated pixels: each draws the same power at any voltage")

static gboolean
is_regulated (const SwSolution *s)
{
  return s->design->power.load == SW_LOAD_CONSTANT_POWER;
}

static gboolean
is_regulated_with_star (const SwSolution *s)
{
  return is_regulated (s) && sw_working_has_star (s);
}

static gboolean
has_one_feed (const SwSolution *s)
{
  return s->power.n_feeds == 1;
}

static double
average_share (const SwSolution *s)
{
  return MIN (s->design->power.brightness, s->design->power.cap);
}

static double
pixel_wire_m (const SwSolution *s)
{
  double wire_m = s->design->power.wire_per_pixel_m;

  return wire_m > 0 ? wire_m : s->design->strip.pitch_m;
}

static double
link_ohm (const SwDesign *design, double wire_m)
{
  return 2 * design->power.strip_ohm_per_m * wire_m;
}

static double
feed_ohm (const SwPowerSetup *power)
{
  return 2 * power->feeder_ohm_per_m * power->feeder_m * power->strips_per_feeder;
}

/* A strip solved once more, for what the result alone does not keep. */
typedef struct {
  const SwSolution *s;
  double share;
  int pixels;
  double *volts; /* owned */
  GArray *feeds; /* owned: int */
} Strip;

static gboolean
strip_init (Strip *strip, const SwSolution *s, double share)
{
  *strip = (Strip){ .s = s, .share = share, .pixels = s->design->strip.pixels };
  strip->volts = g_new0 (double, strip->pixels);
  strip->feeds = sw_power_feeds (s->design);
  return sw_power_volts (s->design, share, strip->volts);
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
  const SwPowerSetup *power = &strip->s->design->power;
  double full_a = power->pixel_a * strip->share;

  return is_regulated (strip->s) ? full_a * power->supply_v / strip->volts[pixel - 1] : full_a;
}

static double
sum_amps (const Strip *strip)
{
  double sum = 0;

  for (int pixel = 1; pixel <= strip->pixels; pixel++)
    sum += pixel_amps (strip, pixel);
  return sum;
}

/* What leaves a pixel's node towards a neighbour, A. */
static double
amps_towards (const Strip *strip, int pixel, int neighbour)
{
  double ohm = link_ohm (strip->s->design, pixel_wire_m (strip->s));

  if (neighbour < 1 || neighbour > strip->pixels || !(ohm > 0))
    return 0;
  return (strip->volts[pixel - 1] - strip->volts[neighbour - 1]) / ohm;
}

/* Feeds that no resistance tells apart share evenly. */
static double
amps_of_feed (const Strip *strip, int pixel)
{
  const SwPowerSetup *power = &strip->s->design->power;

  if (feed_ohm (power) > 0)
    return (power->supply_v - strip->volts[pixel - 1]) / feed_ohm (power);
  if (!(link_ohm (strip->s->design, pixel_wire_m (strip->s)) > 0))
    return sum_amps (strip) / strip->feeds->len;
  return pixel_amps (strip, pixel) + amps_towards (strip, pixel, pixel - 1) +
         amps_towards (strip, pixel, pixel + 1);
}

static int
lowest_pixel (const Strip *strip)
{
  int lowest = 1;

  for (int pixel = 2; pixel <= strip->pixels; pixel++) {
    if (strip->volts[pixel - 1] <
        strip->volts[lowest - 1] - 1e-12 * strip->s->design->power.supply_v)
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

typedef struct {
  int feed, links; /* links > 0: up the strip */
  double feed_a, link_sum_a, mean_per_v, strip_a, other_feeds_a;
} Way;

static double
other_feeds_a (const Strip *strip)
{
  double sum = 0, most = 0;

  for (guint i = 0; i < strip->feeds->len; i++) {
    double amps = amps_of_feed (strip, g_array_index (strip->feeds, int, i));
    sum += amps;
    most = MAX (most, amps);
  }
  return sum - most;
}

static double
mean_per_v (const Strip *strip)
{
  double sum = 0;

  for (int i = 0; i < strip->pixels; i++)
    sum += 1 / strip->volts[i];
  return sum / strip->pixels;
}

/* From the nearest feed to the pixel with the lowest voltage. */
static Way
way_at (const SwSolution *s, double share)
{
  Way way = { .feed_a = NAN, .link_sum_a = NAN };
  Strip strip;

  if (strip_init (&strip, s, share)) {
    int lowest = lowest_pixel (&strip), feed = feed_nearest_to (&strip, lowest);
    double ohm = link_ohm (s->design, pixel_wire_m (s));
    way = (Way){ .feed = feed,
                 .links = lowest - feed,
                 .feed_a = amps_of_feed (&strip, feed),
                 .mean_per_v = mean_per_v (&strip),
                 .strip_a = sum_amps (&strip),
                 .other_feeds_a = other_feeds_a (&strip) };
    if (ohm > 0)
      way.link_sum_a = (strip.volts[feed - 1] - strip.volts[lowest - 1]) / ohm;
    else
      way.link_sum_a = 0;
  }
  strip_clear (&strip);
  return way;
}

static double
feed_a (const SwSolution *s)
{
  return way_at (s, s->design->power.cap).feed_a;
}

static double
link_sum_a (const SwSolution *s)
{
  return way_at (s, s->design->power.cap).link_sum_a;
}

static double
feed_pixel (const SwSolution *s)
{
  return way_at (s, s->design->power.cap).feed;
}

static double
links_away (const SwSolution *s)
{
  return way_at (s, s->design->power.cap).links;
}

static double
mean_inverse (const SwSolution *s)
{
  return way_at (s, s->design->power.cap).mean_per_v;
}

static double
rest_of_feeds_a (const SwSolution *s)
{
  return way_at (s, s->design->power.cap).other_feeds_a;
}

static double
white_feed_a (const SwSolution *s)
{
  return way_at (s, 1).feed_a;
}

static double
white_link_sum_a (const SwSolution *s)
{
  return way_at (s, 1).link_sum_a;
}

static double
white_strip_a (const SwSolution *s)
{
  return way_at (s, 1).strip_a;
}

static double
average_strip_a (const SwSolution *s)
{
  return way_at (s, average_share (s)).strip_a;
}

/* Σ over the feeds of a strip. */
static double
feed_squares (const SwSolution *s)
{
  double sum = 0;

  for (guint i = 0; i < s->wiring.feeds->len; i++) {
    double amps = g_array_index (s->wiring.feeds, SwFeedPoint, i).strip_a;
    sum += amps * amps;
  }
  return sum;
}

static double
white_most_feed_a (const SwSolution *s)
{
  return s->power.full_white_most_feed_a;
}

static double
feeds_a_strip (const SwSolution *s)
{
  return s->power.n_feeds;
}

static gboolean
has_lit_star (const SwSolution *s)
{
  return !isnan (s->wiring.star_a);
}

static const SwWorkingTerm terms[] = {
  { "pixel_wire_m",
    pixel_wire_m,
    0,
    N_ ("wire between two pixels: as entered, else the pitch"),
    "strip.pitch_m, power.wire_per_pixel_m" },
  { "feed_a", feed_a, 0, N_ ("current of the feed nearest to the worst pixel"), KIRCHHOFF },
  { "feed_pixel", feed_pixel, 0, N_ ("pixel at which that feed joins"), "the feeds' places" },
  { "links_up",
    links_away,
    0,
    N_ ("how many pixels above it the voltage is lowest; below 0: under it"),
    KIRCHHOFF },
  { "link_sum_a",
    link_sum_a,
    0,
    N_ ("currents between neighbouring pixels, added up from that feed to the worst pixel"),
    KIRCHHOFF },
  { "mean_per_v", mean_inverse, 0, N_ ("mean over the pixels of 1/voltage"), KIRCHHOFF },
  { "other_feeds_a",
    rest_of_feeds_a,
    0,
    N_ ("currents of the strip's other feeds, added up"),
    KIRCHHOFF },
  { "average_strip_a",
    average_strip_a,
    0,
    N_ ("current of a strip at the average brightness, pixel by pixel"),
    KIRCHHOFF },
  { "white_feed_a",
    white_feed_a,
    0,
    N_ ("current of the feed nearest to the worst pixel, full white"),
    KIRCHHOFF },
  { "white_link_sum_a",
    white_link_sum_a,
    0,
    N_ ("currents between neighbouring pixels from that feed to it, added up, full white"),
    KIRCHHOFF },
  { "white_strip_a", white_strip_a, 0, N_ ("current of a strip, full white"), KIRCHHOFF },
  { "white_most_feed_a",
    white_most_feed_a,
    0,
    N_ ("largest current through one strip's feed, full white"),
    KIRCHHOFF },
  { "feed_squares_a2",
    feed_squares,
    0,
    N_ ("currents of a strip's feeds, each squared, added up"),
    KIRCHHOFF },
  { "feeds_a_strip", feeds_a_strip, 0, N_ ("places where power enters a strip"), "count" },
  { "supply_efficiency",
    NULL,
    SW_SUPPLY_EFFICIENCY,
    N_ ("what of the mains power a supply turns into output"),
    "common practice, no source" },
  { "supply_power_factor",
    NULL,
    SW_SUPPLY_POWER_FACTOR,
    N_ ("power factor of supplies that do not correct it"),
    "common practice, no source" },
};

static const SwWorkingRow rows[] = {
  { .key = "power.strip_current_a",
    .applies = is_regulated,
    .formula = "strip.pixels·pixel_a·cap·supply_v·mean_per_v",
    .how = N_ ("Newton's method from the supply voltage; the relation holds at the solution"),
    .assumes = REGULATED },
  { .key = "power.strip_current_a", .formula = "strip.pixels·pixel_a·cap", .assumes = PLAIN },
  { .key = "power.tree_current_a",
    .applies = sw_working_has_star,
    .formula = "strip_count·strip_current_a + topper.pixels·pixel_a·cap",
    .assumes = ALIKE },
  { .key = "power.tree_current_a", .formula = "strip_count·strip_current_a", .assumes = ALIKE },
  { .key = "power.tree_w", .formula = "supply_v·tree_current_a" },
  { .key = "power.worst_pixel_v",
    .formula = "supply_v − 2·feeder_ohm_per_m·feeder_m·strips_per_feeder·feed_a − "
               "2·strip_ohm_per_m·pixel_wire_m·link_sum_a",
    .how = LADDER,
    .assumes = ALIKE },
  { .key = "power.worst_pixel",
    .formula = "feed_pixel + links_up",
    .how = N_ ("looked for among all pixels; the lowest of those that share the voltage") },
  { .key = "power.strip_drop_v", .formula = "supply_v − worst_pixel_v" },
  { .key = "power.supplies",
    .formula = "ceil(tree_w/(supply_w·supply_load_max)·(1 − 10^−12))",
    .assumes = N_ ("supplies that are just full do not ask for one more") },
  { .key = "power.average_w",
    .applies = is_regulated_with_star,
    .formula =
      "supply_v·(strip_count·average_strip_a + topper.pixels·pixel_a·min(brightness, cap))",
    .assumes = REGULATED },
  { .key = "power.average_w",
    .applies = is_regulated,
    .formula = "supply_v·strip_count·average_strip_a",
    .assumes = REGULATED },
  { .key = "power.average_w",
    .formula = "supply_v·pixels_total·pixel_a·min(brightness, cap)",
    .assumes = PLAIN },
  { .key = "power.evening_kwh", .formula = "average_w·hours_per_evening/1000" },
  { .key = "power.most_feed_a", .applies = has_one_feed, .formula = "strip_current_a" },
  { .key = "power.most_feed_a",
    .formula = "strip_current_a − other_feeds_a",
    .how = N_ ("all feeds together carry what the strip draws") },
  { .key = "power.full_white.tree_current_a",
    .applies = is_regulated_with_star,
    .formula = "strip_count·white_strip_a + topper.pixels·pixel_a",
    .assumes = REGULATED },
  { .key = "power.full_white.tree_current_a",
    .applies = is_regulated,
    .formula = "strip_count·white_strip_a",
    .assumes = REGULATED },
  { .key = "power.full_white.tree_current_a",
    .formula = "pixels_total·pixel_a",
    .assumes = PLAIN },
  { .key = "power.full_white.tree_w", .formula = "supply_v·full_white.tree_current_a" },
  { .key = "power.full_white.worst_pixel_v",
    .formula = "supply_v − 2·feeder_ohm_per_m·feeder_m·strips_per_feeder·white_feed_a − "
               "2·strip_ohm_per_m·pixel_wire_m·white_link_sum_a",
    .how = LADDER,
    .assumes = ALIKE },
  { .key = "power.full_white.most_in_feeder_a",
    .formula = "white_most_feed_a·min(strips_per_feeder, strip_count)",
    .assumes = ALIKE },
  { .key = "power.feeder_a",
    .formula = "most_feed_a·min(strips_per_feeder, strip_count)",
    .assumes = ALIKE },
  { .key = "power.feeder_drop_v", .formula = "feeder_a·2·feeder_ohm_per_m·feeder_m" },
  { .key = "power.feeders",
    .applies = has_lit_star,
    .formula = "ceil(strip_count/strips_per_feeder)·feeds_a_strip + 1",
    .assumes = N_ ("the star has a feeder of its own") },
  { .key = "power.feeders", .formula = "ceil(strip_count/strips_per_feeder)·feeds_a_strip" },
  { .key = "power.feeder_heat_w",
    .applies = has_lit_star,
    .formula = "2·feeder_ohm_per_m·feeder_m·(strip_count·strips_per_feeder·feed_squares_a2 + "
               "(topper.pixels·pixel_a·cap)^2)",
    .assumes =
      N_ ("every group of strips is full; the star's feeder is as long as the others") },
  { .key = "power.feeder_heat_w",
    .formula = "2·feeder_ohm_per_m·feeder_m·strip_count·strips_per_feeder·feed_squares_a2",
    .assumes = N_ ("every group of strips is full") },
  { .key = "power.mains_w", .formula = "tree_w/supply_efficiency", .assumes = LABELS },
  { .key = "power.mains_a",
    .formula = "mains_w/mains_v",
    .assumes = N_ ("a power factor of 1") },
  { .key = "power.mains_most_a", .formula = "mains_a/supply_power_factor", .assumes = LABELS },
  { .key = "power.class_2_w", .formula = "min(5·supply_v, 100)" },
  { .key = "power.cable.awg", .formula = "min(awg_by_load, awg_by_drop)" },
  { .key = "power.plan.feeders",
    .formula = "ceil(strip_count/strips_sharing)·plan.feeds",
    .assumes = N_ ("the strips' feeders, without the star's") },
};

const SwWorkingTable sw_working_power = { terms,
                                          G_N_ELEMENTS (terms),
                                          rows,
                                          G_N_ELEMENTS (rows) };
