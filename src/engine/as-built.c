// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/as-built.h"

gboolean
sw_as_built_measured (const SwDesign *design)
{
  return FALSE;
}
SwAsBuilt *
sw_as_built_new (const SwDesign *design, double pipe_od_m, GError **error)
{
  return NULL;
}
void
sw_as_built_free (SwAsBuilt *as_built)
{
}
