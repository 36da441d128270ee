// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/pen.h"

#include <math.h>

typedef struct {
  SwDesign *design;
  SwSolution *solution;
  SwPen pen;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->design = sw_design_new ();
  fixture->solution = sw_solution_new (fixture->design, sw_catalogue_builtin (NULL), NULL);
  sw_pen_init (&fixture->pen, fixture->solution, data);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  sw_pen_clear (&fixture->pen);
  sw_solution_unref (fixture->solution);
  sw_design_unref (fixture->design);
}

/* Worked by hand. */
static void
test_decimals (Fixture *fixture, gconstpointer data)
{
  static const struct {
    double value;
    int decimals;
    const char *text;
  } cases[] = {
    { 12.345, 2, "12.35" },    { -0.04, 1, "0.0" }, { -0.06, 1, "-0.1" },
    { 1234567, 0, "1234567" }, { -0.0, 0, "0" },    { 1e300, 0, NULL },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *text = sw_pen_decimal (&fixture->pen, cases[i].value, cases[i].decimals);

    if (cases[i].text != NULL)
      g_assert_cmpstr (text, ==, cases[i].text);
  }
}

static void
test_a_decimal_comma (Fixture *fixture, gconstpointer data)
{
  g_autofree char *text = sw_pen_decimal (&fixture->pen, 0.5, 1);

  g_assert_cmpstr (text, ==, "0,5");
}

static void
test_absent_is_a_dash (Fixture *fixture, gconstpointer data)
{
  g_autofree char *absent = sw_pen_number_or_dash (&fixture->pen, NAN, SW_QUANTITY_POWER);
  g_autofree char *there = sw_pen_number_or_dash (&fixture->pen, 3, SW_QUANTITY_POWER);

  g_assert_cmpstr (absent, ==, "–");
  g_assert_cmpstr (there, ==, "3\u00a0W");
}

/* Twice the size is twice as wide to the last digit: nothing is rounded to pixels. */
static void
test_text_is_not_hinted (Fixture *fixture, gconstpointer data)
{
  g_autoptr (PangoLayout) small =
    sw_pen_layout (&fixture->pen, &(SwWriting){ .size = 7.3 }, "Whole strips fill a port");
  g_autoptr (PangoLayout) large =
    sw_pen_layout (&fixture->pen, &(SwWriting){ .size = 73 }, "Whole strips fill a port");

  g_assert_cmpfloat_with_epsilon (sw_layout_width (large) / sw_layout_width (small), 10, 0.01);
}

static void
test_one_line_stays_inside (Fixture *fixture, gconstpointer data)
{
  SwWriting writing = { .size = 9, .width = 40, .one_line = TRUE };
  g_autoptr (PangoLayout) layout =
    sw_pen_layout (&fixture->pen, &writing, "Whole strips fill a port\nin order");

  g_assert_cmpint (pango_layout_get_line_count (layout), ==, 1);
  g_assert_cmpfloat (sw_layout_width (layout), <=, 40);
}

int
main (int argc, char **argv)
{
  static const SwLanguage comma = { .code = "de", .decimal = "," };

  g_test_init (&argc, &argv, NULL);
#define CASE(name, language, function)                                                         \
  g_test_add ("/packet/pen/" name, Fixture, language, set_up, function, tear_down)
  CASE ("decimals", &sw_language_english, test_decimals);
  CASE ("a decimal comma", &comma, test_a_decimal_comma);
  CASE ("absent is a dash", &sw_language_english, test_absent_is_a_dash);
  CASE ("text is not hinted", &sw_language_english, test_text_is_not_hinted);
  CASE ("one line stays inside", &sw_language_english, test_one_line_stays_inside);
  return g_test_run ();
}
