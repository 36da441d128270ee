// SPDX-License-Identifier: GPL-3.0-or-later
/* Values stand in inscriptions, whose size does not follow their text: a drag changes every
 * number at every frame and must not lay the window out anew.
 */
#include "app/readout.h"

#include "app/flatten.h"
#include "app/level-look.h"
#include "app/working-words.h"
#include "engine/results.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#define SW_TYPE_READOUT (sw_readout_get_type ())
G_DECLARE_FINAL_TYPE (SwReadout, sw_readout, SW, READOUT, GtkWidget)

typedef struct {
  const char *keys[2]; /* result keys; none: cost */
  const char *label;   /* N_() */
  SwQuantity quantities[2];
  guint width;          /* characters kept free, so that nothing jumps about */
  const char *codes[5]; /* the findings that this number is about */
} Item;

static const Item items[] = {
  { { "geometry.slant_m" },
    N_ ("Strip, hook to tie"),
    { SW_QUANTITY_LENGTH },
    12,
    { "flat-cone", "as-built-strip-too-long" } },
  { { "geometry.tail_m" },
    N_ ("Gap at tie"),
    { SW_QUANTITY_SHORT_LENGTH },
    10,
    { "strip-too-long", "gap-short", "tie-too-long", "tie-bottomed", "gap-long" } },
  { { "geometry.spacing_ring_m" },
    N_ ("Spacing at ring"),
    { SW_QUANTITY_SHORT_LENGTH },
    10,
    { "crown-crowded" } },
  { { "geometry.pixels_total" },
    N_ ("Pixels"),
    { SW_QUANTITY_COUNT },
    7,
    { "port-too-short", "star-port-too-short" } },
  { { "power.tree_current_a", "power.tree_w" },
    N_ ("Power"),
    { SW_QUANTITY_CURRENT, SW_QUANTITY_POWER },
    15,
    { "power-collapse", "pixel-voltage-low", "strip-wire-overloaded", "white-frame" } },
  { { "support.take_down_gust_mps" },
    N_ ("Take down before"),
    { SW_QUANTITY_SPEED },
    8,
    { "gust-too-high", "stakes-untested", "tall-tree", "soil-unknown", "ice-not-counted" } },
  { { NULL }, N_ ("To pay"), { SW_QUANTITY_PRICE }, 12, { NULL } },
};

typedef struct {
  GtkInscription *value; /* borrowed */
  GtkImage *mark;        /* borrowed */
  GtkLabel *working;     /* borrowed */
} Cell;

struct _SwReadout {
  GtkWidget parent_instance;

  SwDocument *document; /* owned */
  GtkWidget *box;       /* owned as a child */
  Cell cells[G_N_ELEMENTS (items)];
};

G_DEFINE_FINAL_TYPE (SwReadout, sw_readout, GTK_TYPE_WIDGET)

static char *
one_value (const Item *item, guint i, const SwSolution *solution)
{
  const SwDesign *design = solution->design;
  const SwLanguage *language = sw_language_of_process ();

  if (item->keys[0] == NULL) {
    g_autofree char *cost =
      sw_units_format (solution->cost_to_pay, SW_QUANTITY_PRICE, design->units, language);
    return g_strdup_printf ("%s %s", cost, design->prices.currency);
  }
  double value = sw_result_value (sw_result_find (item->keys[i]), solution);
  return isnan (value) ? g_strdup ("–")
                       : sw_units_format (value, item->quantities[i], design->units, language);
}

static char *
value_text (const Item *item, const SwSolution *solution)
{
  g_autofree char *first = one_value (item, 0, solution);

  if (item->keys[1] == NULL)
    return g_steal_pointer (&first);
  g_autofree char *second = one_value (item, 1, solution);
  return g_strdup_printf ("%s · %s", first, second);
}

static gboolean
is_about (const Item *item, const SwFinding *finding)
{
  for (guint i = 0; i < G_N_ELEMENTS (item->codes) && item->codes[i] != NULL; i++) {
    if (strcmp (item->codes[i], finding->code) == 0)
      return TRUE;
  }
  return FALSE;
}

