// SPDX-License-Identifier: GPL-3.0-or-later
/* A part's render node is made anew when its pixels differ and kept otherwise; GTK compares the
 * nodes of two frames and paints only where they differ. A band is one part at first. What
 * changes in it then becomes a part of its own between two that stand.
 */
#include "app/bands.h"

#include <string.h>

#define HEIGHT 96 /* units */
#define COLUMN 32 /* units: parts end at whole columns */
#define MOST 0.75 /* of the width; a part that would be wider is the whole band */

typedef struct {
  int from, to;            /* pixels of the image, from left to before right */
  cairo_surface_t *pixels; /* owned: never written to once the node shows it */
  GskRenderNode *node;     /* owned */
} Part;

typedef struct {
  int y, height; /* pixels */
  Part parts[3]; /* from left to right; without pixels: none */
} Band;

struct SwBands {
  int width, height, factor; /* pixels, and how many a unit */
  gsize stride;              /* of the image */
  GArray *bands;             /* owned: Band */
};

/* Columns of pixels that differ; none when empty. */
typedef struct {
  int from, to;
} Columns;

static void
part_clear (Part *part)
{
  g_clear_pointer (&part->node, gsk_render_node_unref);
  g_clear_pointer (&part->pixels, cairo_surface_destroy);
}

static void
band_clear (gpointer data)
{
  Band *band = data;

  for (guint i = 0; i < G_N_ELEMENTS (band->parts); i++)
    part_clear (&band->parts[i]);
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
    Band band = { .y = y, .height = MIN (HEIGHT * self->factor, self->height - y) };
    g_array_append_val (self->bands, band);
  }
}

/* cairo would clear a surface of its own first. */
static cairo_surface_t *
copy_of (const SwBands *self, const Part *part, int height, const guchar *bytes)
{
  static const cairo_user_data_key_t owner;
  int width = part->to - part->from;
  gsize row = 4 * (gsize) width;
  guchar *copy = g_malloc (row * (gsize) height);

  for (int y = 0; y < height; y++)
    memcpy (copy + (gsize) y * row,
            bytes + (gsize) y * self->stride + 4 * (gsize) part->from,
            row);
  cairo_surface_t *surface =
    cairo_image_surface_create_for_data (copy, CAIRO_FORMAT_RGB24, width, height, (int) row);
  cairo_surface_set_user_data (surface, &owner, copy, g_free);
  return surface;
}

static void
renew (const SwBands *self, const Band *band, Part *part, const guchar *bytes)
{
  double unit = 1.0 / self->factor;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT ((float) (part->from * unit),
                                               (float) (band->y * unit),
                                               (float) ((part->to - part->from) * unit),
                                               (float) (band->height * unit));

  part_clear (part);
  if (part->to <= part->from)
    return;
  part->pixels = copy_of (self, part, band->height, bytes);
  part->node = gsk_cairo_node_new (&bounds);
  cairo_t *cr = gsk_cairo_node_get_draw_context (part->node);
  cairo_scale (cr, unit, unit);
  cairo_set_source_surface (cr, part->pixels, part->from, band->y);
  cairo_pattern_set_filter (cairo_get_source (cr), CAIRO_FILTER_NEAREST);
  cairo_paint (cr);
  cairo_destroy (cr);
}

static void
divide_band (const SwBands *self, Band *band, Columns middle, const guchar *bytes)
{
  band->parts[0].from = 0;
  band->parts[0].to = band->parts[1].from = middle.from;
  band->parts[1].to = band->parts[2].from = middle.to;
  band->parts[2].to = self->width;
  for (guint i = 0; i < G_N_ELEMENTS (band->parts); i++)
    renew (self, band, &band->parts[i], bytes);
}

static int
first_different (const guint32 *a, const guint32 *b, int n)
{
  int i = 0;

  while (i < n && a[i] == b[i])
    i++;
  return i;
}

static int
past_last_different (const guint32 *a, const guint32 *b, int n)
{
  while (n > 0 && a[n - 1] == b[n - 1])
    n--;
  return n;
}

static void
add_differences (const SwBands *self,
                 const Part *part,
                 int height,
                 const guchar *bytes,
                 Columns *columns)
{
  int width = part->to - part->from;
  const guint32 *shown =
    (const guint32 *) (gpointer) cairo_image_surface_get_data (part->pixels);

  for (int y = 0; y < height; y++, shown += width) {
    const guint32 *row =
      (const guint32 *) (gconstpointer) (bytes + (gsize) y * self->stride) + part->from;
    if (memcmp (shown, row, 4 * (gsize) width) == 0)
      continue;
    columns->from = MIN (columns->from, part->from + first_different (shown, row, width));
    columns->to = MAX (columns->to, part->from + past_last_different (shown, row, width));
  }
}

static Columns
differences (const SwBands *self, const Band *band, const guchar *bytes)
{
  Columns columns = { self->width, 0 };

  for (guint i = 0; i < G_N_ELEMENTS (band->parts); i++) {
    if (band->parts[i].pixels != NULL)
      add_differences (self, &band->parts[i], band->height, bytes, &columns);
  }
  return columns;
}

static gboolean
differs (const SwBands *self, const Part *part, int height, const guchar *bytes)
{
  gsize row = 4 * (gsize) (part->to - part->from);
  const guchar *shown =
    part->pixels == NULL ? NULL : cairo_image_surface_get_data (part->pixels);

  for (int y = 0; y < height && shown != NULL; y++) {
    if (memcmp (shown + (gsize) y * row,
                bytes + (gsize) y * self->stride + 4 * (gsize) part->from,
                row) != 0)
      return TRUE;
  }
  return FALSE;
}

/* To whole columns, and over the middle part as it was. */
static Columns
middle_over (const SwBands *self, const Band *band, Columns changed)
{
  const Part *middle = &band->parts[1];
  int column = COLUMN * self->factor;
  Columns all = { changed.from / column * column, (changed.to + column - 1) / column * column };

  if (middle->to - middle->from < self->width) {
    all.from = MIN (all.from, middle->from);
    all.to = MAX (all.to, middle->to);
  }
  if (all.to - all.from > MOST * self->width)
    return (Columns){ 0, self->width };
  return (Columns){ all.from, MIN (all.to, self->width) };
}

/* Returns: whether the band changed. */
static gboolean
update_band (const SwBands *self, Band *band, const guchar *bytes)
{
  Part *middle = &band->parts[1];

  if (middle->node == NULL) {
    divide_band (self, band, (Columns){ 0, self->width }, bytes);
    return TRUE;
  }
  gboolean aside = differs (self, &band->parts[0], band->height, bytes) ||
                   differs (self, &band->parts[2], band->height, bytes);
  gboolean within = differs (self, middle, band->height, bytes);
  if (aside || (within && middle->to - middle->from == self->width))
    divide_band (self, band, middle_over (self, band, differences (self, band, bytes)), bytes);
  else if (within)
    renew (self, band, middle, bytes);
  return aside || within;
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
    renewed +=
      update_band (self,
                   band,
                   cairo_image_surface_get_data (image) + (gsize) band->y * self->stride);
  }
  return renewed;
}

void
sw_bands_append (const SwBands *self, GtkSnapshot *snapshot)
{
  for (guint i = 0; i < self->bands->len; i++) {
    const Band *band = &g_array_index (self->bands, Band, i);
    for (guint p = 0; p < G_N_ELEMENTS (band->parts); p++) {
      if (band->parts[p].node != NULL)
        gtk_snapshot_append_node (snapshot, band->parts[p].node);
    }
  }
}
