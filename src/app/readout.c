// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/readout.h"

#include "engine/results.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>
#include <math.h>

#define SW_TYPE_READOUT (sw_readout_get_type ())
G_DECLARE_FINAL_TYPE (SwReadout, sw_readout, SW, READOUT, GtkWidget)

typedef struct {
  const char *key; /* result key, or NULL: cost */
  const char *label;
  SwQuantity quantity;
  int width; /* characters kept free, so that nothing jumps about */
} Item;

static const Item items[] = {
  { "geometry.slant_m", N_ ("Strip hook to tie"), SW_QUANTITY_LENGTH, 11 },
  { "geometry.tail_m", N_ ("Gap at tie"), SW_QUANTITY_SHORT_LENGTH, 9 },
  { "geometry.spacing_ring_m", N_ ("Spacing"), SW_QUANTITY_SHORT_LENGTH, 9 },
  { "geometry.pixels_total", N_ ("Pixels"), SW_QUANTITY_COUNT, 6 },
  { "power.tree_current_a", N_ ("Current"), SW_QUANTITY_CURRENT, 7 },
  { "power.tree_w", N_ ("Power"), SW_QUANTITY_POWER, 7 },
  { "support.take_down_gust_mps", N_ ("Take down at"), SW_QUANTITY_SPEED, 8 },
  { NULL, N_ ("To pay"), SW_QUANTITY_PRICE, 9 },
};

struct _SwReadout {
  GtkWidget parent_instance;

  SwDocument *document;                     /* owned */
  GtkWidget *box;                           /* owned as a child */
  GtkLabel *values[G_N_ELEMENTS (items)];   /* borrowed */
  GtkLabel *workings[G_N_ELEMENTS (items)]; /* borrowed */
};

G_DEFINE_FINAL_TYPE (SwReadout, sw_readout, GTK_TYPE_WIDGET)

static double
value_of (const Item *item, const SwSolution *solution)
{
  return item->key == NULL ? solution->cost_to_pay
                           : sw_result_value (sw_result_find (item->key), solution);
}

static char *
value_text (const Item *item, const SwSolution *solution)
{
  double value = value_of (item, solution);

  if (isnan (value))
    return g_strdup ("–");
  g_autofree char *text =
    sw_units_format (value, item->quantity, solution->design->units, sw_language_of_process ());
  return item->key == NULL ? g_strdup_printf ("%s %s", text, solution->design->prices.currency)
                           : g_steal_pointer (&text);
}

/* The gap says by a sign whether the strip fits, not by its colour alone. */
static const char *
gap_sign (const SwSolution *solution)
{
  double spare_m = solution->cone.tail_m - solution->design->strip.tail_min_m;

  if (solution->cone.tail_m < 0)
    return "✕";
  if (spare_m < -1e-9)
    return "▲";
  return spare_m > 0.25 ? "↕" : "✓"; /* far too long is not well either */
}

static void
mark_gap (GtkLabel *label, const SwSolution *solution)
{
  gboolean fits = solution->cone.tail_m >= solution->design->strip.tail_min_m - 1e-9;
  g_autofree char *text =
    g_strdup_printf ("%s %s", gtk_label_get_text (label), gap_sign (solution));

  gtk_label_set_text (label, text);
  gtk_widget_remove_css_class (GTK_WIDGET (label), "error");
  gtk_widget_remove_css_class (GTK_WIDGET (label), "warning");
  if (!fits)
    gtk_widget_add_css_class (GTK_WIDGET (label),
                              solution->cone.tail_m < 0 ? "error" : "warning");
}

static char *
working_text (const Item *item, const SwSolution *solution)
{
  const SwResult *result = item->key == NULL ? NULL : sw_result_find (item->key);
  g_autofree char *value = value_text (item, solution);

  if (result == NULL)
    return g_strdup_printf (
      _ ("%s\nThe sum of what is to buy in the parts list, in whole packs."),
      value);
  /* Translators: value; formula; source. */
  return g_strdup_printf (_ ("%s\n= %s\nSource: %s"), value, result->formula, result->source);
}

