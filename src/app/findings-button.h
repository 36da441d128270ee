// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-button.h: how many findings there are, and their list. "key-chosen" (path) when one
 * is picked. */
#pragma once
#include "app/document.h"

#include <gtk/gtk.h>

#define SW_TYPE_FINDINGS_BUTTON (sw_findings_button_get_type ())
G_DECLARE_FINAL_TYPE (SwFindingsButton, sw_findings_button, SW, FINDINGS_BUTTON, GtkWidget)

GtkWidget *sw_findings_button_new (SwDocument *document);
