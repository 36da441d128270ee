// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/foot-view.h"
#include "engine/catalogue.h"
#include "engine/starts.h"

#include <math.h>

#define SCALE 1000.0 /* a unit a millimetre */
#define FAR 5000.0

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
draw_plan (cairo_t *cr, const SwPicture *picture, const SwSolution *solution)
{
  sw_foot_plan_draw (cr, picture, solution);
}

static void
draw_lap (cairo_t *cr, const SwPicture *picture, const SwSolution *solution)
{
  sw_half_lap_draw (cr, picture, solution, &(SwLapTexts){ "a", "b", "c" });
}

typedef void (*Draw) (cairo_t *cr, const SwPicture *picture, const SwSolution *solution);

static cairo_rectangle_t
ink_of (Draw draw, const SwSolution *solution)
{
  SwView view = { .x0 = 0, .y0 = 0, .scale = SCALE };
  SwPicture picture = { .view = &view,
                        .style = &sw_style_paper,
                        .language = &sw_language_english };
  cairo_rectangle_t all = { -FAR, -FAR, 2 * FAR, 2 * FAR }, ink;
  cairo_surface_t *surface = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, &all);
  cairo_t *cr = cairo_create (surface);

  draw (cr, &picture, solution);
  cairo_recording_surface_ink_extents (surface, &ink.x, &ink.y, &ink.width, &ink.height);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return ink;
}

/* Worked by hand: arms of 0.95 m reach farther than slabs of 16 in whose middle is 16 in out
 * (609.6 mm); the Porch's arms of 0.55 m do not.
 */
static void
test_plan_shows_arms_and_slabs (void)
{
  g_autoptr (SwSolution) lawn = solve_start ("lawn");
  g_autoptr (SwSolution) porch = solve_start ("porch");

  g_assert_cmpfloat_with_epsilon (sw_foot_plan_half_m (lawn), 0.95, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_foot_plan_half_m (porch), 0.6096, 1e-12);
  g_assert_cmpfloat_with_epsilon (ink_of (draw_plan, lawn).width, 1900, 4);
  g_assert_cmpfloat_with_epsilon (ink_of (draw_plan, porch).height, 1219.2, 4);
}

/* Two boards of 1-1/2 in (ALSC PS 20) and six of room between them. */
static void
test_boards_lie_apart (void)
{
  g_autoptr (SwSolution) lawn = solve_start ("lawn");
  cairo_rectangle_t ink = ink_of (draw_lap, lawn);

  g_assert_cmpfloat_with_epsilon (sw_half_lap_height_m (lawn), 8 * 0.0381, 1e-12);
  g_assert_cmpfloat_with_epsilon (-ink.y, 8 * 38.1, 2);
  g_assert_cmpfloat_with_epsilon (ink.x, 0, 3);
}

static void
test_nothing_in_the_ground (void)
{
  g_autoptr (SwSolution) landmark = solve_start ("landmark");

  g_assert_cmpfloat (sw_half_lap_height_m (landmark), <=, 0);
  g_assert_cmpfloat (ink_of (draw_lap, landmark).width, <=, 0);
  g_assert_cmpfloat (ink_of (draw_plan, landmark).width, <=, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/foot-view/the plan shows arms and slabs",
                   test_plan_shows_arms_and_slabs);
  g_test_add_func ("/drawing/foot-view/boards lie apart", test_boards_lie_apart);
  g_test_add_func ("/drawing/foot-view/nothing in the ground", test_nothing_in_the_ground);
  return g_test_run ();
}
