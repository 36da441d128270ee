// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-curve.h: a closed curve radius (azimuth), and lengths along it.
 *
 * Takes    measured points, or one radius; degrees at any turn
 * Gives    lengths to about 1e-14 of the curve, places on it to 1e-15 rad
 * Errors   SW_ERROR_RANGE for a curve that reaches the centre, SW_ERROR_NUMERIC where GSL finds
 *          none; both name as_built.ring_points
 * Source   periodic cubic spline (GSL); length ∫√(ρ² + ρ′²)dφ by Gauss–Legendre
 */
#pragma once
#include "engine/design.h"

typedef struct SwRingCurve SwRingCurve;

/* `points`: (element-type SwRingPoint), at least 4, sorted by azimuth, each azimuth once.
 * Returns: (transfer full) (nullable).
 */
SwRingCurve *sw_ring_curve_new (const GArray *points, GError **error);
SwRingCurve *sw_ring_curve_new_circle (double radius_m);
void sw_ring_curve_free (SwRingCurve *curve);

double sw_ring_curve_perimeter_m (const SwRingCurve *curve);
double sw_ring_curve_radius_m (const SwRingCurve *curve, double azimuth_deg);

/* Anticlockwise seen from above, 0 … below the perimeter. */
double sw_ring_curve_length_m (const SwRingCurve *curve,
                               double from_azimuth_deg,
                               double to_azimuth_deg);

/* The azimuth that lies `length_m` further round, or back where it is negative. Returns: [0,
 * 360). */
double sw_ring_curve_azimuth_deg (const SwRingCurve *curve,
                                  double from_azimuth_deg,
                                  double length_m);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwRingCurve, sw_ring_curve_free)
