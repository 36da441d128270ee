// SPDX-License-Identifier: GPL-3.0-or-later
/* Worked by hand: similar triangles. */
#include "drawing/zoom.h"

static const SwView whole = { 400, 300, 200, 280, 50 };

static void
test_what_is_under_the_pointer_stays (void)
{
  SwZoom zoom = { 0 };
  SwView before = sw_zoom_view (&zoom, &whole);

  zoom = sw_zoom_at (&zoom, &whole, 3, 230, 100);
  SwView near = sw_zoom_view (&zoom, &whole);
  g_assert_cmpfloat_with_epsilon (near.scale, 150, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_view_x_m (&near, 230), sw_view_x_m (&before, 230), 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_view_up_m (&near, 100),
                                  sw_view_up_m (&before, 100),
                                  1e-12);
  zoom = sw_zoom_at (&zoom, &whole, 1, 230, 100);
  SwView again = sw_zoom_view (&zoom, &whole);
  g_assert_cmpmem (&again, sizeof again, &whole, sizeof whole);
}

static void
test_the_factor_has_ends (void)
{
  SwZoom zoom = { 1, 0, 0 };

  g_assert_cmpfloat_with_epsilon (sw_zoom_at (&zoom, &whole, 99, 0, 0).factor,
                                  SW_ZOOM_MOST,
                                  1e-12);
  g_assert_cmpfloat_with_epsilon (sw_zoom_at (&zoom, &whole, 0.1, 0, 0).factor, 1, 1e-12);
}

/* Twice as near, the picture is 800 by 600: it shifts by 0 … 400 and 0 … 300. */
static void
test_the_picture_stays_in_sight (void)
{
  SwZoom zoom = { 2, 0, 0 };

  zoom = sw_zoom_shifted (&zoom, &whole, -1000, -100);
  g_assert_cmpfloat_with_epsilon (zoom.shift_x, -400, 1e-12);
  g_assert_cmpfloat_with_epsilon (zoom.shift_y, -100, 1e-12);
  zoom = sw_zoom_shifted (&zoom, &whole, 1000, 1000);
  g_assert_cmpfloat_with_epsilon (zoom.shift_x, 0, 1e-12);
  g_assert_cmpfloat_with_epsilon (zoom.shift_y, 0, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/zoom/what is under the pointer stays",
                   test_what_is_under_the_pointer_stays);
  g_test_add_func ("/drawing/zoom/the factor has ends", test_the_factor_has_ends);
  g_test_add_func ("/drawing/zoom/the picture stays in sight", test_the_picture_stays_in_sight);
  return g_test_run ();
}
