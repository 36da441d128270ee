// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/image-bytes.h"

static gboolean
takes (cairo_format_t format, void (*prepare) (cairo_t *cr))
{
  cairo_surface_t *surface = cairo_image_surface_create (format, 20, 10);
  cairo_t *cr = cairo_create (surface);
  SwImageBytes image;

  if (prepare != NULL)
    prepare (cr);
  gboolean taken = sw_image_bytes_take (cr, &image);
  if (taken)
    g_assert_cmpint (image.width, ==, 20);
  cairo_destroy (cr);
  cairo_surface_destroy (surface);
  return taken;
}

static void
turn (cairo_t *cr)
{
  cairo_rotate (cr, 0.1);
}

static void
shift (cairo_t *cr)
{
  cairo_translate (cr, 3, 0);
}

static void
clip (cairo_t *cr)
{
  cairo_rectangle (cr, 0, 0, 10, 10);
  cairo_clip (cr);
}

static void
test_only_plain_images (void)
{
  g_assert_true (takes (CAIRO_FORMAT_RGB24, NULL));
  g_assert_true (takes (CAIRO_FORMAT_ARGB32, NULL));
  g_assert_false (takes (CAIRO_FORMAT_A8, NULL));
  g_assert_false (takes (CAIRO_FORMAT_RGB24, turn));
  g_assert_false (takes (CAIRO_FORMAT_RGB24, shift));
  g_assert_false (takes (CAIRO_FORMAT_RGB24, clip));
}

/* The light paper's ink #1D2433. */
static void
test_an_ink_as_bytes (void)
{
  g_assert_cmphex (sw_image_bytes_colour (&sw_style_light, SW_INK_MAIN), ==, 0xff1d2433u);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/image-bytes/only plain images", test_only_plain_images);
  g_test_add_func ("/drawing/image-bytes/an ink as bytes", test_an_ink_as_bytes);
  return g_test_run ();
}
