// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-joints.h: where the pieces of the ring pipe are joined.
 *
 * Takes    the design, in how many pieces the pipe is cut and how long they may be
 * Gives    the turn of the joints round the ring at which the nearest mark or tie is farthest
 *          away. A whole ring has equal pieces and turns freely. An arc keeps its ends: its
 *          joints move by the same length, a quarter of a piece at most, so that the first
 *          piece is longer by it and the last shorter, or the other way round. Spokes meet the
 *          ring at evenly spaced tees, which keep clear of marks, ties and joints the same way
 * Errors   none
 * Source   the best turn lies midway in the widest gap between all marks and ties laid over
 *          one another modulo the joints' spacing; exact
 */
#pragma once
#include "engine/design.h"

typedef struct {
  int parts;                  /* pieces of pipe; 0 without a pipe */
  int count;                  /* joints: as many as pieces, on an arc one fewer */
  double first_deg, step_deg; /* joint 1, and from one to the next */
  double clear_m; /* nearest mark or tie, along the outer face; NAN without joints */
  double first_m, part_m, last_m; /* pieces along the centreline; on a whole ring all alike */
  int spokes;
  double spoke_first_deg, spoke_step_deg, spoke_clear_m; /* NAN without spokes */
} SwRingJoints;

typedef struct {
  const SwDesign *design;
  int parts;
  double longest_m; /* that a piece may be */
  double pipe_od_m;
} SwRingJob;

void sw_ring_joints_init (SwRingJoints *joints, const SwRingJob *job);

/* Azimuth of joint 1 … count, spoke 1 … spokes, in [0, 360). */
double sw_ring_joint_azimuth_deg (const SwRingJoints *joints, int joint);
double sw_ring_spoke_azimuth_deg (const SwRingJoints *joints, int spoke);

/* Along the outer face from strip 1's mark, the way numbers grow. */
double sw_ring_joint_arc_m (const SwRingJoints *joints,
                            int joint,
                            const SwDesign *design,
                            double pipe_od_m);

/* Length of piece 1 … parts along the centreline; piece 1 ends at joint 1 of an arc, of a whole
 * ring at joint 2. */
double sw_ring_piece_m (const SwRingJoints *joints, int piece);
