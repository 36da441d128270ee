// SPDX-License-Identifier: GPL-3.0-or-later
/* fit-section.h: how post, plate, star and sleeve go together, as sections through the axis, to
 * scale. Pairs are numbered as in the solution's list of fits, from 1.
 *
 * x is to the right of the axis; up is from the plate's underside, or from what the post stands
 * on.
 */
#pragma once
#include "drawing/side-view.h"

typedef struct {
  double half_m; /* to each side of the axis, labels left out */
  double lowest_m, top_m;
} SwSectionSize;

SwSectionSize sw_crown_section_size (const SwSolution *solution);
SwSectionSize sw_sleeve_section_size (const SwSolution *solution);

/* Numbers stand right of `label_x`, device units, below one another. */
void sw_crown_section_draw (cairo_t *cr,
                            const SwPicture *picture,
                            const SwSolution *solution,
                            double label_x);
void sw_sleeve_section_draw (cairo_t *cr,
                             const SwPicture *picture,
                             const SwSolution *solution,
                             double label_x);
