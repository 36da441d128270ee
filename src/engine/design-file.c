// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-file.h"

#include "engine/design-json.h"
#include "engine/design-keys.h"
#include "engine/error.h"
#include "engine/json-check.h"
#include "engine/json-text.h"

#include <errno.h>
#include <glib/gstdio.h>
#include <stdlib.h>
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

static JsonNode *
parse (const char *data, gsize length, GError **error)
{
  g_autoptr (JsonParser) parser = json_parser_new_immutable ();
  g_autoptr (GError) problem = NULL;

  if (!sw_json_check (data, length, DEEPEST, error))
    return NULL;
  if (!json_parser_load_from_data (parser, data, (gssize) length, &problem)) {
    g_autofree char *line = g_strdelimit (g_strdup (problem->message), "\n\r", ' ');
    g_set_error (error, SW_ERROR, SW_ERROR_SYNTAX, "design: %s", line);
    return NULL;
  }
  return json_parser_steal_root (parser);
}

static gboolean
refuse_size (GError **error)
{
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_RANGE,
               "design: the file is larger than %d bytes, which is the most allowed",
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

static gboolean
fail_errno (GError **error, int saved, const char *what)
{
  g_set_error (error,
               G_FILE_ERROR,
               g_file_error_from_errno (saved),
               "%s: %s",
               what,
               g_strerror (saved));
  return FALSE;
}

/* A pipe or a device could be without end: only plain files are read. */
static gboolean
check_plain (const char *path, GError **error)
{
  GStatBuf info;

  if (g_stat (path, &info) != 0)
    return fail_errno (error, errno, "file");
  if (S_ISDIR (info.st_mode))
    return fail_errno (error, EISDIR, "file");
  if (!S_ISREG (info.st_mode)) {
    g_set_error (error, G_FILE_ERROR, G_FILE_ERROR_INVAL, "file: not a plain file");
    return FALSE;
  }
  return info.st_size <= SW_DESIGN_FILE_MOST || refuse_size (error);
}

SwDesign *
sw_design_load (const char *path, GError **error)
{
  g_autofree char *data = NULL;
  g_autoptr (GError) problem = NULL;
  gsize length = 0;

  if (!check_plain (path, error))
    return NULL;
  if (!g_file_get_contents (path, &data, &length, &problem)) {
    g_set_error (error, problem->domain, problem->code, "file: can't be read");
    return NULL;
  }
  return sw_design_load_from_data (data, length, error);
}

char *
sw_design_to_data (const SwDesign *design, gsize *length)
{
  g_autoptr (JsonNode) root = sw_design_to_json (design);

  return sw_json_to_text (root, length);
}

/* Where links lead to; the path itself where nothing stands yet. */
static char *
real_path (const char *path)
{
  char *real = realpath (path, NULL);
  char *copy = g_strdup (real == NULL ? path : real);

  free (real);
  return copy;
}

gboolean
sw_design_save (const SwDesign *design, const char *path, GError **error)
{
  g_autofree char *target = real_path (path);
  gsize length = 0;
  g_autofree char *data = sw_design_to_data (design, &length);
  g_autoptr (GError) problem = NULL;
  GStatBuf info;
  gboolean stands = g_stat (target, &info) == 0;

  if (length > SW_DESIGN_FILE_MOST)
    return refuse_size (error);
  if (stands && !S_ISREG (info.st_mode))
    return fail_errno (error, S_ISDIR (info.st_mode) ? EISDIR : EINVAL, "file");
  if (!g_file_set_contents_full (target,
                                 data,
                                 (gssize) length,
                                 G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                 stands ? (int) (info.st_mode & 07777) : 0666,
                                 &problem)) {
    g_autofree char *line = g_strdelimit (g_strdup (problem->message), "\n\r", ' ');
    g_set_error (error, problem->domain, problem->code, "file: %s", line);
    return FALSE;
  }
  /* The umask may have taken rights from the new file that the old one had. */
  if (stands && g_chmod (target, info.st_mode & 07777) != 0)
    return fail_errno (error, errno, "file");
  return TRUE;
}

static gboolean
set_price (GHashTable *table,
           const char *id,
           const char *path,
           const char *value,
           GError **error)
{
  char *end;
  double price = g_ascii_strtod (value, &end);

  if (*id == '\0' || end == value || *end != '\0' || !(price >= 0 && price <= 1e9)) {
    g_autofree char *shown = g_strescape (path, NULL);
    g_set_error (error,
                 SW_ERROR,
                 SW_ERROR_RANGE,
                 "%s: must be a number, 0 … 1000000000",
                 shown);
    return FALSE;
  }
  g_hash_table_insert (table, g_strdup (id), g_memdup2 (&price, sizeof price));
  return TRUE;
}

static gboolean
is_structured (const char *path)
{
  static const char *const paths[] = { "held",
                                       "prices.override",
                                       "prices.have",
                                       "as_built.ring_points",
                                       NULL };

  return g_strv_contains (paths, path);
}

gboolean
sw_design_set (SwDesign *design, const char *path, const char *value, GError **error)
{
  const char *override = "prices.override.", *have = "prices.have.";

  if (g_str_has_prefix (path, override))
    return set_price (design->prices.override, path + strlen (override), path, value, error);
  if (g_str_has_prefix (path, have))
    return set_price (design->prices.have, path + strlen (have), path, value, error);
  if (!is_structured (path))
    return sw_key_set_from_words (design, path, value, error);
  g_autoptr (GError) problem = NULL;
  g_autoptr (JsonNode) node = parse (value, strlen (value), &problem);
  if (node == NULL) {
    g_set_error (error, SW_ERROR, problem->code, "%s: not JSON: %s", path, problem->message);
    return FALSE;
  }
  return sw_design_set_structured (design, path, node, error);
}
