// SPDX-License-Identifier: GPL-3.0-or-later
/* report-text.c: the report's JSON as a person reads it: the same numbers to the last digit, a
 * section a group, lists as tables, findings as sentences.
 */
#include "engine/json-text.h"
#include "engine/report.h"

#include <string.h>

#define NAME_COLUMNS 34

static void
append_padded (GString *text, const char *cell, gsize columns, gboolean right)
{
  gsize length = (gsize) g_utf8_strlen (cell, -1);
  gsize pad = length < columns ? columns - length : 0;

  if (right)
    g_string_append_printf (text, "%*s%s", (int) pad, "", cell);
  else
    g_string_append_printf (text, "%s%*s", cell, (int) pad, "");
}

static char *
plain_text (JsonNode *node)
{
  GType type = json_node_get_value_type (node);

  if (type == G_TYPE_STRING)
    return json_node_dup_string (node);
  if (type == G_TYPE_BOOLEAN)
    return g_strdup (json_node_get_boolean (node) ? "yes" : "no");
  return sw_json_number (json_node_get_double (node));
}

/* The bars of a cut plan: "1.9 + 0.4 | 1.9". */
static char *
bars_text (JsonArray *bars)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < json_array_get_length (bars); i++) {
    JsonArray *bar = json_array_get_array_element (bars, i);
    for (guint j = 0; j < json_array_get_length (bar); j++) {
      g_autofree char *piece = sw_json_number (json_array_get_double_element (bar, j));
      g_string_append_printf (text, "%s%s", j > 0 ? " + " : i > 0 ? " | " : "", piece);
    }
  }
  return g_string_free (text, FALSE);
}

static char *
cell_text (JsonObject *row, const char *name)
{
  JsonNode *node = json_object_get_member (row, name);

  if (node == NULL)
    return g_strdup ("");
  return JSON_NODE_HOLDS_ARRAY (node) ? bars_text (json_node_get_array (node))
                                      : plain_text (node);
}

/* Columns in the order of the first row; it has every one that a later row has. */
static gsize
column_width (JsonArray *rows, const char *name)
{
  gsize width = strlen (name);

  for (guint i = 0; i < json_array_get_length (rows); i++) {
    g_autofree char *cell = cell_text (json_array_get_object_element (rows, i), name);
    width = MAX (width, (gsize) g_utf8_strlen (cell, -1));
  }
  return width;
}

static gboolean
is_number (JsonObject *row, const char *name)
{
  JsonNode *node = json_object_get_member (row, name);

  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) != G_TYPE_STRING &&
         json_node_get_value_type (node) != G_TYPE_BOOLEAN;
}

static void
trim_line (GString *text)
{
  while (text->len > 0 && text->str[text->len - 1] == ' ')
    g_string_truncate (text, text->len - 1);
  g_string_append_c (text, '\n');
}

static void
append_table (GString *text, JsonArray *rows)
{
  guint n_rows = json_array_get_length (rows);

  if (n_rows == 0)
    return;
  JsonObject *first = json_array_get_object_element (rows, 0);
  g_autoptr (GList) names = json_object_get_members (first);
  g_autoptr (GArray) widths = g_array_new (FALSE, FALSE, sizeof (gsize));
  for (GList *name = names; name != NULL; name = name->next) {
    gsize width = column_width (rows, name->data);
    g_array_append_val (widths, width);
  }
  for (guint i = 0; i <= n_rows; i++) { /* row 0 holds the names */
    guint column = 0;
    for (GList *name = names; name != NULL; name = name->next, column++) {
      g_autofree char *cell =
        i == 0 ? g_strdup (name->data)
               : cell_text (json_array_get_object_element (rows, i - 1), name->data);
      g_string_append (text, "  ");
      append_padded (text,
                     cell,
                     g_array_index (widths, gsize, column),
                     is_number (first, name->data));
    }
    trim_line (text);
  }
}

static void
append_findings (GString *text, JsonArray *findings)
{
  for (guint i = 0; i < json_array_get_length (findings); i++) {
    JsonObject *finding = json_array_get_object_element (findings, i);
    g_string_append_printf (text,
                            "  %-4s  %s\n        %s, about %s\n",
                            json_object_get_string_member (finding, "level"),
                            json_object_get_string_member (finding, "text"),
                            json_object_get_string_member (finding, "code"),
                            json_object_get_string_member (finding, "key"));
    if (!json_object_has_member (finding, "remedy"))
      continue;
    JsonObject *remedy = json_object_get_object_member (finding, "remedy");
    g_autofree char *value = plain_text (json_object_get_member (remedy, "value"));
    g_string_append_printf (text,
                            "        puts it right: %s = %s\n",
                            json_object_get_string_member (remedy, "key"),
                            value);
    if (json_object_has_member (remedy, "worsens"))
      g_string_append_printf (text,
                              "        %s\n",
                              json_object_get_string_member (remedy, "worsens"));
  }
}

