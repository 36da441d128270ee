// SPDX-License-Identifier: GPL-3.0-or-later
/* zoom-control.h: wheel, pinch, keys and dragged paper, for a widget that shows a view.
 *
 * Lives inside the widget's own struct and as long as it.
 */
#pragma once
#include "drawing/zoom.h"

#include <gtk/gtk.h>

typedef struct {
  GtkWidget *widget; /* borrowed: it holds the control */
  void (*changed) (GtkWidget *widget);
  SwView whole; /* the whole tree; kept up by the widget */
  SwZoom zoom;
  double pointer_x, pointer_y;
  double pinched;            /* factor when the pinch began */
  double panned_x, panned_y; /* of the drag, so far */
  gboolean panning;
} SwZoomControl;

/* changed: after each change of `zoom`. */
void sw_zoom_control_init (SwZoomControl *self,
                           GtkWidget *widget,
                           void (*changed) (GtkWidget *widget));

/* 1 … SW_ZOOM_MOST. */
double sw_zoom_control_get_factor (const SwZoomControl *self);

/* Round the middle of the view. */
void sw_zoom_control_set_factor (SwZoomControl *self, double factor);

/* Plus, minus and 0. Returns: whether the key was one of them. */
gboolean sw_zoom_control_key (SwZoomControl *self, guint keyval);

/* The paper is grabbed. Returns: FALSE where the whole is shown: then there is nothing to move.
 */
gboolean sw_zoom_control_begin_pan (SwZoomControl *self);
/* dx, dy: since the begin. */
void sw_zoom_control_pan (SwZoomControl *self, double dx, double dy);
void sw_zoom_control_end_pan (SwZoomControl *self);
