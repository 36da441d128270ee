// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/height-chain.h"
#include "solve.h"

#include <math.h>

#define INCH_M 0.0254

/* What a tape measures from the ground up, each length by itself. */
static double
measured_crown_m (const SwSolution *s)
{
  const SwDesign *design = s->design;
  const SwPipeEnd *end = &s->fittings.post_top;
  double up_m = design->stand.foot == SW_FOOT_SOCKET
                  ? -MIN (design->stand.sleeve_depth_m, design->stand.socket_depth_m)
                  : (s->heights.board == NULL ? 0 : s->heights.board->thickness_m);

  if (design->stand.foot == SW_FOOT_BUCKET)
    up_m += SW_BUCKET_FLOOR_M;
  up_m += s->heights.post_m;
  if (end->connector != NULL)
    up_m += end->connector->height_m - end->connector->engagement_m + end->flange->height_m;
  else if (end->flange != NULL)
    up_m += end->flange->height_m - end->flange->engagement_m;
  return up_m - design->crown.hook_drop_m;
}

static const char *const posts[] = { "sch40-2",       "emt-1",         "rmc-1-1/2", "imc-3",
                                     "al-1.00x0.125", "al-2.00x0.250", "emt-3",     "pvc40-2" };

static void
test_heights_add_up_in_any_design (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);

  for (int i = 0; i < 200; i++) {
    double height_m = g_rand_double_range (rand, 1, 6);
    g_autofree char *sets =
      g_strdup_printf ("shape.crown_height_m=%.17g; stand.post=%s; stand.foot=%s; "
                       "crown.hook_drop_m=%.17g; stand.arm_width_m=%.17g; "
                       "stand.sleeve_depth_m=%.17g; shape.ring_height_m=0.2",
                       height_m,
                       posts[g_rand_int_range (rand, 0, G_N_ELEMENTS (posts))],
                       i % 3 == 0   ? "slabs"
                       : i % 3 == 1 ? "bucket"
                                    : "socket",
                       g_rand_double_range (rand, 0, 0.1),
                       g_rand_double_range (rand, 0.05, 0.3),
                       g_rand_double_range (rand, 0.1, 1.2));
    g_autoptr (SwSolution) solution = solve_with ("lawn", sets);
    g_assert_cmpfloat_with_epsilon (measured_crown_m (solution), height_m, 1e-12);
    g_assert_cmpfloat_with_epsilon (sw_height_chain_crown_m (&solution->heights),
                                    height_m,
                                    1e-12);
  }
}

/* Worked by hand. Lawn: 1.5 in of board (ALSC PS 20); flange 1.00 − 0.697 in (ASME B1.20.1).
 * Porch: EMT 1.2 − 1.0 in short of its connector's shoulder, on a flange of 0.81 in.
 */
