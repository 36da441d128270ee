// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/as-built.h"

#include "engine/cone.h"
#include "engine/error.h"
#include "engine/ring-curve.h"
#include "engine/strip-points.h"

#include <math.h>

enum { FEWEST_POINTS = 4 };

typedef struct {
  const SwDesign *design; /* borrowed */
  double pipe_od_m;
  const SwRingCurve *curve; /* borrowed */
} Ring;

gboolean
sw_as_built_measured (const SwDesign *design)
{
  const SwMeasured *measured = &design->as_built;

  return measured->ring_points->len >= FEWEST_POINTS || measured->ring_length_m > 0 ||
         fabs (measured->crown_offset_x_m) > 0 || fabs (measured->crown_offset_y_m) > 0;
}

static SwRingCurve *
circle_of_length (const SwDesign *design, GError **error)
{
  if (design->stand.ring_span == SW_SPAN_ARC) {
    g_set_error (
      error,
      SW_ERROR,
      SW_ERROR_RANGE,
      "as_built.ring_length_m: a ring that is only an arc has no length round, 0 is allowed");
    return NULL;
  }
  return sw_ring_curve_new_circle (design->as_built.ring_length_m / (2 * G_PI));
}

/* The outer face: as measured, or else the design's own. */
static SwRingCurve *
curve_of (const SwDesign *design, double pipe_od_m, GError **error)
{
  if (design->as_built.ring_points->len >= FEWEST_POINTS)
    return sw_ring_curve_new (design->as_built.ring_points, error);
  if (design->as_built.ring_length_m > 0)
    return circle_of_length (design, error);
  return sw_ring_curve_new_circle (design->shape.ring_radius_m + pipe_od_m / 2);
}

/* The hook keeps its design azimuth and height; the crown alone is shifted. */
static double
slant_to_m (const SwDesign *design, int strip, SwPoint tie)
{
  SwPoint hook = sw_hook_point (&design->shape, strip);
  double x_m = hook.x_m + design->as_built.crown_offset_x_m - tie.x_m;
  double y_m = hook.y_m + design->as_built.crown_offset_y_m - tie.y_m;

  return hypot (hypot (x_m, y_m), hook.z_m - tie.z_m);
}

static double
mark_azimuth_deg (const Ring *ring, int strip, double arc_m)
{
  double first_deg = sw_cone_azimuth_deg (&ring->design->shape, 1);

  return strip == 1 ? first_deg : sw_ring_curve_azimuth_deg (ring->curve, first_deg, arc_m);
}

static SwAsBuiltMark
mark_of (const Ring *ring, int strip, double arc_m)
{
  const SwDesign *design = ring->design;
  double azimuth_deg = mark_azimuth_deg (ring, strip, arc_m);
  double radius_m = sw_ring_curve_radius_m (ring->curve, azimuth_deg);
  SwPoint tie = sw_point_on_circle (azimuth_deg,
                                    radius_m - ring->pipe_od_m / 2,
                                    design->shape.ring_height_m);
  double slant_m = slant_to_m (design, strip, tie);
  double run_m = (design->strip.pixels - 1) * design->strip.pitch_m;

  return (SwAsBuiltMark){ .arc_m = arc_m,
                          .azimuth_deg = azimuth_deg,
                          .radius_m = radius_m,
                          .slant_m = slant_m,
                          .tail_m = slant_m - design->strip.lead_m - run_m };
}

/* From strip 1 round to where equal shares end: itself, or the last strip of an open tree. */
static double
shared_m (const Ring *ring)
{
  const SwShape *shape = &ring->design->shape;

  if (shape->coverage_deg >= 360)
    return sw_ring_curve_perimeter_m (ring->curve);
  return sw_ring_curve_length_m (ring->curve,
                                 sw_cone_azimuth_deg (shape, 1),
                                 sw_cone_azimuth_deg (shape, shape->strip_count));
}

/* Each length from its own share: summed steps would drift. */
static GArray *
marks_of (const Ring *ring)
{
  const SwShape *shape = &ring->design->shape;
  int gaps = shape->coverage_deg >= 360 ? shape->strip_count : shape->strip_count - 1;
  double length_m = shared_m (ring);
  GArray *marks = g_array_sized_new (FALSE, FALSE, sizeof (SwAsBuiltMark), shape->strip_count);

  for (int strip = 1; strip <= shape->strip_count; strip++) {
    SwAsBuiltMark mark = mark_of (ring, strip, length_m * (strip - 1) / gaps);
    g_array_append_val (marks, mark);
  }
  return marks;
}

SwAsBuilt *
sw_as_built_new (const SwDesign *design, double pipe_od_m, GError **error)
{
  g_autoptr (SwRingCurve) curve = curve_of (design, pipe_od_m, error);

  if (curve == NULL)
    return NULL;

  Ring ring = { .design = design, .pipe_od_m = pipe_od_m, .curve = curve };
  SwAsBuilt *as_built = g_new0 (SwAsBuilt, 1);
  as_built->perimeter_m = sw_ring_curve_perimeter_m (curve);
  as_built->marks = marks_of (&ring);
  return as_built;
}

void
sw_as_built_free (SwAsBuilt *as_built)
{
  g_array_unref (as_built->marks);
  g_free (as_built);
}
