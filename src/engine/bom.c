// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/bom.h"

GArray *
sw_bom_new (const SwSolution *solution)
{
  return g_array_new (FALSE, TRUE, sizeof (SwPart));
}
double
sw_bom_to_pay (const GArray *bom)
{
  return 0;
}
