// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/table.h"

#include <string.h>

#define PAD_X 4.0 /* points left and right of a cell */
#define PAD_Y 1.8
#define TICK_SIDE 8.5
#define STRIPE 0.05 /* how much ink every second row is tinted with */
#define TABLE_GAP 6.0

typedef struct {
  SwRowKind kind;
  char **cells; /* owned */
} Row;

struct SwTable {
  const SwColumn *columns; /* borrowed, static */
  guint n_columns;
  GArray *rows; /* owned: Row */
};

/* One row as laid out. */
typedef struct {
  SwRowKind kind;
  gboolean head, tinted;
  guint n_cells;
  PangoLayout **layouts; /* owned, each nullable */
  gboolean *ticks;       /* owned */
  double *xs;            /* owned: left side of each cell's text */
  double *widths;        /* owned */
} Line;

static void
row_clear (gpointer data)
{
  g_strfreev (((Row *) data)->cells);
}

SwTable *
sw_table_new (const SwColumn *columns, guint n_columns)
{
  SwTable *table = g_new0 (SwTable, 1);

  table->columns = columns;
  table->n_columns = n_columns;
  table->rows = g_array_new (FALSE, FALSE, sizeof (Row));
  g_array_set_clear_func (table->rows, row_clear);
  return table;
}

void
sw_table_free (SwTable *table)
{
  g_array_unref (table->rows);
  g_free (table);
}

void
sw_table_add (SwTable *table, SwRowKind kind, const char *const *cells)
{
  Row row = { kind, g_new0 (char *, table->n_columns + 1) };

  for (guint i = 0; i < table->n_columns; i++)
    row.cells[i] = g_strdup (cells[i] == NULL ? "" : cells[i]);
  g_array_append_val (table->rows, row);
}

SwTable *
sw_table_new_facts (void)
{
  static const SwColumn columns[] = { { NULL, SW_TEXT_LEFT, 1 }, { NULL, SW_TEXT_RIGHT, 0 } };

  return sw_table_new (columns, G_N_ELEMENTS (columns));
}

void
sw_table_add_fact (SwTable *table, const SwPen *pen, const char *words, char *value)
{
  const char *cells[] = { sw_pen_word (pen, words), value };

  sw_table_add (table, SW_ROW_PLAIN, cells);
  g_free (value);
}

static double
text_width (const SwPen *pen, const char *text, gboolean bold)
{
  SwWriting writing = { .size = pen->style->text_normal, .bold = bold };
  g_autoptr (PangoLayout) layout = NULL;

  if (*text == '\0')
    return 0;
  if (g_str_equal (text, SW_CELL_TICK))
    return TICK_SIDE;
  layout = sw_pen_layout (pen, &writing, text);
  return sw_layout_width (layout);
}

/* A head may wrap between words. */
static double
longest_word_width (const SwPen *pen, const char *title)
{
  g_auto (GStrv) words = g_strsplit (title, " ", -1);
  double width = 0;

  for (guint i = 0; words[i] != NULL; i++)
    width = MAX (width, text_width (pen, words[i], TRUE));
  return width;
}

#define SLACK 0.5    /* points: what a sum of glyphs and a line of them may differ by */
#define SHORTER_BY 2 /* characters a text can have less than the longest and yet be wider */

static double
natural_width (const SwPen *pen, const SwTable *table, guint column)
{
  const char *title = table->columns[column].title;
  double width = title == NULL ? 0 : longest_word_width (pen, sw_pen_word (pen, title));
  glong most = 0;

  for (guint i = 0; i < table->rows->len; i++) {
    const Row *row = &g_array_index (table->rows, Row, i);
    glong length = g_utf8_strlen (row->cells[column], -1);

    if (row->kind == SW_ROW_GROUP || length + SHORTER_BY < most)
      continue;
    most = MAX (most, length);
    width = MAX (width, text_width (pen, row->cells[column], row->kind != SW_ROW_PLAIN));
  }
  return width + 2 * PAD_X + SLACK;
}

#define LEAST_SHARED 60.0 /* points a column that wraps keeps at least */

/* Widths that fill `width`: what is left over goes to the columns with a share, or to all. */
static void
set_widths (const SwPen *pen, const SwTable *table, double width, double *widths)
{
  double rest = width;
  double shares = 0;

  for (guint i = 0; i < table->n_columns; i++) {
    widths[i] = table->columns[i].share > 0 ? 0 : natural_width (pen, table, i);
    rest -= widths[i];
    shares += table->columns[i].share;
  }
  if (shares > 0 && rest < LEAST_SHARED) { /* too narrow: the others give way in proportion */
    double scale = (width - LEAST_SHARED) / (width - rest);

    for (guint i = 0; i < table->n_columns; i++)
      widths[i] *= scale;
    rest = LEAST_SHARED;
  }
  for (guint i = 0; i < table->n_columns; i++) {
    if (shares > 0)
      widths[i] += rest * table->columns[i].share / shares;
    else
      widths[i] *= width / (width - rest);
  }
}

static void
line_free (gpointer data)
{
  Line *line = data;

  for (guint i = 0; i < line->n_cells; i++)
    g_clear_object (&line->layouts[i]);
  g_free (line->layouts);
  g_free (line->ticks);
  g_free (line->xs);
  g_free (line->widths);
  g_free (line);
}

