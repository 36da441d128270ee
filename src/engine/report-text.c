// SPDX-License-Identifier: GPL-3.0-or-later
/* report-text.c: the report's JSON as lines a person can read: the same numbers, one a line. */
#include "engine/json-text.h"
#include "engine/report.h"

#include <string.h>

static void append_node (GString *text, const char *path, JsonNode *node);

static void
append_line (GString *text, const char *path, const char *value)
{
  g_string_append_printf (text, "%-34s %s\n", path, value);
}

static void
append_plain (GString *text, const char *path, JsonNode *node)
{
  GType type = json_node_get_value_type (node);

  if (type == G_TYPE_STRING) {
    append_line (text, path, json_node_get_string (node));
  } else if (type == G_TYPE_BOOLEAN) {
    append_line (text, path, json_node_get_boolean (node) ? "yes" : "no");
  } else {
    g_autofree char *number = sw_json_number (json_node_get_double (node));
    append_line (text, path, number);
  }
}

static char *
cell_text (JsonNode *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node) || JSON_NODE_HOLDS_ARRAY (node)) {
    g_autofree char *json = json_to_string (node, FALSE);
    return g_strdup (json);
  }
  if (json_node_get_value_type (node) == G_TYPE_STRING)
    return json_node_dup_string (node);
  if (json_node_get_value_type (node) == G_TYPE_BOOLEAN)
    return g_strdup (json_node_get_boolean (node) ? "yes" : "no");
  return sw_json_number (json_node_get_double (node));
}

/* A list of objects: a line a row, "name value" in the rows' own order. */
static void
append_rows (GString *text, const char *path, JsonArray *array)
{
  g_string_append_printf (text, "\n%s\n", path);
  for (guint i = 0; i < json_array_get_length (array); i++) {
    JsonObject *row = json_array_get_object_element (array, i);
    g_autoptr (GList) names = json_object_get_members (row);
    for (GList *name = names; name != NULL; name = name->next) {
      g_autofree char *cell = cell_text (json_object_get_member (row, name->data));
      g_string_append_printf (text, "  %s %s", (const char *) name->data, cell);
    }
    g_string_append_c (text, '\n');
  }
}

static void
append_object (GString *text, const char *path, JsonObject *object)
{
  g_autoptr (GList) names = json_object_get_members (object);

  if (*path != '\0' && strchr (path, '.') == NULL)
    g_string_append_printf (text, "\n%s\n", path);
  for (GList *name = names; name != NULL; name = name->next) {
    g_autofree char *full = *path == '\0'
                              ? g_strdup (name->data)
                              : g_strdup_printf ("%s.%s", path, (const char *) name->data);
    append_node (text, full, json_object_get_member (object, name->data));
  }
}

static void
append_node (GString *text, const char *path, JsonNode *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    append_object (text, path, json_node_get_object (node));
  else if (JSON_NODE_HOLDS_ARRAY (node))
    append_rows (text, path, json_node_get_array (node));
  else
    append_plain (text, path, node);
}

char *
sw_report_to_text (const SwSolution *solution)
{
  g_autoptr (JsonNode) root = sw_report_to_json (solution);
  GString *text = g_string_new (NULL);

  append_node (text, "", root);
  return g_string_free (text, FALSE);
}
