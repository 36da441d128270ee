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
  gboolean small;
  GArray *rows; /* owned: Row */
};

/* One row as laid out. */
typedef struct {
  SwRowKind kind;
  gboolean head, tinted;
  double text_size; /* points */
  guint n_cells;
  PangoLayout **layouts; /* owned, each nullable */
  gboolean *ticks;       /* owned */
  double *xs;            /* owned: where each cell's text or tick box begins */
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
sw_table_set_small (SwTable *table)
{
  table->small = TRUE;
}

static double
text_size (const SwPen *pen, const SwTable *table)
{
  return table->small ? pen->style->text_small : pen->style->text_normal;
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
bold_width (const SwPen *pen, double size, const char *text)
{
  SwWriting writing = { .size = size, .bold = TRUE };
  g_autoptr (PangoLayout) layout = sw_pen_layout (pen, &writing, text);

  return sw_layout_width (layout);
}

/* A head may wrap between words. */
static double
longest_word_width (const SwPen *pen, double size, const char *title)
{
  g_auto (GStrv) words = g_strsplit (title, " ", -1);
  double width = 0;

  for (guint i = 0; words[i] != NULL; i++)
    width = MAX (width, bold_width (pen, size, words[i]));
  return width;
}

#define SLACK 0.5 /* points: what a sum of glyphs and a line of them may differ by */

static double
natural_width (const SwPen *pen, const SwTable *table, GPtrArray *lines, guint column)
{
  const char *title = table->columns[column].title;
  double width = 0;

  if (title != NULL)
    width = longest_word_width (pen, text_size (pen, table), sw_pen_word (pen, title));
  for (guint i = 0; i < lines->len; i++) {
    const Line *line = g_ptr_array_index (lines, i);

    if (line->kind == SW_ROW_GROUP)
      continue;
    if (line->ticks[column])
      width = MAX (width, TICK_SIDE);
    if (line->layouts[column] != NULL)
      width = MAX (width, sw_layout_width (line->layouts[column]));
  }
  return width + 2 * PAD_X + SLACK;
}

#define LEAST_SHARED 60.0 /* points a column that wraps keeps at least */

/* The widest columns give way, down to one width for all of them, until they fit. */
static void
cap_widths (double *widths, guint n, double room)
{
  double low = 0;
  double high = room;

  for (int i = 0; i < 50; i++) { /* halving a page's width 50 times: beyond a double's digits */
    double cap = (low + high) / 2;
    double sum = 0;

    for (guint column = 0; column < n; column++)
      sum += MIN (widths[column], cap);
    if (sum > room)
      high = cap;
    else
      low = cap;
  }
  for (guint column = 0; column < n; column++)
    widths[column] = MIN (widths[column], low);
}

/* Widths that fill `whole`: what is left over goes to the columns with a share, or to all. */
static void
spread_widths (const SwTable *table, double *widths, double whole)
{
  double rest = whole;
  double shares = 0;

  for (guint i = 0; i < table->n_columns; i++) {
    rest -= widths[i];
    shares += table->columns[i].share;
  }
  if (rest < (shares > 0 ? LEAST_SHARED : 0)) {
    rest = shares > 0 ? LEAST_SHARED : 0;
    cap_widths (widths, table->n_columns, whole - rest);
  }
  for (guint i = 0; i < table->n_columns; i++) {
    if (shares > 0)
      widths[i] += rest * table->columns[i].share / shares;
    else
      widths[i] *= whole / (whole - rest);
  }
}

static void
set_widths (const SwPen *pen, const SwTable *table, GPtrArray *lines, double *widths)
{
  for (guint i = 0; i < table->n_columns; i++)
    widths[i] = table->columns[i].share > 0 ? 0 : natural_width (pen, table, lines, i);
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
  g_free (line);
}

static Line *
line_new (const SwPen *pen, const SwTable *table, SwRowKind kind)
{
  Line *line = g_new0 (Line, 1);

  line->kind = kind;
  line->text_size = text_size (pen, table);
  line->n_cells = kind == SW_ROW_GROUP ? 1 : table->n_columns;
  line->layouts = g_new0 (PangoLayout *, line->n_cells);
  line->ticks = g_new0 (gboolean, line->n_cells);
  line->xs = g_new0 (double, line->n_cells);
  return line;
}

static void
set_cell (Line *line, guint i, const SwPen *pen, const char *text)
{
  SwWriting writing = { .size = line->text_size,
                        .bold = line->head || line->kind != SW_ROW_PLAIN };

  line->ticks[i] = g_str_equal (text, SW_CELL_TICK);
  if (!line->ticks[i] && *text != '\0')
    line->layouts[i] = sw_pen_layout (pen, &writing, text);
}

/* What is too long is wrapped or cut short; only then is a text laid out a second time. */
static void
fit_cell (PangoLayout *layout, const SwColumn *column, double room, gboolean wrap)
{
  static const PangoAlignment alignments[] = {
    [SW_TEXT_LEFT] = PANGO_ALIGN_LEFT,
    [SW_TEXT_CENTRE] = PANGO_ALIGN_CENTER,
    [SW_TEXT_RIGHT] = PANGO_ALIGN_RIGHT,
  };

  if (sw_layout_width (layout) <= room)
    return;
  pango_layout_set_width (layout, pango_units_from_double (room));
  pango_layout_set_alignment (layout, alignments[column->align]);
  if (wrap)
    pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  else
    pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
}

static double
left_of (double x, double room, double width, SwTextAlign align)
{
  static const double shares[] = {
    [SW_TEXT_LEFT] = 0,
    [SW_TEXT_CENTRE] = 0.5,
    [SW_TEXT_RIGHT] = 1,
  };

  return x + MAX (room - width, 0) * shares[align];
}

/* Where each cell's text or tick box begins. */
static void
place_cells (Line *line, const SwTable *table, const double *widths, double whole)
{
  double x = PAD_X;

  for (guint i = 0; i < line->n_cells; i++) {
    const SwColumn *column = &table->columns[i];
    gboolean group = line->kind == SW_ROW_GROUP;
    double room = (group ? whole : widths[i]) - 2 * PAD_X;
    double width = TICK_SIDE;

    if (line->layouts[i] != NULL) {
      fit_cell (line->layouts[i], column, room, line->head || column->share > 0);
      width = pango_layout_get_width (line->layouts[i]) > 0
                ? room /* aligned inside by pango */
                : sw_layout_width (line->layouts[i]);
    }
    line->xs[i] = left_of (x, room, width, group ? SW_TEXT_LEFT : column->align);
    x += room + 2 * PAD_X;
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
                       x,
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

static Line *
head_line (const SwPen *pen, const SwTable *table)
{
  Line *line = line_new (pen, table, SW_ROW_PLAIN);

  line->head = TRUE;
  for (guint i = 0; i < table->n_columns; i++)
    set_cell (line, i, pen, sw_pen_word (pen, table->columns[i].title));
  return line;
}

/* Returns: (transfer container) (element-type Line): rows as laid out, not yet placed. */
static GPtrArray *
row_lines (const SwPen *pen, const SwTable *table)
{
  GPtrArray *lines = g_ptr_array_sized_new (table->rows->len);
  gboolean tinted = FALSE;

  for (guint i = 0; i < table->rows->len; i++) {
    const Row *row = &g_array_index (table->rows, Row, i);
    Line *line = line_new (pen, table, row->kind);

    tinted = row->kind == SW_ROW_PLAIN && !tinted;
    line->tinted = tinted;
    for (guint column = 0; column < line->n_cells; column++)
      set_cell (line, column, pen, row->cells[column]);
    g_ptr_array_add (lines, line);
  }
  return lines;
}

void
sw_flow_table (SwFlow *flow, const SwTable *table)
{
  const SwPen *pen = sw_flow_pen (flow);
  double whole = sw_flow_width (flow);
  g_autofree double *widths = g_new (double, table->n_columns);
  g_autoptr (GPtrArray) lines = row_lines (pen, table);
  const SwBlock *head = NULL;
  SwBlock block;

  set_widths (pen, table, lines, widths);
  spread_widths (table, widths, whole);
  if (table->columns[0].title != NULL) {
    Line *line = head_line (pen, table);

    place_cells (line, table, widths, whole);
    block = block_of (line);
    block.gap = TABLE_GAP;
    head = sw_flow_add (flow, &block, NULL);
  }
  for (guint i = 0; i < lines->len; i++) {
    place_cells (g_ptr_array_index (lines, i), table, widths, whole);
    block = block_of (g_ptr_array_index (lines, i));
    block.gap = head == NULL && i == 0 ? TABLE_GAP : 0;
    sw_flow_add (flow, &block, head);
  }
}
