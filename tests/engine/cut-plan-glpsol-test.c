// SPDX-License-Identifier: GPL-3.0-or-later
/* cut-plan-glpsol-test.c: published cutting questions and some of our own, written out as whole
 * models and answered by glpsol, GLPK's own program: every way to fill a bar is a column, each
 * length a row. None of it is shared with the code under test.
 */
#include "engine/cut-mix.h"

#include <gio/gio.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

#define MOST_TYPES 14

#define MOST_STOCKS 3

typedef struct {
  double stock, kerf;
  SwPiece pieces[MOST_TYPES]; /* up to a count of 0 */
} Case;

/* The first: paper machine of the "Cutting stock problem" article of Wikipedia. The second:
 * Chvátal, Linear Programming (1983), chapter 13. The rest are our own: pipe with a kerf, one
 * that no rounding of the linear solution answers, one that fills bars to the end. */
static const Case cases[] = {
  { 5600,
    0,
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
  { 100, 0, { { 45, 97 }, { 36, 610 }, { 31, 395 }, { 14, 211 } } },
  { 3.048, 0.003, { { 1.830, 4 }, { 0.960, 3 }, { 0.450, 6 }, { 0.355, 4 } } },
  { 6,
    0.003,
    { { 1.189, 5 },
      { 3.177, 3 },
      { 2.049, 8 },
      { 3.4, 3 },
      { 0.914, 4 },
      { 1.427, 4 },
      { 2.309, 5 } } },
  { 3.048, 0.003, { { 1.2, 5 }, { 0.9, 7 }, { 0.6, 3 }, { 0.3, 11 } } },
};

static int
types_of (const Case *c)
{
  int n = 0;

  while (n < MOST_TYPES && c->pieces[n].count > 0)
    n++;
  return n;
}

/* All ways to fill a bar to which no further piece can be added, depth first. */
typedef struct {
  const Case *c;
  int types, columns;
  double price; /* of a bar */
  int pattern[MOST_TYPES];
  GString *rows[MOST_TYPES]; /* owned: " + 2 x7" … */
  GString *costs;            /* owned: " + 4.5 x1" … */
} Model;

static void
add_column (Model *model)
{
  model->columns++;
  g_string_append_printf (model->costs, " + %.6f x%d\n", model->price, model->columns);
  for (int i = 0; i < model->types; i++) {
    if (model->pattern[i] > 0)
      g_string_append_printf (model->rows[i], " + %d x%d\n", model->pattern[i], model->columns);
  }
}

static void
fill_bar (Model *model, int type, double room)
{
  double need = model->c->pieces[type].length_m + model->c->kerf;
  int most = (int) floor (room / need + 1e-9);

  for (int count = most; count >= 0; count--) {
    model->pattern[type] = count;
    if (type + 1 < model->types)
      fill_bar (model, type + 1, room - count * need);
    else if (count == most)
      add_column (model);
  }
  model->pattern[type] = 0;
}

/* In the LP format of CPLEX, which glpsol reads. */
static char *
model_text (const Case *c, const SwStock *stocks, int n_stocks)
{
  Model model = { .c = c, .types = types_of (c), .costs = g_string_new (NULL) };

  for (int i = 0; i < model.types; i++)
    model.rows[i] = g_string_new (NULL);
  for (int stock = 0; stock < n_stocks; stock++) {
    model.price = stocks[stock].price;
    fill_bar (&model, 0, stocks[stock].stock_m + c->kerf);
  }
  g_autoptr (GString) text = g_string_new (NULL);
  g_string_append_printf (text, "Minimize\n bars: %sSubject To\n", model.costs->str);
  for (int i = 0; i < model.types; i++) {
    g_string_append_printf (text,
                            " c%d: %s >= %d\n",
                            i,
                            model.rows[i]->str,
                            c->pieces[i].count);
    g_string_free (model.rows[i], TRUE);
  }
  g_string_append (text, "General\n");
  for (int column = 1; column <= model.columns; column++)
    g_string_append_printf (text, " x%d\n", column);
  g_string_append (text, "End\n");
  g_string_free (model.costs, TRUE);
  return g_strdup (text->str);
}

/* Its answer: "Objective:  bars = 73 (MINimum)". */
static double
ask_glpsol (const char *model)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *directory = g_dir_make_tmp ("sw-cuts-XXXXXX", NULL);
  g_autofree char *input = g_build_filename (directory, "cut.lp", NULL);
  g_autofree char *output = g_build_filename (directory, "cut.sol", NULL);
  g_autofree char *answer = NULL;

  g_file_set_contents (input, model, -1, &error);
  g_assert_no_error (error);
  g_autoptr (GSubprocess) process = g_subprocess_new (G_SUBPROCESS_FLAGS_STDOUT_SILENCE,
                                                      &error,
                                                      "glpsol",
                                                      "--lp",
                                                      input,
                                                      "--cuts",
                                                      "-o",
                                                      output,
                                                      NULL);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_wait_check (process, NULL, &error));
  g_file_get_contents (output, &answer, NULL, &error);
  g_assert_no_error (error);
  g_unlink (input);
  g_unlink (output);
  g_rmdir (directory);
  g_assert_nonnull (strstr (answer, "INTEGER OPTIMAL"));
  const char *objective = strstr (answer, "Objective:  bars = ");
  g_assert_nonnull (objective);
  return g_ascii_strtod (objective + strlen ("Objective:  bars = "), NULL);
}

