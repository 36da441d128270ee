// SPDX-License-Identifier: GPL-3.0-or-later
/* A pixel's share of the line follows from how far its middle is from the circle: right to a
 * hundredth where the circle is larger than a few pixels.
 */
#include "drawing/circles.h"

#include "drawing/image-bytes.h"

#include <math.h>

typedef struct {
  SwImageBytes image;
  double x, y, inner, outer; /* the image's pixels */
  guint32 ink;
  double alpha;
} Annulus;

/* How much of a pixel whose middle is `distance` from the circle's lies within `radius`. */
static double
share_within (double radius, double distance)
{
  return CLAMP (radius - distance + 0.5, 0, 1);
}

static void
write_span (const Annulus *annulus, int y, double from, double to)
{
  double dy = y + 0.5 - annulus->y;
  int first = (int) MAX (floor (from), 0), past = (int) MIN (ceil (to), annulus->image.width);
  guint32 *row =
    (guint32 *) (gpointer) (annulus->image.bytes + (gsize) y * annulus->image.stride);

  for (int x = first; x < past; x++) {
    double dx = x + 0.5 - annulus->x, distance = sqrt (dx * dx + dy * dy);
    double share =
      share_within (annulus->outer, distance) - share_within (annulus->inner, distance);
    if (share > 0)
      row[x] = sw_image_bytes_mixed (row[x],
                                     annulus->ink,
                                     (guint32) (share * annulus->alpha * 255 + 0.5));
  }
}

/* Half of how wide a circle is at a height; 0 above and below it. */
static double
half_chord (double radius, double dy)
{
  return radius <= fabs (dy) ? 0 : sqrt (radius * radius - dy * dy);
}

static void
write_row (const Annulus *annulus, int y)
{
  double dy = y + 0.5 - annulus->y;
  double wide = half_chord (annulus->outer + 1, dy),
         hollow = half_chord (annulus->inner - 1, dy);

  if (hollow < 2) {
    write_span (annulus, y, annulus->x - wide, annulus->x + wide);
    return;
  }
  write_span (annulus, y, annulus->x - wide, ceil (annulus->x - hollow));
  write_span (annulus, y, floor (annulus->x + hollow), annulus->x + wide);
}

static void
write_bytes (const Annulus *annulus)
{
  int first = (int) MAX (floor (annulus->y - annulus->outer - 1), 0),
      past = (int) MIN (ceil (annulus->y + annulus->outer + 1), annulus->image.height);

  for (int y = first; y < past; y++)
    write_row (annulus, y);
  cairo_surface_mark_dirty (annulus->image.surface);
}

static void
stroke (cairo_t *cr, const SwStyle *style, const SwCircle *circle, const SwLineLook *look)
{
  cairo_save (cr);
  cairo_new_path (cr);
  cairo_arc (cr, circle->x, circle->y, circle->radius, 0, 2 * G_PI);
  cairo_close_path (cr);
  sw_style_set_ink_alpha (style, cr, look->ink, look->alpha);
  cairo_set_line_width (cr, look->width);
  cairo_stroke (cr);
  cairo_restore (cr);
}

void
sw_circle_draw (cairo_t *cr,
                const SwStyle *style,
                const SwCircle *circle,
                const SwLineLook *look)
{
  Annulus annulus;

  if (!(fabs (circle->x) < 1e6 && fabs (circle->y) < 1e6 && circle->radius < 1e6))
    return;
  if (!sw_image_bytes_take (cr, &annulus.image)) {
    stroke (cr, style, circle, look);
    return;
  }
  double scale = annulus.image.scale, half = look->width * scale / 2;
  annulus.x = circle->x * scale;
  annulus.y = circle->y * scale;
  annulus.outer = circle->radius * scale + half;
  annulus.inner = MAX (circle->radius * scale - half, 0);
  annulus.ink = sw_image_bytes_colour (style, look->ink);
  annulus.alpha = look->alpha;
  write_bytes (&annulus);
}
