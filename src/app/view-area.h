// SPDX-License-Identifier: GPL-3.0-or-later
/* view-area.h: one drawing with its grips: side view or top view of a document. */
#pragma once
#include "app/document.h"
#include "drawing/grips.h"

#include <gtk/gtk.h>

#define SW_TYPE_VIEW_AREA (sw_view_area_get_type ())
G_DECLARE_FINAL_TYPE (SwViewArea, sw_view_area, SW, VIEW_AREA, GtkWidget)

/* Property "zoom", 1 … 16: how much nearer than the whole tree; the two views of a page share
 * it.
 */
GtkWidget *sw_view_area_new (SwDocument *document, SwViewKind kind);

/* Where a grip stands in the widget. Returns: FALSE when this view does not have it. */
gboolean sw_view_area_find_grip (SwViewArea *self, SwGripId id, double *x, double *y);

/* The view the drawing is shown through; frozen while a grip is dragged. */
const SwView *sw_view_area_get_view (SwViewArea *self);
