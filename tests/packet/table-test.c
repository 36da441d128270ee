// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/table.h"

#define WIDTH 300.0

typedef struct {
  SwSolution solution;
  SwDesign *design;
  SwPen pen;
  SwFlow *flow;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->design = sw_design_new ();
  fixture->solution = (SwSolution){ .design = fixture->design };
  sw_pen_init (&fixture->pen, &fixture->solution, &sw_language_english);
  fixture->flow = sw_flow_new (&fixture->pen, WIDTH, 400);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  sw_flow_free (fixture->flow);
  sw_pen_clear (&fixture->pen);
  sw_design_unref (fixture->design);
}

static const SwColumn columns[] = {
  { "Name", SW_TEXT_LEFT, 1 },
  { "Count", SW_TEXT_RIGHT, 0 },
  { "Done", SW_TEXT_CENTRE, 0 },
};

static void
add (SwTable *table, const char *name, const char *count)
{
  const char *cells[] = { name, count, SW_CELL_TICK };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

/* What the flow marks, in points; scaled up, because cairo rounds it to whole units. */
#define FINE 100.0

static void
ink_of (Fixture *fixture, double *left, double *right)
{
  cairo_surface_t *record = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  double x, y, width, height;

  fixture->pen.cr = cairo_create (record);
  cairo_scale (fixture->pen.cr, FINE, FINE);
  sw_flow_pages (fixture->flow);
  sw_flow_draw (fixture->flow, &fixture->pen, 0, 0, 0);
  cairo_recording_surface_ink_extents (record, &x, &y, &width, &height);
  *left = x / FINE;
  *right = (x + width) / FINE;
  cairo_destroy (fixture->pen.cr);
  cairo_surface_destroy (record);
}

static double
height_with (Fixture *fixture, const char *name)
{
  g_autoptr (SwFlow) flow = sw_flow_new (&fixture->pen, WIDTH, 400);
  g_autoptr (SwTable) table = sw_table_new (columns, G_N_ELEMENTS (columns));

  add (table, name, "3");
  sw_flow_table (flow, table);
  return sw_flow_height (flow);
}

static void
test_a_long_text_wraps (Fixture *fixture, gconstpointer data)
{
  g_autofree char *words = g_strnfill (200, 'n');

  g_assert_cmpfloat (height_with (fixture, words), >, 2 * height_with (fixture, "n"));
}

/* However long the texts, nothing is drawn outside the table. */
static void
test_ink_stays_inside (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwTable) table = sw_table_new (columns, G_N_ELEMENTS (columns));
  g_autofree char *words = g_strnfill (100, 'w');
  double left, right;

  add (table, words, words);
  add (table, "short", "1");
  sw_flow_table (fixture->flow, table);
  ink_of (fixture, &left, &right);
  g_assert_cmpfloat (left, >=, -0.5);
  g_assert_cmpfloat (right, <=, WIDTH + 0.5);
}

static void
test_the_whole_width_is_used (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwTable) table = sw_table_new (columns, G_N_ELEMENTS (columns));
  double left, right;

  add (table, "a", "1");
  sw_flow_table (fixture->flow, table);
  ink_of (fixture, &left, &right); /* the rule below the head */
  g_assert_cmpfloat (left, <=, 0.5);
  g_assert_cmpfloat (right, >=, WIDTH - 0.5);
}

static void
test_many_rows_take_many_pages (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwTable) table = sw_table_new (columns, G_N_ELEMENTS (columns));

  for (int i = 0; i < 200; i++)
    add (table, "a", "1");
  sw_flow_table (fixture->flow, table);
  g_assert_cmpint (sw_flow_pages (fixture->flow), >=, 200 * 12 / 400);
  g_assert_cmpint (sw_flow_pages (fixture->flow), <=, 200 * 20 / 400);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define CASE(name, function)                                                                   \
  g_test_add ("/packet/table/" name, Fixture, NULL, set_up, function, tear_down)
  CASE ("a long text wraps", test_a_long_text_wraps);
  CASE ("ink stays inside", test_ink_stays_inside);
  CASE ("the whole width is used", test_the_whole_width_is_used);
  CASE ("many rows take many pages", test_many_rows_take_many_pages);
  return g_test_run ();
}
