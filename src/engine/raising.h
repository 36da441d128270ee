// SPDX-License-Identifier: GPL-3.0-or-later
/* raising.h: three ways to get the crown up: which of them this design allows, how many hands
 * each takes, and the forces through the lift; and the order in which strips are tensioned.
 *
 * Tilt up  the tree lies with its post's foot against a block, and turns about it. Up to
 *          SW_RAISE_HANDOVER_DEG people push square to the post where it is SW_RAISE_REACH_M
 *          above the ground, walking in; from there a rope pulls from the other side, held
 *          SW_RAISE_HOLD_M above the ground, SW_RAISE_WALK of the crown's height away. Moments
 *          about the foot, everything at rest:
 *          push = m·g·c·cos θ / s;  pull = m·g·c·cos θ / arm;  the block holds the rest
 *          m mass, c its centre from the foot along the post, s where hands are, arm the
 *          rope's distance from the foot
 * Bare     the same with the post alone: the rehearsal
 * Platform people stand so that the crown is SW_RAISE_CHEST_M above their feet, and lift the
 *          bare post by hand into its sleeve
 *
 * Takes    a solved design
 * Errors   none; NAN with an unknown post
 * Source   statics of a rigid body; 23 kg: load constant of the revised NIOSH lifting equation
 *          (NIOSH 94-110), of which a hand here carries half, because it walks (our own
 *          choice); 200 N a person on a rope: common practice, no source; a free-standing
 *          scaffold no higher than four times its least width: 29 CFR 1926.451(c)(1)
 */
#pragma once
#include "engine/solution.h"

#define SW_RAISE_HANDOVER_DEG 45.0
#define SW_RAISE_REACH_M 1.5
#define SW_RAISE_HOLD_M 1.0
#define SW_RAISE_WALK 1.0 /* of the crown's height */
#define SW_RAISE_CHEST_M 1.3
#define SW_RAISE_HAND_N (23 * 9.80665 / 2)
#define SW_RAISE_ROPE_N 200.0
#define SW_PLATFORM_WIDTH_M                                                                    \
  0.74 /* a usual tower that folds, 29 in; common practice, no source */
#define SW_PLATFORM_SLENDER 4.0

typedef enum { SW_RAISE_TILT, SW_RAISE_HOIST, SW_RAISE_PLATFORM, SW_RAISE_WAYS } SwRaiseWay;

typedef enum {
  SW_RAISE_YES,
  SW_RAISE_NO_HANDS,     /* more than SW_RAISE_MOST_HANDS would be needed: a machine's work */
  SW_RAISE_NO_TOP_FIXED, /* the crown sits on the post's end: nothing can slide up past it */
  SW_RAISE_NO_HIGH,      /* platform higher than may stand freely */
  SW_RAISE_NO_LOW,       /* reached from the ground: no platform */
} SwRaiseAnswer;

extern const char *const sw_raise_way_words[];  /* "tilt-up", … */
extern const char *const sw_raise_way_labels[]; /* N_() */
extern const char *const sw_raise_answers[];    /* N_(): why, or why not */

#define SW_RAISE_MOST_HANDS 8 /* beyond, nobody hears the word; our own choice */

/* One angle of the lift. Absent forces are 0. */
typedef struct {
  double angle_deg; /* of the post from the ground */
  double push_n;    /* by hands, square to the post */
  double rope_n;
  double block_n; /* the foot pushes along the ground against its block */
  double press_n; /* and down on it; negative: it lifts off */
} SwLiftRow;

#define SW_LIFT_STEPS 7 /* 0° … 90° */

typedef struct {
  double mass_kg, centre_m;
  SwLiftRow rows[SW_LIFT_STEPS];
  double push_most_n, rope_most_n, block_most_n;
  int
    hands; /* who push; who pull; the rest is one on the tail rope and one who says the word */
  int rope_hands, people;
} SwLift;

typedef struct {
  SwLift whole, bare;
  double rope_at_m;  /* where the rope is tied, along the post */
  double platform_m; /* what people stand on, above ground */
  int platform_people;
  SwRaiseAnswer answers[SW_RAISE_WAYS];
} SwRaising;

void sw_raising_init (SwRaising *raising, const SwSolution *solution);

/* Which strips are tied one after the other: each with the one across (a whole tree) or its
 * mirror image (a partial one), pairs far from the last one first. Of an odd number the last
 * stands alone. Returns: (transfer full) (element-type int): every strip once. */
GArray *sw_tension_order (const SwDesign *design);
