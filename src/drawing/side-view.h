// SPDX-License-Identifier: GPL-3.0-or-later
/* side-view.h and top view: the tree to scale, for screen and paper alike. Projects, never
 * solves. */
#pragma once
#include "drawing/style.h"
#include "drawing/text.h"
#include "drawing/view.h"

typedef enum {
  SW_DRAW_BACKDROP = 1 << 0, /* paper, ground, person: what a drag does not change */
  SW_DRAW_TREE = 1 << 1,     /* post, crown, ring, strips, pixels, star, guys, foot */
  SW_DRAW_DIMENSIONS = 1 << 2,
  SW_DRAW_ALL = SW_DRAW_BACKDROP | SW_DRAW_TREE | SW_DRAW_DIMENSIONS,
} SwDrawParts;

typedef struct {
  const SwView *view;
  const SwStyle *style;
  const SwLanguage *language;
  SwTextCache *texts; /* nullable */
  SwDrawParts parts;
} SwPicture;

void sw_side_view_draw (cairo_t *cr, const SwPicture *picture, const SwSolution *solution);

/* The bare outline (post, cone, star) of another solution, pale: the shape before a drag. */
void sw_side_view_draw_ghost (cairo_t *cr, const SwPicture *picture, const SwSolution *before);
