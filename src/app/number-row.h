// SPDX-License-Identifier: GPL-3.0-or-later
/* number-row.h: one number of the design: label, slider, an entry that takes any unit, its
 * unit, a lock. */
#pragma once
#include "app/document.h"
#include "engine/design-keys.h"

#include <gtk/gtk.h>

#define SW_TYPE_NUMBER_ROW (sw_number_row_get_type ())
G_DECLARE_FINAL_TYPE (SwNumberRow, sw_number_row, SW, NUMBER_ROW, GtkListBoxRow)

GtkWidget *sw_number_row_new (SwDocument *document, const SwKey *key);
