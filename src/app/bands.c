// SPDX-License-Identifier: GPL-3.0-or-later
/* A band's render node is made anew when its pixels differ and kept otherwise; GTK compares the
 * nodes of two frames and paints only where they differ.
 */
#include "app/bands.h"

#include <string.h>

#define HEIGHT 64 /* units */

typedef struct {
  int y, height;           /* pixels */
  cairo_surface_t *pixels; /* owned: never written to once the node shows it */
  GskRenderNode *node;     /* owned */
} Band;

struct SwBands {
  int width, height, factor; /* pixels, and how many a unit */
  gsize stride;              /* of the image */
  GArray *bands;             /* owned: Band */
};

static void
band_clear (gpointer data)
{
  Band *band = data;

  g_clear_pointer (&band->node, gsk_render_node_unref);
  g_clear_pointer (&band->pixels, cairo_surface_destroy);
}

SwBands *
sw_bands_new (void)
{
  SwBands *self = g_new0 (SwBands, 1);

  self->bands = g_array_new (FALSE, TRUE, sizeof (Band));
  g_array_set_clear_func (self->bands, band_clear);
  return self;
}

void
sw_bands_free (SwBands *self)
{
  g_array_unref (self->bands);
  g_free (self);
}

static void
divide (SwBands *self)
{
  g_array_set_size (self->bands, 0);
  for (int y = 0; y < self->height; y += HEIGHT * self->factor) {
    Band band = { y, MIN (HEIGHT * self->factor, self->height - y), NULL, NULL };
    g_array_append_val (self->bands, band);
  }
}

/* cairo would clear a surface of its own first. */
static cairo_surface_t *
copy_of (SwBands *self, int height, const guchar *bytes)
{
  static const cairo_user_data_key_t owner;
  gsize size = self->stride * (gsize) height;
  guchar *copy = g_malloc (size);

  memcpy (copy, bytes, size);
  cairo_surface_t *surface = cairo_image_surface_create_for_data (copy,
                                                                  CAIRO_FORMAT_RGB24,
                                                                  self->width,
                                                                  height,
                                                                  (int) self->stride);
  cairo_surface_set_user_data (surface, &owner, copy, g_free);
  return surface;
}

static gboolean
shows (const SwBands *self, const Band *band, const guchar *bytes)
{
  return band->node != NULL && memcmp (cairo_image_surface_get_data (band->pixels),
                                       bytes,
                                       self->stride * (gsize) band->height) == 0;
}

static void
renew (SwBands *self, Band *band, const guchar *bytes)
{
  double unit = 1.0 / self->factor;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT (0,
                                               (float) (band->y * unit),
                                               (float) (self->width * unit),
                                               (float) (band->height * unit));

  band_clear (band);
  band->pixels = copy_of (self, band->height, bytes);
  band->node = gsk_cairo_node_new (&bounds);
  cairo_t *cr = gsk_cairo_node_get_draw_context (band->node);
  cairo_scale (cr, unit, unit);
  cairo_set_source_surface (cr, band->pixels, 0, band->y);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  cairo_destroy (cr);
}

static void
take_size (SwBands *self, cairo_surface_t *image, int factor)
{
  int width = cairo_image_surface_get_width (image),
      height = cairo_image_surface_get_height (image);

  if (width == self->width && height == self->height && factor == self->factor)
    return;
  self->width = width;
  self->height = height;
  self->factor = factor;
  self->stride = (gsize) cairo_image_surface_get_stride (image);
  divide (self);
}

guint
sw_bands_update (SwBands *self, cairo_surface_t *image, int factor)
{
  guint renewed = 0;

  take_size (self, image, factor);
  cairo_surface_flush (image);
  for (guint i = 0; i < self->bands->len; i++) {
    Band *band = &g_array_index (self->bands, Band, i);
    const guchar *bytes = cairo_image_surface_get_data (image) + (gsize) band->y * self->stride;
    if (shows (self, band, bytes))
      continue;
    renew (self, band, bytes);
    renewed++;
  }
  return renewed;
}

void
sw_bands_append (const SwBands *self, GtkSnapshot *snapshot)
{
  for (guint i = 0; i < self->bands->len; i++)
    gtk_snapshot_append_node (snapshot, g_array_index (self->bands, Band, i).node);
}
