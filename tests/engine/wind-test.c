// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/wind.h"

#include <math.h>

static SwShape
sixteen (void)
{
  return (SwShape){ 3.05, 0.15, 0.060, 1.0, 360, 0, 16 };
}

/* Source: ASCE 7-16 table 26.10-1 at 15, 20, 25, 30 ft, by its formula to four digits. */
static void
test_kz_follows_the_table (void)
{
  static const double table[][4] = {
    [SW_EXPOSURE_B] = { 0.5747, 0.6240, 0.6650, 0.7006 },
    [SW_EXPOSURE_C] = { 0.8489, 0.9019, 0.9453, 0.9823 },
    [SW_EXPOSURE_D] = { 1.0302, 1.0831, 1.1259, 1.1622 },
  };

  for (SwExposure exposure = SW_EXPOSURE_B; exposure <= SW_EXPOSURE_D; exposure++) {
    for (int i = 0; i < 4; i++)
      g_assert_cmpfloat_with_epsilon (sw_wind_kz (exposure, (15 + 5 * i) * 0.3048),
                                      table[exposure][i],
                                      5.1e-5);
  }
  g_assert_cmpfloat_with_epsilon (sw_wind_kz (SW_EXPOSURE_C, 5),
                                  0.8650282,
                                  1e-6); /* a published verification case */
  g_assert_cmpfloat_with_epsilon (sw_wind_kz (SW_EXPOSURE_C, 1),
                                  sw_wind_kz (SW_EXPOSURE_C, 4.572),
                                  1e-15);
}

/* Source: a published sign calculation, 155 mph, exposure D, 20 ft: Kz 1.083, Kd 0.85, q 56.62
 * psf. */
static void
test_pressure_matches_a_published_sign (void)
{
  double speed = 155 * 1609.344 / 3600, psf = 47.88025898;

  g_assert_cmpfloat_with_epsilon (0.85 * 0.613 * sw_wind_kz (SW_EXPOSURE_D, 20 * 0.3048) *
                                    speed * speed / psf,
                                  56.62,
                                  0.06);
}

/* By hand: sixteen strips half a step off the wind: 2·Σcos(11.25° + k·22.5°) = 10.251662. */
static void
test_the_worst_direction_is_found (void)
{
  SwShape shape = sixteen ();
  double worst;

  g_assert_cmpfloat_with_epsilon (sw_wind_widths (&shape, &worst), 10.251662, 5e-7);
  g_assert_cmpfloat_with_epsilon (worst, 11.25, 1e-9);
}

static double
scan (const SwShape *shape)
{
  double most = 0;

  for (int i = 0; i < 36000; i++) {
    double sum = 0;
    for (int strip = 1; strip <= shape->strip_count; strip++)
      sum += fabs (cos ((sw_cone_azimuth_deg (shape, strip) - i * 0.005) * G_PI / 180));
    most = MAX (most, sum);
  }
  return most;
}

static void
test_no_direction_is_worse (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (2);

  for (int i = 0; i < 12; i++) {
    SwShape shape = sixteen ();
    shape.strip_count = g_rand_int_range (rand, 2, 25);
    shape.coverage_deg = i % 3 == 0 ? 360 : g_rand_double_range (rand, 20, 359);
    shape.facing_deg = i % 4 == 0 ? 0 : g_rand_double_range (rand, -180, 180);
    g_assert_cmpfloat_with_epsilon (sw_wind_widths (&shape, NULL),
                                    scan (&shape),
                                    2e-7 * shape.strip_count);
    g_assert_cmpfloat (sw_wind_widths (&shape, NULL), >=, scan (&shape) - 1e-12);
  }
}

/* Source: the same integral by SciPy's quad: capped 2.0·0.0254·10.051 over T = 2.9 m. Here
 * against a fine sum. */
