// SPDX-License-Identifier: GPL-3.0-or-later
/* top-view.h: the tree from above, x to the right, away from the viewer upwards. */
#pragma once
#include "drawing/side-view.h"

void sw_top_view_draw (cairo_t *cr, const SwPicture *picture, const SwSolution *solution);
void sw_top_view_draw_ghost (cairo_t *cr, const SwPicture *picture, const SwSolution *before);
