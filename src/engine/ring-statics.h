// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-statics.h: a ring or arc of pipe pulled up evenly and held down by ties.
 *
 * Takes    uniform lift, N a metre; ties evenly spaced, K round a closed ring, or K
 *          along an arc with one at each end
 * Gives    lift of the pipe between ties (relative to them), moments, tie forces
 * Limits   small deflections, thin circular axis without shear, full-strength joints,
 *          ties that hold vertically only
 * Source   closed ring: Hassoun, Structural Concrete, table 21.1 (circular beam on
 *          equal supports); its deflection by the harmonic series of the free ring,
 *          our own; arc: straight grid elements (bending and torsion), Timoshenko &
 *          Gere. Both checked against an independent frame model and CalculiX
 */
#pragma once
#include <glib.h>

typedef struct {
  double radius_m;
  double ei, gj; /* N m² */
  double lift_n_per_m;
  int ties;
  double span_deg; /* 360: closed */
} SwRingLoad;

typedef struct {
  double lift_m;    /* most, between ties */
  double moment_nm; /* most bending */
  double torque_nm; /* most twist */
  double tie_n;     /* most in one tie */
} SwRingAnswer;

/* Returns: FALSE when there are too few ties to hold it (3 for a closed ring, 3 for an arc);
 * all NAN then. */
gboolean sw_ring_statics (const SwRingLoad *load, SwRingAnswer *answer);

/* Σ 1/(n² − 1)² and Σ 1/(n²(n² − 1)²) over n = K, 3K, 5K …: what bending and twist add to the
 * lift of a closed ring on K ties. */
void sw_ring_series (int ties, double *bending, double *twist);
