// SPDX-License-Identifier: GPL-3.0-or-later
/* An ellipse of half axes 1.5 and 1.4 m measured at equal angles: its exact perimeter is
 * 4a·E(k) (NIST Digital Library of Mathematical Functions, 19.8: the arithmetic-geometric mean
 * gives 9.113327166267759). What a periodic cubic spline through the points makes of it was
 * computed apart with SciPy's CubicSpline and with GSL from Python.
 */
#include "engine/as-built.h"
#include "engine/cone.h"
#include "engine/error.h"

#include <math.h>

static SwDesign *
measured_ellipse (guint points)
{
  SwDesign *design = sw_design_new ();

  design->shape.strip_count = 16;
  for (guint i = 0; i < points; i++) {
    double angle = 2 * G_PI * i / points;
    SwRingPoint point = { 360.0 * i / points,
                          1.5 * 1.4 / hypot (1.4 * cos (angle), 1.5 * sin (angle)) };
    g_array_append_val (design->as_built.ring_points, point);
  }
  /* strip 1 at azimuth 0, where the figures begin */
  design->shape.facing_deg = 180;
  return design;
}

static void
test_perimeters_of_an_ellipse (void)
{
  static const struct {
    guint points;
    double perimeter_m;
  } cases[] = { { 6, 9.112819509 },
                { 8, 9.113053997 },
                { 12, 9.113279407 },
                { 16, 9.113313516 },
                { 24, 9.113324678 } };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (SwDesign) design = measured_ellipse (cases[i].points);
    g_autoptr (SwAsBuilt) built = sw_as_built_new (design, 0.0334, NULL);
    g_assert_cmpfloat_with_epsilon (built->perimeter_m, cases[i].perimeter_m, 1e-9);
  }
  g_autoptr (SwDesign) fine = measured_ellipse (96);
  g_autoptr (SwAsBuilt) built = sw_as_built_new (fine, 0.0334, NULL);
  g_assert_cmpfloat_with_epsilon (built->perimeter_m, 9.113327166267759, 1e-7);
}

static void
test_marks_at_equal_lengths_of_an_ellipse (void)
{
  static const struct {
    guint mark;
    double azimuth_deg;
  } cases[] = { { 1, 21.82383 }, { 2, 44.01289 },  { 3, 66.78014 },
                { 4, 90 },       { 5, 113.21986 }, { 8, 180 } };
  g_autoptr (SwDesign) design = measured_ellipse (12);
  g_autoptr (SwAsBuilt) built = sw_as_built_new (design, 0.0334, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    const SwAsBuiltMark *mark = &g_array_index (built->marks, SwAsBuiltMark, cases[i].mark);
    g_assert_cmpfloat_with_epsilon (mark->azimuth_deg, cases[i].azimuth_deg, 6e-6);
    g_assert_cmpfloat_with_epsilon (mark->arc_m,
                                    built->perimeter_m * cases[i].mark / 16,
                                    1e-12);
  }
}

static void
test_points_at_any_angles (void)
{
  static const SwRingPoint points[] = { { 0, 1.48 },   { 40, 1.46 },  { 95, 1.41 },
                                        { 150, 1.45 }, { 200, 1.49 }, { 260, 1.43 },
                                        { 310, 1.46 } };
  static const struct {
    guint mark;
    double azimuth_deg;
  } cases[] = { { 1, 22.137269 }, { 4, 90.115577 }, { 8, 181.032744 }, { 15, 337.888896 } };
  g_autoptr (SwDesign) design = measured_ellipse (0);

  g_array_append_vals (design->as_built.ring_points, points, G_N_ELEMENTS (points));
  g_autoptr (SwAsBuilt) built = sw_as_built_new (design, 0.0334, NULL);
  g_assert_cmpfloat_with_epsilon (built->perimeter_m, 9.134160579, 1e-9);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (
      g_array_index (built->marks, SwAsBuiltMark, cases[i].mark).azimuth_deg,
      cases[i].azimuth_deg,
      1e-6);
}

/* The centre of measuring 0.1 m off a circle of radius 1: SciPy gives 6.283181781 for twelve
 * points. */
static void
test_an_origin_off_centre_is_harmless (void)
{
  g_autoptr (SwDesign) design = measured_ellipse (0);

  for (int i = 0; i < 12; i++) {
    double angle = 2 * G_PI * i / 12;
    SwRingPoint point = { 30.0 * i,
                          sqrt (1 - 0.01 * sin (angle) * sin (angle)) - 0.1 * cos (angle) };
    g_array_append_val (design->as_built.ring_points, point);
  }
  g_autoptr (SwAsBuilt) built = sw_as_built_new (design, 0, NULL);
  g_assert_cmpfloat_with_epsilon (built->perimeter_m, 6.283181781, 1e-9);
}

