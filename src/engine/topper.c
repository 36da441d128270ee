// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/topper.h"

#include <math.h>

/* The share of the radius at which a star's inner corners stand. For five points or more the
 * sides of the regular star polygon {n/2} are straight lines: cos(2π/n)/cos(π/n) (Coxeter,
 * Regular Polytopes, 2.8). With fewer points such a star has no body; half is our own choice.
 */
static double
inner_share (int points)
{
  return points >= 5 ? cos (2 * G_PI / points) / cos (G_PI / points) : 0.4;
}

typedef struct {
  double left, right, bottom, top;
} Box;

/* A star of radius 1 with a tip up. */
static SwPoint
unit_corner (int corner, int points)
{
  double angle = corner * G_PI / points;
  double radius = corner % 2 == 0 ? 1 : inner_share (points);

  return (SwPoint){ radius * sin (angle), 0, radius * cos (angle) };
}

static Box
unit_box (int points)
{
  Box box = { 0, 0, 0, 0 };

  for (int corner = 0; corner < 2 * points; corner++) {
    SwPoint at = unit_corner (corner, points);
    box = (Box){ MIN (box.left, at.x_m),
                 MAX (box.right, at.x_m),
                 MIN (box.bottom, at.z_m),
                 MAX (box.top, at.z_m) };
  }
  return box;
}

/* Outlines shrink evenly towards the middle: the innermost of three has a third of the size. */
static double
ring_scale (const SwTopper *topper, int ring)
{
  return (double) (topper->rings - ring) / topper->rings;
}

static gboolean
has_star (const SwTopper *topper)
{
  return topper->kind == SW_TOPPER_STAR;
}

GArray *
sw_topper_outline (const SwDesign *design, int ring)
{
  const SwTopper *topper = &design->topper;
  GArray *corners = g_array_new (FALSE, FALSE, sizeof (SwPoint));
  Box box = unit_box (topper->points);
  double bottom_m = design->shape.crown_height_m + topper->stub_m;
  double middle_m = bottom_m - box.bottom / (box.top - box.bottom) * topper->height_m;
  double scale = ring_scale (topper, ring);

  for (int corner = 0; has_star (topper) && corner < 2 * topper->points; corner++) {
    SwPoint at = unit_corner (corner, topper->points);
    at.x_m *= scale * topper->width_m / (box.right - box.left);
    at.z_m = middle_m + at.z_m * scale * topper->height_m / (box.top - box.bottom);
    g_array_append_val (corners, at);
  }
  return corners;
}

static double
length_of (const GArray *corners)
{
  double length = 0;

  for (guint i = 0; i < corners->len; i++) {
    const SwPoint *from = &g_array_index (corners, SwPoint, i);
    const SwPoint *to = &g_array_index (corners, SwPoint, (i + 1) % corners->len);
    length += hypot (to->x_m - from->x_m, to->z_m - from->z_m);
  }
  return length;
}

/* Evenly by length along the closed outline, from the tip. */
static void
place_along (const GArray *corners, int pixels, GArray *into)
{
  double step = length_of (corners) / pixels, behind = 0;
  int placed = 0;

  for (guint i = 0; i < corners->len && placed < pixels; i++) {
    const SwPoint *from = &g_array_index (corners, SwPoint, i);
    const SwPoint *to = &g_array_index (corners, SwPoint, (i + 1) % corners->len);
    double side = hypot (to->x_m - from->x_m, to->z_m - from->z_m);
    for (; placed < pixels && placed * step <= behind + side; placed++) {
      double share = side > 0 ? (placed * step - behind) / side : 0;
      SwPoint at = { from->x_m + (to->x_m - from->x_m) * share,
                     0,
                     from->z_m + (to->z_m - from->z_m) * share };
      g_array_append_val (into, at);
    }
    behind += side;
  }
  while (placed++ < pixels)
    g_array_append_val (into, g_array_index (corners, SwPoint, 0));
}

/* Pixels up to and with outline `ring`, so that the counts sum to all without rounding away
 * any. */
static int
pixels_through (const SwTopper *topper, int ring)
{
  double all = 0, through = 0;

  for (int i = 0; i < topper->rings; i++) {
    all += ring_scale (topper, i);
    if (i <= ring)
      through += ring_scale (topper, i);
  }
  return ring == topper->rings - 1 ? topper->pixels
                                   : (int) lround (topper->pixels * through / all);
}

GArray *
sw_topper_pixels (const SwDesign *design)
{
  const SwTopper *topper = &design->topper;
  GArray *pixels = g_array_new (FALSE, FALSE, sizeof (SwPoint));
  int before = 0;

  for (int ring = 0; has_star (topper) && ring < topper->rings; ring++) {
    int through = pixels_through (topper, ring);
    g_autoptr (GArray) corners = sw_topper_outline (design, ring);
    if (through > before)
      place_along (corners, through - before, pixels);
    before = MAX (before, through);
  }
  return pixels;
}
