// SPDX-License-Identifier: GPL-3.0-or-later
/* plain-file.h: reads and replaces plain files, and nothing else.
 *
 * Pipes, devices and folders are refused: one could be without end, and a rename over a device
 * would take it away. Errors: G_FILE_ERROR, "file: can't be written, …" in English, in one
 * line.
 */
#pragma once
#include <glib.h>

/* Returns: (transfer full) (nullable): all of it; of a file larger than `most` bytes more than
 * `most`, but not without end.
 */
GString *sw_plain_file_read (const char *path, gsize most, GError **error);

/* Whole and durable, or not at all: written beside the file, synced, renamed over it, the
 * folder synced. Links are followed first; the file's mode is kept, and a file that may not be
 * written stays.
 */
gboolean sw_plain_file_replace (const char *path,
                                const char *data,
                                gsize length,
                                GError **error);
