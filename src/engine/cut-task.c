// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-task.h"

#include "engine/error.h"

#include <math.h>
#include <string.h>

#define UM_PER_M 1e6
#define MOST_METRES 1e5 /* of one stock length; sums stay far inside 64 bits */
#define MOST_PIECES 100000

static gint64
micrometres (double length_m)
{
  return llround (length_m * UM_PER_M);
}

static gboolean
check_number (const char *name, double value, double least, GError **error)
{
  if (value >= least && value <= MOST_METRES) /* also refuses NaN */
    return TRUE;
  sw_set_error (error,
                SW_ERROR_RANGE,
                "%s: %.15g m is outside %.15g … %.15g m",
                name,
                value,
                least,
                MOST_METRES);
  return FALSE;
}

static gboolean
check_piece (const SwPiece *piece, double stock_m, GError **error)
{
  if (!check_number ("piece", piece->length_m, 1 / UM_PER_M, error))
    return FALSE;
  if (piece->count < 0 || piece->count > MOST_PIECES) {
    sw_set_error (error,
                  SW_ERROR_RANGE,
                  "piece: %d of %.15g m is outside 0 … %d",
                  piece->count,
                  piece->length_m,
                  MOST_PIECES);
    return FALSE;
  }
  if (piece->count > 0 && micrometres (piece->length_m) > micrometres (stock_m)) {
    sw_set_error (error,
                  SW_ERROR_NO_SOLUTION,
                  "piece: %.15g m is longer than the stock of %.15g m",
                  piece->length_m,
                  stock_m);
    return FALSE;
  }
  return TRUE;
}

static gboolean
check_total (const SwPiece *pieces, gsize n_pieces, GError **error)
{
  gint64 total = 0;

  for (gsize i = 0; i < n_pieces; i++)
    total += pieces[i].count;
  if (total <= MOST_PIECES)
    return TRUE;
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_RANGE,
               "piece: %" G_GINT64_FORMAT " pieces are too many, at most %d are allowed",
               total,
               MOST_PIECES);
  return FALSE;
}

static gboolean
check (double stock_m, double kerf_m, const SwPiece *pieces, gsize n_pieces, GError **error)
{
  if (!check_number ("stock", stock_m, 1 / UM_PER_M, error) ||
      !check_number ("kerf", kerf_m, 0, error))
    return FALSE;
  for (gsize i = 0; i < n_pieces; i++) {
    if (!check_piece (&pieces[i], stock_m, error))
      return FALSE;
  }
  return check_total (pieces, n_pieces, error);
}

static int
longest_first_cb (gconstpointer a, gconstpointer b)
{
  double left = ((const SwPiece *) a)->length_m, right = ((const SwPiece *) b)->length_m;

  return (left < right) - (left > right);
}

static void
add_piece (SwCutTask *task, const SwPiece *piece)
{
  gint64 need_um = micrometres (piece->length_m) + micrometres (task->kerf_m);

  if (piece->count == 0)
    return;
  task->pieces_m += piece->count * piece->length_m;
  if (task->n == 0 || task->need_um[task->n - 1] > need_um) {
    task->need_um[task->n] = need_um;
    task->length_m[task->n] = piece->length_m;
    task->n++;
  }
  task->count[task->n - 1] += piece->count;
}

SwCutTask *
sw_cut_task_new (double stock_m,
                 double kerf_m,
                 const SwPiece *pieces,
                 gsize n_pieces,
                 GError **error)
{
  if (!check (stock_m, kerf_m, pieces, n_pieces, error))
    return NULL;
  SwCutTask *task = g_new0 (SwCutTask, 1);
  g_autofree SwPiece *sorted = g_memdup2 (pieces, n_pieces * sizeof *pieces);

  if (n_pieces > 0)
    qsort (sorted, n_pieces, sizeof *sorted, longest_first_cb);
  task->stock_m = stock_m;
  task->kerf_m = kerf_m;
  task->room_um = micrometres (stock_m) + micrometres (kerf_m);
  task->need_um = g_new0 (gint64, n_pieces);
  task->length_m = g_new0 (double, n_pieces);
  task->count = g_new0 (int, n_pieces);
  for (gsize i = 0; i < n_pieces; i++)
    add_piece (task, &sorted[i]);
  return task;
}

void
sw_cut_task_free (SwCutTask *task)
{
  if (task == NULL)
    return;
  g_free (task->need_um);
  g_free (task->length_m);
  g_free (task->count);
  g_free (task);
}

int
sw_cut_task_material_bound (const SwCutTask *task)
{
  gint64 sum_um = 0; /* ≤ 1e5 pieces of 2e11 µm: inside 64 bits */

  for (guint i = 0; i < task->n; i++)
    sum_um += task->need_um[i] * task->count[i];
  return (int) ((sum_um + task->room_um - 1) / task->room_um);
}

static void
free_bar_cb (gpointer bar)
{
  g_array_unref (bar);
}

GPtrArray *
sw_cut_bars_new (void)
{
  return g_ptr_array_new_with_free_func (free_bar_cb);
}

void
sw_cut_bars_first_fit (GPtrArray *bars, const SwCutTask *task, const int *count)
{
  guint first = bars->len;
  g_autoptr (GArray) left_um = g_array_new (FALSE, FALSE, sizeof (gint64));

  for (guint i = 0; i < task->n; i++) {
    guint bar = 0; /* what one piece did not fit, its twin does not */
    for (int k = 0; k < count[i]; k++) {
      while (bar < left_um->len && g_array_index (left_um, gint64, bar) < task->need_um[i])
        bar++;
      if (bar == left_um->len) {
        g_array_append_val (left_um, task->room_um);
        g_ptr_array_add (bars, g_array_new (FALSE, FALSE, sizeof (guint)));
      }
      g_array_index (left_um, gint64, bar) -= task->need_um[i];
      g_array_append_val ((GArray *) g_ptr_array_index (bars, first + bar), i);
    }
  }
}

static GArray *
lengths_of (const SwCutTask *task, const GArray *bar)
{
  GArray *lengths = g_array_sized_new (FALSE, FALSE, sizeof (double), bar->len);

  for (guint k = 0; k < bar->len; k++)
    g_array_append_val (lengths, task->length_m[g_array_index (bar, guint, k)]);
  return lengths;
}

SwCutPlan *
sw_cut_plan_new (const char *stock, const SwCutTask *task, const GPtrArray *bars, int bound)
{
  SwCutPlan *plan = g_new0 (SwCutPlan, 1);

  plan->stock = g_strdup (stock);
  plan->stock_m = task->stock_m;
  plan->kerf_m = task->kerf_m;
  plan->bars = g_ptr_array_new_with_free_func (free_bar_cb);
  for (guint i = 0; i < bars->len; i++)
    g_ptr_array_add (plan->bars, lengths_of (task, g_ptr_array_index (bars, i)));
  /* rounding of the sums must not leave less than nothing */
  plan->waste_m = MAX (0, bars->len * task->stock_m - task->pieces_m);
  plan->bound = bound;
  plan->optimal = (int) bars->len == bound;
  return plan;
}