/* Findings stand worst first. Returns: (nullable): the worst about this number. */
static const SwFinding *
worst (const Item *item, const SwSolution *solution)
{
  for (guint i = 0; i < solution->findings->len; i++) {
    const SwFinding *finding = &g_array_index (solution->findings, SwFinding, i);
    if (is_about (item, finding))
      return finding;
  }
  return NULL;
}

/* By a sign, not by colour alone; only the gap says as well that it is right. */
static void
show_mark (const Item *item, Cell *cell, const SwSolution *solution)
{
  const SwFinding *finding = worst (item, solution);
  gboolean broken = finding != NULL && finding->level != SW_LEVEL_TIP;
  gboolean gap = g_strcmp0 (item->keys[0], "geometry.tail_m") == 0;
  const char *icon = broken ? sw_level_icon (finding->level) : SW_ICON_WELL;

  gtk_widget_set_opacity (GTK_WIDGET (cell->mark), broken || gap ? 1 : 0);
  if (g_strcmp0 (gtk_image_get_icon_name (cell->mark), icon) != 0)
    gtk_image_set_from_icon_name (cell->mark, icon);
  if (broken) {
    sw_level_colour (GTK_WIDGET (cell->mark), finding->level);
    sw_level_colour (GTK_WIDGET (cell->value), finding->level);
  } else {
    sw_level_uncolour (GTK_WIDGET (cell->mark));
    sw_level_uncolour (GTK_WIDGET (cell->value));
  }
}

static void
show (SwReadout *self)
{
  const SwSolution *solution = sw_document_get_solution (self->document);

  for (guint i = 0; i < G_N_ELEMENTS (items); i++) {
    g_autofree char *text = value_text (&items[i], solution);
    gtk_inscription_set_text (self->cells[i].value, text);
    show_mark (&items[i], &self->cells[i], solution);
  }
}

static void
add_working (GString *text, const Item *item, guint i, const SwSolution *solution)
{
  g_autoptr (SwWorking) working = sw_working_new (solution, item->keys[i]);
  g_autofree char *value = one_value (item, i, solution);

  g_string_append (text, value);
  if (working != NULL)
    sw_working_words_append (text, working, solution);
}

static char *
working_text (const Item *item, const SwSolution *solution)
{
  g_autoptr (GString) text = g_string_new (NULL);

  if (item->keys[0] == NULL) {
    g_autofree char *value = one_value (item, 0, solution);
    g_string_append_printf (text, "%s\n", value);
    g_string_append (text, _ ("The sum of what is to buy in the parts list, in whole packs."));
  }
  for (guint i = 0; i < G_N_ELEMENTS (item->keys) && item->keys[i] != NULL; i++) {
    if (i > 0)
      g_string_append (text, "\n\n");
    add_working (text, item, i, solution);
  }
  for (guint i = 0; i < solution->findings->len; i++) {
    const SwFinding *finding = &g_array_index (solution->findings, SwFinding, i);
    if (!is_about (item, finding))
      continue;
    g_autofree char *words =
      sw_finding_text (finding, solution->design, sw_language_of_process ());
    g_string_append_printf (text, "\n\n%s: %s", _ (sw_level_labels[finding->level]), words);
  }
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static gboolean
unselect_cb (gpointer label)
{
  gtk_label_select_region (label, 0, 0);
  return G_SOURCE_REMOVE;
}

/* The working is written when it is opened, not at every move of a drag. */
static void
popover_shown_cb (GtkWidget *popover, gpointer data)
{
  SwReadout *self = data;
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (popover), "item"));
  g_autofree char *text = working_text (&items[i], sw_document_get_solution (self->document));

  gtk_label_set_text (self->cells[i].working, text);
  /* it gets the focus next, and with it all of its text selected */
  g_idle_add_full (G_PRIORITY_HIGH,
                   unselect_cb,
                   g_object_ref (self->cells[i].working),
                   g_object_unref);
}

#define WORKING_CHARS 64
#define WORKING_HEIGHT 380 /* px it may take before it scrolls: the least window has 600 */

