// SPDX-License-Identifier: GPL-3.0-or-later
/* csv.h: tables of the packet as CSV: RFC 4180, CRLF, one header row, a decimal point in every
 * locale, absent = empty. */
#pragma once
#include "engine/solution.h"

/* Each returns: (transfer full): the file's text. */
char *sw_csv_parts (const SwSolution *solution);
char *sw_csv_cuts (const SwSolution *solution);
char *sw_csv_marks (const SwSolution *solution);
char *sw_csv_pixels (const SwSolution *solution);
char *sw_csv_ports (const SwSolution *solution);
/* Only when measured. */
char *sw_csv_as_built_marks (const SwSolution *solution);
