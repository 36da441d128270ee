// SPDX-License-Identifier: GPL-3.0-or-later
/* settings-panel.h: every setting of a design in groups that fold, with a search box. */
#pragma once
#include "app/document.h"

#include <adwaita.h>

#define SW_TYPE_SETTINGS_PANEL (sw_settings_panel_get_type ())
G_DECLARE_FINAL_TYPE (SwSettingsPanel, sw_settings_panel, SW, SETTINGS_PANEL, GtkWidget)

GtkWidget *sw_settings_panel_new (SwDocument *document);

/* Unfolds the key's group and puts the focus into its row. */
void sw_settings_panel_show_key (SwSettingsPanel *self, const char *path);

void sw_settings_panel_search (SwSettingsPanel *self);
