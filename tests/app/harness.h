// SPDX-License-Identifier: GPL-3.0-or-later
/* harness.h: a real window in the test's own process, and a real pointer and keyboard through
 * XTest. Places in widgets are logical pixels; everything waits until the program has taken
 * what was done.
 */
#pragma once
#include "app/view-area.h"
#include "app/window.h"

typedef struct {
  AdwApplication *application;
  SwWindow *window;
  SwDocument *document;
} Desk;

/* Runs the main loop for so long. */
void spin (int milliseconds);

/* Runs the main loop until it holds, at most 5 s. Returns: whether it holds. */
gboolean until (gboolean (*holds) (gpointer data), gpointer data);

/* A window on one of the starts; NULL: as a new one comes up. */
void desk_open (Desk *desk, const char *start);

/* The window and all that it owned must be gone. */
void desk_close (Desk *desk);

typedef gboolean (*Wanted) (GtkWidget *widget, gconstpointer data);

/* Returns: (nullable): the first widget below `from` that is wanted. */
GtkWidget *find_widget (GtkWidget *from, Wanted wanted, gconstpointer data);

/* Returns: (nullable): the drawing that has this grip. */
SwViewArea *view_with (Desk *desk, SwGripId id);

/* Returns: (nullable): the widget's own. */
GtkGesture *drag_gesture (GtkWidget *widget);

/* A place in a widget as a place on the screen. */
void on_screen (Desk *desk,
                GtkWidget *widget,
                double x,
                double y,
                int *screen_x,
                int *screen_y);

void pointer_to (Desk *desk, int x, int y);
void pointer_button (Desk *desk, gboolean down);
void pointer_wheel (Desk *desk, gboolean nearer);
/* In the middle of a widget; waits for what comes of it. */
void pointer_click (Desk *desk, GtkWidget *widget);

/* key, modifier: key symbols, XK_Up, XK_Shift_L. */
void press_key (Desk *desk, guint64 key);
void press_with (Desk *desk, guint64 modifier, guint64 key);

/* Types plain Latin text, sign by sign. */
void type_text (Desk *desk, const char *text);
