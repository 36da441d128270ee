// SPDX-License-Identifier: GPL-3.0-or-later
/* A closed curve radius(azimuth) is a periodic cubic spline through the measured points.
 * Lengths along it are summed by Gauss–Legendre between knots; a mark is the azimuth where the
 * length from strip 1 is its share of the whole. A ring of which only the length is known, or
 * nothing, is a circle: the same formulas without a spline.
 */
#include "engine/as-built.h"

#include "engine/cone.h"
#include "engine/error.h"
#include "engine/strip-points.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_interp.h>
#include <math.h>

#define FEWEST_POINTS 4
#define GAUSS_POINTS 16
#define PIECES 4 /* of a knot interval, so that a lively curve is summed to the last digits */

typedef struct {
  guint n;         /* measured points; 0: a circle */
  double circle_m; /* its radius */
  double
    *azimuth; /* owned: n + 1 knots, radians, rising, the last one a turn behind the first */
  double *radius_m; /* owned: n + 1 */
  double *length_m; /* owned: n + 1, from the first knot */
  gsl_interp *spline;
  gsl_integration_glfixed_table *gauss;
} Ring;

gboolean
sw_as_built_measured (const SwDesign *design)
{
  const SwMeasured *measured = &design->as_built;

  return measured->ring_points->len >= FEWEST_POINTS || measured->ring_length_m > 0 ||
         fabs (measured->crown_offset_x_m) > 0 || fabs (measured->crown_offset_y_m) > 0;
}

static void
ring_clear (Ring *ring)
{
  g_free (ring->azimuth);
  g_free (ring->radius_m);
  g_free (ring->length_m);
  g_clear_pointer (&ring->spline, gsl_interp_free);
  g_clear_pointer (&ring->gauss, gsl_integration_glfixed_table_free);
}

/* An angle on the knots' turn. */
static double
onto_knots (const Ring *ring, double azimuth)
{
  double turn = 2 * G_PI, first = ring->azimuth[0];
  double wrapped = first + fmod (azimuth - first, turn);

  if (wrapped < first)
    wrapped += turn;
  return MIN (wrapped, ring->azimuth[ring->n]);
}

static double
radius_at (const Ring *ring, double azimuth)
{
  double value = NAN;

  if (ring->n == 0)
    return ring->circle_m;
  gsl_interp_eval_e (ring->spline,
                     ring->azimuth,
                     ring->radius_m,
                     onto_knots (ring, azimuth),
                     NULL,
                     &value);
  return value;
}

static double
slope_at (const Ring *ring, double azimuth)
{
  double value = NAN;

  gsl_interp_eval_deriv_e (ring->spline,
                           ring->azimuth,
                           ring->radius_m,
                           onto_knots (ring, azimuth),
                           NULL,
                           &value);
  return value;
}

/* Inside one knot interval. */
static double
length_between (const Ring *ring, double from, double to)
{
  double sum = 0;

  for (int piece = 0; piece < PIECES; piece++) {
    double low = from + (to - from) * piece / PIECES,
           high = from + (to - from) * (piece + 1) / PIECES;
    for (size_t i = 0; i < GAUSS_POINTS; i++) {
      double at, weight;
      gsl_integration_glfixed_point (low, high, i, &at, &weight, ring->gauss);
      sum += weight * hypot (radius_at (ring, at), slope_at (ring, at));
    }
  }
  return sum;
}

static gboolean
numeric_error (GError **error, int status)
{
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_NUMERIC,
               "as_built.ring_points: %s",
               gsl_strerror (status));
  return FALSE;
}

