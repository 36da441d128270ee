// SPDX-License-Identifier: GPL-3.0-or-later
/* window.h: one design's window: header, pages, actions, and the guard of unsaved changes. */
#pragma once
#include "app/document.h"

#include <adwaita.h>

#define SW_TYPE_WINDOW (sw_window_get_type ())
G_DECLARE_FINAL_TYPE (SwWindow, sw_window, SW, WINDOW, AdwApplicationWindow)

SwWindow *sw_window_new (GtkApplication *application);

SwDocument *sw_window_get_document (SwWindow *self);

/* Opens a file; a bad one shows a bar that names the key, and the window keeps what it has. */
void sw_window_open (SwWindow *self, GFile *file);

/* Shows the first questions of a new design. */
void sw_window_show_start (SwWindow *self);

/* For window-actions.c. */
void sw_window_show_problem (SwWindow *self, const char *text);
void sw_window_show_page (SwWindow *self, const char *name);
void sw_window_search (SwWindow *self);

/* Asks what to do with unsaved changes, then calls `go_on`; not at all when the person stays.
 */
typedef void (*SwWindowNext) (SwWindow *self, gpointer data);
void sw_window_guard (SwWindow *self, SwWindowNext go_on, gpointer data);

/* Saves, asking for a name where there is none; calls `then` (nullable) once it is saved. */
void sw_window_save (SwWindow *self, gboolean ask_name, SwWindowNext then, gpointer data);
