// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-mix.h"

#include "engine/cut-patterns.h"
#include "engine/cut-task.h"
#include "engine/error.h"
#include "engine/glpk-guard.h"

#include <glpk.h>
#include <math.h>
#include <string.h>

#define USUAL_NODES 20000
#define MOST_PATTERNS 5000 /* of one length, to be listed one by one */
#define MOST_PRICE 1e9
#define EPSILON 1e-7 /* of the cost */

/* One way to cut one bar of one length. */
typedef struct {
  guint stock, first; /* which length; where its numbers begin */
} Column;

/* Invariant: everything a longjmp out of GLPK would leave behind is owned by Mix. */
typedef struct {
  const SwCutMixJob *job;
  GCancellable *cancellable;
  SwCutTask *task;  /* owned: all pieces, out of the longest length */
  GArray *columns;  /* owned: Column */
  GArray *patterns; /* owned: int, task->n a column */
  int *rows;        /* owned: n + 1, as GLPK counts, from 1 */
  double *cells;    /* owned: n + 1 */
  int *times;       /* owned, nullable: how often each column is taken */
  glp_prob *model;
  double bound;
  int nodes, failure;
  gboolean cancelled;
} Mix;

static gboolean
check_prices (const SwCutMixJob *job, GError **error)
{
  for (gsize i = 0; i < job->n_stocks; i++) {
    double price = job->stocks[i].price;
    if (price > 0 && price <= MOST_PRICE) /* also refuses NaN */
      continue;
    sw_set_error (error,
                  SW_ERROR_RANGE,
                  "price: %.15g is not above 0 and at most %.15g",
                  price,
                  MOST_PRICE);
    return FALSE;
  }
  return TRUE;
}

/* The whole task out of one length. Returns: (nullable). */
static SwCutTask *
task_out_of (const SwCutMixJob *job, gsize stock, GError **error)
{
  return sw_cut_task_new (job->stocks[stock].stock_m,
                          job->kerf_m,
                          job->pieces,
                          job->n_pieces,
                          error);
}

static gsize
longest_stock (const SwCutMixJob *job)
{
  gsize longest = 0;

  for (gsize i = 1; i < job->n_stocks; i++) {
    if (job->stocks[i].stock_m > job->stocks[longest].stock_m)
      longest = i;
  }
  return longest;
}

static gboolean
is_empty (const int *pattern, guint n)
{
  for (guint i = 0; i < n; i++) {
    if (pattern[i] > 0)
      return FALSE;
  }
  return TRUE;
}

/* Returns: FALSE when there are too many. */
static gboolean
list_patterns (Mix *mix, guint stock)
{
  SwCutTask shorter = *mix->task; /* borrows its lists */

  shorter.stock_m = mix->job->stocks[stock].stock_m;
  shorter.room_um = llround (shorter.stock_m * 1e6) + llround (mix->job->kerf_m * 1e6);
  g_autoptr (GArray) found = sw_cut_patterns_all (&shorter, MOST_PATTERNS);
  if (found == NULL)
    return FALSE;
  for (guint at = 0; at < found->len; at += shorter.n) {
    const int *pattern = &g_array_index (found, int, at);
    Column column = { stock, mix->patterns->len };
    if (is_empty (pattern, shorter.n))
      continue;
    g_array_append_vals (mix->patterns, pattern, shorter.n);
    g_array_append_val (mix->columns, column);
  }
  return TRUE;
}

static void
add_column (Mix *mix, const Column *column)
{
  const int *pattern = &g_array_index (mix->patterns, int, column->first);
  int at = glp_add_cols (mix->model, 1), length = 0;

  for (guint i = 0; i < mix->task->n; i++) {
    if (pattern[i] == 0)
      continue;
    length++;
    mix->rows[length] = (int) i + 1;
    mix->cells[length] = pattern[i];
  }
  glp_set_mat_col (mix->model, at, length, mix->rows, mix->cells);
  glp_set_col_bnds (mix->model, at, GLP_LO, 0, 0);
  glp_set_col_kind (mix->model, at, GLP_IV);
  glp_set_obj_coef (mix->model, at, mix->job->stocks[column->stock].price);
}

static void
tree_cb (glp_tree *tree, void *info)
{
  Mix *mix = info;
  int best = glp_ios_best_node (tree);
  int most = mix->job->most_nodes > 0 ? mix->job->most_nodes : USUAL_NODES;

  glp_ios_tree_size (tree, NULL, NULL, &mix->nodes);
  if (best != 0)
    mix->bound = MAX (mix->bound, glp_ios_node_bound (tree, best));
  mix->cancelled = mix->cancelled || g_cancellable_is_cancelled (mix->cancellable);
  if (mix->cancelled || mix->nodes > most)
    glp_ios_terminate (tree);
}

