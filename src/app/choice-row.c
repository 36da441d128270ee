// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/choice-row.h"

#include "engine/catalogue.h"

#include <glib/gi18n.h>

struct _SwChoiceRow {
  GtkListBoxRow parent_instance;

  SwDocument *document; /* owned */
  const SwKey *key;     /* borrowed */
  GtkWidget *control;   /* borrowed: the drop-down, switch or entry */
  GtkWidget *problem;   /* borrowed: why a choice was refused */
  GPtrArray *ids;       /* owned, nullable: catalogue ids in the drop-down's order */
  gboolean showing;     /* the control is being set from the document */
};

G_DEFINE_FINAL_TYPE (SwChoiceRow, sw_choice_row, GTK_TYPE_LIST_BOX_ROW)

static const SwDesign *
design_of (SwChoiceRow *self)
{
  return sw_document_get_design (self->document);
}

/* An id that the catalogue does not know is shown as one more choice, not as nothing. */
static guint
place_of_id (SwChoiceRow *self, const char *id)
{
  for (guint i = 0; i < self->ids->len; i++) {
    if (g_strcmp0 (self->ids->pdata[i], id) == 0)
      return i;
  }
  GListModel *names = gtk_drop_down_get_model (GTK_DROP_DOWN (self->control));
  /* Translators: an id out of a file, such as "my-pipe". */
  g_autofree char *name = g_strdup_printf (_ ("%s (not in the catalogue)"), id);
  gtk_string_list_append (GTK_STRING_LIST (names), name);
  g_ptr_array_add (self->ids, (gpointer) (guintptr) g_intern_string (id));
  return self->ids->len - 1;
}

static void
show (SwChoiceRow *self)
{
  self->showing = TRUE;
  switch (self->key->type) {
  case SW_KEY_CHOICE:
    gtk_drop_down_set_selected (GTK_DROP_DOWN (self->control),
                                (guint) sw_key_get_number (self->key, design_of (self)));
    break;
  case SW_KEY_ID:
    gtk_drop_down_set_selected (
      GTK_DROP_DOWN (self->control),
      place_of_id (self, sw_key_get_text (self->key, design_of (self))));
    break;
  case SW_KEY_FLAG:
    gtk_switch_set_active (GTK_SWITCH (self->control),
                           sw_key_get_number (self->key, design_of (self)) > 0);
    break;
  case SW_KEY_TEXT:
    if (!gtk_widget_has_focus (self->control) &&
        gtk_widget_get_focus_child (self->control) == NULL)
      gtk_editable_set_text (GTK_EDITABLE (self->control),
                             sw_key_get_text (self->key, design_of (self)));
    break;
  case SW_KEY_NUMBER:
  case SW_KEY_WHOLE:
    break;
  }
  self->showing = FALSE;
}

static void
show_problem (SwChoiceRow *self, const char *text)
{
  gtk_label_set_text (GTK_LABEL (self->problem), text == NULL ? "" : text);
  gtk_widget_set_visible (self->problem, text != NULL);
}

static void
edit_text (SwChoiceRow *self, const char *text)
{
  sw_document_end_edit (self->document);
  sw_document_edit_text (self->document, self->key->path, text, _ (self->key->label));
  show_problem (self, sw_document_get_refusal (self->document));
  sw_document_end_edit (self->document);
  show (self);
}

static void
selected_cb (SwChoiceRow *self)
{
  guint selected = gtk_drop_down_get_selected (GTK_DROP_DOWN (self->control));

  if (self->showing || selected == GTK_INVALID_LIST_POSITION)
    return;
  edit_text (self,
             self->ids != NULL ? self->ids->pdata[selected] : self->key->choices[selected]);
}

static void
active_cb (SwChoiceRow *self)
{
  if (!self->showing)
    edit_text (self, gtk_switch_get_active (GTK_SWITCH (self->control)) ? "true" : "false");
}

static void
words_cb (SwChoiceRow *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->control));

  if (g_strcmp0 (text, sw_key_get_text (self->key, design_of (self))) != 0)
    edit_text (self, text);
}

static GtkWidget *
drop_down (SwChoiceRow *self, GtkStringList *names)
{
  GtkWidget *control = gtk_drop_down_new (G_LIST_MODEL (names), NULL);

  gtk_widget_set_hexpand (control, FALSE);
  g_signal_connect_swapped (control, "notify::selected", G_CALLBACK (selected_cb), self);
  return control;
}

