// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/wind.h"

void
sw_wind_init (SwWind *wind,
              const SwDesign *design,
              const SwCone *cone,
              const SwCatalogue *catalogue)
{
  *wind = (SwWind){ .kz = 0.85 };
}
