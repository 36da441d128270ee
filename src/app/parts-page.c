// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages.h"
#include "app/part-item.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>

#define SW_TYPE_PARTS_PAGE (sw_parts_page_get_type ())
G_DECLARE_FINAL_TYPE (SwPartsPage, sw_parts_page, SW, PARTS_PAGE, GtkWidget)

struct _SwPartsPage {
  GtkWidget parent_instance;

  SwDocument *document; /* owned */
  gboolean stale;       /* the list is older than the document */

  /* template */
  GtkWidget *content;
  GtkColumnView *view;
  GtkLabel *total;
};

G_DEFINE_FINAL_TYPE (SwPartsPage, sw_parts_page, GTK_TYPE_WIDGET)

typedef char *(*CellText) (const SwPart *part, const SwDesign *design);

static char *
group_text (const SwPart *part, const SwDesign *design)
{
  return g_strdup (_ (part->group));
}

static char *
name_text (const SwPart *part, const SwDesign *design)
{
  return g_strdup (_ (part->name));
}

static char *
amount (double value)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (digits, sizeof digits, "%.1f", value);
  if (g_str_has_suffix (digits, ".0"))
    digits[strlen (digits) - 2] = '\0';
  return g_strdup (digits);
}

static char *
quantity_text (const SwPart *part, const SwDesign *design)
{
  g_autofree char *number = amount (part->quantity);
  return g_strdup_printf ("%s %s", number, _ (part->unit));
}

static char *
have_text (const SwPart *part, const SwDesign *design)
{
  return part->have > 0 ? amount (part->have) : g_strdup ("–");
}

static char *
to_buy_text (const SwPart *part, const SwDesign *design)
{
  return amount (part->to_buy);
}

static char *
money (double value)
{
  return sw_units_format (value, SW_QUANTITY_PRICE, SW_UNITS_METRIC, sw_language_of_process ());
}

static char *
unit_price_text (const SwPart *part, const SwDesign *design)
{
  return money (part->unit_price);
}

static char *
to_pay_text (const SwPart *part, const SwDesign *design)
{
  return money (part->to_pay);
}

static double
by_quantity (const SwPart *part)
{
  return part->quantity;
}

static double
by_unit_price (const SwPart *part)
{
  return part->unit_price;
}

static double
by_have (const SwPart *part)
{
  return part->have;
}

static double
by_to_buy (const SwPart *part)
{
  return part->to_buy;
}

static double
by_to_pay (const SwPart *part)
{
  return part->to_pay;
}

typedef struct {
  const char *title; /* N_() */
  CellText text;
  double (*number) (const SwPart *part); /* NULL: sorted by its text */
  gboolean expand;
} Column;

static const Column columns[] = {
  { N_ ("Group"), group_text, NULL, FALSE },
  { N_ ("Part"), name_text, NULL, TRUE },
  { N_ ("Needed"), quantity_text, by_quantity, FALSE },
  { N_ ("Price"), unit_price_text, by_unit_price, FALSE },
  { N_ ("Have"), have_text, by_have, FALSE },
  { N_ ("To buy"), to_buy_text, by_to_buy, FALSE },
  { N_ ("To pay"), to_pay_text, by_to_pay, FALSE },
};

static int
compare_cb (gconstpointer a, gconstpointer b, gpointer data)
{
  const Column *column = data;
  const SwPart *first = sw_part_item_get ((gpointer) (guintptr) a);
  const SwPart *second = sw_part_item_get ((gpointer) (guintptr) b);

  if (column->number != NULL) {
    double difference = column->number (first) - column->number (second);
    return (difference > 0) - (difference < 0);
  }
  g_autofree char *one = column->text (first, NULL);
  g_autofree char *other = column->text (second, NULL);
  return g_utf8_collate (one, other);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const Column *column = data;
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), column->number == NULL ? 0 : 1);
  gtk_label_set_ellipsize (GTK_LABEL (label),
                           column->expand ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
  if (column->number != NULL)
    gtk_widget_add_css_class (label, "numeric");
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const Column *column = data;
  SwPartItem *part = gtk_list_item_get_item (item);
  GtkLabel *label = GTK_LABEL (gtk_list_item_get_child (item));
  g_autofree char *text = column->text (sw_part_item_get (part), NULL);

  gtk_label_set_text (label, text);
  if (column->expand)
    gtk_widget_set_tooltip_text (GTK_WIDGET (label), text);
}

static void
append_column (SwPartsPage *self, const Column *column)
{
  gpointer row =
    (gpointer) (guintptr) column; /* the tables are const, GTK's user data is not */
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) view_column = NULL;
  g_autoptr (GtkSorter) sorter = GTK_SORTER (gtk_custom_sorter_new (compare_cb, row, NULL));

  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), row);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), row);
  view_column = gtk_column_view_column_new (_ (column->title), factory);
  gtk_column_view_column_set_sorter (view_column, sorter);
  gtk_column_view_column_set_expand (view_column, column->expand);
  gtk_column_view_append_column (self->view, view_column);
}

static void
show_total (SwPartsPage *self)
{
  const SwSolution *solution = sw_document_get_solution (self->document);
  g_autofree char *cost = money (solution->cost_to_pay);
  /* Translators: the sum of the parts list: amount and currency. */
  g_autofree char *text =
    g_strdup_printf (_ ("To pay %s %s"), cost, solution->design->prices.currency);

  gtk_label_set_text (self->total, text);
}

static void
refresh (SwPartsPage *self)
{
  GListStore *parts = sw_part_items_new (sw_document_get_solution (self->document));
  GtkSorter *sorter = g_object_ref (gtk_column_view_get_sorter (self->view));
  GtkSortListModel *sorted = gtk_sort_list_model_new (G_LIST_MODEL (parts), sorter);
  g_autoptr (GtkNoSelection) model = gtk_no_selection_new (G_LIST_MODEL (sorted));

  gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (model));
  show_total (self);
  self->stale = FALSE;
}

static void
changed_cb (SwPartsPage *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh (self);
}

static void
sw_parts_page_map (GtkWidget *widget)
{
  SwPartsPage *self = SW_PARTS_PAGE (widget);

  if (self->stale)
    refresh (self);
  GTK_WIDGET_CLASS (sw_parts_page_parent_class)->map (widget);
}

static void
sw_parts_page_dispose (GObject *object)
{
  SwPartsPage *self = SW_PARTS_PAGE (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->content, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_parts_page_parent_class)->dispose (object);
}

static void
sw_parts_page_class_init (SwPartsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_parts_page_dispose;
  widget_class->map = sw_parts_page_map;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/spirewright/Spirewright/parts-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwPartsPage, content);
  gtk_widget_class_bind_template_child (widget_class, SwPartsPage, view);
  gtk_widget_class_bind_template_child (widget_class, SwPartsPage, total);
}

static void
sw_parts_page_init (SwPartsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    append_column (self, &columns[i]);
}

GtkWidget *
sw_parts_page_new (SwDocument *document)
{
  SwPartsPage *self = g_object_new (SW_TYPE_PARTS_PAGE, NULL);

  self->document = g_object_ref (document);
  self->stale = TRUE;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  return GTK_WIDGET (self);
}
