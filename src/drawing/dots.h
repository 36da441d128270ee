// SPDX-License-Identifier: GPL-3.0-or-later
/* dots.h: thousands of small squares of one ink as one batch.
 *
 * Into an image surface they are written straight into its bytes: a path of so many rectangles
 * costs cairo a hundred times that. Anywhere else (a recording, a PDF, a clip, a turned or
 * scaled drawing) they are one path, filled once. Both give the same bytes on an image
 * (tests/drawing/dots-test.c).
 */
#pragma once
#include "drawing/style.h"

typedef struct SwDots SwDots;

/* `size` in device units of the drawing; squares are set on whole units. */
SwDots *sw_dots_begin (cairo_t *cr, const SwStyle *style, SwInkId ink, double size);

/* A square round x, y. */
void sw_dots_add (SwDots *dots, double x, double y);

/* Draws what is left and frees. */
void sw_dots_end (SwDots *dots);
