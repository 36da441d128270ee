// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/json-text.h"

#include <math.h>
#include <string.h>

#define SHORT_LIST 12 /* plain values that may stand on one line */

char *
sw_json_number (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_return_val_if_fail (isfinite (value), g_strdup ("0"));
  for (int precision = 15; precision <= 17; precision++) {
    char format[8];
    g_snprintf (format, sizeof format, "%%.%dg", precision);
    g_ascii_formatd (digits, sizeof digits, format, value);
    double back = g_ascii_strtod (digits, NULL);
    if (memcmp (&back, &value, sizeof value) == 0)
      break;
  }
  return g_strdup (digits);
}

static void
append_string (GString *text, const char *string)
{
  g_string_append_c (text, '"');
  for (const char *c = string; *c != '\0'; c++) {
    if (*c == '"' || *c == '\\')
      g_string_append_printf (text, "\\%c", *c);
    else if ((guchar) *c < 0x20 || *c == 0x7f)
      g_string_append_printf (text, "\\u%04x", (guint) *c);
    else
      g_string_append_c (text, *c);
  }
  g_string_append_c (text, '"');
}

static void
append_plain (GString *text, JsonNode *node)
{
  GType type = json_node_get_value_type (node);

  if (JSON_NODE_HOLDS_NULL (node)) {
    g_string_append (text, "null");
  } else if (type == G_TYPE_STRING) {
    append_string (text, json_node_get_string (node));
  } else if (type == G_TYPE_BOOLEAN) {
    g_string_append (text, json_node_get_boolean (node) ? "true" : "false");
  } else if (type == G_TYPE_INT64) {
    g_string_append_printf (text, "%" G_GINT64_FORMAT, json_node_get_int (node));
  } else {
    g_autofree char *number = sw_json_number (json_node_get_double (node));
    g_string_append (text, number);
  }
}

static void
line_break (GString *text, guint depth)
{
  g_string_append_c (text, '\n');
  for (guint i = 0; i < depth; i++)
    g_string_append (text, "  ");
}

static gboolean
is_short (JsonArray *array)
{
  if (json_array_get_length (array) > SHORT_LIST)
    return FALSE;
  for (guint i = 0; i < json_array_get_length (array); i++) {
    JsonNode *node = json_array_get_element (array, i);
    if (JSON_NODE_HOLDS_ARRAY (node) || JSON_NODE_HOLDS_OBJECT (node))
      return FALSE;
  }
  return TRUE;
}

static void append_node (GString *text, JsonNode *node, guint depth);

static void
append_array (GString *text, JsonArray *array, guint depth)
{
  gboolean one_line = is_short (array);

  g_string_append_c (text, '[');
  for (guint i = 0; i < json_array_get_length (array); i++) {
    if (i > 0)
      g_string_append_c (text, ',');
    if (!one_line)
      line_break (text, depth + 1);
    else if (i > 0)
      g_string_append_c (text, ' ');
    append_node (text, json_array_get_element (array, i), depth + 1);
  }
  if (!one_line)
    line_break (text, depth);
  g_string_append_c (text, ']');
}

static void
append_object (GString *text, JsonObject *object, guint depth)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;
  gboolean first = TRUE;

  g_string_append_c (text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &node)) {
    if (!first)
      g_string_append_c (text, ',');
    first = FALSE;
    line_break (text, depth + 1);
    append_string (text, name);
    g_string_append (text, ": ");
    append_node (text, node, depth + 1);
  }
  if (!first)
    line_break (text, depth);
  g_string_append_c (text, '}');
}

static void
append_node (GString *text, JsonNode *node, guint depth)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    append_object (text, json_node_get_object (node), depth);
  else if (JSON_NODE_HOLDS_ARRAY (node))
    append_array (text, json_node_get_array (node), depth);
  else
    append_plain (text, node);
}

char *
sw_json_to_text (JsonNode *root, gsize *length)
{
  GString *text = g_string_new (NULL);

  append_node (text, root, 0);
  g_string_append_c (text, '\n');
  if (length != NULL)
    *length = text->len;
  return g_string_free (text, FALSE);
}
