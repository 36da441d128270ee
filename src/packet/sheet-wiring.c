// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/sheet-wiring.h"

#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

/* Takes the value. Returns: (transfer full). */
static char *
marked (gboolean wrong, char *value)
{
  g_autofree char *owned = value;

  return wrong ? g_strconcat ("▲ ", owned, NULL) : g_steal_pointer (&owned);
}

/* "14", "2.5", "0.75": as many decimals as it has, at most two. */
static char *
plain_number (const SwPen *pen, double value)
{
  int decimals = 0;

  for (double scaled = value; decimals < 2 && fabs (scaled - round (scaled)) > 1e-6; decimals++)
    scaled *= 10;
  return sw_pen_decimal (pen, value, decimals);
}

/* A size by a standard's name; "–" where no size does. */
static char *
size_words (const SwPen *pen, double size, const char *standard)
{
  if (isnan (size))
    return g_strdup ("–");
  g_autofree char *number = plain_number (pen, size);
  return g_strdup_printf ("%s %s", number, standard);
}

static char *
cable_words (const SwPen *pen)
{
  const SwWire *wire = pen->solution->wiring.feeder_wire;

  if (!(pen->solution->design->power.feeder_m > 0))
    return g_strdup ("–");
  g_autofree char *size = size_words (pen, wire->size, "AWG");
  g_autofree char *area = sw_pen_decimal (pen, wire->mm2, 1);
  return g_strdup_printf ("%s (%s mm²)", size, area);
}

static char *
fuse_words (const SwPen *pen, double fuse_a)
{
  return isnan (fuse_a) ? g_strdup (sw_pen_word (pen, N_ ("none")))
                        : size_words (pen, fuse_a, "A");
}

static char *
feeder_fuse_words (const SwPen *pen, double fuse_a)
{
  gboolean wire_counts = pen->solution->design->power.feeder_m > 0;
  gboolean thin = wire_counts && fuse_a > pen->solution->wiring.feeder_wire->max_a;

  return marked (isnan (fuse_a) || thin, fuse_words (pen, fuse_a));
}

static char *
strip_fuse_words (const SwPen *pen)
{
  const SwWiring *wiring = &pen->solution->wiring;

  if (!wiring->strip_fused)
    return g_strdup ("–");
  return marked (isnan (wiring->strip_fuse_a), fuse_words (pen, wiring->strip_fuse_a));
}

static const SwColumn feed_columns[] = {
  { N_ ("Feed"), SW_TEXT_LEFT, 1.5 },
  { N_ ("Strips on a feeder"), SW_TEXT_RIGHT, 1 },
  { N_ ("Feeder carries"), SW_TEXT_RIGHT, 1.1 },
  { N_ ("Cable as designed"), SW_TEXT_RIGHT, 1.4 },
  { N_ ("Lost in it"), SW_TEXT_RIGHT, 0.9 },
  { N_ ("Its fuse"), SW_TEXT_RIGHT, 0.9 },
  { N_ ("Fuse of each strip"), SW_TEXT_RIGHT, 1 },
};

