// SPDX-License-Identifier: GPL-3.0-or-later
/* stand-checks.h: what else may give besides what the gust limits count: the boards at their
 * half lap, the post as a column, the star's stub; and how the post sits in its sleeve.
 *
 * A check's factor is strength over demand at the design's gust, with its guys where there are
 * three and more; NAN where it does not apply. Each has a limit of its own, and no take-down
 * gust is shown above one.
 *
 * Boards: the arm that lies with the wind takes the whole moment at the ground. At the half lap
 * half its thickness is left; wood does not pull across the grain, so the board that fills the
 * notch does not help. On level ground the weight goes straight down. With guys the foot may
 * rock and the post stands as on a hinge: boards count only if the guys let go. Strength: NDS
 * 2018, No. 2 spruce-pine-fir, Fb = 875 psi (supplement, table 4A), 1.6 for wind, and its
 * factors for size, flat use and wet service (values from memory); it holds its own reserve.
 *
 * Column: M/(1 − P/Pcr)/S + P/A against the assumed yield. P: crown, star, strips and post, the
 * strips' pull with every strip taken as the windward one, guys. M: wind, a partial tree's
 * pull, the weight out of plumb by the play in the sleeve. Pcr: sw_post_critical_n ().
 *
 * Stub: wind on the star at its middle bends the stub where it leaves the crown.
 *
 * Sleeve: two forces a depth apart carry the moment; play lets the post lean until it touches
 * above on one side and below on the other.
 */
#pragma once
#include <glib.h>

#define SW_FACTOR_BOARD 1.0

typedef struct {
  double factor;            /* needed: boards 1, else 1.5 */
  double limit_mps;         /* with guys where there are any; boards: NAN then */
  double limit_unguyed_mps; /* if they let go */
} SwCheck;

typedef struct {
  SwCheck board, column, stub;
  double board_stress_pa, lap_m; /* what is left of the thickness */
  double column_axial_n, column_critical_n, column_amplifier;
  double column_guys_n;    /* of the axial force: the guys' part */
  double column_moment_nm; /* before it is amplified */
  double stub_stress_pa;
  double sleeve_lean_m, sleeve_top_n, sleeve_bottom_n;
  double sleeve_moment_nm, sleeve_shear_n; /* what it carries, at the ground */
} SwStandChecks;

typedef struct SwStandModel SwStandModel;

/* What a board of lumber 1 1/2 in thick bears in bending. */
double sw_board_strength_pa (double width_m);

/* All but the limits. */
void sw_stand_checks_init (SwStandChecks *checks, const SwStandModel *model);

/* The limits; the model's gust must not be 0. */
void sw_stand_checks_limit (SwStandChecks *checks, const SwStandModel *model);

/* The least limit; SW_GUST_MOST_MPS where no check applies. */
double sw_stand_checks_least_mps (const SwStandChecks *checks, gboolean guyed);
