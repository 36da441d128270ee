// SPDX-License-Identifier: GPL-3.0-or-later
#include "harness.h"

#include <X11/keysym.h>
#include <string.h>

static gboolean
is_cell (GtkWidget *widget, gconstpointer text)
{
  return GTK_IS_ENTRY (widget) && gtk_widget_get_mapped (widget) &&
         g_strcmp0 (gtk_editable_get_text (GTK_EDITABLE (widget)), text) == 0;
}

static gboolean
is_hint (GtkWidget *widget, gconstpointer unused)
{
  return GTK_IS_LABEL (widget) && gtk_widget_get_mapped (widget) &&
         strstr (gtk_label_get_text (GTK_LABEL (widget)), "is no amount") != NULL;
}

static const SwPart *
part (Desk *desk, const char *id)
{
  const GArray *bom = sw_document_get_solution (desk->document)->bom;

  for (guint i = 0; i < bom->len; i++) {
    if (strcmp (g_array_index (bom, SwPart, i).id, id) == 0)
      return &g_array_index (bom, SwPart, i);
  }
  g_error ("no part %s", id);
}

/* Over the whole of what stands there. */
static void
type_over (Desk *desk, GtkWidget *cell, const char *text)
{
  pointer_click (desk, cell);
  press_with (desk, XK_Control_L, XK_a);
  if (*text == '\0')
    press_key (desk, XK_BackSpace);
  else
    type_text (desk, text);
  press_key (desk, XK_Return);
  spin (200);
}

static void
test_a_price_is_typed (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  press_with (&desk, XK_Alt_L, XK_3);
  spin (400);
  double before = part (&desk, "star-frame")->unit_price,
         cost = sw_document_get_solution (desk.document)->cost_to_pay;
  g_assert_cmpfloat_with_epsilon (before, 35, 1e-9);
  type_over (&desk, find_widget (GTK_WIDGET (desk.window), is_cell, "35.00"), "20.5");
  g_assert_cmpfloat_with_epsilon (part (&desk, "star-frame")->unit_price, 20.5, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_document_get_solution (desk.document)->cost_to_pay,
                                  cost - 14.5,
                                  1e-6);
  g_assert_nonnull (find_widget (GTK_WIDGET (desk.window), is_cell, "20.50"));

  type_over (&desk, find_widget (GTK_WIDGET (desk.window), is_cell, "20.50"), "-3");
  g_assert_nonnull (find_widget (GTK_WIDGET (desk.window), is_hint, NULL));
  g_assert_cmpfloat_with_epsilon (part (&desk, "star-frame")->unit_price, 20.5, 1e-9);

  type_over (&desk, find_widget (GTK_WIDGET (desk.window), is_cell, "20.50"), "");
  g_assert_cmpfloat_with_epsilon (part (&desk, "star-frame")->unit_price, 35, 1e-9);
  sw_document_undo (desk.document);
  g_assert_cmpfloat_with_epsilon (part (&desk, "star-frame")->unit_price, 20.5, 1e-9);
  sw_document_undo (desk.document);
  g_assert_cmpfloat_with_epsilon (part (&desk, "star-frame")->unit_price, before, 1e-9);
  desk_close (&desk);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/app/parts-page/a price is typed", test_a_price_is_typed);
  return g_test_run ();
}