static void
read_times (Mix *mix)
{
  int status = glp_mip_status (mix->model);

  if (status != GLP_OPT && status != GLP_FEAS)
    return;
  mix->times = g_new0 (int, mix->columns->len);
  for (guint j = 0; j < mix->columns->len; j++)
    mix->times[j] = (int) lround (glp_mip_col_val (mix->model, (int) j + 1));
  if (status == GLP_OPT && mix->failure == 0)
    mix->bound = glp_mip_obj_val (mix->model);
}

static void
work_cb (gpointer data)
{
  Mix *mix = data;
  glp_smcp linear;
  glp_iocp whole;

  mix->model = glp_create_prob ();
  glp_set_obj_dir (mix->model, GLP_MIN);
  glp_add_rows (mix->model, (int) mix->task->n);
  for (guint i = 0; i < mix->task->n; i++)
    glp_set_row_bnds (mix->model, (int) i + 1, GLP_LO, mix->task->count[i], 0);
  for (guint j = 0; j < mix->columns->len; j++)
    add_column (mix, &g_array_index (mix->columns, Column, j));
  glp_init_smcp (&linear);
  linear.msg_lev = GLP_MSG_OFF;
  mix->failure = glp_simplex (mix->model, &linear);
  if (mix->failure != 0 || glp_get_status (mix->model) != GLP_OPT)
    return;
  mix->bound = glp_get_obj_val (mix->model);
  glp_init_iocp (&whole);
  whole.msg_lev = GLP_MSG_OFF;
  whole.mir_cuts = whole.gmi_cuts = GLP_ON;
  whole.cb_func = tree_cb;
  whole.cb_info = mix;
  mix->failure = glp_intopt (mix->model, &whole);
  read_times (mix);
}

/* Takes what is still wanted of a pattern. Returns: (nullable). */
static GArray *
take_bar (const SwCutTask *task, const int *pattern, int *left)
{
  GArray *bar = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < task->n; i++) {
    for (int k = MIN (pattern[i], left[i]); k > 0; k--) {
      g_array_append_val (bar, i);
      left[i]--;
    }
  }
  if (bar->len > 0)
    return bar;
  g_array_unref (bar);
  return NULL;
}

static double
length_of (const SwCutTask *task, const GPtrArray *bars)
{
  double sum_m = 0;

  for (guint b = 0; b < bars->len; b++) {
    const GArray *bar = bars->pdata[b];
    for (guint k = 0; k < bar->len; k++)
      sum_m += task->length_m[g_array_index (bar, guint, k)];
  }
  return sum_m;
}

static SwCutPlan *
plan_of_stock (const Mix *mix, guint stock, int *left)
{
  SwCutTask own = *mix->task; /* borrows its lists */
  g_autoptr (GPtrArray) bars = sw_cut_bars_new ();

  for (guint j = 0; j < mix->columns->len; j++) {
    const Column *column = &g_array_index (mix->columns, Column, j);
    for (int k = column->stock == stock ? mix->times[j] : 0; k > 0; k--) {
      GArray *bar =
        take_bar (mix->task, &g_array_index (mix->patterns, int, column->first), left);
      if (bar != NULL)
        g_ptr_array_add (bars, bar);
    }
  }
  if (bars->len == 0)
    return NULL;
  own.stock_m = mix->job->stocks[stock].stock_m;
  own.pieces_m = length_of (mix->task, bars);
  return sw_cut_plan_new (NULL, &own, bars, (int) bars->len);
}

static void
free_plan_cb (gpointer plan)
{
  sw_cut_plan_free (plan);
}

static SwCutMix *
mix_new (void)
{
  SwCutMix *answer = g_new0 (SwCutMix, 1);

  answer->plans = g_ptr_array_new_with_free_func (free_plan_cb);
  answer->cost = INFINITY;
  return answer;
}

static void
add_plan (SwCutMix *answer, SwCutPlan *plan, double price)
{
  if (answer->plans->len == 0)
    answer->cost = 0;
  g_ptr_array_add (answer->plans, plan);
  answer->cost += plan->bars->len * price;
}

/* What the search found. */
static SwCutMix *
answer_of (const Mix *mix)
{
  SwCutMix *answer = mix_new ();
  g_autofree int *left = g_memdup2 (mix->task->count, mix->task->n * sizeof (int));

  for (guint stock = 0; mix->times != NULL && stock < mix->job->n_stocks; stock++) {
    SwCutPlan *plan = plan_of_stock (mix, stock, left);
    if (plan != NULL)
      add_plan (answer, plan, mix->job->stocks[stock].price);
  }
  return answer;
}

