// SPDX-License-Identifier: GPL-3.0-or-later
/* plan-page.h: side and top view, the settings panel and the readout. */
#pragma once
#include "app/document.h"

#include <adwaita.h>

#define SW_TYPE_PLAN_PAGE (sw_plan_page_get_type ())
G_DECLARE_FINAL_TYPE (SwPlanPage, sw_plan_page, SW, PLAN_PAGE, GtkWidget)

/* Puts the focus on the settings row of a key. */
void sw_plan_page_show_key (SwPlanPage *self, const char *path);
void sw_plan_page_search (SwPlanPage *self);
