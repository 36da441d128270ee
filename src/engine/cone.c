// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cone.h"

#include <math.h>

static double
radians (double deg)
{
  return deg * G_PI / 180;
}

double
sw_azimuth_wrap_deg (double angle_deg)
{
  double wrapped = fmod (angle_deg, 360);

  if (wrapped < 0)
    wrapped += 360;
  /* −1e-17 + 360 rounds to 360; and fmod (−360) is −0, which + 0 makes 0 */
  return wrapped < 360 ? wrapped + 0.0 : 0;
}

static gboolean
is_closed (const SwShape *shape)
{
  return shape->coverage_deg >= 360;
}

double
sw_cone_step_deg (const SwShape *shape)
{
  return shape->coverage_deg /
         (is_closed (shape) ? shape->strip_count : shape->strip_count - 1);
}

double
sw_cone_azimuth_deg (const SwShape *shape, int strip)
{
  int gaps = is_closed (shape) ? shape->strip_count : shape->strip_count - 1;
  double first =
    is_closed (shape) ? shape->facing_deg + 180 : shape->facing_deg - shape->coverage_deg / 2;

  return sw_azimuth_wrap_deg (first + (strip - 1) * shape->coverage_deg / gaps);
}

static double
overall_height_m (const SwDesign *design)
{
  const SwTopper *topper = &design->topper;
  double star_m = topper->kind == SW_TOPPER_STAR ? topper->stub_m + topper->height_m : 0;

  return design->shape.crown_height_m + star_m;
}

void
sw_cone_init (SwCone *cone, const SwDesign *design)
{
  const SwShape *shape = &design->shape;
  const SwStrip *strip = &design->strip;
  double height_m = shape->crown_height_m - shape->ring_height_m;
  double out_m = shape->ring_radius_m - shape->crown_radius_m;
  double step = radians (sw_cone_step_deg (shape));
  int topper_pixels = design->topper.kind == SW_TOPPER_STAR ? design->topper.pixels : 0;

  *cone = (SwCone){
    .slant_m = sqrt (height_m * height_m + out_m * out_m),
    .lean_deg = atan2 (out_m, height_m) * 180 / G_PI,
    .run_m = (strip->pixels - 1) * strip->pitch_m,
    .circumference_m = 2 * G_PI * shape->ring_radius_m,
    .spacing_ring_m = shape->ring_radius_m * step,
    .chord_ring_m = 2 * shape->ring_radius_m * sin (step / 2),
    .spacing_crown_m = shape->crown_radius_m * step,
    .strip_pixels_total = shape->strip_count * strip->pixels,
    .overall_height_m = overall_height_m (design),
  };
  cone->tail_m = cone->slant_m - strip->lead_m - cone->run_m;
  cone->pixels_total = cone->strip_pixels_total + topper_pixels;
}
