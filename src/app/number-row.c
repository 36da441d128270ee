// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/number-row.h"

#include "engine/edit.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>
#include <math.h>

#define QUIET_MS 500 /* without a further move a slider's drag is over */

struct _SwNumberRow {
  GtkListBoxRow parent_instance;

  SwDocument *document; /* owned */
  const SwKey *key;     /* borrowed */
  gboolean showing;     /* the widgets are being set from the document */
  guint quiet;          /* timeout that ends a slider's undo step */
  SwUnits shown_units;  /* of what the entry shows */

  /* template */
  GtkLabel *label, *unit, *problem;
  GtkEntry *entry;
  GtkScale *scale;
  GtkAdjustment *adjustment;
  GtkToggleButton *lock;
};

G_DEFINE_FINAL_TYPE (SwNumberRow, sw_number_row, GTK_TYPE_LIST_BOX_ROW)

static const SwDesign *
design_of (SwNumberRow *self)
{
  return sw_document_get_design (self->document);
}

/* Quantities that fits and drags move: only these are worth a lock. */
static gboolean
can_lock (const SwKey *key)
{
  static const char *const paths[] = { "shape.crown_height_m", "shape.ring_height_m",
                                       "shape.crown_radius_m", "shape.ring_radius_m",
                                       "shape.strip_count",    "shape.coverage_deg",
                                       "strip.pixels",         "strip.pitch_m",
                                       "strip.lead_m",         NULL };

  return g_strv_contains (paths, key->path);
}

static void
show_problem (SwNumberRow *self, const char *text)
{
  gtk_label_set_text (self->problem, text == NULL ? "" : text);
  gtk_widget_set_visible (GTK_WIDGET (self->problem), text != NULL);
  if (text != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self->entry), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->entry), "error");
}

static void
show_entry (SwNumberRow *self)
{
  const SwDesign *design = design_of (self);
  g_autofree char *text = sw_units_format_bare (sw_key_get_number (self->key, design),
                                                self->key->quantity,
                                                design->units,
                                                sw_language_of_process ());

  /* Setting a text lays the entry out anew, even the same one: at every move of a drag, for
   * every row. */
  if (g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (self->entry)), text) != 0)
    gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
}

static gboolean
is_edited (SwNumberRow *self)
{
  return gtk_widget_has_focus (GTK_WIDGET (self->entry)) ||
         gtk_widget_get_focus_child (GTK_WIDGET (self->entry)) != NULL;
}

static void
show_lock (SwNumberRow *self)
{
  gboolean held = sw_design_holds (design_of (self), self->key->path);

  gtk_toggle_button_set_active (self->lock, held);
  gtk_button_set_icon_name (GTK_BUTTON (self->lock),
                            held ? "changes-prevent-symbolic" : "changes-allow-symbolic");
  gtk_widget_set_sensitive (GTK_WIDGET (self->scale), !held);
  gtk_widget_set_sensitive (GTK_WIDGET (self->entry), !held);
}

/* A row in a folded group is set when it is unfolded. */
static void
show (SwNumberRow *self)
{
  if (!gtk_widget_get_mapped (GTK_WIDGET (self)))
    return;
  const SwDesign *design = design_of (self);
  const char *unit = sw_units_name (self->key->quantity, design->units);
  gboolean marks = design->units == SW_UNITS_US && self->key->quantity == SW_QUANTITY_LENGTH;

  self->showing = TRUE;
  gboolean other_units =
    self->shown_units != design->units; /* a number left standing would mean another length */

  gtk_adjustment_set_value (self->adjustment, sw_key_get_number (self->key, design));
  self->shown_units = design->units;
  if (!is_edited (self) || self->quiet != 0 || other_units)
    show_entry (self);
  gtk_label_set_text (self->unit, marks ? "" : unit);
  show_lock (self);
  self->showing = FALSE;
}

