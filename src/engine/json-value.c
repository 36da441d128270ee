// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/json-value.h"

#include "engine/json-text.h"

#include <math.h>

gboolean
sw_json_holds (JsonNode *node, GType type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

gboolean
sw_json_get_number (JsonNode *node, double *value)
{
  if (sw_json_holds (node, G_TYPE_INT64))
    *value = (double) json_node_get_int (node);
  else if (sw_json_holds (node, G_TYPE_DOUBLE))
    *value = json_node_get_double (node) + 0.0; /* −0 + 0 is 0 */
  else
    return FALSE;
  return isfinite (*value);
}

JsonNode *
sw_json_member (JsonNode *node, const char *name)
{
  if (node == NULL || !JSON_NODE_HOLDS_OBJECT (node))
    return NULL;
  return json_object_get_member (json_node_get_object (node), name);
}

/* A plain value as the file has it; what is larger only hinted at. */
static char *
shown_node (JsonNode *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    return g_strdup ("{…}");
  if (JSON_NODE_HOLDS_ARRAY (node))
    return g_strdup ("[…]");
  g_autofree char *text = sw_json_to_text (node, NULL);
  return sw_shown (g_strchomp (text), -1);
}

gboolean
sw_json_refuse (GError **error,
                SwError code,
                const char *path,
                JsonNode *node,
                const char *what)
{
  g_autofree char *value = shown_node (node);

  sw_set_error (error, code, "%s: %s %s", path, value, what);
  return FALSE;
}
