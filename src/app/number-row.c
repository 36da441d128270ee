// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/number-row.h"

#include "app/flatten.h"
#include "engine/edit.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#define QUIET_MS 500 /* without a further key a slider's move is over */

/* What the widgets show; equal bytes need no second look at them. */
typedef struct {
  double value;
  gint32 units, held;
} Shown;

struct _SwNumberRow {
  GtkListBoxRow parent_instance;

  SwDocument *document; /* owned */
  const SwKey *key;     /* borrowed */
  Shown shown;
  gboolean stale;    /* the document went on while the row could not be seen */
  gboolean showing;  /* the widgets are being set from the document */
  char *entry_text;  /* owned, nullable: what was last put into the entry */
  gboolean held;     /* the slider is held by a pointer */
  gboolean given_up; /* Escape was pressed while it was */
  guint quiet;       /* timeout that ends an undo step made with the slider's keys */

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

static char *
entry_text (SwNumberRow *self)
{
  const SwDesign *design = design_of (self);

  return sw_units_format_bare (sw_key_get_number (self->key, design),
                               self->key->quantity,
                               design->units,
                               sw_language_of_process ());
}

/* Feet and inches carry their own marks; then the unit beside them would say it twice. */
static void
show_entry (SwNumberRow *self)
{
  g_autofree char *text = entry_text (self);
  gboolean marks = g_str_has_suffix (text, "″") || g_str_has_suffix (text, "′");

  gtk_editable_set_text (GTK_EDITABLE (self->entry), text);
  g_free (self->entry_text);
  self->entry_text = g_steal_pointer (&text);
  gtk_label_set_text (self->unit,
                      marks ? ""
                            : sw_units_name (self->key->quantity, design_of (self)->units));
}

/* Whether something was typed that is not taken yet. */
static gboolean
is_pending (SwNumberRow *self)
{
  return self->entry_text != NULL &&
         !g_str_equal (gtk_editable_get_text (GTK_EDITABLE (self->entry)), self->entry_text);
}

static void
show_lock (SwNumberRow *self)
{
  gboolean held = sw_design_holds (design_of (self), self->key->path);

  gtk_toggle_button_set_active (self->lock, held);
  if (held == !gtk_widget_get_sensitive (GTK_WIDGET (self->entry)))
    return; /* an icon set anew has the whole window measured anew */
  gtk_button_set_icon_name (GTK_BUTTON (self->lock),
                            held ? "changes-prevent-symbolic" : "changes-allow-symbolic");
  gtk_widget_set_sensitive (GTK_WIDGET (self->scale), !held);
  gtk_widget_set_sensitive (GTK_WIDGET (self->entry), !held);
}

/* Rows that cannot be seen wait until they can; most of a hundred rows are like that, and most
 * of the rest did not change.
 */
static void
show (SwNumberRow *self)
{
  const SwDesign *design = design_of (self);
  Shown now = { sw_key_get_number (self->key, design),
                (gint32) design->units,
                sw_design_holds (design, self->key->path) };

  self->stale = !gtk_widget_get_mapped (GTK_WIDGET (self));
  if (self->stale || memcmp (&now, &self->shown, sizeof now) == 0)
    return;
  gboolean other_units =
    now.units != self->shown.units; /* what was typed meant another length */
  self->shown = now;
  self->showing = TRUE;
  gtk_adjustment_set_value (self->adjustment, now.value);
  if (!is_pending (self) || other_units)
    show_entry (self);
  show_lock (self);
  self->showing = FALSE;
}

static void
sw_number_row_map (GtkWidget *widget)
{
  SwNumberRow *self = SW_NUMBER_ROW (widget);

  GTK_WIDGET_CLASS (sw_number_row_parent_class)->map (widget);
  if (self->stale)
    show (self);
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

static void
end_move (SwNumberRow *self)
{
  g_clear_handle_id (&self->quiet, g_source_remove);
  sw_document_end_edit (self->document);
  show_problem (self, NULL);
}

static gboolean
quiet_cb (gpointer data)
{
  SwNumberRow *self = data;

  self->quiet = 0;
  end_move (self);
  return G_SOURCE_REMOVE;
}

static gboolean
change_value_cb (SwNumberRow *self, GtkScrollType scroll, double value)
{
  if (self->showing)
    return FALSE;
  if (self->given_up)
    return TRUE;
  g_clear_handle_id (&self->quiet, g_source_remove);
  if (!self->held)
    self->quiet = g_timeout_add (QUIET_MS, quiet_cb, self);
  edit (self,
        CLAMP (value,
               gtk_adjustment_get_lower (self->adjustment),
               gtk_adjustment_get_upper (self->adjustment)));
  return TRUE;
}

/* From press to release is one undo step. */
static gboolean
scale_event_cb (SwNumberRow *self, GdkEvent *event)
{
  GdkEventType type = gdk_event_get_event_type (event);

  if (type == GDK_BUTTON_PRESS || type == GDK_TOUCH_BEGIN) {
    end_move (self);
    self->held = TRUE;
    self->given_up = FALSE;
  } else if (type == GDK_BUTTON_RELEASE || type == GDK_TOUCH_END || type == GDK_TOUCH_CANCEL) {
    self->held = self->given_up = FALSE;
    end_move (self);
  }
  return GDK_EVENT_PROPAGATE;
}

static gboolean
scale_key_cb (SwNumberRow *self, guint keyval)
{
  if (keyval != GDK_KEY_Escape || !self->held)
    return GDK_EVENT_PROPAGATE;
  self->given_up = TRUE;
  sw_document_cancel_edit (self->document);
  return GDK_EVENT_STOP;
}

/* A slider stops at its end; what was typed is told where the end is. */
static gboolean
is_allowed (SwNumberRow *self, double value)
{
  const SwDesign *design = design_of (self);
  double low, high;

  sw_edit_limits (design, self->key->path, &low, &high);
  if (value >= low - 1e-9 * fabs (low) && value <= high + 1e-9 * fabs (high))
    return TRUE;
  g_autofree char *least = sw_units_format (low,
                                            self->key->quantity,
                                            design->units,
                                            sw_language_of_process ()),
                  *most = sw_units_format (high,
                                           self->key->quantity,
                                           design->units,
                                           sw_language_of_process ()),
                  *text = NULL;
  /* Translators: the lowest and the highest value of a setting, with their units. */
  text = g_strdup_printf (_ ("Can be from %s to %s"), least, most);
  show_problem (self, text);
  return FALSE;
}

/* What was typed counts when it was changed; an entry only walked through rounds nothing. */
static void
commit (SwNumberRow *self)
{
  g_autoptr (GError) error = NULL;
  double value;

  if (!is_pending (self)) {
    show_problem (self, NULL);
    return;
  }
  if (!sw_units_parse (gtk_editable_get_text (GTK_EDITABLE (self->entry)),
                       self->key->quantity,
                       design_of (self)->units,
                       sw_language_of_process (),
                       &value,
                       &error)) {
    show_problem (self, error->message);
    return;
  }
  if (!is_allowed (self, value))
    return;
  sw_document_end_edit (self->document);
  if (edit (self, value)) {
    sw_document_end_edit (self->document);
    show_entry (self);
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
add_key_controller (SwNumberRow *self, gpointer widget, GCallback pressed_cb)
{
  GtkEventController *keys = gtk_event_controller_key_new ();

  gtk_event_controller_set_propagation_phase (keys, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (keys, "key-pressed", pressed_cb, self);
  gtk_widget_add_controller (widget, keys);
}

static void
add_controllers (SwNumberRow *self)
{
  GtkEventController *focus = gtk_event_controller_focus_new ();
  GtkEventController *events = gtk_event_controller_legacy_new ();

  g_signal_connect_swapped (focus, "leave", G_CALLBACK (commit), self);
  gtk_widget_add_controller (GTK_WIDGET (self->entry), focus);
  add_key_controller (self, self->entry, G_CALLBACK (key_cb));
  gtk_event_controller_set_propagation_phase (events, GTK_PHASE_CAPTURE);
  g_signal_connect_swapped (events, "event", G_CALLBACK (scale_event_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self->scale), events);
  add_key_controller (self, self->scale, G_CALLBACK (scale_key_cb));
}

static void
sw_number_row_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  sw_flatten_snapshot (GTK_WIDGET_CLASS (sw_number_row_parent_class), widget, snapshot);
}

static void
sw_number_row_dispose (GObject *object)
{
  SwNumberRow *self = SW_NUMBER_ROW (object);

  g_clear_handle_id (&self->quiet, g_source_remove);
  g_clear_pointer (&self->entry_text, g_free);
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
  widget_class->snapshot = sw_number_row_snapshot;
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
  add_controllers (self);
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
  self->stale = TRUE;
  self->shown.units = -1; /* nothing yet */
  gtk_widget_set_name (GTK_WIDGET (self), key->path);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (show), self);
  return GTK_WIDGET (self);
}
