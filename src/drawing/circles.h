// SPDX-License-Identifier: GPL-3.0-or-later
/* circles.h: the line of a whole circle.
 *
 * Into an image surface it is written straight into the bytes; anywhere else it is a path. The
 * two differ by less than an eye sees (tests/drawing/circles-test.c).
 */
#pragma once
#include "drawing/lines.h"

typedef struct {
  double x, y, radius; /* units of the drawing */
} SwCircle;

/* The line's middle runs on the circle. */
void sw_circle_draw (cairo_t *cr,
                     const SwStyle *style,
                     const SwCircle *circle,
                     const SwLineLook *look);
