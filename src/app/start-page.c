// SPDX-License-Identifier: GPL-3.0-or-later
/* start-page.c: what is known of the place, then one of the starts, shown in that space.
 * Nothing has to be answered: "not looked" is an answer that stays a warning.
 */
#include "app/pages.h"
#include "drawing/side-view.h"
#include "engine/design-keys.h"
#include "engine/starts.h"
#include "engine/units.h"
#include "packet/process-catalogue.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>

#define SW_TYPE_START_PAGE (sw_start_page_get_type ())
G_DECLARE_FINAL_TYPE (SwStartPage, sw_start_page, SW, START_PAGE, GtkWidget)

#define REACH_M 3.05  /* what may lie within reach of a falling tree: its height and 10 ft */
#define HIGHEST_M 6.1 /* the tallest start and some air */
#define WIDEST_M 4.6  /* the widest ring and a person beside it */

static const struct {
  const char *path;
  const char *question; /* N_() */
} questions[] = {
  { "site.clear_radius_m", N_ ("Free ground round the post") },
  { "site.view_m", N_ ("People look from") },
  { "site.line_distance_m", N_ ("Nearest overhead line") },
  { "site.slope_deg", N_ ("Slope of the ground") },
};

struct _SwStartPage {
  GtkWidget parent_instance;

  SwStartChosen chosen;
  gpointer user_data;
  GtkWidget *content;                          /* owned as a child */
  GtkEntry *entries[G_N_ELEMENTS (questions)]; /* borrowed */
  GtkLabel *units[G_N_ELEMENTS (questions)];   /* borrowed: what a bare number is in */
  GtkSwitch *dig, *metric;                     /* borrowed */
  GtkLabel *problem;                           /* borrowed */
  GtkWidget *pictures[3], *fits[3];            /* borrowed: a drawing and a line a start */
  SwSolution *starts[3];                       /* owned */
};

G_DEFINE_FINAL_TYPE (SwStartPage, sw_start_page, GTK_TYPE_WIDGET)

static SwUnits
units_of (SwStartPage *self)
{
  return gtk_switch_get_active (self->metric) ? SW_UNITS_METRIC : SW_UNITS_US;
}

/* An empty entry is "not looked": 0. Returns: FALSE when it is not understood. */
static gboolean
read_answer (SwStartPage *self, guint i, double *value, GError **error)
{
  const SwKey *key = sw_key_find (questions[i].path);
  g_autofree char *text =
    g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (self->entries[i]))));

  *value = g_str_equal (questions[i].path, "site.view_m") ? key->start : 0;
  if (*text == '\0')
    return TRUE;
  return sw_units_parse (text,
                         key->quantity,
                         units_of (self),
                         sw_language_of_process (),
                         value,
                         error) &&
         sw_key_check_number (key, *value, error);
}

/* Says beside which question it stands. */
static void
show_problem (SwStartPage *self, guint i, const GError *error)
{
  g_autofree char *text = g_strdup_printf ("%s: %s", _ (questions[i].question), error->message);

  gtk_label_set_text (self->problem, text);
  gtk_widget_add_css_class (GTK_WIDGET (self->entries[i]), "error");
  gtk_widget_grab_focus (GTK_WIDGET (self->entries[i]));
}

static gboolean
apply_answers (SwStartPage *self, SwDesign *design)
{
  double value;

  for (guint i = 0; i < G_N_ELEMENTS (questions); i++) {
    g_autoptr (GError) error = NULL;
    if (!read_answer (self, i, &value, &error) ||
        !sw_key_set_number (sw_key_find (questions[i].path), design, value, &error)) {
      show_problem (self, i, error);
      return FALSE;
    }
  }
  design->site.dig_marked = gtk_switch_get_active (self->dig);
  design->units = units_of (self);
  return TRUE;
}

static void
choose_cb (GtkButton *button, gpointer data)
{
  SwStartPage *self = data;
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (button), "start"));
  g_autoptr (SwDesign) design = sw_design_copy (self->starts[i]->design);

  if (apply_answers (self, design))
    self->chosen (g_steal_pointer (&design), self->user_data);
}

