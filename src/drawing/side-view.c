// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/side-view.h"

#include "drawing/dimension.h"
#include "drawing/lines.h"
#include "drawing/parts.h"
#include "drawing/person.h"
#include "engine/ring-load.h"
#include "engine/units.h"

#include <glib/gi18n.h>
#include <math.h>

/* Shorthands of one drawing: what every helper needs. */
typedef struct {
  cairo_t *cr;
  const SwPicture *picture;
  const SwSolution *solution;
  const SwView *view;
  const SwStyle *style;
} Side;

static void
from_the_side (const SwView *view, SwPoint point, double *x, double *y)
{
  *x = sw_view_x (view, point.x_m);
  *y = sw_view_y (view, point.z_m);
}

static void
move_to (const Side *side, double x_m, double z_m)
{
  cairo_move_to (side->cr, sw_view_x (side->view, x_m), sw_view_y (side->view, z_m));
}

static void
line_to (const Side *side, double x_m, double z_m)
{
  cairo_line_to (side->cr, sw_view_x (side->view, x_m), sw_view_y (side->view, z_m));
}

static void
stroke (const Side *side, SwInkId ink, double width)
{
  sw_style_set_ink (side->style, side->cr, ink);
  cairo_set_line_width (side->cr, width);
  cairo_stroke (side->cr);
}

static void
draw_ground (const Side *side)
{
  double y = side->view->y0, step = side->style->paper ? 9 : 14,
         deep = side->style->paper ? 4 : 6;

  cairo_move_to (side->cr, 0, y);
  cairo_line_to (side->cr, side->view->width, y);
  stroke (side, SW_INK_SECOND, side->style->line_middle);
  for (double x = step; x < side->view->width; x += step) {
    cairo_move_to (side->cr, x, y);
    cairo_line_to (side->cr, x - deep, y + deep);
  }
  stroke (side, SW_INK_SECOND, side->style->line_thin);
}

static double
left_edge_m (const Side *side)
{
  const SwDesign *design = side->solution->design;
  double half =
    MAX (design->shape.ring_radius_m, design->guys.count > 0 ? design->guys.radius_m : 0);

  if (design->stand.foot != SW_FOOT_SOCKET)
    half = MAX (half, design->stand.arm_m);
  return -half;
}

/* Stands clear of the tree on the left, or at the edge where there is no more room. */
static void
draw_person (const Side *side)
{
  const SwDesign *design = side->solution->design;
  double clear_m = MAX (design->shape.ring_radius_m, design->shape.crown_radius_m);

  if (design->stand.foot != SW_FOOT_SOCKET)
    clear_m = MAX (clear_m, design->stand.arm_m);
  double x = sw_view_x (side->view, -clear_m - SW_PERSON_GAP_M - SW_PERSON_WIDTH_M / 2);

  if (x + SW_PERSON_WIDTH_M / 2 * side->view->scale < 0)
    return; /* out of what is shown */
  x = MAX (x, SW_PERSON_WIDTH_M / 2 * side->view->scale + 4);
  sw_person_path (side->cr, x, side->view->y0, side->view->scale);
  cairo_set_line_join (side->cr, CAIRO_LINE_JOIN_ROUND);
  stroke (side, SW_INK_SECOND, side->style->line_middle);
}

static void
draw_backdrop (const Side *side)
{
  if (!side->style->paper) {
    sw_style_set_ink (side->style, side->cr, SW_INK_PAPER);
    cairo_paint (side->cr);
  }
  draw_ground (side);
  draw_person (side);
}

static void
draw_guys (const Side *side)
{
  const SwGuys *guys = &side->solution->design->guys;
  const SwView *view = side->view;
  SwLineLook look = { SW_INK_SECOND, 1, side->style->line_thin };
  SwLines *lines = sw_lines_begin (side->cr, side->style, &look);

  for (int guy = 1; guy <= guys->count; guy++) {
    SwPoint stake =
      sw_point_on_circle (sw_guy_azimuth_deg (side->solution->design, guy), guys->radius_m, 0);
    double x = sw_view_x (view, stake.x_m);
    sw_lines_add (lines, view->x0, sw_view_y (view, guys->height_m), x, sw_view_y (view, 0));
    sw_lines_add (lines, x, sw_view_y (view, 0.06), x, sw_view_y (view, -0.12));
  }
  sw_lines_end (lines);
}

