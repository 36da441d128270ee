// SPDX-License-Identifier: GPL-3.0-or-later
/* cut-task.h: a cutting question in whole micrometres, and bars as an answer to it.
 *
 * n pieces fit when Σ length + (n − 1)·kerf ≤ stock, which is Σ (length + kerf) ≤ stock + kerf:
 * each piece takes its `need`, a bar has `room`.
 */
#pragma once
#include "engine/cut-plan.h"

typedef struct {
  double stock_m, kerf_m;
  gint64 room_um;   /* stock + kerf */
  guint n;          /* different lengths, longest first */
  gint64 *need_um;  /* owned: length + kerf of each, falling */
  double *length_m; /* owned */
  int *count;       /* owned: how many of each are wanted, ≥ 1 */
  double pieces_m;  /* all pieces together */
} SwCutTask;

/* Equal lengths are put together.
 * Returns: (transfer full) (nullable); Errors: SW_ERROR_RANGE for a number that makes no sense
 * or too many pieces; SW_ERROR_NO_SOLUTION for a piece longer than the stock.
 */
SwCutTask *sw_cut_task_new (double stock_m,
                            double kerf_m,
                            const SwPiece *pieces,
                            gsize n_pieces,
                            GError **error);
void sw_cut_task_free (SwCutTask *task);

/* ⌈Σ need·count / room⌉: no plan has fewer bars. */
int sw_cut_task_material_bound (const SwCutTask *task);

/* Bars: each a list of places in the task (guint), longest piece first. */
GPtrArray *sw_cut_bars_new (void);

/* Puts `count` (n numbers) pieces into new bars behind those there, longest first, each into
 * the first of the new bars that takes it.
 */
void sw_cut_bars_first_fit (GPtrArray *bars, const SwCutTask *task, const int *count);

/* Returns: (transfer full). */
SwCutPlan *sw_cut_plan_new (const char *stock,
                            const SwCutTask *task,
                            const GPtrArray *bars,
                            int bound);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwCutTask, sw_cut_task_free)
