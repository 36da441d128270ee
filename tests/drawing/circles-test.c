// SPDX-License-Identifier: GPL-3.0-or-later
/* Outside source: cairo's own strokes of the same circles. */
#include "drawing/circles.h"

#include <math.h>
#include <stdlib.h>

#define SIDE 120

static const SwCircle circles[] = {
  { 60.3, 59.8, 41.7 }, /* whole */
  { 20, 100, 60 },      /* over two edges */
  { 60, 60, 3.5 },      /* small */
  { 40, 40, 2.6 },      /* hardly larger than its line */
};

static const SwLineLook looks[] = { { SW_INK_MAIN, 1, 1 },
                                    { SW_INK_MAIN, 0.75, 4.6 },
                                    { SW_INK_TREE, 0.5, 2 } };

static cairo_surface_t *
image_new (int factor)
{
  cairo_surface_t *image =
    cairo_image_surface_create (CAIRO_FORMAT_RGB24, SIDE * factor, SIDE * factor);
  cairo_t *cr = cairo_create (image);

  cairo_surface_set_device_scale (image, factor, factor);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_destroy (cr);
  return image;
}

static void
draw_on (cairo_surface_t *image, const SwCircle *circle, const SwLineLook *look)
{
  cairo_t *cr = cairo_create (image);

  sw_circle_draw (cr, &sw_style_light, circle, look);
  cairo_destroy (cr);
  cairo_surface_flush (image);
}

static void
stroke_on (cairo_surface_t *image, const SwCircle *circle, const SwLineLook *look)
{
  cairo_t *cr = cairo_create (image);

  cairo_arc (cr, circle->x, circle->y, circle->radius, 0, 2 * G_PI);
  cairo_close_path (cr);
  sw_style_set_ink_alpha (&sw_style_light, cr, look->ink, look->alpha);
  cairo_set_line_width (cr, look->width);
  cairo_stroke (cr);
  cairo_destroy (cr);
  cairo_surface_flush (image);
}

static int
blue (cairo_surface_t *image, int x, int y)
{
  return cairo_image_surface_get_data (
    image)[(gsize) y * (gsize) cairo_image_surface_get_stride (image) + 4 * (gsize) x];
}

static void
compare (const SwCircle *circle, const SwLineLook *look, int factor)
{
  cairo_surface_t *direct = image_new (factor), *stroked = image_new (factor);
  double ink = 0, ink_stroked = 0;
  int most = 0;

  draw_on (direct, circle, look);
  stroke_on (stroked, circle, look);
  for (int y = 0; y < SIDE * factor; y++) {
    for (int x = 0; x < SIDE * factor; x++) {
      most = MAX (most, abs (blue (direct, x, y) - blue (stroked, x, y)));
      ink += 255 - blue (direct, x, y);
      ink_stroked += 255 - blue (stroked, x, y);
    }
  }
  g_assert_cmpint (most, <, 40); /* of 255 */
  g_assert_cmpfloat (ink_stroked, >, 255);
  g_assert_cmpfloat_with_epsilon (ink / ink_stroked, 1, circle->radius < 5 ? 0.1 : 0.02);
  cairo_surface_destroy (direct);
  cairo_surface_destroy (stroked);
}

static void
test_as_cairo_strokes_them (void)
{
  for (guint c = 0; c < G_N_ELEMENTS (circles); c++) {
    for (guint l = 0; l < G_N_ELEMENTS (looks); l++) {
      compare (&circles[c], &looks[l], 1);
      compare (&circles[c], &looks[l], 2);
    }
  }
}

/* On paper and in recordings it stays a path. */
static void
test_elsewhere_it_is_a_path (void)
{
  cairo_rectangle_t extents;
  cairo_surface_t *record = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (record);
  double x, y;

  sw_circle_draw (cr, &sw_style_light, &(SwCircle){ 50, 40, 20 }, &looks[0]);
  cairo_destroy (cr);
  cairo_recording_surface_ink_extents (record, &x, &y, &extents.width, &extents.height);
  g_assert_cmpfloat_with_epsilon (x, 29.5, 0.6);
  g_assert_cmpfloat_with_epsilon (y, 19.5, 0.6);
  g_assert_cmpfloat_with_epsilon (extents.width, 41, 1.2);
  cairo_surface_destroy (record);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/circles/as cairo strokes them", test_as_cairo_strokes_them);
  g_test_add_func ("/drawing/circles/elsewhere it is a path", test_elsewhere_it_is_a_path);
  return g_test_run ();
}
