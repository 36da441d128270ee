// SPDX-License-Identifier: GPL-3.0-or-later
/* process-catalogue.h: the catalogue of whoever runs the program (commands, window): the
 * built-in rows and the person's own out of $XDG_DATA_HOME/spirewright/catalogue.
 */
#pragma once
#include "engine/catalogue.h"

/* Loaded once, by whichever thread asks first, never changed, never freed.
 * Returns: (transfer none) (nullable); Errors: those of sw_catalogue_builtin ().
 */
const SwCatalogue *sw_catalogue_of_process (GError **error);

/* Returns: (transfer none) (element-type utf8): what of the person's own rows was left out and
 * why, a line each. */
const GPtrArray *sw_catalogue_problems_of_process (void);
