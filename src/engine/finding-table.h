// SPDX-License-Identifier: GPL-3.0-or-later
/* finding-table.h: one row a finding; findings.c walks them. */
#pragma once
#include "engine/solution.h"

typedef struct {
  SwLevel level;
  const char *code;
  const char *key;      /* the file key it is about */
  const char *sentence; /* N_(): with {names} of values */
  /* Whether the solution has it; fills values and a remedy. */
  gboolean (*test) (const SwSolution *solution, SwFinding *finding);
} SwFindingRow;

extern const SwFindingRow sw_finding_rows[];
extern const guint sw_n_finding_rows;
