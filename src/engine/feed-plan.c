// SPDX-License-Identifier: GPL-3.0-or-later
/* Trials are copies of the design on the stack: they borrow all it owns, and only numbers of
 * `power` (and the pixels of a strip) are changed in them. The margin of a trial is how much it
 * has left of what it needs, ≥ 0 when it does.
 */
#include "engine/feed-plan.h"

#include "engine/fuse.h"

#include <math.h>

static const double rounding = -1e-9;    /* a margin that rounding took */
static const double thinnest_mm2 = 0.75; /* that outdoor feeders are sold in */

typedef struct {
  int low, high; /* steps between feeds that give so many; low > high: none */
  int begin;     /* near the best */
} Steps;

static double
supply_limit_a (const SwPowerSetup *power)
{
  return power->supply_w * power->supply_load_max / power->supply_v;
}

/* What a feeder may carry at most. */
static double
feeder_limit_a (const SwPowerSetup *power)
{
  double ohm = 2 * power->feeder_ohm_per_m * power->feeder_m;
  double wire_a = power->strip_wire_max_a;

  if (power->feeder_m > 0)
    wire_a = MIN (wire_a, sw_wire_like (power->feeder_ohm_per_m)->max_a);
  double limit_a = MIN (sw_fuse_load_under (wire_a), supply_limit_a (power));
  return ohm > 0 ? MIN (limit_a, SW_FEEDER_LOSS_MOST * power->supply_v / ohm) : limit_a;
}

typedef struct {
  double margin;
  double worst_v, feeder_a, strip_a;
  int n_feeds;
} Trial;

static Trial
try_design (const SwDesign *design)
{
  g_autoptr (GArray) feeds = sw_power_feeds (design);
  g_autofree double *feed_a = g_new0 (double, feeds->len);
  SwLadder ladder = sw_power_ladder (design, design->power.cap, feeds);
  SwLadderResult result = sw_ladder_solve (&ladder, NULL, feed_a);
  double limit_a = feeder_limit_a (&design->power);
  Trial trial = { .margin = -INFINITY,
                  .worst_v = result.worst_v,
                  .feeder_a = NAN,
                  .strip_a = result.current_a,
                  .n_feeds = (int) feeds->len };

  if (!result.feasible)
    return trial;
  trial.feeder_a = 0;
  for (guint i = 0; i < feeds->len; i++)
    trial.feeder_a = MAX (trial.feeder_a, feed_a[i] * sw_wiring_shared (design));
  double volts = (result.worst_v - design->power.min_pixel_v) / design->power.supply_v;
  double amps = limit_a > 0 ? 1 - trial.feeder_a / limit_a : -INFINITY;
  trial.margin = MIN (volts, amps);
  /* Strips on one feeder hang on one supply, unless one strip alone is too much for it. */
  if (sw_wiring_shared (design) > 1 && sw_wiring_shared (design) * result.current_a >
                                         supply_limit_a (&design->power) * (1 + 1e-9))
    trial.margin = -INFINITY;
  return trial;
}

static gboolean
does (const SwDesign *design)
{
  return try_design (design).margin >= rounding;
}

/* Of `between` feeds beyond those at the ends. */
static Steps
steps_for (const SwDesign *design, int between)
{
  int gaps = design->strip.pixels - 1;
  Steps steps = { 0, 0, 0 };

  if (between == 0)
    return steps;
  if (design->power.feed == SW_FEED_RING) { /* the top end hangs on: half a gap is best there */
    steps.low = gaps / (between + 1) + 1;
    steps.high = gaps / between;
    steps.begin = (int) lround (gaps / (between + 0.5));
  } else { /* a feed that falls on the crown's is that feed */
    steps.low = (gaps + between) / (between + 1);
    steps.high = (gaps - 1) / between;
    steps.begin = steps.low;
  }
  steps.low = MAX (steps.low, 1);
  steps.begin = CLAMP (steps.begin, steps.low, MAX (steps.low, steps.high));
  return steps;
}

