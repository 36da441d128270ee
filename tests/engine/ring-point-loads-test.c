// SPDX-License-Identifier: GPL-3.0-or-later
/* The ring of ring-statics-test.c: 1/2 in PVC, R = 1 m, EI = 19.65358, GJ = 14.241725 N m². */
#include "engine/ring-point-loads.h"

#include <math.h>

#define MOST 512

static SwRingAnswer
solve (int strips, double step_deg, double strip_n, int ties, double first_tie_deg)
{
  double azimuths[MOST];
  SwRingPoints load = { .radius_m = 1,
                        .ei = 19.65358,
                        .gj = 14.241725,
                        .strip_n = strip_n,
                        .strip_count = strips,
                        .strip_deg = azimuths,
                        .ties = ties,
                        .first_tie_deg = first_tie_deg };
  SwRingAnswer answer;

  for (int i = 0; i < strips; i++)
    azimuths[i] = i * step_deg;
  g_assert_true (sw_ring_point_loads (&load, &answer));
  return answer;
}

/* Source: an independent frame model (240 straight grid elements round the ring, loads and ties
 * at its nodes): thirteen strips of 10 N over 180°, seven over 90°, a tie 45° or 0° after the
 * first strip.
 */
static void
test_a_partial_tree_matches_a_frame_model (void)
{
  static const struct {
    int strips, ties;
    double first_tie_deg, tie_n, lift_mm, moment_nm;
  } frame[] = {
    { 13, 3, 45, 79.1401, 394.83655, 17.068785 }, { 13, 4, 45, 59.3550, 46.754892, 8.137478 },
    { 13, 5, 45, 50.8257, 29.717990, 5.891214 },  { 13, 6, 45, 42.2935, 13.124760, 3.812414 },
    { 13, 8, 45, 32.0678, 3.524284, 2.065529 },   { 7, 8, 0, 33.8228, 3.135872, 2.318011 }
  };

  for (guint i = 0; i < G_N_ELEMENTS (frame); i++) {
    SwRingAnswer answer =
      solve (frame[i].strips, 15, 10, frame[i].ties, frame[i].first_tie_deg);
    g_assert_cmpfloat_with_epsilon (answer.tie_n, frame[i].tie_n, 1e-3 * frame[i].tie_n);
    g_assert_cmpfloat_with_epsilon (answer.lift_m * 1000,
                                    frame[i].lift_mm,
                                    1e-3 * frame[i].lift_mm);
    g_assert_cmpfloat_with_epsilon (answer.moment_nm,
                                    frame[i].moment_nm,
                                    2e-3 * frame[i].moment_nm);
  }
}

/* Source: the same kind of frame model, sixteen strips all round: 24.09359 mm and 4.88703 N m
 * at four ties (straight elements: 1.3e-4 off the curve). */
static void
test_strips_all_round_match_a_frame_model (void)
{
  SwRingAnswer answer = solve (16, 22.5, 9.512748386, 4, 0);

  g_assert_cmpfloat_with_epsilon (answer.lift_m * 1000, 24.09359, 3e-4 * 24.09359);
  g_assert_cmpfloat_with_epsilon (answer.moment_nm, 4.88703, 0.002);
  g_assert_cmpfloat_with_epsilon (answer.tie_n, 16 * 9.512748386 / 4, 1e-9);
}

/* Many strips all round are an even pull: the handbook's ring (Hassoun), moment and twist. */
static void
test_many_strips_are_an_even_pull (void)
{
  SwRingLoad even = { 1, 19.65358, 14.241725, 24.22401485, 8, 360 };
  SwRingAnswer handbook, answer = solve (512, 360.0 / 512, 24.22401485 * 2 * G_PI / 512, 8, 0);

  sw_ring_statics (&even, &handbook);
  g_assert_cmpfloat_with_epsilon (answer.tie_n, handbook.tie_n, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer.lift_m, handbook.lift_m, 1e-3 * handbook.lift_m);
  g_assert_cmpfloat_with_epsilon (answer.moment_nm,
                                  handbook.moment_nm,
                                  1e-3 * handbook.moment_nm);
  g_assert_cmpfloat_with_epsilon (answer.torque_nm,
                                  handbook.torque_nm,
                                  0.02 * handbook.torque_nm);
}

/* By statics: strip and tie forces balance, so strips at the ties of an even ring leave it
 * straight, each tie bearing its own strip. */
static void
test_strips_at_their_ties_lift_nothing (void)
{
  SwRingAnswer answer = solve (6, 60, 10, 6, 0);

  g_assert_cmpfloat_with_epsilon (answer.tie_n, 10, 1e-9);
  g_assert_cmpfloat_with_epsilon (answer.lift_m, 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (answer.moment_nm, 0, 1e-9);
}

/* Turning strips and ties together changes nothing, past a full turn either. */
static void
test_a_turned_ring_answers_the_same (void)
{
  SwRingAnswer answer = solve (13, 15, 10, 6, 45), turned = solve (13, 15, 10, 6, 45 - 720);

  g_assert_cmpfloat_with_epsilon (turned.lift_m, answer.lift_m, 1e-12);
  g_assert_cmpfloat_with_epsilon (turned.tie_n, answer.tie_n, 1e-9);
}

static void
test_two_ties_hold_no_ring (void)
{
  SwRingPoints load = { .radius_m = 1, .ei = 1, .gj = 1, .ties = 2 };
  SwRingAnswer answer;

  g_assert_false (sw_ring_point_loads (&load, &answer));
  g_assert_true (isnan (answer.tie_n));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-point-loads/a partial tree matches a frame model",
                   test_a_partial_tree_matches_a_frame_model);
  g_test_add_func ("/engine/ring-point-loads/strips all round match a frame model",
                   test_strips_all_round_match_a_frame_model);
  g_test_add_func ("/engine/ring-point-loads/many strips are an even pull",
                   test_many_strips_are_an_even_pull);
  g_test_add_func ("/engine/ring-point-loads/strips at their ties lift nothing",
                   test_strips_at_their_ties_lift_nothing);
  g_test_add_func ("/engine/ring-point-loads/a turned ring answers the same",
                   test_a_turned_ring_answers_the_same);
  g_test_add_func ("/engine/ring-point-loads/two ties hold no ring",
                   test_two_ties_hold_no_ring);
  return g_test_run ();
}