static gboolean
edit (SwNumberRow *self, double value)
{
  if (sw_document_edit_number (self->document, self->key->path, value, _ (self->key->label))) {
    show_problem (self, NULL);
    return TRUE;
  }
  show_problem (self, sw_document_get_refusal (self->document));
  return FALSE;
}

static gboolean
quiet_cb (gpointer data)
{
  SwNumberRow *self = data;

  self->quiet = 0;
  sw_document_end_edit (self->document);
  show_problem (self, NULL);
  return G_SOURCE_REMOVE;
}

static gboolean
change_value_cb (SwNumberRow *self, GtkScrollType scroll, double value)
{
  if (self->showing)
    return FALSE;
  g_clear_handle_id (&self->quiet, g_source_remove);
  self->quiet = g_timeout_add (QUIET_MS, quiet_cb, self);
  edit (self,
        CLAMP (value,
               gtk_adjustment_get_lower (self->adjustment),
               gtk_adjustment_get_upper (self->adjustment)));
  return TRUE;
}

/* A number beyond what is allowed was brought to the end of its range: say so. */
static void
tell_when_limited (SwNumberRow *self, double typed)
{
  double taken = sw_key_get_number (self->key, design_of (self)), low, high;

  if (self->key->type == SW_KEY_WHOLE ? fabs (taken - typed) <= 0.5
                                      : fabs (taken - typed) <= 1e-9 * fabs (typed))
    return;
  sw_edit_limits (design_of (self), self->key->path, &low, &high);
  g_autofree char *least = sw_units_format (low,
                                            self->key->quantity,
                                            design_of (self)->units,
                                            sw_language_of_process ());
  g_autofree char *most = sw_units_format (high,
                                           self->key->quantity,
                                           design_of (self)->units,
                                           sw_language_of_process ());
  /* Translators: the least and the most that may be typed. */
  g_autofree char *text = g_strdup_printf (_ ("Allowed here: %s to %s."), least, most);
  show_problem (self, text);
}

/* What was typed counts when it was changed; an entry only walked through rounds nothing. */
static void
commit (SwNumberRow *self)
{
  const SwDesign *design = design_of (self);
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->entry));
  g_autofree char *shown = sw_units_format_bare (sw_key_get_number (self->key, design),
                                                 self->key->quantity,
                                                 design->units,
                                                 sw_language_of_process ());
  g_autoptr (GError) error = NULL;
  double value;

  if (g_strcmp0 (text, shown) == 0) {
    show_problem (self, NULL);
    return;
  }
  if (!sw_units_parse (text,
                       self->key->quantity,
                       design->units,
                       sw_language_of_process (),
                       &value,
                       &error)) {
    show_problem (self, error->message);
    return;
  }
  sw_document_end_edit (self->document);
  if (edit (self, value)) {
    sw_document_end_edit (self->document);
    show_entry (self);
    tell_when_limited (self, value);
  }
}

static gboolean
key_cb (SwNumberRow *self, guint keyval)
{
  if (keyval != GDK_KEY_Escape)
    return GDK_EVENT_PROPAGATE;
  show_problem (self, NULL);
  show_entry (self);
  return GDK_EVENT_STOP;
}

static void
lock_cb (SwNumberRow *self)
{
  gboolean hold = gtk_toggle_button_get_active (self->lock);

  if (self->showing || hold == sw_design_holds (design_of (self), self->key->path))
    return;
  g_autoptr (SwDesign) design = sw_edit_hold (design_of (self), self->key->path, hold);
  sw_document_end_edit (self->document);
  sw_document_edit_design (self->document, design, hold ? _ ("Lock") : _ ("Unlock"));
  sw_document_end_edit (self->document);
}

/* A wheel over a slider should scroll the panel, not change the tree. */
static void
leave_wheel_alone (GtkWidget *scale)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (scale);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++) {
    g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
    if (GTK_IS_EVENT_CONTROLLER_SCROLL (controller))
      gtk_event_controller_set_propagation_phase (controller, GTK_PHASE_NONE);
  }
}

