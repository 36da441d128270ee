// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/stand.h"

#include <math.h>

typedef struct {
  SwCone cone;
  SwWind wind;
  SwSupport support;
} Answer;

static Answer
solve (const SwDesign *design)
{
  const SwCatalogue *catalogue = sw_catalogue_builtin (NULL);
  Answer answer;

  sw_cone_init (&answer.cone, design);
  sw_wind_init (&answer.wind, design, &answer.cone, catalogue);
  g_assert_true (
    sw_support_init (&answer.support, design, &answer.cone, &answer.wind, catalogue, NULL));
  return answer;
}

/* By hand: arms of 0.61 m and 88.9 mm wide boards: (0.61 + 0.04445)/√2 = 0.462766 m; 60 kg on
 * them resist 272.291 N m. */
static void
test_the_lever_of_crossed_boards (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->stand.arm_m = 0.61;
  design->stand.arm_width_m = 0.0889;
  Answer answer = solve (design);
  g_assert_cmpfloat_with_epsilon (answer.support.foot_lever_m, 0.462766033, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer.support.tipping_factor,
                                  answer.support.foot_mass_kg * 9.80665 * 0.462766033 /
                                    answer.wind.base_moment_nm,
                                  1e-9);
}

static void
test_a_limit_put_back_just_keeps_its_factor (void)
{
  for (SwFootKind foot = SW_FOOT_BUCKET; foot <= SW_FOOT_SOCKET; foot++) {
    for (int coverage = 180; coverage <= 360; coverage += 180) {
      g_autoptr (SwDesign) design = sw_design_new ();
      design->stand.foot = foot;
      design->shape.coverage_deg = coverage;
      design->stand.tie_hold_n = 500;
      design->stand.ballast_kg = 400;
      Answer first = solve (design);
      g_assert_cmpfloat (first.support.gust_limit_unguyed_mps, >, 1);
      design->site.gust_mps = first.support.gust_limit_unguyed_mps;
      Answer again = solve (design);
      double tie = 500 / again.support.ring_tie_gust_n / 2,
             post = again.support.post_factor / 1.5;
      double stand = foot == SW_FOOT_SOCKET
                       ? design->stand.socket_depth_m / again.support.socket_depth_needed_m
                       : MIN (again.support.tipping_factor, again.support.sliding_factor) / 1.5;
      g_assert_cmpfloat_with_epsilon (MIN (MIN (tie, post), stand), 1, 1e-3);
      g_assert_cmpfloat_with_epsilon (again.support.gust_limit_unguyed_mps,
                                      first.support.gust_limit_unguyed_mps,
                                      1e-6);
    }
  }
}

static void
test_a_guyed_limit_just_keeps_its_factor (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->guys.stakes_tested = TRUE;
  Answer first = solve (design);
  g_assert_cmpint (first.support.limit_reason, ==, SW_LIMIT_STAKE);
  g_assert_cmpfloat_with_epsilon (first.support.gust_limit_mps,
                                  first.support.gust_limit_guyed_mps,
                                  1e-12);
  design->site.gust_mps = first.support.gust_limit_mps;
  Answer again = solve (design);
  g_assert_cmpfloat_with_epsilon (again.support.stake_factor, 2, 2e-3);
}

static void
test_untested_stakes_do_not_count (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  Answer answer = solve (design);

  g_assert_cmpfloat_with_epsilon (answer.support.gust_limit_mps,
                                  answer.support.gust_limit_unguyed_mps,
                                  1e-12);
  design->guys.count = 2;
  answer = solve (design);
  g_assert_true (isnan (answer.support.gust_limit_guyed_mps));
  g_assert_true (isnan (answer.support.guy_factor));
}

static void
test_a_socket_has_no_tipping (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->stand.foot = SW_FOOT_SOCKET;
  Answer answer = solve (design);
  g_assert_true (isnan (answer.support.tipping_factor));
  g_assert_true (isnan (answer.support.sliding_factor));
  g_assert_cmpfloat (answer.support.socket_depth_needed_m, >, 0.2);
  g_assert_true (isnan (answer.support.take_down_gust_mps)); /* unknown soil */
}

static void
test_the_take_down_gust_is_a_round_number_below (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  Answer us = solve (design);

  double mph = us.support.take_down_gust_mps * 3600 / 1609.344;
  g_assert_cmpfloat_with_epsilon (remainder (mph, 5), 0, 1e-9);
  g_assert_cmpfloat (us.support.take_down_gust_mps, <=, 0.8 * us.support.gust_limit_mps + 1e-9);
  design->units = SW_UNITS_METRIC;
  Answer metric = solve (design);
  g_assert_cmpfloat_with_epsilon (remainder (metric.support.take_down_gust_mps, 2), 0, 1e-9);
  design->shape.crown_height_m = 6;
  g_assert_true (isnan (solve (design).support.take_down_gust_mps));
}

static void
test_an_unknown_post_is_not_a_number (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  g_free (design->stand.post);
  design->stand.post = g_strdup ("my-mast");
  Answer answer = solve (design);
  g_assert_true (isnan (answer.support.post_factor));
  g_assert_true (isnan (answer.support.gust_limit_mps));
}

static void
test_a_gust_of_nothing_still_has_limits (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  double limit = solve (design).support.gust_limit_unguyed_mps;

  design->site.gust_mps = 0;
  g_assert_cmpfloat_with_epsilon (solve (design).support.gust_limit_unguyed_mps, limit, 1e-6);
}

static void
test_a_partial_tree_may_fall_in_still_air (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->shape.coverage_deg = 180;
  design->strip.tension_n = 400;
  Answer answer = solve (design);
  g_assert_cmpfloat_with_epsilon (answer.support.gust_limit_unguyed_mps, 0, 1e-12);
}

/* Source: a dense solve with two hundred harmonics of the free ring for each strip (Python): a
 * tree over half a ring loads the ties under it with more than twice the average.
 */
static void
test_a_partial_tree_lifts_its_own_side (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->shape.coverage_deg = 180;
  Answer answer = solve (design);
  g_assert_cmpfloat_with_epsilon (answer.support.ring_tie_n, 72.59510, 1e-3);
  double average_n = design->shape.strip_count * design->strip.tension_n *
                     cos (answer.cone.lean_deg * G_PI / 180) / design->stand.ring_ties;
  g_assert_cmpfloat (answer.support.ring_tie_n, >, 2 * average_n);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/stand/the lever of crossed boards",
                   test_the_lever_of_crossed_boards);
  g_test_add_func ("/engine/stand/a limit put back just keeps its factor",
                   test_a_limit_put_back_just_keeps_its_factor);
  g_test_add_func ("/engine/stand/a guyed limit just keeps its factor",
                   test_a_guyed_limit_just_keeps_its_factor);
  g_test_add_func ("/engine/stand/untested stakes do not count",
                   test_untested_stakes_do_not_count);
  g_test_add_func ("/engine/stand/a socket has no tipping", test_a_socket_has_no_tipping);
  g_test_add_func ("/engine/stand/the take-down gust is a round number below",
                   test_the_take_down_gust_is_a_round_number_below);
  g_test_add_func ("/engine/stand/an unknown post is not a number",
                   test_an_unknown_post_is_not_a_number);
  g_test_add_func ("/engine/stand/a gust of nothing still has limits",
                   test_a_gust_of_nothing_still_has_limits);
  g_test_add_func ("/engine/stand/a partial tree may fall in still air",
                   test_a_partial_tree_may_fall_in_still_air);
  g_test_add_func ("/engine/stand/a partial tree lifts its own side",
                   test_a_partial_tree_lifts_its_own_side);
  return g_test_run ();
}
