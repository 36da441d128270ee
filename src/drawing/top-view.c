// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/top-view.h"

#include "drawing/circles.h"
#include "drawing/dimension.h"
#include "drawing/lines.h"
#include "drawing/parts.h"
#include "engine/ring-load.h"
#include "engine/units.h"

#include <glib/gi18n.h>
#include <math.h>

#define NUMBER_ROOM 2.2 /* text sizes along the ring for a strip's number */

typedef struct {
  cairo_t *cr;
  const SwPicture *picture;
  const SwSolution *solution;
  const SwView *view;
  const SwStyle *style;
} Top;

static void
from_above (const SwView *view, SwPoint point, double *x, double *y)
{
  *x = sw_view_x (view, point.x_m);
  *y = sw_view_y (view, point.y_m);
}

/* A place at an azimuth, `off` device units outside a radius. */
static void
outside (const Top *top, double azimuth_deg, double radius_m, double off, double *x, double *y)
{
  double radius = radius_m * top->view->scale + off, azimuth = azimuth_deg * G_PI / 180;

  *x = top->view->x0 + radius * sin (azimuth);
  *y = top->view->y0 + radius * cos (azimuth);
}

static void
stroke (const Top *top, SwInkId ink, double width)
{
  sw_style_set_ink (top->style, top->cr, ink);
  cairo_set_line_width (top->cr, width);
  cairo_stroke (top->cr);
}

static void
circle (const Top *top, double radius_m)
{
  cairo_new_sub_path (top->cr);
  cairo_arc (top->cr, top->view->x0, top->view->y0, radius_m * top->view->scale, 0, 2 * G_PI);
}

/* The same, drawn at once. */
static void
circle_line (const Top *top, double radius_m, const SwLineLook *look)
{
  SwCircle circle = { top->view->x0, top->view->y0, radius_m * top->view->scale };

  sw_circle_draw (top->cr, top->style, &circle, look);
}

/* From azimuth to azimuth the way azimuths grow: to the right at the front. Device angles: 90°
 * is down. */
static void
arc (const Top *top, double radius, double from_deg, double to_deg)
{
  cairo_new_sub_path (top->cr);
  cairo_arc_negative (top->cr,
                      top->view->x0,
                      top->view->y0,
                      radius,
                      (90 - from_deg) * G_PI / 180,
                      (90 - to_deg) * G_PI / 180);
}

/* Where the viewer stands: a small eye-mark and a word at the bottom. */
static void
draw_viewer (const Top *top)
{
  double x = top->view->x0, y = top->view->height - (top->style->paper ? 6 : 8);
  SwTextLook look = { .size = top->style->text_small, .align = SW_TEXT_CENTRE };

  sw_style_set_ink (top->style, top->cr, SW_INK_SECOND);
  sw_text_draw (top->cr,
                top->picture->texts,
                top->style,
                &look,
                x,
                y,
                sw_language_text (top->picture->language, N_ ("viewer")));
  y -= top->style->text_small + 2;
  cairo_move_to (top->cr, x, y - 9);
  cairo_line_to (top->cr, x - 5, y);
  cairo_line_to (top->cr, x + 5, y);
  cairo_close_path (top->cr);
  cairo_fill (top->cr);
}

static void
draw_backdrop (const Top *top)
{
  if (!top->style->paper) {
    sw_style_set_ink (top->style, top->cr, SW_INK_PAPER);
    cairo_paint (top->cr);
  }
  draw_viewer (top);
}

static void
draw_foot (const Top *top)
{
  const SwStand *stand = &top->solution->design->stand;
  double half = stand->arm_width_m / 2 * top->view->scale,
         arm = stand->arm_m * top->view->scale;

  if (stand->foot == SW_FOOT_SOCKET) {
    const double dashes[] = { 4, 3 };
    cairo_save (top->cr);
    cairo_set_dash (top->cr, dashes, 2, 0);
    circle (top, stand->socket_diameter_m / 2);
    stroke (top, SW_INK_SECOND, top->style->line_thin);
    cairo_restore (top->cr);
    return;
  }
  cairo_save (top->cr);
  cairo_translate (top->cr, top->view->x0, top->view->y0);
  cairo_rotate (top->cr, G_PI / 4);
  cairo_rectangle (top->cr, -arm, -half, 2 * arm, 2 * half);
  cairo_rectangle (top->cr, -half, -arm, 2 * half, 2 * arm);
  cairo_restore (top->cr);
  sw_style_set_ink_alpha (top->style, top->cr, SW_INK_SECOND, 0.12);
  cairo_fill_preserve (top->cr);
  stroke (top, SW_INK_SECOND, top->style->line_thin);
}

