// SPDX-License-Identifier: GPL-3.0-or-later
/* check-bar.h: bars of known length on every true-size sheet, across and down, in millimetres
 * and in inches. */
#pragma once
#include "drawing/side-view.h"

#define SW_PT_PER_MM (72 / 25.4)
#define SW_CHECK_BARS_HEIGHT_MM 18.0 /* room the bars take at the foot of a page */

/* Along the foot of a page of width × height points, inside `margin`; the down bars stand at
 * the right edge. */
void sw_check_bars_draw (cairo_t *cr,
                         const SwStyle *style,
                         const SwLanguage *language,
                         double width_pt,
                         double height_pt,
                         double margin_pt);
