// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/settings-panel.h"

#include "app/choice-row.h"
#include "app/number-row.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>
#include <string.h>

/* In this order; a group's rows stand in the order of the key table. */
static const char *const group_names[] = { N_ ("Shape"),   N_ ("Strips"), N_ ("Star"),
                                           N_ ("Stand"),   N_ ("Guys"),   N_ ("Site"),
                                           N_ ("Power"),   N_ ("Data"),   N_ ("Prices"),
                                           N_ ("As built") };

typedef struct {
  const SwKey *key;
  GtkWidget *row; /* borrowed */
  guint group;
} Row;

struct _SwSettingsPanel {
  GtkWidget parent_instance;

  SwDocument *document;                              /* owned */
  GArray *rows;                                      /* owned: Row */
  AdwExpanderRow *folds[G_N_ELEMENTS (group_names)]; /* borrowed */

  /* template */
  GtkWidget *content;
  GtkSearchEntry *search;
  GtkListBox *groups;
  GtkWidget *nothing;
};

G_DEFINE_FINAL_TYPE (SwSettingsPanel, sw_settings_panel, GTK_TYPE_WIDGET)

/* What a group says of itself while it is folded. */
static const struct {
  const char *format; /* N_() */
  const char *first, *second;
} summaries[G_N_ELEMENTS (group_names)] = {
  /* Translators: height of the tree; how many strips. */
  { N_ ("%s high, %s strips"), "shape.crown_height_m", "shape.strip_count" },
  /* Translators: how many pixels a strip has; from one to the next. */
  { N_ ("%s pixels, %s apart"), "strip.pixels", "strip.pitch_m" },
  { "%s", "topper.kind", NULL },
  { "%s", "stand.foot", NULL },
  /* Translators: how many guys; how high they meet the post. */
  { N_ ("%s guys, at %s"), "guys.count", "guys.height_m" },
  /* Translators: a wind speed. */
  { N_ ("Gusts to %s"), "site.gust_mps", NULL },
  /* Translators: a voltage; the highest brightness allowed. */
  { N_ ("%s, at most %s bright"), "power.supply_v", "power.cap" },
  /* Translators: a frame rate. */
  { N_ ("%s frames"), "data.frame_hz", NULL },
  { "%s", "prices.currency", NULL },
  /* Translators: a length. */
  { N_ ("Ring %s round"), "as_built.ring_length_m", NULL },
};

static char *
shown (const SwDesign *design, const char *path)
{
  const SwKey *key = path == NULL ? NULL : sw_key_find (path);

  if (key == NULL)
    return g_strdup ("");
  if (key->type == SW_KEY_CHOICE)
    return g_strdup (_ (key->choice_labels[(int) sw_key_get_number (key, design)]));
  if (key->type == SW_KEY_TEXT)
    return g_strdup (sw_key_get_text (key, design));
  return sw_units_format (sw_key_get_number (key, design),
                          key->quantity,
                          design->units,
                          sw_language_of_process ());
}

static void
show_summary (SwSettingsPanel *self, guint group)
{
  const SwDesign *design = sw_document_get_design (self->document);
  g_autofree char *first = shown (design, summaries[group].first),
                  *second = shown (design, summaries[group].second);
  g_autoptr (GString) text = g_string_new (_ (summaries[group].format));

  if (summaries[group].first != NULL)
    g_string_replace (text, "%s", first, 1);
  g_string_replace (text, "%s", second, 1);
  if (g_strcmp0 (adw_expander_row_get_subtitle (self->folds[group]), text->str) != 0)
    adw_expander_row_set_subtitle (self->folds[group], text->str);
}

/* In a drag the rows of an open group say it already. */
static void
show_summaries (SwSettingsPanel *self)
{
  if (!sw_document_get_solution (self->document)->remedied)
    return; /* the hand moves: a new text would have the whole window measured at every move */
  for (guint i = 0; i < G_N_ELEMENTS (group_names); i++)
    show_summary (self, i);
}

static GtkWidget *
row_new (SwSettingsPanel *self, const SwKey *key)
{
  if (key->type == SW_KEY_NUMBER || key->type == SW_KEY_WHOLE)
    return sw_number_row_new (self->document, key);
  return sw_choice_row_new (self->document, key);
}

