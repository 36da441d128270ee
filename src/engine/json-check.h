// SPDX-License-Identifier: GPL-3.0-or-later
/* json-check.h: refuses what json-glib lets through, before json-glib sees it.
 *
 * RFC 8259 to the letter, and also: at most `deepest` levels, no key twice in one object, no
 * number that overflows a double, no whole number beyond 64 bits, no \u0000.
 * Errors: SW_ERROR_SYNTAX, _REPEATED, _RANGE, naming the key path.
 */
#pragma once
#include <glib.h>

gboolean sw_json_check (const char *data, gsize length, guint deepest, GError **error);
