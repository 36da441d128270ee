// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/folder.h"

#include "engine/error.h"
#include "packet/packet-list.h"

#include <errno.h>
#include <fcntl.h>
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
  char *place;     /* owned: where the folder is or will be */
  char *staging;   /* owned: where the new files are written; NULL: not made yet */
  gboolean exists; /* something is at `place` */
  mode_t mode;     /* of what is there */
} Move;

/* An error of the system, in English whatever the locale. */
static gboolean
fail (const char *path, GError **error)
{
  int number = errno;
  g_autofree char *shown = sw_packet_shown_path (path);
  const char *what = strerrordesc_np (number);

  g_set_error (error,
               G_FILE_ERROR,
               (int) g_file_error_from_errno (number),
               "%s: %s",
               shown,
               what == NULL ? "cannot be written" : what);
  return FALSE;
}

static char *
without_slashes (const char *path)
{
  gsize length = strlen (path);

  while (length > 1 && path[length - 1] == '/')
    length--;
  return g_strndup (path, length);
}

static char *real_place (const char *folder, GError **error);

/* The place of a folder that is not there: below a parent that is, or where a link points. */
static char *
missing_place (const char *folder, GError **error)
{
  g_autofree char *parent = g_path_get_dirname (folder);
  g_autofree char *name = g_path_get_basename (folder);
  g_autofree char *target = g_file_read_link (folder, NULL);
  g_autofree char *real_parent = NULL;

  if (target != NULL) {
    g_autofree char *followed =
      g_path_is_absolute (target) ? g_strdup (target) : g_build_filename (parent, target, NULL);

    return real_place (followed, error);
  }
  if ((real_parent = realpath (parent, NULL)) == NULL) {
    fail (parent, error);
    return NULL;
  }
  return g_build_filename (real_parent, name, NULL);
}

/* Returns: (transfer full) (nullable): with links followed; the last part may be missing. */
static char *
real_place (const char *folder, GError **error)
{
  g_autofree char *path = without_slashes (folder);
  char *real = realpath (path, NULL);

  if (real != NULL)
    return real;
  if (errno == ENOENT && path[0] != '\0')
    return missing_place (path, error);
  fail (path, error);
  return NULL;
}

static gboolean
check_place (Move *move, GError **error)
{
  g_autofree char *shown = NULL;
  struct stat info;

  move->exists = FALSE;
  if (stat (move->place, &info) != 0)
    return errno == ENOENT ? TRUE : fail (move->place, error);
  move->exists = TRUE;
  move->mode = info.st_mode & 07777;
  if (S_ISDIR (info.st_mode))
    return sw_packet_list_check (move->place, error);
  shown = sw_packet_shown_path (move->place);
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_EXISTS,
               "%s: not a folder, so nothing was written; take a new or empty folder",
               shown);
  return FALSE;
}

char *
sw_folder_check (const char *folder, GError **error)
{
  Move move = { .place = real_place (folder, error) };

  if (move.place != NULL && !check_place (&move, error))
    g_clear_pointer (&move.place, g_free);
  return move.place;
}

/* Beside the folder; inside where that is a mount of its own, as nothing can be renamed across.
 */
static char *
staging_parent (const Move *move)
{
  g_autofree char *beside = g_path_get_dirname (move->place);
  struct stat outer, inner;

  if (move->exists && stat (beside, &outer) == 0 && stat (move->place, &inner) == 0 &&
      outer.st_dev != inner.st_dev)
    return g_strdup (move->place);
  return g_steal_pointer (&beside);
}

#define MOST_TRIES 1000 /* left-overs of killed runs that had the same process number */

static gboolean
make_staging (Move *move, GError **error)
{
  g_autofree char *parent = staging_parent (move);

  for (int i = 0; i < MOST_TRIES; i++) {
    g_autofree char *path =
      g_strdup_printf ("%s/.spirewright-%d-%d", parent, (int) getpid (), i);

    if (mkdir (path, 0777) == 0) {
      move->staging = g_steal_pointer (&path);
      if (move->exists && chmod (move->staging, move->mode) != 0)
        return fail (move->staging, error);
      return TRUE;
    }
    if (errno != EEXIST)
      break;
  }
  return fail (parent, error);
}

static gboolean
write_all (int file, const char *data, gsize length)
{
  while (length > 0) {
    gssize n = write (file, data, length);

    if (n < 0 && errno == EINTR)
      continue;
    if (n < 0)
      return FALSE;
    data += n;
    length -= (gsize) n;
  }
  return TRUE;
}

static gboolean
write_file (const char *folder, const SwFolderFile *file, GError **error)
{
  g_autofree char *path = g_build_filename (folder, file->name, NULL);
  int out = open (path, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);
  gsize length;
  const char *data = g_bytes_get_data (file->bytes, &length);
  gboolean whole;

  if (out < 0)
    return fail (path, error);
  whole = write_all (out, data, length) && fsync (out) == 0;
  if (!whole) {
    fail (path, error);
    close (out);
    return FALSE;
  }
  return close (out) == 0 ? TRUE : fail (path, error);
}

