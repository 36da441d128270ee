// SPDX-License-Identifier: GPL-3.0-or-later
/* crown-template.h: the crown plate's drilling sheet at true size, top side up, tiled when
 * large. */
#pragma once
#include "drawing/ring-tape.h"

typedef struct {
  int columns, rows, pages; /* pages = columns · rows */
  double tile_width_m, tile_height_m;
} SwCrownTiles;

void sw_crown_tiles_init (SwCrownTiles *tiles,
                          const SwSolution *solution,
                          double width_pt,
                          double height_pt);
void sw_crown_template_draw_page (cairo_t *cr,
                                  const SwCrownTiles *tiles,
                                  const SwSolution *solution,
                                  const SwStyle *style,
                                  const SwLanguage *language,
                                  double width_pt,
                                  double height_pt,
                                  int page);

/* The plate without a page round it, 0,0 at its centre, points, y up on the sheet = away from
 * the viewer. */
void sw_crown_template_draw (cairo_t *cr,
                             const SwSolution *solution,
                             const SwStyle *style,
                             const SwLanguage *language);