/* Whether the start can fall without hitting something, in words. */
static void
show_fit (SwStartPage *self, guint i)
{
  double clear_m = 0, line_m = 0, high_m = self->starts[i]->cone.overall_height_m;
  gboolean known =
    read_answer (self, 0, &clear_m, NULL) && read_answer (self, 2, &line_m, NULL);
  g_autofree char *high =
    sw_units_format (high_m, SW_QUANTITY_LENGTH, units_of (self), sw_language_of_process ());
  g_autofree char *reach = sw_units_format (high_m + REACH_M,
                                            SW_QUANTITY_LENGTH,
                                            units_of (self),
                                            sw_language_of_process ());
  g_autofree char *text = NULL;

  if (known && line_m > 0 && line_m < high_m + REACH_M)
    text = g_strdup_printf (_ ("▲ %s high. Too near the overhead line: keep %s."), high, reach);
  else if (known && clear_m > 0 && clear_m < high_m)
    text = g_strdup_printf (_ ("▲ %s high. It could fall beyond the free ground."), high);
  else if (known && clear_m > 0)
    text = g_strdup_printf (_ ("✓ %s high. Falls inside the free ground."), high);
  else
    text = g_strdup_printf (_ ("%s high. Keep %s clear of lines."), high, reach);
  gtk_label_set_text (GTK_LABEL (self->fits[i]), text);
}

static void
answers_changed_cb (SwStartPage *self)
{
  gtk_label_set_text (self->problem, "");
  for (guint i = 0; i < G_N_ELEMENTS (questions); i++) {
    const SwKey *key = sw_key_find (questions[i].path);
    gtk_widget_remove_css_class (GTK_WIDGET (self->entries[i]), "error");
    gtk_label_set_text (self->units[i], sw_units_name (key->quantity, units_of (self)));
  }
  for (guint i = 0; i < sw_n_starts && i < 3; i++) {
    show_fit (self, i);
    gtk_widget_queue_draw (self->pictures[i]);
  }
}

/* All three to one scale, the tallest filling the picture; guys run out of it. The free ground
 * is a bar under the tree. */
static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  SwStartPage *self = data;
  guint i = GPOINTER_TO_UINT (g_object_get_data (G_OBJECT (area), "start"));
  AdwStyleManager *manager = adw_style_manager_get_default ();
  const SwStyle *style =
    adw_style_manager_get_dark (manager) ? &sw_style_dark : &sw_style_light;
  double scale = MIN ((height - 40) / HIGHEST_M, width / WIDEST_M);
  SwView view = { width, height, width * 0.6, height - 22, scale };
  SwPicture picture = { &view,
                        style,
                        sw_language_of_process (),
                        NULL,
                        SW_DRAW_BACKDROP | SW_DRAW_TREE };
  double clear_m = 0, line_m = 0, high_m = self->starts[i]->cone.overall_height_m;

  sw_side_view_draw (cr, &picture, self->starts[i]);
  if (!read_answer (self, 0, &clear_m, NULL) || !(clear_m > 0))
    return;
  gboolean near_line =
    read_answer (self, 2, &line_m, NULL) && line_m > 0 && line_m < high_m + REACH_M;
  gboolean fits = clear_m >= high_m && !near_line;
  sw_style_set_ink (style, cr, fits ? SW_INK_TREE : SW_INK_STOP);
  cairo_set_line_width (cr, 3);
  cairo_move_to (cr, sw_view_x (&view, -clear_m), view.y0 + 12);
  cairo_line_to (cr, sw_view_x (&view, clear_m), view.y0 + 12);
  cairo_stroke (cr);
}

