// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/csv.h"

#include <locale.h>
#include <math.h>
#include <string.h>

/* A reader of its own for RFC 4180: fields by rows; any rule broken is a failure. */
static const char *
read_field (const char *at, GString *field)
{
  if (*at != '"') {
    gsize length = strcspn (at, ",\"\r\n");

    g_string_append_len (field, at, (gssize) length);
    return at + length;
  }
  for (at++;; at++) {
    g_assert_cmpint (*at, !=, '\0');
    if (*at == '"' && *++at != '"')
      return at;
    g_string_append_c (field, *at);
  }
}

static GPtrArray *
read_row (const char **at)
{
  GPtrArray *row = g_ptr_array_new_with_free_func (g_free);

  for (;; ++*at) {
    GString *field = g_string_new (NULL);

    *at = read_field (*at, field);
    g_ptr_array_add (row, g_string_free (field, FALSE));
    if (**at != ',')
      break;
  }
  g_assert_true (g_str_has_prefix (*at, "\r\n"));
  *at += 2;
  return row;
}

static GPtrArray *
read_csv (const char *text)
{
  GPtrArray *rows = g_ptr_array_new_with_free_func ((GDestroyNotify) g_ptr_array_unref);

  while (*text != '\0')
    g_ptr_array_add (rows, read_row (&text));
  return rows;
}

static const char *
field (const GPtrArray *rows, guint row, guint column)
{
  const GPtrArray *fields = g_ptr_array_index (rows, row);

  g_assert_cmpuint (column, <, fields->len);
  return g_ptr_array_index (fields, column);
}

static double
number (const GPtrArray *rows, guint row, guint column)
{
  return g_ascii_strtod (field (rows, row, column), NULL);
}

static gint64
whole (const GPtrArray *rows, guint row, guint column)
{
  char *end;
  gint64 value = g_ascii_strtoll (field (rows, row, column), &end, 10);

  g_assert_cmpint (*end, ==, '\0');
  return value;
}

static void
assert_head (const char *csv, const char *head)
{
  g_autofree char *line = g_strconcat (head, "\r\n", NULL);

  g_assert_true (g_str_has_prefix (csv, line));
}

static SwSolution *
solve (SwDesign *design)
{
  g_autoptr (GError) error = NULL;
  const SwCatalogue *catalogue = sw_catalogue_builtin (&error);
  SwSolution *solution = sw_solution_new (design, catalogue, &error);

  g_assert_no_error (error);
  return solution;
}

/* Source: RFC 4180, section 2, rules 5 to 7; the quoted field is its own example. */
static void
test_text_is_quoted_as_the_rfc_says (void)
{
  SwPart parts[] = { { .id = "b\"bb", .name = "2 in, plain", .group = "g", .unit = "m" } };
  SwSolution solution = { .bom = g_array_new (FALSE, FALSE, sizeof (SwPart)) };
  g_autofree char *csv = NULL;

  g_array_append_val (solution.bom, parts[0]);
  csv = sw_csv_parts (&solution);
  g_assert_cmpstr (csv,
                   ==,
                   "id,name,group,quantity,unit,unit_price,total\r\n"
                   "\"b\"\"bb\",\"2 in, plain\",g,0.000000,m,0.000000,0.000000\r\n");
  g_array_unref (solution.bom);
}

static char *
written (double value)
{
  SwRingMark mark = { value, 1, 1 };
  SwSolution solution = { .marks = g_array_new (FALSE, FALSE, sizeof (SwRingMark)) };
  g_autofree char *csv = NULL;
  g_autoptr (GPtrArray) rows = NULL;

  g_array_append_val (solution.marks, mark);
  csv = sw_csv_marks (&solution);
  rows = read_csv (csv);
  g_array_unref (solution.marks);
  return g_strdup (field (rows, 1, 1));
}

