// SPDX-License-Identifier: GPL-3.0-or-later
/* cut-master.h: which patterns, and how often: the least number of bars, with GLPK.
 *
 * Model    min Σ x, Σ patterns·x ≥ count, x whole
 * Patterns all maximal ones where they are few; else those that Gilmore & Gomory's pricing asks
 *          for (Operations Research 9, 1961)
 * Bound    the linear model's optimum, rounded up; with priced patterns Farley's (Operations
 *          Research 38, 1990): any prices give Σ price·count / worth of the best pattern
 */
#pragma once
#include "engine/cut-task.h"

typedef struct {
  /* Given; borrowed */
  const SwCutTask *task;
  GCancellable *cancellable; /* nullable */
  int most_nodes;            /* of the search tree */
  /* In: a plan and a bound; out: the best found of both; owned by the caller */
  GPtrArray *bars;
  int bound;
} SwCutQuestion;

/* Errors: SW_ERROR_NUMERIC, G_IO_ERROR_CANCELLED. */
gboolean sw_cut_master_solve (SwCutQuestion *question, GError **error);
