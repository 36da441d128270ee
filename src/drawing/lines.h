// SPDX-License-Identifier: GPL-3.0-or-later
/* lines.h: hundreds of straight lines of one ink as one batch.
 *
 * Where lines cross, the ink lies there once, as in one path. Into an image surface they are
 * written straight into its bytes; anywhere else they are one path, stroked once. The two
 * differ by less than an eye sees (tests/drawing/lines-test.c).
 */
#pragma once
#include "drawing/style.h"

typedef struct SwLines SwLines;

typedef struct {
  SwInkId ink;
  double alpha; /* 0 … 1 */
  double width; /* units of the drawing */
} SwLineLook;

SwLines *sw_lines_begin (cairo_t *cr, const SwStyle *style, const SwLineLook *look);

/* From x1, y1 to x2, y2 in units of the drawing, with butt ends. */
void sw_lines_add (SwLines *lines, double x1, double y1, double x2, double y2);

/* Draws what is left and frees. */
void sw_lines_end (SwLines *lines);
