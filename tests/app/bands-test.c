// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/bands.h"

#include <adwaita.h>

#define WIDTH 300
#define HEIGHT 300

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

/* 300 units high: four bands, 96 each but the last. */
static void
test_only_what_changed_is_made_anew (void)
{
  g_autoptr (SwBands) bands = sw_bands_new ();
  cairo_surface_t *image = image_new (1);

  g_assert_cmpuint (sw_bands_update (bands, image, 1), ==, 4);
  g_assert_cmpuint (sw_bands_update (bands, image, 1), ==, 0);
  dot (image, 10, 100);
  g_assert_cmpuint (sw_bands_update (bands, image, 1), ==, 1);
  dot (image, 299, 0);
  dot (image, 0, 299);
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

/* Returns: how many nodes are shown; `kept` counts those of the snapshot before. */
static guint
count_nodes (SwBands *bands, GskRenderNode **last, guint *kept)
{
  GtkSnapshot *snapshot = gtk_snapshot_new ();
  guint n;

  sw_bands_append (bands, snapshot);
  GskRenderNode *all = gtk_snapshot_free_to_node (snapshot);
  n = gsk_container_node_get_n_children (all);
  *kept = 0;
  for (guint i = 0; i < n && *last != NULL; i++) {
    for (guint k = 0; k < gsk_container_node_get_n_children (*last); k++)
      *kept += gsk_container_node_get_child (all, i) == gsk_container_node_get_child (*last, k);
  }
  g_clear_pointer (last, gsk_render_node_unref);
  *last = all;
  return n;
}

/* What changes in a band becomes a part of its own, and only it is made anew from then on. */
static void
test_a_small_change_is_a_small_part (void)
{
  g_autoptr (SwBands) bands = sw_bands_new ();
  g_autoptr (GskRenderNode) last = NULL;
  cairo_surface_t *image = image_new (1);
  guint kept;

  sw_bands_update (bands, image, 1);
  g_assert_cmpuint (count_nodes (bands, &last, &kept), ==, 4);
  dot (image, 100, 100);
  sw_bands_update (bands, image, 1);
  g_assert_cmpuint (count_nodes (bands, &last, &kept), ==, 6);
  g_assert_cmpuint (kept, ==, 3);
  dot (image, 101, 101);
  sw_bands_update (bands, image, 1);
  g_assert_cmpuint (count_nodes (bands, &last, &kept), ==, 6);
  g_assert_cmpuint (kept, ==, 5);
  dot (image, 1, 101);
  dot (image, 299, 101);
  sw_bands_update (bands, image, 1);
  g_assert_cmpuint (count_nodes (bands, &last, &kept), ==, 4);
  cairo_surface_destroy (image);
}

/* What the nodes show is the image, also after the image went on. */
static void
test_a_band_shows_its_pixels (void)
{
  g_autoptr (SwBands) bands = sw_bands_new ();
  cairo_surface_t *image = image_new (1), *shown = image_new (1);
  GtkSnapshot *snapshot = gtk_snapshot_new ();

  sw_bands_update (bands, image, 1);
  dot (image, 150, 130);
  sw_bands_update (bands, image, 1);
  dot (image, 180, 130);
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
  g_assert_cmpuint (bytes[130 * stride + 180 * 4], ==, 255);
  g_assert_cmpuint (bytes[130 * stride + 151 * 4], ==, 0);
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
  g_test_add_func ("/app/bands/a small change is a small part",
                   test_a_small_change_is_a_small_part);
  g_test_add_func ("/app/bands/another size is all new", test_another_size_is_all_new);
  g_test_add_func ("/app/bands/a band shows its pixels", test_a_band_shows_its_pixels);
  return g_test_run ();
}
