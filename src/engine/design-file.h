// SPDX-License-Identifier: GPL-3.0-or-later
/* design-file.h: a design as a *.spire file: UTF-8 JSON, at most 1 MiB, nested at most 16 deep.
 *
 * Load   missing keys take their starts, unknown keys are kept, everything else that is not
 * exactly right is an error "KEY: what is wrong, what is allowed" (SW_ERROR_*; or G_FILE_ERROR
 * and G_IO_ERROR as GLib gives them). No message holds a line break. Save   whole and durable,
 * or not at all: written beside the file, synced, renamed over it, the folder synced. Links are
 * followed first; the file's mode is kept.
 */
#pragma once
#include "engine/design.h"

#define SW_DESIGN_FILE_VERSION 1
#define SW_DESIGN_FILE_MOST (1024 * 1024)

/* Returns: (transfer full) (nullable). */
SwDesign *sw_design_load (const char *path, GError **error);
SwDesign *sw_design_load_from_data (const char *data, gsize length, GError **error);

/* Returns: (transfer full): the file's text; the same design gives the same bytes. */
char *sw_design_to_data (const SwDesign *design, gsize *length);

gboolean sw_design_save (const SwDesign *design, const char *path, GError **error);

/* As --set takes it: every key of design-keys.h, and held (a JSON list), prices.override.ID,
 * prices.have.ID and as_built.ring_points (a JSON list). Ranges that join keys are checked by
 * the caller, after all are set. `design` must have one owner.
 */
gboolean sw_design_set (SwDesign *design, const char *path, const char *value, GError **error);
