// SPDX-License-Identifier: GPL-3.0-or-later
/* packet-save.h: writes a build packet in a worker thread: exact cuts, then the folder. */
#pragma once
#include "packet/packet.h"

#include <gio/gio.h>

/* The design is shared, not copied: it must not be changed. */
void sw_packet_save_async (SwDesign *design,
                           const char *folder,
                           SwPaper paper,
                           GCancellable *cancellable,
                           GAsyncReadyCallback callback,
                           gpointer user_data);

/* Returns: whether the packet stands in the folder. Errors: as sw_packet_write (). */
gboolean sw_packet_save_finish (GAsyncResult *result, GError **error);
