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

/* What is pulled, by how much a strip, and from which lift on the rest does not matter. */
typedef struct {
  const SwDesign *design;
  const SwTube *pipe;
  int ties;
  double strip_n, enough_m;
} Pull;

/* A partial tree lifts a whole ring on one side only: its strips count one by one there. */
static SwRingAnswer
under_part (const Pull *pull)
{
  const SwShape *shape = &pull->design->shape;
  g_autofree double *strip_deg = g_new (double, shape->strip_count);
  SwRingAnswer answer;

  for (int i = 0; i < shape->strip_count; i++)
    strip_deg[i] = sw_cone_azimuth_deg (shape, i + 1);
  SwRingPoints load = { .radius_m = shape->ring_radius_m,
                        .ei = pull->pipe->ei,
                        .gj = pull->pipe->gj,
                        .strip_n = pull->strip_n,
                        .strip_count = shape->strip_count,
                        .strip_deg = strip_deg,
                        .ties = pull->ties,
                        .first_tie_deg = shape->facing_deg + 180,
                        .enough_m = pull->enough_m };
  sw_ring_point_loads (&load, &answer);
  return answer;
}

static SwRingAnswer
answer_to (const Pull *pull)
{
  const SwDesign *design = pull->design;
  const SwShape *shape = &design->shape;
  double lift_n_per_m = pull->strip_n * shape->strip_count / sw_ring_length_m (design);
  SwRingLoad load = { shape->ring_radius_m, pull->pipe->ei, pull->pipe->gj,
                      lift_n_per_m,         pull->ties,     span_deg (design) };
  SwRingAnswer answer;

  if (shape->coverage_deg < 360 && !sw_ring_is_arc (design))
    return under_part (pull);
  sw_ring_statics (&load, &answer);
  return answer;
}

SwRingAnswer
sw_ring_load_answer (const SwDesign *design,
                     const SwCone *cone,
                     const SwTube *pipe,
                     int ties,
                     double tension_n)
{
  double strip_n = tension_n * cos (cone->lean_deg * G_PI / 180);

  return answer_to (&(Pull){ design, pipe, ties, strip_n, 0 });
}

gboolean
sw_ring_load_is_level (const SwDesign *design,
                       const SwCone *cone,
                       const SwTube *pipe,
                       int ties,
                       double most_m)
{
  double strip_n = design->strip.tension_n * cos (cone->lean_deg * G_PI / 180);

  return answer_to (&(Pull){ design, pipe, ties, strip_n, most_m }).lift_m <= most_m;
}
