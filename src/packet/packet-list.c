// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/packet-list.h"

#include "engine/error.h"
#include "engine/json-check.h"
#include "engine/json-text.h"

#include <glib/gstdio.h>
#include <string.h>

#define LIST_OBJECT "packet"
#define LIST_FILES "files"
#define LIST_SELF "self_sha256"
#define SUM_DIGITS 64
#define LIST_MOST (64 * 1024 * 1024) /* bytes; 512 strips make some 200 kB */
#define LIST_DEEPEST 16

static const char no_sum[] = "0000000000000000000000000000000000000000000000000000000000000000";

G_STATIC_ASSERT (sizeof no_sum == SUM_DIGITS + 1);

char *
sw_packet_shown_path (const char *path)
{
  char *shown = g_filename_display_name (path);

  for (char *c = shown; *c != '\0'; c++) {
    if (g_ascii_iscntrl (*c))
      *c = '?';
  }
  return shown;
}

/* Returns: (nullable): where the digits of the file's own sum stand in its text. */
static char *
self_digits (char *text, gsize length)
{
  char *digits = g_strstr_len (text, (gssize) length, "\"" LIST_SELF "\": \"");

  if (digits == NULL)
    return NULL;
  digits += strlen ("\"" LIST_SELF "\": \"");
  return (gsize) (text + length - digits) < SUM_DIGITS ? NULL : digits;
}

GBytes *
sw_packet_list_seal (JsonNode *report, const SwFolderFile *files, guint n_files)
{
  JsonObject *sums = json_object_new ();
  JsonObject *list = json_object_new ();
  gsize length;
  char *text;
  g_autofree char *sum = NULL;

  for (guint i = 0; i < n_files; i++) {
    g_autofree char *of_file = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, files[i].bytes);

    json_object_set_string_member (sums, files[i].name, of_file);
  }
  json_object_set_object_member (list, LIST_FILES, sums);
  json_object_set_string_member (list, LIST_SELF, no_sum);
  json_object_set_object_member (json_node_get_object (report), LIST_OBJECT, list);
  text = sw_json_to_text (report, &length);
  sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) text, length);
  memcpy (self_digits (text, length), sum, SUM_DIGITS);
  return g_bytes_new_take (text, length);
}

static gboolean
self_sum_holds (char *text, gsize length)
{
  char *digits = self_digits (text, length);
  char stated[SUM_DIGITS + 1] = "";
  g_autofree char *sum = NULL;

  if (digits == NULL)
    return FALSE;
  memcpy (stated, digits, SUM_DIGITS);
  memcpy (digits, no_sum, SUM_DIGITS);
  sum = g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) text, length);
  return g_str_equal (sum, stated);
}

static gboolean
is_plain_file (const char *path)
{
  GStatBuf info;

  return g_lstat (path, &info) == 0 && S_ISREG (info.st_mode) && info.st_size <= LIST_MOST;
}

/* Returns: (nullable): the object of sums. */
static JsonObject *
sums_of (JsonParser *parser)
{
  JsonNode *root = json_parser_get_root (parser);
  JsonNode *list = NULL;
  JsonNode *sums = NULL;

  if (root != NULL && JSON_NODE_HOLDS_OBJECT (root))
    list = json_object_get_member (json_node_get_object (root), LIST_OBJECT);
  if (list != NULL && JSON_NODE_HOLDS_OBJECT (list))
    sums = json_object_get_member (json_node_get_object (list), LIST_FILES);
  return sums != NULL && JSON_NODE_HOLDS_OBJECT (sums) ? json_node_get_object (sums) : NULL;
}

#define SELF_HOLDS "holds"
#define SELF_CHANGED "changed"

/* Returns: (transfer full) (nullable): name → sum, NULL when a name is none. */
static GHashTable *
table_of_sums (JsonObject *sums)
{
  g_autoptr (GHashTable) list = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  JsonObjectIter each;
  const char *name;
  JsonNode *sum;

  json_object_iter_init_ordered (&each, sums);
  while (json_object_iter_next_ordered (&each, &name, &sum)) {
    if (strchr (name, '/') != NULL || !JSON_NODE_HOLDS_VALUE (sum) ||
        json_node_get_value_type (sum) != G_TYPE_STRING)
      return NULL;
    g_hash_table_insert (list, g_strdup (name), json_node_dup_string (sum));
  }
  return g_steal_pointer (&list);
}

