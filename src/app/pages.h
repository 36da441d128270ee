// SPDX-License-Identifier: GPL-3.0-or-later
/* pages.h: the window's pages. Each is a widget made for one document, listens to its "changed"
 * and reads its solution; none knows another.
 */
#pragma once
#include "app/document.h"

#include <adwaita.h>

GtkWidget *sw_plan_page_new (SwDocument *document);
GtkWidget *sw_evening_page_new (SwDocument *document);
GtkWidget *sw_parts_page_new (SwDocument *document);
GtkWidget *sw_sheets_page_new (SwDocument *document);

/* The first questions of a new design: a start, and what is known of the site. Calls back with
 * the new design (transfer full), or NULL when put aside.
 */
typedef void (*SwStartChosen) (SwDesign *design, gpointer user_data);
GtkWidget *sw_start_page_new (SwStartChosen chosen, gpointer user_data);