/* Between two knots the spline is a cubic; a fine walk finds where it comes to the centre. */
static gboolean
check_outside_centre (const Ring *ring, GError **error)
{
  for (guint i = 0; i < ring->n * 64; i++) {
    double azimuth = ring->azimuth[0] + 2 * G_PI * i / (ring->n * 64);
    if (!(radius_at (ring, azimuth) > 0)) {
      g_set_error (error,
                   SW_ERROR,
                   SW_ERROR_RANGE,
                   "as_built.ring_points: the curve through them reaches the centre near "
                   "%.0f°, every radius must be above 0",
                   sw_azimuth_wrap_deg (azimuth * 180 / G_PI));
      return FALSE;
    }
  }
  return TRUE;
}

static gboolean
ring_init_spline (Ring *ring, const GArray *points, GError **error)
{
  int status;

  ring->n = points->len;
  ring->azimuth = g_new (double, ring->n + 1);
  ring->radius_m = g_new (double, ring->n + 1);
  ring->length_m = g_new0 (double, ring->n + 1);
  for (guint i = 0; i <= ring->n; i++) {
    const SwRingPoint *point = &g_array_index (points, SwRingPoint, i % ring->n);
    ring->azimuth[i] = (point->azimuth_deg + (i == ring->n ? 360 : 0)) * G_PI / 180;
    ring->radius_m[i] = point->radius_m;
  }
  ring->spline = gsl_interp_alloc (gsl_interp_cspline_periodic, ring->n + 1);
  ring->gauss = gsl_integration_glfixed_table_alloc (GAUSS_POINTS);
  if (ring->spline == NULL || ring->gauss == NULL)
    return numeric_error (error, GSL_ENOMEM);
  status = gsl_interp_init (ring->spline, ring->azimuth, ring->radius_m, ring->n + 1);
  if (status != GSL_SUCCESS)
    return numeric_error (error, status);
  if (!check_outside_centre (ring, error))
    return FALSE;
  for (guint i = 1; i <= ring->n; i++)
    ring->length_m[i] =
      ring->length_m[i - 1] + length_between (ring, ring->azimuth[i - 1], ring->azimuth[i]);
  return TRUE;
}

static gboolean
ring_init (Ring *ring, const SwDesign *design, double pipe_od_m, GError **error)
{
  const SwMeasured *measured = &design->as_built;

  *ring = (Ring){ .circle_m = design->shape.ring_radius_m + pipe_od_m / 2 };
  if (measured->ring_points->len >= FEWEST_POINTS)
    return ring_init_spline (ring, measured->ring_points, error);
  if (measured->ring_length_m > 0) {
    if (design->stand.ring_span == SW_SPAN_ARC) {
      g_set_error (
        error,
        SW_ERROR,
        SW_ERROR_RANGE,
        "as_built.ring_length_m: a ring that is only an arc has no length round, 0 is allowed");
      return FALSE;
    }
    ring->circle_m = measured->ring_length_m / (2 * G_PI);
  }
  return TRUE;
}

static double
perimeter (const Ring *ring)
{
  return ring->n == 0 ? 2 * G_PI * ring->circle_m : ring->length_m[ring->n];
}

/* Length from the first knot to an azimuth on the knots' turn. */
static double
length_to (const Ring *ring, double azimuth)
{
  guint i = 0;

  while (i + 1 < ring->n && azimuth > ring->azimuth[i + 1])
    i++;
  return ring->length_m[i] + length_between (ring, ring->azimuth[i], azimuth);
}

/* The azimuth at a length from the first knot, 0 … perimeter: Newton, kept inside the knot
 * interval. */
static double
azimuth_at_length (const Ring *ring, double length)
{
  guint i = 0;

  while (i + 1 < ring->n && length > ring->length_m[i + 1])
    i++;
  double low = ring->azimuth[i], high = ring->azimuth[i + 1];
  double share = (length - ring->length_m[i]) / (ring->length_m[i + 1] - ring->length_m[i]);
  double at = low + (high - low) * CLAMP (share, 0, 1);
  for (int step = 0; step < 60; step++) {
    double miss = ring->length_m[i] + length_between (ring, ring->azimuth[i], at) - length;
    if (miss > 0)
      high = at;
    else
      low = at;
    double next = at - miss / hypot (radius_at (ring, at), slope_at (ring, at));
    if (!(next >= low && next <= high))
      next = (low + high) / 2;
    if (fabs (next - at) <= 4e-16 * fabs (at))
      return next;
    at = next;
  }
  return at;
}

