// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/zoom.h"

static double
factor_of (const SwZoom *zoom)
{
  return CLAMP (zoom->factor, 1, SW_ZOOM_MOST);
}

/* The picture grows from the view's left upper corner; so far it can be shifted. */
static SwZoom
held (double factor, double shift_x, double shift_y, const SwView *whole)
{
  return (SwZoom){ factor,
                   CLAMP (shift_x, -whole->width * (factor - 1), 0),
                   CLAMP (shift_y, -whole->height * (factor - 1), 0) };
}

SwView
sw_zoom_view (const SwZoom *zoom, const SwView *whole)
{
  double factor = factor_of (zoom);
  SwView view = *whole;

  view.scale *= factor;
  view.x0 = view.x0 * factor + zoom->shift_x;
  view.y0 = view.y0 * factor + zoom->shift_y;
  return view;
}

SwZoom
sw_zoom_at (const SwZoom *zoom, const SwView *whole, double factor, double x, double y)
{
  double to = CLAMP (factor, 1, SW_ZOOM_MOST), more = to / factor_of (zoom);

  return held (to, x - (x - zoom->shift_x) * more, y - (y - zoom->shift_y) * more, whole);
}

SwZoom
sw_zoom_shifted (const SwZoom *zoom, const SwView *whole, double dx, double dy)
{
  return held (factor_of (zoom), zoom->shift_x + dx, zoom->shift_y + dy, whole);
}
