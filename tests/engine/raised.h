// SPDX-License-Identifier: GPL-3.0-or-later
/* raised.h: what a solution has among its findings. */
#pragma once
#include "solve.h"

/* Returns: (nullable): the finding with that code. */
static inline const SwFinding *
find_finding (const SwSolution *solution, const char *code)
{
  for (guint i = 0; i < solution->findings->len; i++) {
    const SwFinding *finding = &g_array_index (solution->findings, SwFinding, i);
    if (strcmp (finding->code, code) == 0)
      return finding;
  }
  return NULL;
}

static inline const SwFinding *
expect_finding (const SwSolution *solution, const char *code)
{
  const SwFinding *finding = find_finding (solution, code);

  if (finding == NULL)
    g_error ("no %s", code);
  return finding;
}
