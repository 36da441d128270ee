// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/fit.h"

SwDesign *
sw_fit_tail (const SwDesign *design, SwGives quantity, GError **error)
{
  return sw_design_copy (design);
}
SwDesign *
sw_fit_spacing (const SwDesign *design, SwFitSpacing quantity, double spacing_m, GError **error)
{
  return sw_design_copy (design);
}
