// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/view.h"

#include "drawing/person.h"

#include <math.h>

/* Room for dimension lines and their texts, device units; less where the picture is small. */
static double
margin_of (double size, double wanted)
{
  return MIN (wanted, size * 0.22);
}

static double
half_width_m (const SwSolution *solution)
{
  const SwDesign *design = solution->design;
  double half =
    MAX (design->shape.ring_radius_m, design->shape.crown_radius_m) + solution->ring_od_m / 2;

  half = MAX (half, design->topper.kind == SW_TOPPER_STAR ? design->topper.width_m / 2 : 0);
  if (design->stand.foot != SW_FOOT_SOCKET)
    half = MAX (half, design->stand.arm_m);
  if (design->guys.count > 0)
    half = MAX (half, design->guys.radius_m);
  return half + 0.05;
}

/* Left of the axis: the person stands beside the ring or the foot, in front of the guys. */
static double
left_m (const SwSolution *solution)
{
  const SwDesign *design = solution->design;
  double clear = MAX (design->shape.ring_radius_m, design->shape.crown_radius_m);

  if (design->stand.foot != SW_FOOT_SOCKET)
    clear = MAX (clear, design->stand.arm_m);
  return MAX (half_width_m (solution), clear + SW_PERSON_GAP_M + SW_PERSON_WIDTH_M + 0.05);
}

SwView
sw_side_view_fit (const SwSolution *solution, double width, double height)
{
  double right_m = half_width_m (solution), all_m = left_m (solution) + right_m;
  double high_m = MAX (solution->cone.overall_height_m, SW_PERSON_HEIGHT_M) + 0.05;
  double left = margin_of (width, 14), right = margin_of (width, 66);
  double top = margin_of (height, 26), bottom = margin_of (height, 74);
  double scale = MIN ((width - left - right) / all_m, (height - top - bottom) / high_m);
  double spare = (height - top - bottom - high_m * scale) / 2;

  return (SwView){ .width = width,
                   .height = height,
                   .x0 = left + (width - left - right - all_m * scale) / 2 +
                         left_m (solution) * scale,
                   .y0 = height - bottom - spare * 0.6,
                   .scale = scale };
}

SwView
sw_top_view_fit (const SwSolution *solution, double width, double height)
{
  double half_m = half_width_m (solution);
  double side = margin_of (width, 46), top = margin_of (height, 40),
         bottom = margin_of (height, 84);
  double scale =
    MIN ((width - 2 * side) / (2 * half_m), (height - top - bottom) / (2 * half_m));

  return (SwView){ .width = width,
                   .height = height,
                   .x0 = width / 2,
                   .y0 = top + (height - top - bottom) / 2,
                   .scale = scale };
}

gboolean
sw_side_view_holds (const SwView *view, const SwSolution *solution)
{
  double half_m = half_width_m (solution), high_m = solution->cone.overall_height_m;

  return sw_view_x (view, -half_m) >= 4 && sw_view_x (view, half_m) <= view->width - 60 &&
         sw_view_y (view, high_m) >= 4 && high_m * view->scale > view->height * 0.3;
}

gboolean
sw_top_view_holds (const SwView *view, const SwSolution *solution)
{
  double half_m = half_width_m (solution);

  return half_m * view->scale <= MIN (view->x0, view->y0) - 4 &&
         half_m * view->scale > MIN (view->width, view->height) * 0.2;
}
