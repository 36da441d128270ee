// SPDX-License-Identifier: GPL-3.0-or-later
/* fit.h: moves one quantity so that the design is exact.
 *
 * sw_fit_tail      tail = tail_min exactly (pixels: the largest whole number that leaves at
 * least it) sw_fit_spacing   spacing on the tie circle = the one asked for (strip_count:
 * nearest whole) Errors           SW_ERROR_NO_SOLUTION: nothing inside the ranges does it, and
 * why Source           Pythagoras on the slant; spacing = θ·R/m with m gaps
 */
#pragma once
#include "engine/design.h"

typedef enum { SW_FIT_RING_RADIUS, SW_FIT_STRIP_COUNT, SW_FIT_COVERAGE } SwFitSpacing;

/* Returns: (transfer full) (nullable): a new design. SW_GIVES_TAIL is refused: nothing to move.
 */
SwDesign *sw_fit_tail (const SwDesign *design, SwGives quantity, GError **error);
SwDesign *sw_fit_spacing (const SwDesign *design,
                          SwFitSpacing quantity,
                          double spacing_m,
                          GError **error);