static void
draw_guys (const Top *top)
{
  const SwDesign *design = top->solution->design;
  SwLineLook look = { SW_INK_SECOND, 1, top->style->line_thin };
  SwLines *lines = sw_lines_begin (top->cr, top->style, &look);
  double x, y;

  for (int guy = 1; guy <= design->guys.count; guy++) {
    from_above (top->view,
                sw_point_on_circle (sw_guy_azimuth_deg (design, guy), design->guys.radius_m, 0),
                &x,
                &y);
    sw_lines_add (lines, top->view->x0, top->view->y0, x, y);
  }
  sw_lines_end (lines);
  for (int guy = 1; guy <= design->guys.count; guy++) {
    from_above (top->view,
                sw_point_on_circle (sw_guy_azimuth_deg (design, guy), design->guys.radius_m, 0),
                &x,
                &y);
    cairo_rectangle (top->cr, x - 2.5, y - 2.5, 5, 5);
  }
  stroke (top, SW_INK_SECOND, top->style->line_thin);
}

static void
draw_ring (const Top *top)
{
  const SwDesign *design = top->solution->design;
  const SwShape *shape = &design->shape;
  double pipe = MAX (top->solution->ring_od_m * top->view->scale, top->style->line_thick);
  double radius = shape->ring_radius_m * top->view->scale;

  if (design->stand.ring_span == SW_SPAN_ARC && shape->coverage_deg < 360) {
    arc (top,
         radius,
         shape->facing_deg - shape->coverage_deg / 2,
         shape->facing_deg + shape->coverage_deg / 2);
    sw_style_set_ink_alpha (top->style, top->cr, SW_INK_MAIN, 0.75);
    cairo_set_line_width (top->cr, pipe);
    cairo_stroke (top->cr);
  } else {
    circle_line (top, shape->ring_radius_m, &(SwLineLook){ SW_INK_MAIN, 0.75, pipe });
  }
  circle_line (top,
               shape->crown_radius_m,
               &(SwLineLook){ SW_INK_MAIN, 1, top->style->line_middle });
}

/* From the post to the ring, as wide as their pipe. */
static void
draw_spokes (const Top *top)
{
  const SwRingJoints *joints = &top->solution->ring.joints;
  double pipe = MAX (top->solution->ring_od_m * top->view->scale, top->style->line_middle);
  double x, y;

  for (int spoke = 1; spoke <= joints->spokes; spoke++) {
    outside (top,
             sw_ring_spoke_azimuth_deg (joints, spoke),
             top->solution->design->shape.ring_radius_m,
             0,
             &x,
             &y);
    cairo_move_to (top->cr, top->view->x0, top->view->y0);
    cairo_line_to (top->cr, x, y);
  }
  sw_style_set_ink_alpha (top->style, top->cr, SW_INK_MAIN, 0.5);
  cairo_set_line_width (top->cr, pipe);
  cairo_stroke (top->cr);
}

/* A short bar across the pipe where two pieces are joined. */
static void
draw_joints (const Top *top)
{
  const SwRingJoints *joints = &top->solution->ring.joints;
  double radius_m = top->solution->design->shape.ring_radius_m, x, y;
  double off = top->solution->ring_od_m / 2 * top->view->scale + (top->style->paper ? 2.5 : 4);

  for (int joint = 1; joint <= joints->count; joint++) {
    double azimuth_deg = sw_ring_joint_azimuth_deg (joints, joint);
    outside (top, azimuth_deg, radius_m, -off, &x, &y);
    cairo_move_to (top->cr, x, y);
    outside (top, azimuth_deg, radius_m, off, &x, &y);
    cairo_line_to (top->cr, x, y);
  }
  stroke (top, SW_INK_MAIN, top->style->line_middle);
}

static void
draw_ties (const Top *top)
{
  const SwDesign *design = top->solution->design;
  SwLineLook look = { SW_INK_SECOND, 1, top->style->line_thin };

  for (int tie = 1; tie <= design->stand.ring_ties; tie++) {
    SwCircle circle = { .radius = top->style->paper ? 2.2 : 3.5 };
    outside (top,
             sw_ring_tie_azimuth_deg (design, tie),
             design->shape.ring_radius_m,
             0,
             &circle.x,
             &circle.y);
    sw_circle_draw (top->cr, top->style, &circle, &look);
  }
}