static void
test_the_cap_counts_near_the_crown (void)
{
  SwShape shape = sixteen ();
  double flat = 2.0 * 0.0254 * 10.251662, sum = 0;
  int steps = 200000;

  for (int i = 0; i < steps; i++) {
    double rho = 1.0 + (0.060 - 1.0) * (i + 0.5) / steps;
    sum += MIN (flat, 1.2 * (2 * rho + 0.0254)) * 2.9 / steps;
  }
  g_assert_cmpfloat_with_epsilon (sw_wind_strip_area (&shape, 0.0254, flat), sum, 1e-8);
  g_assert_cmpfloat (sum, <, flat * 2.9);
}

/* Source: figure 29.4-3 of ASCE 7-16 (from memory) with the same integral by SciPy: 196.001 N
 * at 166.60658 Pa; at 1 m Cf = 3.635119. With few strips it must come to the build-up's
 * average, 2.0·width·N·2/π a metre.
 */
static void
test_a_lattice_tower_agrees (void)
{
  SwShape shape = sixteen ();

  g_assert_cmpfloat_with_epsilon (166.60658 * sw_wind_lattice_area (&shape, 0.0254),
                                  196.00125,
                                  0.003);
  g_assert_cmpfloat_with_epsilon (sw_wind_lattice_area (&shape, 1e-6),
                                  2.0 * 1e-6 * 16 * 2 / G_PI * 2.9,
                                  1e-9);
  g_assert_cmpfloat (sw_wind_lattice_area (&shape, 0.0254),
                     <,
                     sw_wind_strip_area (&shape, 0.0254, 2.0 * 0.0254 * 10.25));
  shape.coverage_deg = 270;
  g_assert_true (isnan (sw_wind_lattice_area (&shape, 0.0254)));
}

/* By hand: T·sin β·sin(Nδ/2)/sin(δ/2) with T = 10 N, sixteen strips: 29.337 N at 180°, 11.5857
 * N at 270°. */
static void
test_a_partial_tree_pulls_one_way (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  SwCone cone;

  design->shape = sixteen ();
  design->strip.tension_n = 10;
  sw_cone_init (&cone, design);
  g_assert_cmpfloat_with_epsilon (sw_wind_side_pull (design, &cone), 0, 1e-15);
  design->shape.coverage_deg = 180;
  g_assert_cmpfloat_with_epsilon (sw_wind_side_pull (design, &cone), 29.33700, 1e-5);
  design->shape.coverage_deg = 270;
  g_assert_cmpfloat_with_epsilon (sw_wind_side_pull (design, &cone), 11.58570, 1e-5);
}

static void
test_twice_the_gust_is_four_times_the_force (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  const SwCatalogue *catalogue = sw_catalogue_builtin (NULL);
  SwCone cone;
  SwWind once, twice;

  sw_cone_init (&cone, design);
  sw_wind_init (&once, design, &cone, catalogue);
  design->site.gust_mps *= 2;
  sw_wind_init (&twice, design, &cone, catalogue);
  g_assert_cmpfloat_with_epsilon (twice.strips_n, 4 * once.strips_n, 1e-9);
  g_assert_cmpfloat_with_epsilon (twice.base_moment_nm, 4 * once.base_moment_nm, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/wind/Kz follows the table", test_kz_follows_the_table);
  g_test_add_func ("/engine/wind/pressure matches a published sign",
                   test_pressure_matches_a_published_sign);
  g_test_add_func ("/engine/wind/the worst direction is found",
                   test_the_worst_direction_is_found);
  g_test_add_func ("/engine/wind/no direction is worse", test_no_direction_is_worse);
  g_test_add_func ("/engine/wind/the cap counts near the crown",
                   test_the_cap_counts_near_the_crown);
  g_test_add_func ("/engine/wind/a lattice tower agrees", test_a_lattice_tower_agrees);
  g_test_add_func ("/engine/wind/a partial tree pulls one way",
                   test_a_partial_tree_pulls_one_way);
  g_test_add_func ("/engine/wind/twice the gust is four times the force",
                   test_twice_the_gust_is_four_times_the_force);
  return g_test_run ();
}
