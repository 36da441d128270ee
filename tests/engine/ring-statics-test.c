// SPDX-License-Identifier: GPL-3.0-or-later
/* The example: ring of 1/2 in PVC, R = 1 m, EI = 19.6536, GJ = 14.2417 N m², lifted
 * by 24.22401485 N a metre. */
#include "engine/ring-statics.h"

#include <math.h>

static SwRingAnswer
solve (int ties, double span_deg)
{
  SwRingLoad load = { 1.0, 19.65358, 14.241725, 24.22401485, ties, span_deg };
  SwRingAnswer answer;

  g_assert_true (sw_ring_statics (&load, &answer));
  return answer;
}

/* Source: Hassoun, Structural Concrete, table 21.1 (coefficients of w·r²; printed ones are
 * rounded, by up to 7 %), and a published circular-beam worksheet: R = 6.3, w = 10, eight
 * supports: 20.62 and 1.57.
 */
static void
test_moments_match_the_handbook (void)
{
  static const struct {
    int ties;
    double moment, torque;
  } table[] = { { 4, 0.215, 0.0330 },
                { 6, 0.093, 0.0094 },
                { 8, 0.052, 0.0040 },
                { 12, 0.024, 0.0012 } };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++) {
    SwRingLoad load = { 1, 1, 1, 1, table[i].ties, 360 };
    SwRingAnswer answer;
    sw_ring_statics (&load, &answer);
    g_assert_cmpfloat_with_epsilon (answer.moment_nm, table[i].moment, 0.07 * table[i].moment);
    g_assert_cmpfloat_with_epsilon (answer.torque_nm, table[i].torque, 0.07 * table[i].torque);
  }
  SwRingLoad sheet = { 6.3, 1, 1, 10, 8, 360 };
  SwRingAnswer answer;
  sw_ring_statics (&sheet, &answer);
  g_assert_cmpfloat_with_epsilon (answer.moment_nm, 20.62, 0.006);
  g_assert_cmpfloat_with_epsilon (answer.torque_nm, 1.57, 0.006);
  g_assert_cmpfloat_with_epsilon (answer.tie_n / 2, 24.74, 0.006);
}

/* Source: an independent frame model (NumPy, 240 straight elements a ring). */
static void
test_lift_matches_a_frame_model (void)
{
  static const struct {
    int ties;
    double lift_mm;
  } frame[] = { { 3, 89.78334 }, { 4, 24.09359 }, { 6, 4.235881 }, { 8, 1.286908 } };

  for (guint i = 0; i < G_N_ELEMENTS (frame); i++)
    g_assert_cmpfloat_with_epsilon (solve (frame[i].ties, 360).lift_m * 1000,
                                    frame[i].lift_mm,
                                    3e-4 * frame[i].lift_mm);
}

/* Source: the series of the free ring, summed here to a hundred thousand terms, smallest first.
 */
static void
test_lift_is_the_whole_series (void)
{
  static const int ties[] = { 3, 4, 8, 15, 64, 512 };

  for (guint i = 0; i < G_N_ELEMENTS (ties); i++) {
    double sum = 0;
    for (int m = 199999; m > 0; m -= 2) {
      double n2 = pow ((double) m * ties[i], 2);
      sum += (1 / 19.65358 + 1 / (n2 * 14.241725)) / pow (n2 - 1, 2);
    }
    g_assert_cmpfloat_with_epsilon (solve (ties[i], 360).lift_m / (4 * 24.22401485 * sum),
                                    1,
                                    5e-10);
  }
}

/* Source: the same frame model with open arcs, a tie at each end. */
static void
test_arcs_match_a_frame_model (void)
{
  static const struct {
    int ties;
    double span_deg, lift_mm;
  } frame[] = { { 5, 180, 4.1027 },
                { 4, 180, 17.596 },
                { 3, 180, 70.635 },
                { 7, 270, 4.1620 },
                { 4, 270, 145.69 } };

  for (guint i = 0; i < G_N_ELEMENTS (frame); i++)
    g_assert_cmpfloat_with_epsilon (solve (frame[i].ties, frame[i].span_deg).lift_m * 1000,
                                    frame[i].lift_mm,
                                    0.012 * frame[i].lift_mm);
  g_assert_cmpfloat_with_epsilon (solve (5, 180).moment_nm, 1.97511, 0.02);
  g_assert_cmpfloat_with_epsilon (solve (5, 180).tie_n, 22.482, 0.05);
}

/* Many ties on a wide ring: each bay is a straight beam fixed at both ends, w·L⁴/384EI
 * (Timoshenko & Gere). */
static void
test_many_ties_are_a_fixed_beam (void)
{
  SwRingAnswer answer = solve (40, 360);
  double bay_m = 2 * G_PI / 40;

  g_assert_cmpfloat_with_epsilon (answer.lift_m,
                                  24.22401485 * pow (bay_m, 4) / (384 * 19.65358),
                                  0.02 * answer.lift_m);
}

static void
test_more_ties_never_lift_more (void)
{
  for (double span = 180; span <= 360; span += 90) {
    double last = INFINITY;
    for (int ties = 3; ties < 30; ties++) {
      double lift = solve (ties, span).lift_m;
      g_assert_cmpfloat (lift, <, last);
      last = lift;
    }
  }
}

static void
test_two_ties_hold_no_ring (void)
{
  SwRingLoad load = { 1, 1, 1, 1, 2, 360 };
  SwRingAnswer answer;

  g_assert_false (sw_ring_statics (&load, &answer));
  g_assert_true (isnan (answer.lift_m));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-statics/moments match the handbook",
                   test_moments_match_the_handbook);
  g_test_add_func ("/engine/ring-statics/lift matches a frame model",
                   test_lift_matches_a_frame_model);
  g_test_add_func ("/engine/ring-statics/lift is the whole series",
                   test_lift_is_the_whole_series);
  g_test_add_func ("/engine/ring-statics/arcs match a frame model",
                   test_arcs_match_a_frame_model);
  g_test_add_func ("/engine/ring-statics/many ties are a fixed beam",
                   test_many_ties_are_a_fixed_beam);
  g_test_add_func ("/engine/ring-statics/more ties never lift more",
                   test_more_ties_never_lift_more);
  g_test_add_func ("/engine/ring-statics/two ties hold no ring", test_two_ties_hold_no_ring);
  return g_test_run ();
}
