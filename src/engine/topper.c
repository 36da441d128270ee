// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/topper.h"

#include <math.h>

/* The unit star has its tips on the unit circle, the first one straight up. */
typedef struct {
  int corners;
  double inner;
  double half_width, low; /* of the unit star: largest x, lowest z */
} UnitStar;

double
sw_topper_inner_ratio (int points)
{
  int drawn = MAX (points, 5);
  int k = (drawn - 1) / 2;
  double half_step = G_PI / drawn;

  return cos (k * half_step) / cos ((k - 1) * half_step);
}

static SwPoint
unit_corner (const UnitStar *star, int corner)
{
  double angle = 2 * G_PI * corner / star->corners;
  double radius = corner % 2 == 0 ? 1 : star->inner;

  return (SwPoint){ radius * sin (angle), 0, radius * cos (angle) };
}

static UnitStar
unit_star (int points)
{
  UnitStar star = { .corners = 2 * points, .inner = sw_topper_inner_ratio (points) };

  for (int i = 0; i < star.corners; i++) {
    SwPoint corner = unit_corner (&star, i);
    star.half_width = MAX (star.half_width, corner.x_m);
    star.low = MIN (star.low, corner.z_m);
  }
  return star;
}

static gboolean
has_star (const SwDesign *design)
{
  return design->topper.kind == SW_TOPPER_STAR;
}

/* x and z are stretched apart, so that the outline fills its box to the last bit. */
static SwPoint
placed (const SwDesign *design, const UnitStar *star, SwPoint unit)
{
  double bottom_m = design->shape.crown_height_m + design->topper.stub_m;

  return (SwPoint){ unit.x_m / star->half_width * (design->topper.width_m / 2),
                    0,
                    bottom_m +
                      (unit.z_m - star->low) / (1 - star->low) * design->topper.height_m };
}

GArray *
sw_topper_outline (const SwDesign *design, int ring)
{
  GArray *outline = g_array_new (FALSE, FALSE, sizeof (SwPoint));
  int rings = design->topper.rings;

  if (!has_star (design))
    return outline;

  UnitStar star = unit_star (design->topper.points);
  double scale = (double) (rings - ring) / rings;

  for (int i = 0; i < star.corners; i++) {
    SwPoint unit = unit_corner (&star, i);
    SwPoint corner = placed (design, &star, (SwPoint){ unit.x_m * scale, 0, unit.z_m * scale });
    g_array_append_val (outline, corner);
  }
  return outline;
}

/* Largest remainder in whole numbers: outline i is (rings − i) times as long as the innermost,
 * so no length needs to be measured. Of equal remainders the outer one comes first.
 */
GArray *
sw_topper_ring_pixels (const SwDesign *design)
{
  int rings = has_star (design) ? design->topper.rings : 0;
  GArray *counts = g_array_sized_new (FALSE, TRUE, sizeof (int), rings);
  g_autofree int *remainders = g_new0 (int, rings);
  int whole = rings * (rings + 1) / 2;
  int left = rings > 0 ? design->topper.pixels : 0;

  g_array_set_size (counts, rings);
  for (int i = 0; i < rings; i++) {
    int product = design->topper.pixels * (rings - i);
    g_array_index (counts, int, i) = product / whole;
    remainders[i] = product % whole;
    left -= product / whole;
  }
  for (; left > 0; left--) {
    int largest = 0;
    for (int i = 1; i < rings; i++) {
      if (remainders[i] > remainders[largest])
        largest = i;
    }
    g_array_index (counts, int, largest)++;
    remainders[largest] = -1;
  }
  return counts;
}

static double
edge_m (GArray *outline, guint edge)
{
  const SwPoint *from = &g_array_index (outline, SwPoint, edge);
  const SwPoint *to = &g_array_index (outline, SwPoint, (edge + 1) % outline->len);

  return hypot (to->x_m - from->x_m, to->z_m - from->z_m);
}

static SwPoint
on_edge (GArray *outline, guint edge, double share)
{
  const SwPoint *from = &g_array_index (outline, SwPoint, edge);
  const SwPoint *to = &g_array_index (outline, SwPoint, (edge + 1) % outline->len);

  return (SwPoint){ from->x_m + (to->x_m - from->x_m) * share,
                    0,
                    from->z_m + (to->z_m - from->z_m) * share };
}

static void
append_evenly (GArray *pixels, GArray *outline, int count)
{
  double length_m = 0, before_m = 0;
  guint edge = 0;

  for (guint i = 0; i < outline->len; i++)
    length_m += edge_m (outline, i);
  for (int i = 0; i < count; i++) {
    double at_m = length_m * i / count;
    while (edge + 1 < outline->len && at_m >= before_m + edge_m (outline, edge))
      before_m += edge_m (outline, edge++);

    double this_m = edge_m (outline, edge);
    SwPoint pixel = on_edge (outline, edge, this_m > 0 ? (at_m - before_m) / this_m : 0);
    g_array_append_val (pixels, pixel);
  }
}

GArray *
sw_topper_pixels (const SwDesign *design)
{
  GArray *pixels = g_array_new (FALSE, FALSE, sizeof (SwPoint));
  g_autoptr (GArray) counts = sw_topper_ring_pixels (design);

  for (guint ring = 0; ring < counts->len; ring++) {
    g_autoptr (GArray) outline = sw_topper_outline (design, (int) ring);
    append_evenly (pixels, outline, g_array_index (counts, int, ring));
  }
  return pixels;
}
