// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design.h"

static void
test_a_copy_is_equal_and_apart (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwDesign) copy = sw_design_copy (design);

  g_assert_true (sw_design_equal (design, copy));
  copy->shape.crown_height_m = 3;
  g_assert_false (sw_design_equal (design, copy));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/design/a copy is equal and apart", test_a_copy_is_equal_and_apart);
  return g_test_run ();
}
