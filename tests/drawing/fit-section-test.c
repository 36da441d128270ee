// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/fit-section.h"
#include "engine/catalogue.h"
#include "engine/starts.h"

#include <math.h>
#include <string.h>

#define SCALE 1000.0 /* a unit a millimetre */
#define FAR 5000.0

typedef struct {
  SwSectionSize (*size) (const SwSolution *solution);
  void (*draw) (cairo_t *cr, const SwPicture *picture, const SwSolution *solution, double x);
} Kind;

static const Kind crown = { sw_crown_section_size, sw_crown_section_draw };
static const Kind sleeve = { sw_sleeve_section_size, sw_sleeve_section_draw };

/* What is inked left of the axis: leaders and numbers stand right of it. */
static cairo_rectangle_t
ink_of (const Kind *kind, const SwSolution *solution)
{
  SwSectionSize size = kind->size (solution);
  SwView view = { .x0 = 0, .y0 = 0, .scale = SCALE };
  SwPicture picture = { .view = &view,
                        .style = &sw_style_paper,
                        .language = &sw_language_english };
  cairo_rectangle_t left = { -FAR, -FAR, FAR, 2 * FAR }, ink;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &left);
  cairo_t *cr = cairo_create (surface);

  g_assert_cmpfloat (size.half_m, >, 0);
  kind->draw (cr, &picture, solution, FAR / 2);
  g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

static SwSolution *
solve_start (const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = sw_start_new (name, &error);
  SwSolution *solution = sw_solution_new (design, sw_catalogue_builtin (NULL), &error);

  g_assert_no_error (error);
  return solution;
}

static void
check_fills (const Kind *kind, const SwSolution *solution)
{
  SwSectionSize size = kind->size (solution);
  cairo_rectangle_t ink = ink_of (kind, solution);

  g_assert_cmpfloat_with_epsilon (-ink.x, size.half_m * SCALE, 2);
  g_assert_cmpfloat_with_epsilon (-ink.y, size.top_m * SCALE, 2);
  g_assert_cmpfloat_with_epsilon (ink.y + ink.height, -size.lowest_m * SCALE, 2);
}

static void
test_sections_fill_their_size (void)
{
  for (guint k = 0; k < sw_n_starts; k++) {
    g_autoptr (SwSolution) solution = solve_start (sw_starts[k].name);
    check_fills (&crown, solution);
    check_fills (&sleeve, solution);
  }
}

/* Worked by hand. Lawn: holes on 130 mm and 20 mm of plate outside them; 6 mm of plate, 2.34 in
 * of fittings and half of 90 mm above; 1.00 in of flange and 90 mm below. Sleeve: 350 and 80 mm
 * up, 38.1 mm of board below; a flange of 7 in and 10 mm.
 */
static void
test_sizes_of_the_lawn (void)
{
  g_autoptr (SwSolution) lawn = solve_start ("lawn");
  SwSectionSize top = sw_crown_section_size (lawn), foot = sw_sleeve_section_size (lawn);

  g_assert_cmpfloat_with_epsilon (top.half_m, 0.150, 1e-9);
  g_assert_cmpfloat_with_epsilon (top.top_m, 0.006 + 2.34 * 0.0254 + 0.045, 1e-9);
  g_assert_cmpfloat_with_epsilon (top.lowest_m, -0.0254 - 0.09, 1e-9);
  g_assert_cmpfloat_with_epsilon (foot.top_m, 0.43, 1e-9);
  g_assert_cmpfloat_with_epsilon (foot.lowest_m, -0.0381, 1e-9);
  g_assert_cmpfloat_with_epsilon (foot.half_m, 3.5 * 0.0254 + 0.01, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/fit-section/sections fill their size",
                   test_sections_fill_their_size);
  g_test_add_func ("/drawing/fit-section/sizes of the lawn", test_sizes_of_the_lawn);
  return g_test_run ();
}