static GtkWidget *
start_card (SwStartPage *self, guint i)
{
  GtkWidget *card = gtk_box_new (GTK_ORIENTATION_VERTICAL, 6),
            *summary = gtk_label_new (_ (sw_starts[i].summary));
  GtkWidget *button = gtk_button_new_with_label (_ (sw_starts[i].label));

  self->pictures[i] = gtk_drawing_area_new ();
  self->fits[i] = gtk_label_new (NULL);
  gtk_drawing_area_set_draw_func (GTK_DRAWING_AREA (self->pictures[i]), draw_cb, self, NULL);
  gtk_widget_set_size_request (self->pictures[i], 150, 230);
  gtk_widget_set_vexpand (self->pictures[i], TRUE);
  g_object_set_data (G_OBJECT (self->pictures[i]), "start", GUINT_TO_POINTER (i));
  g_object_set_data (G_OBJECT (button), "start", GUINT_TO_POINTER (i));
  g_signal_connect (button, "clicked", G_CALLBACK (choose_cb), self);
  gtk_label_set_wrap (GTK_LABEL (summary), TRUE);
  gtk_label_set_width_chars (GTK_LABEL (summary), 17);
  gtk_label_set_max_width_chars (GTK_LABEL (summary), 22);
  gtk_label_set_max_width_chars (GTK_LABEL (self->fits[i]), 22);
  gtk_widget_add_css_class (button, "suggested-action");
  gtk_label_set_wrap (GTK_LABEL (self->fits[i]), TRUE);
  gtk_label_set_xalign (GTK_LABEL (summary), 0);
  gtk_label_set_xalign (GTK_LABEL (self->fits[i]), 0);
  gtk_label_set_lines (GTK_LABEL (self->fits[i]), 2);
  gtk_widget_set_size_request (self->fits[i], -1, 36);
  gtk_widget_add_css_class (self->fits[i], "dim-label");
  gtk_widget_add_css_class (card, "card");
  gtk_widget_add_css_class (card, "start-card");
  gtk_widget_set_hexpand (card, TRUE);
  gtk_box_append (GTK_BOX (card), self->pictures[i]);
  gtk_box_append (GTK_BOX (card), summary);
  gtk_box_append (GTK_BOX (card), self->fits[i]);
  gtk_box_append (GTK_BOX (card), button);
  return card;
}

static GtkWidget *
answer_row (SwStartPage *self, guint i)
{
  GtkWidget *row = adw_action_row_new (), *entry = gtk_entry_new (),
            *unit = gtk_label_new (NULL);

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), _ (questions[i].question));
  gtk_entry_set_placeholder_text (GTK_ENTRY (entry), _ ("not looked"));
  gtk_editable_set_width_chars (GTK_EDITABLE (entry), 10);
  gtk_widget_set_valign (entry, GTK_ALIGN_CENTER);
  gtk_accessible_update_property (GTK_ACCESSIBLE (entry),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (questions[i].question),
                                  -1);
  gtk_widget_set_tooltip_text (row, _ (sw_key_find (questions[i].path)->help));
  g_signal_connect_swapped (entry, "changed", G_CALLBACK (answers_changed_cb), self);
  gtk_widget_set_focusable (row, FALSE); /* its entry is */
  gtk_label_set_width_chars (GTK_LABEL (unit), 3);
  gtk_label_set_xalign (GTK_LABEL (unit), 0);
  gtk_widget_add_css_class (unit, "dim-label");
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), entry);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), unit);
  self->entries[i] = GTK_ENTRY (entry);
  self->units[i] = GTK_LABEL (unit);
  return row;
}

static GtkWidget *
switch_row (const char *title, const char *tooltip, GtkSwitch **place)
{
  GtkWidget *row = adw_action_row_new (), *control = gtk_switch_new ();

  adw_preferences_row_set_title (ADW_PREFERENCES_ROW (row), title);
  gtk_widget_set_tooltip_text (row, tooltip);
  gtk_widget_set_valign (control, GTK_ALIGN_CENTER);
  adw_action_row_add_suffix (ADW_ACTION_ROW (row), control);
  adw_action_row_set_activatable_widget (ADW_ACTION_ROW (row), control);
  gtk_widget_set_focusable (row, FALSE); /* its switch is */
  *place = GTK_SWITCH (control);
  return row;
}

