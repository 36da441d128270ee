// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages.h"
#include "app/part-item.h"
#include "engine/design-json.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>

#define SW_TYPE_PARTS_PAGE (sw_parts_page_get_type ())
G_DECLARE_FINAL_TYPE (SwPartsPage, sw_parts_page, SW, PARTS_PAGE, GtkWidget)

struct _SwPartsPage {
  GtkWidget parent_instance;

  SwDocument *document; /* owned */
  GListStore *parts;    /* owned */
  gboolean stale;       /* the list is older than the document */

  /* template */
  GtkWidget *content;
  GtkColumnView *view;
  GtkLabel *hint, *total;
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
  const char *table; /* where what is typed belongs; NULL: nowhere */
} Column;

static const Column columns[] = {
  { N_ ("Group"), group_text, NULL, FALSE, NULL },
  { N_ ("Part"), name_text, NULL, TRUE, NULL },
  { N_ ("Needed"), quantity_text, by_quantity, FALSE, NULL },
  { N_ ("Price"), unit_price_text, by_unit_price, FALSE, "prices.override" },
  { N_ ("Have"), have_text, by_have, FALSE, "prices.have" },
  { N_ ("To buy"), to_buy_text, by_to_buy, FALSE, NULL },
  { N_ ("To pay"), to_pay_text, by_to_pay, FALSE, NULL },
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
show_hint (SwPartsPage *self, const char *problem)
{
  gtk_label_set_text (self->hint,
                      problem != NULL
                        ? problem
                        : _ ("Prices are our own estimates. Type yours, and what you have."));
  if (problem != NULL)
    gtk_widget_add_css_class (GTK_WIDGET (self->hint), "error");
  else
    gtk_widget_remove_css_class (GTK_WIDGET (self->hint), "error");
}

/* Nothing typed takes one's own number away again. */
static gboolean
set_own_number (SwDesign *design, const Column *column, const char *id, const char *text)
{
  g_autofree char *path = g_strdup_printf ("%s.%s", column->table, id);
  double value;

  if (*text == '\0') {
    g_hash_table_remove (g_str_has_suffix (column->table, "have") ? design->prices.have
                                                                  : design->prices.override,
                         id);
    return TRUE;
  }
  return sw_units_parse (text,
                         SW_QUANTITY_PRICE,
                         design->units,
                         sw_language_of_process (),
                         &value,
                         NULL) &&
         sw_design_set_price (design, path, value, NULL);
}

/* What was typed into a cell, until the cell has done with its event. */
typedef struct {
  SwPartsPage *page; /* owned */
  const Column *column;
  SwPartItem *part; /* owned */
  char *text;       /* owned */
} Typed;

static void
typed_free (gpointer data)
{
  Typed *typed = data;

  g_object_unref (typed->page);
  g_object_unref (typed->part);
  g_free (typed->text);
  g_free (typed);
}

static gboolean
take_typed_cb (gpointer data)
{
  const Typed *typed = data;
  SwPartsPage *self = typed->page;
  const SwPart *part = sw_part_item_get (typed->part);

  if (self->document == NULL) /* closed meanwhile */
    return G_SOURCE_REMOVE;
  g_autoptr (SwDesign) design = sw_design_copy (sw_document_get_design (self->document));
  g_autofree char *label = g_strdup_printf ("%s: %s", _ (typed->column->title), _ (part->name));
  if (!set_own_number (design, typed->column, part->id, typed->text)) {
    g_autofree char *problem =
      g_strdup_printf (_ ("“%s” is no amount. Type a number, 0 or more."), typed->text);
    show_hint (self, problem);
    return G_SOURCE_REMOVE;
  }
  show_hint (self, NULL);
  sw_document_end_edit (self->document);
  sw_document_edit_design (self->document, design, label);
  sw_document_end_edit (self->document);
  return G_SOURCE_REMOVE;
}

static void
commit_cb (GtkEntry *cell, GtkListItem *item)
{
  const Column *column = g_object_get_data (G_OBJECT (cell), "column");
  SwPartItem *part = gtk_list_item_get_item (item);

  if (part == NULL)
    return;
  g_autofree char *before = column->text (sw_part_item_get (part), NULL);
  g_autofree char *text = g_strstrip (g_strdup (gtk_editable_get_text (GTK_EDITABLE (cell))));
  if (g_str_equal (before, text))
    return;
  gtk_editable_set_text (GTK_EDITABLE (cell), before);
  Typed *typed = g_new (Typed, 1);
  *typed = (Typed){ g_object_ref (g_object_get_data (G_OBJECT (cell), "page")),
                    column,
                    g_object_ref (part),
                    g_steal_pointer (&text) };
  g_idle_add_full (G_PRIORITY_DEFAULT_IDLE, take_typed_cb, typed, typed_free);
}

static void
left_cb (GtkEventController *focus, GtkListItem *item)
{
  commit_cb (GTK_ENTRY (gtk_event_controller_get_widget (focus)), item);
}

static GtkWidget *
number_cell (SwPartsPage *self, const Column *column, GtkListItem *item)
{
  GtkWidget *cell = gtk_entry_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  gtk_editable_set_alignment (GTK_EDITABLE (cell), 1);
  gtk_editable_set_width_chars (GTK_EDITABLE (cell), 8);
  gtk_editable_set_max_width_chars (GTK_EDITABLE (cell), 8);
  gtk_editable_set_enable_undo (GTK_EDITABLE (cell), FALSE); /* the design's does */
  gtk_widget_set_tooltip_text (cell, _ ("Type your own; empty goes back"));
  gtk_accessible_update_property (GTK_ACCESSIBLE (cell),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  _ (column->title),
                                  -1);
  g_object_set_data (G_OBJECT (cell), "column", (gpointer) (guintptr) column);
  g_object_set_data (G_OBJECT (cell), "page", self);
  g_signal_connect_object (cell, "activate", G_CALLBACK (commit_cb), item, 0);
  g_signal_connect_object (focus, "leave", G_CALLBACK (left_cb), item, 0);
  gtk_widget_add_controller (cell, focus);
  return cell;
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const Column *column = data;
  SwPartsPage *self = g_object_get_data (G_OBJECT (factory), "page");
  GtkWidget *cell =
    column->table != NULL ? number_cell (self, column, item) : gtk_label_new (NULL);

  if (column->table == NULL) {
    gtk_label_set_xalign (GTK_LABEL (cell), column->number == NULL ? 0 : 1);
    gtk_label_set_ellipsize (GTK_LABEL (cell),
                             column->expand ? PANGO_ELLIPSIZE_END : PANGO_ELLIPSIZE_NONE);
  }
  if (column->number != NULL)
    gtk_widget_add_css_class (cell, "numeric");
  gtk_list_item_set_child (item, cell);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  const Column *column = data;
  SwPartItem *part = gtk_list_item_get_item (item);
  GtkWidget *cell = gtk_list_item_get_child (item);
  g_autofree char *text = column->text (sw_part_item_get (part), NULL);

  if (column->table != NULL)
    gtk_editable_set_text (GTK_EDITABLE (cell), text);
  else
    gtk_label_set_text (GTK_LABEL (cell), text);
  if (column->expand)
    gtk_widget_set_tooltip_text (cell, text);
}

static void
append_column (SwPartsPage *self, const Column *column)
{
  gpointer row =
    (gpointer) (guintptr) column; /* the tables are const, GTK's user data is not */
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  g_autoptr (GtkColumnViewColumn) view_column = NULL;
  g_autoptr (GtkSorter) sorter = GTK_SORTER (gtk_custom_sorter_new (compare_cb, row, NULL));

  g_object_set_data (G_OBJECT (factory), "page", self);
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

static const SwPart *
part_at (SwPartsPage *self, guint i)
{
  g_autoptr (SwPartItem) item = g_list_model_get_item (G_LIST_MODEL (self->parts), i);

  return sw_part_item_get (item); /* the store keeps it */
}

static gboolean
lists_same_parts (SwPartsPage *self, const GArray *bom)
{
  if (g_list_model_get_n_items (G_LIST_MODEL (self->parts)) != bom->len)
    return FALSE;
  for (guint i = 0; i < bom->len; i++) {
    if (!g_str_equal (part_at (self, i)->id, g_array_index (bom, SwPart, i).id))
      return FALSE;
  }
  return TRUE;
}

static gboolean
shows_otherwise (const SwPart *one, const SwPart *other)
{
  return one->quantity < other->quantity || one->quantity > other->quantity ||
         one->unit_price < other->unit_price || one->unit_price > other->unit_price ||
         one->have < other->have || one->have > other->have || one->to_buy < other->to_buy ||
         one->to_buy > other->to_buy;
}

/* Only rows that changed, so that the list keeps its place while one types. */
static void
refresh (SwPartsPage *self)
{
  const GArray *bom = sw_document_get_solution (self->document)->bom;
  gboolean same = lists_same_parts (self, bom);

  if (!same)
    g_list_store_remove_all (self->parts);
  for (guint i = 0; i < bom->len; i++) {
    const SwPart *part = &g_array_index (bom, SwPart, i);
    if (same && !shows_otherwise (part_at (self, i), part))
      continue;
    g_autoptr (SwPartItem) item = sw_part_item_new (part);
    g_list_store_splice (self->parts, i, same ? 1 : 0, (gpointer *) &item, 1);
  }
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
  g_clear_object (&self->parts);
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
  gtk_widget_class_bind_template_child (widget_class, SwPartsPage, hint);
  gtk_widget_class_bind_template_child (widget_class, SwPartsPage, total);
}

static void
sw_parts_page_init (SwPartsPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->parts = g_list_store_new (SW_TYPE_PART_ITEM);
  for (guint i = 0; i < G_N_ELEMENTS (columns); i++)
    append_column (self, &columns[i]);
  GtkSorter *sorter = g_object_ref (gtk_column_view_get_sorter (self->view));
  GtkSortListModel *sorted =
    gtk_sort_list_model_new (G_LIST_MODEL (g_object_ref (self->parts)), sorter);
  g_autoptr (GtkNoSelection) model = gtk_no_selection_new (G_LIST_MODEL (sorted));
  gtk_column_view_set_model (self->view, GTK_SELECTION_MODEL (model));
  show_hint (self, NULL);
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
