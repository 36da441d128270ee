// SPDX-License-Identifier: GPL-3.0-or-later
/* Places of ticks are read back out of the finished PDFs in tests/packet/true-size-test.c;
 * here: what lanes add up to. */
#include "drawing/crown-template.h"
#include "drawing/ring-tape.h"
#include "trees.h"

#include <math.h>

static const double papers[][2] = { { 841.89, 595.276 }, { 792, 612 } };

static void
test_lanes_add_up_to_the_ring (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (9);

  for (int i = 0; i < 200; i++) {
    g_autoptr (SwSolution) solution = tree_random (rand);
    const SwShape *shape = &solution->design->shape;
    SwTapePlan plan;
    double share = MIN (shape->coverage_deg, 360) / 360;
    sw_tape_plan_init (&plan, solution, papers[i % 2][0], papers[i % 2][1]);
    /* by hand: 2π·(radius + OD/2), or the coverage's share of it */
    g_assert_cmpfloat_with_epsilon (plan.length_m,
                                    share * 2 * G_PI *
                                      (shape->ring_radius_m + solution->ring_od_m / 2),
                                    1e-9);
    g_assert_cmpfloat ((plan.lanes - 1) * plan.lane_m, <, plan.length_m);
    g_assert_cmpfloat (plan.lanes * plan.lane_m, >=, plan.length_m - 1e-9);
    g_assert_cmpint (plan.pages * plan.lanes_per_page, >=, plan.lanes);
    g_assert_cmpfloat (plan.lane_m * SW_POINTS_PER_M, <, papers[i % 2][0]);
  }
}

static void
test_tiles_cover_the_plate (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (10);

  for (int i = 0; i < 100; i++) {
    g_autoptr (SwSolution) solution = tree_random (rand);
    SwCrownTiles tiles;
    double across_m =
      2 * (solution->design->shape.crown_radius_m - solution->design->crown.hook_reach_m) +
      0.018;
    sw_crown_tiles_init (&tiles, solution, 595.276, 841.89);
    g_assert_cmpfloat (tiles.columns * (tiles.tile_width_m - 0.010) + 0.010, >=, across_m);
    g_assert_cmpfloat (tiles.rows * (tiles.tile_height_m - 0.010) + 0.010, >=, across_m);
    g_assert_cmpint (tiles.pages, ==, tiles.columns * tiles.rows);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/ring-tape/lanes add up to the ring",
                   test_lanes_add_up_to_the_ring);
  g_test_add_func ("/drawing/ring-tape/tiles cover the plate", test_tiles_cover_the_plate);
  return g_test_run ();
}
