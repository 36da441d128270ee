// SPDX-License-Identifier: GPL-3.0-or-later
#include "harness.h"

#include <string.h>

static gboolean
is_label_with (GtkWidget *widget, gconstpointer text)
{
  return GTK_IS_LABEL (widget) &&
         g_str_has_prefix (gtk_label_get_text (GTK_LABEL (widget)), text);
}

static gboolean
is_button_named (GtkWidget *widget, gconstpointer name)
{
  return GTK_IS_MENU_BUTTON (widget) && find_widget (widget, is_label_with, name) != NULL;
}

static gboolean
is_scroller (GtkWidget *widget, gconstpointer unused)
{
  return GTK_IS_SCROLLED_WINDOW (widget);
}

static gboolean
is_label (GtkWidget *widget, gconstpointer unused)
{
  return GTK_IS_LABEL (widget);
}

static const struct {
  const char *name;
  SwUnits units;
  const char *wanted[6];
} cases[] = {
  /* Worked by hand: 2.86 m = 112.598 in = 9 ft 4 10/16 in; 20 m/s = 44.7 mph. */
  { "Strip, hook to tie",
    SW_UNITS_US,
    { "= √((crown_height_m − ring_height_m)^2",
      "crown_height_m = 9′ 4 5/8″ (2.86 m), Crown height",
      "Source: plane geometry" } },
  { "Strip, hook to tie", SW_UNITS_METRIC, { "crown_height_m = 2.86 m, Crown height" } },
  { "Power",
    SW_UNITS_METRIC,
    { "supply_v = 12 V",
      "Taken for granted: all strips are alike, and fed alike",
      "Source: Kirchhoff" } },
  { "Take down before",
    SW_UNITS_US,
    { "step_mps = ", "Taken for granted: gusts are stronger in places" } },
};

/* The first label in the button's popover that scrolls is the working. */
static GtkLabel *
open_working (Desk *desk, const char *name)
{
  GtkWidget *button = find_widget (GTK_WIDGET (desk->window), is_button_named, name);

  g_assert_nonnull (button);
  gtk_menu_button_popup (GTK_MENU_BUTTON (button));
  spin (150);
  GtkWidget *popover = GTK_WIDGET (gtk_menu_button_get_popover (GTK_MENU_BUTTON (button)));
  GtkWidget *scroller = find_widget (popover, is_scroller, NULL);
  GtkWidget *label = find_widget (scroller, is_label, NULL);
  g_assert_cmpint (gtk_widget_get_width (label), <=, gtk_widget_get_width (scroller));
  g_assert_cmpint (gtk_widget_get_height (popover),
                   <=,
                   gtk_widget_get_height (GTK_WIDGET (desk->window)));
  return GTK_LABEL (label);
}

static void
close_working (Desk *desk, const char *name)
{
  GtkWidget *button = find_widget (GTK_WIDGET (desk->window), is_button_named, name);

  gtk_menu_button_popdown (GTK_MENU_BUTTON (button));
  spin (60);
}

static void
set_units (Desk *desk, SwUnits units)
{
  SwDesign *design = sw_design_copy (sw_document_get_design (desk->document));

  design->units = units;
  sw_document_reset (desk->document, design);
  spin (60);
}

static void
test_the_working_shows_what_goes_in (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  Desk desk;

  desk_open (&desk, "lawn");
  set_units (&desk, cases[i].units);
  GtkLabel *label = open_working (&desk, cases[i].name);
  g_autoptr (GString) plain = g_string_new (gtk_label_get_text (label));
  g_string_replace (plain, "\u00a0", " ", 0);
  for (guint j = 0; j < G_N_ELEMENTS (cases[i].wanted) && cases[i].wanted[j] != NULL; j++) {
    if (strstr (plain->str, cases[i].wanted[j]) == NULL)
      g_error ("the working does not say %s: %s", cases[i].wanted[j], plain->str);
  }
  g_assert_false (
    gtk_label_get_selection_bounds (label, NULL, NULL)); /* nothing to see but words */
  close_working (&desk, cases[i].name);
  desk_close (&desk);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *path = g_strdup_printf ("/app/readout/working %u, %s", i, cases[i].name);
    g_test_add_data_func (path, GUINT_TO_POINTER (i), test_the_working_shows_what_goes_in);
  }
  return g_test_run ();
}
