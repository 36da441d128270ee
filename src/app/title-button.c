// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/title-button.h"

#include <glib/gi18n.h>

struct _SwTitleButton {
  GtkWidget parent_instance;

  SwDocument *document; /* owned */
  GtkWidget *button;    /* owned as a child */
  GtkWidget *title;     /* borrowed: AdwWindowTitle */
  GtkWidget *entry;     /* borrowed */
};

G_DEFINE_FINAL_TYPE (SwTitleButton, sw_title_button, GTK_TYPE_WIDGET)

static char *
file_name (SwTitleButton *self)
{
  GFile *file = sw_document_get_file (self->document);

  return file == NULL ? g_strdup (_ ("not saved yet")) : g_file_get_basename (file);
}

static void
show (SwTitleButton *self)
{
  const char *name = sw_document_get_design (self->document)->title;
  gboolean modified = sw_document_get_modified (self->document);
  g_autofree char *title =
    g_strdup_printf ("%s%s", *name == '\0' ? _ ("No name") : name, modified ? " •" : "");
  g_autofree char *file = file_name (self);

  adw_window_title_set_title (ADW_WINDOW_TITLE (self->title), title);
  adw_window_title_set_subtitle (ADW_WINDOW_TITLE (self->title), file);
}

static void
rename_cb (SwTitleButton *self)
{
  sw_document_end_edit (self->document);
  sw_document_edit_text (self->document,
                         "title",
                         gtk_editable_get_text (GTK_EDITABLE (self->entry)),
                         _ ("Name"));
  sw_document_end_edit (self->document);
  gtk_menu_button_popdown (GTK_MENU_BUTTON (self->button));
}

static void
opened_cb (SwTitleButton *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->entry),
                         sw_document_get_design (self->document)->title);
  gtk_widget_grab_focus (self->entry);
}

static GtkWidget *
popover_new (SwTitleButton *self)
{
  GtkWidget *popover = gtk_popover_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6);
  GtkWidget *label = gtk_label_new (_ ("Name of this tree, on every sheet"));

  self->entry = gtk_entry_new ();
  gtk_entry_set_max_length (GTK_ENTRY (self->entry), 200); /* what a file may hold */
  gtk_editable_set_width_chars (GTK_EDITABLE (self->entry), 28);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Name"),
                                  -1);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), self->entry);
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (rename_cb), self);
  g_signal_connect_object (popover, "map", G_CALLBACK (opened_cb), self, G_CONNECT_SWAPPED);
  return popover;
}

static void
sw_title_button_dispose (GObject *object)
{
  SwTitleButton *self = SW_TITLE_BUTTON (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->button, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_title_button_parent_class)->dispose (object);
}

static void
sw_title_button_class_init (SwTitleButtonClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sw_title_button_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
sw_title_button_init (SwTitleButton *self)
{
  self->title = adw_window_title_new (NULL, NULL);
  self->button = gtk_menu_button_new ();
  gtk_menu_button_set_child (GTK_MENU_BUTTON (self->button), self->title);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->button), popover_new (self));
  gtk_widget_set_tooltip_text (self->button, _ ("Change the name"));
  gtk_widget_add_css_class (self->button, "flat");
  gtk_widget_add_css_class (GTK_WIDGET (self), "title");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ ("Change the name"),
                                  -1);
  gtk_widget_set_parent (self->button, GTK_WIDGET (self));
}

GtkWidget *
sw_title_button_new (SwDocument *document)
{
  SwTitleButton *self = g_object_new (SW_TYPE_TITLE_BUTTON, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (show), self);
  show (self);
  return GTK_WIDGET (self);
}
