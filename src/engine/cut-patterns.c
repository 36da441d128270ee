// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-patterns.h"

#include <string.h>

#define MOST_VISITS 2000000 /* of one enumeration */
#define MOST_STEPS 1000000  /* of one knapsack search */

typedef struct {
  const SwCutTask *task;
  GArray *found; /* owned */
  int *pattern;  /* owned: the one being built */
  guint most, visits;
} Walk;

static gboolean
is_maximal (const Walk *walk, gint64 left_um)
{
  const SwCutTask *task = walk->task;

  for (guint i = task->n; i > 0 && task->need_um[i - 1] <= left_um; i--) {
    if (walk->pattern[i - 1] < task->count[i - 1])
      return FALSE;
  }
  return TRUE;
}

/* Returns: FALSE when there are too many. */
static gboolean
walk_from (Walk *walk, guint i, gint64 left_um)
{
  const SwCutTask *task = walk->task;

  if (++walk->visits > MOST_VISITS)
    return FALSE;
  if (i == task->n) {
    if (is_maximal (walk, left_um))
      g_array_append_vals (walk->found, walk->pattern, task->n);
    return walk->found->len <= walk->most * task->n;
  }
  int most = (int) MIN (left_um / task->need_um[i], task->count[i]);
  int least = i == task->n - 1 ? most : 0; /* fewer of the last would not be maximal */
  for (int k = most; k >= least; k--) {
    walk->pattern[i] = k;
    if (!walk_from (walk, i + 1, left_um - k * task->need_um[i]))
      return FALSE;
  }
  return TRUE;
}

GArray *
sw_cut_patterns_all (const SwCutTask *task, guint most)
{
  g_autofree int *pattern = g_new0 (int, task->n);
  g_autoptr (GArray) found = g_array_new (FALSE, FALSE, sizeof (int));
  Walk walk = { .task = task, .found = found, .pattern = pattern, .most = most };

  return walk_from (&walk, 0, task->room_um) ? g_steal_pointer (&found) : NULL;
}

gint64
sw_cut_pattern_um (const SwCutTask *task, const int *pattern)
{
  gint64 sum_um = 0;

  for (guint i = 0; i < task->n; i++)
    sum_um += pattern[i] * task->need_um[i];
  return sum_um;
}

struct SwKnapsack {
  const SwCutTask *task; /* borrowed */
  guint *order;          /* owned: places by worth a micrometre, best first */
  double *density;       /* owned: of each place */
  int *trial;            /* owned */
  /* of one search; borrowed */
  const double *value;
  int *best;
  double best_value;
  guint n_worthy, steps;
};

SwKnapsack *
sw_knapsack_new (const SwCutTask *task)
{
  SwKnapsack *knapsack = g_new0 (SwKnapsack, 1);

  knapsack->task = task;
  knapsack->order = g_new0 (guint, task->n);
  knapsack->density = g_new0 (double, task->n);
  knapsack->trial = g_new0 (int, task->n);
  return knapsack;
}

void
sw_knapsack_free (SwKnapsack *knapsack)
{
  if (knapsack == NULL)
    return;
  g_free (knapsack->order);
  g_free (knapsack->density);
  g_free (knapsack->trial);
  g_free (knapsack);
}

/* Equal worth: the longer piece first, so that the order never depends on the sort. */
static int
by_density_cb (gconstpointer a, gconstpointer b, gpointer data)
{
  const double *density = data;
  guint left = *(const guint *) a, right = *(const guint *) b;
  int order = (density[left] < density[right]) - (density[left] > density[right]);

  return order != 0 ? order : (left > right) - (left < right);
}

static void
sort_by_density (SwKnapsack *knapsack)
{
  const SwCutTask *task = knapsack->task;

  knapsack->n_worthy = 0;
  for (guint i = 0; i < task->n; i++) {
    knapsack->density[i] = knapsack->value[i] / (double) task->need_um[i];
    if (knapsack->value[i] > 0)
      knapsack->order[knapsack->n_worthy++] = i;
  }
  g_qsort_with_data (knapsack->order,
                     (int) knapsack->n_worthy,
                     sizeof (guint),
                     by_density_cb,
                     knapsack->density);
}

static double
densest_left (const SwKnapsack *knapsack, guint depth)
{
  return depth < knapsack->n_worthy ? knapsack->density[knapsack->order[depth]] : 0;
}

static void
search (SwKnapsack *knapsack, guint depth, gint64 left_um, double worth)
{
  const SwCutTask *task = knapsack->task;

  if (worth > knapsack->best_value) {
    knapsack->best_value = worth;
    memcpy (knapsack->best, knapsack->trial, task->n * sizeof (int));
  }
  double hope = worth + (double) left_um * densest_left (knapsack, depth);
  if (depth == knapsack->n_worthy || hope <= knapsack->best_value * (1 + 1e-12) ||
      ++knapsack->steps > MOST_STEPS)
    return;
  guint i = knapsack->order[depth];
  for (int k = (int) MIN (left_um / task->need_um[i], task->count[i]); k >= 0; k--) {
    knapsack->trial[i] = k;
    search (knapsack,
            depth + 1,
            left_um - k * task->need_um[i],
            worth + k * knapsack->value[i]);
  }
  knapsack->trial[i] = 0;
}

double
sw_knapsack_solve (SwKnapsack *knapsack, const double *value, int *pattern)
{
  const SwCutTask *task = knapsack->task;

  knapsack->value = value;
  knapsack->best = pattern;
  knapsack->best_value = 0;
  knapsack->steps = 0;
  memset (pattern, 0, task->n * sizeof (int));
  memset (knapsack->trial, 0, task->n * sizeof (int));
  sort_by_density (knapsack);
  search (knapsack, 0, task->room_um, 0);
  if (knapsack->steps <= MOST_STEPS)
    return knapsack->best_value;
  return (double) task->room_um * densest_left (knapsack, 0);
}
