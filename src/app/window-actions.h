// SPDX-License-Identifier: GPL-3.0-or-later
/* window-actions.h: the window's actions as one table: name, what it does, when it can be done,
 * its keys. */
#pragma once
#include "app/window.h"

/* For class_init. */
void sw_window_actions_install (GtkWidgetClass *widget_class);
/* Enables what can be done now. */
void sw_window_actions_update (SwWindow *self);
/* Gives the application the keys of every action. */
void sw_window_actions_set_accels (GtkApplication *application);
