// SPDX-License-Identifier: GPL-3.0-or-later
/* ring-tape.h: the ring tape at true size: lanes to cut out and join, for the OUTSIDE of the
 * pipe.
 *
 * Full length = 2π·(ring_radius + OD/2), or the arc over the coverage of an open tree, or the
 * measured ring's. Units: points (1/72 in); 1 m = 72/0.0254 points.
 */
#pragma once
#include "drawing/side-view.h"

#define SW_POINTS_PER_M (72 / 0.0254)

typedef struct {
  double length_m; /* of the whole tape */
  double lane_m;   /* drawn length of one lane */
  double lane_height_m;
  int lanes, lanes_per_page, pages;
  gboolean as_built;
} SwTapePlan;

/* For a paper of width × height points. The long side of the lane lies along the long side of
 * the page. */
void sw_tape_plan_init (SwTapePlan *plan,
                        const SwSolution *solution,
                        double width_pt,
                        double height_pt);

/* Draws page 0 … pages − 1 into a page of width × height points, unscaled. */
void sw_tape_draw_page (cairo_t *cr,
                        const SwTapePlan *plan,
                        const SwSolution *solution,
                        const SwStyle *style,
                        const SwLanguage *language,
                        double width_pt,
                        double height_pt,
                        int page);