static void
draw_strips (const Side *side, gboolean front)
{
  const SwShape *shape = &side->solution->design->shape;
  const SwView *view = side->view;
  SwLineLook look = { SW_INK_TREE, front ? 0.85 : 0.35, side->style->line_thin };
  SwLines *lines = sw_lines_begin (side->cr, side->style, &look);

  for (int strip = 1; strip <= shape->strip_count; strip++) {
    SwPoint hook = sw_hook_point (shape, strip), tie = sw_tie_point (shape, strip);
    if ((tie.y_m <= 1e-9) == front)
      sw_lines_add (lines,
                    sw_view_x (view, hook.x_m),
                    sw_view_y (view, hook.z_m),
                    sw_view_x (view, tie.x_m),
                    sw_view_y (view, tie.z_m));
  }
  sw_lines_end (lines);
}

static void
draw_post (const Side *side)
{
  const SwDesign *design = side->solution->design;
  double width = MAX (side->solution->post_od_m * side->view->scale, side->style->line_thick);
  double top_m = design->shape.crown_height_m + design->crown.hook_drop_m;

  move_to (side, 0, 0);
  line_to (side, 0, top_m);
  stroke (side, SW_INK_MAIN, width);
  move_to (side, -design->shape.crown_radius_m, top_m);
  line_to (side, design->shape.crown_radius_m, top_m);
  stroke (side,
          SW_INK_MAIN,
          MAX (design->crown.plate_thickness_m * side->view->scale, side->style->line_thick));
}

static void
draw_socket (const Side *side)
{
  const SwStand *stand = &side->solution->design->stand;
  const double dashes[] = { 4, 3 };
  double half = stand->socket_diameter_m / 2,
         deep = MIN (stand->socket_depth_m,
                     (side->view->height - side->view->y0) / side->view->scale - 0.05);

  cairo_save (side->cr);
  cairo_set_dash (side->cr, dashes, 2, 0);
  move_to (side, -half, 0);
  line_to (side, -half, -deep);
  line_to (side, half, -deep);
  line_to (side, half, 0);
  stroke (side, SW_INK_MAIN, side->style->line_thin);
  cairo_restore (side->cr);
}

static void
box (const Side *side, double half_m, double low_m, double high_m)
{
  cairo_rectangle (side->cr,
                   sw_view_x (side->view, -half_m),
                   sw_view_y (side->view, high_m),
                   2 * half_m * side->view->scale,
                   (high_m - low_m) * side->view->scale);
}

static void
draw_foot (const Side *side)
{
  const SwStand *stand = &side->solution->design->stand;

  if (stand->foot == SW_FOOT_SOCKET) {
    draw_socket (side);
    return;
  }
  box (side, stand->arm_m, 0, 0.04);
  if (stand->foot == SW_FOOT_BUCKET) {
    move_to (side, -0.13, 0.04);
    line_to (side, -0.15, 0.40);
    line_to (side, 0.15, 0.40);
    line_to (side, 0.13, 0.04);
    cairo_close_path (side->cr);
  } else {
    box (side, MIN (0.30, stand->arm_m * 0.6), 0.04, 0.09);
    box (side, MIN (0.30, stand->arm_m * 0.6), 0.09, 0.14);
  }
  sw_style_set_ink_alpha (side->style, side->cr, SW_INK_SECOND, 0.18);
  cairo_fill_preserve (side->cr);
  stroke (side, SW_INK_MAIN, side->style->line_thin);
}

/* The ends of the ring as seen from the side: the whole ring, or what of an arc shows. */
static void
ring_span (const SwDesign *design, double *left_m, double *right_m)
{
  const SwShape *shape = &design->shape;

  *left_m = -shape->ring_radius_m;
  *right_m = shape->ring_radius_m;
  if (design->stand.ring_span != SW_SPAN_ARC || shape->coverage_deg >= 360)
    return;
  *left_m = INFINITY;
  *right_m = -INFINITY;
  for (int i = 0; i <= 90; i++) {
    double azimuth = shape->facing_deg - shape->coverage_deg / 2 + i * shape->coverage_deg / 90;
    double x_m = sw_point_on_circle (azimuth, shape->ring_radius_m, 0).x_m;
    *left_m = MIN (*left_m, x_m);
    *right_m = MAX (*right_m, x_m);
  }
}

