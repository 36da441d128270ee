// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/data-ports.h"

void
sw_data_plan_init (SwDataPlan *plan, const SwDesign *design)
{
  *plan = (SwDataPlan){ .ports = 2,
                        .universes = 7,
                        .rows = g_array_new (FALSE, FALSE, sizeof (SwPort)) };
}
void
sw_data_plan_clear (SwDataPlan *plan)
{
  g_clear_pointer (&plan->rows, g_array_unref);
}
gboolean
sw_data_runs_up (const SwDataPlan *plan, const SwDesign *design, int strip)
{
  return TRUE;
}
SwAddress
sw_data_address (const SwDataPlan *plan, const SwDesign *design, int strip, int pixel)
{
  return (SwAddress){ 1, 1, 1 };
}
