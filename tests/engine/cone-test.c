// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cone.h"

/* The example of all cone tests: crown 3.05/0.060 m, ring 0.15/1.000 m, 16 strips. Figures by
 * an independent program (SciPy 1.10) from the same formulas.
 */
static SwDesign *
sixteen_strips (void)
{
  SwDesign *design = sw_design_new ();
  design->shape = (SwShape){ 3.05, 0.15, 0.060, 1.0, 360, 0, 16 };
  return design;
}

static void
test_slant_and_lean (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  SwCone cone;

  sw_cone_init (&cone, design);
  g_assert_cmpfloat_with_epsilon (cone.slant_m, 3.048540634, 1e-9);
  g_assert_cmpfloat_with_epsilon (cone.lean_deg, 17.95947609, 1e-8);
}

static void
test_spacings (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  SwCone cone;

  sw_cone_init (&cone, design);
  g_assert_cmpfloat_with_epsilon (cone.spacing_ring_m, 0.392699082, 1e-9);
  g_assert_cmpfloat_with_epsilon (cone.chord_ring_m, 0.390180644, 1e-9);
  g_assert_cmpfloat_with_epsilon (cone.spacing_crown_m, 0.023561945, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/cone/slant and lean", test_slant_and_lean);
  g_test_add_func ("/engine/cone/spacings", test_spacings);
  return g_test_run ();
}
