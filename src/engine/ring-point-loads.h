// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-point-loads.h: a whole ring of pipe pulled up by single strips that need not stand all
 * round it, as under a partial tree.
 *
 * Takes    equal pulls at any azimuths; ties evenly spaced all round
 * Gives    as ring-statics.h; lift, moment and torque are the most found at the ties, the
 * strips and places between, a degree or a quarter bay apart
 * Limits   as ring-statics.h; ties that hold both ways: where the far side of the ring presses
 *          down, something (a peg's shoulder, the ground) must bear it
 * Source   harmonic series of a free ring under a point load (Timoshenko, Strength of Materials
 *          II: circular ring), summed in closed form; our own, checked against a frame model
 */
#pragma once
#include "engine/ring-statics.h"

typedef struct {
  double radius_m;
  double ei, gj;  /* N m² */
  double strip_n; /* upward pull of one strip */
  int strip_count;
  const double *strip_deg; /* azimuths; not owned */
  int ties;
  double first_tie_deg;
  double enough_m; /* above 0: a lift beyond it is enough to know, the rest is not looked at */
} SwRingPoints;

/* Returns: FALSE when there are fewer than 3 ties, or no pipe; all NAN then. */
gboolean sw_ring_point_loads (const SwRingPoints *load, SwRingAnswer *answer);
