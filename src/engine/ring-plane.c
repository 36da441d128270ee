// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-plane.h"

#include <math.h>

#define OVAL 2

double
sw_ring_waves (int spokes)
{
  return MAX (OVAL, spokes / 2);
}

double
sw_arc_waves (double span_deg, int ties)
{
  return ties < 2 ? 1 : MAX (1, 180 * (ties - 1) / span_deg);
}

static double
shape_of (const SwRingPlane *ring)
{
  return ring->waves * ring->waves - 1;
}

double
sw_ring_plane_stiffness (const SwRingPlane *ring)
{
  return pow (shape_of (ring), 2) * ring->ei / pow (ring->radius_m, 4);
}

double
sw_ring_plane_buckling (const SwRingPlane *ring)
{
  return shape_of (ring) * ring->ei / pow (ring->radius_m, 3);
}