/* Worked by hand. */
static void
test_numbers_are_plain_decimals (void)
{
  static const struct {
    double value;
    const char *text;
  } cases[] = {
    { 0, "0.000000" },
    { -0.0, "0.000000" },
    { 2.86, "2.860000" },
    { -1.5, "-1.500000" },
    { 1e-7, "0.0000001" },
    { -6.1e-17, "0.000000" },
    { 0.9999999999999999, "1.000000" },
    { 123456789.125, "123456789.125000" },
    { 1e15, "1000000000000000.000000" },
    { NAN, "" },
    { INFINITY, "" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *text = written (cases[i].value);

    g_assert_cmpstr (text, ==, cases[i].text);
  }
}

static void
test_numbers_read_back_to_a_femtometre (void)
{
  for (int i = 0; i < 10000; i++) {
    double value = g_test_rand_double_range (-400, 400);
    g_autofree char *text = written (value);

    g_assert_cmpfloat_with_epsilon (g_ascii_strtod (text, NULL), value, 1e-15);
    g_assert_cmpuint (strlen (strchr (text, '.') + 1), >=, 6);
  }
}

static void
test_a_comma_locale_changes_nothing (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *plain = sw_csv_marks (solution);
  g_autofree char *before = g_strdup (setlocale (LC_NUMERIC, NULL));

  if (setlocale (LC_NUMERIC, "de_DE.UTF-8") == NULL) {
    g_test_skip ("not run here: no locale with a decimal comma");
    return;
  }
  g_autofree char *german = sw_csv_marks (solution);
  setlocale (LC_NUMERIC, before);
  g_assert_cmpstr (plain, ==, german);
}

static void
test_marks_are_the_solution (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->shape.coverage_deg = 180; /* open: the last mark has no next one */
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *csv = sw_csv_marks (solution);
  g_autoptr (GPtrArray) rows = read_csv (csv);

  assert_head (csv, "strip,azimuth_deg,arc_m,chord_m");
  g_assert_cmpuint (rows->len, ==, 1 + solution->marks->len);
  for (guint i = 0; i < solution->marks->len; i++) {
    const SwRingMark *mark = &g_array_index (solution->marks, SwRingMark, i);

    g_assert_cmpint (whole (rows, i + 1, 0), ==, i + 1);
    g_assert_cmpfloat_with_epsilon (number (rows, i + 1, 1), mark->azimuth_deg, 1e-12);
    g_assert_cmpfloat_with_epsilon (number (rows, i + 1, 2), mark->arc_m, 1e-12);
    if (i + 1 < solution->marks->len)
      g_assert_cmpfloat_with_epsilon (number (rows, i + 1, 3), mark->chord_m, 1e-12);
  }
  g_assert_cmpstr (field (rows, rows->len - 1, 3), ==, "");
}

static void
assert_pixel (const GPtrArray *rows, guint row, SwPoint point, SwAddress at)
{
  g_assert_cmpfloat_with_epsilon (number (rows, row, 2), point.x_m, 1e-12);
  g_assert_cmpfloat_with_epsilon (number (rows, row, 3), point.y_m, 1e-12);
  g_assert_cmpfloat_with_epsilon (number (rows, row, 4), point.z_m, 1e-12);
  g_assert_cmpint (whole (rows, row, 5), ==, at.port);
  g_assert_cmpint (whole (rows, row, 6), ==, at.universe);
  g_assert_cmpint (whole (rows, row, 7), ==, at.channel);
}

static void
assert_strips (const SwSolution *solution, const GPtrArray *rows)
{
  const SwDesign *design = solution->design;
  int pixels = design->strip.pixels;

  for (int i = 0; i < design->shape.strip_count * pixels; i++) {
    int strip = i / pixels + 1;
    int pixel = i % pixels + 1;
    gboolean up = sw_data_runs_up (&solution->data, design, strip);
    int from_ring = up ? pixel : pixels + 1 - pixel;
    guint row = (guint) i + 1;

    g_assert_cmpint (whole (rows, row, 0), ==, strip);
    g_assert_cmpint (whole (rows, row, 1), ==, pixel);
    assert_pixel (rows,
                  row,
                  sw_pixel_point (design, strip, from_ring),
                  sw_data_address (&solution->data, design, strip, pixel));
  }
}

static void
assert_star (const SwSolution *solution, const GPtrArray *rows)
{
  guint first = rows->len - solution->topper_pixels->len;

  for (guint i = 0; i < solution->topper_pixels->len; i++) {
    g_assert_cmpstr (field (rows, first + i, 0), ==, "0");
    g_assert_cmpint (whole (rows, first + i, 1), ==, i + 1);
    assert_pixel (rows,
                  first + i,
                  g_array_index (solution->topper_pixels, SwPoint, i),
                  sw_data_address (&solution->data, solution->design, 0, (int) i + 1));
  }
}

static void
test_pixels_follow_the_data (gconstpointer data)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->data.enter = GPOINTER_TO_INT (data) % 2 == 0 ? SW_ENTER_RING : SW_ENTER_CROWN;
  design->data.path = GPOINTER_TO_INT (data) < 2 ? SW_PATH_SAME_END : SW_PATH_UP_DOWN;
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *csv = sw_csv_pixels (solution);
  g_autoptr (GPtrArray) rows = read_csv (csv);

  assert_head (csv, "strip,pixel,x_m,y_m,z_m,port,universe,channel");
  g_assert_cmpuint (rows->len, ==, 1 + (guint) solution->cone.pixels_total);
  assert_strips (solution, rows);
  assert_star (solution, rows);
}

