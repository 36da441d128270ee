// SPDX-License-Identifier: GPL-3.0-or-later
/* The curve is kept as its cubics, one from each knot to the next, in radians from the knot;
 * the last one ends a turn behind the first knot. A circle is one cubic of one turn.
 */
#include "engine/ring-curve.h"

#include "engine/cone.h"
#include "engine/error.h"

#include <gsl/gsl_errno.h>
#include <gsl/gsl_integration.h>
#include <gsl/gsl_interp.h>
#include <gsl/gsl_poly.h>
#include <math.h>

typedef struct {
  double start;    /* azimuth of the knot */
  double span;     /* to the next knot */
  double radius_m; /* at the knot; then its derivatives: slope, half the second, a sixth of the
                      third */
  double slope, bend, twist;
  double length_before_m; /* from the first knot to this one */
} Arc;

struct SwRingCurve {
  guint n_arcs;
  Arc *arcs; /* owned */
  double perimeter_m;
  gsl_integration_glfixed_table *gauss; /* owned */
};

/* Enough that even a curve through 4 far points is summed to the last digits. */
enum { GAUSS_POINTS = 16, PIECES = 4 };

/* Finer than this (radians) the sums do not reach. */
static const double same_azimuth = 1e-15;

/* GSL's own handler aborts the program. Every call here looks at what it returns instead. */
static void
switch_off_gsl_handler (void)
{
  static gsize is_off = 0;

  if (g_once_init_enter (&is_off)) {
    gsl_set_error_handler_off ();
    g_once_init_leave (&is_off, 1);
  }
}

static double
turn (void)
{
  return 2 * G_PI;
}

static double
radians (double deg)
{
  return deg * G_PI / 180;
}

static double
radius_at (const Arc *arc, double t)
{
  return arc->radius_m + t * (arc->slope + t * (arc->bend + t * arc->twist));
}

static double
stretch_at (const Arc *arc, double t)
{
  double slope = arc->slope + t * (2 * arc->bend + t * 3 * arc->twist);

  return hypot (radius_at (arc, t), slope);
}

static double
stretch_cb (double t, void *arc)
{
  return stretch_at (arc, t);
}

/* From the arc's knot. */
static double
length_to_m (const SwRingCurve *curve, Arc *arc, double t)
{
  gsl_function stretch = { stretch_cb, arc };
  double sum_m = 0;

  for (int i = 0; i < PIECES; i++)
    sum_m +=
      gsl_integration_glfixed (&stretch, t * i / PIECES, t * (i + 1) / PIECES, curve->gauss);
  return sum_m;
}

static SwRingCurve *
curve_new (guint n_arcs)
{
  SwRingCurve *curve = g_new0 (SwRingCurve, 1);

  switch_off_gsl_handler ();
  curve->n_arcs = n_arcs;
  curve->arcs = g_new0 (Arc, n_arcs);
  curve->gauss = gsl_integration_glfixed_table_alloc (GAUSS_POINTS);
  if (curve->gauss == NULL)
    g_error ("out of memory for a table of %d points", GAUSS_POINTS);
  return curve;
}

static void
measure (SwRingCurve *curve)
{
  double length_m = 0;

  for (guint i = 0; i < curve->n_arcs; i++) {
    Arc *arc = &curve->arcs[i];
    arc->length_before_m = length_m;
    length_m += length_to_m (curve, arc, arc->span);
  }
  curve->perimeter_m = length_m;
}

SwRingCurve *
sw_ring_curve_new_circle (double radius_m)
{
  SwRingCurve *curve = curve_new (1);

  curve->arcs[0] = (Arc){ .span = turn (), .radius_m = radius_m };
  measure (curve);
  return curve;
}

static gboolean
refuse (GError **error, const char *what)
{
  g_set_error (error, SW_ERROR, SW_ERROR_NUMERIC, "as_built.ring_points: %s", what);
  return FALSE;
}

typedef struct {
  gsl_interp *spline;         /* owned */
  gsize n;                    /* knots with the last one a turn behind the first */
  double *azimuth, *radius_m; /* owned */
} Knots;

static void
knots_clear (Knots *knots)
{
  g_clear_pointer (&knots->spline, gsl_interp_free);
  g_free (knots->azimuth);
  g_free (knots->radius_m);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Knots, knots_clear)

static gboolean
knots_init (Knots *knots, const GArray *points, GError **error)
{
  knots->n = points->len + 1;
  knots->azimuth = g_new (double, knots->n);
  knots->radius_m = g_new (double, knots->n);
  for (gsize i = 0; i < knots->n; i++) {
    const SwRingPoint *point = &g_array_index (points, SwRingPoint, i % points->len);
    knots->azimuth[i] = radians (point->azimuth_deg + (i == points->len ? 360 : 0));
    knots->radius_m[i] = point->radius_m;
  }
  knots->spline = gsl_interp_alloc (gsl_interp_cspline_periodic, knots->n);
  if (knots->spline == NULL)
    return refuse (error, gsl_strerror (GSL_ENOMEM));

  int status = gsl_interp_init (knots->spline, knots->azimuth, knots->radius_m, knots->n);

  return status == GSL_SUCCESS ? TRUE : refuse (error, gsl_strerror (status));
}

