// SPDX-License-Identifier: GPL-3.0-or-later
/* parts.h: what side and top view share. For the drawing layer only. */
#pragma once
#include "drawing/side-view.h"

/* A dot for every pixel as one path, filled once: `place` turns metres into device units. */
typedef void (*SwPlace) (const SwView *view, SwPoint point, double *x, double *y);

void sw_draw_pixels (cairo_t *cr,
                     const SwPicture *picture,
                     const SwSolution *solution,
                     SwPlace place);

/* Azimuth of guy 1 … count. */
double sw_guy_azimuth_deg (const SwDesign *design, int guy);
