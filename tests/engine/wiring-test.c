// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/wiring.h"
#include "solve.h"

#include <math.h>

/* Joule's law summed link by link, apart from the energy balance of the program: plain pixels
 * fed at the ring, so the link after pixel k carries what lies above it. */
static void
test_heat_is_the_sum_over_the_links (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", "power.strips_per_feeder=2; topper.kind=none");
  const SwPowerSetup *power = &s->design->power;
  double pixel_a = power->pixel_a * power->cap, links_w = 0, feeder_a = 2 * 50 * pixel_a;

  for (int k = 1; k < 50; k++)
    links_w += pow (pixel_a * (50 - k), 2) * 2 * power->strip_ohm_per_m * 0.0508;
  g_assert_cmpfloat_with_epsilon (s->wiring.strip_heat_w, 20 * links_w, 1e-9);
  g_assert_cmpfloat_with_epsilon (s->wiring.feeder_heat_w,
                                  10 * feeder_a * feeder_a * 2 * 0.0082 * 3,
                                  1e-9);
}

/* By hand: 1.375 A a strip. Two on a feeder: 2.75 A, a fuse of 4 A; four: 5.5 A, 7.5 A, more
 * than the strip's wire of 5 A carries, so each has 2 A of its own. */
static void
test_fuses_suit_load_and_thinnest_wire (void)
{
  g_autoptr (SwSolution) two = solve_with ("lawn", "power.strips_per_feeder=2");
  g_autoptr (SwSolution) four = solve_with ("lawn", "power.strips_per_feeder=4");

  g_assert_cmpfloat_with_epsilon (two->wiring.feeder_fuse_a, 4, 1e-12);
  g_assert_false (two->wiring.strip_fused);
  g_assert_cmpfloat_with_epsilon (four->wiring.feeder_fuse_a, 7.5, 1e-12);
  g_assert_true (four->wiring.strip_fused);
  g_assert_cmpfloat_with_epsilon (four->wiring.strip_fuse_a, 2, 1e-12);
  g_assert_cmpint (four->wiring.feeders, ==, 6);
}

/* By hand: 363 W out of 0.85 at 120 V. */
static void
test_mains_follow_the_units (void)
{
  g_autoptr (SwSolution) us = solve_with ("lawn", "units=us");
  g_autoptr (SwSolution) metric = solve_with ("lawn", "units=metric");

  g_assert_cmpfloat_with_epsilon (us->wiring.mains_a, 363 / 0.85 / 120, 1e-9);
  g_assert_cmpfloat_with_epsilon (metric->wiring.mains_a, 363 / 0.85 / 230, 1e-9);
}

/* NEC chapter 9, table 11(B): 60 W at 12 V, 25 W at 5 V, 100 W at 24 V. */
static void
test_class_2_ends_early (void)
{
  g_assert_cmpfloat_with_epsilon (sw_class_2_w (12), 60, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_class_2_w (5), 25, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_class_2_w (24), 100, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/wiring/heat is the sum over the links",
                   test_heat_is_the_sum_over_the_links);
  g_test_add_func ("/engine/wiring/fuses suit load and thinnest wire",
                   test_fuses_suit_load_and_thinnest_wire);
  g_test_add_func ("/engine/wiring/mains follow the units", test_mains_follow_the_units);
  g_test_add_func ("/engine/wiring/class 2 ends early", test_class_2_ends_early);
  return g_test_run ();
}
