// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/own-rows.h"

#include "engine/design-keys.h"
#include "engine/error.h"
#include "engine/json-check.h"
#include "engine/json-value.h"
#include "engine/plain-file.h"

#define DEEPEST 3
#define FILE_MOST (1 << 20) /* bytes; as a design file */

SwCatalogue *
sw_own_rows_over (JsonNode *rows, const SwCatalogue *base, GError **error)
{
  g_autoptr (SwCatalogue) catalogue = sw_catalogue_new_over (base);
  JsonObjectIter iter;
  const char *id;
  JsonNode *row;

  json_object_iter_init_ordered (&iter, json_node_get_object (rows));
  while (json_object_iter_next_ordered (&iter, &id, &row)) {
    if (sw_catalogue_add_own (catalogue, id, row, error))
      continue;
    g_autofree char *shown = g_strescape (id, NULL);
    g_prefix_error (error, "%s.", shown);
    return NULL;
  }
  return g_steal_pointer (&catalogue);
}

static JsonNode *
read_object (const char *path, GError **error)
{
  g_autoptr (GString) text = sw_plain_file_read (path, FILE_MOST, error);
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();

  if (text == NULL)
    return NULL;
  if (text->len > FILE_MOST) {
    sw_set_error (error, SW_ERROR_RANGE, "larger than %d bytes", FILE_MOST);
    return NULL;
  }
  if (!sw_json_check (text->str, text->len, DEEPEST, error) ||
      !json_parser_load_from_data (parser, text->str, (gssize) text->len, error))
    return NULL;
  g_autoptr (JsonNode) root = json_parser_steal_root (parser);
  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root)) {
    sw_set_error (error, SW_ERROR_CATALOGUE, "not an object of rows by id");
    return NULL;
  }
  return g_steal_pointer (&root);
}

static void
add_rows (SwCatalogue *catalogue, JsonNode *rows, const char *file, GPtrArray *problems)
{
  JsonObjectIter iter;
  const char *id;
  JsonNode *row;

  json_object_iter_init_ordered (&iter, json_node_get_object (rows));
  while (json_object_iter_next_ordered (&iter, &id, &row)) {
    g_autoptr (GError) error = NULL;
    if (sw_catalogue_add_own (catalogue, id, row, &error))
      continue;
    g_autofree char *shown = g_strescape (id, NULL);
    g_ptr_array_add (problems, g_strdup_printf ("%s: %s: %s", file, shown, error->message));
  }
}

static void
add_file (SwCatalogue *catalogue, const char *folder, const char *name, GPtrArray *problems)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *shown = g_filename_display_name (name);
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonNode) rows = read_object (path, &error);

  if (rows == NULL)
    g_ptr_array_add (problems, g_strdup_printf ("%s: %s", shown, error->message));
  else
    add_rows (catalogue, rows, shown, problems);
}

static int
by_name (gconstpointer a, gconstpointer b)
{
  return g_strcmp0 (*(char *const *) a, *(char *const *) b);
}

/* In the order of their names, so that the same folder gives the same catalogue. */
static GPtrArray *
file_names (const char *folder)
{
  GPtrArray *names = g_ptr_array_new_with_free_func (g_free);
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    if (g_str_has_suffix (name, ".json"))
      g_ptr_array_add (names, g_strdup (name));
  }
  g_ptr_array_sort (names, by_name);
  return names;
}

SwCatalogue *
sw_own_rows_load (const char *folder, const SwCatalogue *base, GPtrArray *problems)
{
  SwCatalogue *catalogue = sw_catalogue_new_over (base);
  g_autoptr (GPtrArray) names = file_names (folder);

  for (guint i = 0; i < names->len; i++)
    add_file (catalogue, folder, names->pdata[i], problems);
  return catalogue;
}

/* Returns: (transfer full) (nullable): NULL for none. */
static JsonNode *
used_rows (const SwDesign *design, const SwCatalogue *catalogue)
{
  g_autoptr (JsonObject) rows = json_object_new ();

  for (guint i = 0; i < sw_n_keys (); i++) {
    if (sw_key_at (i)->type != SW_KEY_ID)
      continue;
    const char *id = sw_key_get_text (sw_key_at (i), design);
    JsonNode *row = sw_json_member (design->own_rows, id);
    if (row == NULL)
      row = sw_catalogue_own_row (catalogue, id);
    if (row != NULL)
      json_object_set_member (rows, id, json_node_copy (row));
  }
  if (json_object_get_size (rows) == 0)
    return NULL;
  JsonNode *node = json_node_init_object (json_node_alloc (), rows);
  json_node_seal (node);
  return node;
}

SwDesign *
sw_own_rows_carry (SwDesign *design, const SwCatalogue *catalogue)
{
  g_autoptr (JsonNode) rows = used_rows (design, catalogue);
  JsonNode *before = design->own_rows;

  if (rows == before || (rows != NULL && before != NULL && json_node_equal (rows, before)))
    return sw_design_ref (design);
  SwDesign *copy = sw_design_copy (design);
  g_clear_pointer (&copy->own_rows, json_node_unref);
  copy->own_rows = g_steal_pointer (&rows);
  return copy;
}
