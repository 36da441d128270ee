// SPDX-License-Identifier: GPL-3.0-or-later
/* crown-plate.h: the strips' holes in the crown plate, seen from above, plate centre at 0,0.
 * The holes stand on the circle of radius crown_radius − hook_reach.
 */
#pragma once
#include "engine/design.h"

typedef struct {
  double x_m, y_m;
} SwHole;

/* Returns: (transfer full) (element-type SwHole), strip 1 first. */
GArray *sw_crown_plate_new (const SwDesign *design);
