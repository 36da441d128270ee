// SPDX-License-Identifier: GPL-3.0-or-later
/* Heights, radii and pitches by Pythagoras, worked by hand and with SciPy; the shape is
 * crown 3.05/0.060 m, ring 0.15/1.000 m, gap at hook 0.12 m, 50 pixels at 0.050 m.
 */
#include "engine/cone.h"
#include "engine/error.h"
#include "engine/fit.h"

#include <math.h>

static SwDesign *
example (void)
{
  SwDesign *design = sw_design_new ();
  design->shape = (SwShape){ 3.05, 0.15, 0.060, 1.0, 360, 0, 16 };
  design->strip.pixels = 50;
  design->strip.pitch_m = 0.050;
  design->strip.lead_m = 0.12;
  design->strip.tail_min_m = 0.10;
  return design;
}

static double
tail_m (const SwDesign *design)
{
  SwCone cone;
  sw_cone_init (&cone, design);
  return cone.tail_m;
}

static void
test_pitch_and_pixels (void)
{
  g_autoptr (SwDesign) design = example ();
  g_autoptr (SwDesign) pitch = sw_fit_tail (design, SW_GIVES_PITCH, NULL);
  g_autoptr (SwDesign) pixels = sw_fit_tail (design, SW_GIVES_PIXELS, NULL);

  g_assert_cmpfloat_with_epsilon (tail_m (design), 0.478540634, 1e-9);
  g_assert_cmpfloat_with_epsilon (pitch->strip.pitch_m, 0.057725319, 1e-9);
  g_assert_cmpint (pixels->strip.pixels, ==, 57);
}

static void
test_height_and_radius_for_a_slant (void)
{
  g_autoptr (SwDesign) design = example ();
  design->strip.tail_min_m = 3.2 - 0.12 - 49 * 0.050; /* a slant of 3.2 m */
  g_autoptr (SwDesign) height = sw_fit_tail (design, SW_GIVES_CROWN_HEIGHT, NULL);
  g_autoptr (SwDesign) radius = sw_fit_tail (design, SW_GIVES_RING_RADIUS, NULL);

  g_assert_cmpfloat_with_epsilon (height->shape.crown_height_m, 0.15 + 3.058823303, 1e-9);
  g_assert_cmpfloat_with_epsilon (radius->shape.ring_radius_m, 1.412774926, 1e-9);
}

static void
test_the_gap_is_exact_for_random_shapes (void)
{
  static const SwGives moved[] = { SW_GIVES_CROWN_HEIGHT,
                                   SW_GIVES_RING_RADIUS,
                                   SW_GIVES_PITCH,
                                   SW_GIVES_LEAD };
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  guint fitted = 0;

  for (int i = 0; i < 2000; i++) {
    g_autoptr (SwDesign) design = example ();
    design->shape.crown_height_m = g_rand_double_range (rand, 1, 6);
    design->shape.ring_radius_m = g_rand_double_range (rand, 0.3, 2.5);
    design->strip.pixels = g_rand_int_range (rand, 10, 120);
    g_autoptr (SwDesign) exact = sw_fit_tail (design, moved[i % 4], NULL);
    if (exact == NULL)
      continue;
    fitted++;
    g_assert_cmpfloat_with_epsilon (tail_m (exact), 0.10, 4e-15);
  }
  g_assert_cmpuint (fitted, >, 500);
}

/* 0.05·k sums that binary numbers miss by a last bit must not cost a pixel. */
static void
test_a_pixel_that_just_fits_counts (void)
{
  g_autoptr (SwDesign) design = example ();

  design->shape = (SwShape){ 3.2, 0.2, 0.5, 0.5, 360, 0, 16 }; /* slant 3.0 */
  design->strip.lead_m = 0.1;
  for (int pixels = 2; pixels <= 55; pixels++) {
    design->strip.tail_min_m = 3.0 - 0.1 - (pixels - 1) * 0.05;
    if (design->strip.tail_min_m > 2)
      continue;
    g_autoptr (SwDesign) fit = sw_fit_tail (design, SW_GIVES_PIXELS, NULL);
    g_assert_cmpint (fit->strip.pixels, ==, pixels);
  }
}

static void
test_what_has_no_solution_says_why (void)
{
  g_autoptr (SwDesign) design = example ();
  g_autoptr (GError) error = NULL;

  design->strip.pixels = 10; /* too short to reach down */
  g_assert_null (sw_fit_tail (design, SW_GIVES_RING_RADIUS, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_NO_SOLUTION);
  g_clear_error (&error);
  design->strip.pixels = 900; /* 45 m */
  g_assert_null (sw_fit_tail (design, SW_GIVES_CROWN_HEIGHT, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_NO_SOLUTION);
  g_clear_error (&error);
  g_assert_null (sw_fit_tail (design, SW_GIVES_LEAD, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_NO_SOLUTION);
  g_clear_error (&error);
  design->strip.pixels = 50;
  g_ptr_array_add (design->held, g_strdup ("strip.pitch_m"));
  g_assert_null (sw_fit_tail (design, SW_GIVES_PITCH, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_NO_SOLUTION);
}

static void
test_spacing_moves_what_was_asked (void)
{
  g_autoptr (SwDesign) design = example ();
  g_autoptr (SwDesign) radius = sw_fit_spacing (design, SW_FIT_RING_RADIUS, 0.4, NULL);
  g_autoptr (SwDesign) count = sw_fit_spacing (design, SW_FIT_STRIP_COUNT, 0.4, NULL);
  SwCone cone;

  sw_cone_init (&cone, radius);
  g_assert_cmpfloat_with_epsilon (cone.spacing_ring_m, 0.4, 1e-15);
  g_assert_cmpint (count->shape.strip_count, ==, 16); /* 2π/0.4 = 15.7 */
  design->shape.coverage_deg = 180;
  g_autoptr (SwDesign) open = sw_fit_spacing (design, SW_FIT_STRIP_COUNT, 0.4, NULL);
  g_assert_cmpint (open->shape.strip_count, ==, 9); /* π/0.4 = 7.85 gaps, 8 → 9 strips */
  g_autoptr (SwDesign) coverage = sw_fit_spacing (design, SW_FIT_COVERAGE, 0.4, NULL);
  sw_cone_init (&cone, coverage);
  g_assert_cmpfloat_with_epsilon (cone.spacing_ring_m, 0.4, 1e-15);
  g_assert_null (sw_fit_spacing (design, SW_FIT_COVERAGE, 0.42, NULL)); /* 15·0.42 > 2π */
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/fit/pitch and pixels", test_pitch_and_pixels);
  g_test_add_func ("/engine/fit/height and radius for a slant",
                   test_height_and_radius_for_a_slant);
  g_test_add_func ("/engine/fit/the gap is exact for random shapes",
                   test_the_gap_is_exact_for_random_shapes);
  g_test_add_func ("/engine/fit/a pixel that just fits counts",
                   test_a_pixel_that_just_fits_counts);
  g_test_add_func ("/engine/fit/what has no solution says why",
                   test_what_has_no_solution_says_why);
  g_test_add_func ("/engine/fit/spacing moves what was asked",
                   test_spacing_moves_what_was_asked);
  return g_test_run ();
}
