// SPDX-License-Identifier: GPL-3.0-or-later
/* power-network.h: the feeds of a strip, and what the whole tree draws.
 *
 * Takes    a design that passed sw_design_check ()
 * Errors   none; a constant-power load without a solution is `feasible` FALSE
 * Source   Kirchhoff's laws (ladder.h). All strips are alike, so one is solved. The star draws
 *          pixels · pixel_a · share always
 */
#pragma once
#include "engine/ladder.h"

/* The feeds of a design. Returns: (transfer full) (element-type int), rising. */
GArray *sw_power_feeds (const SwDesign *design);

/* A strip with its feeds at a share of full white; `feeds` is borrowed by it. */
SwLadder sw_power_ladder (const SwDesign *design, double share, const GArray *feeds);

/* Not feasible: every figure NAN, every count 0, but for n_feeds. */
typedef struct {
  gboolean feasible;
  double strip_current_a, tree_current_a, tree_w, worst_pixel_v, strip_drop_v; /* at cap */
  int worst_pixel;
  int supplies;
  double average_w, evening_kwh; /* at min (brightness, cap) */
  gboolean full_white_feasible;
  double full_white_current_a, full_white_w, full_white_worst_v; /* at share 1 */
  int n_feeds;                                                   /* a strip's feeds */
  double most_feed_a;            /* most current through one strip's feed, at cap */
  double full_white_most_feed_a; /* the same at share 1 */
} SwPower;

void sw_power_init (SwPower *power, const SwDesign *design);

/* Volts at each pixel of a strip at a share of full white. Returns: FALSE without a solution.
 */
gboolean sw_power_volts (const SwDesign *design, double share, double *volts);
