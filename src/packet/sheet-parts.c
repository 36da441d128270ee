// SPDX-License-Identifier: GPL-3.0-or-later
/* What to buy and how to cut it. */
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

static const SwColumn part_columns[] = {
  { N_ ("Part"), SW_TEXT_LEFT, 1 },     { N_ ("Needed"), SW_TEXT_RIGHT, 0 },
  { N_ ("In hand"), SW_TEXT_RIGHT, 0 }, { N_ ("To buy"), SW_TEXT_RIGHT, 0 },
  { N_ ("Unit"), SW_TEXT_LEFT, 0 },     { N_ ("Price a unit"), SW_TEXT_RIGHT, 0 },
  { N_ ("To pay"), SW_TEXT_RIGHT, 0 },  { N_ ("Got"), SW_TEXT_CENTRE, 0 },
};

#define PART_CELLS G_N_ELEMENTS (part_columns)

/* Whole numbers plain, others to two decimals; 0 as "" where `blank`. */
static char *
amount (const SwPen *pen, double value)
{
  return sw_pen_decimal (pen, value, fabs (value - round (value)) < 1e-9 ? 0 : 2);
}

static void
add_part (const SwPen *pen, SwTable *table, const SwPart *part)
{
  g_autofree char *needed = amount (pen, part->quantity);
  g_autofree char *have = part->have > 0 ? amount (pen, part->have) : g_strdup ("");
  g_autofree char *to_buy = amount (pen, part->to_buy);
  g_autofree char *price = sw_pen_decimal (pen, part->unit_price, 2);
  g_autofree char *to_pay = sw_pen_decimal (pen, part->to_pay, 2);
  const char *cells[PART_CELLS] = {
    sw_pen_word (pen, part->name), needed, have,   to_buy,
    sw_pen_word (pen, part->unit), price,  to_pay, SW_CELL_TICK,
  };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_sum (const SwPen *pen, SwTable *table, SwRowKind kind, double sum)
{
  g_autofree char *to_pay = sw_pen_decimal (pen, sum, 2);
  const char *cells[PART_CELLS] = { NULL };

  if (kind == SW_ROW_TOTAL)
    cells[0] = sw_pen_word (pen, N_ ("Total to pay"));
  cells[5] = pen->solution->design->prices.currency;
  cells[6] = to_pay;
  sw_table_add (table, kind, cells);
}

/* Parts of one group from `i` on. Returns: the first of the next group. */
static guint
add_group (const SwPen *pen, SwTable *table, guint i)
{
  const GArray *bom = pen->solution->bom;
  const char *group = g_array_index (bom, SwPart, i).group;
  const char *cells[PART_CELLS] = { sw_pen_word (pen, group) };
  double sum = 0;

  sw_table_add (table, SW_ROW_GROUP, cells);
  for (; i < bom->len; i++) {
    const SwPart *part = &g_array_index (bom, SwPart, i);

    if (!g_str_equal (part->group, group))
      break;
    add_part (pen, table, part);
    sum += part->to_pay;
  }
  add_sum (pen, table, SW_ROW_SUBTOTAL, sum);
  return i;
}

void
sw_parts_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const GArray *bom = pen->solution->bom;
  g_autoptr (SwTable) table = sw_table_new (part_columns, PART_CELLS);

  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Needed: with spares. To buy: what is not in hand, in whole "
                                 "packs. Prices are estimates unless you set your own.")));
  for (guint i = 0; i < bom->len;)
    i = add_group (pen, table, i);
  add_sum (pen, table, SW_ROW_TOTAL, pen->solution->cost_to_pay);
  sw_flow_table (flow, table);
}

/* One way to cut, and how many bars are cut that way. */
typedef struct {
  const GArray *pieces; /* borrowed from the solution */
  double stock_m, kerf_m;
  int count;
  PangoLayout *label; /* owned: "2 ×" */
  GPtrArray *texts;   /* owned: PangoLayout, a piece each */
} Bar;

#define BAR_HEIGHT 16.0
#define BAR_X 34.0 /* where it begins, after its count */

static void
bar_free (gpointer data)
{
  Bar *bar = data;

  g_object_unref (bar->label);
  g_ptr_array_unref (bar->texts);
  g_free (bar);
}

/* The rest of the bar: slanted lines, light. */
static void
draw_waste (const SwPen *pen, double x, double y, double width)
{
  if (width <= 0)
    return;
  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, x, y, width, BAR_HEIGHT);
  cairo_clip (pen->cr);
  for (double at = x - BAR_HEIGHT; at < x + width; at += 5) {
    cairo_move_to (pen->cr, at, y + BAR_HEIGHT);
    cairo_line_to (pen->cr, at + BAR_HEIGHT, y);
  }
  sw_pen_line (pen, SW_INK_SECOND, pen->style->line_thin);
  cairo_restore (pen->cr);
}

static void
draw_piece (const SwPen *pen, double x, double y, double width, PangoLayout *text)
{
  double wide = sw_layout_width (text);

  cairo_rectangle (pen->cr, x, y, width, BAR_HEIGHT);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
  if (wide + 4 <= width)
    sw_pen_show (pen,
                 SW_INK_MAIN,
                 x + (width - wide) / 2,
                 y + (BAR_HEIGHT - sw_layout_height (text)) / 2,
                 text);
}

