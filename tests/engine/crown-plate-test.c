// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cone.h"
#include "engine/crown-plate.h"

#include <math.h>

static SwDesign *
four_strips (void)
{
  SwDesign *design = sw_design_new ();

  design->shape.crown_radius_m = 0.13;
  design->shape.coverage_deg = 360;
  design->shape.facing_deg = 0;
  design->shape.strip_count = 4;
  design->crown.hook_reach_m = 0.03;
  return design;
}

/* By hand: strip 1 hangs at the back (+y, the seam), then anticlockwise: left, front, right. */
static void
test_holes_of_four_strips (void)
{
  static const SwHole wanted[] = { { 0, 0.10 }, { -0.10, 0 }, { 0, -0.10 }, { 0.10, 0 } };
  g_autoptr (SwDesign) design = four_strips ();
  g_autoptr (GArray) holes = sw_crown_plate_new (design);

  g_assert_cmpuint (holes->len, ==, 4);
  for (guint i = 0; i < 4; i++) {
    g_assert_cmpfloat_with_epsilon (g_array_index (holes, SwHole, i).x_m, wanted[i].x_m, 1e-15);
    g_assert_cmpfloat_with_epsilon (g_array_index (holes, SwHole, i).y_m, wanted[i].y_m, 1e-15);
  }
}

/* The middle of evenly spaced holes is the middle of the plate. */
static void
test_holes_of_a_full_tree_balance (void)
{
  g_autoptr (SwDesign) design = four_strips ();

  for (int strips = 2; strips <= 512; strips++) {
    double x_m = 0, y_m = 0;
    design->shape.strip_count = strips;
    design->shape.facing_deg = strips % 180;
    g_autoptr (GArray) holes = sw_crown_plate_new (design);
    for (guint i = 0; i < holes->len; i++) {
      x_m += g_array_index (holes, SwHole, i).x_m;
      y_m += g_array_index (holes, SwHole, i).y_m;
    }
    g_assert_cmpfloat_with_epsilon (x_m, 0, 1e-12);
    g_assert_cmpfloat_with_epsilon (y_m, 0, 1e-12);
  }
}

/* Worked by hand: five strips over 120° facing 30° stand at −30°, 0° … 90°, all to the front.
 */
static void
test_holes_of_an_open_tree (void)
{
  g_autoptr (SwDesign) design = four_strips ();

  design->shape.coverage_deg = 120;
  design->shape.facing_deg = 30;
  design->shape.strip_count = 5;
  g_autoptr (GArray) holes = sw_crown_plate_new (design);
  for (guint i = 0; i < 5; i++) {
    double azimuth = (-30 + 30.0 * i) * G_PI / 180;
    g_assert_cmpfloat_with_epsilon (g_array_index (holes, SwHole, i).x_m,
                                    0.10 * sin (azimuth),
                                    1e-15);
    g_assert_cmpfloat_with_epsilon (g_array_index (holes, SwHole, i).y_m,
                                    -0.10 * cos (azimuth),
                                    1e-15);
  }
}

static void
test_without_reach_holes_stand_on_the_hanging_circle (void)
{
  g_autoptr (SwDesign) design = four_strips ();

  design->crown.hook_reach_m = 0;
  design->shape.strip_count = 17;
  g_autoptr (GArray) holes = sw_crown_plate_new (design);
  for (guint i = 0; i < holes->len; i++) {
    const SwHole *hole = &g_array_index (holes, SwHole, i);
    g_assert_cmpfloat_with_epsilon (hypot (hole->x_m, hole->y_m), 0.13, 1e-15);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/crown-plate/holes of four strips", test_holes_of_four_strips);
  g_test_add_func ("/engine/crown-plate/holes of a full tree balance",
                   test_holes_of_a_full_tree_balance);
  g_test_add_func ("/engine/crown-plate/holes of an open tree", test_holes_of_an_open_tree);
  g_test_add_func ("/engine/crown-plate/without reach holes stand on the hanging circle",
                   test_without_reach_holes_stand_on_the_hanging_circle);
  return g_test_run ();
}