static void
add_group (SwSettingsPanel *self, guint group)
{
  GtkWidget *fold = adw_expander_row_new ();

  self->folds[group] = ADW_EXPANDER_ROW (fold);
  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (fold), _ (group_names[group]));
  for (guint i = 0; i < sw_n_keys (); i++) {
    if (g_strcmp0 (sw_key_at (i)->group, group_names[group]) != 0)
      continue;
    Row row = { sw_key_at (i), row_new (self, sw_key_at (i)), group };
    adw_expander_row_add_row (ADW_EXPANDER_ROW (fold), row.row);
    g_array_append_val (self->rows, row);
  }
  gtk_list_box_append (self->groups, fold);
}

static gboolean
contains (const char *text, const char *word)
{
  if (text == NULL)
    return FALSE;
  g_autofree char *folded = g_utf8_casefold (_ (text), -1);
  return strstr (folded, word) != NULL;
}

/* Every word must be found in the label, the help, or what else the trade calls it. */
static gboolean
matches (const SwKey *key, const char *text)
{
  g_autofree char *folded = g_utf8_casefold (text, -1);
  g_auto (GStrv) words = g_strsplit_set (folded, " \t", -1);

  for (guint i = 0; words[i] != NULL; i++) {
    if (*words[i] != '\0' && !contains (key->label, words[i]) &&
        !contains (key->help, words[i]) && !contains (key->words, words[i]))
      return FALSE;
  }
  return TRUE;
}

static void
search_cb (SwSettingsPanel *self)
{
  const char *text = gtk_editable_get_text (GTK_EDITABLE (self->search));
  gboolean searching = *text != '\0';
  guint found[G_N_ELEMENTS (group_names)] = { 0 }, all = 0;

  for (guint i = 0; i < self->rows->len; i++) {
    const Row *row = &g_array_index (self->rows, Row, i);
    gboolean match = matches (row->key, text);
    gtk_widget_set_visible (row->row, match);
    found[row->group] += match;
    all += match;
  }
  for (guint i = 0; i < G_N_ELEMENTS (group_names); i++) {
    gtk_widget_set_visible (GTK_WIDGET (self->folds[i]), found[i] > 0);
    if (searching)
      adw_expander_row_set_expanded (self->folds[i], found[i] > 0);
    else
      adw_expander_row_set_expanded (self->folds[i], i == 0);
  }
  gtk_widget_set_visible (GTK_WIDGET (self->groups), all > 0);
  gtk_widget_set_visible (self->nothing, all == 0);
}

static void
stop_search_cb (SwSettingsPanel *self)
{
  gtk_editable_set_text (GTK_EDITABLE (self->search), "");
}

static void
sw_settings_panel_dispose (GObject *object)
{
  SwSettingsPanel *self = SW_SETTINGS_PANEL (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->rows, g_array_unref);
  g_clear_pointer (&self->content, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_settings_panel_parent_class)->dispose (object);
}

static void
sw_settings_panel_class_init (SwSettingsPanelClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_settings_panel_dispose;
  gtk_widget_class_set_template_from_resource (
    widget_class,
    "/org/spirewright/Spirewright/settings-panel.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPanel, content);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPanel, search);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPanel, groups);
  gtk_widget_class_bind_template_child (widget_class, SwSettingsPanel, nothing);
}

static void
sw_settings_panel_init (SwSettingsPanel *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  g_signal_connect_swapped (self->search, "search-changed", G_CALLBACK (search_cb), self);
  g_signal_connect_swapped (self->search, "stop-search", G_CALLBACK (stop_search_cb), self);
}

GtkWidget *
sw_settings_panel_new (SwDocument *document)
{
  SwSettingsPanel *self = g_object_new (SW_TYPE_SETTINGS_PANEL, NULL);

  self->document = g_object_ref (document);
  for (guint i = 0; i < G_N_ELEMENTS (group_names); i++)
    add_group (self, i);
  adw_expander_row_set_expanded (self->folds[0], TRUE);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (show_summaries), self);
  show_summaries (self);
  return GTK_WIDGET (self);
}

void
sw_settings_panel_show_key (SwSettingsPanel *self, const char *path)
{
  for (guint i = 0; i < self->rows->len; i++) {
    const Row *row = &g_array_index (self->rows, Row, i);
    if (strcmp (row->key->path, path) != 0)
      continue;
    gtk_editable_set_text (GTK_EDITABLE (self->search), "");
    adw_expander_row_set_expanded (self->folds[row->group], TRUE);
    gtk_widget_child_focus (row->row, GTK_DIR_TAB_FORWARD);
    return;
  }
}

void
sw_settings_panel_search (SwSettingsPanel *self)
{
  gtk_widget_grab_focus (GTK_WIDGET (self->search));
}
