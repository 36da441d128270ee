// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/working-strip.h"
#include "solve.h"

#include <math.h>

/* Worked by hand: ten plain pixels of 0.1 A fed at the ring through no feeder. Link k carries
 * what is above it, 0.9, 0.8 … 0.1 A: 4.5 A added up; out and back 2 · 0.01 Ω/m · 0.5 m is
 * 0.01 Ω a link, so that the crown has 12 − 0.045 V. */
static const char plain[] =
  "strip.pixels=10; power.pixel_a=0.1; power.cap=1; power.supply_v=12; power.feeder_m=0; "
  "power.strip_ohm_per_m=0.01; power.wire_per_pixel_m=0.5; power.inject_every=0; ";

static SwWay
way_with (const char *more, double share)
{
  g_autofree char *sets = g_strconcat (plain, more, NULL);
  g_autoptr (SwDesign) design = design_with ("lawn", sets);

  return sw_way_at (design, share);
}

static void
test_adds_up_from_feed_to_darkest (void)
{
  SwWay way = way_with ("power.feed=ring", 1);

  g_assert_cmpint (way.feed, ==, 1);
  g_assert_cmpint (way.links, ==, 9);
  g_assert_cmpfloat_with_epsilon (way.feed_a, 1.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (way.link_sum_a, 4.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (way.lowest_v, 12 - 0.045, 1e-9);
  g_assert_cmpfloat_with_epsilon (way.other_feeds_a, 0, 1e-9);
}

static void
test_goes_down_from_the_crown (void)
{
  SwWay way = way_with ("power.feed=crown", 1);

  g_assert_cmpint (way.feed, ==, 10);
  g_assert_cmpint (way.links, ==, -9);
  g_assert_cmpfloat_with_epsilon (way.link_sum_a, 4.5, 1e-9);
}

/* By symmetry each end carries half; link k then carries 0.4, 0.3 … 0.1, 0 A. */
static void
test_feeds_share (void)
{
  SwWay way = way_with ("power.feed=both", 1);

  g_assert_cmpfloat_with_epsilon (way.most_feed_a, 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (way.other_feeds_a, 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (way.first_feed_a, 0.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (way.strip_a, 1.0, 1e-9);
  g_assert_cmpfloat_with_epsilon (way.link_sum_a, 1.0, 1e-9);
}

static void
test_grows_with_the_share (void)
{
  g_assert_cmpfloat_with_epsilon (way_with ("power.feed=ring", 0.5).link_sum_a, 2.25, 1e-9);
}

/* Twelve volts through 1 Ω can't give ten times 6 W: at most V²/4R = 36 W. */
static void
test_has_none_where_power_collapses (void)
{
  SwWay way = way_with ("power.feed=ring; power.load=constant-power; power.pixel_a=0.5; "
                        "power.feeder_m=1; power.feeder_ohm_per_m=0.5; "
                        "power.strips_per_feeder=1",
                        1);

  g_assert_true (isnan (way.feed_a));
}

static void
test_wire_is_the_pitch_unless_measured (void)
{
  g_autoptr (SwDesign) measured = design_with ("lawn", "power.wire_per_pixel_m=0.07");
  g_autoptr (SwDesign) plain_design =
    design_with ("lawn", "power.wire_per_pixel_m=0; strip.pitch_m=0.05");

  g_assert_cmpfloat_with_epsilon (sw_pixel_wire_m (measured), 0.07, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_pixel_wire_m (plain_design), 0.05, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/working-strip/adds up from feed to darkest",
                   test_adds_up_from_feed_to_darkest);
  g_test_add_func ("/engine/working-strip/goes down from the crown",
                   test_goes_down_from_the_crown);
  g_test_add_func ("/engine/working-strip/feeds share", test_feeds_share);
  g_test_add_func ("/engine/working-strip/grows with the share", test_grows_with_the_share);
  g_test_add_func ("/engine/working-strip/has none where power collapses",
                   test_has_none_where_power_collapses);
  g_test_add_func ("/engine/working-strip/wire is the pitch unless measured",
                   test_wire_is_the_pitch_unless_measured);
  return g_test_run ();
}