/* Points on the design's own circle give the design's own marks. */
static void
test_a_true_ring_keeps_its_marks (void)
{
  g_autoptr (SwDesign) design = measured_ellipse (0);
  double od_m = 0.0334;

  for (int coverage = 180; coverage <= 360; coverage += 90) {
    SwCone cone;
    design->shape.coverage_deg = coverage;
    design->shape.facing_deg = 37;
    g_array_set_size (design->as_built.ring_points, 0);
    for (int i = 0; i < 7; i++) {
      SwRingPoint point = { 360.0 * i / 7 + 3, design->shape.ring_radius_m + od_m / 2 };
      g_array_append_val (design->as_built.ring_points, point);
    }
    sw_cone_init (&cone, design);
    g_autoptr (SwAsBuilt) built = sw_as_built_new (design, od_m, NULL);
    for (int strip = 1; strip <= design->shape.strip_count; strip++) {
      const SwAsBuiltMark *mark = &g_array_index (built->marks, SwAsBuiltMark, strip - 1);
      double turn = mark->azimuth_deg - sw_cone_azimuth_deg (&design->shape, strip);
      g_assert_cmpfloat_with_epsilon (remainder (turn, 360), 0, 1e-9);
      g_assert_cmpfloat_with_epsilon (mark->tail_m, cone.tail_m, 1e-9);
    }
  }
}

