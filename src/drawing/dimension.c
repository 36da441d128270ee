// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/dimension.h"

#include <math.h>

SwTextLook
sw_dimension_look (const SwStyle *style)
{
  return (SwTextLook){ .size = style->text_small, .tabular = TRUE, .align = SW_TEXT_CENTRE };
}

/* On the screen a thin line lies on whole pixels, or it would be two grey ones. */
static double
on_pixel (const SwStyle *style, double place)
{
  return style->paper ? place : floor (place) + 0.5;
}

static double
arrow_length (const SwStyle *style)
{
  return style->paper ? 6 : 7;
}

static void
arrow_path (cairo_t *cr, const SwStyle *style, double x, double y, double angle)
{
  double length = arrow_length (style), half = length * 0.18;
  double c = cos (angle), s = sin (angle);

  cairo_move_to (cr, x, y);
  cairo_line_to (cr, x - length * c + half * s, y - length * s - half * c);
  cairo_line_to (cr, x - length * c - half * s, y - length * s + half * c);
  cairo_close_path (cr);
}

/* Line with arrows at both ends; outside ones with short tails where it is too short for them.
 */
static void
line_with_arrows (cairo_t *cr, const SwStyle *style, double x1, double y1, double x2, double y2)
{
  double angle = atan2 (y2 - y1, x2 - x1), length = hypot (x2 - x1, y2 - y1),
         tail = 2 * arrow_length (style);
  gboolean outside = length < 2.6 * arrow_length (style);
  double out = outside ? tail : 0;

  cairo_set_line_width (cr, style->line_thin);
  cairo_move_to (cr, x1 - out * cos (angle), y1 - out * sin (angle));
  cairo_line_to (cr, x2 + out * cos (angle), y2 + out * sin (angle));
  cairo_stroke (cr);
  arrow_path (cr, style, x1, y1, outside ? angle : angle + G_PI);
  arrow_path (cr, style, x2, y2, outside ? angle + G_PI : angle);
  cairo_fill (cr);
}

/* Reads from the bottom, upright text from the right. */
static double
reading_angle (double angle)
{
  while (angle > G_PI / 2 + 1e-6)
    angle -= G_PI;
  while (angle <= -G_PI / 2 - 1e-6)
    angle += G_PI;
  return angle > G_PI / 2 - 1e-6 ? angle - G_PI : angle;
}

/* Above the middle of the line, turned so that it reads from the bottom or from the right. */
static void
text_on_line (cairo_t *cr,
              const SwPicture *picture,
              double x,
              double y,
              double angle,
              const char *text)
{
  SwTextLook look = sw_dimension_look (picture->style);

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_rotate (cr, reading_angle (angle));
  sw_text_draw (cr, picture->texts, picture->style, &look, 0, -3, text);
  cairo_restore (cr);
}

static double
text_width (cairo_t *cr, const SwPicture *picture, const char *text)
{
  SwTextLook look = sw_dimension_look (picture->style);
  double width;

  sw_text_measure (cr, picture->texts, picture->style, &look, text, &width, NULL);
  return width;
}

void
sw_dimension_height (cairo_t *cr, const SwPicture *picture, const SwHeightDimension *dimension)
{
  const SwStyle *style = picture->style;
  double past = dimension->x >= dimension->from_low ? 3 : -3;
  double x = on_pixel (style, dimension->x), low = on_pixel (style, dimension->y_low),
         high = on_pixel (style, dimension->y_high), middle = (low + high) / 2;

  sw_style_set_ink (style, cr, SW_INK_DIMENSION);
  cairo_set_line_width (cr, style->line_thin);
  cairo_move_to (cr, dimension->from_low + past, low);
  cairo_line_to (cr, x + past, low);
  cairo_move_to (cr, dimension->from_high + past, high);
  cairo_line_to (cr, x + past, high);
  cairo_stroke (cr);
  line_with_arrows (cr, style, x, low, x, high);
  if (fabs (low - high) >= text_width (cr, picture, dimension->text) + 12) {
    text_on_line (cr, picture, x, middle, G_PI / 2, dimension->text);
    return;
  }
  SwTextLook look = sw_dimension_look (style);
  look.align = past > 0 ? SW_TEXT_LEFT : SW_TEXT_RIGHT;
  sw_text_draw (cr,
                picture->texts,
                style,
                &look,
                x + 2 * past,
                middle + style->text_small * 0.35,
                dimension->text);
}

void
sw_dimension_width (cairo_t *cr,
                    const SwPicture *picture,
                    double x1,
                    double x2,
                    double y,
                    double from,
                    const char *text)
{
  const SwStyle *style = picture->style;
  double left = on_pixel (style, x1), right = on_pixel (style, x2), low = on_pixel (style, y);

  sw_style_set_ink (style, cr, SW_INK_DIMENSION);
  cairo_set_line_width (cr, style->line_thin);
  cairo_move_to (cr, left, from + 3);
  cairo_line_to (cr, left, low + 3);
  cairo_move_to (cr, right, from + 3);
  cairo_line_to (cr, right, low + 3);
  cairo_stroke (cr);
  line_with_arrows (cr, style, left, low, right, low);
  text_on_line (cr, picture, (left + right) / 2, low, 0, text);
}

/* So that no line of the tree runs through the text over this one. */
static void
clear_for_text (cairo_t *cr,
                const SwPicture *picture,
                double x,
                double y,
                double angle,
                const char *text)
{
  double width = text_width (cr, picture, text), size = picture->style->text_small;

  cairo_save (cr);
  cairo_translate (cr, x, y);
  cairo_rotate (cr, reading_angle (angle));
  cairo_rectangle (cr, -width / 2 - 2, -2, width + 4, -size - 3);
  sw_style_set_ink (picture->style, cr, SW_INK_PAPER);
  cairo_fill (cr);
  cairo_restore (cr);
}

void
sw_dimension_along (cairo_t *cr, const SwPicture *picture, const SwSlantDimension *dimension)
{
  const SwStyle *style = picture->style;
  double x1 = dimension->x1, y1 = dimension->y1, x2 = dimension->x2, y2 = dimension->y2;
  double length = hypot (x2 - x1, y2 - y1), nx = (y2 - y1) / length, ny = -(x2 - x1) / length;
  double off = dimension->off, from = dimension->from, past = off + 3;
  double angle = atan2 (y2 - y1, x2 - x1);
  double x = (x1 + x2) / 2 + nx * off, y = (y1 + y2) / 2 + ny * off;

  if (length < text_width (cr, picture, dimension->text) + 20)
    return;
  clear_for_text (cr, picture, x, y, angle, dimension->text);
  sw_style_set_ink (style, cr, SW_INK_DIMENSION);
  cairo_set_line_width (cr, style->line_thin);
  cairo_move_to (cr, x1 + nx * from, y1 + ny * from);
  cairo_line_to (cr, x1 + nx * past, y1 + ny * past);
  cairo_move_to (cr, x2 + nx * from, y2 + ny * from);
  cairo_line_to (cr, x2 + nx * past, y2 + ny * past);
  cairo_stroke (cr);
  line_with_arrows (cr, style, x1 + nx * off, y1 + ny * off, x2 + nx * off, y2 + ny * off);
  text_on_line (cr, picture, x, y, angle, dimension->text);
}
