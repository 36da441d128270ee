// SPDX-License-Identifier: GPL-3.0-or-later
/* basis.h: for each key of the report its formula and the published source it rests on.
 *
 * Keys of lists are written without the place in the list: "marks.arc_m", "bom.to_pay". The
 * single numbers' rows are results.h's.
 */
#pragma once
#include "engine/solution.h"

typedef struct {
  const char *key; /* "geometry.slant_m" */
  const char *formula, *source;
} SwBasis;

/* Returns: whether the key has a row; it is copied to `basis`. */
gboolean sw_basis_find (const char *key, SwBasis *basis);

/* The rows of what this solution has, in the report's order.
 * Returns: (transfer full) (element-type SwBasis).
 */
GArray *sw_basis_of (const SwSolution *solution);
