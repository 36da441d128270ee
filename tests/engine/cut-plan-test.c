// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-plan.h"
#include "engine/error.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define MOST_TYPES 14

typedef struct {
  const char *claim;
  double stock, kerf;
  int first_fit, exact;       /* bars; first_fit 0 = not published */
  SwPiece pieces[MOST_TYPES]; /* up to a count of 0 */
} Case;

/* Sources
 * 73      the instance of the "Cutting stock problem" article of Wikipedia (paper machine,
 *         5600 mm), whose optimum is given there with its waste of 0.401 %
 * 453     Chvátal, Linear Programming (1983), chapter 13
 * 5, 3, 7 pipe and tree sets of our own, optimum by glpsol 5.0 (GLPK's own program, pattern
 *         model written apart from this code)
 * kerf    worked by hand: four quarters fill a bar only when the saw takes nothing
 * 11      of our own; glpsol 5.0. First fit needs 12, and so does every rounding of the linear
 *         solution tried here: the search tree must find it
 */
static const Case cases[] = {
  { "a published instance, 73",
    5600,
    0,
    82,
    73,
    { { 1380, 22 },
      { 1520, 25 },
      { 1560, 12 },
      { 1710, 14 },
      { 1820, 18 },
      { 1880, 18 },
      { 1930, 20 },
      { 2000, 10 },
      { 2050, 12 },
      { 2100, 14 },
      { 2140, 16 },
      { 2150, 18 },
      { 2200, 20 } } },
  { "Chvatal's instance, 453",
    100,
    0,
    485,
    453,
    { { 45, 97 }, { 36, 610 }, { 31, 395 }, { 14, 211 } } },
  { "pipe with a kerf, 5",
    3.048,
    0.003,
    6,
    5,
    { { 1.830, 4 }, { 0.960, 3 }, { 0.450, 6 }, { 0.355, 4 } } },
  { "pipe with a kerf, 3",
    3.048,
    0.003,
    4,
    3,
    { { 0.960, 4 }, { 0.600, 6 }, { 0.450, 2 }, { 0.300, 2 } } },
  { "a tree set, 7",
    3.048,
    0.003,
    7,
    7,
    { { 2.095, 3 }, { 1.240, 4 }, { 0.940, 4 }, { 0.600, 6 } } },
  { "four quarters without a kerf", 3.048, 0, 1, 1, { { 0.762, 4 } } },
  { "four quarters with a kerf", 3.048, 0.003, 2, 2, { { 0.762, 4 } } },
  { "one piece of the whole bar", 6.4, 0.003, 1, 1, { { 6.4, 1 } } },
  { "equal lengths given apart", 1, 0, 1, 1, { { 0.25, 1 }, { 0.5, 1 }, { 0.25, 1 } } },
  { "one that only the tree solves",
    6,
    0.003,
    12,
    11,
    { { 1.189, 5 },
      { 3.177, 3 },
      { 2.049, 8 },
      { 3.4, 3 },
      { 0.914, 4 },
      { 1.427, 4 },
      { 2.309, 5 } } },
};

static gsize
n_pieces_of (const Case *c)
{
  gsize n = 0;

  while (n < MOST_TYPES && c->pieces[n].count > 0)
    n++;
  return n;
}

static double
bar_used (const GArray *bar, double kerf)
{
  double used = -kerf;

  for (guint k = 0; k < bar->len; k++) {
    double piece = g_array_index (bar, double, k);
    used += piece + kerf;
    if (k > 0)
      g_assert_cmpfloat (piece, <=, g_array_index (bar, double, k - 1));
  }
  return used;
}

static int
times_in_plan (const SwCutPlan *plan, double length)
{
  int times = 0;

  for (guint b = 0; b < plan->bars->len; b++) {
    const GArray *bar = plan->bars->pdata[b];
    for (guint k = 0; k < bar->len; k++)
      times += fabs (g_array_index (bar, double, k) - length) < 1e-7;
  }
  return times;
}

