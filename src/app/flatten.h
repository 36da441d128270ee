// SPDX-License-Identifier: GPL-3.0-or-later
/* flatten.h: a widget painted as one picture.
 *
 * GTK paints only what differs between two frames, as a list of rectangles; beyond 30 it gives
 * up and paints the whole window. Small texts that change together at every move of a drag
 * (a row, the readout) make many; flattened they make one.
 */
#pragma once
#include <gtk/gtk.h>

/* For a snapshot function: does what the parent class does, as one picture. */
void sw_flatten_snapshot (GtkWidgetClass *parent_class,
                          GtkWidget *widget,
                          GtkSnapshot *snapshot);
