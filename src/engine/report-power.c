// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/report-power.h"

#include <math.h>

static void
add_feed (JsonArray *list, const SwFeedPoint *feed)
{
  JsonObject *row = json_object_new ();

  json_object_set_int_member (row, "pixel", feed->pixel);
  json_object_set_double_member (row, "strip_a", feed->strip_a);
  json_object_set_double_member (row, "feeder_a", feed->feeder_a);
  json_object_set_double_member (row, "drop_v", feed->drop_v);
  if (!isnan (feed->fuse_a))
    json_object_set_double_member (row, "fuse_a", feed->fuse_a);
  json_array_add_object_element (list, row);
}

JsonArray *
sw_report_feeds (const SwSolution *solution)
{
  const GArray *feeds = solution->wiring.feeds;
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < feeds->len; i++)
    add_feed (list, &g_array_index (feeds, SwFeedPoint, i));
  return list;
}

JsonArray *
sw_report_zones (const SwSolution *solution)
{
  JsonArray *list = json_array_new ();

  for (int i = 0; i < solution->zones.count; i++) {
    SwZone zone = sw_zones_get (&solution->zones, i);
    JsonObject *row = json_object_new ();
    json_object_set_int_member (row, "supply", i + 1);
    json_object_set_int_member (row, "first_strip", zone.first_strip);
    json_object_set_int_member (row, "last_strip", zone.last_strip);
    json_object_set_int_member (row, "first_pixel", zone.first_pixel);
    json_object_set_int_member (row, "last_pixel", zone.last_pixel);
    json_object_set_boolean_member (row, "star", zone.star);
    json_object_set_double_member (row, "load_w", zone.load_w);
    json_array_add_object_element (list, row);
  }
  return list;
}
