// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/crown-plate.h"

#include "engine/cone.h"
#include "engine/strip-points.h"

GArray *
sw_crown_plate_new (const SwDesign *design)
{
  double radius_m = design->shape.crown_radius_m - design->crown.hook_reach_m;
  GArray *holes = g_array_sized_new (FALSE, FALSE, sizeof (SwHole), design->shape.strip_count);

  for (int strip = 1; strip <= design->shape.strip_count; strip++) {
    SwPoint point =
      sw_point_on_circle (sw_cone_azimuth_deg (&design->shape, strip), radius_m, 0);
    g_array_append_val (holes, ((SwHole){ point.x_m, point.y_m }));
  }
  return holes;
}
