// SPDX-License-Identifier: GPL-3.0-or-later
/* image-bytes.h: the bytes of an image that a drawing goes into. For the drawing layer only.
 *
 * Thousands of dots and long thin lines are written there; a path of them costs cairo many
 * times that.
 */
#pragma once
#include "drawing/style.h"

typedef struct {
  cairo_surface_t *surface; /* borrowed */
  guchar *bytes;            /* of the surface */
  int width, height;        /* its own pixels */
  gsize stride;             /* bytes a row */
  double scale;             /* its pixels a unit of the drawing */
} SwImageBytes;

/* Flushes the image, so that its bytes can be written; cairo_surface_mark_dirty () ends that.
 * Returns: FALSE where paths are needed: no image of 32 bits a pixel, or the drawing does not
 * lie on it unit by unit (a turn, an own scale, a shift, a clip).
 */
gboolean sw_image_bytes_take (cairo_t *cr, SwImageBytes *image);

/* The ink as the bytes of an opaque pixel. */
guint32 sw_image_bytes_colour (const SwStyle *style, SwInkId ink);

/* `ink` laid over `under`: (ink·share + under·(255 − share))/255 in each channel, rounded, both
 * pairs of channels at once. share: 0 … 255. Inline: it is called for every pixel of a line.
 */
static inline guint32
sw_image_bytes_mixed (guint32 under, guint32 ink, guint32 share)
{
  guint32 low = (ink & 0xff00ffu) * share + (under & 0xff00ffu) * (255 - share) + 0x800080u;
  guint32 high =
    (ink >> 8 & 0xff00ffu) * share + (under >> 8 & 0xff00ffu) * (255 - share) + 0x800080u;

  low = (low + (low >> 8 & 0xff00ffu)) >> 8 & 0xff00ffu;
  high = (high + (high >> 8 & 0xff00ffu)) & 0xff00ff00u;
  return low | high;
}
