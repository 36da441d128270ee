// SPDX-License-Identifier: GPL-3.0-or-later
/* results.h: one row a result key: where it stands in the solution, its unit, formula and
 * source.
 *
 * The report, the text form, `basis` and the working shown in the window read these rows.
 */
#pragma once
#include "engine/solution.h"

typedef enum {
  SW_RESULT_NUMBER,
  SW_RESULT_WHOLE,
  SW_RESULT_COUNT, /* whole too, but may be absent: kept as a double */
  SW_RESULT_FLAG,
  SW_RESULT_REASON
} SwResultType;

typedef struct {
  const char *key; /* "geometry.slant_m" */
  SwResultType type;
  gsize offset;                 /* into SwSolution */
  const char *formula, *source; /* English */
} SwResult;

/* Every row, in the report's order: 0 ≤ i < sw_n_results (). */
guint sw_n_results (void);
const SwResult *sw_result_at (guint i);

/* Returns: (nullable). */
const SwResult *sw_result_find (const char *key);

/* The value; NAN where it is absent in this solution. */
double sw_result_value (const SwResult *result, const SwSolution *solution);
