// SPDX-License-Identifier: GPL-3.0-or-later
/* working-feeds.c: what carries the current: fuses, supplies, and the plan of feeds. */
#include "engine/fuse.h"
#include "engine/working-strip.h"
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define KIRCHHOFF "Kirchhoff's laws, solved node by node"
#define ALIKE N_ ("all strips are alike, and fed alike; wires at 20 °C, joints without loss")
#define FIRST_FEED N_ ("shown for the feed nearest to the ring; the same for each")
#define FIRST_SUPPLY N_ ("shown for supply 1; the same for each")

static gboolean
is_us (const SwSolution *s)
{
  return s->design->units == SW_UNITS_US;
}

static gboolean
is_regulated (const SwSolution *s)
{
  return s->design->power.load == SW_LOAD_CONSTANT_POWER;
}

static gboolean
is_cut (const SwSolution *s)
{
  return s->zones.cut;
}

static gboolean
is_lit (const SwSolution *s)
{
  return s->zones.count > 0;
}

static const SwFeedPoint *
first_feed (const SwSolution *s)
{
  const GArray *feeds = s->wiring.feeds;

  return feeds->len == 0 ? NULL : &g_array_index (feeds, SwFeedPoint, 0);
}

#define OF_FIRST_FEED(name, field)                                                             \
  static double name (const SwSolution *s)                                                     \
  {                                                                                            \
    const SwFeedPoint *feed = first_feed (s);                                                  \
    return feed == NULL ? NAN : feed->field;                                                   \
  }

OF_FIRST_FEED (shown_strip_a, strip_a)
OF_FIRST_FEED (shown_feeder_a, feeder_a)
OF_FIRST_FEED (shown_drop_v, drop_v)
OF_FIRST_FEED (shown_fuse_a, fuse_a)

static double
later_feeds_a (const SwSolution *s)
{
  double sum = 0;

  for (guint i = 1; i < s->wiring.feeds->len; i++)
    sum += g_array_index (s->wiring.feeds, SwFeedPoint, i).strip_a;
  return sum;
}

static double
all_feeds_a (const SwSolution *s)
{
  return later_feeds_a (s) + shown_strip_a (s);
}

static double
mean_pixel_v (const SwSolution *s)
{
  return sw_way_at (s->design, s->design->power.cap).mean_v;
}

/* Of a supply; NAN where nothing is lit. */
static double
load_w (const SwSolution *s)
{
  return is_lit (s) ? sw_zones_get (&s->zones, 0).load_w : NAN;
}

static double
last_strip (const SwSolution *s)
{
  return is_lit (s) ? sw_zones_get (&s->zones, 0).last_strip : NAN;
}

static double
strips_together (const SwSolution *s)
{
  return sw_wiring_shared (s->design);
}

static double
supplies_a_group (const SwSolution *s)
{
  return s->zones.cuts == NULL ? NAN : s->zones.cuts->len;
}

static double
star_supplies (const SwSolution *s)
{
  return s->zones.count - s->zones.strip_zones;
}

static double
first_supply_strips (const SwSolution *s)
{
  SwZone zone = sw_zones_get (&s->zones, 0);

  return zone.last_strip == 0 ? 0 : zone.last_strip - zone.first_strip + 1;
}

/* What one of its strips draws from it. */
static double
first_supply_strip_a (const SwSolution *s)
{
  SwZone zone = sw_zones_get (&s->zones, 0);
  double sum = 0;

  if (!s->zones.cut)
    return s->power.strip_current_a;
  for (guint i = 0; i < s->wiring.feeds->len; i++) {
    const SwFeedPoint *feed = &g_array_index (s->wiring.feeds, SwFeedPoint, i);
    if (feed->pixel >= zone.first_pixel && feed->pixel <= zone.last_pixel)
      sum += feed->strip_a;
  }
  return sum;
}

static double
first_supply_star_a (const SwSolution *s)
{
  return sw_zones_get (&s->zones, 0).star ? s->wiring.star_a : 0;
}

/* The design with the plan's feeds; it borrows all it owns. */
static SwDesign
planned (const SwSolution *s)
{
  SwDesign trial = *s->design;

  trial.power.feed = s->feed_plan.feed;
  trial.power.inject_every = s->feed_plan.inject_every;
  trial.power.strips_per_feeder = s->feed_plan.strips_per_feeder;
  return trial;
}

static SwWay
planned_way (const SwSolution *s)
{
  SwDesign trial = planned (s);

  return sw_way_at (&trial, trial.power.cap);
}

