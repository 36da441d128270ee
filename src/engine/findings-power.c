// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-power.c: volts at the pixels, amps in the wires, watts of the supplies. */
#include "engine/finding-table.h"
#include "engine/fuse.h"

#include <glib/gi18n.h>
#include <math.h>

/* More feeds, best first: both ends, then the fewest along the strip that do, as the feed plan
 * found; and feeders shared by fewer. */
static void
offer_more_feeds (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPowerSetup *power = &s->design->power;
  int pixels = s->design->strip.pixels;

  if (power->feed != SW_FEED_BOTH)
    sw_draft_remedy (draft, "power.feed", SW_FEED_BOTH);
  if (s->feed_plan.solved && s->feed_plan.inject_alone > 0)
    sw_draft_remedy (draft, "power.inject_every", s->feed_plan.inject_alone);
  if (s->feed_plan.solved && s->feed_plan.share_alone > 0)
    sw_draft_remedy (draft, "power.strips_per_feeder", s->feed_plan.share_alone);
  if (pixels >= 4)
    sw_draft_remedy (draft, "power.inject_every", ceil (pixels / 2.0));
  if (pixels >= 8)
    sw_draft_remedy (draft, "power.inject_every", ceil (pixels / 4.0));
  if (power->strips_per_feeder > 1)
    sw_draft_remedy (draft, "power.strips_per_feeder", 1);
}

static gboolean
collapse (const SwSolution *s, SwFindingDraft *draft)
{
  if (s->power.feasible)
    return FALSE;
  if (s->feed_plan.solved && s->feed_plan.longest > 0) {
    sw_draft_say (draft, "longest", SW_QUANTITY_COUNT, s->feed_plan.longest);
    draft->finding.template_id =
      N_ ("Regulated pixels draw more than these wires can carry: the voltage collapses. Fed "
          "so, the longest strip that works has {longest} pixels. Feed the strips at more "
          "places, or use thicker wire or a higher voltage.");
  }
  offer_more_feeds (s, draft);
  return TRUE;
}

static gboolean
pixel_starved (const SwSolution *s, SwFindingDraft *draft)
{
  double least_v = s->design->power.min_pixel_v;

  if (!s->power.feasible || !(s->power.worst_pixel_v < least_v))
    return FALSE;
  sw_draft_say (draft, "volts", SW_QUANTITY_VOLTAGE, s->power.worst_pixel_v);
  sw_draft_say (draft, "least", SW_QUANTITY_VOLTAGE, least_v);
  sw_draft_say (draft, "pixel", SW_QUANTITY_COUNT, s->power.worst_pixel);
  offer_more_feeds (s, draft);
  return TRUE;
}

static gboolean
strip_wire_hot (const SwSolution *s, SwFindingDraft *draft)
{
  double most_a = s->design->power.strip_wire_max_a;

  if (!s->power.feasible || !(s->power.most_feed_a > most_a))
    return FALSE;
  sw_draft_say (draft, "current", SW_QUANTITY_CURRENT, s->power.most_feed_a);
  sw_draft_say (draft, "most", SW_QUANTITY_CURRENT, most_a);
  offer_more_feeds (s, draft);
  return TRUE;
}

/* Outputs of supplies are never joined: one supply must carry a whole feeder. */
static gboolean
feeder_over_supply (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPowerSetup *power = &s->design->power;
  double most_w = power->supply_w * power->supply_load_max;
  double feeder_w = s->power.most_feed_a * power->supply_v * power->strips_per_feeder;

  if (!s->power.feasible || !(feeder_w > most_w))
    return FALSE;
  double strips = floor (most_w / (s->power.most_feed_a * power->supply_v));
  sw_draft_say (draft, "strips", SW_QUANTITY_COUNT, power->strips_per_feeder);
  sw_draft_say (draft, "draws", SW_QUANTITY_POWER, feeder_w);
  sw_draft_say (draft, "most", SW_QUANTITY_POWER, most_w);
  if (strips >= 1)
    sw_draft_remedy (draft, "power.strips_per_feeder", strips);
  sw_draft_remedy (draft,
                   "power.supply_w",
                   sw_round_up (feeder_w / power->supply_load_max, 10));
  return TRUE;
}

static gboolean
feeder_drops (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPowerSetup *power = &s->design->power;
  double strip_v = s->power.most_feed_a * 2 * power->feeder_ohm_per_m * power->feeder_m;
  double drop_v = strip_v * power->strips_per_feeder;

  if (!s->power.feasible || !(drop_v > SW_FEEDER_LOSS_MOST * power->supply_v))
    return FALSE;
  double strips = floor (SW_FEEDER_LOSS_MOST * power->supply_v / strip_v);
  sw_draft_say (draft, "drop", SW_QUANTITY_VOLTAGE, drop_v);
  sw_draft_say (draft, "share", SW_QUANTITY_SHARE, drop_v / power->supply_v);
  if (strips >= 1)
    sw_draft_remedy (draft, "power.strips_per_feeder", strips);
  sw_draft_remedy (
    draft,
    "power.feeder_m",
    sw_round_down (power->feeder_m * SW_FEEDER_LOSS_MOST * power->supply_v / drop_v, 0.05));
  return TRUE;
}