static void
test_ports_are_the_solution (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *csv = sw_csv_ports (solution);
  g_autoptr (GPtrArray) rows = read_csv (csv);

  assert_head (csv, "port,first_strip,last_strip,pixels,first_universe,last_universe");
  g_assert_cmpuint (rows->len, ==, 1 + (guint) solution->data.ports);
  g_assert_cmpstr (field (rows, rows->len - 1, 1), ==, "0");
  g_assert_cmpstr (field (rows, rows->len - 1, 2), ==, "0");
  g_assert_cmpint (whole (rows, rows->len - 1, 3), ==, design->topper.pixels);
}

static void
test_cuts_name_bar_and_piece (void)
{
  static const SwPiece pieces[] = { { 2, 2 }, { 1, 2 } };
  SwSolution solution = { .cuts = g_ptr_array_new_with_free_func (
                            (GDestroyNotify) sw_cut_plan_free) };
  g_autofree char *csv = NULL;

  g_ptr_array_add (solution.cuts,
                   sw_cut_plan_first_fit ("emt-1", 3.048, 0.003, pieces, 2, NULL));
  csv = sw_csv_cuts (&solution);
  g_assert_cmpstr (csv,
                   ==,
                   "stock,bar,piece,length_m\r\n"
                   "emt-1,1,1,2.000000\r\nemt-1,1,2,1.000000\r\n"
                   "emt-1,2,1,2.000000\r\nemt-1,2,2,1.000000\r\n");
  g_ptr_array_unref (solution.cuts);
}

static void
test_as_built_marks_are_the_solution (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->as_built.ring_length_m = 6.5;
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *csv = sw_csv_as_built_marks (solution);
  g_autoptr (GPtrArray) rows = read_csv (csv);

  assert_head (csv, "strip,arc_m,azimuth_deg,radius_m,slant_m,tail_m");
  g_assert_cmpuint (rows->len, ==, 1 + (guint) design->shape.strip_count);
  for (guint i = 1; i < rows->len; i++) {
    const SwAsBuiltMark *mark =
      &g_array_index (solution->as_built->marks, SwAsBuiltMark, i - 1);

    g_assert_cmpfloat_with_epsilon (number (rows, i, 1), mark->arc_m, 1e-12);
    g_assert_cmpfloat_with_epsilon (number (rows, i, 3), mark->radius_m, 1e-12);
    g_assert_cmpfloat_with_epsilon (number (rows, i, 5), mark->tail_m, 1e-12);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packet/csv/text is quoted as RFC 4180 says",
                   test_text_is_quoted_as_the_rfc_says);
  g_test_add_func ("/packet/csv/numbers are plain decimals", test_numbers_are_plain_decimals);
  g_test_add_func ("/packet/csv/numbers read back to a femtometre",
                   test_numbers_read_back_to_a_femtometre);
  g_test_add_func ("/packet/csv/a comma locale changes nothing",
                   test_a_comma_locale_changes_nothing);
  g_test_add_func ("/packet/csv/marks are the solution", test_marks_are_the_solution);
  for (int i = 0; i < 4; i++) {
    g_autofree char *path = g_strdup_printf ("/packet/csv/pixels follow the data/%d", i);

    g_test_add_data_func (path, GINT_TO_POINTER (i), test_pixels_follow_the_data);
  }
  g_test_add_func ("/packet/csv/ports are the solution", test_ports_are_the_solution);
  g_test_add_func ("/packet/csv/cuts name bar and piece", test_cuts_name_bar_and_piece);
  g_test_add_func ("/packet/csv/as-built marks are the solution",
                   test_as_built_marks_are_the_solution);
  return g_test_run ();
}
