// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-load.h"

#include "engine/ring-point-loads.h"

#include <math.h>

gboolean
sw_ring_is_arc (const SwDesign *design)
{
  return design->stand.ring_span == SW_SPAN_ARC && design->shape.coverage_deg < 360;
}

static double
span_deg (const SwDesign *design)
{
  return sw_ring_is_arc (design) ? design->shape.coverage_deg : 360;
}

double
sw_ring_length_m (const SwDesign *design)
{
  return design->shape.ring_radius_m * span_deg (design) * G_PI / 180;
}

double
sw_ring_tie_azimuth_deg (const SwDesign *design, int tie)
{
  const SwShape *shape = &design->shape;
  int ties = design->stand.ring_ties;

  if (sw_ring_is_arc (design) && ties > 1)
    return sw_azimuth_wrap_deg (shape->facing_deg - shape->coverage_deg / 2 +
                                (tie - 1) * shape->coverage_deg / (ties - 1));
  return sw_azimuth_wrap_deg (shape->facing_deg + 180 + (tie - 1) * 360.0 / ties);
}

/* A partial tree lifts a whole ring on one side only: its strips count one by one there. */
static SwRingAnswer
under_part (const SwShape *shape, const SwTube *pipe, int ties, double strip_n)
{
  g_autofree double *strip_deg = g_new (double, shape->strip_count);
  SwRingAnswer answer;

  for (int i = 0; i < shape->strip_count; i++)
    strip_deg[i] = sw_cone_azimuth_deg (shape, i + 1);
  SwRingPoints load = { .radius_m = shape->ring_radius_m,
                        .ei = pipe->ei,
                        .gj = pipe->gj,
                        .strip_n = strip_n,
                        .strip_count = shape->strip_count,
                        .strip_deg = strip_deg,
                        .ties = ties,
                        .first_tie_deg = shape->facing_deg + 180 };
  sw_ring_point_loads (&load, &answer);
  return answer;
}

SwRingAnswer
sw_ring_load_answer (const SwDesign *design,
                     const SwCone *cone,
                     const SwTube *pipe,
                     int ties,
                     double tension_n)
{
  const SwShape *shape = &design->shape;
  double strip_n = tension_n * cos (cone->lean_deg * G_PI / 180);
  double lift_n_per_m = strip_n * shape->strip_count / sw_ring_length_m (design);
  SwRingLoad load = { shape->ring_radius_m, pipe->ei, pipe->gj,
                      lift_n_per_m,         ties,     span_deg (design) };
  SwRingAnswer answer;

  if (shape->coverage_deg < 360 && !sw_ring_is_arc (design))
    return under_part (shape, pipe, ties, strip_n);
  sw_ring_statics (&load, &answer);
  return answer;
}
