// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/top-view.h"
#include "drawing/view.h"
#include "trees.h"

#include <math.h>

static void
test_places_go_there_and_back (void)
{
  SwView view = { 600, 500, 211.5, 430, 87.25 };

  for (double m = -3; m < 5; m += 0.37) {
    g_assert_cmpfloat_with_epsilon (sw_view_x_m (&view, sw_view_x (&view, m)), m, 1e-12);
    g_assert_cmpfloat_with_epsilon (sw_view_up_m (&view, sw_view_y (&view, m)), m, 1e-12);
  }
}

/* Ring, star and ground lie inside the picture, whatever the tree. */
static void
test_the_tree_fits_its_picture (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (4);

  for (int i = 0; i < 200; i++) {
    g_autoptr (SwSolution) solution = tree_random (rand);
    double width = g_rand_double_range (rand, 200, 1200),
           height = g_rand_double_range (rand, 180, 900);
    double ring_m = solution->design->shape.ring_radius_m;
    SwView side = sw_side_view_fit (solution, width, height),
           top = sw_top_view_fit (solution, width, height);
    g_assert_cmpfloat (sw_view_x (&side, -ring_m), >=, 0);
    g_assert_cmpfloat (sw_view_x (&side, ring_m), <=, width);
    g_assert_cmpfloat (sw_view_y (&side, solution->cone.overall_height_m), >=, 0);
    g_assert_cmpfloat (side.y0, <=, height);
    g_assert_cmpfloat (top.x0 - ring_m * top.scale, >=, 0);
    g_assert_cmpfloat (top.y0 - ring_m * top.scale, >=, 0);
  }
}

/* Nothing is drawn outside what cairo can hold, and no drawing leaves cairo in an error. */
static void
test_every_tree_can_be_drawn (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (6);
  static const SwStyle *const styles[] = { &sw_style_light, &sw_style_dark, &sw_style_paper };

  for (int i = 0; i < 60; i++) {
    g_autoptr (SwSolution) solution = tree_random (rand);
    cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 300, 260);
    cairo_t *cr = cairo_create (image);
    SwView side = sw_side_view_fit (solution, 300, 260),
           top = sw_top_view_fit (solution, 300, 260);
    SwPicture picture = { &side, styles[i % 3], &sw_language_english, NULL, SW_DRAW_ALL };
    sw_side_view_draw (cr, &picture, solution);
    sw_side_view_draw_ghost (cr, &picture, solution);
    picture.view = &top;
    sw_top_view_draw (cr, &picture, solution);
    sw_top_view_draw_ghost (cr, &picture, solution);
    g_assert_cmpint (cairo_status (cr), ==, CAIRO_STATUS_SUCCESS);
    cairo_destroy (cr);
    cairo_surface_destroy (image);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/view/places go there and back", test_places_go_there_and_back);
  g_test_add_func ("/drawing/view/the tree fits its picture", test_the_tree_fits_its_picture);
  g_test_add_func ("/drawing/view/every tree can be drawn", test_every_tree_can_be_drawn);
  return g_test_run ();
}
