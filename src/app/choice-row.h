// SPDX-License-Identifier: GPL-3.0-or-later
/* choice-row.h: a setting that is no number: a choice, a yes or no, a catalogue part, or words.
 */
#pragma once
#include "app/document.h"
#include "engine/design-keys.h"

#include <gtk/gtk.h>

#define SW_TYPE_CHOICE_ROW (sw_choice_row_get_type ())
G_DECLARE_FINAL_TYPE (SwChoiceRow, sw_choice_row, SW, CHOICE_ROW, GtkListBoxRow)

GtkWidget *sw_choice_row_new (SwDocument *document, const SwKey *key);
