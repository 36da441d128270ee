// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/zones.h"

#include <math.h>

/* A supply that rounding overfills by a million-millionth is full, as in power-network.c. */
#define ROUNDING (1 + 1e-12)

static void
set_whole_groups (SwZones *zones, double limit_w)
{
  int groups = (zones->strips + zones->shared - 1) / zones->shared;
  double group_w = zones->shared * zones->strip_w;

  zones->groups_a_supply = (int) MIN (floor (limit_w * ROUNDING / group_w), groups);
  zones->strip_zones = (groups + zones->groups_a_supply - 1) / zones->groups_a_supply;
}

/* The feeds of one group in order, as many on a supply as it may carry, at least one. */
static void
set_cut_groups (SwZones *zones, const SwWiring *wiring, double supply_v, double limit_w)
{
  SwZone zone = { 0 };

  zones->cut = TRUE;
  for (guint i = 0; i < wiring->feeds->len; i++) {
    const SwFeedPoint *feed = &g_array_index (wiring->feeds, SwFeedPoint, i);
    double load_w = feed->strip_a * zones->shared * supply_v;
    if (i > 0 && zone.load_w + load_w > limit_w * ROUNDING) {
      g_array_append_val (zones->cuts, zone);
      zone = (SwZone){ 0 };
    }
    zone.first_pixel = zone.first_pixel == 0 ? feed->pixel : zone.first_pixel;
    zone.last_pixel = feed->pixel;
    zone.load_w += load_w;
  }
  g_array_append_val (zones->cuts, zone);
  zones->strip_zones =
    (zones->strips + zones->shared - 1) / zones->shared * (int) zones->cuts->len;
}

static SwZone
strip_zone (const SwZones *zones, int i)
{
  int parts = zones->cut ? (int) zones->cuts->len : 1;
  int strips = zones->shared * (zones->cut ? 1 : zones->groups_a_supply);
  int first = i / parts * strips + 1;
  int last = MIN (zones->strips, first + strips - 1);
  SwZone zone = { .load_w = (last - first + 1) * zones->strip_w };

  if (zones->cut) {
    zone = g_array_index (zones->cuts, SwZone, i % parts);
    zone.load_w *= (double) (last - first + 1) / zones->shared;
  }
  zone.first_strip = first;
  zone.last_strip = last;
  return zone;
}

static gboolean
has_room (const SwZones *zones, int i, double load_w, double limit_w)
{
  return i >= 0 && strip_zone (zones, i).load_w + load_w <= limit_w * ROUNDING;
}

/* Zones of whole groups are alike but for the last, and so are those of cut ones: the first and
 * the last few tell. */
static void
place_star (SwZones *zones, double star_w, double limit_w)
{
  int parts = zones->cut ? (int) zones->cuts->len : 1;

  zones->star_zone = zones->strip_zones;
  zones->star_w = star_w;
  for (int i = 0; i < parts; i++) {
    if (has_room (zones, i, star_w, limit_w))
      zones->star_zone = MIN (zones->star_zone, i);
  }
  for (int i = MAX (0, zones->strip_zones - parts); i < zones->strip_zones; i++) {
    if (has_room (zones, i, star_w, limit_w))
      zones->star_zone = MIN (zones->star_zone, i);
  }
  zones->count = MAX (zones->strip_zones, zones->star_zone + 1);
}

void
sw_zones_init (SwZones *zones,
               const SwDesign *design,
               const SwPower *power,
               const SwWiring *wiring)
{
  const SwPowerSetup *setup = &design->power;
  double limit_w = setup->supply_w * setup->supply_load_max;

  *zones = (SwZones){ .strips = design->shape.strip_count,
                      .shared = sw_wiring_shared (design),
                      .strip_w = power->strip_current_a * setup->supply_v,
                      .star_zone = -1 };
  if (!power->feasible || !(power->tree_w > 0))
    return;
  zones->cuts = g_array_new (FALSE, FALSE, sizeof (SwZone));
  if (zones->shared * zones->strip_w <= limit_w * ROUNDING)
    set_whole_groups (zones, limit_w);
  else
    set_cut_groups (zones, wiring, setup->supply_v, limit_w);
  zones->count = zones->strip_zones;
  if (!isnan (wiring->star_a))
    place_star (zones, wiring->star_a * setup->supply_v, limit_w);
}

void
sw_zones_clear (SwZones *zones)
{
  g_clear_pointer (&zones->cuts, g_array_unref);
}

SwZone
sw_zones_get (const SwZones *zones, int i)
{
  SwZone zone = { 0 };

  if (i < zones->strip_zones)
    zone = strip_zone (zones, i);
  if (i == zones->star_zone) {
    zone.star = TRUE;
    zone.load_w += zones->star_w;
  }
  return zone;
}