/* The cubic from knot i on, by its derivatives at both ends. */
static gboolean
arc_init (Arc *arc, const Knots *knots, guint i, GError **error)
{
  const double *x = knots->azimuth, *y = knots->radius_m;
  double slope = NAN, second = NAN, next_second = NAN;
  int status = gsl_interp_eval_deriv_e (knots->spline, x, y, x[i], NULL, &slope);

  if (status == GSL_SUCCESS)
    status = gsl_interp_eval_deriv2_e (knots->spline, x, y, x[i], NULL, &second);
  if (status == GSL_SUCCESS)
    status = gsl_interp_eval_deriv2_e (knots->spline, x, y, x[i + 1], NULL, &next_second);
  if (status != GSL_SUCCESS)
    return refuse (error, gsl_strerror (status));
  *arc = (Arc){ .start = x[i],
                .span = x[i + 1] - x[i],
                .radius_m = y[i],
                .slope = slope,
                .bend = second / 2,
                .twist = (next_second - second) / (6 * (x[i + 1] - x[i])) };
  return TRUE;
}

/* Where on the arc the radius is least: at a knot, or where the slope passes 0. */
static double
lowest_at (const Arc *arc)
{
  double turns[2], lowest = radius_at (arc, arc->span) < arc->radius_m ? arc->span : 0;
  int n =
    gsl_poly_solve_quadratic (3 * arc->twist, 2 * arc->bend, arc->slope, &turns[0], &turns[1]);

  for (int i = 0; i < n; i++) {
    if (turns[i] > 0 && turns[i] < arc->span &&
        radius_at (arc, turns[i]) < radius_at (arc, lowest))
      lowest = turns[i];
  }
  return lowest;
}

static gboolean
check_clear_of_centre (const SwRingCurve *curve, GError **error)
{
  for (guint i = 0; i < curve->n_arcs; i++) {
    const Arc *arc = &curve->arcs[i];
    double lowest = lowest_at (arc);
    if (!(radius_at (arc, lowest) > 0)) {
      g_set_error (error,
                   SW_ERROR,
                   SW_ERROR_RANGE,
                   "as_built.ring_points: the curve through them reaches the centre near "
                   "%.0f°, every radius must be above 0",
                   sw_azimuth_wrap_deg ((arc->start + lowest) * 180 / G_PI));
      return FALSE;
    }
  }
  return TRUE;
}

SwRingCurve *
sw_ring_curve_new (const GArray *points, GError **error)
{
  g_autoptr (SwRingCurve) curve = curve_new (points->len);
  g_auto (Knots) knots = { 0 };

  if (!knots_init (&knots, points, error))
    return NULL;
  for (guint i = 0; i < curve->n_arcs; i++) {
    if (!arc_init (&curve->arcs[i], &knots, i, error))
      return NULL;
  }
  if (!check_clear_of_centre (curve, error))
    return NULL;
  measure (curve);
  return g_steal_pointer (&curve);
}

void
sw_ring_curve_free (SwRingCurve *curve)
{
  gsl_integration_glfixed_table_free (curve->gauss);
  g_free (curve->arcs);
  g_free (curve);
}

double
sw_ring_curve_perimeter_m (const SwRingCurve *curve)
{
  return curve->perimeter_m;
}

/* The arc an azimuth lies on, and how far behind its knot. */
static Arc *
find_arc (const SwRingCurve *curve, double azimuth_deg, double *t)
{
  double first = curve->arcs[0].start;
  double azimuth = first + fmod (radians (azimuth_deg) - first, turn ());
  guint i = curve->n_arcs - 1;

  if (azimuth < first)
    azimuth += turn ();
  while (i > 0 && azimuth < curve->arcs[i].start)
    i--;
  *t = MIN (azimuth - curve->arcs[i].start, curve->arcs[i].span);
  return &curve->arcs[i];
}

double
sw_ring_curve_radius_m (const SwRingCurve *curve, double azimuth_deg)
{
  double t;
  const Arc *arc = find_arc (curve, azimuth_deg, &t);

  return radius_at (arc, t);
}

/* From the first knot. */
static double
length_from_first_m (const SwRingCurve *curve, double azimuth_deg)
{
  double t;
  Arc *arc = find_arc (curve, azimuth_deg, &t);

  return arc->length_before_m + length_to_m (curve, arc, t);
}

double
sw_ring_curve_length_m (const SwRingCurve *curve,
                        double from_azimuth_deg,
                        double to_azimuth_deg)
{
  double length_m =
    length_from_first_m (curve, to_azimuth_deg) - length_from_first_m (curve, from_azimuth_deg);

  return length_m < 0 ? length_m + curve->perimeter_m : length_m;
}

/* Newton, kept between the two sides; the length grows steadily, so there is one place. */
static double
place_on_arc (const SwRingCurve *curve, Arc *arc, double length_m)
{
  double low = 0, high = arc->span;
  double whole_m = length_to_m (curve, arc, arc->span);
  double t = arc->span * CLAMP (length_m / whole_m, 0, 1);

  for (int step = 0; step < 100; step++) {
    double miss_m = length_to_m (curve, arc, t) - length_m;
    if (miss_m > 0)
      high = t;
    else
      low = t;

    double next = t - miss_m / stretch_at (arc, t);
    if (!(next >= low && next <= high))
      next = (low + high) / 2;
    if (fabs (next - t) <= same_azimuth)
      return next;
    t = next;
  }
  return t;
}

double
sw_ring_curve_azimuth_deg (const SwRingCurve *curve, double from_azimuth_deg, double length_m)
{
  double from_first_m =
    fmod (length_from_first_m (curve, from_azimuth_deg) + length_m, curve->perimeter_m);
  guint i = curve->n_arcs - 1;

  if (from_first_m < 0)
    from_first_m += curve->perimeter_m;
  while (i > 0 && from_first_m < curve->arcs[i].length_before_m)
    i--;

  Arc *arc = &curve->arcs[i];
  double t = place_on_arc (curve, arc, from_first_m - arc->length_before_m);

  return sw_azimuth_wrap_deg ((arc->start + t) * 180 / G_PI);
}