/* The cheapest of the lengths that hold every piece, alone. */
static SwCutMix *
cheapest_alone (const SwCutMixJob *job, GCancellable *cancellable, GError **error)
{
  SwCutMix *cheapest = mix_new ();

  for (gsize i = 0; i < job->n_stocks; i++) {
    g_autoptr (GError) problem = NULL;
    g_autoptr (SwCutPlan) plan = sw_cut_plan_exact (NULL,
                                                    job->stocks[i].stock_m,
                                                    job->kerf_m,
                                                    job->pieces,
                                                    job->n_pieces,
                                                    job->most_nodes,
                                                    cancellable,
                                                    &problem);
    if (g_error_matches (problem, SW_ERROR, SW_ERROR_NO_SOLUTION))
      continue; /* a piece is longer than this one */
    if (plan == NULL) {
      g_propagate_error (error, g_steal_pointer (&problem));
      sw_cut_mix_free (cheapest);
      return NULL;
    }
    if (plan->bars->len * job->stocks[i].price < cheapest->cost) {
      g_ptr_array_set_size (cheapest->plans, 0);
      add_plan (cheapest, g_steal_pointer (&plan), job->stocks[i].price);
    }
  }
  return cheapest;
}

/* Material at its cheapest: no mix costs less. */
static double
material_bound (const SwCutMixJob *job, const SwCutTask *task)
{
  double need_um = 0, least = INFINITY;

  for (guint i = 0; i < task->n; i++)
    need_um += (double) task->need_um[i] * task->count[i];
  for (gsize i = 0; i < job->n_stocks; i++)
    least = MIN (least, job->stocks[i].price / (job->stocks[i].stock_m + job->kerf_m));
  return need_um * 1e-6 * least;
}

static gboolean
search (Mix *mix, GError **error)
{
  gboolean listed = TRUE;

  for (guint stock = 0; listed && stock < mix->job->n_stocks; stock++)
    listed = list_patterns (mix, stock);
  if (!listed || mix->columns->len == 0)
    return TRUE;
  if (!sw_glpk_run (work_cb, mix, error))
    return FALSE;
  return !mix->cancelled || !g_cancellable_set_error_if_cancelled (mix->cancellable, error);
}

static void
mix_clear (Mix *mix)
{
  sw_cut_task_free (mix->task);
  g_array_unref (mix->columns);
  g_array_unref (mix->patterns);
  g_free (mix->rows);
  g_free (mix->cells);
  g_free (mix->times);
}

static SwCutMix *
better_of (SwCutMix *a, SwCutMix *b, double bound)
{
  SwCutMix *better = a->cost <= b->cost ? a : b;

  sw_cut_mix_free (better == a ? b : a);
  better->bound = MIN (bound, better->cost);
  better->optimal = better->cost - bound <= EPSILON * better->cost;
  return better;
}

SwCutMix *
sw_cut_mix_new (const SwCutMixJob *job, GCancellable *cancellable, GError **error)
{
  g_return_val_if_fail (job->n_stocks > 0, NULL);
  SwCutTask *task =
    check_prices (job, error) ? task_out_of (job, longest_stock (job), error) : NULL;
  SwCutMix *alone = task == NULL ? NULL : cheapest_alone (job, cancellable, error);
  SwCutMix *answer = NULL;

  if (alone == NULL) {
    sw_cut_task_free (task);
    return NULL;
  }
  Mix mix = { .job = job,
              .cancellable = cancellable,
              .task = task,
              .columns = g_array_new (FALSE, FALSE, sizeof (Column)),
              .patterns = g_array_new (FALSE, FALSE, sizeof (int)),
              .rows = g_new0 (int, task->n + 1),
              .cells = g_new0 (double, task->n + 1),
              .bound = material_bound (job, task) };
  if (search (&mix, error))
    answer = better_of (answer_of (&mix), alone, mix.bound);
  else
    sw_cut_mix_free (alone);
  mix_clear (&mix);
  return answer;
}

void
sw_cut_mix_free (SwCutMix *mix)
{
  if (mix == NULL)
    return;
  g_ptr_array_unref (mix->plans);
  g_free (mix);
}

guint
sw_cut_mix_bars (const SwCutMix *mix)
{
  guint bars = 0;

  for (guint i = 0; i < mix->plans->len; i++)
    bars += ((const SwCutPlan *) mix->plans->pdata[i])->bars->len;
  return bars;
}
