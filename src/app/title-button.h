// SPDX-License-Identifier: GPL-3.0-or-later
/* title-button.h: the design's name and file in the header bar; pressed, the name can be
 * changed. */
#pragma once
#include "app/document.h"

#include <adwaita.h>

#define SW_TYPE_TITLE_BUTTON (sw_title_button_get_type ())
G_DECLARE_FINAL_TYPE (SwTitleButton, sw_title_button, SW, TITLE_BUTTON, GtkWidget)

GtkWidget *sw_title_button_new (SwDocument *document);
