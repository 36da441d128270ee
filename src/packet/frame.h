// SPDX-License-Identifier: GPL-3.0-or-later
/* frame.h: what stands round every build sheet: the frame and the title block at its foot, with
 * the design's title, the sheet's, its scale, units, what is to be lifted, a date to be written
 * by hand, and its number.
 *
 * Source  fields of a title block: ISO 7200; frame 20 mm from the left edge, 10 mm from the
 *         others: ISO 5457
 */
#pragma once
#include "packet/pen.h"

typedef struct {
  double width, height; /* of the page, points */
  const char *title;    /* of the sheet, translated */
  const char *scale;    /* nullable: "1:20" */
  int number, count;    /* sheet number of count */
} SwFrame;

/* What the frame leaves for the sheet itself. */
SwBox sw_frame_area (const SwPen *pen, double width, double height);

void sw_frame_draw (const SwPen *pen, const SwFrame *frame);

/* The drawing scales of the usual scale rulers: the largest that takes up at most `most_scale`
 * points a metre. `label` gets "1:20". Returns: points a metre. */
double sw_frame_scale (SwUnits units, double most_scale, char label[16]);
