// SPDX-License-Identifier: GPL-3.0-or-later
/* Figures of the uneven ring: SciPy 1.10, CubicSpline (periodic), quad and brentq, on the same
 * points.
 */
#include "engine/error.h"
#include "engine/ring-curve.h"

#include <math.h>

static const SwRingPoint uneven[] = {
  { 12, 1.48 },  { 40, 1.46 },  { 95, 1.41 },  { 150, 1.45 },
  { 200, 1.49 }, { 260, 1.43 }, { 310, 1.46 }, { 351.5, 1.5 },
};

/* All points turned by an angle and moved out; a point past 360° comes round to the front. */
static SwRingCurve *
curve_of (const SwRingPoint *points, guint n, const double by[2], GError **error)
{
  g_autoptr (GArray) array = g_array_new (FALSE, FALSE, sizeof (SwRingPoint));

  for (guint i = 0; i < n; i++) {
    SwRingPoint point = { points[i].azimuth_deg + by[0], points[i].radius_m + by[1] };
    if (point.azimuth_deg < 360)
      g_array_append_val (array, point);
  }
  for (guint i = n; i > 0; i--) {
    SwRingPoint point = { points[i - 1].azimuth_deg + by[0] - 360,
                          points[i - 1].radius_m + by[1] };
    if (point.azimuth_deg >= 0)
      g_array_prepend_val (array, point);
  }
  return sw_ring_curve_new (array, error);
}
#define BY(turn_deg, out_m) ((const double[2]){ turn_deg, out_m })

static SwRingCurve *
uneven_curve (double turn_deg)
{
  return curve_of (uneven, G_N_ELEMENTS (uneven), BY (turn_deg, 0), NULL);
}

static void
test_radii_between_the_points (void)
{
  static const double wanted[][2] = {
    { 0, 1.4934765001591446 },
    { 5, 1.4878634425593353 },
    { 77.7, 1.4208811651007678 },
    { 355.5, 1.4976225630792432 },
    { 11.9, 1.4801018650980924 },
    { 200, 1.49 },
    { 12, 1.48 },
    { -4.5, 1.4976225630792432 },
    { 437.7, 1.4208811651007678 },
  };
  g_autoptr (SwRingCurve) curve = uneven_curve (0);

  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++)
    g_assert_cmpfloat_with_epsilon (sw_ring_curve_radius_m (curve, wanted[i][0]),
                                    wanted[i][1],
                                    1e-12);
}