static void
add_entry_controllers (SwNumberRow *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *keys = gtk_event_controller_key_new ();

  g_signal_connect_swapped (focus, "leave", G_CALLBACK (commit), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), focus);
  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), keys);
}

static void
sw_number_row_map (GtkWidget *widget)
{
  GTK_WIDGET_CLASS (sw_number_row_parent_class)->map (widget);
  show (SW_NUMBER_ROW (widget));
}

static void
sw_number_row_dispose (GObject *object)
{
  SwNumberRow *self = SW_NUMBER_ROW (object);

  g_clear_handle_id (&self->quiet, g_source_remove);
  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  G_OBJECT_CLASS (sw_number_row_parent_class)->dispose (object);
}

static void
sw_number_row_class_init (SwNumberRowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_number_row_dispose;
  widget_class->map = sw_number_row_map;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/spirewright/Spirewright/number-row.ui");
  gtk_widget_class_bind_template_child (widget_class, SwNumberRow, label);
  gtk_widget_class_bind_template_child (widget_class, SwNumberRow, unit);
  gtk_widget_class_bind_template_child (widget_class, SwNumberRow, problem);
  gtk_widget_class_bind_template_child (widget_class, SwNumberRow, entry);
  gtk_widget_class_bind_template_child (widget_class, SwNumberRow, scale);
  gtk_widget_class_bind_template_child (widget_class, SwNumberRow, adjustment);
  gtk_widget_class_bind_template_child (widget_class, SwNumberRow, lock);
}

static void
sw_number_row_init (SwNumberRow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  leave_wheel_alone (GTK_WIDGET (self->scale));
  add_entry_controllers (self);
  g_signal_connect_swapped (self->entry, "activate", G_CALLBACK (commit), self);
  g_signal_connect_swapped (self->scale, "change-value", G_CALLBACK (change_value_cb), self);
  g_signal_connect_swapped (self->lock, "toggled", G_CALLBACK (lock_cb), self);
}

static void
name_parts (SwNumberRow *self)
{
  const char *label = _ (self->key->label);
  g_autofree char *lock = g_strdup_printf (_ ("Lock %s"), label);

  gtk_label_set_text (self->label, label);
  gtk_widget_set_tooltip_text (GTK_WIDGET (self), _ (self->key->help));
  gtk_widget_set_tooltip_text (GTK_WIDGET (self->lock),
                               _ ("Lock: keeps this number where it is"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->entry),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label,
                                  -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->scale),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  label,
                                  -1);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->lock),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  lock,
                                  -1);
}

GtkWidget *
sw_number_row_new (SwDocument *document, const SwKey *key)
{
  SwNumberRow *self = g_object_new (SW_TYPE_NUMBER_ROW, NULL);
  double span = key->ease_high - key->ease_low;

  self->document = g_object_ref (document);
  self->key = key;
  name_parts (self);
  gtk_widget_set_visible (GTK_WIDGET (self->scale), span > 0);
  if (!can_lock (key)) { /* its place stays, so that entries stand in one column */
    gtk_widget_set_opacity (GTK_WIDGET (self->lock), 0);
    gtk_widget_set_can_target (GTK_WIDGET (self->lock), FALSE);
    gtk_widget_set_focusable (GTK_WIDGET (self->lock), FALSE);
    gtk_widget_set_sensitive (GTK_WIDGET (self->lock), FALSE);
  }
  gtk_adjustment_configure (self->adjustment,
                            key->ease_low,
                            key->ease_low,
                            key->ease_high,
                            key->type == SW_KEY_WHOLE ? 1 : span / 200,
                            key->type == SW_KEY_WHOLE ? 5 : span / 20,
                            0);
  if (key->type == SW_KEY_WHOLE)
    gtk_range_set_round_digits (GTK_RANGE (self->scale), 0);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (show), self);
  show (self);
  return GTK_WIDGET (self);
}