static void
test_posts_of_the_starts (void)
{
  g_autoptr (SwSolution) lawn = solve_with ("lawn", "");
  g_autoptr (SwSolution) bucket = solve_with ("lawn", "stand.foot=bucket");
  g_autoptr (SwSolution) porch = solve_with ("porch", "");
  g_autoptr (SwSolution) landmark = solve_with ("landmark", "");

  g_assert_cmpfloat_with_epsilon (lawn->heights.post_m, 2.86 - 1.803 * INCH_M, 1e-12);
  g_assert_cmpfloat_with_epsilon (bucket->heights.post_m,
                                  2.86 - 1.803 * INCH_M - 0.0023,
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (porch->heights.post_m,
                                  1.90 - (1.5 + 0.81 + 0.2) * INCH_M,
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (landmark->heights.post_m,
                                  4.94 + 0.80 - (1.25 - 1.016) * INCH_M,
                                  1e-12);
}

static void
test_an_unknown_post_has_no_length (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "stand.post=oak; topper.kind=none");

  g_assert_true (isnan (solution->heights.post_m));
  g_assert_true (isnan (solution->heights.stub_m));
  g_assert_true (isnan (solution->lift_kg));
}

/* A property, and its limit: three lengths can always be joined above the lowest third, four
 * never.
 */
static void
test_joints_stand_high (void)
{
  for (double post_m = 0.6; post_m < 16; post_m += 0.13) {
    SwPostJoints joints;
    double sum_m = 0;

    sw_post_joints_init (&joints, post_m, 3.048);
    for (int i = 0; i < joints.pieces; i++) {
      g_assert_cmpfloat (sw_post_piece_m (&joints, i), <=, 3.048 + 1e-9);
      g_assert_cmpfloat (sw_post_piece_m (&joints, i), >=, 0.3 - 1e-9);
      sum_m += sw_post_piece_m (&joints, i);
    }
    g_assert_cmpfloat_with_epsilon (sum_m, post_m, 1e-9);
    g_assert_cmpint (joints.pieces, ==, (int) ceil (post_m / 3.048 - 1e-9));
    g_assert_cmpint (joints.in_lowest_third, ==, post_m > 3 * 3.048);
  }
}

/* Worked by hand: 6.5 m out of 6.4 m would leave 0.1 m; 0.3 m is the least. */
static void
test_no_sliver_on_top (void)
{
  SwPostJoints joints;

  sw_post_joints_init (&joints, 6.5, 6.4);
  g_assert_cmpint (joints.pieces, ==, 2);
  g_assert_cmpfloat_with_epsilon (joints.lowest_joint_m, 6.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_post_piece_m (&joints, 1), 0.3, 1e-12);
  sw_post_joints_init (&joints, 6.4, 6.4);
  g_assert_cmpint (joints.pieces, ==, 1);
  g_assert_true (isnan (joints.lowest_joint_m));
}

/* Source: ASME B36.10M: 2-1/2 in pipe of schedule 40 is 2.469 in inside, 2 in pipe 2.375 in
 * across; 2-1/2 in RMC (ANSI C80.1) is 2.489 in inside.
 */
static void
test_joint_tube_is_the_tightest (void)
{
  const SwCatalogue *catalogue = sw_catalogue_builtin (NULL);
  const SwPipe *post = sw_catalogue_pipe (catalogue, "sch40-2");

  g_assert_cmpstr (sw_joint_tube (catalogue, post)->id, ==, "sch40-2-1/2");
  g_assert_cmpfloat_with_epsilon (sw_joint_tube_m (post), 12 * 2.375 * INCH_M, 1e-12);
  g_assert_null (sw_joint_tube (catalogue, sw_catalogue_pipe (catalogue, "sch40-4")));
}

/* Worked by hand: crown 2.0, star 1.8 kg; 20 strips of 0.22 kg/m and √(2.61² + 0.87²) m; post
 * 3.653 lb/ft of 2.8142038 m; stub 0.30 lb/ft of 0.203614 m.
 */
static void
test_what_is_lifted (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  const double kg_per_m = 0.45359237 / 0.3048;
  double sum_kg = 3.8 + 20 * 0.22 * sqrt (2.61 * 2.61 + 0.87 * 0.87) +
                  kg_per_m * (3.653 * 2.8142038 + 0.30 * 0.203614);

  g_assert_cmpfloat_with_epsilon (solution->lift_kg, sum_kg, 1e-6);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/height-chain/heights add up in any design",
                   test_heights_add_up_in_any_design);
  g_test_add_func ("/engine/height-chain/posts of the starts", test_posts_of_the_starts);
  g_test_add_func ("/engine/height-chain/an unknown post has no length",
                   test_an_unknown_post_has_no_length);
  g_test_add_func ("/engine/height-chain/joints stand high", test_joints_stand_high);
  g_test_add_func ("/engine/height-chain/no sliver on top", test_no_sliver_on_top);
  g_test_add_func ("/engine/height-chain/the joint tube is the tightest",
                   test_joint_tube_is_the_tightest);
  g_test_add_func ("/engine/height-chain/what is lifted", test_what_is_lifted);
  return g_test_run ();
}
