// SPDX-License-Identifier: GPL-3.0-or-later
/* readout.h: the row of key numbers under the drawings; each opens its working. */
#pragma once
#include "app/document.h"

#include <gtk/gtk.h>

GtkWidget *sw_readout_new (SwDocument *document);
