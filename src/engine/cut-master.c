// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-master.h"

#include "engine/cut-patterns.h"
#include "engine/error.h"
#include "engine/glpk-guard.h"

#include <glpk.h>
#include <math.h>
#include <string.h>

/* Invariants: everything a longjmp out of GLPK would leave behind is owned by Master. A column
 * of the model is the pattern of the same place, row i the i-th length.
 */

#define MOST_PATTERNS 5000 /* to be listed one by one */
#define MOST_ROUNDS 20000  /* of pricing */
#define EPSILON 1e-6 /* a sum of doubles this little above a whole number is that number */

typedef struct {
  SwCutQuestion *question;
  GArray *patterns;     /* owned: int, n a pattern */
  gboolean complete;    /* every maximal pattern is among them */
  SwKnapsack *knapsack; /* owned */
  int *rows;            /* owned: n + 2, as GLPK counts, from 1 */
  double *cells;        /* owned: n + 2 */
  double *price;        /* owned: n */
  int *left;            /* owned: n; still wanted */
  int *fresh;           /* owned: n; a new pattern */
  GPtrArray *trial;     /* owned, nullable: bars being put together */
  GArray *times;        /* owned: int, how often each pattern is taken */
  glp_prob *model;      /* of GLPK's environment, which the guard throws away */
  int nodes;
  double tree_bound; /* of the search tree when it was broken off */
  gboolean cancelled;
  int failure; /* of a GLPK routine; 0 = none */
} Master;

static guint
n_patterns (const Master *master)
{
  return master->patterns->len / master->question->task->n;
}

static const int *
pattern_at (const Master *master, guint j)
{
  return &g_array_index (master->patterns, int, j * master->question->task->n);
}

static gboolean
is_cancelled (Master *master)
{
  master->cancelled =
    master->cancelled || g_cancellable_is_cancelled (master->question->cancellable);
  return master->cancelled;
}

static void
add_column (Master *master, guint j)
{
  const SwCutTask *task = master->question->task;
  const int *pattern = pattern_at (master, j);
  int column = glp_add_cols (master->model, 1), length = 0;

  for (guint i = 0; i < task->n; i++) {
    if (pattern[i] == 0)
      continue;
    length++;
    master->rows[length] = (int) i + 1;
    master->cells[length] = pattern[i];
  }
  glp_set_mat_col (master->model, column, length, master->rows, master->cells);
  glp_set_col_bnds (master->model, column, GLP_LO, 0, 0);
  glp_set_obj_coef (master->model, column, 1);
}

static void
build_model (Master *master)
{
  const SwCutTask *task = master->question->task;

  master->model = glp_create_prob ();
  glp_set_obj_dir (master->model, GLP_MIN);
  glp_add_rows (master->model, (int) task->n);
  for (guint i = 0; i < task->n; i++)
    glp_set_row_bnds (master->model, (int) i + 1, GLP_LO, task->count[i], 0);
  for (guint j = 0; j < n_patterns (master); j++)
    add_column (master, j);
}

static gboolean
solve_linear (Master *master)
{
  glp_smcp how;

  glp_init_smcp (&how);
  how.msg_lev = GLP_MSG_OFF;
  master->failure = glp_simplex (master->model, &how);
  return master->failure == 0 && glp_get_status (master->model) == GLP_OPT;
}

static void
raise_bound (Master *master, double linear)
{
  int whole = (int) ceil (linear - EPSILON);

  master->question->bound = MAX (master->question->bound, whole);
}

static gboolean
is_settled (const Master *master)
{
  return (int) master->question->bars->len <= master->question->bound;
}

static void
read_prices (Master *master)
{
  for (guint i = 0; i < master->question->task->n; i++)
    master->price[i] = MAX (0, glp_get_row_dual (master->model, (int) i + 1));
}

static double
worth_of_all (const Master *master)
{
  const SwCutTask *task = master->question->task;
  double worth = 0;

  for (guint i = 0; i < task->n; i++)
    worth += master->price[i] * task->count[i];
  return worth;
}

static double
worth_of (const Master *master, const int *pattern)
{
  double worth = 0;

  for (guint i = 0; i < master->question->task->n; i++)
    worth += master->price[i] * pattern[i];
  return worth;
}

