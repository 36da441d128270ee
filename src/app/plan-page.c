// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan-page.h"

#include "app/pages.h"
#include "app/readout.h"
#include "app/settings-panel.h"
#include "app/view-area.h"

#include <glib/gi18n.h>

#define STACK_BELOW 1000 /* px: narrower, and the views stand one above the other */

struct _SwPlanPage {
  GtkWidget parent_instance;

  GtkWidget *flap;     /* owned as a child */
  GtkWidget *views;    /* borrowed: the paned */
  GtkWidget *settings; /* borrowed */
  guint turning;       /* idle that turns the paned */
};

G_DEFINE_FINAL_TYPE (SwPlanPage, sw_plan_page, GTK_TYPE_WIDGET)

static GtkOrientation
wanted_orientation (SwPlanPage *self)
{
  return gtk_widget_get_width (GTK_WIDGET (self)) < STACK_BELOW ? GTK_ORIENTATION_VERTICAL
                                                                : GTK_ORIENTATION_HORIZONTAL;
}

static gboolean
turn_cb (gpointer data)
{
  SwPlanPage *self = data;
  GtkOrientation orientation = wanted_orientation (self);
  gboolean upright = orientation == GTK_ORIENTATION_VERTICAL;
  int size = upright ? gtk_widget_get_height (self->views) : gtk_widget_get_width (self->views);

  self->turning = 0;
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self->views), orientation);
  gtk_paned_set_position (GTK_PANED (self->views), size * 56 / 100);
  return G_SOURCE_REMOVE;
}

static void
sw_plan_page_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwPlanPage *self = SW_PLAN_PAGE (widget);

  gtk_widget_allocate (self->flap, width, height, baseline, NULL);
  if (wanted_orientation (self) !=
        gtk_orientable_get_orientation (GTK_ORIENTABLE (self->views)) &&
      self->turning == 0)
    self->turning = g_idle_add (turn_cb, self);
}

static void
sw_plan_page_measure (GtkWidget *widget,
                      GtkOrientation orientation,
                      int for_size,
                      int *minimum,
                      int *natural,
                      int *min_base,
                      int *nat_base)
{
  gtk_widget_measure (SW_PLAN_PAGE (widget)->flap,
                      orientation,
                      for_size,
                      minimum,
                      natural,
                      min_base,
                      nat_base);
}

static void
sw_plan_page_dispose (GObject *object)
{
  SwPlanPage *self = SW_PLAN_PAGE (object);

  g_clear_handle_id (&self->turning, g_source_remove);
  g_clear_pointer (&self->flap, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_plan_page_parent_class)->dispose (object);
}

static void
sw_plan_page_class_init (SwPlanPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_plan_page_dispose;
  widget_class->size_allocate = sw_plan_page_size_allocate;
  widget_class->measure = sw_plan_page_measure;
}

static void
sw_plan_page_init (SwPlanPage *self)
{
}

GtkWidget *
sw_plan_page_new (SwDocument *document)
{
  SwPlanPage *self = g_object_new (SW_TYPE_PLAN_PAGE, NULL);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->views = gtk_paned_new (GTK_ORIENTATION_HORIZONTAL);
  gtk_paned_set_start_child (GTK_PANED (self->views), sw_view_area_new (document, SW_SIDE));
  gtk_paned_set_end_child (GTK_PANED (self->views), sw_view_area_new (document, SW_TOP));
  gtk_paned_set_shrink_start_child (GTK_PANED (self->views), FALSE);
  gtk_paned_set_shrink_end_child (GTK_PANED (self->views), FALSE);
  gtk_box_append (GTK_BOX (column), self->views);
  gtk_box_append (GTK_BOX (column), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (column), sw_readout_new (document));

  self->settings = sw_settings_panel_new (document);
  self->flap = adw_flap_new ();
  adw_flap_set_content (ADW_FLAP (self->flap), column);
  adw_flap_set_flap (ADW_FLAP (self->flap), self->settings);
  adw_flap_set_flap_position (ADW_FLAP (self->flap), GTK_PACK_END);
  adw_flap_set_separator (ADW_FLAP (self->flap), gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  gtk_widget_set_parent (self->flap, GTK_WIDGET (self));
  return GTK_WIDGET (self);
}

void
sw_plan_page_show_key (SwPlanPage *self, const char *path)
{
  adw_flap_set_reveal_flap (ADW_FLAP (self->flap), TRUE);
  sw_settings_panel_show_key (SW_SETTINGS_PANEL (self->settings), path);
}

void
sw_plan_page_search (SwPlanPage *self)
{
  adw_flap_set_reveal_flap (ADW_FLAP (self->flap), TRUE);
  sw_settings_panel_search (SW_SETTINGS_PANEL (self->settings));
}
