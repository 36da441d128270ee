// SPDX-License-Identifier: GPL-3.0-or-later
/* json-check.h: refuses what json-glib lets through, before json-glib sees it.
 *
 * RFC 8259 to the letter, and also: at most `deepest` levels, no key twice in one object, no
 * number that overflows a double, no whole number beyond 64 bits, no \u0000.
 * Errors: SW_ERROR_SYNTAX, _REPEATED, _RANGE, naming the key path and the value; no line
 * breaks.
 */
#pragma once
#include <glib.h>

typedef struct {
  guint deepest;
  /* What may stand under a key path ("0.1 … 10"), said after a wrong or repeated value.
   * Returns: (transfer full) (nullable). May be NULL. */
  char *(*allowed) (const char *path);
} SwJsonRules;

gboolean sw_json_check (const char *data, gsize length, guint deepest, GError **error);
gboolean sw_json_check_keys (const char *data,
                             gsize length,
                             const SwJsonRules *rules,
                             GError **error);
