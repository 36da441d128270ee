// SPDX-License-Identifier: GPL-3.0-or-later
/* as-built.h: the same marks on the ring as it was measured.
 *
 * Takes    as_built of a design: at least 4 points radius (azimuth) of the outer face, or the
 *          length round it, or crown offsets alone; the pipe's outer diameter
 * Gives    marks at equal lengths round the closed curve through the points, strip 1 at its
 *          design azimuth; an open tree shares the length between its first and last azimuth
 * Errors   SW_ERROR_RANGE (as_built.ring_length_m with an arc ring; as_built.ring_points whose
 *          curve reaches the centre), SW_ERROR_NUMERIC
 * Source   ring-curve.h; slants by Pythagoras
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
