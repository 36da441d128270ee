// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/catalogue.h"

#include "engine/catalogue-kinds.h"
#include "engine/error.h"
#include "engine/json-check.h"
#include "engine/json-value.h"

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
  GHashTable *own;               /* owned: id (char *) → JsonNode as written */
  const SwCatalogue *base;       /* borrowed, nullable: where to look next */
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
  g_hash_table_unref (catalogue->own);
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
  catalogue->own =
    g_hash_table_new_full (g_str_hash, g_str_equal, g_free, (GDestroyNotify) json_node_unref);
  return catalogue;
}

/* An own id of another kind hides what lies below it too: an id stands for one thing. */
static gconstpointer
find (const SwCatalogue *catalogue, int kind, const char *id)
{
  gconstpointer row = NULL;

  for (; id != NULL && row == NULL && catalogue != NULL; catalogue = catalogue->base) {
    row = g_hash_table_lookup (catalogue->index[kind], id);
    if (g_hash_table_contains (catalogue->own, id))
      break;
  }
  return row;
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
    if (g_hash_table_contains (catalogue->index[other], id_of (row)))
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

SwCatalogue *
sw_catalogue_new_over (const SwCatalogue *base)
{
  SwCatalogue *catalogue = catalogue_new ();

  catalogue->base = base;
  return catalogue;
}

/* The kinds that a key of the design names; the program itself picks from the others. */
static int
own_kind (JsonNode *row, GError **error)
{
  static const int own_kinds[] = { SW_KIND_PIPE, SW_KIND_HOOK, SW_KIND_LINE };
  JsonNode *word = sw_json_member (row, "part");

  for (guint i = 0; i < G_N_ELEMENTS (own_kinds); i++) {
    if (word != NULL && sw_json_holds (word, G_TYPE_STRING) &&
        strcmp (json_node_get_string (word), sw_kinds[own_kinds[i]].word) == 0)
      return own_kinds[i];
  }
  refuse (error, "part: missing or unknown, pipe | hook | line is allowed");
  return -1;
}

/* Returns: (transfer full): the row as the built-in files have it. */
static JsonNode *
plain_row (const char *id, JsonNode *row)
{
  g_autoptr (JsonObject) plain = json_object_new ();
  JsonObjectIter iter;
  const char *key;
  JsonNode *member;

  json_object_set_string_member (plain, "id", id);
  json_object_iter_init_ordered (&iter, json_node_get_object (row));
  while (json_object_iter_next_ordered (&iter, &key, &member)) {
    if (strcmp (key, "part") != 0)
      json_object_set_member (plain, key, json_node_copy (member));
  }
  return json_node_init_object (json_node_alloc (), plain);
}

static gboolean
check_own (const char *id, JsonNode *row, GError **error)
{
  if (!g_str_has_prefix (id, "my-") || id[strlen ("my-")] == '\0')
    return refuse (error, "id: does not begin with \"my-\" and a name");
  if (sw_json_member (row, "id") != NULL)
    return refuse (error, "id: no such key, the row stands under its id");
  return TRUE;
}

/* The parts list needs the nut and the washer of a hook's thread. */
static gboolean
check_thread (const SwCatalogue *catalogue, JsonNode *row, GError **error)
{
  JsonNode *thread = sw_json_member (row, "thread");

  if (thread == NULL || !sw_json_holds (thread, G_TYPE_STRING))
    return TRUE; /* missing or wrong: said with the row's other keys, or no hook */
  g_autofree char *nut = g_strconcat ("nut-", json_node_get_string (thread), NULL);
  g_autofree char *washer = g_strconcat ("washer-", json_node_get_string (thread), NULL);
  return (sw_catalogue_goods (catalogue, nut) != NULL &&
          sw_catalogue_goods (catalogue, washer) != NULL) ||
         refuse (error, "thread: the catalogue has no nut and washer for it");
}

gboolean
sw_catalogue_add_own (SwCatalogue *catalogue, const char *id, JsonNode *row, GError **error)
{
  int kind = own_kind (row, error);

  if (kind < 0 || !check_own (id, row, error))
    return FALSE;
  g_autoptr (JsonNode) plain = plain_row (id, row);
  if ((kind == SW_KIND_HOOK && !check_thread (catalogue, row, error)) ||
      !read_row (catalogue, kind, plain, error))
    return FALSE;
  g_hash_table_insert (catalogue->own, g_strdup (id), json_node_ref (row));
  return TRUE;
}

JsonNode *
sw_catalogue_own_row (const SwCatalogue *catalogue, const char *id)
{
  JsonNode *row = NULL;

  for (; row == NULL && catalogue != NULL; catalogue = catalogue->base)
    row = g_hash_table_lookup (catalogue->own, id);
  return row;
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
  while (catalogue->base != NULL)
    catalogue = catalogue->base;
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

static void
add_ids (GPtrArray *ids, const SwCatalogue *catalogue, int kind)
{
  if (catalogue->base != NULL)
    add_ids (ids, catalogue->base, kind);
  for (guint i = 0; i < catalogue->rows[kind]->len; i++) {
    const char *id = id_of (g_ptr_array_index (catalogue->rows[kind], i));
    if (!g_ptr_array_find_with_equal_func (ids, id, g_str_equal, NULL))
      g_ptr_array_add (ids, (gpointer) (guintptr) id);
  }
}

GPtrArray *
sw_catalogue_ids (const SwCatalogue *catalogue, const char *kind)
{
  GPtrArray *ids = g_ptr_array_new ();
  int k = kind_of (kind);

  if (k >= 0)
    add_ids (ids, catalogue, k);
  return ids;
}

const char *
sw_catalogue_name (const SwCatalogue *catalogue, const char *kind, const char *id)
{
  int k = kind_of (kind);
  const char *const *row = k < 0 ? NULL : find (catalogue, k, id);

  return row == NULL ? NULL : row[1];
}