static void
add_feed (const SwPen *pen, SwTable *table, const SwFeedPoint *feed)
{
  g_autofree char *pixel = g_strdup_printf ("%d", feed->pixel);
  g_autofree char *name = sw_pen_say (pen, N_ ("At pixel %s"), pixel);
  g_autofree char *strips = g_strdup_printf ("%d", sw_wiring_shared (pen->solution->design));
  g_autofree char *amps = sw_pen_number (pen, feed->feeder_a, SW_QUANTITY_CURRENT);
  g_autofree char *cable = cable_words (pen);
  g_autofree char *drop = sw_pen_number (pen, feed->drop_v, SW_QUANTITY_VOLTAGE);
  g_autofree char *fuse = feeder_fuse_words (pen, feed->fuse_a);
  g_autofree char *own = strip_fuse_words (pen);
  const char *cells[] = { name, strips, amps, cable, drop, fuse, own };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_star (const SwPen *pen, SwTable *table)
{
  const SwWiring *wiring = &pen->solution->wiring;
  const SwPowerSetup *setup = &pen->solution->design->power;
  double drop_v = wiring->star_a * 2 * setup->feeder_ohm_per_m * setup->feeder_m;

  if (isnan (wiring->star_a))
    return;
  g_autofree char *amps = sw_pen_number (pen, wiring->star_a, SW_QUANTITY_CURRENT);
  g_autofree char *cable = cable_words (pen);
  g_autofree char *drop = sw_pen_number (pen, drop_v, SW_QUANTITY_VOLTAGE);
  g_autofree char *fuse = feeder_fuse_words (pen, wiring->star_fuse_a);
  const char *cells[] = { sw_pen_word (pen, N_ ("Star")), "–", amps, cable, drop, fuse, "–" };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
say_feeds (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwWiring *wiring = &pen->solution->wiring;
  g_autofree char *groups = g_strdup_printf ("%d", wiring->groups);
  g_autofree char *feeders = g_strdup_printf ("%d", wiring->feeders);
  g_autofree char *words =
    sw_pen_say (pen,
                N_ ("Pixel 1 is the lowest. Groups of strips with such feeders: %s; feeders in "
                    "all, with the star's: %s. A fuse sits at the supply's end of its feeder "
                    "and is loaded to 80 %% at most (NEC 210.20(A)). ▲: no fuse fits, or the "
                    "cable is too thin for it; the findings say what helps."),
                groups,
                feeders);

  sw_flow_text (flow, words);
  if (wiring->strip_fused)
    sw_flow_text (
      flow,
      sw_pen_word (pen,
                   N_ ("A feeder's fuse is too large for the wire of a strip: give "
                       "each strip a fuse of its own where it leaves the feeder.")));
}

static void
add_feeds (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const GArray *feeds = pen->solution->wiring.feeds;
  g_autoptr (SwTable) table = sw_table_new (feed_columns, G_N_ELEMENTS (feed_columns));

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Feeders and fuses")));
  for (guint i = 0; i < feeds->len; i++)
    add_feed (pen, table, &g_array_index (feeds, SwFeedPoint, i));
  add_star (pen, table);
  sw_flow_table (flow, table);
  say_feeds (flow);
}

static const SwColumn zone_columns[] = {
  { N_ ("Supply"), SW_TEXT_LEFT, 0 },         { N_ ("What hangs on it"), SW_TEXT_LEFT, 1 },
  { N_ ("Load"), SW_TEXT_RIGHT, 0 },          { N_ ("Current"), SW_TEXT_RIGHT, 0 },
  { N_ ("Of its rating"), SW_TEXT_RIGHT, 0 },
};

static char *
strips_words (const SwPen *pen, const SwZone *zone)
{
  g_autofree char *first = g_strdup_printf ("%d", zone->first_strip);
  g_autofree char *last = g_strdup_printf ("%d", zone->last_strip);

  if (zone->first_strip == 0)
    return g_strdup (sw_pen_word (pen, N_ ("Star")));
  if (zone->first_strip == zone->last_strip)
    return sw_pen_say (pen, N_ ("Strip %s"), first);
  return sw_pen_say (pen, N_ ("Strips %s to %s"), first, last);
}

/* Takes the strips. */
static char *
feeds_words (const SwPen *pen, const SwZone *zone, char *strips)
{
  g_autofree char *owned = strips;
  g_autofree char *first = g_strdup_printf ("%d", zone->first_pixel);
  g_autofree char *last = g_strdup_printf ("%d", zone->last_pixel);

  if (zone->first_pixel == 0)
    return g_steal_pointer (&owned);
  if (zone->first_pixel == zone->last_pixel)
    return sw_pen_say (pen, N_ ("%s, feed at pixel %s"), owned, first);
  return sw_pen_say (pen, N_ ("%s, feeds at pixels %s to %s"), owned, first, last);
}

static char *
zone_words (const SwPen *pen, const SwZone *zone)
{
  g_autofree char *parts = feeds_words (pen, zone, strips_words (pen, zone));

  return zone->star && zone->first_strip > 0 ? sw_pen_say (pen, N_ ("%s, and the star"), parts)
                                             : g_steal_pointer (&parts);
}

static void
add_zone (const SwPen *pen, SwTable *table, int i)
{
  const SwPowerSetup *setup = &pen->solution->design->power;
  SwZone zone = sw_zones_get (&pen->solution->zones, i);
  double share = zone.load_w / setup->supply_w;
  g_autofree char *number = g_strdup_printf ("%d", i + 1);
  g_autofree char *what = zone_words (pen, &zone);
  g_autofree char *watts = sw_pen_number (pen, zone.load_w, SW_QUANTITY_POWER);
  g_autofree char *amps =
    sw_pen_number (pen, zone.load_w / setup->supply_v, SW_QUANTITY_CURRENT);
  g_autofree char *part = marked (share > setup->supply_load_max * (1 + 1e-9),
                                  sw_pen_number (pen, share, SW_QUANTITY_SHARE));
  const char *cells[] = { number, what, watts, amps, part };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_zones (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwZones *zones = &pen->solution->zones;
  g_autoptr (SwTable) table = sw_table_new (zone_columns, G_N_ELEMENTS (zone_columns));

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Which strips hang on which supply")));
  for (int i = 0; i < zones->count; i++)
    add_zone (pen, table, i);
  sw_flow_table (flow, table);
  if (zones->cut)
    sw_flow_text (
      flow,
      sw_pen_word (pen,
                   N_ ("One supply cannot feed a whole group of strips: cut the + of each "
                       "strip, and only the +, between the feeds of one supply and those of "
                       "the next. 0 V and data run through.")));
}

static void
add_cable (const SwPen *pen, SwTable *table, const char *words, double awg)
{
  sw_table_add_fact (table, pen, words, size_words (pen, awg, "AWG"));
}

static void
add_cables (const SwPen *pen, SwTable *table)
{
  const SwFeedPlan *plan = &pen->solution->feed_plan;

  if (!plan->solved || !(pen->solution->design->power.feeder_m > 0))
    return;
  add_cable (pen, table, N_ ("Smallest feeder cable for its fuse"), plan->awg_by_load);
  add_cable (pen,
             table,
             N_ ("Smallest that loses 5 % at most, and starves no pixel"),
             plan->awg_by_drop);
  add_cable (pen, table, N_ ("Smallest that does both"), plan->awg);
  sw_table_add_fact (table,
                     pen,
                     N_ ("The same in metric sizes"),
                     size_words (pen, plan->mm2, "mm²"));
}

static void
add_mains (const SwPen *pen, SwTable *table)
{
  const SwWiring *wiring = &pen->solution->wiring;
  g_autofree char *volts = sw_pen_decimal (pen, wiring->mains_v, 0);
  g_autofree char *least = sw_pen_number (pen, wiring->mains_a, SW_QUANTITY_CURRENT);
  g_autofree char *most = sw_pen_number (pen, wiring->mains_most_a, SW_QUANTITY_CURRENT);

  sw_table_add_fact (table,
                     pen,
                     N_ ("Heat in the wires of all strips"),
                     sw_pen_number (pen, wiring->strip_heat_w, SW_QUANTITY_POWER));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Heat in all feeders"),
                     sw_pen_number (pen, wiring->feeder_heat_w, SW_QUANTITY_POWER));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Taken from the mains"),
                     sw_pen_number (pen, wiring->mains_w, SW_QUANTITY_POWER));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Current in the mains lead, all supplies together"),
                     sw_pen_say (pen, N_ ("%s to %s at %s V"), least, most, volts));
}

