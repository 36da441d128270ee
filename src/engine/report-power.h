// SPDX-License-Identifier: GPL-3.0-or-later
/* report-power.h: the lists of the report's power: feeds of a strip, and what hangs on each
 * supply. */
#pragma once
#include "engine/solution.h"

/* Returns: (transfer full): one row a place where power enters a strip, from the ring up. A
 * fuse is absent where none carries the load. */
JsonArray *sw_report_feeds (const SwSolution *solution);

/* Returns: (transfer full): one row a supply. */
JsonArray *sw_report_zones (const SwSolution *solution);