static GtkWidget *
choice_control (SwChoiceRow *self)
{
  GtkStringList *names = gtk_string_list_new (NULL);

  for (guint i = 0; self->key->choices[i] != NULL; i++)
    gtk_string_list_append (names, _ (self->key->choice_labels[i]));
  return drop_down (self, names);
}

static GtkWidget *
id_control (SwChoiceRow *self)
{
  GtkStringList *names = gtk_string_list_new (NULL);
  const SwCatalogue *catalogue = sw_document_get_solution (self->document)->catalogue;

  self->ids = sw_catalogue_ids (catalogue, self->key->kind);
  for (guint i = 0; i < self->ids->len; i++) {
    const char *id = self->ids->pdata[i];
    gtk_string_list_append (names, _ (sw_catalogue_name (catalogue, self->key->kind, id)));
    self->ids->pdata[i] = (gpointer) (guintptr) g_intern_string (id); /* outlives its row */
  }
  return drop_down (self, names);
}

static GtkWidget *
flag_control (SwChoiceRow *self)
{
  GtkWidget *control = gtk_switch_new ();

  g_signal_connect_swapped (control, "notify::active", G_CALLBACK (active_cb), self);
  return control;
}

static GtkWidget *
text_control (SwChoiceRow *self)
{
  GtkWidget *control = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_editable_set_enable_undo (GTK_EDITABLE (control), FALSE);
  gtk_editable_set_width_chars (GTK_EDITABLE (control), 10);
  g_signal_connect_swapped (control, "activate", G_CALLBACK (words_cb), self);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (words_cb), self);
  gtk_widget_add_controller (control, focus);
  return control;
}

static GtkWidget *
control_new (SwChoiceRow *self)
{
  switch (self->key->type) {
  case SW_KEY_CHOICE:
    return choice_control (self);
  case SW_KEY_ID:
    return id_control (self);
  case SW_KEY_FLAG:
    return flag_control (self);
  case SW_KEY_TEXT:
  case SW_KEY_NUMBER:
  case SW_KEY_WHOLE:
    break;
  }
  return text_control (self);
}

static void
sw_choice_row_dispose (GObject *object)
{
  SwChoiceRow *self = SW_CHOICE_ROW (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->ids, g_ptr_array_unref);
  G_OBJECT_CLASS (sw_choice_row_parent_class)->dispose (object);
}

static void
sw_choice_row_class_init (SwChoiceRowClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sw_choice_row_dispose;
}

static void
sw_choice_row_init (SwChoiceRow *self)
{
  gtk_list_box_row_set_activatable (GTK_LIST_BOX_ROW (self), FALSE);
  gtk_widget_set_focusable (GTK_WIDGET (self), FALSE);
}

/* A drop-down's long names want a line of their own; a switch or a short entry stands beside
 * the label. */
static GtkWidget *
named_control (SwChoiceRow *self)
{
  gboolean below = self->key->type == SW_KEY_CHOICE || self->key->type == SW_KEY_ID;
  GtkWidget *box =
    gtk_box_new (below ? GTK_ORIENTATION_VERTICAL : GTK_ORIENTATION_HORIZONTAL, below ? 2 : 6);
  GtkWidget *label = gtk_label_new (_ (self->key->label));

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_widget_set_hexpand (label, TRUE);
  gtk_widget_set_valign (self->control, GTK_ALIGN_CENTER);
  gtk_box_append (GTK_BOX (box), label);
  gtk_box_append (GTK_BOX (box), self->control);
  return box;
}

static void
lay_out (SwChoiceRow *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  self->problem = gtk_label_new (NULL);
  gtk_label_set_xalign (GTK_LABEL (self->problem), 0);
  gtk_label_set_wrap (GTK_LABEL (self->problem), TRUE);
  gtk_widget_set_visible (self->problem, FALSE);
  gtk_widget_add_css_class (self->problem, "error");
  gtk_widget_add_css_class (self->problem, "caption");
  gtk_box_append (GTK_BOX (box), named_control (self));
  gtk_box_append (GTK_BOX (box), self->problem);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (self), box);
  gtk_widget_add_css_class (GTK_WIDGET (self), "setting");
}

GtkWidget *
sw_choice_row_new (SwDocument *document, const SwKey *key)
{
  SwChoiceRow *self = g_object_new (SW_TYPE_CHOICE_ROW, NULL);

  self->document = g_object_ref (document);
  self->key = key;
  self->showing = TRUE;
  self->control = control_new (self);
  lay_out (self);
  gtk_widget_set_name (GTK_WIDGET (self), key->path);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _ (key->help));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->control),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (key->label),
                                  -1);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (show), self);
  show (self);
  return GTK_WIDGET (self);
}
