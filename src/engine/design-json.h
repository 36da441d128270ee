// SPDX-License-Identifier: GPL-3.0-or-later
/* design-json.h: a design from and to a JSON tree. For design-*.c only; others use
 * design-file.h. */
#pragma once
#include "engine/design.h"

/* `root` comes from an immutable parser; all keys are checked. Returns: (transfer full)
 * (nullable). */
SwDesign *sw_design_from_json (JsonNode *root, GError **error);

/* Returns: (transfer full): every known key in its order, then the unknown ones. */
JsonNode *sw_design_to_json (const SwDesign *design);

/* The groups and the keys outside groups ("shape", "held"), in the order of the file. */
extern const char *const sw_design_order[];
extern const guint sw_design_n_order;

/* The keys that are no rows of design-keys.h: held, prices.override, prices.have,
 * as_built.ring_points, catalogue. */
gboolean sw_design_is_structured (const char *path);
gboolean sw_design_set_structured (SwDesign *design,
                                   const char *path,
                                   JsonNode *value,
                                   GError **error);

/* `path` is "prices.override.ID" or "prices.have.ID". */
gboolean sw_design_set_price (SwDesign *design, const char *path, double price, GError **error);

/* Returns: (transfer full) (nullable): the root object with all known keys left out; of the
 * ring points those that hold more than a place, with their azimuth. Sealed.
 */
JsonNode *sw_design_unknown_keys (JsonNode *root);
