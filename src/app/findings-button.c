// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/findings-button.h"

#include "app/level-look.h"
#include "engine/remedy-effect.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>

#define SW_N_LEVELS (SW_LEVEL_TIP + 1)

struct _SwFindingsButton {
  GtkWidget parent_instance;

  SwDocument *document;           /* owned */
  GtkWidget *button;              /* owned as a child */
  GtkWidget *counts[SW_N_LEVELS]; /* borrowed: labels */
  GtkWidget *well, *list;         /* borrowed */
  guint shown[SW_N_LEVELS];
};

G_DEFINE_FINAL_TYPE (SwFindingsButton, sw_findings_button, GTK_TYPE_WIDGET)

enum { KEY_CHOSEN, N_SIGNALS };

static guint signals[N_SIGNALS];

static void
show_count (SwFindingsButton *self, SwLevel level, guint count)
{
  if (self->shown[level] == count)
    return;
  self->shown[level] = count;
  g_autofree char *text = g_strdup_printf ("%u", count);
  gtk_inscription_set_text (GTK_INSCRIPTION (self->counts[level]), text);
  gtk_widget_set_visible (gtk_widget_get_parent (self->counts[level]), count > 0);
}

static void
show (SwFindingsButton *self)
{
  const SwSolution *solution = sw_document_get_solution (self->document);
  const GArray *findings = solution->findings;
  guint counts[SW_N_LEVELS];

  for (guint level = 0; level < SW_N_LEVELS; level++) {
    counts[level] = sw_findings_count (findings, level);
    show_count (self, level, counts[level]);
  }
  gtk_widget_set_visible (self->well, findings->len == 0);
  if (!solution->remedied)
    return; /* a tooltip set anew would come up under the moving pointer */
  g_autofree char *words = g_strdup_printf (_ ("Findings: stops %u, warnings %u, tips %u"),
                                            counts[SW_LEVEL_STOP],
                                            counts[SW_LEVEL_WARN],
                                            counts[SW_LEVEL_TIP]);
  if (g_strcmp0 (words, gtk_widget_get_tooltip_text (self->button)) == 0)
    return;
  gtk_widget_set_tooltip_text (self->button, words);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->button),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  words,
                                  -1);
}

static GtkWidget *
words_new (const char *words, const char *css)
{
  GtkWidget *label = gtk_label_new (words);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_wrap (GTK_LABEL (label), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (label), 46);
  gtk_label_set_max_width_chars (GTK_LABEL (label), 52);
  if (css != NULL)
    gtk_widget_add_css_class (label, css);
  return label;
}

static void fill (SwFindingsButton *self);

static void
remedy_cb (SwFindingsButton *self, GtkButton *button)
{
  g_autoptr (SwDesign) design = sw_design_ref (g_object_get_data (G_OBJECT (button), "design"));

  sw_document_end_edit (self->document);
  sw_document_edit_design (self->document, design, gtk_button_get_label (button));
  sw_document_end_edit (self->document);
  fill (self);
}

/* One press puts it right, as one undo step; what becomes worse stands below. */
static void
add_remedy (SwFindingsButton *self, GtkWidget *words, const SwFinding *finding)
{
  const SwSolution *solution = sw_document_get_solution (self->document);
  const SwLanguage *language = sw_language_of_process ();
  SwRemedyEffect effect;

  if (!sw_remedy_effect_init (&effect, finding, solution))
    return;
  g_autofree char *text = sw_finding_remedy_text (finding, solution->design, language);
  g_autofree char *worse = sw_remedy_effect_text (&effect, language);
  GtkWidget *button = gtk_button_new_with_label (text);
  gtk_widget_set_halign (button, GTK_ALIGN_START);
  gtk_widget_set_margin_top (button, 4);
  g_object_set_data_full (G_OBJECT (button),
                          "design",
                          sw_design_ref (effect.design),
                          (GDestroyNotify) sw_design_unref);
  g_signal_connect_object (button, "clicked", G_CALLBACK (remedy_cb), self, G_CONNECT_SWAPPED);
  gtk_box_append (GTK_BOX (words), button);
  if (worse != NULL)
    gtk_box_append (GTK_BOX (words), words_new (worse, "caption"));
  sw_remedy_effect_clear (&effect);
}

static GtkWidget *
finding_row (SwFindingsButton *self, const SwFinding *finding)
{
  const SwDesign *design = sw_document_get_design (self->document);
  g_autofree char *text = sw_finding_text (finding, design, sw_language_of_process ());
  GtkWidget *row = gtk_list_box_row_new (), *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10);
  GtkWidget *icon = gtk_image_new_from_icon_name (sw_level_icon (finding->level)),
            *words = gtk_box_new (GTK_ORIENTATION_VERTICAL, 2),
            *level = words_new (_ (sw_level_labels[finding->level]), "caption-heading");

  sw_level_colour (icon, finding->level);
  sw_level_colour (level, finding->level);
  gtk_widget_set_valign (icon, GTK_ALIGN_START);
  gtk_widget_set_margin_top (box, 6);
  gtk_widget_set_margin_bottom (box, 6);
  gtk_box_append (GTK_BOX (words), level);
  gtk_box_append (GTK_BOX (words), words_new (text, NULL));
  add_remedy (self, words, finding);
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), words);
  gtk_list_box_row_set_child (GTK_LIST_BOX_ROW (row), box);
  g_object_set_data_full (G_OBJECT (row), "key", g_strdup (finding->key), g_free);
  return row;
}

