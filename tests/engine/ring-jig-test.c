// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-jig.h"

#include <glib.h>
#include <math.h>

/* Source: worked by hand for a curve of 100 m with a long chord of 80 m, as textbooks of
 * surveying set it: 100 − √(100² − 40²) = 8.3485 m in the middle, 7.8472 m ten metres and
 * 6.3281 m twenty metres from it. */
static void
test_offsets_from_the_long_chord (void)
{
  SwRingJig jig;

  sw_ring_jig_init (&jig, 100, 0, 2 * asin (0.4) * 180 / G_PI);
  g_assert_cmpfloat_with_epsilon (jig.chord_m, 80, 1e-9);
  g_assert_cmpfloat_with_epsilon (jig.rise_m, 8.3485, 5e-5);
  g_assert_cmpfloat_with_epsilon (sw_ring_jig_out_m (&jig, 40), 8.3485, 5e-5);
  g_assert_cmpfloat_with_epsilon (sw_ring_jig_out_m (&jig, 30), 7.8472, 5e-5);
  g_assert_cmpfloat_with_epsilon (sw_ring_jig_out_m (&jig, 60), 6.3281, 5e-5);
  g_assert_cmpfloat_with_epsilon (sw_ring_jig_out_m (&jig, 80), 0, 1e-9);
}

/* All blocks stand on one circle, the pipe's inner face, evenly, not too far apart. */
static void
test_blocks_stand_on_the_inner_face (void)
{
  for (double piece_deg = 15; piece_deg <= 180; piece_deg += 15) {
    SwRingJig jig;
    double last_x = NAN, last_y = NAN;
    sw_ring_jig_init (&jig, 1.5, 0.0334, piece_deg);
    for (int block = 1; block <= jig.blocks; block++) {
      double x, y;
      sw_ring_jig_block (&jig, block, &x, &y);
      double centre_y = y + jig.radius_m - jig.rise_m;
      g_assert_cmpfloat_with_epsilon (hypot (x - jig.chord_m / 2, centre_y),
                                      1.5 - 0.0167,
                                      1e-12);
      g_assert_cmpfloat_with_epsilon (sw_ring_jig_out_m (&jig, x), y, 1e-9);
      if (block > 1)
        g_assert_cmpfloat (hypot (x - last_x, y - last_y), <=, SW_JIG_BLOCK_M);
      last_x = x;
      last_y = y;
    }
    g_assert_cmpint (jig.blocks % 2, ==, 1);
    g_assert_cmpfloat (jig.angle_deg, <=, SW_JIG_MOST_DEG);
    g_assert_cmpfloat_with_epsilon (last_x, jig.chord_m, 1e-12);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-jig/offsets from the long chord",
                   test_offsets_from_the_long_chord);
  g_test_add_func ("/engine/ring-jig/blocks stand on the inner face",
                   test_blocks_stand_on_the_inner_face);
  return g_test_run ();
}
