// SPDX-License-Identifier: GPL-3.0-or-later
/* folder.h: a folder of files that appears whole or not at all.
 *
 * Takes    a folder that is missing, empty, or holds only an unchanged earlier packet
 *          (packet-list.h); links are followed first
 * Gives    the new folder, written and synced beside the old one and exchanged with it in one
 *          step (renameat2 (RENAME_EXCHANGE)), so that the folder is never missing in between
 * Errors   SW_ERROR_EXISTS naming the first file in the way, nothing touched; G_FILE_ERROR.
 *          An error leaves nothing behind.
 */
#pragma once
#include <glib.h>

typedef struct {
  const char *name; /* plain, without a "/" */
  GBytes *bytes;
} SwFolderFile;

/* Whether `folder` may be written to. Returns: (transfer full) (nullable): its real place. */
char *sw_folder_check (const char *folder, GError **error);

/* The packet's list must be the last of `files`. `stepwise` (nullable) is set to whether files
 * were renamed one by one, because the file system could not exchange folders.
 */
gboolean sw_folder_write (const char *folder,
                          const SwFolderFile *files,
                          guint n_files,
                          gboolean *stepwise,
                          GError **error);