static void
test_lengths_along_the_curve (void)
{
  g_autoptr (SwRingCurve) curve = uneven_curve (0);

  g_assert_cmpfloat_with_epsilon (sw_ring_curve_perimeter_m (curve), 9.148102700451778, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_ring_curve_length_m (curve, 300, 50),
                                  2.83802748091827,
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (sw_ring_curve_length_m (curve, 50, 300),
                                  6.310075219533509,
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (sw_ring_curve_length_m (curve, 50, 50), 0, 1e-15);
}

static void
test_places_at_a_length (void)
{
  g_autoptr (SwRingCurve) curve = uneven_curve (0);
  double ninth_m = sw_ring_curve_perimeter_m (curve) / 9;

  g_assert_cmpfloat_with_epsilon (sw_ring_curve_azimuth_deg (curve, 217, ninth_m),
                                  257.0261166745065,
                                  1e-11);
  g_assert_cmpfloat_with_epsilon (sw_ring_curve_azimuth_deg (curve, 217, 4 * ninth_m),
                                  16.22478892075651,
                                  1e-11);
  g_assert_cmpfloat_with_epsilon (sw_ring_curve_azimuth_deg (curve, 217, 8 * ninth_m),
                                  177.84048052773346,
                                  1e-11);
}

/* One degree on this curve is about 26 mm, so 1e-11° is well below 1e-12 m. */
static void
test_place_undoes_length (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);
  g_autoptr (SwRingCurve) curve = uneven_curve (0);

  for (int i = 0; i < 500; i++) {
    double from_deg = g_rand_double_range (rand, 0, 360);
    double to_deg = g_rand_double_range (rand, 0, 360);
    double length_m = sw_ring_curve_length_m (curve, from_deg, to_deg);
    g_assert_cmpfloat (length_m, >=, 0);
    g_assert_cmpfloat (length_m, <=, sw_ring_curve_perimeter_m (curve));
    g_assert_cmpfloat_with_epsilon (sw_ring_curve_azimuth_deg (curve, from_deg, length_m),
                                    to_deg,
                                    1e-11);
    g_assert_cmpfloat_with_epsilon (sw_ring_curve_azimuth_deg (curve, to_deg, -length_m),
                                    from_deg,
                                    1e-11);
  }
}

static void
test_turning_the_ring_changes_no_length (void)
{
  g_autoptr (SwRingCurve) curve = uneven_curve (0);

  for (int turn_deg = 1; turn_deg < 360; turn_deg += 7) {
    g_autoptr (SwRingCurve) turned = uneven_curve (turn_deg);
    g_assert_cmpfloat_with_epsilon (sw_ring_curve_perimeter_m (turned),
                                    sw_ring_curve_perimeter_m (curve),
                                    1e-12);
    g_assert_cmpfloat_with_epsilon (
      sw_ring_curve_length_m (turned, 300 + turn_deg, 50 + turn_deg),
      2.83802748091827,
      1e-12);
  }
}

static void
test_a_circle_is_its_angles (void)
{
  g_autoptr (SwRingCurve) circle = sw_ring_curve_new_circle (1.25);

  g_assert_cmpfloat_with_epsilon (sw_ring_curve_perimeter_m (circle), 2.5 * G_PI, 1e-14);
  for (int i = 0; i < 720; i++) {
    double azimuth_deg = 0.5 * i;
    g_assert_cmpfloat_with_epsilon (sw_ring_curve_radius_m (circle, azimuth_deg), 1.25, 1e-15);
    g_assert_cmpfloat_with_epsilon (sw_ring_curve_length_m (circle, 0, azimuth_deg),
                                    1.25 * azimuth_deg * G_PI / 180,
                                    1e-14);
    g_assert_cmpfloat_with_epsilon (
      sw_ring_curve_azimuth_deg (circle, 0, 1.25 * azimuth_deg * G_PI / 180),
      azimuth_deg,
      1e-12);
  }
}

/* The spline through 5, 1, 5, 5, 5 m comes to −3.8794745505336827 m at 61.255° (SciPy,
 * minimize_scalar), between two points that are both well outside. A radius more on every point
 * is a radius more on the curve.
 */
static void
test_a_curve_that_reaches_the_centre_is_refused (void)
{
  static const SwRingPoint dip[] = { { 0, 5 }, { 90, 1 }, { 100, 5 }, { 180, 5 }, { 270, 5 } };
  double out_m = 3.8794745505336827;
  g_autoptr (GError) error = NULL;
  g_autoptr (SwRingCurve) outside =
    curve_of (dip, G_N_ELEMENTS (dip), BY (0, out_m + 1e-9), NULL);

  g_assert_nonnull (outside);
  g_assert_null (curve_of (dip, G_N_ELEMENTS (dip), BY (0, out_m - 1e-9), &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_RANGE);
  g_assert_cmpstr (error->message,
                   ==,
                   "as_built.ring_points: the curve through them reaches the centre near 61°, "
                   "every radius must be above 0");
}

/* Two doubles next to each other are one angle in radians, which leaves no spline. GSL's own
 * handler would end the program.
 */
static void
test_points_too_close_are_an_error (void)
{
  static const SwRingPoint points[] = { { 0, 1 },
                                        { 90, 1 },
                                        { 120.00000000000001, 1 },
                                        { 120.00000000000003, 2 },
                                        { 270, 1 } };
  g_autoptr (GError) error = NULL;

  g_assert_null (curve_of (points, G_N_ELEMENTS (points), BY (0, 0), &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_NUMERIC);
  g_assert_true (g_str_has_prefix (error->message, "as_built.ring_points: "));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-curve/radii between the points",
                   test_radii_between_the_points);
  g_test_add_func ("/engine/ring-curve/lengths along the curve", test_lengths_along_the_curve);
  g_test_add_func ("/engine/ring-curve/places at a length", test_places_at_a_length);
  g_test_add_func ("/engine/ring-curve/place undoes length", test_place_undoes_length);
  g_test_add_func ("/engine/ring-curve/turning the ring changes no length",
                   test_turning_the_ring_changes_no_length);
  g_test_add_func ("/engine/ring-curve/a circle is its angles", test_a_circle_is_its_angles);
  g_test_add_func ("/engine/ring-curve/a curve that reaches the centre is refused",
                   test_a_curve_that_reaches_the_centre_is_refused);
  g_test_add_func ("/engine/ring-curve/points too close are an error",
                   test_points_too_close_are_an_error);
  return g_test_run ();
}
