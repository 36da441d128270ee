// SPDX-License-Identifier: GPL-3.0-or-later
/* grips.h: the draggable spots of the drawings: where they are, what is under the pointer, and
 * which value a place of the pointer means. One geometry for drawing, picking and dragging.
 */
#pragma once
#include "drawing/side-view.h"

typedef enum {
  SW_GRIP_CROWN_HEIGHT,
  SW_GRIP_RING_HEIGHT,
  SW_GRIP_PITCH,
  SW_GRIP_RING_RADIUS,
  SW_GRIP_STRIP_COUNT, /* drag strip 2's neighbour round the ring */
  SW_GRIP_SPACING,
  SW_GRIP_COVERAGE,
  SW_N_GRIPS,
} SwGripId;

typedef enum { SW_SIDE, SW_TOP } SwViewKind;

typedef struct {
  SwViewKind view;
  const char *path;  /* key it changes, or SW_EDIT_SPACING */
  const char *label; /* N_() */
  SwQuantity quantity;
  double step; /* of an arrow key, SI; Shift a tenth (whole keys: 1), Ctrl ten times */
} SwGripInfo;

extern const SwGripInfo sw_grip_info[SW_N_GRIPS];

typedef struct {
  SwGripId id;
  double x, y;          /* device units */
  double direction_rad; /* which way it slides, 0 = right, growing anticlockwise on screen */
} SwGrip;

/* The grips of one view. Returns: how many were put into `grips`. */
guint sw_grips_place (SwViewKind kind,
                      const SwView *view,
                      const SwSolution *solution,
                      SwGrip grips[SW_N_GRIPS]);

/* Returns: (nullable): the grip within 12 px of the place, the nearest one. */
const SwGrip *sw_grips_hit (const SwGrip *grips, guint n_grips, double x, double y);

/* The value the grip's quantity has when the grip stands at x, y. `start` is the solution at
 * the begin of the drag; out of range is left to sw_edit_number ().
 */
double sw_grip_value_at (SwGripId id,
                         const SwView *view,
                         const SwSolution *start,
                         double x,
                         double y);

/* The value now. */
double sw_grip_value (SwGripId id, const SwSolution *solution);

typedef enum { SW_GRIP_IDLE, SW_GRIP_HOVER, SW_GRIP_FOCUS, SW_GRIP_DRAG } SwGripLook;

void sw_grip_draw (cairo_t *cr, const SwStyle *style, const SwGrip *grip, SwGripLook look);
