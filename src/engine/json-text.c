// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/json-text.h"

#include <float.h>
#include <math.h>
#include <string.h>

#define SHORT_LIST 12 /* plain values that may stand on one line */

char *
sw_json_number (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_return_val_if_fail (isfinite (value), g_strdup ("0"));
  if (fpclassify (value) == FP_ZERO)
    return g_strdup (signbit (value) ? "-0.0" : "0");
  /* 15 digits always survive, and %g drops the zeros; denormal numbers hold fewer. */
  for (int precision = fabs (value) < DBL_MIN ? 1 : 15; precision <= 17; precision++) {
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

typedef struct {
  GString *text;
  gboolean tight;
} Writer;

static void
line_break (const Writer *writer, guint depth)
{
  if (writer->tight)
    return;
  g_string_append_c (writer->text, '\n');
  for (guint i = 0; i < depth; i++)
    g_string_append (writer->text, "  ");
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

static void append_node (const Writer *writer, JsonNode *node, guint depth);

static void
append_array (const Writer *writer, JsonArray *array, guint depth)
{
  gboolean one_line = writer->tight || is_short (array);

  g_string_append_c (writer->text, '[');
  for (guint i = 0; i < json_array_get_length (array); i++) {
    if (i > 0)
      g_string_append (writer->text, one_line && !writer->tight ? ", " : ",");
    if (!one_line)
      line_break (writer, depth + 1);
    append_node (writer, json_array_get_element (array, i), depth + 1);
  }
  if (!one_line)
    line_break (writer, depth);
  g_string_append_c (writer->text, ']');
}

static void
append_object (const Writer *writer, JsonObject *object, guint depth)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;
  gboolean first = TRUE;

  g_string_append_c (writer->text, '{');
  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &name, &node)) {
    if (!first)
      g_string_append_c (writer->text, ',');
    first = FALSE;
    line_break (writer, depth + 1);
    append_string (writer->text, name);
    g_string_append (writer->text, writer->tight ? ":" : ": ");
    append_node (writer, node, depth + 1);
  }
  if (!first)
    line_break (writer, depth);
  g_string_append_c (writer->text, '}');
}

static void
append_node (const Writer *writer, JsonNode *node, guint depth)
{
  if (JSON_NODE_HOLDS_OBJECT (node))
    append_object (writer, json_node_get_object (node), depth);
  else if (JSON_NODE_HOLDS_ARRAY (node))
    append_array (writer, json_node_get_array (node), depth);
  else
    append_plain (writer->text, node);
}

static char *
to_text (JsonNode *root, gboolean tight, gsize *length)
{
  const Writer writer = { g_string_new (NULL), tight };

  append_node (&writer, root, 0);
  g_string_append_c (writer.text, '\n');
  if (length != NULL)
    *length = writer.text->len;
  return g_string_free (writer.text, FALSE);
}

char *
sw_json_to_text (JsonNode *root, gsize *length)
{
  return to_text (root, FALSE, length);
}

char *
sw_json_to_tight_text (JsonNode *root, gsize *length)
{
  return to_text (root, TRUE, length);
}
