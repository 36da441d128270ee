// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/page-title.h"

#define TITLE_SIZE 9.0
#define SMALL_SIZE 6.4 /* three lines of it stand above the head */
#define TOP 12.0       /* points from the paper's edge: printers leave less than that white */
#define APART 12.0

void
sw_page_title_draw (cairo_t *cr,
                    const SwStyle *style,
                    const SwHeadLine *head,
                    const char *title)
{
  SwTextLook look = { .size = TITLE_SIZE, .align = SW_TEXT_RIGHT };
  double width, height;

  sw_text_measure (cr, NULL, style, &look, title, &width, &height);
  if (width <= head->right - head->left - head->taken - APART) {
    sw_text_draw (cr, NULL, style, &look, head->right, head->baseline, title);
    return;
  }
  look = (SwTextLook){ .size = SMALL_SIZE, .align = SW_TEXT_LEFT };
  sw_text_draw_wrapped (cr, style, &look, head->left, TOP, head->right - head->left, title);
}