/* That every piece is there as often as wanted, and every bar can be cut. */
static void
check_plan (const SwCutPlan *plan, const SwPiece *pieces, gsize n)
{
  double sum = 0;

  for (guint b = 0; b < plan->bars->len; b++)
    g_assert_cmpfloat (bar_used (plan->bars->pdata[b], plan->kerf_m), <=, plan->stock_m + 1e-9);
  for (gsize i = 0; i < n; i++) {
    int wanted = 0;
    for (gsize j = 0; j < n; j++)
      wanted += fabs (pieces[j].length_m - pieces[i].length_m) < 1e-7 ? pieces[j].count : 0;
    g_assert_cmpint (times_in_plan (plan, pieces[i].length_m), ==, wanted);
    sum += pieces[i].count * pieces[i].length_m;
  }
  g_assert_cmpfloat_with_epsilon (plan->waste_m, plan->bars->len * plan->stock_m - sum, 1e-8);
  g_assert_cmpint (plan->bound, <=, (int) plan->bars->len);
  g_assert_cmpint (plan->optimal, ==, plan->bound == (int) plan->bars->len);
}

static SwCutPlan *
exact (const Case *c, int most_nodes)
{
  g_autoptr (GError) error = NULL;
  gsize n = n_pieces_of (c);
  SwCutPlan *plan =
    sw_cut_plan_exact ("id", c->stock, c->kerf, c->pieces, n, most_nodes, NULL, &error);

  g_assert_no_error (error);
  check_plan (plan, c->pieces, n);
  return plan;
}

static void
test_case (gconstpointer data)
{
  const Case *c = data;
  gsize n = n_pieces_of (c);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCutPlan) quick =
    sw_cut_plan_first_fit ("id", c->stock, c->kerf, c->pieces, n, &error);
  g_autoptr (SwCutPlan) best = exact (c, 0);

  g_assert_no_error (error);
  check_plan (quick, c->pieces, n);
  g_assert_cmpint ((int) quick->bars->len, ==, c->first_fit);
  g_assert_cmpint ((int) best->bars->len, ==, c->exact);
  g_assert_true (best->optimal);
  g_assert_cmpstr (best->stock, ==, "id");
}

static const Case *
last_case (void)
{
  return &cases[G_N_ELEMENTS (cases) - 1];
}

static void
test_node_limit_shows_its_gap (void)
{
  g_autoptr (SwCutPlan) plan = exact (last_case (), 1);

  g_assert_false (plan->optimal);
  g_assert_cmpint ((int) plan->bars->len, ==, 12);
  g_assert_cmpint (plan->bound, ==, 11);
}

static void
test_nothing_needs_no_bar (void)
{
  g_autoptr (GError) error = NULL;
  SwPiece none = { 1, 0 };
  g_autoptr (SwCutPlan) plan = sw_cut_plan_exact (NULL, 2, 0, &none, 1, 0, NULL, &error);
  g_autoptr (SwCutPlan) empty = sw_cut_plan_exact (NULL, 2, 0, NULL, 0, 0, NULL, &error);

  g_assert_no_error (error);
  g_assert_cmpuint (plan->bars->len, ==, 0);
  g_assert_cmpuint (empty->bars->len, ==, 0);
  g_assert_true (plan->optimal);
}

/* Tenths do not add up in binary: what is left of a full bar is nothing, not −4·10⁻¹⁶ m. */
static void
test_no_waste_is_never_below_nothing (void)
{
  static const struct {
    double stock;
    SwPiece piece;
  } full[] = { { 0.3, { 0.1, 3 } }, { 0.7, { 0.1, 7 } }, { 2.1, { 0.7, 3 } } };

  for (guint i = 0; i < G_N_ELEMENTS (full); i++) {
    g_autoptr (SwCutPlan) plan =
      sw_cut_plan_exact (NULL, full[i].stock, 0, &full[i].piece, 1, 0, NULL, NULL);
    g_assert_cmpuint (plan->bars->len, ==, 1);
    g_assert_cmpfloat (plan->waste_m, >=, 0);
    g_assert_cmpfloat (plan->waste_m, <, 1e-12);
    g_assert_false (signbit (plan->waste_m));
  }
}