static void
say_mains (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autofree char *efficiency = sw_pen_number (pen, SW_SUPPLY_EFFICIENCY, SW_QUANTITY_SHARE);
  g_autofree char *factor = sw_pen_decimal (pen, SW_SUPPLY_POWER_FACTOR, 1);
  g_autofree char *words =
    sw_pen_say (pen,
                N_ ("The mains side is assumed, not measured: supplies turn %s of what they "
                    "take into output; the smaller current is at a power factor of 1, the "
                    "larger at %s, as supplies without its correction have it. Their labels "
                    "count. Supplies that start together take far more for a moment."),
                efficiency,
                factor);

  sw_flow_text (flow, words);
}

static void
add_figures (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new_facts ();

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Cable, heat and mains")));
  add_cables (pen, table);
  add_mains (pen, table);
  sw_flow_table (flow, table);
  say_mains (flow);
}

/* The fullest supply's load at full white. Zones grow as the whole tree does: exactly so for
 * plain pixels. */
static double
fullest_white_w (const SwSolution *solution)
{
  double most_w = 0;

  for (int i = 0; i < solution->zones.count; i++)
    most_w = MAX (most_w, sw_zones_get (&solution->zones, i).load_w);
  return most_w * solution->power.full_white_w / solution->power.tree_w;
}

