// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-plan.h"

#include "engine/cut-master.h"
#include "engine/cut-task.h"

/* Enough for any real cut list; a harder one is answered with what was found by then. */
#define USUAL_NODES 2000

static GPtrArray *
first_fit (const SwCutTask *task)
{
  GPtrArray *bars = sw_cut_bars_new ();

  sw_cut_bars_first_fit (bars, task, task->count);
  return bars;
}

SwCutPlan *
sw_cut_plan_first_fit (const char *stock,
                       double stock_m,
                       double kerf_m,
                       const SwPiece *pieces,
                       gsize n_pieces,
                       GError **error)
{
  g_autoptr (SwCutTask) task = sw_cut_task_new (stock_m, kerf_m, pieces, n_pieces, error);

  if (task == NULL)
    return NULL;
  g_autoptr (GPtrArray) bars = first_fit (task);
  return sw_cut_plan_new (stock, task, bars, sw_cut_task_material_bound (task));
}

SwCutPlan *
sw_cut_plan_exact (const char *stock,
                   double stock_m,
                   double kerf_m,
                   const SwPiece *pieces,
                   gsize n_pieces,
                   int most_nodes,
                   GCancellable *cancellable,
                   GError **error)
{
  g_autoptr (SwCutTask) task = sw_cut_task_new (stock_m, kerf_m, pieces, n_pieces, error);

  if (task == NULL || g_cancellable_set_error_if_cancelled (cancellable, error))
    return NULL;
  SwCutQuestion question = { .task = task,
                             .cancellable = cancellable,
                             .most_nodes = most_nodes > 0 ? most_nodes : USUAL_NODES,
                             .bars = first_fit (task),
                             .bound = sw_cut_task_material_bound (task) };
  gboolean done =
    (int) question.bars->len == question.bound || sw_cut_master_solve (&question, error);
  g_autoptr (GPtrArray) bars = question.bars;
  return done ? sw_cut_plan_new (stock, task, bars, question.bound) : NULL;
}

void
sw_cut_plan_free (SwCutPlan *plan)
{
  if (plan == NULL)
    return;
  g_free (plan->stock);
  g_ptr_array_unref (plan->bars);
  g_free (plan);
}
