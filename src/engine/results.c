// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/results.h"

#include "engine/result-table.h"

#include <math.h>
#include <string.h>

/* In the report's order. */
static const SwResultTable *const tables[] = {
  &sw_results_of_shape, &sw_results_of_power, &sw_results_of_data,   &sw_results_of_wind,
  &sw_results_of_stand, &sw_results_of_ring,  &sw_results_of_checks,
};

guint
sw_n_results (void)
{
  guint n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    n += tables[i]->n;
  return n;
}

const SwResult *
sw_result_at (guint i)
{
  for (guint t = 0; t < G_N_ELEMENTS (tables); i -= tables[t++]->n) {
    if (i < tables[t]->n)
      return &tables[t]->rows[i];
  }
  g_return_val_if_reached (NULL);
}

const SwResult *
sw_result_find (const char *key)
{
  for (guint i = 0; i < sw_n_results (); i++) {
    if (strcmp (sw_result_at (i)->key, key) == 0)
      return sw_result_at (i);
  }
  return NULL;
}

static gboolean
is_absent (const SwResult *result, const SwSolution *solution)
{
  gboolean full_white = g_str_has_prefix (result->key, "power.full_white.");
  gboolean plan = g_str_has_prefix (result->key, "power.plan.");
  gboolean power =
    !full_white && g_str_has_prefix (result->key, "power.") && result->type != SW_RESULT_FLAG;

  return (full_white && !solution->power.full_white_feasible) ||
         (plan && !solution->feed_plan.found) || (power && !solution->power.feasible);
}

double
sw_result_value (const SwResult *result, const SwSolution *solution)
{
  gconstpointer field = (const char *) solution + result->offset;
  double value = NAN;

  if (is_absent (result, solution))
    return NAN;
  switch (result->type) {
  case SW_RESULT_NUMBER:
  case SW_RESULT_COUNT:
    value = *(const double *) field;
    break;
  case SW_RESULT_WHOLE:
  case SW_RESULT_FLAG:
  case SW_RESULT_REASON:
    value = *(const int *) field;
    break;
  }
  return isfinite (value) ? value : NAN; /* a factor over no demand at all does not apply */
}