static void
test_thousands_of_pieces (void)
{
  g_autoptr (GError) error = NULL;
  SwPiece pieces[] = { { 2.1, 4000 }, { 1.3, 3500 }, { 0.77, 5000 }, { 0.41, 2500 } };
  g_autoptr (SwCutPlan) plan = sw_cut_plan_exact (NULL, 6, 0.003, pieces, 4, 0, NULL, &error);

  g_assert_no_error (error);
  check_plan (plan, pieces, G_N_ELEMENTS (pieces));
  g_assert_true (plan->optimal);
}

/* 60 lengths have far more patterns than are listed: they are priced. A plan is then as good
 * as its bound, or says that it does not know.
 */
static void
test_many_lengths (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GRand) rand = g_rand_new_with_seed (60);
  SwPiece pieces[60];

  for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
    pieces[i] =
      (SwPiece){ g_rand_int_range (rand, 300, 3000) / 1000.0, g_rand_int_range (rand, 1, 40) };
  g_autoptr (SwCutPlan) plan = sw_cut_plan_exact (NULL, 6, 0.003, pieces, 60, 0, NULL, &error);
  g_assert_no_error (error);
  check_plan (plan, pieces, G_N_ELEMENTS (pieces));
  g_assert_cmpint ((int) plan->bars->len - plan->bound, <=, 1);
}

static const struct {
  const char *claim;
  double stock, kerf;
  SwPiece piece;
  int code;
  const char *words;
} refusals[] = {
  { "a piece longer than the stock",
    3,
    0.003,
    { 3.1, 1 },
    SW_ERROR_NO_SOLUTION,
    "piece: 3.1 m is longer than the stock of 3 m" },
  { "a stock of nothing", 0, 0.003, { 1, 1 }, SW_ERROR_RANGE, "stock: 0 m is outside" },
  { "a stock that is no number", NAN, 0, { 1, 1 }, SW_ERROR_RANGE, "stock: nan m is outside" },
  { "a kerf below nothing", 3, -0.1, { 1, 1 }, SW_ERROR_RANGE, "kerf: -0.1 m is outside" },
  { "an endless kerf", 3, INFINITY, { 1, 1 }, SW_ERROR_RANGE, "kerf: inf m is outside" },
  { "a piece of nothing", 3, 0, { 0, 1 }, SW_ERROR_RANGE, "piece: 0 m is outside" },
  { "a piece less than never", 3, 0, { 1, -1 }, SW_ERROR_RANGE, "piece: -1 of 1 m" },
  { "too many pieces", 3, 0, { 1, 2000000 }, SW_ERROR_RANGE, "piece: 2000000 of 1 m" },
};

static void
test_refusal (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCutPlan) plan = sw_cut_plan_exact (NULL,
                                                  refusals[i].stock,
                                                  refusals[i].kerf,
                                                  &refusals[i].piece,
                                                  1,
                                                  0,
                                                  NULL,
                                                  &error);

  g_assert_null (plan);
  g_assert_error (error, SW_ERROR, refusals[i].code);
  g_assert_true (g_str_has_prefix (error->message, refusals[i].words));
}

