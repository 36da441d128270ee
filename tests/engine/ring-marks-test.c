// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-marks.h"

#include <math.h>

static const double half_inch_od_m = 0.02134; /* PVC 1/2 in, ASTM D1785: 0.840 in */

static GArray *
marks_of (double coverage_deg, int strips, double pipe_od_m)
{
  SwShape shape = { 2, 0.2, 0.1, 1.0, coverage_deg, 0, strips };

  return sw_ring_marks_new (&shape, pipe_od_m);
}

static const SwRingMark *
mark_at (GArray *marks, guint i)
{
  return &g_array_index (marks, SwRingMark, i);
}

static double
chord_of (int strips)
{
  g_autoptr (GArray) marks = marks_of (360, strips, 0);

  return mark_at (marks, 0)->chord_m;
}

/* Source: Euclid, Elements IV.15 (the hexagon's side is the radius) and XIII.10
 * (s10² + r² = s5²: pentagon, hexagon and decagon in one circle).
 */
static void
test_chords_match_euclid (void)
{
  g_assert_cmpfloat_with_epsilon (chord_of (6), 1.0, 1e-12);
  g_assert_cmpfloat_with_epsilon (hypot (chord_of (10), 1.0), chord_of (5), 1e-12);
}

/* Independent figure (SciPy 1.10): outside of a 1 m ring of that pipe, 6.350226894 m. */
static void
test_arcs_run_on_the_outer_face (void)
{
  g_autoptr (GArray) marks = marks_of (360, 16, half_inch_od_m);

  g_assert_cmpuint (marks->len, ==, 16);
  for (guint i = 0; i < 16; i++)
    g_assert_cmpfloat_with_epsilon (mark_at (marks, i)->arc_m, 6.350226894 * i / 16, 1e-9);
}

static double
straight_m (const SwRingMark *a, const SwRingMark *b, double radius_m)
{
  double from = a->azimuth_deg * G_PI / 180, to = b->azimuth_deg * G_PI / 180;

  return radius_m * hypot (cos (to) - cos (from), sin (to) - sin (from));
}

/* The polygon through the marks closes, with every side as its chord says. */
static void
test_a_full_tree_closes_with_equal_chords (void)
{
  for (int strips = 2; strips <= 100; strips++) {
    g_autoptr (GArray) marks = marks_of (360, strips, half_inch_od_m);
    for (guint i = 0; i < marks->len; i++) {
      const SwRingMark *next = mark_at (marks, (i + 1) % marks->len);
      g_assert_cmpfloat_with_epsilon (mark_at (marks, i)->chord_m,
                                      straight_m (mark_at (marks, i), next, 1.01067),
                                      1e-12);
      g_assert_cmpfloat_with_epsilon (mark_at (marks, i)->chord_m,
                                      mark_at (marks, 0)->chord_m,
                                      1e-15);
    }
  }
}

/* Worked by hand: 180° of the outer face is π·1.01067 m, in 15 gaps of 12°. */
static void
test_an_open_tree_ends_with_its_last_strip (void)
{
  g_autoptr (GArray) marks = marks_of (180, 16, half_inch_od_m);

  g_assert_cmpfloat_with_epsilon (mark_at (marks, 0)->arc_m, 0, 1e-15);
  g_assert_cmpfloat_with_epsilon (mark_at (marks, 15)->arc_m, G_PI * 1.01067, 1e-12);
  g_assert_cmpfloat_with_epsilon (mark_at (marks, 5)->arc_m, G_PI * 1.01067 / 3, 1e-12);
  g_assert_cmpfloat_with_epsilon (mark_at (marks, 0)->azimuth_deg, 270, 1e-12);
  g_assert_cmpfloat_with_epsilon (mark_at (marks, 15)->azimuth_deg, 90, 1e-12);
  for (guint i = 0; i < 15; i++)
    g_assert_cmpfloat_with_epsilon (
      mark_at (marks, i)->chord_m,
      straight_m (mark_at (marks, i), mark_at (marks, i + 1), 1.01067),
      1e-12);
  g_assert_true (isnan (mark_at (marks, 15)->chord_m));
}

/* 512 arcs each from its own angle: the last one is off by no more than the first. */
static void
test_arcs_do_not_drift (void)
{
  g_autoptr (GArray) marks = marks_of (360, 512, 0);

  for (guint i = 0; i < 512; i++)
    g_assert_cmpfloat_with_epsilon (mark_at (marks, i)->arc_m,
                                    6.283185307179586 * i / 512,
                                    2e-15);
}

/* Independent figure (SciPy 1.10): stepping off the arc as a chord overshoots by 41.090 mm on
 * 16 strips round 1 m. Marks stepped by their own chord come back exactly.
 */
static void
test_stepping_by_chord_needs_the_chord (void)
{
  g_autoptr (GArray) marks = marks_of (360, 16, 0);
  double arc_m = mark_at (marks, 1)->arc_m;

  g_assert_cmpfloat_with_epsilon (16 * 2 * asin (arc_m / 2) - 2 * G_PI, 0.041089687, 1e-9);
  g_assert_cmpfloat_with_epsilon (16 * 2 * asin (mark_at (marks, 1)->chord_m / 2) - 2 * G_PI,
                                  0,
                                  1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-marks/chords match Euclid", test_chords_match_euclid);
  g_test_add_func ("/engine/ring-marks/arcs run on the outer face",
                   test_arcs_run_on_the_outer_face);
  g_test_add_func ("/engine/ring-marks/a full tree closes with equal chords",
                   test_a_full_tree_closes_with_equal_chords);
  g_test_add_func ("/engine/ring-marks/an open tree ends with its last strip",
                   test_an_open_tree_ends_with_its_last_strip);
  g_test_add_func ("/engine/ring-marks/arcs do not drift", test_arcs_do_not_drift);
  g_test_add_func ("/engine/ring-marks/stepping by chord needs the chord",
                   test_stepping_by_chord_needs_the_chord);
  return g_test_run ();
}