static double
azimuth_after (const Ring *ring, double first, double arc_m)
{
  if (ring->n == 0)
    return first + arc_m / ring->circle_m;
  double start = length_to (ring, onto_knots (ring, first));
  return azimuth_at_length (ring, fmod (start + arc_m, perimeter (ring)));
}

/* From strip 1 to the last one of an open tree, the way the strips go. */
static double
open_length (const Ring *ring, const SwDesign *design)
{
  double first = sw_cone_azimuth_deg (&design->shape, 1) * G_PI / 180;
  double span = design->shape.coverage_deg * G_PI / 180;

  if (ring->n == 0)
    return ring->circle_m * span;
  double length = length_to (ring, onto_knots (ring, first + span)) -
                  length_to (ring, onto_knots (ring, first));
  return length > 0 ? length : length + perimeter (ring);
}

static double
slant_to (const SwDesign *design, int strip, SwPoint tie)
{
  SwPoint hook = sw_hook_point (&design->shape, strip);
  double x = hook.x_m + design->as_built.crown_offset_x_m - tie.x_m;
  double y = hook.y_m + design->as_built.crown_offset_y_m - tie.y_m;
  double z = hook.z_m - tie.z_m;

  return sqrt (x * x + y * y + z * z);
}

static SwAsBuiltMark
mark_of (const Ring *ring, const SwDesign *design, double pipe_od_m, int strip, double arc_m)
{
  const SwShape *shape = &design->shape;
  double run_m = (design->strip.pixels - 1) * design->strip.pitch_m;
  SwAsBuiltMark mark = { .arc_m = arc_m, .azimuth_deg = sw_cone_azimuth_deg (shape, strip) };

  if (strip > 1) {
    double first = sw_cone_azimuth_deg (shape, 1) * G_PI / 180;
    mark.azimuth_deg = sw_azimuth_wrap_deg (azimuth_after (ring, first, arc_m) * 180 / G_PI);
  }
  mark.radius_m = radius_at (ring, mark.azimuth_deg * G_PI / 180);
  mark.slant_m = slant_to (
    design,
    strip,
    sw_point_on_circle (mark.azimuth_deg, mark.radius_m - pipe_od_m / 2, shape->ring_height_m));
  mark.tail_m = mark.slant_m - design->strip.lead_m - run_m;
  return mark;
}

SwAsBuilt *
sw_as_built_new (const SwDesign *design, double pipe_od_m, GError **error)
{
  const SwShape *shape = &design->shape;
  gboolean closed = shape->coverage_deg >= 360;
  Ring ring;

  /* GSL's own handler aborts the program; every call here looks at what it returns. */
  gsl_set_error_handler_off ();
  if (!ring_init (&ring, design, pipe_od_m, error)) {
    ring_clear (&ring);
    return NULL;
  }
  SwAsBuilt *as_built = g_new0 (SwAsBuilt, 1);
  as_built->perimeter_m = perimeter (&ring);
  as_built->marks =
    g_array_sized_new (FALSE, FALSE, sizeof (SwAsBuiltMark), shape->strip_count);
  double length_m = closed ? as_built->perimeter_m : open_length (&ring, design);
  int gaps = closed ? shape->strip_count : shape->strip_count - 1;
  for (int strip = 1; strip <= shape->strip_count; strip++) {
    SwAsBuiltMark mark =
      mark_of (&ring, design, pipe_od_m, strip, length_m * (strip - 1) / gaps);
    g_array_append_val (as_built->marks, mark);
  }
  ring_clear (&ring);
  return as_built;
}

void
sw_as_built_free (SwAsBuilt *as_built)
{
  g_array_unref (as_built->marks);
  g_free (as_built);
}
