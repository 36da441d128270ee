// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/csv.h"

#include <math.h>
#include <string.h>

typedef enum { CSV_TEXT, CSV_WHOLE, CSV_NUMBER } CsvType;

typedef struct {
  const char *name;
  CsvType type;
  gsize offset; /* into the table's row struct */
} CsvColumn;

typedef struct {
  const CsvColumn *columns;
  guint n_columns;
} CsvTable;

#define COLUMN(row, field, type)                                                               \
  {                                                                                            \
#field, type, G_STRUCT_OFFSET(row, field)                                                  \
  }
#define TABLE(columns)                                                                         \
  {                                                                                            \
    columns, G_N_ELEMENTS (columns)                                                            \
  }

typedef struct {
  const char *stock;
  int bar, piece;
  double length_m;
} CutRow;

typedef struct {
  int strip;
  double azimuth_deg, arc_m, chord_m;
} MarkRow;

typedef struct {
  int strip, pixel;
  double x_m, y_m, z_m;
  int port, universe, channel;
} PixelRow;

typedef struct {
  int strip;
  double arc_m, azimuth_deg, radius_m, slant_m, tail_m;
} AsBuiltRow;

static const CsvColumn part_columns[] = {
  COLUMN (SwPart, id, CSV_TEXT),      COLUMN (SwPart, name, CSV_TEXT),
  COLUMN (SwPart, group, CSV_TEXT),   COLUMN (SwPart, quantity, CSV_NUMBER),
  COLUMN (SwPart, unit, CSV_TEXT),    COLUMN (SwPart, unit_price, CSV_NUMBER),
  COLUMN (SwPart, total, CSV_NUMBER),
};
static const CsvColumn cut_columns[] = {
  COLUMN (CutRow, stock, CSV_TEXT),
  COLUMN (CutRow, bar, CSV_WHOLE),
  COLUMN (CutRow, piece, CSV_WHOLE),
  COLUMN (CutRow, length_m, CSV_NUMBER),
};
static const CsvColumn mark_columns[] = {
  COLUMN (MarkRow, strip, CSV_WHOLE),
  COLUMN (MarkRow, azimuth_deg, CSV_NUMBER),
  COLUMN (MarkRow, arc_m, CSV_NUMBER),
  COLUMN (MarkRow, chord_m, CSV_NUMBER),
};
static const CsvColumn pixel_columns[] = {
  COLUMN (PixelRow, strip, CSV_WHOLE),    COLUMN (PixelRow, pixel, CSV_WHOLE),
  COLUMN (PixelRow, x_m, CSV_NUMBER),     COLUMN (PixelRow, y_m, CSV_NUMBER),
  COLUMN (PixelRow, z_m, CSV_NUMBER),     COLUMN (PixelRow, port, CSV_WHOLE),
  COLUMN (PixelRow, universe, CSV_WHOLE), COLUMN (PixelRow, channel, CSV_WHOLE),
};
static const CsvColumn port_columns[] = {
  COLUMN (SwPort, port, CSV_WHOLE),           COLUMN (SwPort, first_strip, CSV_WHOLE),
  COLUMN (SwPort, last_strip, CSV_WHOLE),     COLUMN (SwPort, pixels, CSV_WHOLE),
  COLUMN (SwPort, first_universe, CSV_WHOLE), COLUMN (SwPort, last_universe, CSV_WHOLE),
};
static const CsvColumn as_built_columns[] = {
  COLUMN (AsBuiltRow, strip, CSV_WHOLE),        COLUMN (AsBuiltRow, arc_m, CSV_NUMBER),
  COLUMN (AsBuiltRow, azimuth_deg, CSV_NUMBER), COLUMN (AsBuiltRow, radius_m, CSV_NUMBER),
  COLUMN (AsBuiltRow, slant_m, CSV_NUMBER),     COLUMN (AsBuiltRow, tail_m, CSV_NUMBER),
};

