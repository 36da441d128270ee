// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-marks.h"

#include <math.h>

static double
chord_of (int strips)
{
  SwShape shape = { 2, 0.2, 0.1, 1.0, 360, 0, strips };
  g_autoptr (GArray) marks = sw_ring_marks_new (&shape, 0);

  return g_array_index (marks, SwRingMark, 0).chord_m;
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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-marks/chords match Euclid", test_chords_match_euclid);
  return g_test_run ();
}
