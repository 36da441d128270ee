// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/topper.h"

#include <math.h>

static SwDesign *
star_design (int points, int rings, int pixels)
{
  SwDesign *design = sw_design_new ();

  design->shape.crown_height_m = 3;
  design->topper.kind = SW_TOPPER_STAR;
  design->topper.stub_m = 0.2;
  design->topper.points = points;
  design->topper.rings = rings;
  design->topper.pixels = pixels;
  design->topper.width_m = 0.7;
  design->topper.height_m = 0.5;
  return design;
}

static SwPoint
point_at (GArray *points, guint i)
{
  return g_array_index (points, SwPoint, i % points->len);
}

static double
distance_m (SwPoint a, SwPoint b)
{
  return hypot (a.x_m - b.x_m, a.z_m - b.z_m);
}

/* Twice the area of the triangle: 0 when the three are in line. */
static double
turn_m2 (SwPoint a, SwPoint b, SwPoint c)
{
  return (b.x_m - a.x_m) * (c.z_m - a.z_m) - (b.z_m - a.z_m) * (c.x_m - a.x_m);
}

static void
test_outline_fills_its_box (void)
{
  for (int points = 3; points <= 24; points++) {
    g_autoptr (SwDesign) design = star_design (points, 3, 100);
    g_autoptr (GArray) outline = sw_topper_outline (design, 0);
    double left = 0, right = 0, bottom = 99, top = 0;

    g_assert_cmpuint (outline->len, ==, 2 * points);
    for (guint i = 0; i < outline->len; i++) {
      SwPoint corner = point_at (outline, i);
      left = fmin (left, corner.x_m);
      right = fmax (right, corner.x_m);
      bottom = fmin (bottom, corner.z_m);
      top = fmax (top, corner.z_m);
      g_assert_cmpfloat_with_epsilon (corner.y_m, 0, 1e-15);
    }
    g_assert_cmpfloat_with_epsilon (right, 0.35, 1e-12);
    g_assert_cmpfloat_with_epsilon (left, -0.35, 1e-12);
    g_assert_cmpfloat_with_epsilon (bottom, 3.2, 1e-12);
    g_assert_cmpfloat_with_epsilon (top, 3.7, 1e-12);
  }
}

static void
test_outline_starts_at_the_top_and_goes_right (void)
{
  g_autoptr (SwDesign) design = star_design (5, 3, 100);
  g_autoptr (GArray) outline = sw_topper_outline (design, 0);

  g_assert_cmpfloat_with_epsilon (point_at (outline, 0).x_m, 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (point_at (outline, 0).z_m, 3.7, 1e-12);
  g_assert_cmpfloat (point_at (outline, 1).x_m, >, 0);
  for (guint i = 0; i < outline->len; i++)
    g_assert_cmpfloat (
      turn_m2 ((SwPoint){ 0, 0, 3.45 }, point_at (outline, i), point_at (outline, i + 1)),
      <,
      0);
}

/* Source: Euclid, Elements XIII.8 (the diagonals of a pentagon cut one another in extreme and
 * mean ratio): 1/φ². The hexagram's 1/√3: the side of a hexagon against that of the triangle in
 * one circle, XIII.12.
 */
static void
test_inner_ratio_matches_euclid (void)
{
  double phi = (1 + sqrt (5)) / 2;

  g_assert_cmpfloat_with_epsilon (sw_topper_inner_ratio (5), 1 / (phi * phi), 1e-15);
  g_assert_cmpfloat_with_epsilon (sw_topper_inner_ratio (6), 1 / sqrt (3), 1e-15);
}

/* Source: what makes a figure a star polygon {n/k}: its sides are straight from tip to tip k
 * further, so the inner corners beside both tips lie in line with them.
 */
static void
test_sides_run_straight_from_tip_to_tip (void)
{
  for (int points = 5; points <= 24; points++) {
    g_autoptr (SwDesign) design = star_design (points, 1, 10);
    g_autoptr (GArray) outline = sw_topper_outline (design, 0);
    guint k = (guint) (points - 1) / 2;

    for (guint tip = 0; tip < outline->len; tip += 2) {
      SwPoint from = point_at (outline, tip), to = point_at (outline, tip + 2 * k);
      g_assert_cmpfloat_with_epsilon (turn_m2 (from, point_at (outline, tip + 1), to),
                                      0,
                                      1e-12);
      g_assert_cmpfloat_with_epsilon (turn_m2 (from, point_at (outline, tip + 2 * k - 1), to),
                                      0,
                                      1e-12);
    }
  }
}

static void
test_every_star_has_tips (void)
{
  for (int points = 3; points <= 24; points++)
    g_assert_cmpfloat (sw_topper_inner_ratio (points), <, 0.8 * cos (G_PI / points));
}

static void
test_rings_are_nested_about_the_middle (void)
{
  g_autoptr (SwDesign) design = star_design (5, 4, 100);
  g_autoptr (GArray) outer = sw_topper_outline (design, 0);
  g_autoptr (GArray) third = sw_topper_outline (design, 2);
  double middle_z_m = 2 * point_at (third, 0).z_m - point_at (outer, 0).z_m;

  for (guint i = 0; i < outer->len; i++) {
    g_assert_cmpfloat_with_epsilon (point_at (third, i).x_m,
                                    point_at (outer, i).x_m / 2,
                                    1e-12);
    g_assert_cmpfloat_with_epsilon (point_at (third, i).z_m - middle_z_m,
                                    (point_at (outer, i).z_m - middle_z_m) / 2,
                                    1e-12);
  }
}

/* Worked by hand: lengths 3 : 2 : 1, so 100 pixels are 50, 33.3, 16.7; of 20 outlines the outer
 * three weigh 20, 19, 18 of 210.
 */
static const struct {
  int rings, pixels;
  int first[3];
} shares[] = {
  { 1, 7, { 7 } },       { 3, 100, { 50, 33, 17 } }, { 3, 0, { 0, 0, 0 } },
  { 2, 4, { 3, 1 } },    { 3, 1, { 1, 0, 0 } },      { 20, 3, { 1, 1, 1 } },
  { 3, 6, { 3, 2, 1 } }, { 2, 1, { 1, 0 } },         { 3, 3, { 2, 1, 0 } },
};

static void
test_pixels_are_shared_by_length (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shares); i++) {
    g_autoptr (SwDesign) design = star_design (5, shares[i].rings, shares[i].pixels);
    g_autoptr (GArray) counts = sw_topper_ring_pixels (design);
    g_autoptr (GArray) pixels = sw_topper_pixels (design);
    int sum = 0;

    g_assert_cmpuint (counts->len, ==, shares[i].rings);
    for (guint ring = 0; ring < counts->len; ring++) {
      sum += g_array_index (counts, int, ring);
      if (ring < 3)
        g_assert_cmpint (g_array_index (counts, int, ring), ==, shares[i].first[ring]);
    }
    g_assert_cmpint (sum, ==, shares[i].pixels);
    g_assert_cmpuint (pixels->len, ==, shares[i].pixels);
  }
}

