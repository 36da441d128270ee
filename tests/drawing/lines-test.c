// SPDX-License-Identifier: GPL-3.0-or-later
/* Outside source: cairo's own strokes of the same lines. */
#include "drawing/lines.h"

#include <math.h>
#include <stdlib.h>

#define WIDTH 120
#define HEIGHT 90

static const SwLineLook look = { SW_INK_TREE, 0.85, 1 };

/* Every direction, some of them over the edges. */
static void
draw_fan (cairo_t *cr)
{
  SwLines *lines = sw_lines_begin (cr, &sw_style_light, &look);

  for (int i = 0; i < 24; i++) {
    double angle = i * G_PI / 12 + 0.03;
    sw_lines_add (lines,
                  60 + 12 * cos (angle),
                  45 + 12 * sin (angle),
                  60 + 70 * cos (angle),
                  45 + 70 * sin (angle));
  }
  sw_lines_end (lines);
}

static void
draw_cross (cairo_t *cr)
{
  SwLines *lines = sw_lines_begin (cr, &sw_style_light, &look);

  sw_lines_add (lines, 10.5, 2, 10.5, 20);
  sw_lines_add (lines, 2, 10.5, 20, 10.5);
  sw_lines_end (lines);
}

static cairo_surface_t *
image_new (int factor)
{
  cairo_surface_t *image =
    cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH * factor, HEIGHT * factor);
  cairo_t *cr = cairo_create (image);

  cairo_surface_set_device_scale (image, factor, factor);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_destroy (cr);
  return image;
}

static void
draw_on (cairo_surface_t *image, void (*draw) (cairo_t *cr))
{
  cairo_t *cr = cairo_create (image);

  draw (cr);
  cairo_destroy (cr);
  cairo_surface_flush (image);
}

static void
play_on (cairo_surface_t *image, void (*draw) (cairo_t *cr))
{
  cairo_surface_t *record = cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
  cairo_t *cr = cairo_create (record);

  draw (cr);
  cairo_destroy (cr);
  cr = cairo_create (image);
  cairo_set_source_surface (cr, record, 0, 0);
  cairo_paint (cr);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  cairo_surface_destroy (record);
}

static const guchar *
pixel (cairo_surface_t *image, int x, int y)
{
  return cairo_image_surface_get_data (image) +
         (gsize) y * (gsize) cairo_image_surface_get_stride (image) + 4 * (gsize) x;
}

static void
test_as_cairo_strokes_them (void)
{
  for (int factor = 1; factor <= 2; factor++) {
    cairo_surface_t *direct = image_new (factor), *played = image_new (factor);
    double sum = 0;
    int most = 0;
    draw_on (direct, draw_fan);
    play_on (played, draw_fan);
    for (int y = 0; y < HEIGHT * factor; y++) {
      for (int x = 0; x < WIDTH * factor; x++) {
        int off = abs (*pixel (direct, x, y) - *pixel (played, x, y));
        most = MAX (most, off);
        sum += off;
      }
    }
    g_assert_cmpint (most, <, 64); /* at a line's corner, of 255 */
    g_assert_cmpfloat (sum / (WIDTH * HEIGHT * factor * factor), <, 1);
    cairo_surface_destroy (direct);
    cairo_surface_destroy (played);
  }
}

/* 85 % of the ink over white, on the crossing as beside it: 255 − 0.85·(255 − 0x4F) = 105. */
static void
test_crossings_are_no_darker (void)
{
  cairo_surface_t *image = image_new (1);

  draw_on (image, draw_cross);
  g_assert_cmpint (*pixel (image, 10, 5), ==, *pixel (image, 10, 10));
  g_assert_cmpint (abs (*pixel (image, 10, 10) - 105), <=, 1);
  g_assert_cmpint (*pixel (image, 8, 5), ==, 255);
  cairo_surface_destroy (image);
}

static void
test_a_line_has_its_length (void)
{
  cairo_surface_t *image = image_new (1);
  double ink = 0;

  draw_on (image, draw_cross);
  for (int y = 0; y < HEIGHT; y++)
    ink += (255 - *pixel (image, 10, y)) / (255 - 105.0);
  g_assert_cmpfloat (fabs (ink - 18), <, 0.2);
  cairo_surface_destroy (image);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/lines/as cairo strokes them", test_as_cairo_strokes_them);
  g_test_add_func ("/drawing/lines/crossings are no darker", test_crossings_are_no_darker);
  g_test_add_func ("/drawing/lines/a line has its length", test_a_line_has_its_length);
  return g_test_run ();
}