/* One round of pricing. Returns: TRUE when a pattern was added. */
static gboolean
price_pattern (Master *master)
{
  read_prices (master);
  double most = sw_knapsack_solve (master->knapsack, master->price, master->fresh);

  raise_bound (master, worth_of_all (master) / MAX (most, 1));
  if (worth_of (master, master->fresh) <= 1 + EPSILON)
    return FALSE;
  g_array_append_vals (master->patterns, master->fresh, master->question->task->n);
  add_column (master, n_patterns (master) - 1);
  return TRUE;
}

/* Returns: TRUE with the model at its linear optimum and the bound raised. */
static gboolean
solve_relaxation (Master *master)
{
  gboolean solved = solve_linear (master);

  if (solved && master->complete)
    raise_bound (master, glp_get_obj_val (master->model));
  for (int round = 0; solved && !master->complete && round < MOST_ROUNDS; round++) {
    if (is_cancelled (master))
      return FALSE;
    if (!price_pattern (master))
      break;
    solved = solve_linear (master);
  }
  return solved;
}

static void
add_bar (Master *master, GPtrArray *bars, const int *pattern)
{
  GArray *bar = g_array_new (FALSE, FALSE, sizeof (guint));

  for (guint i = 0; i < master->question->task->n; i++) {
    for (int k = MIN (pattern[i], master->left[i]); k > 0; k--) {
      g_array_append_val (bar, i);
      master->left[i]--;
    }
  }
  if (bar->len > 0)
    g_ptr_array_add (bars, bar);
  else
    g_array_unref (bar);
}

static void
read_times (Master *master, double (*value) (glp_prob *, int), double round_up_from)
{
  g_array_set_size (master->times, n_patterns (master));
  for (guint j = 0; j < n_patterns (master); j++) {
    double times = value (master->model, (int) j + 1);
    g_array_index (master->times, int, j) = (int) floor (times + 1 - round_up_from);
  }
}

static void
keep_if_better (SwCutQuestion *question, GPtrArray **trial)
{
  if ((*trial)->len < question->bars->len) {
    GPtrArray *worse = question->bars;
    question->bars = *trial;
    *trial = worse;
  }
  g_clear_pointer (trial, g_ptr_array_unref);
}

/* Takes each pattern as often as a solution of the model says, and first fit for what is then
 * still wanted.
 */
static void
take_plan (Master *master, double (*value) (glp_prob *, int), double round_up_from)
{
  const SwCutTask *task = master->question->task;

  read_times (master, value, round_up_from);
  master->trial = sw_cut_bars_new ();
  memcpy (master->left, task->count, task->n * sizeof (int));
  for (guint j = 0; j < n_patterns (master); j++) {
    for (int k = g_array_index (master->times, int, j); k > 0; k--)
      add_bar (master, master->trial, pattern_at (master, j));
  }
  sw_cut_bars_first_fit (master->trial, task, master->left);
  keep_if_better (master->question, &master->trial);
}

/* The linear optimum rounded at several places: often as good as the bound already. */
static void
try_roundings (Master *master)
{
  static const double from[] = { 1, 0.8, 0.6, 0.5, 0.4 };

  for (guint k = 0; k < G_N_ELEMENTS (from) && !is_settled (master); k++)
    take_plan (master, glp_get_col_prim, from[k] - EPSILON);
}

static void
tree_cb (glp_tree *tree, void *info)
{
  Master *master = info;
  int best = glp_ios_best_node (tree);

  glp_ios_tree_size (tree, NULL, NULL, &master->nodes);
  if (best != 0)
    master->tree_bound = glp_ios_node_bound (tree, best);
  if (is_cancelled (master) || master->nodes > master->question->most_nodes)
    glp_ios_terminate (tree);
}

/* Only plans better than the one at hand and no better than the bound are looked for. */
static void
add_limits (Master *master)
{
  const SwCutQuestion *question = master->question;
  int row = glp_add_rows (master->model, 1);

  glp_set_row_bnds (master->model, row, GLP_DB, question->bound, question->bars->len - 0.5);
  for (int j = 1; j <= (int) n_patterns (master); j++) {
    int length = glp_get_mat_col (master->model, j, master->rows, master->cells) + 1;
    master->rows[length] = row;
    master->cells[length] = 1;
    glp_set_mat_col (master->model, j, length, master->rows, master->cells);
    glp_set_col_kind (master->model, j, GLP_IV);
  }
}

