// SPDX-License-Identifier: GPL-3.0-or-later
/* crown-svg.h: the crown plate for a cutter: SVG in millimetres, top side up.
 *
 * One user unit is one millimetre, 0,0 the plate's centre, x to the viewer's right, y towards
 * the viewer (down the page). Group "cut" holds the holes, one plain circle a strip, strip 1
 * first; group "notes" what must not be cut: centre, hole circle, words.
 */
#pragma once
#include "engine/solution.h"

/* Returns: (transfer full): the file's text. */
char *sw_crown_svg (const SwSolution *solution, const SwLanguage *language);
