// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/frame.h"

/* Source: ISO 5455 for 1:20, 1:50; an architect's scale ruler for 1:24 (half an inch a foot)
 * and 1:48. Points a metre by hand: 72/0.0254/scale.
 */
static void
test_scales_are_those_of_rulers (void)
{
  static const struct {
    SwUnits units;
    double most;
    const char *label;
    int scale;
  } cases[] = {
    { SW_UNITS_METRIC, 72 / 0.0254 / 20, "1:20", 20 },
    { SW_UNITS_METRIC, 72 / 0.0254 / 20.1, "1:25", 25 },
    { SW_UNITS_METRIC, 72 / 0.0254 / 49, "1:50", 50 },
    { SW_UNITS_US, 72 / 0.0254 / 17, "1:24", 24 },
    { SW_UNITS_US, 72 / 0.0254 / 33, "1:48", 48 },
    { SW_UNITS_US, 1e9, "1:1", 1 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    char label[16];
    double scale = sw_frame_scale (cases[i].units, cases[i].most, label);

    g_assert_cmpstr (label, ==, cases[i].label);
    g_assert_cmpfloat_with_epsilon (scale, 72 / 0.0254 / cases[i].scale, 1e-9);
  }
}

/* A title of 200 wide characters takes room from the sheet, not from the frame. */
static void
test_a_long_title_takes_its_room (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwSolution) solution = sw_solution_new (design, sw_catalogue_builtin (NULL), NULL);
  g_autofree char *wide = g_strnfill (200, 'W');
  SwPen pen;
  SwBox area, less;

  sw_pen_init (&pen, solution, &sw_language_english);
  area = sw_frame_area (&pen, 612, 792);
  g_free (solution->design->title);
  solution->design->title = g_steal_pointer (&wide);
  less = sw_frame_area (&pen, 612, 792);
  g_assert_cmpfloat_with_epsilon (less.width, area.width, 1e-9);
  g_assert_cmpfloat (less.height, <, area.height);
  g_assert_cmpfloat (less.height, >, 600);
  sw_pen_clear (&pen);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packet/frame/scales are those of rulers", test_scales_are_those_of_rulers);
  g_test_add_func ("/packet/frame/a long title takes its room",
                   test_a_long_title_takes_its_room);
  return g_test_run ();
}
