// SPDX-License-Identifier: GPL-3.0-or-later
/* edit.h: one change a person makes, with what gives way to it.
 *
 * A number is brought into its range (the range of its key, and the rules that join keys) and
 * rounded where the key is whole. A locked key refuses. When the change moves the strip's fit
 * (a height, a radius, pixels, pitch, a gap) and `gives_way` names another quantity that is not
 * locked, that quantity moves so that the gap at the tie is the least allowed. Otherwise the
 * gap at the tie takes the difference.
 */
#pragma once
#include "engine/design.h"

/* The spacing at the ring, which is no file key: moves the ring radius; the coverage where that
 * is locked and the tree is open; the strip count otherwise.
 */
#define SW_EDIT_SPACING "geometry.spacing_ring_m"

/* Returns: (transfer full) (nullable): a new design.
 * Errors: SW_ERROR_RANGE with the wall that was hit ("shape.crown_height_m: locked", or what
 *         gives way has no value that fits); SW_ERROR_UNKNOWN_KEY.
 */
SwDesign *sw_edit_number (const SwDesign *design,
                          const char *path,
                          double value,
                          GError **error);
SwDesign *sw_edit_text (const SwDesign *design,
                        const char *path,
                        const char *value,
                        GError **error);

/* Lock or free a key. Returns: (transfer full). */
SwDesign *sw_edit_hold (const SwDesign *design, const char *path, gboolean hold);

/* How low and how high sw_edit_number () can take the key in this design. */
void sw_edit_limits (const SwDesign *design, const char *path, double *low, double *high);
