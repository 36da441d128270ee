// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-plane.h"

#include <math.h>

static double
buckling (double waves)
{
  SwRingPlane ring = { 1.0, 19.65358, waves };

  return sw_ring_plane_buckling (&ring);
}

/* Source: Timoshenko & Gere, Theory of Elastic Stability, chapter 7: a bare ring buckles at
 * 3·EI/R³; an arch hinged at both ends, in units of EI/R³, at 35, 15, 8, 3 where it spans 60°,
 * 90°, 120°, 180°. A ring with spokes is such arches over two bays each. */
static void
test_buckling_matches_the_handbook (void)
{
  static const struct {
    int spokes;
    double published;
  } rows[] = { { 0, 3 }, { 4, 3 }, { 6, 8 }, { 8, 15 }, { 12, 35 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat_with_epsilon (buckling (sw_ring_waves (rows[i].spokes)) / 19.65358,
                                    rows[i].published,
                                    1e-9);
}

/* Source: the smallest eigenvalue of sixty harmonics of the ring with its deflection held at
 * the spokes (Ritz's method, SciPy), in units of EI/R³. Never above it, and the same for every
 * even number. */
static void
test_spokes_match_an_eigenvalue (void)
{
  static const double exact[] = { 3,         3,  3,         3,  3,         6.626461, 8,
                                  12.552045, 15, 20.524050, 24, 30.510456, 35 };

  for (int spokes = 0; spokes < (int) G_N_ELEMENTS (exact); spokes++) {
    double found = buckling (sw_ring_waves (spokes)) / 19.65358;
    g_assert_cmpfloat (found, <=, exact[spokes] + 1e-6);
    if (spokes % 2 == 0 || spokes < 5)
      g_assert_cmpfloat_with_epsilon (found, exact[spokes], 1e-6);
  }
}

/* Each bay of an arc waves one way, the next the other: hinged arches over two bays. Two ties
 * hold the ends of a half ring only, which is free to slide off: no stiffness. */
static void
test_arcs_wave_between_ties (void)
{
  g_assert_cmpfloat_with_epsilon (buckling (sw_arc_waves (180, 5)) / 19.65358, 15, 1e-9);
  g_assert_cmpfloat_with_epsilon (buckling (sw_arc_waves (180, 3)) / 19.65358, 3, 1e-9);
  g_assert_cmpfloat_with_epsilon (buckling (sw_arc_waves (300, 2)), 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (buckling (sw_arc_waves (180, 0)), 0, 1e-12);
}

/* Source: Timoshenko, Strength of Materials II: two opposite pulls W open a ring by 0.148779
 * W·R³/EI. Here as the sum over even waves of load over stiffness: 2W/πR each, seen at both
 * ends. */
static void
test_stiffness_adds_up_to_the_pulled_ring (void)
{
  double sum = 0;

  for (int n = 400; n >= 2; n -= 2) {
    SwRingPlane ring = { 1.3, 7.0, n };
    sum += 2 * 2 / (G_PI * 1.3) / sw_ring_plane_stiffness (&ring);
  }
  g_assert_cmpfloat_with_epsilon (sum * 7.0 / pow (1.3, 3), 0.148779, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-plane/buckling matches the handbook",
                   test_buckling_matches_the_handbook);
  g_test_add_func ("/engine/ring-plane/spokes match an eigenvalue",
                   test_spokes_match_an_eigenvalue);
  g_test_add_func ("/engine/ring-plane/arcs wave between ties", test_arcs_wave_between_ties);
  g_test_add_func ("/engine/ring-plane/stiffness adds up to the pulled ring",
                   test_stiffness_adds_up_to_the_pulled_ring);
  return g_test_run ();
}
