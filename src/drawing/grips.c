// SPDX-License-Identifier: GPL-3.0-or-later
/* A grip stands a few units off what it moves, so that it hides nothing; the same offset is
 * taken off again when a place of the pointer is read.
 */
#include "drawing/grips.h"

#include "engine/edit.h"

#include <glib/gi18n.h>
#include <math.h>

#define REACH 12.0 /* device units that still hit */
#define DRAWN 6.0  /* radius of the ring that is drawn */

const SwGripInfo sw_grip_info[SW_N_GRIPS] = {
  [SW_GRIP_CROWN_HEIGHT] = { SW_SIDE,
                             "shape.crown_height_m",
                             N_ ("Crown height"),
                             SW_QUANTITY_LENGTH,
                             0.02 },
  [SW_GRIP_RING_HEIGHT] = { SW_SIDE,
                            "shape.ring_height_m",
                            N_ ("Ring height"),
                            SW_QUANTITY_LENGTH,
                            0.01 },
  [SW_GRIP_PITCH] = { SW_SIDE,
                      "strip.pitch_m",
                      N_ ("Pixel pitch"),
                      SW_QUANTITY_SHORT_LENGTH,
                      0.001 },
  [SW_GRIP_RING_RADIUS] = { SW_SIDE,
                            "shape.ring_radius_m",
                            N_ ("Ring radius"),
                            SW_QUANTITY_LENGTH,
                            0.01 },
  [SW_GRIP_STRIP_COUNT] = { SW_TOP, "shape.strip_count", N_ ("Strips"), SW_QUANTITY_COUNT, 1 },
  [SW_GRIP_SPACING] = { SW_TOP,
                        SW_EDIT_SPACING,
                        N_ ("Spacing at the ring"),
                        SW_QUANTITY_SHORT_LENGTH,
                        0.005 },
  [SW_GRIP_COVERAGE] = { SW_TOP, "shape.coverage_deg", N_ ("Coverage"), SW_QUANTITY_ANGLE, 5 },
};

/* How far off its thing each grip stands, device units. */
static const double offsets[SW_N_GRIPS] = {
  [SW_GRIP_CROWN_HEIGHT] = 16, [SW_GRIP_RING_HEIGHT] = 14, [SW_GRIP_PITCH] = 14,
  [SW_GRIP_RING_RADIUS] = 14,  [SW_GRIP_STRIP_COUNT] = 30, [SW_GRIP_SPACING] = 30,
  [SW_GRIP_COVERAGE] = 58,
};

/* The strip that is farthest right in the side view, of those in front. */
static int
right_strip (const SwShape *shape)
{
  int best = 1;
  double most = -INFINITY;

  for (int strip = 1; strip <= shape->strip_count; strip++) {
    SwPoint tie = sw_tie_point (shape, strip);
    double x_m = tie.x_m - (tie.y_m > 1e-9 ? 1e-6 : 0);
    if (x_m > most) {
      most = x_m;
      best = strip;
    }
  }
  return best;
}

/* The pitch's grip sits on a pixel so many gaps below the first one. */
static int
pitch_gaps (const SwDesign *design)
{
  return MAX (1, (int) lround (0.6 * (design->strip.pixels - 1)));
}

typedef struct {
  double x, y, ux, uy, length; /* hook, direction to the tie, device units */
} Line;

static Line
strip_line (const SwView *view, const SwShape *shape)
{
  int strip = right_strip (shape);
  SwPoint hook = sw_hook_point (shape, strip), tie = sw_tie_point (shape, strip);
  double x = sw_view_x (view, hook.x_m), y = sw_view_y (view, hook.z_m);
  double dx = sw_view_x (view, tie.x_m) - x, dy = sw_view_y (view, tie.z_m) - y;
  double length = hypot (dx, dy);

  return (Line){ x, y, dx / length, dy / length, length };
}

static SwGrip
pitch_grip (const SwView *view, const SwSolution *solution)
{
  const SwDesign *design = solution->design;
  Line line = strip_line (view, &design->shape);
  double down_m = design->strip.lead_m + pitch_gaps (design) * design->strip.pitch_m;
  double along = down_m / solution->cone.slant_m * line.length;

  return (SwGrip){ SW_GRIP_PITCH,
                   line.x + line.ux * along + line.uy * offsets[SW_GRIP_PITCH],
                   line.y + line.uy * along - line.ux * offsets[SW_GRIP_PITCH],
                   atan2 (-line.uy, line.ux) };
}

