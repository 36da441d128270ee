// SPDX-License-Identifier: GPL-3.0-or-later
/* topper.h: the star's outline and the places of its pixels.
 *
 * A flat star that faces the viewer (x across, z up) in the plane y = 0. It stands on its stub:
 * the lowest corner at crown_height + stub, the outermost outline exactly width × height.
 * `rings` outlines sit inside one another, ring i of R scaled by (R − i)/R about the middle.
 *
 * Takes    a design that passed sw_design_check ()
 * Errors   none; without a star every list is empty
 * Source   inner corners: the sharpest regular star polygon {n/k} of n points, k the largest
 *          whole number below n/2 (Coxeter, Regular Polytopes, ch. VI); for 3 and 4 points,
 *          which have none, the pentagram's
 */
#pragma once
#include "engine/strip-points.h"

/* Radius of the inner corners over that of the tips: cos (kπ/n) / cos ((k − 1)π/n). */
double sw_topper_inner_ratio (int points);

/* Returns: (transfer full) (element-type SwPoint): 2·points corners of outline `ring` (0 =
 * outermost), the top tip first, clockwise seen by the viewer.
 */
GArray *sw_topper_outline (const SwDesign *design, int ring);

/* The pixels of each outline, outermost first: in proportion to its length, by largest
 * remainder, so that they sum to topper.pixels.
 * Returns: (transfer full) (element-type int).
 */
GArray *sw_topper_ring_pixels (const SwDesign *design);

/* Along each outline the pixels stand at equal lengths, the first at the top tip, clockwise.
 * Returns: (transfer full) (element-type SwPoint), in the order data reaches them.
 */
GArray *sw_topper_pixels (const SwDesign *design);
