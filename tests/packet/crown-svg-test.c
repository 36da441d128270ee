// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/crown-svg.h"

#include <math.h>
#include <string.h>

typedef struct {
  GArray *circles; /* SwHole, in mm as written */
  GString *words;
  char *width, *view_box;
  guint depth;
} Found;

static const char *
attribute (const char **names, const char **values, const char *name)
{
  for (guint i = 0; names[i] != NULL; i++) {
    if (g_str_equal (names[i], name))
      return values[i];
  }
  g_assert_not_reached ();
}

static void
start_cb (GMarkupParseContext *context,
          const char *element,
          const char **names,
          const char **values,
          gpointer data,
          GError **error)
{
  Found *found = data;

  if (g_str_equal (element, "svg")) {
    found->width = g_strdup (attribute (names, values, "width"));
    found->view_box = g_strdup (attribute (names, values, "viewBox"));
  } else if (g_str_equal (element, "circle")) {
    SwHole hole = { g_ascii_strtod (attribute (names, values, "cx"), NULL),
                    g_ascii_strtod (attribute (names, values, "cy"), NULL) };

    g_array_append_val (found->circles, hole);
  }
}

static void
text_cb (GMarkupParseContext *context,
         const char *text,
         gsize length,
         gpointer data,
         GError **error)
{
  g_string_append_len (((Found *) data)->words, text, (gssize) length);
}

static void
read_svg (Found *found, const char *svg)
{
  static const GMarkupParser parser = { .start_element = start_cb, .text = text_cb };
  g_autoptr (GError) error = NULL;

  *found = (Found){ .circles = g_array_new (FALSE, FALSE, sizeof (SwHole)),
                    .words = g_string_new (NULL) };
  g_autoptr (GMarkupParseContext) context =
    g_markup_parse_context_new (&parser, 0, found, NULL);
  g_markup_parse_context_parse (context, svg, -1, &error);
  g_assert_no_error (error);
  g_markup_parse_context_end_parse (context, &error);
  g_assert_no_error (error);
}

static void
found_clear (Found *found)
{
  g_array_unref (found->circles);
  g_string_free (found->words, TRUE);
  g_free (found->width);
  g_free (found->view_box);
}

static SwSolution *
solve (SwDesign *design)
{
  g_autoptr (GError) error = NULL;
  SwSolution *solution = sw_solution_new (design, sw_catalogue_builtin (NULL), &error);

  g_assert_no_error (error);
  return solution;
}

/* One circle a strip, x as in the table, y turned down: top side up, the viewer's side below.
 */
static void
test_holes_stand_where_the_table_says (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *svg = sw_crown_svg (solution, &sw_language_english);
  Found found;

  read_svg (&found, svg);
  g_assert_cmpuint (found.circles->len, ==, (guint) design->shape.strip_count);
  for (guint i = 0; i < found.circles->len; i++) {
    const SwHole *hole = &g_array_index (solution->crown, SwHole, i);
    const SwHole *circle = &g_array_index (found.circles, SwHole, i);

    g_assert_cmpfloat_with_epsilon (circle->x_m, hole->x_m * 1000, 1e-6);
    g_assert_cmpfloat_with_epsilon (circle->y_m, -hole->y_m * 1000, 1e-6);
  }
  found_clear (&found);
}

/* Worked by hand: four strips on 100 mm, full tree facing the viewer: strip 1 at the back, then
 * anticlockwise from above: left, front, right. On the page, y grows downwards: back = −100.
 */
static void
test_four_holes_by_hand (void)
{
  static const SwHole by_hand[] = { { 0, -100 }, { -100, 0 }, { 0, 100 }, { 100, 0 } };
  g_autoptr (SwDesign) design = sw_design_new ();

  design->shape.strip_count = 4;
  design->shape.crown_radius_m = 0.12;
  design->crown.hook_reach_m = 0.02;
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *svg = sw_crown_svg (solution, &sw_language_english);
  Found found;

  read_svg (&found, svg);
  for (guint i = 0; i < G_N_ELEMENTS (by_hand); i++) {
    const SwHole *circle = &g_array_index (found.circles, SwHole, i);

    g_assert_cmpfloat_with_epsilon (circle->x_m, by_hand[i].x_m, 1e-6);
    g_assert_cmpfloat_with_epsilon (circle->y_m, by_hand[i].y_m, 1e-6);
  }
  found_clear (&found);
}

/* Source: SVG 1.1, 7.2 and 7.7: with width in mm and a viewBox of as many units, one unit is
 * one millimetre. */
static void
test_one_unit_is_a_millimetre (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *svg = sw_crown_svg (solution, &sw_language_english);
  Found found;
  char *end;

  read_svg (&found, svg);
  g_auto (GStrv) box = g_strsplit (found.view_box, " ", -1);
  g_assert_cmpuint (g_strv_length (box), ==, 4);
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (found.width, &end),
                                  g_ascii_strtod (box[2], NULL),
                                  1e-9);
  g_assert_cmpstr (end, ==, "mm");
  found_clear (&found);
}

static void
test_the_title_cannot_break_the_file (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  g_free (design->title);
  design->title = g_strdup ("<a> & \"b\"\x01\n]]>");
  g_autoptr (SwSolution) solution = solve (design);
  g_autofree char *svg = sw_crown_svg (solution, &sw_language_english);
  Found found;

  read_svg (&found, svg);
  g_assert_nonnull (strstr (found.words->str, "<a> & \"b\"  ]]>"));
  g_assert_null (strchr (svg, '\x01'));
  g_assert_null (strstr (svg, "&#x1;")); /* XML 1.0, 2.2: not even as a reference */
  found_clear (&found);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packet/crown-svg/holes stand where the table says",
                   test_holes_stand_where_the_table_says);
  g_test_add_func ("/packet/crown-svg/four holes by hand", test_four_holes_by_hand);
  g_test_add_func ("/packet/crown-svg/one unit is a millimetre", test_one_unit_is_a_millimetre);
  g_test_add_func ("/packet/crown-svg/the title cannot break the file",
                   test_the_title_cannot_break_the_file);
  return g_test_run ();
}
