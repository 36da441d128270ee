// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/check-bar.h"

#include <glib/gi18n.h>

typedef struct {
  cairo_t *cr;
  const SwStyle *style;
} Bar;

/* A bar with ticks every tenth of its steps, from x, y along (1, 0) or (0, 1). */
static void
draw_bar (const Bar *bar,
          double x,
          double y,
          gboolean down,
          double step_pt,
          int steps,
          const char *label)
{
  SwTextLook look = { .size = 7.6, .align = SW_TEXT_LEFT };
  cairo_t *cr = bar->cr;

  cairo_save (cr);
  cairo_translate (cr, x, y);
  if (down)
    cairo_rotate (cr, G_PI / 2);
  cairo_move_to (cr, 0, 0);
  cairo_line_to (cr, step_pt * steps, 0);
  for (int i = 0; i <= steps; i++) {
    cairo_move_to (cr, i * step_pt, down ? -4 : 0);
    cairo_line_to (cr, i * step_pt, down ? 0 : 4);
  }
  sw_style_set_ink (bar->style, cr, SW_INK_MAIN);
  cairo_set_line_width (cr, bar->style->line_thin);
  cairo_stroke (cr);
  sw_text_draw (cr, NULL, bar->style, &look, 0, down ? 9 : 13, label);
  cairo_restore (cr);
}

void
sw_check_bars_draw (cairo_t *cr,
                    const SwStyle *style,
                    const SwLanguage *language,
                    double width_pt,
                    double height_pt,
                    double margin_pt)
{
  Bar bar = { cr, style };
  double foot = height_pt - margin_pt - 14, right = width_pt - margin_pt;

  draw_bar (&bar,
            margin_pt,
            foot,
            FALSE,
            10 * SW_PT_PER_MM,
            10,
            sw_language_text (language, N_ ("100 mm: measure this bar before you cut")));
  draw_bar (&bar,
            margin_pt + 112 * SW_PT_PER_MM,
            foot,
            FALSE,
            36,
            6,
            sw_language_text (language, N_ ("3 in")));
  draw_bar (&bar,
            right,
            foot - 50 * SW_PT_PER_MM,
            TRUE,
            10 * SW_PT_PER_MM,
            5,
            sw_language_text (language, N_ ("50 mm")));
  draw_bar (&bar,
            right,
            foot - 50 * SW_PT_PER_MM - 100,
            TRUE,
            36,
            2,
            sw_language_text (language, N_ ("1 in")));
}