/* The most that any fuse carries at full white, of its rating; NAN ones do not count. */
static double
white_on_fuse (const SwSolution *solution)
{
  const SwWiring *wiring = &solution->wiring;
  double feeder = wiring->feeder_full_white_a / wiring->feeder_fuse_a;
  double strip = solution->power.full_white_most_feed_a / wiring->strip_fuse_a;
  double star = wiring->star_a / solution->design->power.cap / wiring->star_fuse_a;

  return fmax (feeder, fmax (strip, star));
}

/* A blade fuse opens within 600 s at 135 %: ISO 8820-3, value from memory. */
#define SURE_TO_BLOW 1.35

static const char *
white_verdict (const SwSolution *solution)
{
  const SwPowerSetup *setup = &solution->design->power;

  if (isnan (solution->wiring.feeder_fuse_a))
    return N_ ("No fuse carries even less.");
  if (white_on_fuse (solution) >= SURE_TO_BLOW)
    return N_ ("A fuse blows within ten minutes of that.");
  if (white_on_fuse (solution) > 1)
    return N_ ("That is more than a fuse is rated for: it may blow.");
  if (fullest_white_w (solution) > setup->supply_w)
    return N_ ("The supply shuts itself off, or overheats.");
  if (solution->power.full_white_worst_v < setup->min_pixel_v)
    return N_ ("Fuses and supplies bear that, but the farthest pixels get too little "
               "voltage: they turn reddish or flicker.");
  return N_ ("Fuses, supplies and pixels bear that for a test.");
}

static void
say_white (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwSolution *solution = pen->solution;

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("A white test frame without the limit")));
  if (!solution->power.full_white_feasible) {
    sw_flow_text (
      flow,
      sw_pen_word (pen,
                   N_ ("The wires cannot bring the power that asks for: the voltage "
                       "breaks down, and pixels go dark or flicker. Set the limit "
                       "in the driver box before the first test.")));
    return;
  }
  g_autofree char *amps =
    sw_pen_number (pen, solution->wiring.feeder_full_white_a, SW_QUANTITY_CURRENT);
  g_autofree char *fuse = fuse_words (pen, solution->wiring.feeder_fuse_a);
  g_autofree char *watts = sw_pen_number (pen, fullest_white_w (solution), SW_QUANTITY_POWER);
  g_autofree char *rating =
    sw_pen_number (pen, solution->design->power.supply_w, SW_QUANTITY_POWER);
  g_autofree char *words =
    sw_pen_say (pen,
                N_ ("The feeder that carries most would carry %s (its fuse: %s); the fullest "
                    "supply would have to give %s (rated: %s). %s Set the limit in the driver "
                    "box before the first test."),
                amps,
                fuse,
                watts,
                rating,
                sw_pen_word (pen, white_verdict (solution)));
  sw_flow_text (flow, words);
}

static void
say_class_2 (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwPowerSetup *setup = &pen->solution->design->power;
  double class_2_w = pen->solution->wiring.class_2_w;
  g_autofree char *volts = sw_pen_number (pen, setup->supply_v, SW_QUANTITY_VOLTAGE);
  g_autofree char *most = sw_pen_number (pen, class_2_w, SW_QUANTITY_POWER);
  g_autofree char *watts = sw_pen_number (pen, setup->supply_w, SW_QUANTITY_POWER);
  g_autofree char *these =
    setup->supply_w > class_2_w
      ? sw_pen_say (pen,
                    N_ ("These, of %s, are more: only the fuses protect the wires."),
                    watts)
      : sw_pen_say (pen, N_ ("These, of %s, may be class 2, if their label says so."), watts);
  g_autofree char *words =
    sw_pen_say (pen,
                N_ ("Class 2 (NEC chapter 9, table 11(B); UL 1310) is a supply that limits "
                    "itself so far that its output starts no fire: at %s, %s at most. %s"),
                volts,
                most,
                these);

  sw_flow_text (flow, words);
}

void
sw_wiring_fill (SwFlow *flow)
{
  if (!sw_flow_pen (flow)->solution->power.feasible)
    return;
  add_feeds (flow);
  add_zones (flow);
  say_class_2 (flow);
  add_figures (flow);
  say_white (flow);
}