/* Azimuth 0° is down on the screen, 90° right. */
static SwGrip
round_grip (SwGripId id, const SwView *view, double azimuth_deg, double radius_m)
{
  double radius = radius_m * view->scale + offsets[id], azimuth = azimuth_deg * G_PI / 180;
  double outwards = azimuth - G_PI / 2;

  return (SwGrip){ id,
                   view->x0 + radius * sin (azimuth),
                   view->y0 + radius * cos (azimuth),
                   id == SW_GRIP_SPACING ? outwards : outwards + G_PI / 2 };
}

static double
spacing_azimuth (const SwShape *shape)
{
  double best = 0, least = INFINITY;
  int gaps = shape->coverage_deg >= 360 ? shape->strip_count : shape->strip_count - 1;

  for (int i = 1; i <= gaps; i++) { /* the gap nearest to the right, a little in front */
    double middle = sw_cone_azimuth_deg (shape, i) + sw_cone_step_deg (shape) / 2;
    double off = fabs (remainder (middle - 70, 360));
    if (off < least) {
      least = off;
      best = middle;
    }
  }
  return best;
}

static guint
place_side (const SwView *view, const SwSolution *solution, SwGrip *grips)
{
  const SwShape *shape = &solution->design->shape;
  guint n = 0;

  grips[n++] =
    (SwGrip){ SW_GRIP_CROWN_HEIGHT,
              sw_view_x (view, shape->crown_radius_m) + offsets[SW_GRIP_CROWN_HEIGHT],
              sw_view_y (view, shape->crown_height_m),
              G_PI / 2 };
  grips[n++] = (SwGrip){ SW_GRIP_RING_HEIGHT,
                         sw_view_x (view, -shape->ring_radius_m) - offsets[SW_GRIP_RING_HEIGHT],
                         sw_view_y (view, shape->ring_height_m),
                         G_PI / 2 };
  grips[n++] = (SwGrip){ SW_GRIP_RING_RADIUS,
                         sw_view_x (view, shape->ring_radius_m) + offsets[SW_GRIP_RING_RADIUS],
                         sw_view_y (view, shape->ring_height_m),
                         0 };
  if (solution->design->strip.pixels > 1)
    grips[n++] = pitch_grip (view, solution);
  return n;
}

static guint
place_top (const SwView *view, const SwSolution *solution, SwGrip *grips)
{
  const SwShape *shape = &solution->design->shape;
  guint n = 0;

  grips[n++] = round_grip (SW_GRIP_STRIP_COUNT,
                           view,
                           sw_cone_azimuth_deg (shape, 2),
                           shape->ring_radius_m);
  grips[n++] =
    round_grip (SW_GRIP_SPACING, view, spacing_azimuth (shape), shape->ring_radius_m);
  grips[n++] = round_grip (SW_GRIP_COVERAGE,
                           view,
                           shape->facing_deg + shape->coverage_deg / 2,
                           shape->ring_radius_m);
  return n;
}

guint
sw_grips_place (SwViewKind kind,
                const SwView *view,
                const SwSolution *solution,
                SwGrip grips[SW_N_GRIPS])
{
  return kind == SW_SIDE ? place_side (view, solution, grips)
                         : place_top (view, solution, grips);
}

const SwGrip *
sw_grips_hit (const SwGrip *grips, guint n_grips, double x, double y)
{
  const SwGrip *best = NULL;
  double least = REACH;

  for (guint i = 0; i < n_grips; i++) {
    double away = hypot (grips[i].x - x, grips[i].y - y);
    if (away <= least) {
      least = away;
      best = &grips[i];
    }
  }
  return best;
}

static double
azimuth_at (const SwView *view, double x, double y)
{
  return sw_azimuth_wrap_deg (atan2 (x - view->x0, y - view->y0) * 180 / G_PI);
}

static double
pitch_at (const SwView *view, const SwSolution *start, double x, double y)
{
  const SwDesign *design = start->design;
  Line line = strip_line (view, &design->shape);
  double along = (x - line.x) * line.ux + (y - line.y) * line.uy;

  return (along / line.length * start->cone.slant_m - design->strip.lead_m) /
         pitch_gaps (design);
}