/* Names as long as "gust_limit_unguyed_mps" and formulas without a space wrap anywhere. */
static GtkWidget *
working_label (SwReadout *self, guint i)
{
  GtkLabel *label = GTK_LABEL (gtk_label_new (NULL));

  gtk_label_set_wrap (label, TRUE);
  gtk_label_set_wrap_mode (label, PANGO_WRAP_WORD_CHAR);
  gtk_label_set_width_chars (label, WORKING_CHARS);
  gtk_label_set_max_width_chars (label, WORKING_CHARS);
  gtk_label_set_xalign (label, 0);
  gtk_label_set_selectable (label, TRUE);
  self->cells[i].working = label;
  return GTK_WIDGET (label);
}

static GtkWidget *
working_scroller (GtkWidget *label)
{
  GtkScrolledWindow *scroller = GTK_SCROLLED_WINDOW (gtk_scrolled_window_new ());

  gtk_scrolled_window_set_policy (scroller, GTK_POLICY_NEVER, GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (scroller, TRUE);
  gtk_scrolled_window_set_max_content_height (scroller, WORKING_HEIGHT);
  gtk_scrolled_window_set_child (scroller, label);
  return GTK_WIDGET (scroller);
}

static GtkWidget *
working_popover (SwReadout *self, guint i)
{
  GtkWidget *popover = gtk_popover_new ();
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6),
            *heading = gtk_label_new (_ (items[i].label));

  gtk_widget_add_css_class (heading, "heading");
  gtk_label_set_xalign (GTK_LABEL (heading), 0);
  gtk_box_append (GTK_BOX (box), heading);
  gtk_box_append (GTK_BOX (box), working_scroller (working_label (self, i)));
  gtk_widget_add_css_class (box, "working");
  gtk_popover_set_child (GTK_POPOVER (popover), box);
  g_object_set_data (G_OBJECT (popover), "item", GUINT_TO_POINTER (i));
  g_signal_connect_object (popover, "map", G_CALLBACK (popover_shown_cb), self, 0);
  return popover;
}

static GtkWidget *
name_line (SwReadout *self, guint i)
{
  GtkWidget *line = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *name = gtk_label_new (_ (items[i].label)), *mark = gtk_image_new ();

  gtk_widget_add_css_class (name, "caption");
  gtk_widget_add_css_class (name, "dim-label");
  gtk_widget_add_css_class (mark, "mark");
  gtk_box_append (GTK_BOX (line), name);
  gtk_box_append (GTK_BOX (line), mark);
  self->cells[i].mark = GTK_IMAGE (mark);
  return line;
}

static GtkWidget *
value_new (SwReadout *self, guint i)
{
  GtkInscription *value = GTK_INSCRIPTION (gtk_inscription_new (NULL));

  gtk_inscription_set_min_chars (value, items[i].width);
  gtk_inscription_set_nat_chars (value, items[i].width);
  gtk_inscription_set_text_overflow (value, GTK_INSCRIPTION_OVERFLOW_ELLIPSIZE_END);
  gtk_widget_add_css_class (GTK_WIDGET (value), "numeric");
  self->cells[i].value = value;
  return GTK_WIDGET (value);
}

static GtkWidget *
item_button (SwReadout *self, guint i)
{
  GtkWidget *button = gtk_menu_button_new (), *box = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0);

  gtk_widget_set_hexpand (box, TRUE); /* or the button centres it */
  gtk_box_append (GTK_BOX (box), name_line (self, i));
  gtk_box_append (GTK_BOX (box), value_new (self, i));
  gtk_menu_button_set_child (GTK_MENU_BUTTON (button), box);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (button), working_popover (self, i));
  gtk_menu_button_set_direction (GTK_MENU_BUTTON (button), GTK_ARROW_UP);
  gtk_widget_add_css_class (button, "flat");
  gtk_widget_set_tooltip_text (button, _ ("Show the working"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (items[i].label),
                                  -1);
  return button;
}

static void
sw_readout_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  sw_flatten_snapshot (GTK_WIDGET_CLASS (sw_readout_parent_class), widget, snapshot);
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
  GTK_WIDGET_CLASS (klass)->snapshot = sw_readout_snapshot;
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
  gtk_flow_box_set_homogeneous (GTK_FLOW_BOX (self->box), FALSE);
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