/* What the finished or broken-off search has shown. */
static void
read_tree (Master *master)
{
  int status = glp_mip_status (master->model);
  gboolean finished = master->failure == 0;

  if (status == GLP_OPT || status == GLP_FEAS)
    take_plan (master, glp_mip_col_val, 0.5);
  if (!master->complete)
    return;
  if (finished && (status == GLP_OPT || status == GLP_NOFEAS))
    master->question->bound = (int) master->question->bars->len;
  else if (master->tree_bound > 0)
    raise_bound (master, MIN (master->tree_bound, master->question->bars->len));
}

static void
search_tree (Master *master)
{
  glp_iocp how;

  add_limits (master);
  if (!solve_linear (master)) {
    master->failure = 0;
    return;
  }
  glp_init_iocp (&how);
  how.msg_lev = GLP_MSG_OFF;
  how.cb_func = tree_cb;
  how.cb_info = master;
  master->failure = glp_intopt (master->model, &how);
  read_tree (master);
  if (master->failure == GLP_ESTOP)
    master->failure = 0;
}

static void
work_cb (gpointer data)
{
  Master *master = data;

  build_model (master);
  if (!solve_relaxation (master))
    return;
  try_roundings (master);
  if (!is_settled (master) && !is_cancelled (master))
    search_tree (master);
}

/* What first fit found, and each length alone: enough to start pricing from. */
static GArray *
first_patterns (const SwCutQuestion *question)
{
  const SwCutTask *task = question->task;
  GArray *patterns = g_array_new (FALSE, FALSE, sizeof (int));
  g_autofree int *pattern = g_new0 (int, task->n);

  for (guint i = 0; i < task->n; i++) {
    memset (pattern, 0, task->n * sizeof (int));
    pattern[i] = (int) MIN (task->room_um / task->need_um[i], task->count[i]);
    g_array_append_vals (patterns, pattern, task->n);
  }
  return patterns;
}

static void
master_init (Master *master, SwCutQuestion *question)
{
  const SwCutTask *task = question->task;

  *master = (Master){ .question = question };
  master->patterns = sw_cut_patterns_all (task, MOST_PATTERNS);
  master->complete = master->patterns != NULL;
  if (!master->complete)
    master->patterns = first_patterns (question);
  master->knapsack = sw_knapsack_new (task);
  master->rows = g_new0 (int, task->n + 2);
  master->cells = g_new0 (double, task->n + 2);
  master->price = g_new0 (double, task->n);
  master->left = g_new0 (int, task->n);
  master->fresh = g_new0 (int, task->n);
  master->times = g_array_new (FALSE, FALSE, sizeof (int));
}

static void
master_clear (Master *master)
{
  g_clear_pointer (&master->patterns, g_array_unref);
  g_clear_pointer (&master->knapsack, sw_knapsack_free);
  g_clear_pointer (&master->rows, g_free);
  g_clear_pointer (&master->cells, g_free);
  g_clear_pointer (&master->price, g_free);
  g_clear_pointer (&master->left, g_free);
  g_clear_pointer (&master->fresh, g_free);
  g_clear_pointer (&master->trial, g_ptr_array_unref);
  g_clear_pointer (&master->times, g_array_unref);
}

gboolean
sw_cut_master_solve (SwCutQuestion *question, GError **error)
{
  Master master;

  g_return_val_if_fail (question->task->n > 0, FALSE);
  master_init (&master, question);
  gboolean done = sw_glpk_run (work_cb, &master, error);
  if (done && master.cancelled)
    done = !g_cancellable_set_error_if_cancelled (question->cancellable, error);
  if (done && master.failure != 0) {
    g_set_error (error, SW_ERROR, SW_ERROR_NUMERIC, "GLPK gave up: code %d", master.failure);
    done = FALSE;
  }
  master_clear (&master);
  return done;
}
