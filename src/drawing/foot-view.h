// SPDX-License-Identifier: GPL-3.0-or-later
/* foot-view.h: the crossed boards of the foot, to scale: each board with its half lap, from the
 * side, and the whole from above with slabs and bolts. For a foot on boards.
 *
 * Texts of dimensions come from the caller, as a tape has them.
 */
#pragma once
#include "drawing/side-view.h"

typedef struct {
  const char *start, *width, *depth; /* to the first cut, of the lap, of the cut */
} SwLapTexts;

/* Metres from the foot of the lower board to the top of the upper one: the two lie one above
 * the other with room for dimensions. x from their left ends. */
double sw_half_lap_height_m (const SwSolution *solution);
void sw_half_lap_draw (cairo_t *cr,
                       const SwPicture *picture,
                       const SwSolution *solution,
                       const SwLapTexts *texts);

/* x to the viewer's right, up away from the viewer; the post at 0,0. */
double sw_foot_plan_half_m (const SwSolution *solution);
void sw_foot_plan_draw (cairo_t *cr, const SwPicture *picture, const SwSolution *solution);
