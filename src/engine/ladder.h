// SPDX-License-Identifier: GPL-3.0-or-later
/* ladder.h: volts and amps along one strip.
 *
 * A strip is a ladder: pixel k to k + 1 through `link_ohm` (both conductors); a feed joins a
 * pixel to the supply through `feed_ohm`. Pixel 1 is the lowest.
 *
 * Takes    at least one feed; any resistance may be 0
 * Gives    volts good to about 1e-12 of the drop (constant current), or as exact as doubles can
 *          hold a solution near collapse (constant power)
 * Errors   none; a constant-power load without a solution is `feasible` FALSE
 * Source   Kirchhoff's laws. Constant power: Newton from the supply voltage on a convex system
 *          whose Jacobian is an M-matrix up to the upper solution (Ortega & Rheinboldt,
 *          Iterative Solution of Nonlinear Equations, 13.3, monotone convergence): it falls
 *          onto that solution, or a pivot not above 0 shows that there is none
 */
#pragma once
#include "engine/design.h"

typedef struct {
  int pixels;
  double supply_v;
  double pixel_a; /* what one pixel draws; constant power: at supply_v */
  SwLoad load;
  double link_ohm, feed_ohm; /* ≥ 0, out and back */
  const int *feeds;          /* borrowed; pixel numbers, rising, each once */
  guint n_feeds;             /* ≥ 1 */
} SwLadder;

typedef struct {
  gboolean feasible; /* FALSE: constant power without a solution; nothing else is set */
  double current_a;  /* into the strip, all feeds */
  double worst_v;
  int worst_pixel; /* the lowest-numbered of those that share worst_v */
} SwLadderResult;

/* `volts` may be NULL or hold `pixels` numbers; `feed_a` may be NULL or hold n_feeds numbers.
 * Feeds that no resistance tells apart (link_ohm and feed_ohm 0) share evenly. Without a
 * solution neither is written.
 */
SwLadderResult sw_ladder_solve (const SwLadder *ladder, double *volts, double *feed_a);