/* Returns: (transfer full) (nullable): name → sum as the folder's own list has it, and for the
 * list's file SELF_HOLDS or SELF_CHANGED. NULL where there is no list. */
static GHashTable *
read_list (const char *folder)
{
  g_autofree char *path = g_build_filename (folder, SW_PACKET_LIST_FILE, NULL);
  g_autofree char *text = NULL;
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  gsize length;
  JsonObject *sums;
  GHashTable *list;

  if (!is_plain_file (path) || !g_file_get_contents (path, &text, &length, NULL) ||
      !sw_json_check (text, length, LIST_DEEPEST, NULL) ||
      !json_parser_load_from_data (parser, text, (gssize) length, NULL) ||
      (sums = sums_of (parser)) == NULL || (list = table_of_sums (sums)) == NULL)
    return NULL;
  g_hash_table_insert (list,
                       g_strdup (SW_PACKET_LIST_FILE),
                       g_strdup (self_sum_holds (text, length) ? SELF_HOLDS : SELF_CHANGED));
  return list;
}

static gboolean
has_sum (const char *path, const char *stated)
{
  g_autoptr (GMappedFile) file = NULL;
  g_autoptr (GBytes) bytes = NULL;
  g_autofree char *sum = NULL;

  if (!is_plain_file (path) || (file = g_mapped_file_new (path, FALSE, NULL)) == NULL)
    return FALSE;
  bytes = g_mapped_file_get_bytes (file);
  sum = g_compute_checksum_for_bytes (G_CHECKSUM_SHA256, bytes);
  return g_str_equal (sum, stated);
}

static gboolean
refuse (const char *folder, const char *name, const char *what, GError **error)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  g_autofree char *shown = sw_packet_shown_path (path);

  g_set_error (error,
               SW_ERROR,
               SW_ERROR_EXISTS,
               "%s: %s, so nothing was written; take a new or empty folder",
               shown,
               what);
  return FALSE;
}

static gboolean
is_unchanged (const char *path, const char *name, const char *stated)
{
  return g_str_equal (name, SW_PACKET_LIST_FILE) ? g_str_equal (stated, SELF_HOLDS)
                                                 : has_sum (path, stated);
}

static gboolean
check_entry (const char *folder, const char *name, GHashTable *list, GError **error)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  const char *stated = list == NULL ? NULL : g_hash_table_lookup (list, name);
  GStatBuf info;

  if (g_lstat (path, &info) != 0)
    return refuse (folder, name, "missing from the earlier build packet", error);
  if (stated == NULL)
    return refuse (folder, name, "not a file of an unchanged build packet", error);
  if (!is_unchanged (path, name, stated))
    return refuse (folder, name, "changed since its build packet was written", error);
  return TRUE;
}

static int
by_name (gconstpointer a, gconstpointer b)
{
  return strcmp (*(const char *const *) a, *(const char *const *) b);
}

/* What is there and what should be, each once. Returns: (transfer full) (nullable). */
static GPtrArray *
all_names (const char *folder, GHashTable *list, GError **error)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, error);
  g_autoptr (GPtrArray) names = g_ptr_array_new_with_free_func (g_free);
  GHashTableIter each;
  gpointer listed;
  const char *name;

  if (dir == NULL)
    return NULL;
  while ((name = g_dir_read_name (dir)) != NULL) {
    if (list == NULL || !g_hash_table_contains (list, name))
      g_ptr_array_add (names, g_strdup (name));
  }
  if (list != NULL) {
    g_hash_table_iter_init (&each, list);
    while (g_hash_table_iter_next (&each, &listed, NULL))
      g_ptr_array_add (names, g_strdup (listed));
  }
  g_ptr_array_sort (names, by_name);
  return g_steal_pointer (&names);
}

gboolean
sw_packet_list_check (const char *folder, GError **error)
{
  g_autoptr (GHashTable) list = read_list (folder);
  g_autoptr (GPtrArray) names = all_names (folder, list, error);

  if (names == NULL)
    return FALSE;
  for (guint i = 0; i < names->len; i++) {
    if (!check_entry (folder, g_ptr_array_index (names, i), list, error))
      return FALSE;
  }
  return TRUE;
}
