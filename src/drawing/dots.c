// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/dots.h"

#include <math.h>

struct SwDots {
  cairo_t *cr; /* borrowed */
  const SwStyle *style;
  SwInkId ink;
  double size;
  cairo_surface_t *image; /* borrowed; NULL: a path */
  guchar *bytes;
  int width, height, stride; /* of the image, its own pixels */
  double scale;              /* its pixels a unit */
  guint32 colour;
};

/* The drawing must lie on the image unit by unit: no turn, no own scale, no shift, nothing
 * clipped off. */
static gboolean
lies_straight (cairo_t *cr, cairo_surface_t *image)
{
  cairo_matrix_t matrix;
  double left, top, right, bottom, scale_x, scale_y, offset_x, offset_y;

  cairo_get_matrix (cr, &matrix);
  cairo_surface_get_device_scale (image, &scale_x, &scale_y);
  cairo_surface_get_device_offset (image, &offset_x, &offset_y);
  cairo_clip_extents (cr, &left, &top, &right, &bottom);
  gboolean plain = fabs (matrix.xx - 1) + fabs (matrix.yy - 1) + fabs (matrix.xy) +
                     fabs (matrix.yx) + fabs (matrix.x0) + fabs (matrix.y0) <=
                   0;
  gboolean whole = left <= 0 && top <= 0 &&
                   right * scale_x >= cairo_image_surface_get_width (image) &&
                   bottom * scale_y >= cairo_image_surface_get_height (image);
  gboolean even = fabs (scale_x - scale_y) <= 0 && fabs (scale_x - round (scale_x)) <= 0;
  return plain && whole && even && fabs (offset_x) + fabs (offset_y) <= 0;
}

static gboolean
takes_bytes (cairo_t *cr, cairo_surface_t *surface)
{
  if (cairo_surface_get_type (surface) != CAIRO_SURFACE_TYPE_IMAGE)
    return FALSE;
  cairo_format_t format = cairo_image_surface_get_format (surface);
  return (format == CAIRO_FORMAT_RGB24 || format == CAIRO_FORMAT_ARGB32) &&
         lies_straight (cr, surface);
}

static guint32
code (double channel)
{
  return (guint32) lround (channel * 255);
}

SwDots *
sw_dots_begin (cairo_t *cr, const SwStyle *style, SwInkId ink, double size)
{
  SwDots *dots = g_new0 (SwDots, 1);
  cairo_surface_t *target = cairo_get_group_target (cr);
  SwInk colour = style->inks[ink];

  *dots = (SwDots){ .cr = cr, .style = style, .ink = ink, .size = size };
  if (!takes_bytes (cr, target))
    return dots;
  cairo_surface_flush (target);
  dots->image = target;
  dots->bytes = cairo_image_surface_get_data (target);
  dots->width = cairo_image_surface_get_width (target);
  dots->height = cairo_image_surface_get_height (target);
  dots->stride = cairo_image_surface_get_stride (target);
  cairo_surface_get_device_scale (target, &dots->scale, &dots->scale);
  dots->colour =
    0xff000000u | code (colour.red) << 16 | code (colour.green) << 8 | code (colour.blue);
  return dots;
}

static void
fill_bytes (SwDots *dots, double left, double top)
{
  int x1 = (int) (left * dots->scale), y1 = (int) (top * dots->scale),
      side = (int) (dots->size * dots->scale);
  int from = MAX (x1, 0), to = MIN (x1 + side, dots->width);

  for (int y = MAX (y1, 0); y < MIN (y1 + side, dots->height); y++) {
    guint32 *row = (guint32 *) (gpointer) (dots->bytes + (gsize) y * dots->stride);
    for (int x = from; x < to; x++)
      row[x] = dots->colour;
  }
}

void
sw_dots_add (SwDots *dots, double x, double y)
{
  double left = floor (x - dots->size / 2 + 0.5), top = floor (y - dots->size / 2 + 0.5);

  if (!(fabs (left) < 1e6 && fabs (top) < 1e6))
    return;
  if (dots->image != NULL)
    fill_bytes (dots, left, top);
  else
    cairo_rectangle (dots->cr, left, top, dots->size, dots->size);
}

void
sw_dots_end (SwDots *dots)
{
  if (dots->image != NULL) {
    cairo_surface_mark_dirty (dots->image);
  } else {
    cairo_save (dots->cr);
    cairo_set_antialias (dots->cr, CAIRO_ANTIALIAS_NONE);
    sw_style_set_ink (dots->style, dots->cr, dots->ink);
    cairo_fill (dots->cr);
    cairo_restore (dots->cr);
  }
  g_free (dots);
}
