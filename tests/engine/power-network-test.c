// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/power-network.h"

#include <math.h>

#define RAIL_OHM 0.002095 /* a rail, a pitch: 18 AWG at 20 °C (ASTM B258) and 0.1 m */

static void
check_feeds (SwFeed feed, int pixels, int every, const char *wanted)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (GString) text = g_string_new (NULL);

  design->strip.pixels = pixels;
  design->power.feed = feed;
  design->power.inject_every = every;
  g_autoptr (GArray) feeds = sw_power_feeds (design);
  for (guint i = 0; i < feeds->len; i++)
    g_string_append_printf (text, "%d ", g_array_index (feeds, int, i));
  g_assert_cmpstr (text->str, ==, wanted);
}

static void
test_feeds_stand_where_the_design_says (void)
{
  check_feeds (SW_FEED_RING, 50, 0, "1 ");
  check_feeds (SW_FEED_CROWN, 50, 0, "50 ");
  check_feeds (SW_FEED_BOTH, 50, 0, "1 50 ");
  check_feeds (SW_FEED_BOTH, 1, 0, "1 ");
  check_feeds (SW_FEED_RING, 101, 25, "1 26 51 76 101 ");
  check_feeds (SW_FEED_BOTH, 101, 25, "1 26 51 76 101 "); /* the last falls on the crown's */
  check_feeds (SW_FEED_CROWN, 50, 20, "21 41 50 ");
  check_feeds (SW_FEED_RING, 50, 50, "1 ");
}

/* By hand: 800 pixels at 0.36 W are 288 W and 24 A at 12 V; supplies of 350 W at 80 % give 280
 * W each. */
static void
test_the_tree_adds_up (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  SwPower power;

  design->shape.strip_count = 16;
  design->strip.pixels = 50;
  design->topper.kind = SW_TOPPER_NONE;
  design->power.pixel_a = 0.03;
  design->power.cap = 1;
  design->power.brightness = 0.25;
  sw_power_init (&power, design);
  g_assert_cmpfloat_with_epsilon (power.tree_current_a, 24, 1e-12);
  g_assert_cmpfloat_with_epsilon (power.tree_w, 288, 1e-11);
  g_assert_cmpint (power.supplies, ==, 2);
  g_assert_cmpfloat_with_epsilon (power.average_w, 72, 1e-11);
  g_assert_cmpfloat_with_epsilon (power.evening_kwh, 0.36, 1e-13);
  g_assert_cmpfloat_with_epsilon (power.full_white_w, 288, 1e-11);
  design->power.supply_w = 360; /* 288 W exactly at 80 % */
  sw_power_init (&power, design);
  g_assert_cmpint (power.supplies, ==, 1);
}

static void
test_shared_feeders_drop_for_all_their_strips (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  SwPower alone, shared;

  sw_power_init (&alone, design);
  design->power.strips_per_feeder = 4;
  design->power.feeder_m /= 4;
  sw_power_init (&shared, design);
  g_assert_cmpfloat_with_epsilon (alone.worst_pixel_v, shared.worst_pixel_v, 1e-12);
}

/* A strip of 100 regulated pixels as above, through the keys of a design: 18 AWG rails, a
 * feeder of half a pitch shared by two strips, 0.3 W a pixel at the cap.
 */
static SwDesign *
regulated_design (int pixels)
{
  SwDesign *design = sw_design_new ();

  design->shape.strip_count = 4;
  design->strip.pixels = pixels;
  design->strip.pitch_m = 0.1;
  design->topper.kind = SW_TOPPER_STAR;
  design->topper.pixels = 10;
  design->power.supply_v = 5;
  design->power.pixel_a = 0.12;
  design->power.cap = 0.5;
  design->power.brightness = 0.8; /* above the cap: the cap counts */
  design->power.load = SW_LOAD_CONSTANT_POWER;
  design->power.strip_ohm_per_m = RAIL_OHM / 0.1;
  design->power.feeder_m = 0.05;
  design->power.feeder_ohm_per_m = RAIL_OHM / 0.1;
  design->power.strips_per_feeder = 2;
  return design;
}

