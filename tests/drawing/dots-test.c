// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/dots.h"

static void
draw (cairo_t *cr, double size)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (1);
  SwDots *dots = sw_dots_begin (cr, &sw_style_light, SW_INK_PIXEL, size);

  for (int i = 0; i < 500; i++) /* some of them over the edges */
    sw_dots_add (dots, g_rand_double_range (rand, -5, 125), g_rand_double_range (rand, -5, 95));
  sw_dots_end (dots);
}

static cairo_surface_t *
image_new (int factor)
{
  cairo_surface_t *image =
    cairo_image_surface_create (CAIRO_FORMAT_RGB24, 120 * factor, 90 * factor);

  cairo_surface_set_device_scale (image, factor, factor);
  return image;
}

/* Straight into the bytes, and by way of a recording that cairo plays back as a path. */
static void
test_bytes_and_path_are_the_same (void)
{
  for (int factor = 1; factor <= 2; factor++) {
    for (double size = 1; size <= 3; size++) {
      cairo_surface_t *direct = image_new (factor), *played = image_new (factor);
      cairo_surface_t *record =
        cairo_recording_surface_create (CAIRO_CONTENT_COLOR_ALPHA, NULL);
      cairo_t *cr = cairo_create (direct);
      draw (cr, size);
      cairo_destroy (cr);
      cr = cairo_create (record);
      draw (cr, size);
      cairo_destroy (cr);
      cr = cairo_create (played);
      cairo_set_source_surface (cr, record, 0, 0);
      cairo_paint (cr);
      cairo_destroy (cr);
      cairo_surface_flush (direct);
      cairo_surface_flush (played);
      for (int y = 0; y < 90 * factor; y++) {
        gsize row = (gsize) y * cairo_image_surface_get_stride (direct);
        const guint32 *a =
          (const guint32 *) (gpointer) (cairo_image_surface_get_data (direct) + row);
        const guint32 *b =
          (const guint32 *) (gpointer) (cairo_image_surface_get_data (played) + row);
        for (int x = 0; x < 120 * factor; x++)
          g_assert_cmphex (a[x] & 0xffffff, ==, b[x] & 0xffffff);
      }
      cairo_surface_destroy (direct);
      cairo_surface_destroy (played);
      cairo_surface_destroy (record);
    }
  }
}

/* Under a clip nothing is drawn outside it. */
static void
test_a_clip_is_kept (void)
{
  cairo_surface_t *image = image_new (1);
  cairo_t *cr = cairo_create (image);

  cairo_rectangle (cr, 0, 0, 40, 90);
  cairo_clip (cr);
  draw (cr, 3);
  cairo_destroy (cr);
  cairo_surface_flush (image);
  for (int y = 0; y < 90; y++) {
    const guint32 *row =
      (const guint32 *) (gpointer) (cairo_image_surface_get_data (image) +
                                    (gsize) y * cairo_image_surface_get_stride (image));
    for (int x = 40; x < 120; x++)
      g_assert_cmphex (row[x] & 0xffffff, ==, 0);
  }
  cairo_surface_destroy (image);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/dots/bytes and path are the same",
                   test_bytes_and_path_are_the_same);
  g_test_add_func ("/drawing/dots/a clip is kept", test_a_clip_is_kept);
  return g_test_run ();
}
