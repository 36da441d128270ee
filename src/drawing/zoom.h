// SPDX-License-Identifier: GPL-3.0-or-later
/* zoom.h: how much nearer than the whole tree a view is, and where it looks.
 *
 * A factor of 1 shows the whole; then nothing is shifted. The whole picture can not be moved
 * out of sight: its edges stay at or outside the view's.
 */
#pragma once
#include "drawing/view.h"

#define SW_ZOOM_MOST 16.0

typedef struct {
  double factor;           /* 1 … SW_ZOOM_MOST; 0 counts as 1 */
  double shift_x, shift_y; /* of the picture, device units */
} SwZoom;

/* The view nearer than `whole`. */
SwView sw_zoom_view (const SwZoom *zoom, const SwView *whole);

/* Another factor, taken into its range, with what stands at x, y kept there. */
SwZoom sw_zoom_at (const SwZoom *zoom, const SwView *whole, double factor, double x, double y);

SwZoom sw_zoom_shifted (const SwZoom *zoom, const SwView *whole, double dx, double dy);