/* From strip 1 to the pointer is one step; there are never more than 512 of them. */
static double
count_at (const SwView *view, const SwShape *shape, double x, double y)
{
  double step = sw_azimuth_wrap_deg (azimuth_at (view, x, y) - sw_cone_azimuth_deg (shape, 1));
  double gaps =
    shape->coverage_deg / CLAMP (step, shape->coverage_deg / 512, shape->coverage_deg);

  return shape->coverage_deg >= 360 ? gaps : gaps + 1;
}

/* Both ends move alike; near all the way round it snaps to a full tree. */
static double
coverage_at (const SwView *view, const SwShape *shape, double x, double y)
{
  double half = fabs (remainder (azimuth_at (view, x, y) - shape->facing_deg, 360));

  return half > 177 ? 360 : 2 * half;
}

double
sw_grip_value_at (SwGripId id, const SwView *view, const SwSolution *start, double x, double y)
{
  const SwShape *shape = &start->design->shape;
  double radius;

  switch (id) {
  case SW_GRIP_CROWN_HEIGHT:
  case SW_GRIP_RING_HEIGHT:
    return sw_view_up_m (view, y);
  case SW_GRIP_PITCH:
    return pitch_at (view, start, x, y);
  case SW_GRIP_RING_RADIUS:
    return sw_view_x_m (view, x - offsets[id]);
  case SW_GRIP_STRIP_COUNT:
    return count_at (view, shape, x, y);
  case SW_GRIP_SPACING:
    radius = hypot (x - view->x0, y - view->y0) - offsets[id];
    return radius / view->scale * sw_cone_step_deg (shape) * G_PI / 180;
  case SW_GRIP_COVERAGE:
    return coverage_at (view, shape, x, y);
  case SW_N_GRIPS:
    break;
  }
  g_return_val_if_reached (NAN);
}

double
sw_grip_value (SwGripId id, const SwSolution *solution)
{
  const SwDesign *design = solution->design;

  switch (id) {
  case SW_GRIP_CROWN_HEIGHT:
    return design->shape.crown_height_m;
  case SW_GRIP_RING_HEIGHT:
    return design->shape.ring_height_m;
  case SW_GRIP_PITCH:
    return design->strip.pitch_m;
  case SW_GRIP_RING_RADIUS:
    return design->shape.ring_radius_m;
  case SW_GRIP_STRIP_COUNT:
    return design->shape.strip_count;
  case SW_GRIP_SPACING:
    return solution->cone.spacing_ring_m;
  case SW_GRIP_COVERAGE:
    return design->shape.coverage_deg;
  case SW_N_GRIPS:
    break;
  }
  g_return_val_if_reached (NAN);
}

static void
draw_direction (cairo_t *cr, const SwGrip *grip)
{
  double c = cos (grip->direction_rad), s = -sin (grip->direction_rad);

  for (int sign = -1; sign <= 1; sign += 2) {
    double x = grip->x + sign * c * (DRAWN + 6.5), y = grip->y + sign * s * (DRAWN + 6.5);
    cairo_move_to (cr, x - sign * c * 3.5 - s * 3, y - sign * s * 3.5 + c * 3);
    cairo_line_to (cr, x, y);
    cairo_line_to (cr, x - sign * c * 3.5 + s * 3, y - sign * s * 3.5 - c * 3);
  }
  cairo_set_line_width (cr, 1.5);
  cairo_stroke (cr);
}

void
sw_grip_draw (cairo_t *cr, const SwStyle *style, const SwGrip *grip, SwGripLook look)
{
  static const double halo[] = { [SW_GRIP_IDLE] = 0,
                                 [SW_GRIP_HOVER] = 0.22,
                                 [SW_GRIP_FOCUS] = 0.32,
                                 [SW_GRIP_DRAG] = 0.32 };

  cairo_save (cr);
  cairo_new_path (cr);
  if (halo[look] > 0) {
    sw_style_set_ink_alpha (style, cr, SW_INK_GRIP, halo[look]);
    cairo_arc (cr, grip->x, grip->y, REACH, 0, 2 * G_PI);
    cairo_fill (cr);
  }
  cairo_arc (cr, grip->x, grip->y, DRAWN, 0, 2 * G_PI);
  sw_style_set_ink (style, cr, look == SW_GRIP_DRAG ? SW_INK_GRIP : SW_INK_PAPER);
  cairo_fill_preserve (cr);
  sw_style_set_ink (style, cr, SW_INK_GRIP);
  cairo_set_line_width (cr, look == SW_GRIP_FOCUS ? 3 : 2);
  cairo_stroke (cr);
  draw_direction (cr, grip);
  cairo_restore (cr);
}
