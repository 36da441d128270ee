// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-marks.h"

#include "engine/cone.h"

#include <math.h>

GArray *
sw_ring_marks_new (const SwShape *shape, double pipe_od_m)
{
  double outer_m = shape->ring_radius_m + pipe_od_m / 2;
  double step = sw_cone_step_deg (shape) * G_PI / 180;
  gboolean closed = shape->coverage_deg >= 360;
  int gaps = closed ? shape->strip_count : shape->strip_count - 1;
  GArray *marks = g_array_sized_new (FALSE, FALSE, sizeof (SwRingMark), shape->strip_count);

  for (int strip = 1; strip <= shape->strip_count; strip++) {
    gboolean last_of_open = !closed && strip == shape->strip_count;
    SwRingMark mark = {
      .azimuth_deg = sw_cone_azimuth_deg (shape, strip),
      .arc_m = outer_m * ((strip - 1) * (shape->coverage_deg * G_PI / 180) / gaps),
      .chord_m = last_of_open ? NAN : 2 * outer_m * sin (step / 2),
    };
    g_array_append_val (marks, mark);
  }
  return marks;
}
