// SPDX-License-Identifier: GPL-3.0-or-later
/* json-value.h: single JSON values: numbers out of them, and words for messages about them. */
#pragma once
#include "engine/error.h"

#include <json-glib/json-glib.h>

/* Whether the node is a finite number; whole ones count too. Never −0. */
gboolean sw_json_get_number (JsonNode *node, double *value);

/* Whether the node is a plain value of that type, such as G_TYPE_STRING. */
gboolean sw_json_holds (JsonNode *node, GType type);

/* Returns: (nullable): the member of an object; NULL also for a node that is none, or NULL. */
JsonNode *sw_json_member (JsonNode *node, const char *name);

/* Sets "PATH: VALUE what". Returns: FALSE. */
gboolean sw_json_refuse (GError **error,
                         SwError code,
                         const char *path,
                         JsonNode *node,
                         const char *what);
