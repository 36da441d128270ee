// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-joints.h"
#include "engine/ring-load.h"
#include "solve.h"

#include <math.h>

#define OD_M 0.0334

static SwRingJoints
joints_of (const SwDesign *design, int parts, double longest_m)
{
  SwRingJob job = { design, parts, longest_m, OD_M };
  SwRingJoints joints;

  sw_ring_joints_init (&joints, &job);
  return joints;
}

/* The nearest mark or tie to any of the joints when all are turned by so much, degrees. */
static double
clear_deg (const SwDesign *design, const SwRingJoints *joints, double turn_deg)
{
  double nearest = 180;

  for (int joint = 1; joint <= joints->count; joint++) {
    double at = sw_ring_joint_azimuth_deg (joints, joint) + turn_deg;
    for (int strip = 1; strip <= design->shape.strip_count; strip++)
      nearest =
        MIN (nearest, fabs (remainder (sw_cone_azimuth_deg (&design->shape, strip) - at, 360)));
    for (int tie = 1; tie <= design->stand.ring_ties; tie++)
      nearest =
        MIN (nearest, fabs (remainder (sw_ring_tie_azimuth_deg (design, tie) - at, 360)));
  }
  return nearest;
}

static double
outer_m (const SwDesign *design, double deg)
{
  return (design->shape.ring_radius_m + OD_M / 2) * deg * G_PI / 180;
}

/* By hand: marks every 18°, ties every 45°, both from the seam; four joints a quarter apart lay
 * them over one another as 0, 18, 36, 45, 54, 72: 9° from the seam is midway in a gap of 18°.
 */
static void
test_the_lawn_by_hand (void)
{
  g_autoptr (SwDesign) design = design_with ("lawn", "shape.facing_deg=0");
  SwRingJoints joints = joints_of (design, 4, 3.048);

  g_assert_cmpint (joints.count, ==, 4);
  g_assert_cmpfloat_with_epsilon (fabs (remainder (joints.first_deg - 180, 90)), 9, 1e-9);
  g_assert_cmpfloat_with_epsilon (joints.clear_m, 1.0167 * 9 * G_PI / 180, 1e-9);
  g_assert_cmpfloat_with_epsilon (joints.part_m, G_PI / 2, 1e-12);
}

static SwDesign *
random_ring (GRand *rand, gboolean arc)
{
  g_autofree char *sets = g_strdup_printf (
    "shape.strip_count=%d; stand.ring_ties=%d; shape.facing_deg=%d; shape.coverage_deg=%d; "
    "stand.ring_span=%s; stand.ring_spokes=%d",
    g_rand_int_range (rand, 2, 60),
    g_rand_int_range (rand, 3, 20),
    g_rand_int_range (rand, -180, 181),
    arc ? g_rand_int_range (rand, 90, 350) : 360,
    arc ? "arc" : "full",
    g_rand_int_range (rand, 0, 9));

  return design_with ("lawn", sets);
}

/* No turn of the whole ring, tried every hundredth of a degree, is better. */
static void
test_no_turn_is_better (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (31);

  for (int i = 0; i < 12; i++) {
    g_autoptr (SwDesign) design = random_ring (rand, FALSE);
    SwRingJoints joints = joints_of (design, g_rand_int_range (rand, 1, 9), 10);
    double found = clear_deg (design, &joints, 0);
    g_assert_cmpfloat_with_epsilon (joints.clear_m, outer_m (design, found), 1e-9);
    for (double turn = 0; turn < joints.step_deg; turn += 0.01)
      g_assert_cmpfloat (clear_deg (design, &joints, turn), <=, found + 1e-9);
  }
}

/* An arc's pieces still make up the arc, none longer than the stock, its ends stay; its joints
 * are at least as clear as in equal pieces. */
