// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/error.h"
#include "engine/glpk-guard.h"

#include <glpk.h>
#include <string.h>

static void
misuse_cb (gpointer data)
{
  glp_prob *model = glp_create_prob ();

  glp_set_obj_coef (model, 7, 1); /* there is no column 7 */
  *(gboolean *) data = TRUE;
}

static void
use_cb (gpointer data)
{
  glp_prob *model = glp_create_prob ();

  glp_add_cols (model, 2);
  *(int *) data = glp_get_num_cols (model);
}

static void
test_misuse_is_an_error (void)
{
  g_autoptr (GError) error = NULL;
  gboolean reached = FALSE;

  g_assert_false (sw_glpk_run (misuse_cb, &reached, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_NUMERIC);
  g_assert_nonnull (strstr (error->message, "glp_set_obj_coef"));
  g_assert_null (strchr (error->message, '\n'));
  g_assert_false (reached);
}

static void
test_works_after_an_error (void)
{
  g_autoptr (GError) error = NULL;
  int columns = 0;
  gboolean reached = FALSE;

  g_assert_false (sw_glpk_run (misuse_cb, &reached, NULL));
  g_assert_true (sw_glpk_run (use_cb, &columns, &error));
  g_assert_no_error (error);
  g_assert_cmpint (columns, ==, 2);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/glpk-guard/misuse is an error, not the end",
                   test_misuse_is_an_error);
  g_test_add_func ("/engine/glpk-guard/works after an error", test_works_after_an_error);
  return g_test_run ();
}
