// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/parts.h"

#include "drawing/dots.h"

#include <math.h>

static double
dot_size (const SwPicture *picture, const SwSolution *solution)
{
  double pitch = solution->design->strip.pitch_m * picture->view->scale;

  return CLAMP (floor (pitch * 0.45),
                picture->style->paper ? 0.7 : 1,
                picture->style->paper ? 1.8 : 3);
}

static void
add_strip (SwDots *dots,
           const SwPicture *picture,
           const SwDesign *design,
           int strip,
           SwPlace place)
{
  int n = design->strip.pixels;
  double x1, y1, x2, y2;

  place (picture->view, sw_pixel_point (design, strip, 1), &x1, &y1);
  place (picture->view, sw_pixel_point (design, strip, n), &x2, &y2);
  for (int i = 0; i < n; i++) {
    double share = n > 1 ? (double) i / (n - 1) : 0;
    sw_dots_add (dots, x1 + (x2 - x1) * share, y1 + (y2 - y1) * share);
  }
}

/* On paper a strip is one dashed line, a dash a pixel: a page of 512 strips would otherwise
 * hold more dots than all else together. */
static void
stroke_strip (cairo_t *cr,
              const SwPicture *picture,
              const SwDesign *design,
              int strip,
              SwPlace place,
              double size)
{
  int n = design->strip.pixels;
  double x1, y1, x2, y2;

  place (picture->view, sw_pixel_point (design, strip, 1), &x1, &y1);
  place (picture->view, sw_pixel_point (design, strip, n), &x2, &y2);

  double length = hypot (x2 - x1, y2 - y1);
  double pitch = n > 1 ? length / (n - 1) : 0;
  double along_x = length > 0 ? (x2 - x1) / length : 1;
  double along_y = length > 0 ? (y2 - y1) / length : 0;
  const double dashes[] = { size, pitch - size };

  cairo_set_dash (cr, dashes, pitch > size ? 2 : 0, 0);
  cairo_move_to (cr, x1 - along_x * size / 2, y1 - along_y * size / 2);
  cairo_line_to (cr, x2 + along_x * size / 2, y2 + along_y * size / 2);
  cairo_stroke (cr);
}

static void
draw_on_screen (cairo_t *cr,
                const SwPicture *picture,
                const SwSolution *solution,
                SwPlace place)
{
  const SwDesign *design = solution->design;
  SwDots *dots = sw_dots_begin (cr, picture->style, SW_INK_PIXEL, dot_size (picture, solution));
  double x, y;

  for (int strip = 1; strip <= design->shape.strip_count; strip++)
    add_strip (dots, picture, design, strip, place);
  for (guint i = 0; i < solution->topper_pixels->len; i++) {
    place (picture->view, g_array_index (solution->topper_pixels, SwPoint, i), &x, &y);
    sw_dots_add (dots, x, y);
  }
  sw_dots_end (dots);
}

static void
draw_on_paper (cairo_t *cr, const SwPicture *picture, const SwSolution *solution, SwPlace place)
{
  double size = dot_size (picture, solution), x, y;

  cairo_save (cr);
  sw_style_set_ink (picture->style, cr, SW_INK_PIXEL);
  cairo_set_line_width (cr, size);
  for (int strip = 1; strip <= solution->design->shape.strip_count; strip++)
    stroke_strip (cr, picture, solution->design, strip, place, size);
  for (guint i = 0; i < solution->topper_pixels->len; i++) {
    place (picture->view, g_array_index (solution->topper_pixels, SwPoint, i), &x, &y);
    cairo_rectangle (cr, x - size / 2, y - size / 2, size, size);
  }
  cairo_fill (cr);
  cairo_restore (cr);
}

void
sw_draw_pixels (cairo_t *cr,
                const SwPicture *picture,
                const SwSolution *solution,
                SwPlace place)
{
  if (picture->style->paper)
    draw_on_paper (cr, picture, solution, place);
  else
    draw_on_screen (cr, picture, solution, place);
}

double
sw_guy_azimuth_deg (const SwDesign *design, int guy)
{
  return sw_azimuth_wrap_deg (design->guys.first_azimuth_deg +
                              (guy - 1) * 360.0 / design->guys.count);
}
