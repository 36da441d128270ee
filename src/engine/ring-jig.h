// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-jig.h: blocks on a sheet of wood that a pipe is bent round.
 *
 * Takes    the ring's radius, the pipe's outer diameter, the angle of its longest piece
 * Gives    where blocks stand that touch the pipe's inner face: along a base line from the left
 *          end of the curve, and out from it. A longer piece is moved on over the jig
 * Source   offsets from the long chord, as curves are set out in surveying:
 *          y = √(r² − (x − c/2)²) − √(r² − c²/4)
 */
#pragma once

#define SW_JIG_MOST_DEG 90.0 /* wider would not lie on one sheet of wood; our own choice */
#define SW_JIG_BLOCK_M 0.15  /* at most, from block to block; our own choice */

typedef struct {
  double radius_m; /* of the pipe's inner face */
  double angle_deg;
  double chord_m, rise_m; /* the base line; how far the curve stands out from it */
  int blocks;             /* odd: one in the middle */
} SwRingJig;

void sw_ring_jig_init (SwRingJig *jig, double ring_radius_m, double od_m, double piece_deg);

/* Block 1 … blocks. */
void sw_ring_jig_block (const SwRingJig *jig, int block, double *along_m, double *out_m);

/* How far the curve stands out at a place along the base line, 0 … chord. */
double sw_ring_jig_out_m (const SwRingJig *jig, double along_m);
