// SPDX-License-Identifier: GPL-3.0-or-later
/* report.h: a solution as JSON and as text; the same numbers in both, SI, English.
 *
 * `basis` gives for each result key one line, basis.h's: its formula and its source. `working`
 * gives what can be checked by hand: working.h's formula, inputs and result.
 */
#pragma once
#include "engine/solution.h"

/* Returns: (transfer full): the report object; absent values have no key. */
JsonNode *sw_report_to_json (const SwSolution *solution);

/* The report's `working` object: formula, inputs, result, source, by key. `key_or_group`
 * (nullable): only that key or group.
 * Returns: (transfer full).
 */
JsonNode *sw_report_workings (const SwSolution *solution, const char *key_or_group);

/* Without the workings. Returns: (transfer full). */
char *sw_report_to_text (const SwSolution *solution);

/* The workings as a person reads them; empty where none applies. Returns: (transfer full). */
char *sw_report_workings_to_text (const SwSolution *solution, const char *key_or_group);
