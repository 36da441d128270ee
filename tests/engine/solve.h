// SPDX-License-Identifier: GPL-3.0-or-later
/* solve.h: a start with some keys changed, solved, for tests that look at the whole. */
#pragma once
#include "engine/design-file.h"
#include "engine/design-keys.h"
#include "engine/solution.h"
#include "engine/starts.h"

#include <string.h>

/* "strip.pixels=60; power.feed=both": values hold no "; ". Returns: (transfer full). */
static inline SwDesign *
design_with (const char *start, const char *sets)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) begun = sw_start_new (start, &error);
  g_auto (GStrv) all = g_strsplit (sets, "; ", -1);

  g_assert_no_error (error);
  SwDesign *design = sw_design_copy (begun);
  for (guint i = 0; all[i] != NULL && *all[i] != '\0'; i++) {
    char *equals = strchr (all[i], '=');
    g_assert_nonnull (equals);
    *equals = '\0';
    sw_design_set (design, all[i], equals + 1, &error);
    g_assert_no_error (error);
  }
  return design;
}

/* Returns: (transfer full). */
static inline SwSolution *
solve_design (SwDesign *design)
{
  g_autoptr (GError) error = NULL;
  SwSolution *solution = sw_solution_new (design, sw_catalogue_builtin (NULL), &error);

  g_assert_no_error (error);
  return solution;
}

/* Returns: (transfer full). */
static inline SwSolution *
solve_with (const char *start, const char *sets)
{
  g_autoptr (SwDesign) design = design_with (start, sets);

  return solve_design (design);
}