static const CsvTable parts_table = TABLE (part_columns);
static const CsvTable cuts_table = TABLE (cut_columns);
static const CsvTable marks_table = TABLE (mark_columns);
static const CsvTable pixels_table = TABLE (pixel_columns);
static const CsvTable ports_table = TABLE (port_columns);
static const CsvTable as_built_table = TABLE (as_built_columns);

/* RFC 4180, 2.6 and 2.7. */
static void
append_text (GString *csv, const char *text)
{
  if (strpbrk (text, ",\"\r\n") == NULL) {
    g_string_append (csv, text);
    return;
  }
  g_string_append_c (csv, '"');
  for (; *text != '\0'; text++) {
    if (*text == '"')
      g_string_append_c (csv, '"');
    g_string_append_c (csv, *text);
  }
  g_string_append_c (csv, '"');
}

/* The digits of a whole number below 10^n, with leading zeros, at `end` − n. */
static void
put_digits (char *end, int n, guint64 whole)
{
  for (; n > 0; n--, whole /= 10)
    *--end = (char) ('0' + whole % 10);
}

static void
append_whole (GString *csv, gint64 whole)
{
  char text[24];
  int n = 1;

  for (guint64 rest = (guint64) ABS (whole) / 10; rest > 0; rest /= 10)
    n++;
  put_digits (text + n, n, (guint64) ABS (whole));
  if (whole < 0)
    g_string_append_c (csv, '-');
  g_string_append_len (csv, text, n);
}

#define DECIMALS 15 /* a femtometre: at and above 8 the very bits, below it never worse */
#define LEAST_DECIMALS 6
#define DECIMALS_SCALE 1e15
#define MOST_FIXED 9e18 /* what a whole number of 64 bits holds */

/* Fixed point in whole numbers: no exponent, no locale, no "-0", and some ten times the speed
 * of printf (), which counts with a row a pixel. The part after the point is exact before it
 * is scaled.
 */
static void
append_number (GString *csv, double value)
{
  double whole;
  double rest;
  guint64 digits;
  char text[DECIMALS + 1] = ".";
  int n = DECIMALS;

  if (!isfinite (value) || fabs (value) >= MOST_FIXED)
    return; /* absent */
  rest = modf (fabs (value), &whole);
  digits = (guint64) llround (rest * DECIMALS_SCALE);
  if (digits >= (guint64) DECIMALS_SCALE) {
    digits = 0;
    whole += 1;
  }
  if (value < 0 && (whole > 0 || digits > 0))
    g_string_append_c (csv, '-');
  put_digits (text + 1 + DECIMALS, DECIMALS, digits);
  while (n > LEAST_DECIMALS && text[n] == '0')
    n--;
  append_whole (csv, (gint64) whole);
  g_string_append_len (csv, text, n + 1);
}

static void
append_field (GString *csv, const CsvColumn *column, gconstpointer row)
{
  gconstpointer field = (const char *) row + column->offset;

  switch (column->type) {
  case CSV_TEXT: {
    const char *const *text = field;

    append_text (csv, *text == NULL ? "" : *text);
    break;
  }
  case CSV_WHOLE:
    append_whole (csv, *(const int *) field);
    break;
  case CSV_NUMBER:
    append_number (csv, *(const double *) field);
    break;
  }
}

static void
append_row (GString *csv, const CsvTable *table, gconstpointer row)
{
  for (guint i = 0; i < table->n_columns; i++) {
    if (i > 0)
      g_string_append_c (csv, ',');
    append_field (csv, &table->columns[i], row);
  }
  g_string_append (csv, "\r\n");
}

static GString *
csv_new (const CsvTable *table)
{
  GString *csv = g_string_new (NULL);

  for (guint i = 0; i < table->n_columns; i++)
    g_string_append_printf (csv, "%s%s", i > 0 ? "," : "", table->columns[i].name);
  g_string_append (csv, "\r\n");
  return csv;
}

