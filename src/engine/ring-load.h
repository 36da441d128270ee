// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-load.h: the ring of a design under its strips.
 *
 * Three cases: a whole ring under a full tree and an arc of pipe are pulled evenly
 * (ring-statics.h); a whole ring under a partial tree strip by strip (ring-point-loads.h).
 * The pipe's own weight is left out, on the safe side.
 */
#pragma once
#include "engine/cone.h"
#include "engine/ring-statics.h"
#include "engine/tube.h"

/* Pipe only over the coverage. */
gboolean sw_ring_is_arc (const SwDesign *design);

/* Length along the pipe's centreline. */
double sw_ring_length_m (const SwDesign *design);

/* Azimuth of ring tie 1 … ties: on an arc one at each end. */
double sw_ring_tie_azimuth_deg (const SwDesign *design, int tie);

/* With so many ties, at that pull of each strip. All NAN with fewer than three ties. */
SwRingAnswer sw_ring_load_answer (const SwDesign *design,
                                  const SwCone *cone,
                                  const SwTube *pipe,
                                  int ties,
                                  double tension_n);

/* Whether so many ties keep the lift in still air at most_m; quicker than the whole answer. */
gboolean sw_ring_load_is_level (const SwDesign *design,
                                const SwCone *cone,
                                const SwTube *pipe,
                                int ties,
                                double most_m);