static void
show (SwReadout *self)
{
  const SwSolution *solution = sw_document_get_solution (self->document);

  for (guint i = 0; i < G_N_ELEMENTS (items); i++) {
    g_autofree char *text = value_text (&items[i], solution);
    gtk_label_set_text (self->values[i], text);
    if (g_strcmp0 (items[i].key, "geometry.tail_m") == 0)
      mark_gap (self->values[i], solution);
  }
}

/* The working is written when it is opened, not at every move of a drag. */
static void
popover_shown_cb (GtkWidget *popover, gpointer data)
{
  SwReadout *self = data;
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (popover), "item"));
  g_autofree char *text = working_text (&items[i], sw_document_get_solution (self->document));

  gtk_label_set_text (self->workings[i], text);
}

static GtkWidget *
working_popover (SwReadout *self, guint i)
{
  GtkWidget *popover = gtk_popover_new (), *label = gtk_label_new (NULL);

  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 44);
  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_selectable (GTK_LABEL (label), TRUE);
  gtk_popover_set_child (GTK_POPOVER (popover), label);
  self->workings[i] = GTK_LABEL (label);
  g_object_set_data (G_OBJECT (popover), "item", GUINT_TO_POINTER (i));
  g_signal_connect_object (popover, "map", G_CALLBACK (popover_shown_cb), self, 0);
  return popover;
}

static GtkWidget *
item_button (SwReadout *self, guint i)
{
  GtkWidget *button = gtk_menu_button_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);
  GtkWidget *name = gtk_label_new (_ (items[i].label)), *value = gtk_label_new (NULL);

  gtk_widget_add_css_class (name, "caption");
  gtk_widget_add_css_class (name, "dim-label");
  gtk_widget_add_css_class (value, "numeric");
  gtk_label_set_xalign (GTK_LABEL (name), 0);
  gtk_label_set_xalign (GTK_LABEL (value), 0);
  gtk_label_set_width_chars (GTK_LABEL (value), items[i].width);
  gtk_box_append (GTK_BOX (box), name);
  gtk_box_append (GTK_BOX (box), value);
  gtk_menu_button_set_child (GTK_MENU_BUTTON (button), box);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), working_popover (self, i));
  gtk_menu_button_set_direction (GTK_MENU_BUTTON (button), GTK_ARROW_UP);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, _ ("Show the working"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (items[i].label),
                                  -1);
  self->values[i] = GTK_LABEL (value);
  return button;
}

static void
sw_readout_dispose (GObject *object)
{
  SwReadout *self = SW_READOUT (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->box, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_readout_parent_class)->dispose (object);
}

static void
sw_readout_class_init (SwReadoutClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sw_readout_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

/* Wraps to a second line where the window is narrow, rather than cut a number off. */
static void
sw_readout_init (SwReadout *self)
{
  self->box = gtk_flow_box_new ();
  gtk_flow_box_set_selection_mode (GTK_FLOW_BOX (self->box), GTK_SELECTION_NONE);
  gtk_flow_box_set_max_children_per_line (GTK_FLOW_BOX (self->box), G_N_ELEMENTS (items));
  gtk_flow_box_set_min_children_per_line (GTK_FLOW_BOX (self->box), 3);
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (self->box), TRUE);
  for (guint i = 0; i < G_N_ELEMENTS (items); i++) {
    gtk_flow_box_append (GTK_FLOW_BOX (self->box), item_button (self, i));
    GtkFlowBoxChild *child =
      gtk_flow_box_get_child_at_index (GTK_FLOW_BOX (self->box), (int) i);
    gtk_widget_set_focusable (GTK_WIDGET (child), FALSE);
  }
  gtk_widget_set_parent (self->box, GTK_WIDGET (self));
  gtk_widget_add_css_class (GTK_WIDGET (self), "readout");
}

GtkWidget *
sw_readout_new (SwDocument *document)
{
  SwReadout *self = g_object_new (SW_TYPE_READOUT, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (show), self);
  show (self);
  return GTK_WIDGET (self);
}