static void
draw_ring (const Side *side)
{
  const SwDesign *design = side->solution->design;
  double height_m = design->shape.ring_height_m, left_m, right_m;

  SwLineLook look = { SW_INK_SECOND, 1, side->style->line_thin };
  SwLines *lines = sw_lines_begin (side->cr, side->style, &look);

  ring_span (design, &left_m, &right_m);
  for (int tie = 1;
       tie <= design->stand.ring_ties && design->stand.ring_held_by == SW_HELD_BY_GROUND;
       tie++) {
    double x_m =
      sw_point_on_circle (sw_ring_tie_azimuth_deg (design, tie), design->shape.ring_radius_m, 0)
        .x_m;
    sw_lines_add (lines,
                  sw_view_x (side->view, x_m),
                  sw_view_y (side->view, height_m),
                  sw_view_x (side->view, x_m),
                  sw_view_y (side->view, -0.15));
  }
  sw_lines_end (lines);
  move_to (side, left_m, height_m);
  line_to (side, right_m, height_m);
  stroke (side,
          SW_INK_MAIN,
          MAX (side->solution->ring_od_m * side->view->scale, side->style->line_middle));
}

static void
draw_star (const Side *side)
{
  const SwDesign *design = side->solution->design;
  double top_m = design->shape.crown_height_m;

  if (design->topper.kind == SW_TOPPER_NONE)
    return;
  move_to (side, 0, top_m);
  line_to (side, 0, top_m + design->topper.stub_m + design->topper.height_m / 2);
  stroke (side, SW_INK_SECOND, side->style->line_middle);
  for (int ring = 0; ring < design->topper.rings; ring++) {
    g_autoptr (GArray) corners = sw_topper_outline (design, ring);
    for (guint i = 0; i < corners->len; i++)
      line_to (side,
               g_array_index (corners, SwPoint, i).x_m,
               g_array_index (corners, SwPoint, i).z_m);
    cairo_close_path (side->cr);
    cairo_new_sub_path (side->cr);
  }
  cairo_set_line_join (side->cr, CAIRO_LINE_JOIN_ROUND);
  stroke (side, SW_INK_TREE, side->style->line_thin);
}

static void
draw_tree (const Side *side)
{
  draw_strips (side, FALSE);
  draw_guys (side);
  draw_foot (side);
  draw_post (side);
  draw_ring (side);
  draw_star (side);
  draw_strips (side, TRUE);
  sw_draw_pixels (side->cr, side->picture, side->solution, from_the_side);
}

static char *
length_text (const Side *side, double metres)
{
  return sw_units_format (metres,
                          SW_QUANTITY_LENGTH,
                          side->solution->design->units,
                          side->picture->language);
}

typedef struct {
  double height_m, from_m;
} Level;

/* Heights from the ground stand on the right, the lowest nearest; those too near each other are
 * left out. */
static void
draw_heights (const Side *side)
{
  const SwDesign *design = side->solution->design;
  double edge_m = -left_edge_m (side), lane = side->style->paper ? 17 : 22;
  double x = sw_view_x (side->view, edge_m) + lane;
  double apart =
    fabs (design->guys.height_m - design->shape.crown_height_m) * side->view->scale;
  Level levels[3];
  guint n = 0;

  /* Crown and whole height come before the guys' where there is no room for three. */
  if (design->guys.count > 0 && apart > 14 && x + 2.5 * lane < side->view->width)
    levels[n++] = (Level){ design->guys.height_m, 0 };
  levels[n++] = (Level){ design->shape.crown_height_m, design->shape.crown_radius_m };
  if (design->topper.kind == SW_TOPPER_STAR)
    levels[n++] = (Level){ side->solution->cone.overall_height_m, 0 };
  for (guint i = 0; i < n; i++) {
    g_autofree char *text = length_text (side, levels[i].height_m);
    SwHeightDimension dimension = { x + i * lane,
                                    side->view->y0,
                                    sw_view_y (side->view, levels[i].height_m),
                                    sw_view_x (side->view, edge_m),
                                    sw_view_x (side->view, levels[i].from_m) + 4,
                                    text };
    if (dimension.x + lane / 2 < side->view->width)
      sw_dimension_height (side->cr, side->picture, &dimension);
  }
}