static gboolean
sync_folder (const char *path, GError **error)
{
  int folder = open (path, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
  gboolean synced;

  if (folder < 0)
    return fail (path, error);
  synced = fsync (folder) == 0 || errno == EINVAL; /* a file system without it */
  if (!synced)
    fail (path, error);
  close (folder);
  return synced;
}

static gboolean
sync_parent (const char *path, GError **error)
{
  g_autofree char *parent = g_path_get_dirname (path);

  return sync_folder (parent, error);
}

static gboolean
write_staging (const Move *move, const SwFolderFile *files, guint n_files, GError **error)
{
  for (guint i = 0; i < n_files; i++) {
    if (!write_file (move->staging, &files[i], error))
      return FALSE;
  }
  return sync_folder (move->staging, error);
}

/* A folder of plain files, which is all there ever is in one that passed its check. */
static void
remove_folder (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *file = g_build_filename (path, name, NULL);

    g_unlink (file);
  }
  g_rmdir (path);
}

/* What another program put into the old folder between check and exchange must not be lost. */
static gboolean
old_is_unchanged (Move *move, GError **error)
{
  if (sw_packet_list_check (move->staging, NULL))
    return TRUE;
  if (renameat2 (AT_FDCWD, move->staging, AT_FDCWD, move->place, RENAME_EXCHANGE) != 0) {
    fail (move->staging, error);
    g_clear_pointer (&move->staging, g_free); /* it holds what is not ours to remove */
    return FALSE;
  }
  sw_packet_list_check (move->place, error);
  return FALSE;
}

static gboolean
cannot_exchange (int number)
{
  return number == EINVAL || number == ENOSYS || number == EOPNOTSUPP || number == EXDEV ||
         number == EBUSY;
}

static gboolean
is_of (const char *name, const SwFolderFile *files, guint n_files)
{
  for (guint i = 0; i < n_files; i++) {
    if (g_str_equal (name, files[i].name))
      return TRUE;
  }
  return FALSE;
}

/* Files of the earlier packet that the new one has not. */
static gboolean
remove_stale (const Move *move, const SwFolderFile *files, guint n_files, GError **error)
{
  g_autoptr (GDir) dir = g_dir_open (move->place, 0, error);
  const char *name;

  if (dir == NULL)
    return FALSE;
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (move->place, name, NULL);

    if (is_of (name, files, n_files) || g_str_equal (path, move->staging))
      continue;
    if (g_unlink (path) != 0)
      return fail (path, error);
  }
  return TRUE;
}

static gboolean
rename_files (const Move *move, const SwFolderFile *files, guint n_files, GError **error)
{
  if (!remove_stale (move, files, n_files, error))
    return FALSE;
  for (guint i = 0; i < n_files; i++) {
    g_autofree char *from = g_build_filename (move->staging, files[i].name, NULL);
    g_autofree char *to = g_build_filename (move->place, files[i].name, NULL);

    if (g_rename (from, to) != 0)
      return fail (to, error);
  }
  return sync_folder (move->place, error);
}

/* Returns: whether it stands; FALSE with errno otherwise. */
static gboolean
exchange (const Move *move)
{
  if (!move->exists)
    return renameat2 (AT_FDCWD, move->staging, AT_FDCWD, move->place, RENAME_NOREPLACE) == 0 ||
           (cannot_exchange (errno) && g_rename (move->staging, move->place) == 0);
  return renameat2 (AT_FDCWD, move->staging, AT_FDCWD, move->place, RENAME_EXCHANGE) == 0;
}

static gboolean
put_in_place (Move *move,
              const SwFolderFile *files,
              guint n_files,
              gboolean *stepwise,
              GError **error)
{
  if (exchange (move)) {
    if (move->exists && !old_is_unchanged (move, error))
      return FALSE;
    return sync_parent (move->place, error);
  }
  if (!move->exists || !cannot_exchange (errno))
    return fail (move->place, error);
  *stepwise = TRUE;
  return rename_files (move, files, n_files, error);
}

gboolean
sw_folder_write (const char *folder,
                 const SwFolderFile *files,
                 guint n_files,
                 gboolean *stepwise,
                 GError **error)
{
  Move move = { .place = real_place (folder, error) };
  gboolean by_steps = FALSE;
  gboolean done = move.place != NULL && check_place (&move, error) &&
                  make_staging (&move, error) && write_staging (&move, files, n_files, error) &&
                  put_in_place (&move, files, n_files, &by_steps, error);

  if (move.staging != NULL)
    remove_folder (move.staging);
  if (stepwise != NULL)
    *stepwise = by_steps;
  g_free (move.place);
  g_free (move.staging);
  return done;
}
