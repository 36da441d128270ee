// SPDX-License-Identifier: GPL-3.0-or-later
/* stand.h: what holds the tree up and what it can stand: foot, post, guys, socket, ring.
 *
 * What does not apply is NAN. Factors are strength over demand; needed: tipping, sliding,
 * post 1.5, rope 3, stake 2.
 */
#pragma once
#include "engine/wind.h"

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

extern const char *const sw_limit_words[]; /* "none", "tipping", … */

typedef struct {
  double foot_mass_kg, foot_lever_m, tipping_factor, tipping_factor_held, sliding_factor;
  double post_stress_pa, post_factor, tip_deflection_m;
  double guy_tension_n, guy_factor, stake_factor;
  double socket_depth_needed_m, side_pull_n, strip_tension_n, first_hz;
  double ring_lift_m, ring_stress_pa, ring_tie_n, ring_tie_gust_n, ring_stress_gust_pa;
  double gust_limit_unguyed_mps, gust_limit_guyed_mps, gust_limit_mps;
  SwLimitReason limit_reason;
  double take_down_gust_mps; /* what a person is shown; NAN where none may be */
} SwSupport;

/* Errors: SW_ERROR_NUMERIC. */
gboolean sw_support_init (SwSupport *support,
                          const SwDesign *design,
                          const SwCone *cone,
                          const SwWind *wind,
                          const SwCatalogue *catalogue,
                          GError **error);