static double
plan_feed_a (const SwSolution *s)
{
  return planned_way (s).feed_a;
}

static double
plan_link_sum_a (const SwSolution *s)
{
  return planned_way (s).link_sum_a;
}

static double
plan_most_feed_a (const SwSolution *s)
{
  return planned_way (s).most_feed_a;
}

static gboolean
plans_no_further (const SwSolution *s)
{
  return s->feed_plan.inject_every == 0;
}

static gboolean
plans_both_ends (const SwSolution *s)
{
  return s->feed_plan.feed == SW_FEED_BOTH;
}

static gboolean
plans_ring (const SwSolution *s)
{
  return s->feed_plan.feed == SW_FEED_RING;
}

static gboolean
plans_both_alone (const SwSolution *s)
{
  return plans_no_further (s) && plans_both_ends (s);
}

#define FUSES "1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40"
static const SwWorkingTerm terms[] = {
  { "later_feeds_a",
    later_feeds_a,
    0,
    N_ ("currents of a strip's further feeds, added up"),
    KIRCHHOFF },
  { "shown_strip_a", shown_strip_a, 0, N_ ("current of that feed"), KIRCHHOFF },
  { "shown_feeder_a", shown_feeder_a, 0, N_ ("current of that feeder"), KIRCHHOFF },
  { "all_feeds_a", all_feeds_a, 0, N_ ("currents of a strip's feeds, added up"), KIRCHHOFF },
  { "mean_pixel_v", mean_pixel_v, 0, N_ ("mean voltage of a strip's pixels"), KIRCHHOFF },
  { "strips_together",
    strips_together,
    0,
    N_ ("strips on a feeder"),
    "the lesser of power.strips_per_feeder and shape.strip_count" },
  { "supplies_a_group",
    supplies_a_group,
    0,
    N_ ("supplies that the feeds of strips on the same feeders are dealt out to"),
    "in order, as many feeds on each as it may carry" },
  { "star_supplies",
    star_supplies,
    0,
    N_ ("1 where the star finds no room on the strips' supplies"),
    "each looked at" },
  { "first_supply_strips", first_supply_strips, 0, N_ ("strips on supply 1"), "power.zones" },
  { "first_supply_strip_a",
    first_supply_strip_a,
    0,
    N_ ("what a strip draws from supply 1"),
    KIRCHHOFF },
  { "first_supply_star_a",
    first_supply_star_a,
    0,
    N_ ("what the star draws from it, 0 if it hangs elsewhere"),
    KIRCHHOFF },
  { "plan_feed_a",
    plan_feed_a,
    0,
    N_ ("current of the feed nearest to the worst pixel, fed as planned"),
    KIRCHHOFF },
  { "plan_link_sum_a",
    plan_link_sum_a,
    0,
    N_ ("currents between neighbouring pixels from that feed to it, added up, fed as planned"),
    KIRCHHOFF },
  { "plan_most_feed_a",
    plan_most_feed_a,
    0,
    N_ ("largest current through one strip's feed, fed as planned"),
    KIRCHHOFF },
};

#define FUSED                                                                                  \
  N_ ("the smallest blade fuse that the load fills to 80 % at most; the billionth makes up "   \
      "for rounding")
#define PLANNED                                                                                \
  N_ ("the plan's feeds, solved node by node; the relation holds along the way from the "      \
      "nearest feed to the worst pixel")
#define SEARCHED                                                                               \
  N_ ("no formula: every way of feeding that the keys can say is solved, fewest feeds first; " \
      "what the plan reaches stands under lowest_v and most_feeder_a")
#define IN_ORDER N_ ("outputs of supplies are never joined; strips in order")

