// SPDX-License-Identifier: GPL-3.0-or-later
/* page-title.h: the design's title at the head of a true-size sheet, whole however long. */
#pragma once
#include "drawing/text.h"

typedef struct {
  double left, right; /* between the margins, points */
  double baseline;    /* of the head's first line */
  double taken;       /* what already stands there, from `left` */
} SwHeadLine;

/* On the right of the head's first line; one too long for that stands small above it, over the
 * whole width. */
void sw_page_title_draw (cairo_t *cr,
                         const SwStyle *style,
                         const SwHeadLine *head,
                         const char *title);
