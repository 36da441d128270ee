// SPDX-License-Identifier: GPL-3.0-or-later
/* json-text.h: JSON as text that people can read and that reads back to the same bits.
 *
 * Two spaces a level; short lists of plain values on one line; each number with the fewest
 * digits that give the same double back; never NaN or infinity (a programmer's mistake).
 */
#pragma once
#include <json-glib/json-glib.h>

/* Returns: (transfer full), with a closing line break. */
char *sw_json_to_text (JsonNode *root, gsize *length);

/* The same without a space or a line break that is not needed. */
char *sw_json_to_tight_text (JsonNode *root, gsize *length);

/* Returns: (transfer full): the fewest digits that read back to the same double, with a decimal
 * point; −0 as "-0.0", since many readers take "-0" for the whole number 0.
 */
char *sw_json_number (double value);
