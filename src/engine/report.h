// SPDX-License-Identifier: GPL-3.0-or-later
/* report.h: a solution as JSON and as text; the same numbers in both, SI, English.
 *
 * `basis` gives for each result key one line, basis.h's: its formula and its source.
 */
#pragma once
#include "engine/solution.h"

/* Returns: (transfer full): the report object; absent values have no key. */
JsonNode *sw_report_to_json (const SwSolution *solution);

/* Returns: (transfer full). */
char *sw_report_to_text (const SwSolution *solution);
