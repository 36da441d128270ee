// SPDX-License-Identifier: GPL-3.0-or-later
/* power-network.h: volts and amps along a strip, and what the whole tree draws.
 *
 * A strip is a ladder: pixel k to k + 1 through `link_ohm` (both conductors); a feed joins a
 * pixel to the supply through `feed_ohm`. Pixel 1 is the lowest. Source  Kirchhoff's laws.
 * Constant power: Newton from the supply voltage on a convex system whose Jacobian is an
 * M-matrix while a solution exists (Ortega & Rheinboldt, Iterative Solution of Nonlinear
 * Equations, monotone convergence), so it reaches the upper solution or shows that there is
 * none.
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
  int worst_pixel; /* the lowest one of those */
} SwLadderResult;

/* `volts` may be NULL or hold `pixels` numbers; `feed_a` may be NULL or hold n_feeds numbers.
 */
SwLadderResult sw_ladder_solve (const SwLadder *ladder, double *volts, double *feed_a);

/* The feeds of a design. Returns: (transfer full) (element-type int), rising. */
GArray *sw_power_feeds (const SwDesign *design);

typedef struct {
  gboolean feasible;
  double strip_current_a, tree_current_a, tree_w, worst_pixel_v, strip_drop_v; /* at cap */
  int worst_pixel;
  int supplies;
  double average_w, evening_kwh; /* at min (brightness, cap) */
  gboolean full_white_feasible;
  double full_white_current_a, full_white_w, full_white_worst_v; /* at share 1 */
  int n_feeds;                                                   /* a strip's feeds */
  double most_feed_a; /* most current through one strip's feed, at cap */
} SwPower;

void sw_power_init (SwPower *power, const SwDesign *design);

/* Volts at each pixel of a strip at a share of full white. Returns: FALSE without a solution.
 */
gboolean sw_power_volts (const SwDesign *design, double share, double *volts);
