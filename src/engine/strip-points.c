// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/strip-points.h"

#include "engine/cone.h"

#include <math.h>

SwPoint
sw_point_on_circle (double azimuth_deg, double radius_m, double z_m)
{
  double azimuth = azimuth_deg * G_PI / 180;

  return (SwPoint){ radius_m * sin (azimuth), -radius_m * cos (azimuth), z_m };
}

SwPoint
sw_hook_point (const SwShape *shape, int strip)
{
  return sw_point_on_circle (sw_cone_azimuth_deg (shape, strip),
                             shape->crown_radius_m,
                             shape->crown_height_m);
}

SwPoint
sw_tie_point (const SwShape *shape, int strip)
{
  return sw_point_on_circle (sw_cone_azimuth_deg (shape, strip),
                             shape->ring_radius_m,
                             shape->ring_height_m);
}

static double
slant_m (const SwShape *shape)
{
  return hypot (shape->crown_height_m - shape->ring_height_m,
                shape->ring_radius_m - shape->crown_radius_m);
}

static SwPoint
along (SwPoint hook, SwPoint tie, double share)
{
  return (SwPoint){ hook.x_m + (tie.x_m - hook.x_m) * share,
                    hook.y_m + (tie.y_m - hook.y_m) * share,
                    hook.z_m + (tie.z_m - hook.z_m) * share };
}

static double
share_of_pixel (const SwDesign *design, int pixel, double slant)
{
  const SwStrip *strip = &design->strip;

  return (strip->lead_m + (strip->pixels - pixel) * strip->pitch_m) / slant;
}

SwPoint
sw_pixel_point (const SwDesign *design, int strip, int pixel)
{
  return along (sw_hook_point (&design->shape, strip),
                sw_tie_point (&design->shape, strip),
                share_of_pixel (design, pixel, slant_m (&design->shape)));
}

void
sw_pixel_points (const SwDesign *design, int strip, SwPoint *out)
{
  SwPoint hook = sw_hook_point (&design->shape, strip);
  SwPoint tie = sw_tie_point (&design->shape, strip);
  double slant = slant_m (&design->shape);

  for (int pixel = 1; pixel <= design->strip.pixels; pixel++)
    out[pixel - 1] = along (hook, tie, share_of_pixel (design, pixel, slant));
}
