// SPDX-License-Identifier: GPL-3.0-or-later
/* cone.h: the shape in numbers.
 *
 * Takes   a design that passed sw_design_check ()
 * Errors  none; tail_m is negative where the strip does not fit
 * Source  plane geometry: Pythagoras, arc = r·θ, chord = 2r·sin(θ/2)
 */
#pragma once
#include "engine/design.h"

typedef struct {
  double slant_m;  /* hook to tie, straight */
  double lean_deg; /* from the vertical; negative where the crown is wider */
  double run_m;    /* first to last pixel */
  double tail_m;   /* last pixel to tie */
  double circumference_m;
  double spacing_ring_m; /* arc between neighbours on the tie circle */
  double chord_ring_m;   /* the same, straight */
  double spacing_crown_m;
  int strip_pixels_total, pixels_total;
  double overall_height_m;
} SwCone;

void sw_cone_init (SwCone *cone, const SwDesign *design);

/* Angle between neighbouring strips. */
double sw_cone_step_deg (const SwShape *shape);

/* Azimuth of strip 1 … strip_count, in [0, 360). */
double sw_cone_azimuth_deg (const SwShape *shape, int strip);

/* Any angle brought into [0, 360). */
double sw_azimuth_wrap_deg (double angle_deg);
