// SPDX-License-Identifier: GPL-3.0-or-later
/* night-view.h: the lit tree, straight on, as points of light added in linear light.
 *
 * Source  sRGB transfer curve: IEC 61966-2-1. Light adds linearly; the tone map is 1 − e^(−kL).
 */
#pragma once
#include "drawing/side-view.h"

typedef struct {
  const char *scene; /* a name of sw_scenes; NULL = the first */
  double time_s;
  gboolean day; /* overcast day instead of night */
} SwNight;

extern const char *const sw_scenes[];       /* file words: "warm-white", …; NULL-ended */
extern const char *const sw_scene_labels[]; /* N_() */

/* Draws into an ARGB32 or RGB24 image surface of its own size; the same input gives the same
 * bytes. */
void sw_night_view_draw (cairo_surface_t *image,
                         const SwSolution *solution,
                         const SwNight *night);
