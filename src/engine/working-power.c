// SPDX-License-Identifier: GPL-3.0-or-later
/* working-power.c: what the lights draw. The ladder has no short formula; Kirchhoff's laws
 * round it do: currents at a node add up, and volts along a way add up.
 */
#include "engine/working-strip.h"
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
  return sw_pixel_wire_m (s->design);
}

static double
feed_a (const SwSolution *s)
{
  return sw_way_at (s->design, s->design->power.cap).feed_a;
}

static double
link_sum_a (const SwSolution *s)
{
  return sw_way_at (s->design, s->design->power.cap).link_sum_a;
}

static double
feed_pixel (const SwSolution *s)
{
  return sw_way_at (s->design, s->design->power.cap).feed;
}

static double
links_away (const SwSolution *s)
{
  return sw_way_at (s->design, s->design->power.cap).links;
}

static double
mean_inverse (const SwSolution *s)
{
  return sw_way_at (s->design, s->design->power.cap).mean_per_v;
}

static double
rest_of_feeds_a (const SwSolution *s)
{
  return sw_way_at (s->design, s->design->power.cap).other_feeds_a;
}

static double
white_feed_a (const SwSolution *s)
{
  return sw_way_at (s->design, 1).feed_a;
}

static double
white_link_sum_a (const SwSolution *s)
{
  return sw_way_at (s->design, 1).link_sum_a;
}

static double
white_strip_a (const SwSolution *s)
{
  return sw_way_at (s->design, 1).strip_a;
}

static double
average_strip_a (const SwSolution *s)
{
  return sw_way_at (s->design, average_share (s)).strip_a;
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
