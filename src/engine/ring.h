// SPDX-License-Identifier: GPL-3.0-or-later
/* ring.h: what the ring pipe does between forming and the last cold night, and how it is made.
 *
 * Lift between ties, its stress and the ties' pull in still air and gust are in stand.h; here
 * is the rest: its own plane, creep, bending cold, warmth, joints, doors, the fewest ties.
 *
 * What does not apply is NAN, or 0 where it counts.
 * Limits  ring-plane.h; ties of an arc must hold it sideways too
 * Source  beside each figure in results-ring.c
 */
#pragma once
#include "engine/ring-joints.h"
#include "engine/ring-load.h"
#include "engine/ring-plane.h"
#include "engine/stand.h"

/* A ring that waves more is seen; our own choice. */
#define SW_RING_LIFT_MOST_M 0.010
/* On buckling: as AWWA M45 asks of buried plastic pipe, value from memory. */
#define SW_RING_FACTOR 2.5
/* From a workshop of 20 °C to a night of −20 °C; our own choice. */
#define SW_RING_COLDER_K 40.0
/* Makers of PVC pipe allow a bend of 300 times the OD cold, which strains it 1/600 (a maker's
 * bulletin; Uni-Bell Handbook of PVC Pipe, value from memory). */
#define SW_RING_COLD_RADII 300.0
#define SW_RING_MOST_TIES 96 /* beyond these no fewest number is looked for */

typedef struct {
  double inward_n_per_m;              /* the strips' pull towards the post, where they stand */
  double tie_side_n, tie_side_gust_n; /* towards the post at a tie; not of a full tree */
  double hoop_n;                      /* squeezes the pipe along itself */
  double waves;                       /* of the softest shape in plane */
  double plane_stiffness_pa;
  double buckling_n_per_m, buckling_factor; /* over a season */
  double buckling_gust_factor;              /* every strip as the windward one, fresh pipe,
                                             ties that hold sideways */
  double cold_strain, cold_radius_m;
  double lift_fresh_m, lift_years_m; /* only of plastic; over a season: support.ring_lift_m */
  double shrink_m, shrink_radius_m;  /* of the whole pipe, of a closed ring's radius */
  double joint_gap_m;                /* opens at each joint that can slide */
  double section_width_m;            /* of the widest section as it is carried straight on */
  double sections_for_door;          /* fewest that pass site.door_m */
  double fewest_ties; /* that keep the lift at SW_RING_LIFT_MOST_M; only in a whole solution */
  SwRingJoints joints;
} SwRing;

/* All but the fewest ties. */
void sw_ring_init (SwRing *ring,
                   const SwDesign *design,
                   const SwCone *cone,
                   const SwSupport *support,
                   const SwCatalogue *catalogue);

/* Fewest ties with a lift of at most SW_RING_LIFT_MOST_M in still air; NAN beyond
 * SW_RING_MOST_TIES, or without a pipe. */
double sw_ring_fewest_ties (const SwDesign *design,
                            const SwCone *cone,
                            const SwCatalogue *catalogue);

/* Width of the opening through which a bent pipe passes, carried along its chord. */
double sw_ring_section_width_m (double radius_m, double od_m, double angle_deg);

/* Half of a coupling: what a joint needs clear on either side. Two diameters long, at least 44
 * mm; socket depths of ASTM D2466 and couplings of conduit are shorter. */
double sw_ring_joint_room_m (double pipe_od_m);
