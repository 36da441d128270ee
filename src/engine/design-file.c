// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-file.h"

#include "engine/design-json.h"
#include "engine/design-keys.h"
#include "engine/error.h"
#include "engine/json-check.h"
#include "engine/json-text.h"
#include "engine/plain-file.h"

#include <string.h>

#define DEEPEST 16

/* A byte order mark may be passed over (RFC 8259, 8.1); it is not written back. */
static void
skip_mark (const char **data, gsize *length)
{
  if (*length >= 3 && memcmp (*data, "\xef\xbb\xbf", 3) == 0) {
    *data += 3;
    *length -= 3;
  }
}

/* What a key allows, for messages about its place. */
static char *
allowed_at (const char *path)
{
  const SwKey *key = sw_key_find (path);

  return key == NULL ? NULL : sw_key_allowed (key);
}

static JsonNode *
parse (const char *data, gsize length, GError **error)
{
  static const SwJsonRules rules = { DEEPEST, allowed_at };
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (GError) problem = NULL;

  if (!sw_json_check_keys (data, length, &rules, error))
    return NULL;
  if (!json_parser_load_from_data (parser, data, (gssize) length, &problem)) {
    g_autofree char *line = sw_shown (problem->message, -1);
    sw_set_error (error, SW_ERROR_SYNTAX, "design: %s", line);
    return NULL;
  }
  return json_parser_steal_root (parser);
}

static gboolean
refuse_size (GError **error)
{
  sw_set_error (error,
                SW_ERROR_RANGE,
                "design: larger than %d bytes, which is the most allowed",
                SW_DESIGN_FILE_MOST);
  return FALSE;
}

SwDesign *
sw_design_load_from_data (const char *data, gsize length, GError **error)
{
  if (length > SW_DESIGN_FILE_MOST) {
    refuse_size (error);
    return NULL;
  }
  skip_mark (&data, &length);
  g_autoptr (JsonNode) root = parse (data, length, error);
  return root == NULL ? NULL : sw_design_from_json (root, error);
}

SwDesign *
sw_design_load (const char *path, GError **error)
{
  g_autoptr (GString) text = sw_plain_file_read (path, SW_DESIGN_FILE_MOST, error);

  return text == NULL ? NULL : sw_design_load_from_data (text->str, text->len, error);
}

/* A file that was read must also fit when it is written back: without spaces if need be. */
char *
sw_design_to_data (const SwDesign *design, gsize *length)
{
  g_autoptr (JsonNode) root = sw_design_to_json (design);
  gsize size;
  char *text = sw_json_to_text (root, &size);

  if (size > SW_DESIGN_FILE_MOST) {
    g_free (text);
    text = sw_json_to_tight_text (root, &size);
  }
  if (length != NULL)
    *length = size;
  return text;
}

gboolean
sw_design_save (const SwDesign *design, const char *path, GError **error)
{
  gsize length;
  g_autofree char *data = sw_design_to_data (design, &length);

  if (length > SW_DESIGN_FILE_MOST)
    return refuse_size (error);
  return sw_plain_file_replace (path, data, length, error);
}

static gboolean
set_price (SwDesign *design, const char *path, const char *value, GError **error)
{
  double price;

  if (sw_number_from_words (value, &price))
    return sw_design_set_price (design, path, price, error);
  g_autofree char *shown_path = sw_shown (path, -1);
  g_autofree char *shown = sw_shown (value, -1);
  sw_set_error (error, SW_ERROR_TYPE, "%s: \"%s\" is not a number", shown_path, shown);
  return FALSE;
}

gboolean
sw_design_set (SwDesign *design, const char *path, const char *value, GError **error)
{
  if (g_str_has_prefix (path, "prices.override.") || g_str_has_prefix (path, "prices.have."))
    return set_price (design, path, value, error);
  if (!sw_design_is_structured (path))
    return sw_key_set_from_words (design, path, value, error);
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) node = parse (value, strlen (value), &problem);
  if (node != NULL)
    return sw_design_set_structured (design, path, node, error);
  sw_set_error (error, problem->code, "%s: not JSON: %s", path, problem->message);
  return FALSE;
}
