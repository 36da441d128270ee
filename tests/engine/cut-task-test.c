// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-task.h"

static SwCutTask *
task_of (double stock_m, double kerf_m, const SwPiece *pieces, gsize n)
{
  g_autoptr (GError) error = NULL;
  SwCutTask *task = sw_cut_task_new (stock_m, kerf_m, pieces, n, &error);

  g_assert_no_error (error);
  return task;
}

/* Worked by hand. */
static void
test_lengths_fall_and_equal_ones_join (void)
{
  SwPiece pieces[] = { { 0.5, 2 }, { 1.25, 1 }, { 0.5, 3 }, { 0.75, 0 }, { 0.5000004, 1 } };
  g_autoptr (SwCutTask) task = task_of (2, 0.003, pieces, G_N_ELEMENTS (pieces));

  g_assert_cmpuint (task->n, ==, 2);
  g_assert_cmpint (task->room_um, ==, 2003000);
  g_assert_cmpint (task->need_um[0], ==, 1253000);
  g_assert_cmpint (task->need_um[1], ==, 503000);
  g_assert_cmpint (task->count[0], ==, 1);
  g_assert_cmpint (task->count[1], ==, 6);
  g_assert_cmpfloat_with_epsilon (task->pieces_m, 1.25 + 5 * 0.5 + 0.5000004, 1e-12);
}

/* Worked by hand: 1.253 + 6·0.503 = 4.271 m needed in bars of 2.003 m: at least 3. */
static void
test_material_bound (void)
{
  SwPiece pieces[] = { { 1.25, 1 }, { 0.5, 6 } };
  g_autoptr (SwCutTask) task = task_of (2, 0.003, pieces, G_N_ELEMENTS (pieces));
  SwPiece full[] = { { 1, 4 } };
  g_autoptr (SwCutTask) exactly = task_of (2, 0, full, 1);

  g_assert_cmpint (sw_cut_task_material_bound (task), ==, 3);
  g_assert_cmpint (sw_cut_task_material_bound (exactly), ==, 2);
}

static guint
place (const GPtrArray *bars, guint bar, guint k)
{
  return g_array_index ((const GArray *) g_ptr_array_index (bars, bar), guint, k);
}

/* Worked by hand: bars of 10; 6 6 / 4 4 4 go to bars 1, 2 / 1, 2, 3. */
static void
test_first_fit_fills_the_first_that_takes_it (void)
{
  SwPiece pieces[] = { { 4, 3 }, { 6, 2 } };
  g_autoptr (SwCutTask) task = task_of (10, 0, pieces, G_N_ELEMENTS (pieces));
  g_autoptr (GPtrArray) bars = sw_cut_bars_new ();

  sw_cut_bars_first_fit (bars, task, task->count);
  g_assert_cmpuint (bars->len, ==, 3);
  g_assert_cmpuint (place (bars, 0, 0), ==, 0);
  g_assert_cmpuint (place (bars, 0, 1), ==, 1);
  g_assert_cmpuint (place (bars, 1, 1), ==, 1);
  g_assert_cmpuint (place (bars, 2, 0), ==, 1);
}

static void
test_first_fit_leaves_older_bars_alone (void)
{
  SwPiece pieces[] = { { 4, 1 } };
  g_autoptr (SwCutTask) task = task_of (10, 0, pieces, 1);
  g_autoptr (GPtrArray) bars = sw_cut_bars_new ();

  sw_cut_bars_first_fit (bars, task, task->count);
  sw_cut_bars_first_fit (bars, task, task->count);
  g_assert_cmpuint (bars->len, ==, 2);
}

static void
test_plan_tells_its_waste (void)
{
  SwPiece pieces[] = { { 4, 3 }, { 6, 2 } };
  g_autoptr (SwCutTask) task = task_of (10, 0, pieces, G_N_ELEMENTS (pieces));
  g_autoptr (GPtrArray) bars = sw_cut_bars_new ();

  sw_cut_bars_first_fit (bars, task, task->count);
  g_autoptr (SwCutPlan) proven = sw_cut_plan_new ("x", task, bars, 3);
  g_autoptr (SwCutPlan) open = sw_cut_plan_new (NULL, task, bars, 2);
  g_assert_cmpfloat_with_epsilon (proven->waste_m, 6, 1e-12);
  g_assert_true (proven->optimal);
  g_assert_false (open->optimal);
  g_assert_null (open->stock);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/cut-task/lengths fall and equal ones join",
                   test_lengths_fall_and_equal_ones_join);
  g_test_add_func ("/engine/cut-task/material bound", test_material_bound);
  g_test_add_func ("/engine/cut-task/first fit fills the first bar that takes it",
                   test_first_fit_fills_the_first_that_takes_it);
  g_test_add_func ("/engine/cut-task/first fit leaves older bars alone",
                   test_first_fit_leaves_older_bars_alone);
  g_test_add_func ("/engine/cut-task/a plan tells its waste", test_plan_tells_its_waste);
  return g_test_run ();
}