static void
test_a_design_is_its_ladder (void)
{
  g_autoptr (SwDesign) design = regulated_design (100);
  double volts[100];
  SwPower power;

  sw_power_init (&power, design);
  g_assert_true (power.feasible);
  g_assert_cmpfloat_with_epsilon (power.worst_pixel_v, 3.157138, 1e-6);
  g_assert_cmpfloat_with_epsilon (power.strip_drop_v, 5 - 3.157138, 1e-6);
  g_assert_cmpint (power.worst_pixel, ==, 100);
  g_assert_cmpint (power.n_feeds, ==, 1);
  g_assert_cmpfloat_with_epsilon (power.most_feed_a, power.strip_current_a, 1e-12);
  g_assert_true (sw_power_volts (design, 0.5, volts));
  g_assert_cmpfloat_with_epsilon (volts[99], power.worst_pixel_v, 1e-15);
  g_assert_false (sw_power_volts (design, 1, volts));

  design->power.feed = SW_FEED_CROWN; /* the same strip, hung the other way */
  sw_power_init (&power, design);
  g_assert_cmpfloat_with_epsilon (power.worst_pixel_v, 3.157138, 1e-6);
  g_assert_cmpint (power.worst_pixel, ==, 1);

  design->power.wire_per_pixel_m = 0.1; /* instead of the pitch */
  design->strip.pitch_m = 0.03;
  sw_power_init (&power, design);
  g_assert_cmpfloat_with_epsilon (power.worst_pixel_v, 3.157138, 1e-6);
}

/* The star's ten pixels draw 0.06 A each at the cap, whatever their volts; P/V sums over the
 * strips. At full white twice the power has no solution.
 */
static void
test_the_star_draws_its_current_always (void)
{
  g_autoptr (SwDesign) design = regulated_design (100);
  double volts[100], strip_a = 0;
  SwPower power;

  sw_power_init (&power, design);
  sw_power_volts (design, 0.5, volts);
  for (int i = 0; i < 100; i++)
    strip_a += 0.3 / volts[i];
  g_assert_cmpfloat_with_epsilon (power.strip_current_a, strip_a, 1e-12);
  g_assert_cmpfloat_with_epsilon (power.tree_current_a, 4 * strip_a + 0.6, 1e-12);
  g_assert_cmpfloat_with_epsilon (power.average_w, power.tree_w, 1e-12);
  g_assert_false (power.full_white_feasible);
  g_assert_true (isnan (power.full_white_w));

  design->topper.kind = SW_TOPPER_NONE;
  sw_power_init (&power, design);
  g_assert_cmpfloat_with_epsilon (power.tree_current_a, 4 * strip_a, 1e-12);
}

static void
test_without_a_solution_no_figure_is_given (void)
{
  g_autoptr (SwDesign) design = regulated_design (108);
  SwPower power;

  design->power.brightness = 0.1; /* would work, but the tree does not */
  sw_power_init (&power, design);
  g_assert_false (power.feasible);
  g_assert_false (power.full_white_feasible);
  g_assert_true (isnan (power.strip_current_a) && isnan (power.tree_current_a) &&
                 isnan (power.tree_w) && isnan (power.worst_pixel_v) &&
                 isnan (power.strip_drop_v) && isnan (power.average_w) &&
                 isnan (power.evening_kwh) && isnan (power.most_feed_a));
  g_assert_cmpint (power.supplies, ==, 0);
  g_assert_cmpint (power.worst_pixel, ==, 0);
}

/* Whole numbers of supplies, worked by hand from watts that have no exact binary form. */
static void
test_exactly_full_supplies_are_enough (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  SwPower power;

  design->topper.kind = SW_TOPPER_NONE;
  design->power.cap = 1;
  for (int strips = 2; strips <= 300; strips++) {
    design->shape.strip_count = strips;
    design->strip.pixels = 70;
    design->power.pixel_a = 0.033;
    design->power.supply_w = 0.033 * 70 * 12 / 0.7; /* one strip at 70 % */
    design->power.supply_load_max = 0.7;
    sw_power_init (&power, design);
    g_assert_cmpint (power.supplies, ==, strips);
    design->power.supply_w *= 1 - 1e-6;
    sw_power_init (&power, design);
    g_assert_cmpint (power.supplies, ==, strips + 1);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/power-network/feeds stand where the design says",
                   test_feeds_stand_where_the_design_says);
  g_test_add_func ("/engine/power-network/the tree adds up", test_the_tree_adds_up);
  g_test_add_func ("/engine/power-network/shared feeders drop for all their strips",
                   test_shared_feeders_drop_for_all_their_strips);
  g_test_add_func ("/engine/power-network/a design is its ladder", test_a_design_is_its_ladder);
  g_test_add_func ("/engine/power-network/the star draws its current always",
                   test_the_star_draws_its_current_always);
  g_test_add_func ("/engine/power-network/without a solution no figure is given",
                   test_without_a_solution_no_figure_is_given);
  g_test_add_func ("/engine/power-network/exactly full supplies are enough",
                   test_exactly_full_supplies_are_enough);
  return g_test_run ();
}
