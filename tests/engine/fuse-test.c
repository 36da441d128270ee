// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/fuse.h"

#include <math.h>

/* NEC 210.20(A): 12 A for hours on 15 A, 16 A on 20 A. */
static void
test_a_fuse_carries_four_fifths (void)
{
  g_assert_cmpfloat_with_epsilon (sw_fuse_for (12), 15, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_fuse_for (12.01), 20, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_fuse_for (16), 20, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_fuse_for (0), 1, 1e-12);
  g_assert_true (isnan (sw_fuse_for (32.1)));
  g_assert_true (isnan (sw_fuse_for (NAN)));
}

static void
test_a_limit_allows_its_largest_fuse (void)
{
  g_assert_cmpfloat_with_epsilon (sw_fuse_load_under (5), 4, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_fuse_load_under (7.4), 4, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_fuse_load_under (0.9), 0, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/fuse/a fuse carries four fifths", test_a_fuse_carries_four_fifths);
  g_test_add_func ("/engine/fuse/a limit allows its largest fuse",
                   test_a_limit_allows_its_largest_fuse);
  return g_test_run ();
}