static void
draw_bar (const SwPen *pen, const SwBox *box, gpointer data)
{
  const Bar *bar = data;
  double scale = (box->width - BAR_X) / bar->stock_m;
  double x = box->x + BAR_X;

  sw_pen_show (pen,
               SW_INK_MAIN,
               box->x,
               box->y + (BAR_HEIGHT - sw_layout_height (bar->label)) / 2,
               bar->label);
  for (guint i = 0; i < bar->pieces->len; i++) {
    double length_m = g_array_index (bar->pieces, double, i);

    draw_piece (pen, x, box->y, length_m * scale, g_ptr_array_index (bar->texts, i));
    x += (length_m + bar->kerf_m) * scale;
  }
  draw_waste (pen, x, box->y, box->x + box->width - x);
}

static gboolean
same_pieces (const GArray *a, const GArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++) {
    if (fabs (g_array_index (a, double, i) - g_array_index (b, double, i)) > 1e-7)
      return FALSE;
  }
  return TRUE;
}

static void
add_bar (SwFlow *flow, const SwCutPlan *plan, const GArray *pieces, int count)
{
  const SwPen *pen = sw_flow_pen (flow);
  SwWriting writing = { .size = pen->style->text_normal };
  g_autofree char *label = g_strdup_printf ("%d ×", count);
  Bar *bar = g_new0 (Bar, 1);

  *bar = (Bar){ pieces, plan->stock_m, plan->kerf_m, count, NULL, NULL };
  bar->label = sw_pen_layout (pen, &writing, label);
  bar->texts = g_ptr_array_new_with_free_func (g_object_unref);
  for (guint i = 0; i < pieces->len; i++) {
    g_autofree char *length =
      sw_pen_number (pen, g_array_index (pieces, double, i), SW_QUANTITY_LENGTH);

    g_ptr_array_add (bar->texts, sw_pen_layout (pen, &writing, length));
  }
  sw_flow_add (flow, &(SwBlock){ BAR_HEIGHT, 6, FALSE, draw_bar, bar, bar_free }, NULL);
}

/* Equal bars stand next to one another: a plan is sorted. */
static void
add_bars (SwFlow *flow, const SwCutPlan *plan)
{
  for (guint i = 0; i < plan->bars->len;) {
    const GArray *pieces = g_ptr_array_index (plan->bars, i);
    guint first = i;

    while (i < plan->bars->len && same_pieces (pieces, g_ptr_array_index (plan->bars, i)))
      i++;
    add_bar (flow, plan, pieces, (int) (i - first));
  }
}

static SwColumn piece_columns[] = {
  { N_ ("Pieces"), SW_TEXT_RIGHT, 0 },
  { N_ ("Length"), SW_TEXT_RIGHT, 0 },
  { N_ ("Length, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("Cut"), SW_TEXT_CENTRE, 0 },
};

static int
longest_first (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a;
  double y = *(const double *) b;

  return (x < y) - (x > y);
}

static void
add_pieces (SwFlow *flow, const SwCutPlan *plan)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (GArray) all = g_array_new (FALSE, FALSE, sizeof (double));
  g_autoptr (SwTable) table = sw_table_new (piece_columns, G_N_ELEMENTS (piece_columns));

  for (guint i = 0; i < plan->bars->len; i++) {
    const GArray *pieces = g_ptr_array_index (plan->bars, i);

    g_array_append_vals (all, pieces->data, pieces->len);
  }
  g_array_sort (all, longest_first);
  for (guint i = 0; i < all->len;) {
    double length_m = g_array_index (all, double, i);
    guint first = i;

    while (i < all->len && fabs (g_array_index (all, double, i) - length_m) < 1e-7)
      i++;
    g_autofree char *count = g_strdup_printf ("%u", i - first);
    g_autofree char *length = sw_pen_number (pen, length_m, SW_QUANTITY_LENGTH);
    g_autofree char *length_mm = sw_pen_decimal (pen, length_m * 1000, 0);
    const char *cells[] = { count, length, length_mm, SW_CELL_TICK };

    sw_table_add (table, SW_ROW_PLAIN, cells);
  }
  sw_flow_table (flow, table);
}

/* Stock is pipe or board; an id of neither stands for itself. */
static const char *
stock_name (const SwCatalogue *catalogue, const char *id)
{
  const char *name = id == NULL ? "" : sw_catalogue_name (catalogue, "pipe", id);

  if (name == NULL)
    name = sw_catalogue_name (catalogue, "board", id);
  return name == NULL ? id : name;
}

static void
add_plan (SwFlow *flow, const SwCutPlan *plan)
{
  const SwPen *pen = sw_flow_pen (flow);
  const char *name = stock_name (pen->solution->catalogue, plan->stock);
  g_autofree char *stock = sw_pen_number (pen, plan->stock_m, SW_QUANTITY_LENGTH);
  g_autofree char *kerf = sw_pen_number (pen, plan->kerf_m, SW_QUANTITY_SHORT_LENGTH);
  g_autofree char *waste = sw_pen_number (pen, plan->waste_m, SW_QUANTITY_LENGTH);
  g_autofree char *what = sw_pen_say (
    pen,
    plan->optimal ? N_ ("To buy: %u of %s each. Saw cut %s. Left over: %s. No way of "
                        "cutting takes fewer.")
                  : N_ ("To buy: at most %u of %s each. Saw cut %s. Left over: %s."),
    plan->bars->len,
    stock,
    kerf,
    waste);

  sw_flow_heading (flow, sw_pen_word (pen, name));
  sw_flow_text (flow, what);
  add_bars (flow, plan);
  add_pieces (flow, plan);
}

void
sw_cuts_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("Lengths are finished lengths; the saw cut is on top of them. "
                     "Measure a bar before the first cut: stock is rarely exact.")));
  for (guint i = 0; i < pen->solution->cuts->len; i++)
    add_plan (flow, g_ptr_array_index (pen->solution->cuts, i));
}
