// SPDX-License-Identifier: GPL-3.0-or-later
/* dimension.h: dimension lines in the manner of ISO 129-1: thin line, filled arrows, extension
 * lines that run just past it, the text above the line, read from the bottom or the right;
 * beside it where the line is too short.
 */
#pragma once
#include "drawing/side-view.h"

/* Between two heights (device y), at x; extension lines come from x_low and x_high. */
typedef struct {
  double x, y_low, y_high;
  double from_low, from_high; /* x where the extension lines begin */
  const char *text;
} SwHeightDimension;

void sw_dimension_height (cairo_t *cr,
                          const SwPicture *picture,
                          const SwHeightDimension *dimension);

/* Between two places on one level, at y below them; extension lines come from `from`. */
void sw_dimension_width (cairo_t *cr,
                         const SwPicture *picture,
                         double x1,
                         double x2,
                         double y,
                         double from,
                         const char *text);

/* Along a line from 1 to 2, `off` device units to its left; extension lines begin `from` units
 * off it. What lies under the text is taken away.
 */
typedef struct {
  double x1, y1, x2, y2;
  double off, from;
  const char *text;
} SwSlantDimension;

void sw_dimension_along (cairo_t *cr,
                         const SwPicture *picture,
                         const SwSlantDimension *dimension);

/* The look of a dimension's text. */
SwTextLook sw_dimension_look (const SwStyle *style);
