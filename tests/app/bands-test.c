// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bands.h"

#include <adwaita.h>

#define WIDTH 300
#define HEIGHT 200

static cairo_surface_t *
image_new (int factor)
{
  return cairo_image_surface_create (CAIRO_FORMAT_RGB24, WIDTH * factor, HEIGHT * factor);
}

static void
dot (cairo_surface_t *image, int x, int y)
{
  cairo_t *cr = cairo_create (image);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_rectangle (cr, x, y, 1, 1);
  cairo_fill (cr);
  cairo_destroy (cr);
}

/* 200 units high: four bands, 64 each but the last. */
static void
test_only_what_changed_is_made_anew (void)
{
  g_autoptr (SwBands) bands = sw_bands_new ();
  cairo_surface_t *image = image_new (1);

  g_assert_cmpuint (sw_bands_update (bands, image, 1), ==, 4);
  g_assert_cmpuint (sw_bands_update (bands, image, 1), ==, 0);
  dot (image, 10, 70);
  g_assert_cmpuint (sw_bands_update (bands, image, 1), ==, 1);
  dot (image, 299, 0);
  dot (image, 0, 199);
  g_assert_cmpuint (sw_bands_update (bands, image, 1), ==, 2);
  cairo_surface_destroy (image);
}

static void
test_another_size_is_all_new (void)
{
  g_autoptr (SwBands) bands = sw_bands_new ();
  cairo_surface_t *image = image_new (1), *fine = image_new (2);

  g_assert_cmpuint (sw_bands_update (bands, image, 1), ==, 4);
  g_assert_cmpuint (sw_bands_update (bands, fine, 2), ==, 4);
  g_assert_cmpuint (sw_bands_update (bands, fine, 2), ==, 0);
  cairo_surface_destroy (image);
  cairo_surface_destroy (fine);
}

/* What the nodes show is the image, also after the image went on. */
static void
test_a_band_shows_its_pixels (void)
{
  g_autoptr (SwBands) bands = sw_bands_new ();
  cairo_surface_t *image = image_new (1), *shown = image_new (1);
  GtkSnapshot *snapshot = gtk_snapshot_new ();

  dot (image, 150, 130);
  sw_bands_update (bands, image, 1);
  dot (image, 20, 20);
  sw_bands_append (bands, snapshot);
  g_autoptr (GskRenderNode) node = gtk_snapshot_free_to_node (snapshot);
  cairo_t *cr = cairo_create (shown);
  gsk_render_node_draw (node, cr);
  cairo_destroy (cr);
  cairo_surface_flush (shown);
  gsize stride = (gsize) cairo_image_surface_get_stride (shown);
  const guchar *bytes = cairo_image_surface_get_data (shown);
  g_assert_cmpuint (bytes[130 * stride + 150 * 4], ==, 255);
  g_assert_cmpuint (bytes[20 * stride + 20 * 4], ==, 0);
  cairo_surface_destroy (image);
  cairo_surface_destroy (shown);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  g_test_add_func ("/app/bands/only what changed is made anew",
                   test_only_what_changed_is_made_anew);
  g_test_add_func ("/app/bands/another size is all new", test_another_size_is_all_new);
  g_test_add_func ("/app/bands/a band shows its pixels", test_a_band_shows_its_pixels);
  return g_test_run ();
}
