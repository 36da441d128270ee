// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-plane.h: a ring of pipe in its own plane, pulled inwards by its strips.
 *
 * A ring gives way in waves. Bare, the softest shape is an oval, n = 2; its stiffness against a
 * load of that shape is (n² − 1)²·EI/R⁴, and it buckles at an inward pull of (n² − 1)·EI/R³.
 * Spokes pinned at post and ring hold the pipe in their direction only: so many evenly spaced
 * ones leave the shape with a spoke in each of its still points, n = spokes/2. Four or fewer
 * leave the oval as it was; an odd one is not counted, on the safe side.
 * What the spokes themselves bear of the pull is left out, on the safe side.
 * An arc waves between ties that hold it sideways, n = 180°/bay.
 *
 * Limits  thin pipe, small deflections, full-strength joints; the pull follows the pipe's face
 *         (3·EI/R³ bare), which is less than what strips do that point at the crown (4.5)
 * Source  Timoshenko & Gere, Theory of Elastic Stability, chapter 7: ring under uniform
 *         pressure, 3·EI/R³; arch hinged at its ends, (π²/α² − 1)·EI/R³
 */
#pragma once
#include <glib.h>

/* Waves round the ring of the softest shape the spokes leave. */
double sw_ring_waves (int spokes);

/* The same of an arc with a tie at each end; at least 1, which is no stiffness at all. */
double sw_arc_waves (double span_deg, int ties);

typedef struct {
  double radius_m, ei;
  double waves;
} SwRingPlane;

/* Load of the softest shape, N a metre of pipe, for each metre that it moves the pipe. */
double sw_ring_plane_stiffness (const SwRingPlane *ring);

/* Inward pull at which it buckles, N a metre. */
double sw_ring_plane_buckling (const SwRingPlane *ring);
