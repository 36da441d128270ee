// SPDX-License-Identifier: GPL-3.0-or-later
/* strip-bow.h: how far the wind bows a strip, and what it then comes near: post and guys.
 *
 * A strip under an even load of w newtons a metre that pulls T along its chord hangs in a flat
 * parabola, exactly so for a load even along the chord: chord + w·ξ(1 − ξ)·L²/2T along the
 * load, at most w·L²/8T. The wind presses level, w = pressure·2.0·width·|cos φ| with φ the
 * angle between wind and strip; T is solved for that load (sw_strip_tension ()).
 *
 * Source  Irvine, Cable Structures (flat parabola)
 * Limits  a steady gust: no flutter, no swing; the strips' own weight, the stretch of the
 *         strip and the thickness of a guy are left out; bows over an eighth of the length are
 *         rough
 */
#pragma once
#include "engine/cone.h"

typedef struct {
  double strip_bow_m;          /* of a strip that faces the wind, at site.gust_mps */
  double strip_post_gap_m;     /* middle of the strip to the post's surface; below 0: the wind
                                * would press it so far beyond. NAN for an unknown post */
  double strip_guy_gap_m;      /* ribbon to the nearest guy; 0: hits it. NAN without guys */
  double strip_touch_gust_mps; /* least gust at which a strip touches either; at most 150 */

  double post_touch_mps, guy_touch_mps;              /* each alone; NAN where there is none */
  double post_share;                                 /* nearest place, hook 0 … tie 1 */
  double guy_across_m, guy_rise_m;                   /* level and upright parts of the gap */
  int guy_strip;                                     /* that strip, from 1; 0: none */
  double touch_bow_m, touch_tension_n, touch_facing; /* of the first touch; facing = |cos φ| */
} SwStripBow;

/* Takes a design that passed sw_design_check (). `post_od_m` 0: unknown. */
void sw_strip_bow_init (SwStripBow *bow,
                        const SwDesign *design,
                        const SwCone *cone,
                        double post_od_m);

/* Bow in the middle of a strip at a gust; `facing` = |cos φ|. 0 without wind. */
double sw_strip_bow_at (const SwDesign *design,
                        const SwCone *cone,
                        double gust_mps,
                        double facing);

/* Pull in that strip. */
double sw_strip_pull_at (const SwDesign *design,
                         const SwCone *cone,
                         double gust_mps,
                         double facing);

/* Whether in the design's gust a strip touches the post, or a guy: quicker than the whole. */
gboolean sw_strip_bow_hits_post (const SwDesign *design, const SwCone *cone, double post_od_m);
gboolean sw_strip_bow_hits_guy (const SwDesign *design, const SwCone *cone);
