// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/dots.h"

#include "drawing/image-bytes.h"

#include <math.h>

struct SwDots {
  cairo_t *cr; /* borrowed */
  const SwStyle *style;
  SwInkId ink;
  double size;
  gboolean direct; /* else a path */
  SwImageBytes image;
  guint32 colour;
};

SwDots *
sw_dots_begin (cairo_t *cr, const SwStyle *style, SwInkId ink, double size)
{
  SwDots *dots = g_new0 (SwDots, 1);

  *dots = (SwDots){ .cr = cr, .style = style, .ink = ink, .size = size };
  dots->direct = sw_image_bytes_take (cr, &dots->image);
  dots->colour = sw_image_bytes_colour (style, ink);
  return dots;
}

static void
fill_bytes (SwDots *dots, double left, double top)
{
  int x1 = (int) (left * dots->image.scale), y1 = (int) (top * dots->image.scale),
      side = (int) (dots->size * dots->image.scale);
  int from = MAX (x1, 0), to = MIN (x1 + side, dots->image.width);

  for (int y = MAX (y1, 0); y < MIN (y1 + side, dots->image.height); y++) {
    guint32 *row = (guint32 *) (gpointer) (dots->image.bytes + (gsize) y * dots->image.stride);
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
  if (dots->direct)
    fill_bytes (dots, left, top);
  else
    cairo_rectangle (dots->cr, left, top, dots->size, dots->size);
}

void
sw_dots_end (SwDots *dots)
{
  if (dots->direct) {
    cairo_surface_mark_dirty (dots->image.surface);
  } else {
    cairo_save (dots->cr);
    cairo_set_antialias (dots->cr, CAIRO_ANTIALIAS_NONE);
    sw_style_set_ink (dots->style, dots->cr, dots->ink);
    cairo_fill (dots->cr);
    cairo_restore (dots->cr);
  }
  g_free (dots);
}
