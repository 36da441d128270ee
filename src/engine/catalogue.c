// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/catalogue.h"

#include "engine/catalogue-kinds.h"
#include "engine/error.h"
#include "engine/json-check.h"

#include <gio/gio.h>
#include <string.h>

/* Invariants: every row of a kind starts with `char *id, *name`; an id stands for one thing
 * across all kinds, because the parts list names pipes, hooks and goods by it alone.
 */

#define DATA_PREFIX "/org/spirewright/Spirewright/data/"
#define DEEPEST 4

/* Generated from data/engine-data.gresource.xml; called by name so that the linker keeps it. */
GResource *sw_engine_data_get_resource (void);

struct SwCatalogue {
  GPtrArray *rows[SW_N_KINDS];   /* owned: one struct of the kind a row, in file order */
  GHashTable *index[SW_N_KINDS]; /* owned: id (borrowed from the row) → row */
};

static const char *
id_of (gconstpointer row)
{
  return *(char *const *) row;
}

static void
row_free (int kind, gpointer row)
{
  sw_row_clear (&sw_kinds[kind].table, row);
  g_free (row);
}

void
sw_catalogue_free (SwCatalogue *catalogue)
{
  if (catalogue == NULL)
    return;
  for (int kind = 0; kind < SW_N_KINDS; kind++) {
    g_hash_table_unref (catalogue->index[kind]);
    for (guint i = 0; i < catalogue->rows[kind]->len; i++)
      row_free (kind, g_ptr_array_index (catalogue->rows[kind], i));
    g_ptr_array_unref (catalogue->rows[kind]);
  }
  g_free (catalogue);
}

static SwCatalogue *
catalogue_new (void)
{
  SwCatalogue *catalogue = g_new0 (SwCatalogue, 1);

  for (int kind = 0; kind < SW_N_KINDS; kind++) {
    catalogue->rows[kind] = g_ptr_array_new ();
    catalogue->index[kind] = g_hash_table_new (g_str_hash, g_str_equal);
  }
  return catalogue;
}

static gconstpointer
find (const SwCatalogue *catalogue, int kind, const char *id)
{
  return id == NULL ? NULL : g_hash_table_lookup (catalogue->index[kind], id);
}

static gboolean
refuse (GError **error, const char *what)
{
  g_set_error_literal (error, SW_ERROR, SW_ERROR_CATALOGUE, what);
  return FALSE;
}

/* What one row alone cannot show. */
static gboolean
check_row (const SwCatalogue *catalogue, int kind, gconstpointer row, GError **error)
{
  const char *wrong = sw_kinds[kind].check == NULL ? NULL : sw_kinds[kind].check (row);

  if (wrong != NULL)
    return refuse (error, wrong);
  for (int other = 0; other < SW_N_KINDS; other++) {
    if (find (catalogue, other, id_of (row)) != NULL)
      return refuse (error, "id: stands for another row already");
  }
  return TRUE;
}

static gboolean
read_row (SwCatalogue *catalogue, int kind, JsonNode *node, GError **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return refuse (error, "not an object");
  gpointer row = g_malloc0 (sw_kinds[kind].size);
  if (!sw_row_read (&sw_kinds[kind].table, json_node_get_object (node), row, error) ||
      !check_row (catalogue, kind, row, error)) {
    row_free (kind, row);
    return FALSE;
  }
  g_ptr_array_add (catalogue->rows[kind], row);
  g_hash_table_insert (catalogue->index[kind], *(char **) row, row);
  return TRUE;
}

/* How an error names the row: by its id, else by its place. */
static char *
row_label (JsonNode *node, guint i)
{
  JsonNode *id = JSON_NODE_HOLDS_OBJECT (node)
                   ? json_object_get_member (json_node_get_object (node), "id")
                   : NULL;
  const char *text =
    id != NULL && JSON_NODE_HOLDS_VALUE (id) ? json_node_get_string (id) : NULL;

  return text != NULL && *text != '\0' ? g_strescape (text, NULL)
                                       : g_strdup_printf ("row %u", i + 1);
}

static gboolean
read_rows (SwCatalogue *catalogue, int kind, JsonArray *array, GError **error)
{
  for (guint i = 0; i < json_array_get_length (array); i++) {
    JsonNode *node = json_array_get_element (array, i);
    if (read_row (catalogue, kind, node, error))
      continue;
    g_autofree char *label = row_label (node, i);
    g_prefix_error (error, "%s: ", label);
    return FALSE;
  }
  return TRUE;
}

static gboolean
has_only_known_keys (JsonObject *object, GError **error)
{
  g_autoptr (GList) keys = json_object_get_members (object);

  for (GList *key = keys; key != NULL; key = key->next) {
    if (strcmp (key->data, "about") == 0 || strcmp (key->data, "rows") == 0)
      continue;
    g_autofree char *shown = g_strescape (key->data, NULL);
    g_set_error (error, SW_ERROR, SW_ERROR_CATALOGUE, "%s: no such key", shown);
    return FALSE;
  }
  return TRUE;
}

/* A file is { "about": text, "rows": [ … ] }. */
static JsonArray *
rows_of (JsonNode *root, GError **error)
{
  if (root == NULL || !JSON_NODE_HOLDS_OBJECT (root)) {
    refuse (error, "not an object");
    return NULL;
  }
  JsonObject *object = json_node_get_object (root);
  JsonNode *rows = json_object_get_member (object, "rows");
  if (!has_only_known_keys (object, error))
    return NULL;
  if (rows == NULL || !JSON_NODE_HOLDS_ARRAY (rows)) {
    refuse (error, "rows: not a list");
    return NULL;
  }
  return json_node_get_array (rows);
}

