// SPDX-License-Identifier: GPL-3.0-or-later
/* cut-mix.h: pieces out of bars of several lengths, each with its price, for the least money.
 *
 * Model    min Σ price·x, Σ patterns·x ≥ count, x whole, over all maximal patterns of all
 *          lengths (Gilmore & Gomory, Operations Research 9, 1961), by GLPK, limited by
 *          node count. Where there are too many patterns: the cheapest length alone
 */
#pragma once
#include "engine/cut-plan.h"

typedef struct {
  double stock_m, price; /* of a bar; price > 0 */
} SwStock;

typedef struct {
  GPtrArray *plans; /* owned: SwCutPlan, one a length that is used, as the lengths were given */
  double cost;
  double bound;     /* no way of cutting costs less */
  gboolean optimal; /* the cost is the bound */
} SwCutMix;

typedef struct {
  const SwStock *stocks;
  gsize n_stocks; /* at least 1 */
  double kerf_m;
  const SwPiece *pieces;
  gsize n_pieces;
  int most_nodes; /* 0: the usual limit */
} SwCutMixJob;

/* Errors: as sw_cut_plan_exact (); SW_ERROR_RANGE for a price that is none. */
SwCutMix *sw_cut_mix_new (const SwCutMixJob *job, GCancellable *cancellable, GError **error);
void sw_cut_mix_free (SwCutMix *mix);

/* Of all bars. */
guint sw_cut_mix_bars (const SwCutMix *mix);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwCutMix, sw_cut_mix_free)