static void
draw_strips (const Top *top)
{
  const SwShape *shape = &top->solution->design->shape;
  SwLineLook look = { SW_INK_TREE, 0.8, top->style->line_thin };
  SwLines *lines = sw_lines_begin (top->cr, top->style, &look);
  double x1, y1, x2, y2;

  for (int strip = 1; strip <= shape->strip_count; strip++) {
    from_above (top->view, sw_hook_point (shape, strip), &x1, &y1);
    from_above (top->view, sw_tie_point (shape, strip), &x2, &y2);
    sw_lines_add (lines, x1, y1, x2, y2);
  }
  sw_lines_end (lines);
}

static void
draw_post (const Top *top)
{
  cairo_new_sub_path (top->cr);
  cairo_arc (top->cr,
             top->view->x0,
             top->view->y0,
             MAX (top->solution->post_od_m / 2 * top->view->scale, 2),
             0,
             2 * G_PI);
  sw_style_set_ink (top->style, top->cr, SW_INK_MAIN);
  cairo_fill (top->cr);
}

static void
draw_tree (const Top *top)
{
  draw_foot (top);
  draw_guys (top);
  draw_strips (top);
  draw_spokes (top);
  draw_ring (top);
  draw_joints (top);
  draw_ties (top);
  sw_draw_pixels (top->cr, top->picture, top->solution, from_above);
  draw_post (top);
}

/* Every nth strip has its number: as many as stand clear of one another. */
static int
number_step (const Top *top)
{
  static const int steps[] = { 1, 2, 3, 4, 5, 6, 10, 12, 20, 50, 100 };
  double apart = top->solution->cone.spacing_ring_m * top->view->scale;
  double wanted = top->style->text_small * NUMBER_ROOM;

  for (guint i = 0; i < G_N_ELEMENTS (steps); i++) {
    if (steps[i] * apart >= wanted)
      return steps[i];
  }
  return 200;
}

/* On the ring, from a strip on round to strip 1. */
static double
back_to_first (const Top *top, int strip)
{
  const SwShape *shape = &top->solution->design->shape;
  double on_m = (strip - 1) * top->solution->cone.spacing_ring_m;

  return (2 * G_PI * shape->ring_radius_m - on_m) * top->view->scale;
}

static void
draw_numbers (const Top *top)
{
  const SwShape *shape = &top->solution->design->shape;
  SwTextLook look = { .size = top->style->text_small,
                      .align = SW_TEXT_CENTRE,
                      .tabular = TRUE };
  int step = number_step (top);
  double x, y;

  for (int strip = 1; strip <= shape->strip_count; strip++) {
    gboolean near_first =
      strip > 1 && back_to_first (top, strip) < NUMBER_ROOM * top->style->text_small;
    if ((strip != 1 && strip % step != 0) || near_first || (strip != 1 && strip < step))
      continue;
    g_autofree char *number = g_strdup_printf ("%d", strip);
    outside (top,
             sw_cone_azimuth_deg (shape, strip),
             shape->ring_radius_m,
             top->style->paper ? 9 : 13,
             &x,
             &y);
    look.bold = strip == 1;
    sw_style_set_ink (top->style, top->cr, strip == 1 ? SW_INK_MAIN : SW_INK_SECOND);
    sw_text_draw (top->cr,
                  top->picture->texts,
                  top->style,
                  &look,
                  x,
                  y + top->style->text_small * 0.36,
                  number);
  }
}

/* The seam is where strip 1 meets the last one: a small gap mark inside the ring. */
static void
draw_seam (const Top *top)
{
  const SwShape *shape = &top->solution->design->shape;
  SwTextLook look = { .size = top->style->text_small, .align = SW_TEXT_CENTRE };
  double x, y;

  if (shape->coverage_deg < 360 || shape->ring_radius_m * top->view->scale < 60)
    return;
  outside (top,
           sw_cone_azimuth_deg (shape, 1),
           shape->ring_radius_m,
           -(top->style->text_small + 8),
           &x,
           &y);
  sw_style_set_ink (top->style, top->cr, SW_INK_PAPER);
  double width;
  const char *word = sw_language_text (top->picture->language, N_ ("seam"));
  sw_text_measure (top->cr, top->picture->texts, top->style, &look, word, &width, NULL);
  cairo_rectangle (top->cr,
                   x - width / 2 - 3,
                   y - top->style->text_small * 0.7,
                   width + 6,
                   top->style->text_small * 1.4);
  cairo_fill (top->cr);
  sw_style_set_ink (top->style, top->cr, SW_INK_SECOND);
  sw_text_draw (top->cr,
                top->picture->texts,
                top->style,
                &look,
                x,
                y + top->style->text_small * 0.36,
                word);
}

