// SPDX-License-Identifier: GPL-3.0-or-later
#include "harness.h"

#include <string.h>

static gboolean
is_counts (GtkWidget *widget, gconstpointer data)
{
  const char *tooltip = gtk_widget_get_tooltip_text (widget);

  return GTK_IS_MENU_BUTTON (widget) && tooltip != NULL &&
         g_str_has_prefix (tooltip, "Findings:");
}

static gboolean
is_remedy (GtkWidget *widget, gconstpointer label)
{
  return GTK_IS_BUTTON (widget) && gtk_widget_get_mapped (widget) &&
         g_strcmp0 (gtk_button_get_label (GTK_BUTTON (widget)), label) == 0;
}

static gboolean
has_finding (Desk *desk, const char *code)
{
  const GArray *findings = sw_document_get_solution (desk->document)->findings;

  for (guint i = 0; i < findings->len; i++) {
    if (strcmp (g_array_index (findings, SwFinding, i).code, code) == 0)
      return TRUE;
  }
  return FALSE;
}

/* The remedy is one undo step; what it put right is gone from the list. */
static void
test_a_press_puts_it_right (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  g_assert_true (sw_document_edit_number (desk.document, "strip.pixels", 55, "Pixels"));
  sw_document_end_edit (desk.document);
  g_assert_true (has_finding (&desk, "strip-too-long"));
  pointer_click (&desk, find_widget (GTK_WIDGET (desk.window), is_counts, NULL));
  GtkWidget *remedy =
    find_widget (GTK_WIDGET (desk.window), is_remedy, "Set Pixels a strip to 50");
  g_assert_nonnull (remedy);
  gtk_widget_activate (remedy);
  spin (400);
  g_assert_cmpint (sw_document_get_design (desk.document)->strip.pixels, ==, 50);
  g_assert_false (has_finding (&desk, "strip-too-long"));
  g_assert_null (find_widget (GTK_WIDGET (desk.window), is_remedy, "Set Pixels a strip to 50"));
  g_assert_cmpstr (sw_document_get_undo_label (desk.document), ==, "Set Pixels a strip to 50");
  sw_document_undo (desk.document);
  g_assert_cmpint (sw_document_get_design (desk.document)->strip.pixels, ==, 55);
  desk_close (&desk);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/app/findings-button/a press puts it right", test_a_press_puts_it_right);
  return g_test_run ();
}