static void
draw_ring_height (const Side *side)
{
  const SwShape *shape = &side->solution->design->shape;
  double x = sw_view_x (side->view, -shape->ring_radius_m) - (side->style->paper ? 14 : 26);
  g_autofree char *text = length_text (side, shape->ring_height_m);
  SwHeightDimension dimension = { x,
                                  side->view->y0,
                                  sw_view_y (side->view, shape->ring_height_m),
                                  x + 2,
                                  sw_view_x (side->view, -shape->ring_radius_m) - 4,
                                  text };

  gboolean room = side->view->scale * SW_PERSON_GAP_M >
                  (side->style->paper ? 45 : 62); /* beside the person */

  if (shape->ring_height_m * side->view->scale > 12 && x > 60 && room)
    sw_dimension_height (side->cr, side->picture, &dimension);
}

static void
draw_dimensions (const Side *side)
{
  const SwDesign *design = side->solution->design;
  const SwShape *shape = &design->shape;
  double low = side->view->y0 + (side->style->paper ? 26 : 40);

  if (design->stand.foot == SW_FOOT_SOCKET) /* clear of what is in the ground */
    low = CLAMP (side->view->y0 + design->stand.socket_depth_m * side->view->scale +
                   side->style->text_small + 12,
                 low,
                 side->view->height - 6);

  draw_heights (side);
  draw_ring_height (side);
  if (side->view->height < 260 ||
      side->view->y0 > side->view->height) /* or no ground in sight */
    return;
  g_autofree char *across = length_text (side, 2 * shape->ring_radius_m);
  g_autofree char *diameter = g_strconcat ("⌀ ", across, NULL);
  sw_dimension_width (side->cr,
                      side->picture,
                      sw_view_x (side->view, -shape->ring_radius_m),
                      sw_view_x (side->view, shape->ring_radius_m),
                      low,
                      side->view->y0 + 2,
                      diameter);
  g_autofree char *slant = length_text (side, side->solution->cone.slant_m);
  /* On the screen the ring's grip stands between the tree and this line. */
  SwSlantDimension along = { sw_view_x (side->view, -shape->ring_radius_m),
                             sw_view_y (side->view, shape->ring_height_m),
                             sw_view_x (side->view, -shape->crown_radius_m),
                             sw_view_y (side->view, shape->crown_height_m),
                             side->style->paper ? 14 : 38,
                             side->style->paper ? 3 : 30,
                             slant };
  sw_dimension_along (side->cr, side->picture, &along);
}

void
sw_side_view_draw (cairo_t *cr, const SwPicture *picture, const SwSolution *solution)
{
  Side side = { cr, picture, solution, picture->view, picture->style };

  cairo_save (cr);
  if (picture->parts & SW_DRAW_BACKDROP)
    draw_backdrop (&side);
  if (picture->parts & SW_DRAW_TREE)
    draw_tree (&side);
  if (picture->parts & SW_DRAW_DIMENSIONS)
    draw_dimensions (&side);
  cairo_restore (cr);
}

void
sw_side_view_draw_ghost (cairo_t *cr, const SwPicture *picture, const SwSolution *before)
{
  const SwShape *shape = &before->design->shape;
  Side side = { cr, picture, before, picture->view, picture->style };

  cairo_save (cr);
  move_to (&side, -shape->ring_radius_m, shape->ring_height_m);
  line_to (&side, -shape->crown_radius_m, shape->crown_height_m);
  line_to (&side, shape->crown_radius_m, shape->crown_height_m);
  line_to (&side, shape->ring_radius_m, shape->ring_height_m);
  cairo_close_path (cr);
  stroke (&side, SW_INK_GHOST, picture->style->line_middle);
  cairo_restore (cr);
}
