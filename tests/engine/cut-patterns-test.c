// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-patterns.h"

#include <math.h>

/* Source: the instance of the "Cutting stock problem" article of Wikipedia; 308 patterns are
 * given there, 213 of them are maximal (counted by a program apart from this one).
 */
static const SwPiece paper[] = { { 1380, 22 }, { 1520, 25 }, { 1560, 12 }, { 1710, 14 },
                                 { 1820, 18 }, { 1880, 18 }, { 1930, 20 }, { 2000, 10 },
                                 { 2050, 12 }, { 2100, 14 }, { 2140, 16 }, { 2150, 18 },
                                 { 2200, 20 } };

static SwCutTask *
task_of (double stock_m, const SwPiece *pieces, gsize n)
{
  g_autoptr (GError) error = NULL;
  SwCutTask *task = sw_cut_task_new (stock_m, 0, pieces, n, &error);

  g_assert_no_error (error);
  return task;
}

static void
test_published_number (void)
{
  g_autoptr (SwCutTask) task = task_of (5600, paper, G_N_ELEMENTS (paper));
  g_autoptr (GArray) patterns = sw_cut_patterns_all (task, 1000);

  g_assert_nonnull (patterns);
  g_assert_cmpuint (patterns->len, ==, 213 * task->n);
  for (guint j = 0; j < 213; j++) {
    const int *pattern = &g_array_index (patterns, int, j * task->n);
    gint64 left_um = task->room_um - sw_cut_pattern_um (task, pattern);
    g_assert_cmpint (left_um, >=, 0);
    g_assert_cmpint (left_um, <, task->need_um[task->n - 1]);
  }
}

static void
test_too_many_are_not_listed (void)
{
  g_autoptr (SwCutTask) task = task_of (5600, paper, G_N_ELEMENTS (paper));

  g_assert_null (sw_cut_patterns_all (task, 212));
  g_autoptr (GArray) just = sw_cut_patterns_all (task, 213);
  g_assert_nonnull (just);
}

static void
test_never_more_than_wanted (void)
{
  SwPiece pieces[] = { { 4, 1 }, { 1, 2 } };
  g_autoptr (SwCutTask) task = task_of (10, pieces, 2);
  g_autoptr (GArray) patterns = sw_cut_patterns_all (task, 10);

  g_assert_cmpuint (patterns->len, ==, 2);
  g_assert_cmpint (g_array_index (patterns, int, 0), ==, 1);
  g_assert_cmpint (g_array_index (patterns, int, 1), ==, 2);
}

/* The best of all listed patterns is what the search must find. */
static void
test_knapsack_finds_the_best (void)
{
  g_autoptr (SwCutTask) task = task_of (5600, paper, G_N_ELEMENTS (paper));
  g_autoptr (GArray) patterns = sw_cut_patterns_all (task, 1000);
  g_autoptr (GRand) rand = g_rand_new_with_seed (5);
  SwKnapsack *knapsack = sw_knapsack_new (task);

  for (int round = 0; round < 50; round++) {
    double value[G_N_ELEMENTS (paper)], best = 0;
    int found[G_N_ELEMENTS (paper)];
    for (guint i = 0; i < task->n; i++)
      value[i] = g_rand_double_range (rand, -0.2, 1);
    for (guint j = 0; j < patterns->len; j += task->n) {
      double worth = 0;
      for (guint i = 0; i < task->n; i++)
        worth += fmax (value[i], 0) * g_array_index (patterns, int, j + i);
      best = fmax (best, worth);
    }
    g_assert_cmpfloat_with_epsilon (sw_knapsack_solve (knapsack, value, found), best, 1e-9);
    g_assert_cmpint (sw_cut_pattern_um (task, found), <=, task->room_um);
  }
  sw_knapsack_free (knapsack);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/cut-patterns/as many as published", test_published_number);
  g_test_add_func ("/engine/cut-patterns/too many are not listed",
                   test_too_many_are_not_listed);
  g_test_add_func ("/engine/cut-patterns/never more than wanted", test_never_more_than_wanted);
  g_test_add_func ("/engine/cut-patterns/knapsack finds the best",
                   test_knapsack_finds_the_best);
  return g_test_run ();
}