char *
sw_csv_parts (const SwSolution *solution)
{
  GString *csv = csv_new (&parts_table);

  for (guint i = 0; i < solution->bom->len; i++)
    append_row (csv, &parts_table, &g_array_index (solution->bom, SwPart, i));
  return g_string_free (csv, FALSE);
}

static void
append_bars (GString *csv, const SwCutPlan *plan)
{
  for (guint bar = 0; bar < plan->bars->len; bar++) {
    const GArray *pieces = g_ptr_array_index (plan->bars, bar);

    for (guint piece = 0; piece < pieces->len; piece++) {
      CutRow row = { plan->stock,
                     (int) bar + 1,
                     (int) piece + 1,
                     g_array_index (pieces, double, piece) };
      append_row (csv, &cuts_table, &row);
    }
  }
}

char *
sw_csv_cuts (const SwSolution *solution)
{
  GString *csv = csv_new (&cuts_table);

  for (guint i = 0; i < solution->cuts->len; i++)
    append_bars (csv, g_ptr_array_index (solution->cuts, i));
  return g_string_free (csv, FALSE);
}

char *
sw_csv_marks (const SwSolution *solution)
{
  GString *csv = csv_new (&marks_table);

  for (guint i = 0; i < solution->marks->len; i++) {
    const SwRingMark *mark = &g_array_index (solution->marks, SwRingMark, i);
    MarkRow row = { (int) i + 1, mark->azimuth_deg, mark->arc_m, mark->chord_m };

    append_row (csv, &marks_table, &row);
  }
  return g_string_free (csv, FALSE);
}

/* `points` in the order data reaches them, or the other way round. */
static void
append_pixels (GString *csv,
               const SwSolution *solution,
               int strip,
               const SwPoint *points,
               int n_points)
{
  gboolean up = strip == 0 || sw_data_runs_up (&solution->data, solution->design, strip);

  for (int pixel = 1; pixel <= n_points; pixel++) {
    const SwPoint *point = &points[up ? pixel - 1 : n_points - pixel];
    SwAddress at = sw_data_address (&solution->data, solution->design, strip, pixel);
    PixelRow row = { strip,      pixel,   point->x_m,  point->y_m,
                     point->z_m, at.port, at.universe, at.channel };

    append_row (csv, &pixels_table, &row);
  }
}

char *
sw_csv_pixels (const SwSolution *solution)
{
  const SwDesign *design = solution->design;
  int n_points = design->strip.pixels;
  g_autofree SwPoint *points = g_new (SwPoint, n_points);
  const GArray *star = solution->topper_pixels;
  GString *csv = csv_new (&pixels_table);

  for (int strip = 1; strip <= design->shape.strip_count; strip++) {
    sw_pixel_points (design, strip, points);
    append_pixels (csv, solution, strip, points, n_points);
  }
  if (star->len > 0)
    append_pixels (csv, solution, 0, &g_array_index (star, SwPoint, 0), (int) star->len);
  return g_string_free (csv, FALSE);
}

char *
sw_csv_ports (const SwSolution *solution)
{
  const GArray *ports = solution->data.rows;
  GString *csv = csv_new (&ports_table);

  for (guint i = 0; i < ports->len; i++)
    append_row (csv, &ports_table, &g_array_index (ports, SwPort, i));
  return g_string_free (csv, FALSE);
}

char *
sw_csv_as_built_marks (const SwSolution *solution)
{
  GString *csv = csv_new (&as_built_table);

  for (guint i = 0; i < solution->as_built->marks->len; i++) {
    const SwAsBuiltMark *mark = &g_array_index (solution->as_built->marks, SwAsBuiltMark, i);
    AsBuiltRow row = { (int) i + 1,    mark->arc_m,   mark->azimuth_deg,
                       mark->radius_m, mark->slant_m, mark->tail_m };

    append_row (csv, &as_built_table, &row);
  }
  return g_string_free (csv, FALSE);
}
