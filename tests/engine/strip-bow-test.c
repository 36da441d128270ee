// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/strip-bow.h"
#include "solve.h"

#include <math.h>

#define LONG_TIE "strip.tie_length_m=0.5; strip.tie_n_per_m=150; strip.tension_n=15; "

/* Source: an inextensible cable under the same load a metre of itself, shot from hook to tie by
 * scipy.optimize.fsolve with its mean pull on the tie's stretch, so a catenary and no parabola:
 * 0.0725117 m at 6 m/s, 0.219169 m at 12 m/s. The flat parabola is short by 0.7 % and 3.7 %.
 */
static void
test_a_cable_bows_as_far (void)
{
  static const struct {
    const char *sets;
    double bow_m, within;
  } cables[] = { { LONG_TIE "site.gust_mps=6", 0.0725117, 0.01 },
                 { LONG_TIE "site.gust_mps=12", 0.219169, 0.04 } };

  for (guint i = 0; i < G_N_ELEMENTS (cables); i++) {
    g_autoptr (SwSolution) solution = solve_with ("lawn", cables[i].sets);
    g_assert_cmpfloat_with_epsilon (solution->bow.strip_bow_m,
                                    cables[i].bow_m,
                                    cables[i].within * cables[i].bow_m);
  }
}

/* Source: that cable, moved to the Lawn's guy nine degrees off by fsolve over gust and place,
 * with the wind in steps of 2 degrees: least 6.49 m/s. */
static void
test_a_cable_meets_the_guy (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", LONG_TIE "site.gust_mps=6");

  g_assert_cmpfloat_with_epsilon (solution->bow.guy_touch_mps, 6.49, 0.03);
  g_assert_cmpfloat (solution->bow.strip_guy_gap_m, >, 0);
  g_assert_cmpfloat (solution->bow.strip_guy_gap_m, <, 0.02);
}

/* By hand: a strip of 0.032 m at 10 m/s, 0.613·0.848884·100·2·0.032 = 3.33034 N/m; an iron tie
 * would keep the pull; here T²(T − 15) = 150·w²·s³/24 with s = 2.751182. */
static void
test_by_hand (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", LONG_TIE "site.gust_mps=10");
  double pull_n = solution->support.strip_tension_n;

  g_assert_cmpfloat_with_epsilon (pull_n * pull_n * (pull_n - 15),
                                  150 * 3.33034 * 3.33034 * pow (2.751182, 3) / 24,
                                  0.02);
  g_assert_cmpfloat_with_epsilon (solution->bow.strip_bow_m,
                                  3.33034 * 2.751182 * 2.751182 / (8 * pull_n),
                                  1e-6);
}

static void
test_grows_with_the_gust (void)
{
  double last_m = -1;

  for (int gust = 0; gust <= 60; gust += 2) {
    g_autofree char *sets = g_strdup_printf (LONG_TIE "site.gust_mps=%d", gust);
    g_autoptr (SwSolution) solution = solve_with ("lawn", sets);
    if (gust == 0)
      g_assert_true (fabs (solution->bow.strip_bow_m) <= 0);
    g_assert_cmpfloat (solution->bow.strip_bow_m,
                       >=,
                       last_m * (1 - 1e-12)); /* a tie stretched out gives no more */
    last_m = solution->bow.strip_bow_m;
  }
  g_assert_cmpfloat (last_m, >, 0.3);
}

/* The gust of the first touch, put back in, leaves no gap; a hair less leaves one. */
static void
test_touches_at_that_gust (void)
{
  static const char *const sets[] = { LONG_TIE, "guys.count=0; strip.tie_length_m=2; " };

  for (guint i = 0; i < G_N_ELEMENTS (sets); i++) {
    g_autoptr (SwDesign) design = design_with ("lawn", sets[i]);
    g_autoptr (SwSolution) first = solve_design (design);
    double gust_mps = first->bow.strip_touch_gust_mps;
    g_assert_cmpfloat (gust_mps, <, 150);
    for (int above = -1; above <= 1; above += 2) {
      g_autoptr (SwDesign) again = sw_design_copy (design);
      again->site.gust_mps = gust_mps * (1 + above * 1e-3);
      g_autoptr (SwSolution) s = solve_design (again);
      double gap_m = fmin (s->bow.strip_post_gap_m, s->bow.strip_guy_gap_m);
      g_assert_true ((gap_m > 0) == (above < 0));
    }
  }
}

static void
test_no_guys_no_gap (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "guys.count=0");

  g_assert_true (isnan (solution->bow.strip_guy_gap_m));
  g_assert_true (isfinite (solution->bow.strip_post_gap_m));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/strip-bow/a cable bows as far", test_a_cable_bows_as_far);
  g_test_add_func ("/engine/strip-bow/a cable meets the guy", test_a_cable_meets_the_guy);
  g_test_add_func ("/engine/strip-bow/by hand", test_by_hand);
  g_test_add_func ("/engine/strip-bow/grows with the gust", test_grows_with_the_gust);
  g_test_add_func ("/engine/strip-bow/touches at that gust", test_touches_at_that_gust);
  g_test_add_func ("/engine/strip-bow/no guys, no gap", test_no_guys_no_gap);
  return g_test_run ();
}
