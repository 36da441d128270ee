// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/foot-build.h"
#include "solve.h"

#include <math.h>

#define INCH_M 0.0254
#define POUND_KG 0.45359237

/* Source: ALSC PS 20, dry lumber: 2 x 6 is 1-1/2 x 5-1/2 in, 2 x 4 is 1-1/2 x 3-1/2 in. */
static void
test_half_lap_of_actual_boards (void)
{
  g_autoptr (SwSolution) lawn = solve_with ("lawn", "");
  g_autoptr (SwSolution) porch = solve_with ("porch", "");

  g_assert_cmpfloat_with_epsilon (lawn->foot.lap_depth_m, 0.75 * INCH_M, 1e-12);
  g_assert_cmpfloat_with_epsilon (lawn->foot.lap_width_m, 5.5 * INCH_M, 1e-12);
  g_assert_cmpfloat_with_epsilon (lawn->foot.lap_start_m, 0.95 - 2.75 * INCH_M, 1e-12);
  g_assert_cmpfloat_with_epsilon (porch->foot.lap_width_m, 3.5 * INCH_M, 1e-12);
}

/* A board is whole again: two rests and the lap make its length. */
static void
test_lap_lies_in_the_middle (void)
{
  for (double arm_m = 0.3; arm_m < 2; arm_m += 0.17) {
    g_autofree char *sets = g_strdup_printf ("stand.arm_m=%.17g", arm_m);
    g_autoptr (SwSolution) solution = solve_with ("lawn", sets);
    const SwFootBuild *foot = &solution->foot;
    g_assert_cmpfloat_with_epsilon (2 * foot->lap_start_m + foot->lap_width_m,
                                    2 * arm_m,
                                    1e-12);
  }
}

/* Source: a bag's data sheet: 40, 60 and 80 lb set to 0.30, 0.45 and 0.60 ft³, so 45 bags of 80
 * lb a cubic yard; ready concrete of 143.8 lb/ft³ with 6 pints of water (1 US pint of
 * water 1.043 lb).
 */
static void
test_bags_of_a_cubic_yard (void)
{
  const double yard_m3 = pow (0.9144, 3), foot_m3 = pow (0.3048, 3);
  const SwGoods *bag = sw_catalogue_goods (sw_catalogue_builtin (NULL), "concrete-bag");

  g_assert_cmpfloat_with_epsilon (yard_m3 / SW_BAG_M3, 45, 1e-3);
  g_assert_cmpfloat_with_epsilon (bag->mass_kg / SW_BAG_M3 * foot_m3 / POUND_KG, 143.8, 0.2);
  g_assert_cmpfloat_with_epsilon (SW_BAG_WATER_M3 * 998 / POUND_KG, 6 * 1.043, 0.02);
}

/* Worked by hand: a hole 0.25 m across and 0.9 m deep, less a sleeve of 2.875 in: 40.41 L are
 * 2.4 bags; 7.36 L of gravel.
 */
static void
test_socket_concrete (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "stand.foot=socket");
  double area_m2 = G_PI / 4 * (0.25 * 0.25 - 0.073025 * 0.073025);

  g_assert_cmpfloat_with_epsilon (solution->foot.concrete_m3, area_m2 * 0.9, 1e-9);
  g_assert_cmpfloat_with_epsilon (solution->foot.bags, 3, 1e-12);
  g_assert_cmpfloat_with_epsilon (solution->foot.gravel_m3, 0.00736, 1e-5);
  g_assert_true (isnan (solution->foot.lap_depth_m) && isnan (solution->foot.slabs));
}

/* Source: 5 US gallons filled with concrete of 145 lb/ft³ weigh 97 lb; here 143.8 lb/ft³ and
 * the sleeve's 1.466 L less.
 */
static void
test_what_a_bucket_holds (void)
{
  g_autoptr (SwSolution) no_sleeve =
    solve_with ("lawn", "stand.foot=bucket; stand.sleeve=oak; stand.ballast_kg=30");
  g_autoptr (SwSolution) full = solve_with ("lawn", "stand.foot=bucket; stand.ballast_kg=60");

  g_assert_cmpfloat_with_epsilon (no_sleeve->foot.bucket_most_kg / POUND_KG,
                                  97 * 143.8 / 145,
                                  0.2);
  g_assert_cmpfloat_with_epsilon (no_sleeve->foot.mass_reached_kg, 30, 1e-12);
  g_assert_cmpfloat_with_epsilon (full->foot.mass_reached_kg,
                                  no_sleeve->foot.bucket_most_kg -
                                    1.466e-3 * 143.8 * POUND_KG / pow (0.3048, 3),
                                  0.02);
}

/* Counted by hand: 36 kg are 9 kg an arm, a slab of 16 kg each; 65 kg two. */
static void
test_slabs_reach_the_mass (void)
{
  g_autoptr (SwSolution) few = solve_with ("lawn", "");
  g_autoptr (SwSolution) more = solve_with ("lawn", "stand.ballast_kg=65");

  g_assert_cmpfloat_with_epsilon (few->foot.slabs, 4, 1e-12);
  g_assert_cmpfloat_with_epsilon (few->foot.mass_reached_kg, 64, 1e-12);
  g_assert_cmpfloat_with_epsilon (more->foot.slabs, 8, 1e-12);
  g_assert_cmpfloat (more->foot.mass_reached_kg, >=, 65);
}

/* Worked by hand: 5.5 in of bolt circle stand 1.945 in off both middle lines. Source of the
 * edge: NDS 2018, table 12.5.1C: 1.5 diameters of 3/8 in.
 */
static void
test_bolts_stand_in_the_lap (void)
{
  g_autoptr (SwSolution) lawn = solve_with ("lawn", "");

  g_assert_cmpfloat_with_epsilon (lawn->foot.bolt_off_m, 1.9445 * INCH_M, 1e-5);
  g_assert_cmpfloat_with_epsilon (lawn->foot.bolt_edge_m, (2.75 - 1.9445) * INCH_M, 1e-5);
  g_assert_cmpfloat_with_epsilon (lawn->foot.bolt_edge_least_m, 0.5625 * INCH_M, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/foot-build/a half lap of actual boards",
                   test_half_lap_of_actual_boards);
  g_test_add_func ("/engine/foot-build/the lap lies in the middle",
                   test_lap_lies_in_the_middle);
  g_test_add_func ("/engine/foot-build/bags of a cubic yard", test_bags_of_a_cubic_yard);
  g_test_add_func ("/engine/foot-build/concrete of a socket", test_socket_concrete);
  g_test_add_func ("/engine/foot-build/what a bucket holds", test_what_a_bucket_holds);
  g_test_add_func ("/engine/foot-build/slabs reach the mass", test_slabs_reach_the_mass);
  g_test_add_func ("/engine/foot-build/bolts stand in the lap", test_bolts_stand_in_the_lap);
  return g_test_run ();
}
