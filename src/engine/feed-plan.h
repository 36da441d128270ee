// SPDX-License-Identifier: GPL-3.0-or-later
/* feed-plan.h: the fewest feeds and feeders that do, and the smallest feeder cable.
 *
 * A wiring does at the highest brightness allowed when every pixel keeps `min_pixel_v`, and the
 * most loaded feeder: its fuse (NEC 210.20(A): at most 80 % of it) is no larger than the
 * strip's wire nor the feeder's own carries; it loses at most 5 % of the supply's voltage (NEC
 * 210.19(A), informational note); one supply carries it; and all feeders of its strips hang on
 * one supply where one strip can.
 *
 * Takes    a design, its power
 * Gives    the plan with the fewest feeds a strip, and of those the one with the most strips on
 *          a feeder; the design's own way of feeding first among equals. All wirings that the
 *          keys `feed`, `inject_every` and `strips_per_feeder` can say are looked through, to
 *          MOST feeds a strip: the best step between feeds is climbed to, because drops and
 *          currents only worsen away from it
 * Errors   none; found FALSE
 */
#pragma once
#include "engine/wiring.h"

#define SW_FEED_PLAN_MOST 16 /* feeds a strip; more is no longer built by hand */

typedef struct {
  gboolean solved; /* FALSE where a bare solution has no plan */
  gboolean found;
  int feed; /* SwFeed */
  int inject_every, n_feeds, strips_per_feeder, feeders;
  double worst_pixel_v, feeder_a;

  /* The same with one key moved; all else as designed. −1: that alone does not do. */
  int feed_alone;   /* SwFeed: one end of a strip that is fed at both */
  int inject_alone; /* fewest further feeds; 0 is none */
  int share_alone;  /* most strips on a feeder */
  int longest;      /* pixels, of a strip that starves: the most that would not; else −1 */

  /* Smallest cable for the design's own feeders, AWG and mm²; NAN where no size does. */
  double awg_by_load, awg_by_drop, awg, mm2;
} SwFeedPlan;

void sw_feed_plan_init (SwFeedPlan *plan, const SwDesign *design, const SwPower *power);
