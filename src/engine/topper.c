// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/topper.h"

GArray *
sw_topper_outline (const SwDesign *design, int ring)
{
  return g_array_new (FALSE, FALSE, sizeof (SwPoint));
}
GArray *
sw_topper_pixels (const SwDesign *design)
{
  return g_array_new (FALSE, FALSE, sizeof (SwPoint));
}
