// SPDX-License-Identifier: GPL-3.0-or-later
/* view.h: metres to device units and back, for one picture.
 *
 * A side view shows x (right) and z (up); a top view shows x (right) and y (up, away from the
 * viewer). Device y grows downwards.
 */
#pragma once
#include "engine/solution.h"

typedef struct {
  double width, height; /* of the picture, device units */
  double x0, y0;        /* where 0,0 metres falls */
  double scale;         /* device units a metre */
} SwView;

static inline double
sw_view_x (const SwView *view, double x_m)
{
  return view->x0 + x_m * view->scale;
}

static inline double
sw_view_y (const SwView *view, double up_m)
{
  return view->y0 - up_m * view->scale;
}

static inline double
sw_view_x_m (const SwView *view, double x)
{
  return (x - view->x0) / view->scale;
}

static inline double
sw_view_up_m (const SwView *view, double y)
{
  return (view->y0 - y) / view->scale;
}

/* The view that shows the whole tree with room for its dimensions (and, from the side, the
 * person). */
SwView sw_side_view_fit (const SwSolution *solution, double width, double height);
SwView sw_top_view_fit (const SwSolution *solution, double width, double height);

/* Whether the tree still stands inside the view; the window refits after a drag, not in it. */
gboolean sw_side_view_holds (const SwView *view, const SwSolution *solution);
gboolean sw_top_view_holds (const SwView *view, const SwSolution *solution);
