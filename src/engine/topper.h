// SPDX-License-Identifier: GPL-3.0-or-later
/* topper.h: the star's outline and the places of its pixels.
 *
 * A flat star that faces the viewer (x across, z up), in the plane of the post. `rings`
 * outlines sit inside one another; the pixels are shared out along them evenly by length,
 * outermost first.
 */
#pragma once
#include "engine/strip-points.h"

/* Returns: (transfer full) (element-type SwPoint): 2·points corners of outline `ring` (0 =
 * outermost), tip first, clockwise seen by the viewer. Empty without a star.
 */
GArray *sw_topper_outline (const SwDesign *design, int ring);

/* Returns: (transfer full) (element-type SwPoint), in the order data reaches them. */
GArray *sw_topper_pixels (const SwDesign *design);