static void
test_cancelled_before (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  SwPiece piece = { 1, 1 };

  g_cancellable_cancel (cancellable);
  g_assert_null (sw_cut_plan_exact (NULL, 3, 0, &piece, 1, 0, cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static gpointer
cancel_cb (gpointer cancellable)
{
  g_usleep (100000);
  g_cancellable_cancel (cancellable);
  return NULL;
}

/* Without the cancel this search has no end in sight: 40 lengths near a third of the bar. */
static void
test_cancelled_on_the_way (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();
  g_autoptr (GRand) rand = g_rand_new_with_seed (17);
  SwPiece pieces[40];

  for (guint i = 0; i < G_N_ELEMENTS (pieces); i++)
    pieces[i] = (SwPiece){ (int) (6000 * g_rand_double_range (rand, 0.1, 0.5)) / 1000.0,
                           g_rand_int_range (rand, 1, 4) };
  GThread *thread = g_thread_new ("cancel", cancel_cb, cancellable);
  g_autoptr (SwCutPlan) plan =
    sw_cut_plan_exact (NULL, 6, 0.003, pieces, 40, G_MAXINT, cancellable, &error);
  g_thread_join (thread);
  g_assert_null (plan);
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

static gpointer
solve_cb (gpointer data)
{
  g_autoptr (SwCutPlan) plan = exact (data, 0);

  return GUINT_TO_POINTER (plan->bars->len);
}

static void
test_threads_do_not_meet (void)
{
  GThread *threads[8];
  const guint n = G_N_ELEMENTS (threads);

  for (guint i = 0; i < n; i++)
    threads[i] = g_thread_new ("cut", solve_cb, (gpointer) (guintptr) &cases[i % 4]);
  for (guint i = 0; i < n; i++)
    g_assert_cmpuint (GPOINTER_TO_UINT (g_thread_join (threads[i])), ==, cases[i % 4].exact);
}

/* An instance as glpsol gets it: all ways to cut a bar, listed by plain recursion in
 * millimetres, as a model in CPLEX LP format.
 */
typedef struct {
  int n, stock_mm, kerf_mm;
  int length_mm[8], count[8];
  int way[8];
  int n_ways;
  GString *rows[8]; /* owned */
  GString *sum;     /* owned */
} Model;

static void
list_ways (Model *model, int i, int left_mm)
{
  if (i == model->n) {
    g_string_append_printf (model->sum, " + x%d\n", model->n_ways);
    for (int k = 0; k < model->n; k++) {
      if (model->way[k] > 0)
        g_string_append_printf (model->rows[k], " + %d x%d\n", model->way[k], model->n_ways);
    }
    model->n_ways++;
    return;
  }
  for (int k = 0; k * (model->length_mm[i] + model->kerf_mm) <= left_mm; k++) {
    model->way[i] = k;
    list_ways (model, i + 1, left_mm - k * (model->length_mm[i] + model->kerf_mm));
  }
}

static char *
model_text (Model *model)
{
  model->sum = g_string_new ("Minimize\n obj:\n");
  for (int i = 0; i < model->n; i++)
    model->rows[i] = g_string_new (NULL);
  list_ways (model, 0, model->stock_mm + model->kerf_mm);
  g_string_append (model->sum, "Subject To\n");
  for (int i = 0; i < model->n; i++) {
    g_string_append_printf (model->sum,
                            " r%d:\n%s >= %d\n",
                            i,
                            model->rows[i]->str,
                            model->count[i]);
    g_string_free (model->rows[i], TRUE);
  }
  g_string_append (model->sum, "General\n");
  for (int j = 0; j < model->n_ways; j++)
    g_string_append_printf (model->sum, " x%d\n", j);
  g_string_append (model->sum, "End\n");
  return g_string_free (model->sum, FALSE);
}

/* Solution line of glpsol's own format: "s mip ROWS COLUMNS o OBJECTIVE". */
static int
read_objective (const char *text)
{
  const char *line = strstr (text, "s mip ");
  int rows = 0, columns = 0, objective = -1;
  char status = ' ';

  g_assert_nonnull (line);
  g_assert_cmpint (sscanf (line, "s mip %d %d %c %d", &rows, &columns, &status, &objective),
                   ==,
                   4);
  g_assert_cmpint (status, ==, 'o');
  return objective;
}

static int
ask_glpsol (const char *glpsol, Model *model)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *dir = g_dir_make_tmp ("cut-XXXXXX", &error);
  g_autofree char *in = g_build_filename (dir, "model.lp", NULL);
  g_autofree char *out = g_build_filename (dir, "answer", NULL);
  g_autofree char *text = model_text (model), *answer = NULL, *chatter = NULL;
  const char *argv[] = { glpsol, "--lp", in, "--write", out, NULL };

  g_assert_true (g_file_set_contents (in, text, -1, &error));
  g_assert_true (g_spawn_sync (NULL,
                               (char **) (guintptr) argv,
                               NULL,
                               G_SPAWN_DEFAULT,
                               NULL,
                               NULL,
                               &chatter,
                               NULL,
                               NULL,
                               &error));
  g_assert_true (g_file_get_contents (out, &answer, NULL, &error));
  g_unlink (in);
  g_unlink (out);
  g_rmdir (dir);
  return read_objective (answer);
}

static void
compare_with_glpsol (const char *glpsol, guint32 seed)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (seed);
  g_autoptr (GError) error = NULL;
  Model model = { .n = g_rand_int_range (rand, 2, 7), .stock_mm = 3048, .kerf_mm = 3 };
  SwPiece pieces[8];

  for (int i = 0; i < model.n; i++) {
    model.length_mm[i] = g_rand_int_range (rand, 350, 2000);
    model.count[i] = g_rand_int_range (rand, 1, 9);
    pieces[i] = (SwPiece){ model.length_mm[i] / 1000.0, model.count[i] };
  }
  g_autoptr (SwCutPlan) plan =
    sw_cut_plan_exact (NULL, 3.048, 0.003, pieces, (gsize) model.n, 0, NULL, &error);
  g_assert_no_error (error);
  check_plan (plan, pieces, (gsize) model.n);
  g_assert_true (plan->optimal);
  g_assert_cmpint ((int) plan->bars->len, ==, ask_glpsol (glpsol, &model));
}

static void
test_as_glpsol_says (void)
{
  g_autofree char *glpsol = g_find_program_in_path ("glpsol");

  if (glpsol == NULL) {
    g_test_message ("not run here: no glpsol (package glpk-utils)");
    return;
  }
  for (guint32 seed = 1; seed <= 30; seed++)
    compare_with_glpsol (glpsol, seed);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *path = g_strdup_printf ("/engine/cut-plan/%s", cases[i].claim);
    g_test_add_data_func (path, &cases[i], test_case);
  }
  for (guint i = 0; i < G_N_ELEMENTS (refusals); i++) {
    g_autofree char *path = g_strdup_printf ("/engine/cut-plan/refuses/%s", refusals[i].claim);
    g_test_add_data_func (path, GUINT_TO_POINTER (i), test_refusal);
  }
  g_test_add_func ("/engine/cut-plan/a node limit shows its gap",
                   test_node_limit_shows_its_gap);
  g_test_add_func ("/engine/cut-plan/nothing needs no bar", test_nothing_needs_no_bar);
  g_test_add_func ("/engine/cut-plan/no waste is never below nothing",
                   test_no_waste_is_never_below_nothing);
  g_test_add_func ("/engine/cut-plan/thousands of pieces", test_thousands_of_pieces);
  g_test_add_func ("/engine/cut-plan/many lengths are priced", test_many_lengths);
  g_test_add_func ("/engine/cut-plan/cancelled before", test_cancelled_before);
  g_test_add_func ("/engine/cut-plan/cancelled on the way", test_cancelled_on_the_way);
  g_test_add_func ("/engine/cut-plan/threads do not meet", test_threads_do_not_meet);
  g_test_add_func ("/engine/cut-plan/thirty instances as glpsol says", test_as_glpsol_says);
  return g_test_run ();
}