static void
test_bars_agree_with_glpsol (gconstpointer data)
{
  const Case *c = &cases[GPOINTER_TO_UINT (data)];
  g_autoptr (GError) error = NULL;
  SwStock bar = { c->stock, 1 };
  g_autofree char *model = model_text (c, &bar, 1);
  g_autoptr (SwCutPlan) plan = sw_cut_plan_exact (NULL,
                                                  c->stock,
                                                  c->kerf,
                                                  c->pieces,
                                                  (gsize) types_of (c),
                                                  0,
                                                  NULL,
                                                  &error);

  g_assert_no_error (error);
  g_assert_true (plan->optimal);
  g_assert_cmpfloat_with_epsilon (plan->bars->len, ask_glpsol (model), 1e-6);
}

/* The same pieces out of bars as shops sell them, each with its price: of our own. The first
 * length is the question's. */
static const SwStock shops[][MOST_STOCKS] = {
  { { 5600, 100 }, { 3800, 66 }, { 2200, 41 } },      { { 100, 7 }, { 160, 11 }, { 60, 4.5 } },
  { { 3.048, 8.5 }, { 6.096, 16 }, { 1.524, 5 } },    { { 6, 12 }, { 4, 8.5 }, { 3.5, 6.9 } },
  { { 3.048, 4.4 }, { 2.4384, 3.4 }, { 4.2672, 6 } },
};

static void
test_cost_agrees_with_glpsol (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  const Case *c = &cases[i];
  g_autoptr (GError) error = NULL;
  g_autofree char *model = model_text (c, shops[i], MOST_STOCKS);
  SwCutMixJob job = { shops[i], MOST_STOCKS, c->kerf, c->pieces, (gsize) types_of (c), 0 };
  g_autoptr (SwCutMix) mix = sw_cut_mix_new (&job, NULL, &error);

  g_assert_no_error (error);
  g_assert_true (mix->optimal);
  g_assert_cmpfloat_with_epsilon (mix->cost, ask_glpsol (model), 1e-6);
}

int
main (int argc, char **argv)
{
  g_autofree char *program = g_find_program_in_path ("glpsol");

  g_test_init (&argc, &argv, NULL);
  if (program == NULL) {
    g_print ("# not run here: glpsol is missing\n1..0\n");
    return 0;
  }
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *path = g_strdup_printf ("/engine/cut-plan-glpsol/question %u", i + 1);
    g_autofree char *mixed = g_strdup_printf ("/engine/cut-plan-glpsol/mix %u", i + 1);
    g_test_add_data_func (path, GUINT_TO_POINTER (i), test_bars_agree_with_glpsol);
    g_test_add_data_func (mixed, GUINT_TO_POINTER (i), test_cost_agrees_with_glpsol);
  }
  return g_test_run ();
}