static void
test_an_arc_moves_its_joints_only (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (32);
  guint moved = 0;

  for (int i = 0; i < 60; i++) {
    g_autoptr (SwDesign) design = random_ring (rand, TRUE);
    int parts = g_rand_int_range (rand, 1, 7);
    double longest_m = sw_ring_length_m (design) / parts * g_rand_double_range (rand, 1, 1.3),
           sum_m = 0;
    SwRingJoints joints = joints_of (design, parts, longest_m);
    double turn_deg = (joints.first_m - joints.part_m) * 180 / G_PI; /* radius 1 m */
    for (int piece = 1; piece <= parts; piece++) {
      sum_m += sw_ring_piece_m (&joints, piece);
      g_assert_cmpfloat (sw_ring_piece_m (&joints, piece), <=, longest_m + 1e-12);
      g_assert_cmpfloat (sw_ring_piece_m (&joints, piece), >=, 0.74 * joints.part_m);
    }
    g_assert_cmpfloat_with_epsilon (sum_m, sw_ring_length_m (design), 1e-9);
    g_assert_cmpint (joints.count, ==, parts - 1);
    if (joints.count == 0)
      continue;
    double found = clear_deg (design, &joints, 0);
    g_assert_cmpfloat_with_epsilon (joints.clear_m, outer_m (design, found), 1e-9);
    g_assert_cmpfloat (clear_deg (design, &joints, -turn_deg), <=, found + 1e-9);
    moved += fabs (turn_deg) > 1e-6;
  }
  g_assert_cmpuint (moved, >, 20);
}

/* Tees stand evenly, clear of marks, ties and joints; along an arc all of them on it. */
static void
test_spokes_keep_clear (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (33);
  guint spokes = 0;

  for (int i = 0; i < 40; i++) {
    g_autoptr (SwDesign) design = random_ring (rand, i % 2 == 1);
    SwRingJoints joints = joints_of (design, 4, 10);
    double start_deg = design->shape.facing_deg - design->shape.coverage_deg / 2;
    for (int spoke = 1; spoke <= joints.spokes; spoke++) {
      double at = sw_ring_spoke_azimuth_deg (&joints, spoke);
      g_assert_cmpfloat (sw_azimuth_wrap_deg (at - start_deg),
                         <=,
                         design->shape.coverage_deg + 1e-9);
      for (int joint = 1; joint <= joints.count; joint++) {
        double apart = fabs (remainder (sw_ring_joint_azimuth_deg (&joints, joint) - at, 360));
        g_assert_cmpfloat (outer_m (design, apart), >=, joints.spoke_clear_m - 1e-9);
      }
      spokes++;
    }
  }
  g_assert_cmpuint (spokes, >, 50);
}

/* From strip 1's mark the way numbers grow: a joint midway to strip 2 lies half a spacing on.
 */
static void
test_arc_lengths_start_at_mark_1 (void)
{
  g_autoptr (SwDesign) design =
    design_with ("lawn", "shape.strip_count=4; stand.ring_ties=4; shape.facing_deg=77");
  SwRingJoints joints = joints_of (design, 4, 3);

  g_assert_cmpfloat_with_epsilon (joints.clear_m, outer_m (design, 45), 1e-9);
  for (int joint = 1; joint <= 4; joint++)
    g_assert_cmpfloat_with_epsilon (
      fmod (sw_ring_joint_arc_m (&joints, joint, design, OD_M), outer_m (design, 90)),
      outer_m (design, 45),
      1e-9);
}

static void
test_no_pipe_has_no_joints (void)
{
  g_autoptr (SwDesign) design = design_with ("lawn", "stand.ring_spokes=6");
  SwRingJoints joints = joints_of (design, 0, 3);

  g_assert_cmpint (joints.count, ==, 0);
  g_assert_cmpint (joints.spokes, ==, 0);
  g_assert_true (isnan (joints.clear_m));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-joints/the Lawn by hand", test_the_lawn_by_hand);
  g_test_add_func ("/engine/ring-joints/no turn is better", test_no_turn_is_better);
  g_test_add_func ("/engine/ring-joints/an arc moves its joints only",
                   test_an_arc_moves_its_joints_only);
  g_test_add_func ("/engine/ring-joints/spokes keep clear", test_spokes_keep_clear);
  g_test_add_func ("/engine/ring-joints/arc lengths start at mark 1",
                   test_arc_lengths_start_at_mark_1);
  g_test_add_func ("/engine/ring-joints/no pipe has no joints", test_no_pipe_has_no_joints);
  return g_test_run ();
}