/* Climbs from step to step while the margin grows, until the trial does. Sets its step. */
static double
climb (SwDesign *trial, const Steps *steps)
{
  double best = -INFINITY;
  int way = 1, at = steps->begin;

  if (steps->low > steps->high)
    return best;
  trial->power.inject_every = at;
  best = try_design (trial).margin;
  for (int turns = 0; best < rounding && turns < 2;) {
    trial->power.inject_every = at + way;
    double next =
      at + way < steps->low || at + way > steps->high ? -INFINITY : try_design (trial).margin;
    if (next > best) {
      best = next;
      at += way;
    } else {
      way = -way;
      turns++;
    }
  }
  trial->power.inject_every = at;
  return best;
}

static gboolean
does_between (SwDesign *trial, int between)
{
  Steps steps = steps_for (trial, between);

  return climb (trial, &steps) >= rounding;
}

/* The most strips on a feeder, at least 1, with so many feeds between; the trial is known to do
 * with 1. Leaves it in the trial. */
static void
share_most (SwDesign *trial, int between, int most)
{
  SwDesign next = *trial;
  int low = 1, high = most;

  trial->power.strips_per_feeder = 1;
  while (low < high) {
    int middle = (low + high + 1) / 2;
    next.power.strips_per_feeder = middle;
    if (does_between (&next, between)) {
      *trial = next;
      low = middle;
    } else {
      high = middle - 1;
    }
  }
}

static int
ends_of (SwFeed feed)
{
  return feed == SW_FEED_BOTH ? 2 : 1;
}

static int
share_bound (const SwDesign *design, int n_feeds)
{
  double strip_a = design->strip.pixels * design->power.pixel_a * design->power.cap;
  double most = feeder_limit_a (&design->power) * n_feeds / strip_a * (1 + 1e-9);

  return (int) CLAMP (most, 1, design->shape.strip_count);
}

static void
keep_plan (SwFeedPlan *plan, const SwDesign *trial)
{
  Trial tried = try_design (trial);
  int shared = sw_wiring_shared (trial);

  plan->found = TRUE;
  plan->feed = trial->power.feed;
  plan->inject_every = trial->power.inject_every;
  plan->strips_per_feeder = shared;
  plan->n_feeds = tried.n_feeds;
  plan->feeders = (trial->shape.strip_count + shared - 1) / shared * tried.n_feeds;
  plan->worst_pixel_v = tried.worst_v;
  plan->feeder_a = tried.feeder_a;
}

/* All ways to feed a strip at so many places. Keeps the one with most strips on a feeder. */
static void
plan_with (SwFeedPlan *plan, const SwDesign *design, int n_feeds)
{
  const SwFeed ways[] = { design->power.feed, SW_FEED_RING, SW_FEED_CROWN, SW_FEED_BOTH };

  for (guint i = 0; i < G_N_ELEMENTS (ways); i++) {
    SwDesign trial = *design;
    int between = n_feeds - ends_of (ways[i]);

    trial.power.feed = ways[i];
    trial.power.strips_per_feeder = 1;
    trial.power.inject_every = 0;
    if (between < 0 || (i > 0 && ways[i] == ways[0]) || !does_between (&trial, between))
      continue;
    share_most (&trial, between, share_bound (design, n_feeds));
    if (!plan->found || trial.power.strips_per_feeder > plan->strips_per_feeder)
      keep_plan (plan, &trial);
  }
}

/* Fewer feeds than share the current of a strip cannot do. */
static void
set_plan (SwFeedPlan *plan, const SwDesign *design)
{
  double strip_a = design->strip.pixels * design->power.pixel_a * design->power.cap;
  double limit_a = feeder_limit_a (&design->power);
  double least = limit_a > 0 ? ceil (strip_a / limit_a * (1 - 1e-9)) : INFINITY;
  int most = MIN (SW_FEED_PLAN_MOST, design->strip.pixels);

  if (!(least <= most) || design->power.min_pixel_v > design->power.supply_v)
    return;
  for (int n_feeds = MAX (1, (int) least); n_feeds <= most && !plan->found; n_feeds++)
    plan_with (plan, design, n_feeds);
}

static void
set_feed_alone (SwFeedPlan *plan, const SwDesign *design)
{
  SwDesign trial = *design;

  if (design->power.feed != SW_FEED_BOTH)
    return;
  for (SwFeed feed = SW_FEED_RING; feed <= SW_FEED_CROWN && plan->feed_alone < 0; feed++) {
    trial.power.feed = feed;
    if (does (&trial))
      plan->feed_alone = (int) feed;
  }
}

