// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/flatten.h"

void
sw_flatten_snapshot (GtkWidgetClass *parent_class, GtkWidget *widget, GtkSnapshot *snapshot)
{
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0,
                                               0,
                                               (float) gtk_widget_get_width (widget),
                                               (float) gtk_widget_get_height (widget));
  GtkSnapshot *parts = gtk_snapshot_new ();

  parent_class->snapshot (widget, parts);
  GskRenderNode *node = gtk_snapshot_free_to_node (parts);
  if (node == NULL)
    return;
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  gsk_render_node_draw (node, cr);
  cairo_destroy (cr);
  gsk_render_node_unref (node);
}
