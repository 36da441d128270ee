// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/stand-model.h"
#include "solve.h"

#include <math.h>

/* By hand: the Lawn's post of 60.325 mm and twenty strips 32 × 10 mm, half air:
 * √(0.060325² + 4/π·0.0128) = 0.141197 m; 1.2·208.146 Pa·0.141197·2.86 m = 100.865 N.
 */
static void
test_strips_wound_on_the_post (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", "");

  g_assert_cmpfloat_with_epsilon (s->storm.bundle_m, 0.141197, 1e-6);
  g_assert_cmpfloat_with_epsilon (s->storm.gathered_n, 100.865, 0.005);
}

/* By hand: wind on bundle and star at half and at 3.31 m, 67.4529 kg on a lever of 0.72125 m,
 * friction 0.2: sliding and tipping at once without guys.
 */
static void
test_the_gathered_limit_keeps_its_factor (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", "guys.count=0");
  double square = pow (s->storm.gathered_limit_mps / s->design->site.gust_mps, 2);
  double push_n = s->storm.gathered_n + s->wind.topper_n;
  double moment_nm = s->storm.gathered_n * 1.43 + s->wind.topper_n * (2.86 + 0.15 + 0.30);
  double weight_n = s->support.foot_mass_kg * 9.80665;
  double sliding = 0.2 * weight_n / (square * push_n) / 1.5;
  double tipping = weight_n * s->support.foot_lever_m / (square * moment_nm) / 1.5;

  g_assert_cmpfloat_with_epsilon (MIN (sliding, tipping), 1, 1e-3);
}

static void
test_gathered_strips_stand_more (void)
{
  static const char *const starts[] = { "porch", "lawn", "landmark" };

  for (guint i = 0; i < G_N_ELEMENTS (starts); i++) {
    g_autoptr (SwSolution) s =
      solve_with (starts[i], "site.soil=sand; shape.crown_height_m=1.9");
    g_assert_cmpfloat (s->storm.gathered_limit_mps, >, s->support.gust_limit_mps);
    g_assert_cmpfloat (s->storm.lower_gust_mps, >=, s->storm.unhook_gust_mps);
    g_assert_cmpfloat (s->storm.lower_gust_mps,
                       <=,
                       MAX (0.8 * s->storm.gathered_limit_mps, s->storm.unhook_gust_mps) +
                         1e-9);
  }
}

static void
test_the_design_gust_moves_no_limit (void)
{
  g_autoptr (SwSolution) calm = solve_with ("lawn", "site.gust_mps=0");
  g_autoptr (SwSolution) windy = solve_with ("lawn", "site.gust_mps=40");
  g_autoptr (SwSolution) half = solve_with ("lawn", "site.gust_mps=20");

  g_assert_cmpfloat_with_epsilon (calm->storm.gathered_limit_mps,
                                  windy->storm.gathered_limit_mps,
                                  1e-6);
  g_assert_cmpfloat_with_epsilon (windy->storm.gathered_n, 4 * half->storm.gathered_n, 1e-6);
}

/* Source: Durst's curve as ASCE 7-16 figure C26.5-1 has it, 1.53 for three seconds: 15 mph is
 * 9.8 mph, shown as 9.
 */
static void
test_a_gust_has_a_sustained_wind (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", "");

  g_assert_cmpfloat_with_epsilon (s->storm.unhook_gust_mps * 3600 / 1609.344, 15, 1e-9);
  g_assert_cmpfloat_with_epsilon (s->storm.unhook_sustained_mps * 3600 / 1609.344, 9, 1e-9);
}

static void
test_nothing_is_shown_where_nothing_may_be (void)
{
  static const char *const sets[] = { "shape.crown_height_m=6",
                                      "site.ice_mm=3",
                                      "stand.foot=socket" };

  for (guint i = 0; i < G_N_ELEMENTS (sets); i++) {
    g_autoptr (SwSolution) s = solve_with ("lawn", sets[i]);
    g_assert_true (isnan (s->storm.unhook_gust_mps));
    g_assert_true (isnan (s->storm.lower_gust_mps));
    g_assert_true (isnan (s->storm.lower_sustained_mps));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/storm-plan/strips wound on the post",
                   test_strips_wound_on_the_post);
  g_test_add_func ("/engine/storm-plan/the gathered limit keeps its factor",
                   test_the_gathered_limit_keeps_its_factor);
  g_test_add_func ("/engine/storm-plan/gathered strips stand more",
                   test_gathered_strips_stand_more);
  g_test_add_func ("/engine/storm-plan/the design gust moves no limit",
                   test_the_design_gust_moves_no_limit);
  g_test_add_func ("/engine/storm-plan/a gust has a sustained wind",
                   test_a_gust_has_a_sustained_wind);
  g_test_add_func ("/engine/storm-plan/nothing is shown where nothing may be",
                   test_nothing_is_shown_where_nothing_may_be);
  return g_test_run ();
}
