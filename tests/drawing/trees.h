// SPDX-License-Identifier: GPL-3.0-or-later
/* trees.h: solved designs for drawing tests: the starts, and shapes at the ends of what is
 * allowed. */
#pragma once
#include "engine/design-file.h"
#include "engine/solution.h"
#include "engine/starts.h"

static inline SwSolution *
tree_solve (SwDesign *design)
{
  g_autoptr (GError) error = NULL;
  SwSolution *solution = sw_solution_new (design, sw_catalogue_builtin (NULL), &error);

  g_assert_no_error (error);
  return solution;
}

/* Returns: (transfer full): a design that differs by seed: 2 … 512 strips, tall, low, wide,
 * open, closed. */
static inline SwSolution *
tree_random (GRand *rand)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  SwShape *shape = &design->shape;

  shape->ring_height_m = g_rand_double_range (rand, 0, 0.6);
  shape->crown_height_m = shape->ring_height_m + g_rand_double_range (rand, 0.3, 9);
  shape->crown_radius_m = g_rand_double_range (rand, 0.02, 0.5);
  shape->ring_radius_m = g_rand_double_range (rand, 0.1, 6);
  shape->coverage_deg =
    g_rand_int_range (rand, 0, 3) == 0 ? 360 : g_rand_double_range (rand, 20, 350);
  shape->facing_deg = g_rand_double_range (rand, -180, 180);
  shape->strip_count = g_rand_int_range (rand, 2, g_rand_int_range (rand, 3, 513));
  design->strip.pixels = g_rand_int_range (rand, 1, 120);
  design->units = g_rand_int_range (rand, 0, 2) == 0 ? SW_UNITS_US : SW_UNITS_METRIC;
  design->guys.count = g_rand_int_range (rand, 0, 6);
  design->topper.kind = g_rand_int_range (rand, 0, 4) == 0 ? SW_TOPPER_NONE : SW_TOPPER_STAR;
  design->stand.foot = (SwFootKind) g_rand_int_range (rand, 0, 3);
  design->stand.ring_span = g_rand_int_range (rand, 0, 2) == 0 ? SW_SPAN_FULL : SW_SPAN_ARC;
  return tree_solve (design);
}
