// SPDX-License-Identifier: GPL-3.0-or-later
/* cut-patterns.h: the ways one bar can be cut.
 *
 * A pattern is one number a length: how many of it come out of one bar, never more than are
 * wanted. It is maximal when nothing that is still wanted fits what is left.
 */
#pragma once
#include "engine/cut-task.h"

/* All maximal patterns, those with the longest pieces first.
 * Returns: (transfer full) (nullable) (element-type int): n numbers a pattern; NULL when there
 * are more than `most`.
 */
GArray *sw_cut_patterns_all (const SwCutTask *task, guint most);

/* Σ need of a pattern. */
gint64 sw_cut_pattern_um (const SwCutTask *task, const int *pattern);

typedef struct SwKnapsack SwKnapsack;

SwKnapsack *sw_knapsack_new (const SwCutTask *task);
void sw_knapsack_free (SwKnapsack *knapsack);

/* The pattern that is worth most when a piece of length i is worth value[i] (≥ 0 counts), by
 * depth-first search with the fractional bound. `pattern` holds n numbers. Returns: an upper
 * bound on the worth of every pattern: the pattern's own worth when the search was finished,
 * more when it was broken off.
 */
double sw_knapsack_solve (SwKnapsack *knapsack, const double *value, int *pattern);
