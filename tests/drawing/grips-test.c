// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/grips.h"
#include "trees.h"

#include <math.h>

static SwView
view_of (SwViewKind kind, const SwSolution *solution)
{
  return kind == SW_SIDE ? sw_side_view_fit (solution, 600, 500)
                         : sw_top_view_fit (solution, 600, 500);
}

/* A grip read where it stands means the value it has: no jump when a drag begins. */
static void
test_a_grip_at_rest_means_its_value (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (8);

  for (int i = 0; i < 200; i++) {
    g_autoptr (SwSolution) solution = tree_random (rand);
    for (SwViewKind kind = SW_SIDE; kind <= SW_TOP; kind++) {
      SwView view = view_of (kind, solution);
      SwGrip grips[SW_N_GRIPS];
      guint n = sw_grips_place (kind, &view, solution, grips);
      for (guint j = 0; j < n; j++) {
        double value = sw_grip_value_at (grips[j].id, &view, solution, grips[j].x, grips[j].y);
        double now = sw_grip_value (grips[j].id, solution);
        if (grips[j].id == SW_GRIP_COVERAGE && now > 354)
          continue; /* snaps to a full tree */
        g_assert_cmpfloat_with_epsilon (value, now, 1e-6 * MAX (1, fabs (now)));
      }
    }
  }
}

static void
test_each_grip_belongs_to_its_view (void)
{
  g_autoptr (SwDesign) design = sw_start_new ("lawn", NULL);
  g_autoptr (SwSolution) solution = tree_solve (design);
  guint all = 0;

  for (SwViewKind kind = SW_SIDE; kind <= SW_TOP; kind++) {
    SwView view = view_of (kind, solution);
    SwGrip grips[SW_N_GRIPS];
    guint n = sw_grips_place (kind, &view, solution, grips);
    for (guint i = 0; i < n; i++)
      g_assert_cmpint (sw_grip_info[grips[i].id].view, ==, kind);
    all += n;
  }
  g_assert_cmpuint (all, ==, SW_N_GRIPS);
}

static void
test_a_grip_is_hit_within_its_reach (void)
{
  const SwGrip grips[] = { { SW_GRIP_CROWN_HEIGHT, 100, 100, 0 },
                           { SW_GRIP_PITCH, 115, 100, 0 } };

  g_assert_true (sw_grips_hit (grips, 2, 104, 100) == &grips[0]);
  g_assert_true (sw_grips_hit (grips, 2, 112, 100) == &grips[1]);
  g_assert_null (sw_grips_hit (grips, 2, 60, 100));
}

/* On the starts no two grips of a view lie on one another, in a wide and in a small pane. */
static void
test_grips_stand_apart (void)
{
  for (guint i = 0; i < sw_n_starts; i++) {
    g_autoptr (SwDesign) design = sw_start_new (sw_starts[i].name, NULL);
    g_autoptr (SwSolution) solution = tree_solve (design);
    for (SwViewKind kind = SW_SIDE; kind <= SW_TOP; kind++) {
      SwView view = view_of (kind, solution);
      SwGrip grips[SW_N_GRIPS];
      guint n = sw_grips_place (kind, &view, solution, grips);
      for (guint a = 0; a < n; a++) {
        for (guint b = a + 1; b < n; b++)
          g_assert_cmpfloat (hypot (grips[a].x - grips[b].x, grips[a].y - grips[b].y), >, 24);
      }
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/grips/a grip at rest means its value",
                   test_a_grip_at_rest_means_its_value);
  g_test_add_func ("/drawing/grips/each grip belongs to its view",
                   test_each_grip_belongs_to_its_view);
  g_test_add_func ("/drawing/grips/a grip is hit within its reach",
                   test_a_grip_is_hit_within_its_reach);
  g_test_add_func ("/drawing/grips/grips stand apart", test_grips_stand_apart);
  return g_test_run ();
}