static void
draw_coverage (const Top *top)
{
  const SwDesign *design = top->solution->design;
  const SwShape *shape = &design->shape;
  double radius = shape->ring_radius_m * top->view->scale * 0.55;

  if (shape->coverage_deg >= 360)
    return;
  arc (top,
       radius,
       shape->facing_deg - shape->coverage_deg / 2,
       shape->facing_deg + shape->coverage_deg / 2);
  stroke (top, SW_INK_DIMENSION, top->style->line_thin);
  SwTextLook look = sw_dimension_look (top->style);
  double x, y, between = (shape->ring_radius_m - shape->crown_radius_m) * top->view->scale;
  if (between < 4 * top->style->text_small) /* or it meets the strips' numbers */
    return;
  g_autofree char *text = sw_units_format (shape->coverage_deg,
                                           SW_QUANTITY_ANGLE,
                                           design->units,
                                           top->picture->language);
  outside (top,
           shape->facing_deg + 180,
           shape->crown_radius_m,
           top->style->text_small + 6,
           &x,
           &y);
  sw_style_set_ink (top->style, top->cr, SW_INK_DIMENSION);
  sw_text_draw (top->cr, top->picture->texts, top->style, &look, x, y + 4, text);
}

/* Below the tree: the ring's diameter to its centreline, and the spacing with the number of
 * strips. */
static void
draw_dimensions (const Top *top)
{
  const SwDesign *design = top->solution->design;
  const SwShape *shape = &design->shape;
  double radius = shape->ring_radius_m * top->view->scale;
  double reach =
    MAX (radius, design->guys.count > 0 ? design->guys.radius_m * top->view->scale : 0);
  double low = top->view->y0 + reach + (top->style->paper ? 30 : 44);

  draw_numbers (top);
  draw_seam (top);
  draw_coverage (top);
  if (top->view->height - low < 30)
    return;
  g_autofree char *across = sw_units_format (2 * shape->ring_radius_m,
                                             SW_QUANTITY_LENGTH,
                                             design->units,
                                             top->picture->language);
  g_autofree char *diameter = g_strconcat ("⌀ ", across, NULL);
  sw_dimension_width (top->cr,
                      top->picture,
                      top->view->x0 - radius,
                      top->view->x0 + radius,
                      low,
                      top->view->y0 + (top->style->paper ? 4 : 6),
                      diameter);
}

static void
draw_spacing (const Top *top)
{
  const SwDesign *design = top->solution->design;
  SwTextLook look = { .size = top->style->text_small, .align = SW_TEXT_LEFT, .tabular = TRUE };
  g_autofree char *spacing = sw_units_format (top->solution->cone.spacing_ring_m,
                                              SW_QUANTITY_SHORT_LENGTH,
                                              design->units,
                                              top->picture->language);
  /* Translators: number of strips and how far apart they are on the ring. */
  g_autofree char *text =
    g_strdup_printf (sw_language_text (top->picture->language, N_ ("%d strips, %s apart")),
                     design->shape.strip_count,
                     spacing);

  sw_style_set_ink (top->style, top->cr, SW_INK_DIMENSION);
  sw_text_draw (top->cr,
                top->picture->texts,
                top->style,
                &look,
                10,
                top->style->text_small + 8,
                text);
}

void
sw_top_view_draw (cairo_t *cr, const SwPicture *picture, const SwSolution *solution)
{
  Top top = { cr, picture, solution, picture->view, picture->style };

  cairo_save (cr);
  if (picture->parts & SW_DRAW_BACKDROP)
    draw_backdrop (&top);
  if (picture->parts & SW_DRAW_TREE)
    draw_tree (&top);
  if (picture->parts & SW_DRAW_DIMENSIONS) {
    draw_dimensions (&top);
    draw_spacing (&top);
  }
  cairo_restore (cr);
}

void
sw_top_view_draw_ghost (cairo_t *cr, const SwPicture *picture, const SwSolution *before)
{
  Top top = { cr, picture, before, picture->view, picture->style };

  cairo_save (cr);
  circle (&top, before->design->shape.ring_radius_m);
  stroke (&top, SW_INK_GHOST, picture->style->line_middle);
  cairo_restore (cr);
}