/* A pentagram in its own proportions (2 sin 72° wide, 1 + cos 36° high) has ten equal edges:
 * twenty pixels stand on its corners and in the middles between them.
 */
static void
test_pixels_stand_at_equal_lengths (void)
{
  g_autoptr (SwDesign) design = star_design (5, 1, 20);
  design->topper.width_m = 2 * sin (72 * G_PI / 180);
  design->topper.height_m = 1 + cos (36 * G_PI / 180);
  g_autoptr (GArray) outline = sw_topper_outline (design, 0);
  g_autoptr (GArray) pixels = sw_topper_pixels (design);

  for (guint i = 0; i < outline->len; i++) {
    SwPoint from = point_at (outline, i), to = point_at (outline, i + 1);
    SwPoint middle = { (from.x_m + to.x_m) / 2, 0, (from.z_m + to.z_m) / 2 };
    g_assert_cmpfloat (distance_m (point_at (pixels, 2 * i), from), <, 1e-12);
    g_assert_cmpfloat (distance_m (point_at (pixels, 2 * i + 1), middle), <, 1e-12);
  }
}

static void
test_each_outline_starts_at_its_top_tip (void)
{
  g_autoptr (SwDesign) design = star_design (5, 3, 100);
  g_autoptr (GArray) pixels = sw_topper_pixels (design);
  static const guint firsts[] = { 0, 50, 83 };

  for (int ring = 0; ring < 3; ring++) {
    g_autoptr (GArray) outline = sw_topper_outline (design, ring);
    g_assert_cmpfloat (distance_m (point_at (pixels, firsts[ring]), point_at (outline, 0)),
                       <,
                       1e-12);
  }
}

static void
test_no_star_is_empty (void)
{
  g_autoptr (SwDesign) design = star_design (5, 3, 100);
  design->topper.kind = SW_TOPPER_NONE;
  g_autoptr (GArray) outline = sw_topper_outline (design, 0);
  g_autoptr (GArray) pixels = sw_topper_pixels (design);

  g_assert_cmpuint (outline->len, ==, 0);
  g_assert_cmpuint (pixels->len, ==, 0);
}

static void
test_a_star_without_size_is_one_point (void)
{
  g_autoptr (SwDesign) design = star_design (6, 2, 9);
  design->topper.width_m = design->topper.height_m = 0;
  g_autoptr (GArray) pixels = sw_topper_pixels (design);

  g_assert_cmpuint (pixels->len, ==, 9);
  for (guint i = 0; i < pixels->len; i++)
    g_assert_cmpfloat (distance_m (point_at (pixels, i), (SwPoint){ 0, 0, 3.2 }), <, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/topper/outline fills its box", test_outline_fills_its_box);
  g_test_add_func ("/engine/topper/outline starts at the top and goes right",
                   test_outline_starts_at_the_top_and_goes_right);
  g_test_add_func ("/engine/topper/inner ratio matches Euclid",
                   test_inner_ratio_matches_euclid);
  g_test_add_func ("/engine/topper/sides run straight from tip to tip",
                   test_sides_run_straight_from_tip_to_tip);
  g_test_add_func ("/engine/topper/every star has tips", test_every_star_has_tips);
  g_test_add_func ("/engine/topper/rings are nested about the middle",
                   test_rings_are_nested_about_the_middle);
  g_test_add_func ("/engine/topper/pixels are shared by length",
                   test_pixels_are_shared_by_length);
  g_test_add_func ("/engine/topper/pixels stand at equal lengths",
                   test_pixels_stand_at_equal_lengths);
  g_test_add_func ("/engine/topper/each outline starts at its top tip",
                   test_each_outline_starts_at_its_top_tip);
  g_test_add_func ("/engine/topper/no star is empty", test_no_star_is_empty);
  g_test_add_func ("/engine/topper/a star without size is one point",
                   test_a_star_without_size_is_one_point);
  return g_test_run ();
}