static gboolean
read_text (SwCatalogue *catalogue, int kind, const char *text, GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  gssize length = (gssize) strlen (text);

  if (!sw_json_check (text, (gsize) length, DEEPEST, error) ||
      !json_parser_load_from_data (parser, text, length, error))
    return FALSE;
  JsonArray *rows = rows_of (json_parser_get_root (parser), error);
  return rows != NULL && read_rows (catalogue, kind, rows, error);
}

static gboolean
read_file (SwCatalogue *catalogue, int kind, const char *text, GError **error)
{
  if (read_text (catalogue, kind, text, error))
    return TRUE;
  g_prefix_error (error, "%s: ", sw_kinds[kind].file);
  return FALSE;
}

static gboolean
is_known_file (const char *name)
{
  for (int kind = 0; kind < SW_N_KINDS; kind++) {
    if (strcmp (sw_kinds[kind].file, name) == 0)
      return TRUE;
  }
  return FALSE;
}

static gboolean
check_names (GHashTable *texts, GError **error)
{
  GHashTableIter iter;
  gpointer name;

  g_hash_table_iter_init (&iter, texts);
  while (g_hash_table_iter_next (&iter, &name, NULL)) {
    if (is_known_file (name))
      continue;
    g_set_error (error,
                 SW_ERROR,
                 SW_ERROR_CATALOGUE,
                 "%s: no such file in the catalogue",
                 (const char *) name);
    return FALSE;
  }
  return TRUE;
}

SwCatalogue *
sw_catalogue_new_from_texts (GHashTable *texts, GError **error)
{
  g_autoptr (SwCatalogue) catalogue = catalogue_new ();

  if (!check_names (texts, error))
    return NULL;
  for (int kind = 0; kind < SW_N_KINDS; kind++) {
    const char *text = g_hash_table_lookup (texts, sw_kinds[kind].file);
    if (text != NULL && !read_file (catalogue, kind, text, error))
      return NULL;
  }
  return g_steal_pointer (&catalogue);
}

static gboolean
load_builtin (GHashTable *texts, int kind, GError **error)
{
  g_autofree char *path = g_strconcat (DATA_PREFIX, sw_kinds[kind].file, NULL);
  g_autoptr (GBytes) bytes =
    g_resource_lookup_data (sw_engine_data_get_resource (), path, 0, error);

  if (bytes == NULL)
    return FALSE;
  gsize length = 0;
  const char *data = g_bytes_get_data (bytes, &length);
  g_hash_table_insert (texts,
                       (gpointer) (guintptr) sw_kinds[kind].file,
                       g_strndup (data, length));
  return TRUE;
}

static SwCatalogue *
builtin_new (GError **error)
{
  g_autoptr (GHashTable) texts = g_hash_table_new_full (g_str_hash, g_str_equal, NULL, g_free);

  for (int kind = 0; kind < SW_N_KINDS; kind++) {
    if (!load_builtin (texts, kind, error))
      return NULL;
  }
  return sw_catalogue_new_from_texts (texts, error);
}

const SwCatalogue *
sw_catalogue_builtin (GError **error)
{
  static gsize loaded;
  static SwCatalogue *catalogue;
  static GError *problem;

  if (g_once_init_enter (&loaded)) {
    catalogue = builtin_new (&problem);
    g_once_init_leave (&loaded, 1);
  }
  if (catalogue == NULL && error != NULL)
    *error = g_error_copy (problem);
  return catalogue;
}

const SwPipe *
sw_catalogue_pipe (const SwCatalogue *catalogue, const char *id)
{
  return find (catalogue, SW_KIND_PIPE, id);
}

const SwBoard *
sw_catalogue_board (const SwCatalogue *catalogue, const char *id)
{
  return find (catalogue, SW_KIND_BOARD, id);
}

const SwHook *
sw_catalogue_hook (const SwCatalogue *catalogue, const char *id)
{
  return find (catalogue, SW_KIND_HOOK, id);
}

const SwLine *
sw_catalogue_line (const SwCatalogue *catalogue, const char *id)
{
  return find (catalogue, SW_KIND_LINE, id);
}

const SwGoods *
sw_catalogue_goods (const SwCatalogue *catalogue, const char *id)
{
  return find (catalogue, SW_KIND_GOODS, id);
}

const SwFitting *
sw_catalogue_fitting (const SwCatalogue *catalogue, const char *id)
{
  return find (catalogue, SW_KIND_FITTING, id);
}

const SwFitting *
sw_catalogue_nth_fitting (const SwCatalogue *catalogue, guint i)
{
  const GPtrArray *rows = catalogue->rows[SW_KIND_FITTING];

  return i < rows->len ? rows->pdata[i] : NULL;
}

static int
kind_of (const char *word)
{
  for (int kind = 0; kind < SW_N_KINDS; kind++) {
    if (strcmp (sw_kinds[kind].word, word) == 0)
      return kind;
  }
  return -1;
}

GPtrArray *
sw_catalogue_ids (const SwCatalogue *catalogue, const char *kind)
{
  GPtrArray *ids = g_ptr_array_new ();
  int k = kind_of (kind);

  for (guint i = 0; k >= 0 && i < catalogue->rows[k]->len; i++)
    g_ptr_array_add (ids, *(char **) g_ptr_array_index (catalogue->rows[k], i));
  return ids;
}

const char *
sw_catalogue_name (const SwCatalogue *catalogue, const char *kind, const char *id)
{
  int k = kind_of (kind);
  const char *const *row = k < 0 ? NULL : find (catalogue, k, id);

  return row == NULL ? NULL : row[1];
}
