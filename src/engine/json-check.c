// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/json-check.h"

gboolean
sw_json_check (const char *data, gsize length, guint deepest, GError **error)
{
  return TRUE;
}
