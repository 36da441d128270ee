// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/image-bytes.h"

#include <math.h>

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
can_take (cairo_t *cr, cairo_surface_t *surface)
{
  if (cairo_surface_get_type (surface) != CAIRO_SURFACE_TYPE_IMAGE)
    return FALSE;
  cairo_format_t format = cairo_image_surface_get_format (surface);
  return (format == CAIRO_FORMAT_RGB24 || format == CAIRO_FORMAT_ARGB32) &&
         lies_straight (cr, surface);
}

gboolean
sw_image_bytes_take (cairo_t *cr, SwImageBytes *image)
{
  cairo_surface_t *target = cairo_get_group_target (cr);

  if (!can_take (cr, target))
    return FALSE;
  cairo_surface_flush (target);
  *image = (SwImageBytes){ .surface = target,
                           .bytes = cairo_image_surface_get_data (target),
                           .width = cairo_image_surface_get_width (target),
                           .height = cairo_image_surface_get_height (target),
                           .stride = (gsize) cairo_image_surface_get_stride (target) };
  cairo_surface_get_device_scale (target, &image->scale, &image->scale);
  return TRUE;
}

static guint32
code (double channel)
{
  return (guint32) lround (channel * 255);
}

guint32
sw_image_bytes_colour (const SwStyle *style, SwInkId ink)
{
  SwInk colour = style->inks[ink];

  return 0xff000000u | code (colour.red) << 16 | code (colour.green) << 8 | code (colour.blue);
}
