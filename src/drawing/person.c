// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/person.h"

#include <glib.h>

/* The right half from crotch to neck, metres: x out from the middle, height. The left half
 * mirrors it. */
static const double right_half[][2] = {
  { 0.010, 0.80 }, { 0.045, 0.05 }, { 0.055, 0.00 }, { 0.165, 0.00 },
  { 0.160, 0.05 }, { 0.145, 0.45 }, { 0.165, 0.86 }, { 0.150, 1.02 },
  { 0.175, 1.25 }, { 0.205, 1.05 }, { 0.225, 0.80 }, { 0.285, 0.80 },
  { 0.270, 1.08 }, { 0.240, 1.36 }, { 0.200, 1.44 }, { 0.060, 1.49 },
};

void
sw_person_path (cairo_t *cr, double x, double ground_y, double scale)
{
  int n = G_N_ELEMENTS (right_half);

  cairo_new_sub_path (cr);
  for (int i = 0; i < n; i++)
    cairo_line_to (cr, x + right_half[i][0] * scale, ground_y - right_half[i][1] * scale);
  for (int i = n - 1; i >= 0; i--)
    cairo_line_to (cr, x - right_half[i][0] * scale, ground_y - right_half[i][1] * scale);
  cairo_close_path (cr);
  cairo_new_sub_path (cr);
  cairo_arc (cr, x, ground_y - 1.63 * scale, 0.115 * scale, 0, 2 * G_PI);
}
