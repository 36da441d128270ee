// SPDX-License-Identifier: GPL-3.0-or-later
/* strip-points.h: places of hooks, ties and pixels. Straight strips; axes as in design.h. */
#pragma once
#include "engine/design.h"

typedef struct {
  double x_m, y_m, z_m;
} SwPoint;

/* On a circle round the axis: azimuth 0° at −y, growing anticlockwise seen from above. */
SwPoint sw_point_on_circle (double azimuth_deg, double radius_m, double z_m);

SwPoint sw_hook_point (const SwShape *shape, int strip);
SwPoint sw_tie_point (const SwShape *shape, int strip);

/* Pixel 1 is the lowest (at the ring), pixel `pixels` hangs next to the hook. */
SwPoint sw_pixel_point (const SwDesign *design, int strip, int pixel);

/* All pixels of one strip, lowest first: out[0 … pixels − 1]. */
void sw_pixel_points (const SwDesign *design, int strip, SwPoint *out);