/* The cable that the fuse of its load would not protect. */
static gboolean
feeder_thin (const SwSolution *s, SwFindingDraft *draft)
{
  const SwWiring *wiring = &s->wiring;
  double most_a = sw_fuse_load_under (wiring->feeder_wire->max_a);

  if (!s->power.feasible || !(s->design->power.feeder_m > 0) || !(wiring->feeder_a > most_a) ||
      wiring->feeder_fuse_a <= wiring->feeder_wire->max_a)
    return FALSE;
  sw_draft_say (draft, "current", SW_QUANTITY_CURRENT, wiring->feeder_a);
  sw_draft_say (draft, "most", SW_QUANTITY_CURRENT, most_a);
  sw_draft_say (draft, "awg", SW_QUANTITY_COUNT, wiring->feeder_awg);
  for (guint i = 0; i < sw_n_wires[SW_WIRE_AWG] && draft->n_remedies == 0; i++) {
    const SwWire *wire = &sw_wires[SW_WIRE_AWG][i];
    if (wiring->feeder_fuse_a <= wire->max_a)
      sw_draft_remedy (draft, "power.feeder_ohm_per_m", wire->ohm_per_m);
  }
  double strips = floor (most_a / s->power.most_feed_a);
  if (strips >= 1)
    sw_draft_remedy (draft, "power.strips_per_feeder", strips);
  return TRUE;
}

/* The strip's own wire is the thinnest behind the feeder's fuse. */
static gboolean
strip_unprotected (const SwSolution *s, SwFindingDraft *draft)
{
  double wire_a = s->design->power.strip_wire_max_a;
  double strips = floor (sw_fuse_load_under (wire_a) / s->power.most_feed_a * (1 + 1e-9));

  if (!s->power.feasible || !s->wiring.strip_fused)
    return FALSE;
  sw_draft_say (draft, "current", SW_QUANTITY_CURRENT, s->wiring.feeder_a);
  sw_draft_say (draft, "most", SW_QUANTITY_CURRENT, wire_a);
  if (strips >= 1)
    sw_draft_remedy (draft, "power.strips_per_feeder", strips);
  else
    offer_more_feeds (s, draft);
  return TRUE;
}

/* Outputs are never joined, so no strip is shared between supplies. */
static gboolean
zones_take_more (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "zones", SW_QUANTITY_COUNT, s->zones.count);
  sw_draft_say (draft, "supplies", SW_QUANTITY_COUNT, s->power.supplies);
  return s->power.feasible && s->zones.count > s->power.supplies;
}

/* What the fullest supply would give in a white picture, each as much more as the whole tree.
 */
static double
fullest_white_w (const SwSolution *s)
{
  double most_w = 0;

  for (int i = 0; i < s->zones.count; i++)
    most_w = MAX (most_w, sw_zones_get (&s->zones, i).load_w);
  return s->power.tree_w > 0 ? most_w * s->power.full_white_w / s->power.tree_w : 0;
}

static gboolean
white_frame (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPowerSetup *power = &s->design->power;
  gboolean starves =
    !s->power.full_white_feasible || s->power.full_white_worst_v < power->min_pixel_v;
  gboolean overloads = fullest_white_w (s) > power->supply_w;

  if (!s->power.feasible || !(power->cap < 1) || !(starves || overloads))
    return FALSE;
  sw_draft_say (draft, "cap", SW_QUANTITY_SHARE, power->cap);
  if (s->power.full_white_feasible)
    sw_draft_say (draft, "white", SW_QUANTITY_POWER, s->power.full_white_w);
  else
    draft->finding.template_id =
      N_ ("Wires and supplies are sized for {cap} of full white. Without that limit a white "
          "picture would make the voltage collapse: set the limit in the driver box.");
  return TRUE;
}

static gboolean
many_supplies (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "current", SW_QUANTITY_CURRENT, s->power.tree_current_a);
  sw_draft_say (draft, "supplies", SW_QUANTITY_COUNT, s->zones.count);
  return s->power.feasible && s->zones.count > 1;
}

static gboolean
average_above_cap (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPowerSetup *power = &s->design->power;

  sw_draft_say (draft, "average", SW_QUANTITY_SHARE, power->brightness);
  sw_draft_say (draft, "cap", SW_QUANTITY_SHARE, power->cap);
  return power->brightness > power->cap;
}

#define LOW_V 7.5 /* 5 V supplies, trimmed up or down */
#define HIGHER_V 12.0

/* The same pixels made for 12 V: plain ones draw the same current, regulated ones the same
 * power; what they need at least is the same share of the voltage. */
static void
make_for_12_v (SwPowerSetup *power)
{
  double ratio = HIGHER_V / power->supply_v;

  if (power->load == SW_LOAD_CONSTANT_POWER)
    power->pixel_a /= ratio;
  power->min_pixel_v *= ratio;
  power->supply_v = HIGHER_V;
}

