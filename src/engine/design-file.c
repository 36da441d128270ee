// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-file.h"

#include "engine/design-json.h"
#include "engine/design-keys.h"
#include "engine/error.h"
#include "engine/json-check.h"
#include "engine/json-text.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#define DEEPEST 16
#define LINKS_MOST 40

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

/* In English whatever the locale: error lines are for scripts too. */
static const char *
file_words (int code)
{
  static const struct {
    int code;
    const char *words;
  } table[] = {
    { G_FILE_ERROR_NOENT, "no such file or folder" },
    { G_FILE_ERROR_ACCES, "no right to do that here" },
    { G_FILE_ERROR_PERM, "no right to do that here" },
    { G_FILE_ERROR_ISDIR, "a folder, not a file" },
    { G_FILE_ERROR_NOTDIR, "a part of its path is no folder" },
    { G_FILE_ERROR_INVAL, "not a plain file" },
    { G_FILE_ERROR_LOOP, "a link that leads back to itself" },
    { G_FILE_ERROR_NAMETOOLONG, "the name is too long" },
    { G_FILE_ERROR_NOSPC, "no room left on the disk" },
    { G_FILE_ERROR_ROFS, "the disk can only be read" },
    { G_FILE_ERROR_IO, "the disk reports an error" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (table); i++) {
    if (table[i].code == code)
      return table[i].words;
  }
  return "the system refuses it";
}

static gboolean
fail_file (GError **error, int code, const char *what)
{
  g_set_error (error, G_FILE_ERROR, code, "file: %s, %s", what, file_words (code));
  return FALSE;
}

static gboolean
fail_errno (GError **error, int saved, const char *what)
{
  return fail_file (error, g_file_error_from_errno (saved), what);
}

static const char cannot_read[] = "can't be read", cannot_write[] = "can't be written";

/* Plain files only: a pipe or a device could be without end. One byte more than allowed is
 * asked for, so that a file that grows meanwhile is noticed.
 */
static gboolean
read_plain (int fd, GString *text, GError **error)
{
  struct stat info;

  if (fstat (fd, &info) != 0)
    return fail_errno (error, errno, cannot_read);
  if (!S_ISREG (info.st_mode))
    return fail_errno (error, S_ISDIR (info.st_mode) ? EISDIR : EINVAL, cannot_read);
  while (text->len <= SW_DESIGN_FILE_MOST) {
    char block[16384];
    ssize_t got = read (fd, block, sizeof block);
    if (got == 0)
      return TRUE;
    if (got < 0 && errno != EINTR)
      return fail_errno (error, errno, cannot_read);
    g_string_append_len (text, block, MAX (got, 0));
  }
  return refuse_size (error);
}

SwDesign *
sw_design_load (const char *path, GError **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  int fd = g_open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK, 0); /* a pipe must not wait */

  if (fd < 0) {
    fail_errno (error, errno, cannot_read);
    return NULL;
  }
  gboolean well = read_plain (fd, text, error);
  close (fd);
  return well ? sw_design_load_from_data (text->str, text->len, error) : NULL;
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

/* Where links lead to, also where nothing stands yet. Returns: (transfer full) (nullable). */
static char *
real_path (const char *path, GError **error)
{
  g_autofree char *at = g_strdup (path);

  for (int links = 0; links < LINKS_MOST; links++) {
    g_autofree char *link = g_file_read_link (at, NULL);
    if (link == NULL)
      return g_steal_pointer (&at);
    g_autofree char *folder = g_path_get_dirname (at);
    g_free (at);
    at = g_path_is_absolute (link) ? g_strdup (link) : g_build_filename (folder, link, NULL);
  }
  fail_errno (error, ELOOP, cannot_write);
  return NULL;
}

/* What stands there and may be replaced; *mode is the new file's. */
static gboolean
check_target (const char *path, gboolean *stands, mode_t *mode, GError **error)
{
  GStatBuf info;

  *mode = 0666;
  *stands = g_stat (path, &info) == 0;
  if (!*stands)
    return errno == ENOENT || fail_errno (error, errno, cannot_write);
  if (!S_ISREG (info.st_mode))
    return fail_errno (error, S_ISDIR (info.st_mode) ? EISDIR : EINVAL, cannot_write);
  if (faccessat (AT_FDCWD, path, W_OK, AT_EACCESS) != 0) /* a rename would not ask */
    return fail_errno (error, errno, cannot_write);
  *mode = info.st_mode & 07777;
  return TRUE;
}

static gboolean
replace_file (const char *path, const char *data, gsize length, GError **error)
{
  g_autoptr (GError) problem = NULL;
  gboolean stands;
  mode_t mode;

  if (!check_target (path, &stands, &mode, error))
    return FALSE;
  if (!g_file_set_contents_full (path,
                                 data,
                                 (gssize) length,
                                 G_FILE_SET_CONTENTS_CONSISTENT | G_FILE_SET_CONTENTS_DURABLE,
                                 (int) mode,
                                 &problem))
    return fail_file (error, problem->code, cannot_write);
  if (stands) /* the umask may have taken rights that the old file had; it is saved all the same
               */
    (void) g_chmod (path, mode);
  return TRUE;
}

gboolean
sw_design_save (const SwDesign *design, const char *path, GError **error)
{
  gsize length;
  g_autofree char *data = sw_design_to_data (design, &length);
  g_autofree char *target = real_path (path, error);

  if (target == NULL)
    return FALSE;
  if (length > SW_DESIGN_FILE_MOST)
    return refuse_size (error);
  return replace_file (target, data, length, error);
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
