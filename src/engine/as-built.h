// SPDX-License-Identifier: GPL-3.0-or-later
/* as-built.h: the same marks on the ring as it was measured.
 *
 * Takes    as_built of a design: ≥ 4 points radius(azimuth) of the outer face, or the length
 * round it, or crown offsets alone Gives    marks at equal ARC LENGTH round the closed periodic
 * cubic spline through the points Errors   SW_ERROR_RANGE (as_built.…: a length with an arc
 * ring; a spline that reaches the centre), SW_ERROR_NUMERIC Source   periodic cubic spline
 * (GSL); arc length ∫√(ρ² + ρ′²)dφ by Gauss–Legendre
 */
#pragma once
#include "engine/design.h"

typedef struct {
  double arc_m, azimuth_deg, radius_m; /* radius: centre to the outer face */
  double slant_m, tail_m;              /* from its hook to its tie point, this strip */
} SwAsBuiltMark;

typedef struct {
  double perimeter_m; /* round the outer face */
  GArray *marks;      /* owned: SwAsBuiltMark, strip 1 first */
} SwAsBuilt;

/* Whether anything was measured: ≥ 4 points, a length, or a crown offset. */
gboolean sw_as_built_measured (const SwDesign *design);

/* Returns: (transfer full) (nullable). */
SwAsBuilt *sw_as_built_new (const SwDesign *design, double pipe_od_m, GError **error);
void sw_as_built_free (SwAsBuilt *as_built);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwAsBuilt, sw_as_built_free)
