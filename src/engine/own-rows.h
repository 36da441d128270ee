// SPDX-License-Identifier: GPL-3.0-or-later
/* own-rows.h: a person's own catalogue rows, in files of theirs and in a design.
 *
 * Both hold one JSON object, id → row: {"my-mast": {"part": "pipe", "name": …}}; what a row is,
 * sw_catalogue_add_own () says. A design carries a copy of each row it uses, so that it can be
 * solved on another computer; its copy wins.
 */
#pragma once
#include "engine/catalogue.h"
#include "engine/design.h"

/* Returns: (transfer full) (nullable): the rows over `base`, which is borrowed. Errors:
 * SW_ERROR_CATALOGUE "ID.KEY: what is wrong".
 */
SwCatalogue *sw_own_rows_over (JsonNode *rows, const SwCatalogue *base, GError **error);

/* The rows of all *.json in `folder`, by name of file; a folder that is not there has none.
 * What is bad is left out and told in `problems` (char *): "FILE: ID: KEY: what is wrong".
 * Returns: (transfer full): never NULL.
 */
SwCatalogue *sw_own_rows_load (const char *folder,
                               const SwCatalogue *base,
                               GPtrArray *problems);

/* Returns: (transfer full): the design with a copy of each own row that one of its keys names,
 * its own where it has one, else from `catalogue`, and no other rows; `design` itself where
 * that changes nothing.
 */
SwDesign *sw_own_rows_carry (SwDesign *design, const SwCatalogue *catalogue);
