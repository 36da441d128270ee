// SPDX-License-Identifier: GPL-3.0-or-later
/* Crown 3.05/0.060 m, ring 0.15/1.000 m, 16 strips of 50 pixels at 0.050 m, the first one 0.12
 * m below its hook. Figures by an independent program (SciPy 1.10).
 */
#include "engine/cone.h"
#include "engine/strip-points.h"

#include <math.h>

static SwDesign *
sixteen_strips (void)
{
  SwDesign *design = sw_design_new ();

  design->shape = (SwShape){ 3.05, 0.15, 0.060, 1.0, 360, 0, 16 };
  design->strip.pixels = 50;
  design->strip.pitch_m = 0.050;
  design->strip.lead_m = 0.12;
  return design;
}

static double
distance_m (SwPoint a, SwPoint b)
{
  return hypot (hypot (a.x_m - b.x_m, a.y_m - b.y_m), a.z_m - b.z_m);
}

static void
assert_point (SwPoint point, SwPoint wanted, double epsilon_m)
{
  g_assert_cmpfloat_with_epsilon (point.x_m, wanted.x_m, epsilon_m);
  g_assert_cmpfloat_with_epsilon (point.y_m, wanted.y_m, epsilon_m);
  g_assert_cmpfloat_with_epsilon (point.z_m, wanted.z_m, epsilon_m);
}

/* By definition: 0° towards the viewer (−y), 90° to the viewer's right (+x), 180° away. */
static void
test_azimuths_turn_anticlockwise_from_the_viewer (void)
{
  assert_point (sw_point_on_circle (0, 2, 7), (SwPoint){ 0, -2, 7 }, 1e-15);
  assert_point (sw_point_on_circle (90, 2, 7), (SwPoint){ 2, 0, 7 }, 1e-15);
  assert_point (sw_point_on_circle (180, 2, 7), (SwPoint){ 0, 2, 7 }, 1e-15);
  assert_point (sw_point_on_circle (270, 2, 7), (SwPoint){ -2, 0, 7 }, 1e-15);
  assert_point (sw_point_on_circle (30, 2, 7), (SwPoint){ 1, -sqrt (3), 7 }, 1e-15);
}

/* Strip 15 stands at azimuth 135°: behind, to the right, x = y. */
static void
test_pixels_of_a_strip (void)
{
  static const struct {
    int pixel; /* from the ring */
    double across_m, z_m;
  } wanted[] = { { 50, 0.068590285, 2.935847019 },
                 { 26, 0.330229064, 1.794317213 },
                 { 1, 0.602769458, 0.605223665 } };
  g_autoptr (SwDesign) design = sixteen_strips ();

  g_assert_cmpfloat_with_epsilon (sw_cone_azimuth_deg (&design->shape, 15), 135, 1e-12);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    assert_point (sw_pixel_point (design, 15, wanted[i].pixel),
                  (SwPoint){ wanted[i].across_m, wanted[i].across_m, wanted[i].z_m },
                  1e-9);
}

static void
test_pixels_hang_on_the_line_from_hook_to_tie (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  SwCone cone;

  sw_cone_init (&cone, design);
  for (int strip = 1; strip <= 16; strip++) {
    SwPoint hook = sw_hook_point (&design->shape, strip);
    SwPoint tie = sw_tie_point (&design->shape, strip);
    g_assert_cmpfloat_with_epsilon (distance_m (hook, tie), cone.slant_m, 1e-12);
    for (int pixel = 1; pixel <= 50; pixel++) {
      SwPoint at = sw_pixel_point (design, strip, pixel);
      double down_m = 0.12 + (50 - pixel) * 0.050;
      g_assert_cmpfloat_with_epsilon (distance_m (hook, at), down_m, 1e-12);
      g_assert_cmpfloat_with_epsilon (distance_m (at, tie), cone.slant_m - down_m, 1e-12);
    }
  }
}

static void
test_all_pixels_are_each_pixel (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  SwPoint points[50];

  for (int strip = 1; strip <= 16; strip++) {
    sw_pixel_points (design, strip, points);
    for (int pixel = 1; pixel <= 50; pixel++)
      assert_point (points[pixel - 1], sw_pixel_point (design, strip, pixel), 1e-15);
  }
}

/* From a hook to the tie of the neighbour strip, 22.5° further on. */
static void
test_a_strip_tied_one_mark_on_is_longer (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();

  g_assert_cmpfloat_with_epsilon (
    distance_m (sw_hook_point (&design->shape, 1), sw_tie_point (&design->shape, 2)),
    3.050038435,
    1e-9);
}

/* What a viewer far away sees between neighbours of the front quarter, from the middle out. */
static void
test_gaps_shrink_towards_the_edge (void)
{
  static const double gaps_m[] = { 0.382683, 0.324423, 0.216773, 0.076120 };
  g_autoptr (SwDesign) design = sixteen_strips ();

  for (int i = 0; i < 4; i++) {
    double from_m = sw_tie_point (&design->shape, 9 + i).x_m;
    double to_m = sw_tie_point (&design->shape, 10 + i).x_m;
    g_assert_cmpfloat_with_epsilon (to_m - from_m, gaps_m[i], 1e-6);
  }
}

/* Seen from 10 m in front of the axis, on the plane through it. */
static void
test_perspective_of_the_ties (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  SwPoint next = sw_tie_point (&design->shape, 10), second = sw_tie_point (&design->shape, 11);

  g_assert_cmpfloat_with_epsilon (next.x_m * 10 / (10 + next.y_m), 0.421637674, 1e-9);
  g_assert_cmpfloat_with_epsilon (second.x_m * 10 / (10 + second.y_m), 0.760911338, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/strip-points/azimuths turn anticlockwise from the viewer",
                   test_azimuths_turn_anticlockwise_from_the_viewer);
  g_test_add_func ("/engine/strip-points/pixels of a strip", test_pixels_of_a_strip);
  g_test_add_func ("/engine/strip-points/pixels hang on the line from hook to tie",
                   test_pixels_hang_on_the_line_from_hook_to_tie);
  g_test_add_func ("/engine/strip-points/all pixels are each pixel",
                   test_all_pixels_are_each_pixel);
  g_test_add_func ("/engine/strip-points/a strip tied one mark on is longer",
                   test_a_strip_tied_one_mark_on_is_longer);
  g_test_add_func ("/engine/strip-points/gaps shrink towards the edge",
                   test_gaps_shrink_towards_the_edge);
  g_test_add_func ("/engine/strip-points/perspective of the ties",
                   test_perspective_of_the_ties);
  return g_test_run ();
}