static void
test_a_measured_length_is_a_circle (void)
{
  g_autoptr (SwDesign) design = measured_ellipse (0);
  g_autoptr (GError) error = NULL;

  design->as_built.ring_length_m = 6.5;
  g_autoptr (SwAsBuilt) built = sw_as_built_new (design, 0.0334, NULL);
  g_assert_cmpfloat_with_epsilon (built->perimeter_m, 6.5, 1e-14);
  g_assert_cmpfloat_with_epsilon (g_array_index (built->marks, SwAsBuiltMark, 4).arc_m,
                                  6.5 / 4,
                                  1e-14);
  design->stand.ring_span = SW_SPAN_ARC;
  g_assert_null (sw_as_built_new (design, 0.0334, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_RANGE);
  g_assert_true (g_str_has_prefix (error->message, "as_built.ring_length_m: "));
}

/* Crown 50 mm out towards one side, crown 3.05/0.060 m over ring 0.15/1.000 m. By Pythagoras
 * with the shifted hook, level of the crown kept: √((0.94 ∓ 0.05)² + 2.90²).
 */
static void
test_a_leaning_crown_changes_slants (void)
{
  g_autoptr (SwDesign) design = measured_ellipse (0);

  design->shape =
    (SwShape){ 3.05, 0.15, 0.060, 1.0, 360, 180, 16 }; /* strip 1 at azimuth 0, y = −1 */
  design->as_built.crown_offset_y_m = -0.05;
  g_assert_true (sw_as_built_measured (design));
  g_autoptr (SwAsBuilt) built = sw_as_built_new (design, 0.0334, NULL);
  g_assert_cmpfloat_with_epsilon (built->perimeter_m, 2 * G_PI * 1.0167, 1e-12);
  g_assert_cmpfloat_with_epsilon (g_array_index (built->marks, SwAsBuiltMark, 0).slant_m,
                                  hypot (0.89, 2.90),
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (g_array_index (built->marks, SwAsBuiltMark, 8).slant_m,
                                  hypot (0.99, 2.90),
                                  1e-12);
}

/* An uneven ring, an open tree across azimuth 0 and a crown out of plumb: SciPy 1.10
 * (CubicSpline, quad, brentq), hooks and ties by vectors.
 */
static const SwAsBuiltMark open_marks[] = {
  { 0, 200, 1.49, 3.261673882658859, 0 },
  { 1.0231987118249932, 239.76621878466858, 1.4493369664884033, 3.2391805426102067, 0 },
  { 2.0463974236499864, 280.6497056730207, 1.4302834927046002, 3.212475140209003, 0 },
  { 3.06959613547498, 321.0431662984622, 1.476320860009153, 3.208321974735483, 0 },
  { 4.092794847299973, 0.2634673723202354, 1.4931995563467395, 3.197518093171958, 0 },
  { 5.115993559124966, 40, 1.46, 3.1797062353334375, 0 },
};

static SwDesign *
open_tree (void)
{
  static const SwRingPoint points[] = {
    { 12, 1.48 },  { 40, 1.46 },  { 95, 1.41 },  { 150, 1.45 },
    { 200, 1.49 }, { 260, 1.43 }, { 310, 1.46 }, { 351.5, 1.5 },
  };
  SwDesign *design = measured_ellipse (0);

  design->shape = (SwShape){ 3.05, 0.15, 0.060, 1.4, 200, -60, 6 };
  design->as_built.crown_offset_x_m = 0.04;
  design->as_built.crown_offset_y_m = -0.07;
  g_array_append_vals (design->as_built.ring_points, points, G_N_ELEMENTS (points));
  return design;
}

static void
test_an_open_tree_on_an_uneven_ring (void)
{
  g_autoptr (SwDesign) design = open_tree ();
  g_autoptr (SwAsBuilt) built = sw_as_built_new (design, 0.0334, NULL);
  double lit_m = design->strip.lead_m + (design->strip.pixels - 1) * design->strip.pitch_m;

  g_assert_cmpuint (built->marks->len, ==, G_N_ELEMENTS (open_marks));
  for (guint i = 0; i < G_N_ELEMENTS (open_marks); i++) {
    const SwAsBuiltMark *mark = &g_array_index (built->marks, SwAsBuiltMark, i);
    g_assert_cmpfloat_with_epsilon (mark->arc_m, open_marks[i].arc_m, 1e-12);
    g_assert_cmpfloat_with_epsilon (mark->azimuth_deg, open_marks[i].azimuth_deg, 1e-11);
    g_assert_cmpfloat_with_epsilon (mark->radius_m, open_marks[i].radius_m, 1e-12);
    g_assert_cmpfloat_with_epsilon (mark->slant_m, open_marks[i].slant_m, 1e-12);
    g_assert_cmpfloat_with_epsilon (mark->tail_m, open_marks[i].slant_m - lit_m, 1e-12);
  }
}

static void
test_points_win_over_the_length (void)
{
  g_autoptr (SwDesign) design = open_tree ();

  design->as_built.ring_length_m = 5;
  design->stand.ring_span = SW_SPAN_ARC;
  g_autoptr (SwAsBuilt) built = sw_as_built_new (design, 0.0334, NULL);
  g_assert_cmpfloat_with_epsilon (built->perimeter_m, 9.148102700451778, 1e-12);
}

static void
test_each_measure_counts (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  g_assert_false (sw_as_built_measured (design));
  design->as_built.ring_length_m = 6;
  g_assert_true (sw_as_built_measured (design));
  design->as_built.ring_length_m = 0;
  design->as_built.crown_offset_x_m = -0.001;
  g_assert_true (sw_as_built_measured (design));
}

static void
test_a_curve_through_the_centre_is_refused (void)
{
  static const SwRingPoint points[] = { { 0, 5 },
                                        { 90, 0.1 },
                                        { 100, 5 },
                                        { 180, 5 },
                                        { 270, 5 } };
  g_autoptr (SwDesign) design = measured_ellipse (0);
  g_autoptr (GError) error = NULL;

  g_array_append_vals (design->as_built.ring_points, points, G_N_ELEMENTS (points));
  g_assert_null (sw_as_built_new (design, 0.0334, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_RANGE);
}

static void
test_three_points_do_not_count (void)
{
  g_autoptr (SwDesign) design = measured_ellipse (3);

  g_assert_false (sw_as_built_measured (design));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/as-built/perimeters of an ellipse", test_perimeters_of_an_ellipse);
  g_test_add_func ("/engine/as-built/marks at equal lengths of an ellipse",
                   test_marks_at_equal_lengths_of_an_ellipse);
  g_test_add_func ("/engine/as-built/points at any angles", test_points_at_any_angles);
  g_test_add_func ("/engine/as-built/an origin off centre is harmless",
                   test_an_origin_off_centre_is_harmless);
  g_test_add_func ("/engine/as-built/a true ring keeps its marks",
                   test_a_true_ring_keeps_its_marks);
  g_test_add_func ("/engine/as-built/a measured length is a circle",
                   test_a_measured_length_is_a_circle);
  g_test_add_func ("/engine/as-built/a leaning crown changes slants",
                   test_a_leaning_crown_changes_slants);
  g_test_add_func ("/engine/as-built/an open tree on an uneven ring",
                   test_an_open_tree_on_an_uneven_ring);
  g_test_add_func ("/engine/as-built/points win over the length",
                   test_points_win_over_the_length);
  g_test_add_func ("/engine/as-built/each measure counts", test_each_measure_counts);
  g_test_add_func ("/engine/as-built/a curve through the centre is refused",
                   test_a_curve_through_the_centre_is_refused);
  g_test_add_func ("/engine/as-built/three points do not count",
                   test_three_points_do_not_count);
  return g_test_run ();
}
