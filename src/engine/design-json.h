// SPDX-License-Identifier: GPL-3.0-or-later
/* design-json.h: a design as a JSON object and back; design-file.c does the bytes and the disk.
 */
#pragma once
#include "engine/design.h"

/* `root` must be sealed (immutable); the design keeps it for its unknown keys.
 * Returns: (transfer full) (nullable). Errors: as design-file.h.
 */
SwDesign *sw_design_from_json (JsonNode *root, GError **error);

/* Returns: (transfer full): known keys first, in the order of the format, then the unknown
 * ones. */
JsonNode *sw_design_to_json (const SwDesign *design);

/* A structured key from its JSON value: held, prices.override, prices.have,
 * as_built.ring_points. Returns: FALSE with SW_ERROR_UNKNOWN_KEY when the path is none of
 * these.
 */
gboolean sw_design_set_structured (SwDesign *design,
                                   const char *path,
                                   JsonNode *value,
                                   GError **error);
