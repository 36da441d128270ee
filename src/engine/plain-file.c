// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/plain-file.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <sys/stat.h>
#include <unistd.h>

#define LINKS_MOST 40

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

/* Plain files only: a pipe or a device could be without end. One byte more than asked for is
 * read, so that a file that grows meanwhile is noticed.
 */
static gboolean
read_plain (int fd, gsize most, GString *text, GError **error)
{
  struct stat info;

  if (fstat (fd, &info) != 0)
    return fail_errno (error, errno, cannot_read);
  if (!S_ISREG (info.st_mode))
    return fail_errno (error, S_ISDIR (info.st_mode) ? EISDIR : EINVAL, cannot_read);
  while (text->len <= most) {
    char block[16384];
    ssize_t got = read (fd, block, sizeof block);
    if (got == 0)
      return TRUE;
    if (got < 0 && errno != EINTR)
      return fail_errno (error, errno, cannot_read);
    g_string_append_len (text, block, MAX (got, 0));
  }
  return TRUE;
}

GString *
sw_plain_file_read (const char *path, gsize most, GError **error)
{
  g_autoptr (GString) text = g_string_new (NULL);
  int fd = g_open (path, O_RDONLY | O_CLOEXEC | O_NONBLOCK, 0); /* a pipe must not wait */

  if (fd < 0) {
    fail_errno (error, errno, cannot_read);
    return NULL;
  }
  gboolean well = read_plain (fd, most, text, error);
  close (fd);
  return well ? g_steal_pointer (&text) : NULL;
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
replace_target (const char *path, const char *data, gsize length, GError **error)
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
sw_plain_file_replace (const char *path, const char *data, gsize length, GError **error)
{
  g_autofree char *target = real_path (path, error);

  return target != NULL && replace_target (target, data, length, error);
}
