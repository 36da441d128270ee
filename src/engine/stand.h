// SPDX-License-Identifier: GPL-3.0-or-later
/* stand.h: what holds the tree up and what it can stand: foot, post, guys, socket, ring.
 *
 * What does not apply is NAN. Factors are strength over demand; needed: tipping, sliding,
 * post 1.5 (customary for overturning in building codes), rope 3, stakes and ring ties 2 (soil
 * scatter; our own choice). The foot's mass is all that stands on it: ballast, post up to the
 * crown, crown, star, strips (they hang from the crown), and the ring when it is tied to the
 * foot. The boards' own weight is left out, on the safe side. Stiffness and yield: tube.h.
 */
#pragma once
#include "engine/post-statics.h"
#include "engine/stand-checks.h"
#include "engine/wind.h"

#define SW_FACTOR_NEEDED 1.5 /* tipping, sliding, post */
#define SW_FACTOR_ROPE 3.0
#define SW_FACTOR_STAKE 2.0
#define SW_GUST_MOST_MPS 150.0

typedef enum {
  SW_LIMIT_NONE,
  SW_LIMIT_TIPPING,
  SW_LIMIT_SLIDING,
  SW_LIMIT_SOCKET,
  SW_LIMIT_POST,
  SW_LIMIT_GUY,
  SW_LIMIT_STAKE,
  SW_LIMIT_RING,
} SwLimitReason;

extern const char *const sw_limit_words[];  /* "none", "tipping", … */
extern const char *const sw_limit_labels[]; /* N_(): what happens then: "the foot tips", … */

typedef struct {
  double foot_mass_kg, foot_lever_m, tipping_factor, tipping_factor_held, sliding_factor;
  double post_stress_pa, post_factor, tip_deflection_m;
  double guy_tension_n, guy_factor, stake_factor;
  double guyed_post_stress_pa,
    guyed_base_shear_n; /* worse of pinned and fixed base; pinned base */
  double socket_depth_needed_m, side_pull_n, strip_tension_n, first_hz;
  double ring_lift_m, ring_stress_pa, ring_tie_n, ring_tie_gust_n, ring_stress_gust_pa;
  double gust_limit_unguyed_mps, gust_limit_guyed_mps, gust_limit_mps;
  SwLimitReason limit_reason;
  SwLimitReason limit_reason_unguyed, limit_reason_guyed;
  SwStandChecks checks;
  double take_down_gust_mps; /* what a person is shown; NAN where none may be */
} SwSupport;

/* Errors: SW_ERROR_NUMERIC. */
gboolean sw_support_init (SwSupport *support,
                          const SwDesign *design,
                          const SwCone *cone,
                          const SwWind *wind,
                          const SwCatalogue *catalogue,
                          GError **error);