static const SwWorkingRow rows[] = {
  { .key = "power.feeder_fuse_a",
    .formula = "first(feeder_a/0.8·(1 − 10^−9), " FUSES ")",
    .assumes = FUSED },
  { .key = "power.strip_fuse_a",
    .formula = "first(most_feed_a/0.8·(1 − 10^−9), " FUSES ")",
    .assumes = FUSED },
  { .key = "power.star_fuse_a",
    .formula = "first(topper.pixels·pixel_a·cap/0.8·(1 − 10^−9), " FUSES ")",
    .assumes = FUSED },
  { .key = "power.strip_heat_w",
    .applies = is_regulated,
    .formula = "strip_count·max(0, supply_v·all_feeds_a − 2·feeder_ohm_per_m·feeder_m·"
               "strips_per_feeder·feed_squares_a2 − strip.pixels·pixel_a·cap·supply_v)",
    .how = N_ ("what the supply gives and neither feeders nor pixels get"),
    .assumes = ALIKE },
  { .key = "power.strip_heat_w",
    .formula = "strip_count·max(0, supply_v·all_feeds_a − 2·feeder_ohm_per_m·feeder_m·"
               "strips_per_feeder·feed_squares_a2 − strip.pixels·pixel_a·cap·mean_pixel_v)",
    .how = N_ ("what the supply gives and neither feeders nor pixels get"),
    .assumes = ALIKE },
  { .key = "power.zone_supplies",
    .applies = is_cut,
    .formula = "ceil(strip_count/strips_together)·supplies_a_group + star_supplies",
    .assumes = N_ ("strips that share feeders draw more than a supply may give: their + is cut "
                   "between supplies") },
  { .key = "power.zone_supplies",
    .applies = is_lit,
    .formula = "ceil(ceil(strip_count/strips_together)/min(ceil(strip_count/strips_together), "
               "floor(supply_w·supply_load_max·(1 + 10^−12)/"
               "(strips_together·strip_current_a·supply_v)))) + star_supplies",
    .assumes = IN_ORDER },
  { .key = "power.zone_supplies", .formula = "0", .assumes = N_ ("nothing is lit") },
  { .key = "power.mains_v", .applies = is_us, .formula = "120" },
  { .key = "power.mains_v", .formula = "230" },
  { .key = "power.plan.feeds", .applies = plans_both_alone, .formula = "2" },
  { .key = "power.plan.feeds", .applies = plans_no_further, .formula = "1" },
  { .key = "power.plan.feeds",
    .applies = plans_both_ends,
    .formula = "2 + floor((strip.pixels − 2)/further_every)" },
  { .key = "power.plan.feeds",
    .applies = plans_ring,
    .formula = "1 + floor((strip.pixels − 1)/further_every)" },
  { .key = "power.plan.feeds",
    .formula = "1 + floor((strip.pixels − 2)/further_every)",
    .assumes = N_ ("a feed that falls on the crown's is that feed") },
  { .key = "power.plan.further_every", .how = SEARCHED },
  { .key = "power.plan.strips_sharing", .how = SEARCHED },
  { .key = "power.plan.lowest_v",
    .formula = "supply_v − 2·feeder_ohm_per_m·feeder_m·strips_sharing·plan_feed_a − "
               "2·strip_ohm_per_m·pixel_wire_m·plan_link_sum_a",
    .how = PLANNED,
    .assumes = ALIKE },
  { .key = "power.plan.most_feeder_a",
    .formula = "plan_most_feed_a·strips_sharing",
    .how = PLANNED },

  { "power.feeds.strip_a",
    NULL,
    "strip_current_a − later_feeds_a",
    FIRST_FEED,
    N_ ("all feeds together carry what the strip draws"),
    shown_strip_a },
  { "power.feeds.feeder_a",
    NULL,
    "shown_strip_a·min(strips_per_feeder, strip_count)",
    FIRST_FEED,
    ALIKE,
    shown_feeder_a },
  { "power.feeds.drop_v",
    NULL,
    "shown_feeder_a·2·feeder_ohm_per_m·feeder_m",
    FIRST_FEED,
    NULL,
    shown_drop_v },
  { "power.feeds.fuse_a",
    NULL,
    "first(shown_feeder_a/0.8·(1 − 10^−9), " FUSES ")",
    FIRST_FEED,
    FUSED,
    shown_fuse_a },
  { "power.zones.last_strip",
    is_cut,
    "min(strip_count, strips_together)",
    FIRST_SUPPLY,
    IN_ORDER,
    last_strip },
  { "power.zones.last_strip",
    NULL,
    "min(strip_count, strips_together·min(ceil(strip_count/strips_together), "
    "floor(supply_w·supply_load_max·(1 + 10^−12)/(strips_together·strip_current_a·supply_v))))",
    FIRST_SUPPLY,
    IN_ORDER,
    last_strip },
  { "power.zones.load_w",
    NULL,
    "supply_v·(first_supply_strips·first_supply_strip_a + first_supply_star_a)",
    FIRST_SUPPLY,
    ALIKE,
    load_w },
};

const SwWorkingTable sw_working_feeds = { terms,
                                          G_N_ELEMENTS (terms),
                                          rows,
                                          G_N_ELEMENTS (rows) };