static void
append_value (GString *text, const char *name, JsonNode *node)
{
  g_autofree char *value = plain_text (node);

  g_string_append (text, "  ");
  append_padded (text, name, NAME_COLUMNS, FALSE);
  g_string_append_printf (text, "  %s\n", value);
}

/* Values first, then the lists and objects inside. */
static void
append_object (GString *text, const char *path, JsonObject *object)
{
  g_autoptr (GList) names = json_object_get_members (object);

  g_string_append_printf (text, "\n%s\n", path);
  for (GList *name = names; name != NULL; name = name->next) {
    JsonNode *node = json_object_get_member (object, name->data);
    if (JSON_NODE_HOLDS_VALUE (node))
      append_value (text, name->data, node);
  }
  for (GList *name = names; name != NULL; name = name->next) {
    JsonNode *node = json_object_get_member (object, name->data);
    g_autofree char *full = g_strdup_printf ("%s.%s", path, (const char *) name->data);
    if (JSON_NODE_HOLDS_OBJECT (node))
      append_object (text, full, json_node_get_object (node));
    if (!JSON_NODE_HOLDS_ARRAY (node))
      continue;
    g_string_append_printf (text, "\n%s\n", full);
    append_table (text, json_node_get_array (node));
  }
}

static void
append_section (GString *text, const char *name, JsonNode *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node)) {
    append_object (text, name, json_node_get_object (node));
    return;
  }
  if (JSON_NODE_HOLDS_VALUE (node)) {
    append_value (text, name, node);
    return;
  }
  g_string_append_printf (text, "\n%s\n", name);
  if (strcmp (name, "findings") == 0)
    append_findings (text, json_node_get_array (node));
  else
    append_table (text, json_node_get_array (node));
}

char *
sw_report_to_text (const SwSolution *solution)
{
  g_autoptr (JsonNode) root = sw_report_to_json (solution);
  JsonObject *object = json_node_get_object (root);
  json_object_remove_member (object, "working");
  g_autoptr (GList) names = json_object_get_members (object);
  GString *text = g_string_new (NULL);

  for (GList *name = names; name != NULL; name = name->next)
    append_section (text, name->data, json_object_get_member (object, name->data));
  return g_string_free (text, FALSE);
}

static void
append_line (GString *text, const char *words, JsonObject *working, const char *name)
{
  if (json_object_has_member (working, name))
    g_string_append_printf (text,
                            "  %s: %s\n",
                            words,
                            json_object_get_string_member (working, name));
}

static const char *
text_or_none (JsonObject *object, const char *name)
{
  return json_object_get_string_member_with_default (object, name, "");
}

/* "12 V", "16". Returns: (transfer full). */
static char *
with_unit (JsonObject *object, const char *name)
{
  g_autofree char *value = plain_text (json_object_get_member (object, name));
  const char *unit = text_or_none (object, "unit");

  return g_strjoin (*unit == '\0' ? "" : " ", value, unit, NULL);
}

static void
append_input (GString *text, JsonObject *input)
{
  g_autofree char *value = with_unit (input, "value");
  const char *source = text_or_none (input, "source");

  g_string_append_printf (text,
                          "    %s = %s  (%s%s%s%s)\n",
                          json_object_get_string_member (input, "name"),
                          value,
                          text_or_none (input, "key"),
                          text_or_none (input, "what"),
                          *source == '\0' ? "" : "; ",
                          source);
}

static void
append_working (GString *text, const char *key, JsonObject *working)
{
  g_string_append_printf (text, "\n%s\n", key);
  append_line (text, "formula", working, "formula");
  append_line (text, "formula in words", working, "words");
  if (json_object_has_member (working, "inputs")) {
    JsonArray *inputs = json_object_get_array_member (working, "inputs");
    g_autofree char *result = with_unit (working, "result");
    for (guint i = 0; i < json_array_get_length (inputs); i++)
      append_input (text, json_array_get_object_element (inputs, i));
    g_string_append_printf (text, "  result: %s\n", result);
  }
  append_line (text, "source", working, "source");
  append_line (text, "how", working, "how");
  append_line (text, "assumes", working, "assumes");
}

char *
sw_report_workings_to_text (const SwSolution *solution, const char *key_or_group)
{
  g_autoptr (JsonNode) root = sw_report_workings (solution, key_or_group);
  JsonObject *object = json_node_get_object (root);
  g_autoptr (GList) keys = json_object_get_members (object);
  GString *text = g_string_new (NULL);

  for (GList *key = keys; key != NULL; key = key->next)
    append_working (text, key->data, json_object_get_object_member (object, key->data));
  return g_string_free (text, FALSE);
}
