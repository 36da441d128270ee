// SPDX-License-Identifier: GPL-3.0-or-later
/* cut-plan.h: pieces out of bars with the fewest bars.
 *
 * n pieces fit a bar when their sum + (n − 1)·kerf ≤ stock. Lengths are taken in whole
 * micrometres. First fit is at hand at once; the exact answer comes from GLPK (patterns by
 * Gilmore & Gomory, Operations Research 9, 1961), limited by node count, never by time.
 */
#pragma once
#include <gio/gio.h>

typedef struct {
  double length_m;
  int count;
} SwPiece;

typedef struct {
  char *stock; /* owned, nullable: catalogue id */
  double stock_m, kerf_m;
  GPtrArray *bars;  /* owned: GArray of double, longest first, a bar each */
  double waste_m;   /* bars · stock − sum of pieces, never below 0 */
  int bound;        /* no plan has fewer bars */
  gboolean optimal; /* bars equal the bound */
} SwCutPlan;

/* First fit, longest first.
 * Returns: (transfer full) (nullable); Errors: SW_ERROR_NO_SOLUTION for a piece longer than the
 * stock.
 */
SwCutPlan *sw_cut_plan_first_fit (const char *stock,
                                  double stock_m,
                                  double kerf_m,
                                  const SwPiece *pieces,
                                  gsize n_pieces,
                                  GError **error);

/* Exact; `most_nodes` 0 = the usual limit. Errors: also SW_ERROR_NUMERIC, G_IO_ERROR_CANCELLED.
 */
SwCutPlan *sw_cut_plan_exact (const char *stock,
                              double stock_m,
                              double kerf_m,
                              const SwPiece *pieces,
                              gsize n_pieces,
                              int most_nodes,
                              GCancellable *cancellable,
                              GError **error);
void sw_cut_plan_free (SwCutPlan *plan);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwCutPlan, sw_cut_plan_free)
