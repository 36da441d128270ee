// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/plan-page.h"

#include "app/pages.h"
#include "app/readout.h"
#include "app/settings-panel.h"
#include "app/view-area.h"

#include <glib/gi18n.h>

#define STACK_BELOW 1000  /* px: narrower, and the views stand one above the other */
#define OVERLAY_BELOW 720 /* px: narrower, and the settings lie over the drawings */

struct _SwPlanPage {
  GtkWidget parent_instance;

  GtkWidget *column;   /* owned as a child: all */
  GtkWidget *flap;     /* borrowed: drawings and settings */
  GtkWidget *views;    /* borrowed: the paned */
  GtkWidget *settings; /* borrowed */
  GtkWidget *opener;   /* borrowed: shows the settings where they lie over the drawings */
  int width;           /* for which the parts stand as they do */
  guint turning;       /* idle that turns them */
};

G_DEFINE_FINAL_TYPE (SwPlanPage, sw_plan_page, GTK_TYPE_WIDGET)

static gboolean
is_upright (int width)
{
  return width < STACK_BELOW;
}

static gboolean
is_overlay (int width)
{
  return width < OVERLAY_BELOW;
}

static void
share_views (SwPlanPage *self)
{
  gboolean upright = is_upright (self->width);
  int size = upright ? gtk_widget_get_height (self->views) : gtk_widget_get_width (self->views);

  gtk_paned_set_position (GTK_PANED (self->views), size * 58 / 100);
}

static gboolean
turn_cb (gpointer data)
{
  SwPlanPage *self = data;
  gboolean overlay = is_overlay (self->width);

  self->turning = 0;
  gtk_orientable_set_orientation (GTK_ORIENTABLE (self->views),
                                  is_upright (self->width) ? GTK_ORIENTATION_VERTICAL
                                                           : GTK_ORIENTATION_HORIZONTAL);
  adw_flap_set_fold_policy (ADW_FLAP (self->flap),
                            overlay ? ADW_FLAP_FOLD_POLICY_ALWAYS : ADW_FLAP_FOLD_POLICY_NEVER);
  adw_flap_set_reveal_flap (ADW_FLAP (self->flap), !overlay);
  gtk_widget_set_visible (self->opener, overlay);
  share_views (self);
  return G_SOURCE_REMOVE;
}

/* Parts can't be turned while they are being given their places: that waits for an idle moment.
 */
static void
sw_plan_page_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwPlanPage *self = SW_PLAN_PAGE (widget);
  gboolean turns = self->width == 0 || is_upright (width) != is_upright (self->width) ||
                   is_overlay (width) != is_overlay (self->width);

  self->width = width;
  gtk_widget_allocate (self->column, width, height, baseline, NULL);
  if (turns && self->turning == 0)
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
  gtk_widget_measure (SW_PLAN_PAGE (widget)->column,
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
  g_clear_pointer (&self->column, gtk_widget_unparent);
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

static GtkWidget *
views_new (SwPlanPage *self, SwDocument *document)
{
  GtkPaned *views = GTK_PANED (gtk_paned_new (GTK_ORIENTATION_HORIZONTAL));
  GtkWidget *overlay = gtk_overlay_new ();

  gtk_paned_set_start_child (views, sw_view_area_new (document, SW_SIDE));
  gtk_paned_set_end_child (views, sw_view_area_new (document, SW_TOP));
  g_object_bind_property (gtk_paned_get_start_child (views),
                          "zoom",
                          gtk_paned_get_end_child (views),
                          "zoom",
                          G_BINDING_BIDIRECTIONAL);
  gtk_paned_set_shrink_start_child (views, FALSE);
  gtk_paned_set_shrink_end_child (views, FALSE);
  self->views = GTK_WIDGET (views);
  self->opener = gtk_toggle_button_new_with_label (_ ("Settings"));
  gtk_widget_set_halign (self->opener, GTK_ALIGN_END);
  gtk_widget_set_valign (self->opener, GTK_ALIGN_START);
  gtk_widget_set_visible (self->opener, FALSE);
  gtk_widget_add_css_class (self->opener, "opener");
  gtk_overlay_set_child (GTK_OVERLAY (overlay), self->views);
  gtk_overlay_add_overlay (GTK_OVERLAY (overlay), self->opener);
  return overlay;
}

static GtkWidget *
flap_new (SwPlanPage *self, SwDocument *document)
{
  AdwFlap *flap = ADW_FLAP (adw_flap_new ());

  self->settings = sw_settings_panel_new (document);
  adw_flap_set_content (flap, views_new (self, document));
  adw_flap_set_flap (flap, self->settings);
  adw_flap_set_flap_position (flap, GTK_PACK_END);
  adw_flap_set_separator (flap, gtk_separator_new (GTK_ORIENTATION_VERTICAL));
  adw_flap_set_fold_policy (flap, ADW_FLAP_FOLD_POLICY_NEVER);
  g_object_bind_property (flap,
                          "reveal-flap",
                          self->opener,
                          "active",
                          G_BINDING_BIDIRECTIONAL | G_BINDING_SYNC_CREATE);
  gtk_widget_set_vexpand (GTK_WIDGET (flap), TRUE);
  self->flap = GTK_WIDGET (flap);
  return self->flap;
}

GtkWidget *
sw_plan_page_new (SwDocument *document)
{
  SwPlanPage *self = g_object_new (SW_TYPE_PLAN_PAGE, NULL);

  self->column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  gtk_box_append (GTK_BOX (self->column), flap_new (self, document));
  gtk_box_append (GTK_BOX (self->column), gtk_separator_new (GTK_ORIENTATION_HORIZONTAL));
  gtk_box_append (GTK_BOX (self->column), sw_readout_new (document));
  gtk_widget_set_parent (self->column, GTK_WIDGET (self));
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
