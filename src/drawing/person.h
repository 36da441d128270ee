// SPDX-License-Identifier: GPL-3.0-or-later
/* person.h: a standing person for scale, 1.75 m: a plain outline of our own. */
#pragma once
#include <cairo.h>

#define SW_PERSON_HEIGHT_M 1.75
#define SW_PERSON_WIDTH_M 0.62
#define SW_PERSON_GAP_M 0.60 /* between person and tree */

/* Adds the outline to the path: feet at x, ground y; scale in device units a metre. */
void sw_person_path (cairo_t *cr, double x, double ground_y, double scale);