/* What the tree draws, fed as the plan says. */
static double
planned_w (const SwDesign *design, const SwFeedPlan *plan)
{
  SwDesign fed = *design; /* borrows */
  SwPower power;

  fed.power.feed = (SwFeed) plan->feed;
  fed.power.inject_every = plan->inject_every;
  fed.power.strips_per_feeder = plan->strips_per_feeder;
  sw_power_init (&power, &fed);
  return power.tree_w;
}

/* 5 V against 12 V, each with the fewest feeds that do. */
static gboolean
higher_voltage (const SwSolution *s, SwFindingDraft *draft)
{
  const SwFeedPlan *plan = &s->feed_plan;
  SwDesign higher = *s->design; /* borrows */
  SwFeedPlan better;
  SwPower power;

  if (!plan->solved || !plan->found || !(s->design->power.supply_v < LOW_V))
    return FALSE;
  make_for_12_v (&higher.power);
  sw_power_init (&power, &higher);
  sw_feed_plan_init (&better, &higher, &power);
  if (!better.found || better.n_feeds >= plan->n_feeds)
    return FALSE;
  sw_draft_say (draft, "feeds", SW_QUANTITY_COUNT, plan->n_feeds);
  sw_draft_say (draft, "feeders", SW_QUANTITY_COUNT, plan->feeders);
  sw_draft_say (draft, "watts", SW_QUANTITY_POWER, planned_w (s->design, plan));
  sw_draft_say (draft, "fewer", SW_QUANTITY_COUNT, better.n_feeds);
  sw_draft_say (draft, "fewer_feeders", SW_QUANTITY_COUNT, better.feeders);
  sw_draft_say (draft, "other_watts", SW_QUANTITY_POWER, planned_w (&higher, &better));
  return TRUE;
}

const SwFindingRow sw_findings_of_power[] = {
  { SW_LEVEL_STOP,
    "power-collapse",
    "power.feed",
    N_ (
      "Regulated pixels draw more than these wires can carry: the voltage collapses. Feed the "
      "strips at more places, or use thicker wire or a higher voltage."),
    collapse },
  { SW_LEVEL_STOP,
    "pixel-voltage-low",
    "power.feed",
    N_ ("Pixel {pixel}, counted from the ring, gets {volts} of the {least} it needs. Feed the "
        "strip at both ends or more often, or shorten the feeder."),
    pixel_starved },
  { SW_LEVEL_STOP,
    "strip-wire-overloaded",
    "power.strip_wire_max_a",
    N_ ("{current} enter a strip at one feed, but its wire carries {most}. Feed the strip at "
        "more "
        "places."),
    strip_wire_hot },
  { SW_LEVEL_STOP,
    "feeder-over-supply",
    "power.strips_per_feeder",
    N_ ("One feeder for several strips ({strips}) draws {draws}, but a supply may give {most}, "
        "and "
        "supplies must not be joined. Put fewer strips on a feeder, or use larger supplies."),
    feeder_over_supply },
  { SW_LEVEL_WARN,
    "feeder-drops",
    "power.feeder_m",
    N_ (
      "The feeder alone loses {drop}, {share} of the supply's voltage. Use thicker or shorter "
      "cable, or fewer strips on a feeder."),
    feeder_drops },
  { SW_LEVEL_STOP,
    "feeder-cable-thin",
    "power.feeder_ohm_per_m",
    N_ ("A feeder carries {current}, but behind a fuse that protects it a cable of {awg} AWG "
        "carries {most} for hours. Use thicker cable, or put fewer strips on a feeder."),
    feeder_thin },
  { SW_LEVEL_WARN,
    "strip-wire-unprotected",
    "power.strips_per_feeder",
    N_ (
      "A feeder carries {current}: no fuse both carries that for hours and protects a strip's "
      "wire of {most}. Put fewer strips on a feeder, feed them at more places, or give each "
      "strip a fuse of its own."),
    strip_unprotected },
  { SW_LEVEL_TIP,
    "supplies-by-zone",
    "power.supply_w",
    N_ ("With every strip whole on one supply the tree takes more supplies ({zones}) than its "
        "watts alone ({supplies})."),
    zones_take_more },
  { SW_LEVEL_WARN,
    "white-frame",
    "power.cap",
    N_ ("Wires and supplies are sized for {cap} of full white. Without that limit a white "
        "picture "
        "would draw {white}, starve pixels or overload supplies: set the limit in the driver "
        "box."),
    white_frame },
  { SW_LEVEL_TIP,
    "many-supplies",
    "power.supply_w",
    N_ ("{current} take more than one supply ({supplies}). Never join the + of two supplies; "
        "join "
        "only their 0 V."),
    many_supplies },
  { SW_LEVEL_TIP,
    "higher-voltage",
    "power.supply_v",
    N_ (
      "At this voltage a strip takes {feeds} feeds at least (feeders: {feeders}; the tree "
      "draws {watts}). Made for 12 V, the same pixels take {fewer} (feeders: {fewer_feeders}; "
      "{other_watts}): weigh that before you buy."),
    higher_voltage },
  { SW_LEVEL_TIP,
    "average-above-cap",
    "power.brightness",
    N_ ("The average brightness of {average} is above the highest allowed, {cap}; the running "
        "cost counts the lower one."),
    average_above_cap },
  { 0 }
};