static void
set_inject_alone (SwFeedPlan *plan, const SwDesign *design)
{
  SwDesign trial = *design;
  int most = MIN (SW_FEED_PLAN_MOST, design->strip.pixels) - ends_of (design->power.feed);

  for (int between = 0; between <= most && plan->inject_alone < 0; between++) {
    trial.power.inject_every = 0;
    if (does_between (&trial, between))
      plan->inject_alone = trial.power.inject_every;
  }
}

static void
set_share_alone (SwFeedPlan *plan, const SwDesign *design)
{
  SwDesign trial = *design;
  int low = 0, high = design->shape.strip_count;

  while (low < high) {
    int middle = (low + high + 1) / 2;
    trial.power.strips_per_feeder = middle;
    if (does (&trial))
      low = middle;
    else
      high = middle - 1;
  }
  plan->share_alone = low == 0 ? -1 : low;
}

static gboolean
is_lit (const SwDesign *design)
{
  Trial trial = try_design (design);

  return trial.worst_v >= design->power.min_pixel_v; /* not NaN */
}

/* Longer strips never have more volts. */
static void
set_longest (SwFeedPlan *plan, const SwDesign *design)
{
  SwDesign trial = *design;
  int low = 0, high = design->strip.pixels - 1;

  while (low < high) {
    int middle = (low + high + 1) / 2;
    trial.strip.pixels = middle;
    if (is_lit (&trial))
      low = middle;
    else
      high = middle - 1;
  }
  plan->longest = low;
}

static gboolean
carries (const SwDesign *trial, const SwWire *wire)
{
  return sw_fuse_for (try_design (trial).feeder_a) <= wire->max_a;
}

static gboolean
drops_little (const SwDesign *trial)
{
  const SwPowerSetup *power = &trial->power;
  Trial tried = try_design (trial);
  double drop_v = tried.feeder_a * 2 * power->feeder_ohm_per_m * power->feeder_m;

  return tried.worst_v >= power->min_pixel_v &&
         drop_v <= SW_FEEDER_LOSS_MOST * power->supply_v * (1 + 1e-9);
}

/* Thicker wire drops less and carries more: the first that does is the smallest. */
static void
set_cable (const SwDesign *design, SwWireSystem system, double *by_load, double *by_drop)
{
  SwDesign trial = *design;

  for (guint i = 0; i < sw_n_wires[system]; i++) {
    const SwWire *wire = &sw_wires[system][i];
    trial.power.feeder_ohm_per_m = wire->ohm_per_m;
    if (wire->mm2 < thinnest_mm2)
      continue;
    if (isnan (*by_load) && carries (&trial, wire))
      *by_load = wire->size;
    if (isnan (*by_drop) && drops_little (&trial))
      *by_drop = wire->size;
  }
}

static void
set_cables (SwFeedPlan *plan, const SwDesign *design)
{
  double by_load = NAN, by_drop = NAN;

  set_cable (design, SW_WIRE_AWG, &plan->awg_by_load, &plan->awg_by_drop);
  set_cable (design, SW_WIRE_MM2, &by_load, &by_drop);
  plan->awg = isnan (plan->awg_by_drop) ? NAN : fmin (plan->awg_by_load, plan->awg_by_drop);
  plan->awg = isnan (plan->awg_by_load) ? NAN : plan->awg;
  plan->mm2 = isnan (by_load) || isnan (by_drop) ? NAN : fmax (by_load, by_drop);
}

void
sw_feed_plan_init (SwFeedPlan *plan, const SwDesign *design, const SwPower *power)
{
  gboolean starves = !(power->worst_pixel_v >= design->power.min_pixel_v);

  *plan = (SwFeedPlan){ .solved = TRUE,
                        .feed_alone = -1,
                        .inject_alone = -1,
                        .share_alone = -1,
                        .longest = -1,
                        .worst_pixel_v = NAN,
                        .feeder_a = NAN,
                        .awg_by_load = NAN,
                        .awg_by_drop = NAN,
                        .awg = NAN,
                        .mm2 = NAN };
  if (!(design->power.pixel_a > 0))
    return;
  set_plan (plan, design);
  set_feed_alone (plan, design);
  set_inject_alone (plan, design);
  set_share_alone (plan, design);
  set_cables (plan, design);
  if (starves)
    set_longest (plan, design);
}