static Line *
line_new (const SwTable *table, SwRowKind kind)
{
  Line *line = g_new0 (Line, 1);

  line->kind = kind;
  line->n_cells = kind == SW_ROW_GROUP ? 1 : table->n_columns;
  line->layouts = g_new0 (PangoLayout *, line->n_cells);
  line->ticks = g_new0 (gboolean, line->n_cells);
  line->xs = g_new0 (double, line->n_cells);
  line->widths = g_new0 (double, line->n_cells);
  return line;
}

static void
set_cell (Line *line, guint i, const SwPen *pen, const SwColumn *column, const char *text)
{
  SwWriting writing = { .size = pen->style->text_normal,
                        .width = line->widths[i],
                        .bold = line->head || line->kind != SW_ROW_PLAIN,
                        .one_line = !line->head && column->share <= 0,
                        .align = line->kind == SW_ROW_GROUP ? SW_TEXT_LEFT : column->align };

  line->ticks[i] = g_str_equal (text, SW_CELL_TICK);
  if (!line->ticks[i] && *text != '\0')
    line->layouts[i] = sw_pen_layout (pen, &writing, text);
}

static void
set_places (Line *line, const double *widths, double whole)
{
  double x = 0;

  for (guint i = 0; i < line->n_cells; i++) {
    double width = line->kind == SW_ROW_GROUP ? whole : widths[i];

    line->xs[i] = x + PAD_X;
    line->widths[i] = width - 2 * PAD_X;
    x += width;
  }
}

static double
line_height (const Line *line)
{
  double height = TICK_SIDE;

  for (guint i = 0; i < line->n_cells; i++) {
    if (line->layouts[i] != NULL)
      height = MAX (height, sw_layout_height (line->layouts[i]));
  }
  return height + 2 * PAD_Y + (line->kind == SW_ROW_GROUP ? 2 * PAD_Y : 0);
}

static void
draw_rules (const SwPen *pen, const SwBox *box, const Line *line)
{
  if (line->tinted) {
    sw_style_set_ink_alpha (pen->style, pen->cr, SW_INK_MAIN, STRIPE);
    cairo_rectangle (pen->cr, box->x, box->y, box->width, box->height);
    cairo_fill (pen->cr);
  }
  if (line->head) {
    sw_pen_rule (pen, box->x, box->y + box->height, box->width);
    sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
  }
  if (line->kind == SW_ROW_SUBTOTAL || line->kind == SW_ROW_TOTAL) {
    sw_pen_rule (pen, box->x, box->y, box->width);
    sw_pen_line (pen,
                 SW_INK_MAIN,
                 line->kind == SW_ROW_TOTAL ? pen->style->line_thick : pen->style->line_thin);
  }
}

static void
draw_line (const SwPen *pen, const SwBox *box, gpointer data)
{
  const Line *line = data;

  draw_rules (pen, box, line);
  for (guint i = 0; i < line->n_cells; i++) {
    PangoLayout *layout = line->layouts[i];
    double x = box->x + line->xs[i];
    double bottom = box->y + box->height - PAD_Y;

    if (line->ticks[i]) {
      cairo_rectangle (pen->cr,
                       x + (line->widths[i] - TICK_SIDE) / 2,
                       box->y + (box->height - TICK_SIDE) / 2,
                       TICK_SIDE,
                       TICK_SIDE);
      sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thin);
    }
    if (layout != NULL && (line->head || line->kind == SW_ROW_GROUP))
      sw_pen_show (pen, SW_INK_MAIN, x, bottom - sw_layout_height (layout), layout);
    else if (layout != NULL)
      sw_pen_show (pen, SW_INK_MAIN, x, box->y + PAD_Y, layout);
  }
}

static SwBlock
block_of (Line *line)
{
  return (SwBlock){ .height = line_height (line),
                    .keep = line->head || line->kind == SW_ROW_GROUP,
                    .draw = draw_line,
                    .data = line,
                    .free = line_free };
}

static const SwBlock *
add_head (SwFlow *flow, const SwTable *table, const double *widths)
{
  const SwPen *pen = sw_flow_pen (flow);
  Line *line = line_new (table, SW_ROW_PLAIN);
  SwBlock block;

  line->head = TRUE;
  set_places (line, widths, sw_flow_width (flow));
  for (guint i = 0; i < table->n_columns; i++)
    set_cell (line, i, pen, &table->columns[i], sw_pen_word (pen, table->columns[i].title));
  block = block_of (line);
  block.gap = TABLE_GAP;
  return sw_flow_add (flow, &block, NULL);
}

void
sw_flow_table (SwFlow *flow, const SwTable *table)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autofree double *widths = g_new (double, table->n_columns);
  const SwBlock *head = NULL;
  gboolean tinted = FALSE;

  set_widths (pen, table, sw_flow_width (flow), widths);
  if (table->columns[0].title != NULL)
    head = add_head (flow, table, widths);
  for (guint i = 0; i < table->rows->len; i++) {
    const Row *row = &g_array_index (table->rows, Row, i);
    Line *line = line_new (table, row->kind);
    SwBlock block;

    tinted = row->kind == SW_ROW_PLAIN && !tinted;
    line->tinted = tinted;
    set_places (line, widths, sw_flow_width (flow));
    for (guint column = 0; column < line->n_cells; column++)
      set_cell (line, column, pen, &table->columns[column], row->cells[column]);
    block = block_of (line);
    sw_flow_add (flow, &block, head);
  }
}