/* Written when it is opened. */
static void
fill (SwFindingsButton *self)
{
  const GArray *findings = sw_document_get_solution (self->document)->findings;
  GtkWidget *child;

  while ((child = gtk_widget_get_first_child (self->list)) != NULL)
    gtk_list_box_remove (GTK_LIST_BOX (self->list), child);
  for (guint i = 0; i < findings->len; i++)
    gtk_list_box_append (GTK_LIST_BOX (self->list),
                         finding_row (self, &g_array_index (findings, SwFinding, i)));
}

static void
activated_cb (SwFindingsButton *self, GtkListBoxRow *row)
{
  g_autofree char *key = g_strdup (g_object_get_data (G_OBJECT (row), "key"));

  gtk_menu_button_popdown (GTK_MENU_BUTTON (self->button));
  g_signal_emit (self, signals[KEY_CHOSEN], 0, key);
}

static GtkWidget *
popover_new (SwFindingsButton *self)
{
  GtkWidget *popover = gtk_popover_new (), *scroller = gtk_scrolled_window_new ();

  self->list = gtk_list_box_new ();
  gtk_list_box_set_selection_mode (GTK_LIST_BOX (self->list), GTK_SELECTION_NONE);
  gtk_list_box_set_placeholder (GTK_LIST_BOX (self->list),
                                gtk_label_new (_ ("Nothing to mend.")));
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (scroller), self->list);
  gtk_scrolled_window_set_policy (GTK_SCROLLED_WINDOW (scroller),
                                  GTK_POLICY_NEVER,
                                  GTK_POLICY_AUTOMATIC);
  gtk_scrolled_window_set_propagate_natural_height (GTK_SCROLLED_WINDOW (scroller), TRUE);
  gtk_scrolled_window_set_max_content_height (GTK_SCROLLED_WINDOW (scroller), 440);
  gtk_popover_set_child (GTK_POPOVER (popover), scroller);
  g_signal_connect_swapped (self->list, "row-activated", G_CALLBACK (activated_cb), self);
  g_signal_connect_object (popover, "map", G_CALLBACK (fill), self, G_CONNECT_SWAPPED);
  return popover;
}

static void
sw_findings_button_dispose (GObject *object)
{
  SwFindingsButton *self = SW_FINDINGS_BUTTON (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->button, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_findings_button_parent_class)->dispose (object);
}

static void
sw_findings_button_class_init (SwFindingsButtonClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sw_findings_button_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
  signals[KEY_CHOSEN] = g_signal_new ("key-chosen",
                                      G_TYPE_FROM_CLASS (klass),
                                      G_SIGNAL_RUN_LAST,
                                      0,
                                      NULL,
                                      NULL,
                                      NULL,
                                      G_TYPE_NONE,
                                      1,
                                      G_TYPE_STRING);
}

static GtkWidget *
count_box (SwFindingsButton *self, SwLevel level)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 4);
  GtkWidget *icon = gtk_image_new_from_icon_name (sw_level_icon (level));

  /* as wide for every number: another width would move what stands beside it */
  self->counts[level] = gtk_inscription_new ("0");
  gtk_inscription_set_min_chars (GTK_INSCRIPTION (self->counts[level]), 2);
  sw_level_colour (icon, level);
  gtk_widget_add_css_class (self->counts[level], "numeric");
  gtk_widget_set_visible (box, FALSE);
  gtk_box_append (GTK_BOX (box), icon);
  gtk_box_append (GTK_BOX (box), self->counts[level]);
  return box;
}

static void
sw_findings_button_init (SwFindingsButton *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 8);

  for (guint level = 0; level < SW_N_LEVELS; level++)
    gtk_box_append (GTK_BOX (box), count_box (self, level));
  self->well = gtk_image_new_from_icon_name (SW_ICON_WELL);
  gtk_box_append (GTK_BOX (box), self->well);
  self->button = gtk_menu_button_new ();
  gtk_menu_button_set_child (GTK_MENU_BUTTON (self->button), box);
  gtk_menu_button_set_popover (GTK_MENU_BUTTON (self->button), popover_new (self));
  gtk_widget_set_parent (self->button, GTK_WIDGET (self));
}

GtkWidget *
sw_findings_button_new (SwDocument *document)
{
  SwFindingsButton *self = g_object_new (SW_TYPE_FINDINGS_BUTTON, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (show), self);
  show (self);
  return GTK_WIDGET (self);
}
