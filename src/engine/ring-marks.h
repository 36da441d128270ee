// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-marks.h: where to mark the ring pipe so that the strips tie on evenly.
 *
 * Takes    a design that passed sw_design_check (), and the pipe's outer diameter in metres
 * Gives    one SwRingMark a strip, strip 1 first
 * Errors   none
 * Source   arc = r·θ and chord = 2r·sin(θ/2) on the OUTER face, r = ring radius + OD/2
 */
#pragma once
#include "engine/design.h"

typedef struct {
  double azimuth_deg; /* [0, 360) */
  double arc_m;       /* from strip 1's mark, along the outer face */
  double chord_m;     /* straight to the next mark; NAN after the last one of an open tree */
} SwRingMark;

/* Each arc comes from its own angle: summed steps would drift.
 * Returns: (transfer full) (element-type SwRingMark).
 */
GArray *sw_ring_marks_new (const SwShape *shape, double pipe_od_m);
