// SPDX-License-Identifier: GPL-3.0-or-later
/* packet-list.h: what a packet's folder holds, so that a later one knows it again.
 *
 * report.json carries an object "packet": "files", name → SHA-256 of every other file, and
 * "self_sha256", the sum of report.json itself with that sum's 64 digits written as zeros.
 */
#pragma once
#include "packet/folder.h"

#include <json-glib/json-glib.h>

#define SW_PACKET_LIST_FILE "report.json"

/* The report with the list of `files` in it, as text. Changes `report`, an object.
 * Returns: (transfer full).
 */
GBytes *sw_packet_list_seal (JsonNode *report, const SwFolderFile *files, guint n_files);

/* Whether the folder is empty or holds an unchanged packet and nothing else.
 * Errors: SW_ERROR_EXISTS naming the first file, by name, that is changed, missing or not of
 *         the packet; G_FILE_ERROR.
 */
gboolean sw_packet_list_check (const char *folder, GError **error);

/* Returns: (transfer full): the path with control characters as "?", for a message of one
 * line. */
char *sw_packet_shown_path (const char *path);
