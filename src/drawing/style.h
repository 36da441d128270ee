// SPDX-License-Identifier: GPL-3.0-or-later
/* style.h: inks, line widths and text sizes, one const table a medium.
 *
 * Line widths come from one series: 0.18, 0.25, 0.35, 0.5, 0.7 mm on paper (ISO 128), 1, 1.5, 2
 * px on screen.
 */
#pragma once
#include <cairo.h>
#include <glib.h>

typedef struct {
  double red, green, blue;
} SwInk;

typedef enum {
  SW_INK_PAPER,
  SW_INK_MAIN,
  SW_INK_SECOND,
  SW_INK_DIMENSION,
  SW_INK_GRIP,
  SW_INK_TREE,
  SW_INK_STOP,
  SW_INK_WARN,
  SW_INK_TIP,
  SW_INK_PIXEL, /* the lights, small dots */
  SW_INK_GHOST, /* the shape before a drag */
  SW_N_INKS,
} SwInkId;

typedef struct {
  SwInk inks[SW_N_INKS];
  double line_thin, line_middle, line_thick;  /* device units: px on screen, pt on paper */
  double text_small, text_normal, text_large; /* font size, device units */
  const char *font;                           /* family list */
  gboolean paper;                             /* vectors for print: no halo, no paper fill */
} SwStyle;

extern const SwStyle sw_style_light, sw_style_dark, sw_style_light_contrast,
  sw_style_dark_contrast, sw_style_paper;

void sw_style_set_ink (const SwStyle *style, cairo_t *cr, SwInkId ink);
void sw_style_set_ink_alpha (const SwStyle *style, cairo_t *cr, SwInkId ink, double alpha);

/* WCAG contrast ratio of two inks, 1 … 21. Source: WCAG 2.1, relative luminance. */
double sw_ink_contrast (SwInk a, SwInk b);