static GtkWidget *
site_group (SwStartPage *self)
{
  GtkWidget *group = adw_preferences_group_new ();

  adw_preferences_group_set_title (ADW_PREFERENCES_GROUP (group),
                                   _ ("What is known of the place?"));
  adw_preferences_group_set_description (
    ADW_PREFERENCES_GROUP (group),
    _ ("Leave open what you have not looked at. It stays a warning until you do."));
  adw_preferences_group_add (
    ADW_PREFERENCES_GROUP (group),
    switch_row (_ ("Metres"), _ ("Off: feet and inches"), &self->metric));
  for (guint i = 0; i < G_N_ELEMENTS (questions); i++)
    adw_preferences_group_add (ADW_PREFERENCES_GROUP (group), answer_row (self, i));
  adw_preferences_group_add (
    ADW_PREFERENCES_GROUP (group),
    switch_row (_ ("Buried services are marked"),
                _ ("Cables and pipes in the ground, marked by the utilities' service."),
                &self->dig));
  gtk_widget_set_size_request (group, 340, -1);
  return group;
}

static void
sw_start_page_dispose (GObject *object)
{
  SwStartPage *self = SW_START_PAGE (object);

  g_clear_pointer (&self->content, gtk_widget_unparent);
  for (guint i = 0; i < G_N_ELEMENTS (self->starts); i++)
    g_clear_pointer (&self->starts[i], sw_solution_unref);
  G_OBJECT_CLASS (sw_start_page_parent_class)->dispose (object);
}

static void
sw_start_page_class_init (SwStartPageClass *klass)
{
  G_OBJECT_CLASS (klass)->dispose = sw_start_page_dispose;
  gtk_widget_class_set_layout_manager_type (GTK_WIDGET_CLASS (klass), GTK_TYPE_BIN_LAYOUT);
}

static void
solve_starts (SwStartPage *self)
{
  g_autoptr (GError) error = NULL;
  const SwCatalogue *catalogue = sw_catalogue_of_process (&error);

  for (guint i = 0; i < sw_n_starts && i < G_N_ELEMENTS (self->starts); i++) {
    g_autoptr (SwDesign) design = sw_start_new (sw_starts[i].name, &error);
    self->starts[i] = design == NULL ? NULL : sw_solution_new (design, catalogue, &error);
    if (self->starts[i] == NULL)
      g_error ("the start %s can't be solved: %s", sw_starts[i].name, error->message);
  }
}

static void
sw_start_page_init (SwStartPage *self)
{
  GtkWidget *box = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 18),
            *left = gtk_box_new (GTK_ORIENTATION_VERTICAL, 12);
  GtkWidget *cards = gtk_box_new (GTK_ORIENTATION_HORIZONTAL, 10),
            *problem = gtk_label_new (NULL);

  solve_starts (self);
  self->content = gtk_scrolled_window_new ();
  gtk_widget_add_css_class (problem, "error");
  gtk_label_set_wrap (GTK_LABEL (problem), TRUE);
  gtk_label_set_xalign (GTK_LABEL (problem), 0);
  self->problem = GTK_LABEL (problem);
  gtk_box_append (GTK_BOX (left), site_group (self));
  gtk_box_append (GTK_BOX (left), problem);
  for (guint i = 0; i < sw_n_starts && i < 3; i++)
    gtk_box_append (GTK_BOX (cards), start_card (self, i));
  gtk_box_set_homogeneous (GTK_BOX (cards), TRUE);
  gtk_widget_set_hexpand (cards, TRUE);
  gtk_box_append (GTK_BOX (box), left);
  gtk_box_append (GTK_BOX (box), cards);
  gtk_widget_set_margin_start (box, 16);
  gtk_widget_set_margin_end (box, 16);
  gtk_widget_set_margin_top (box, 12);
  gtk_widget_set_margin_bottom (box, 16);
  gtk_scrolled_window_set_child (GTK_SCROLLED_WINDOW (self->content), box);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_parent (self->content, GTK_WIDGET (self));
  g_signal_connect_swapped (self->metric,
                            "notify::active",
                            G_CALLBACK (answers_changed_cb),
                            self);
  answers_changed_cb (self);
}

GtkWidget *
sw_start_page_new (SwStartChosen chosen, gpointer user_data)
{
  SwStartPage *self = g_object_new (SW_TYPE_START_PAGE, NULL);

  self->chosen = chosen;
  self->user_data = user_data;
  return GTK_WIDGET (self);
}
