// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cut-plan.h"

SwCutPlan *
sw_cut_plan_first_fit (const char *stock,
                       double stock_m,
                       double kerf_m,
                       const SwPiece *pieces,
                       gsize n_pieces,
                       GError **error)
{
  return NULL;
}
SwCutPlan *
sw_cut_plan_exact (const char *stock,
                   double stock_m,
                   double kerf_m,
                   const SwPiece *pieces,
                   gsize n_pieces,
                   int most_nodes,
                   GCancellable *cancellable,
                   GError **error)
{
  return NULL;
}
void
sw_cut_plan_free (SwCutPlan *plan)
{
}
