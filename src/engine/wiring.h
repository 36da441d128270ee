// SPDX-License-Identifier: GPL-3.0-or-later
/* wiring.h: what each feeder carries, the fuse it gets, the heat in the wires, the mains side.
 *
 * A feeder is a cable from a supply to one feed of so many strips; the star has one of its own,
 * taken as long as the others. All at the highest brightness allowed (cap) unless said.
 *
 * Takes    a design that passed sw_design_check (), its power
 * Errors   none; without a solution every figure is NAN and there are no feeds
 * Source   Kirchhoff's laws (ladder.h); fuse.h; wire-table.h. Supplies turn 85 % of the mains
 *          power into output and, without correction of the power factor, draw it at a power
 *          factor of 0.6: common practice, no source; a supply's own label counts
 */
#pragma once
#include "engine/power-network.h"
#include "engine/wire-table.h"

#define SW_SUPPLY_EFFICIENCY 0.85
#define SW_SUPPLY_POWER_FACTOR 0.6

/* Of the supply's voltage, lost in a feeder alone. Source: NEC 210.19(A), informational note: 5
 * % in feeder and branch together.
 */
#define SW_FEEDER_LOSS_MOST 0.05

/* One place where power enters a strip. */
typedef struct {
  int pixel;       /* 1 = the lowest */
  double strip_a;  /* into one strip */
  double feeder_a; /* in the feeder, for all its strips */
  double fuse_a;   /* of the feeder; NAN: none carries it */
  double drop_v;   /* lost in the feeder */
} SwFeedPoint;

typedef struct {
  GArray *feeds; /* owned: SwFeedPoint, from the ring up; empty without a solution */
  int groups;    /* of strips that share their feeders */
  int feeders;   /* groups · feeds, and the star's */
  const SwWire *feeder_wire; /* the size the feeders count as */
  double feeder_awg;
  double feeder_a, feeder_drop_v, feeder_fuse_a; /* of the feeder that carries most */
  double feeder_full_white_a;                    /* the same at full white */
  double strip_fuse_a;  /* each strip's own, where the feeder's is too large for its wire; NAN:
                           not needed, or none carries one feed and protects the wire */
  gboolean strip_fused; /* the feeder's fuse protects no strip: each feed needs its own */
  double star_a, star_fuse_a; /* NAN without a lit star */
  double strip_heat_w;        /* in the wires of all strips */
  double feeder_heat_w;       /* in all feeders */
  double mains_w;
  double mains_v;               /* 120 or 230, as the units tell */
  double mains_a, mains_most_a; /* at power factor 1, and uncorrected */
  double class_2_w;             /* what a class 2 supply of this voltage may give */
} SwWiring;

void sw_wiring_init (SwWiring *wiring, const SwDesign *design, const SwPower *power);
void sw_wiring_clear (SwWiring *wiring);

/* Most watts on the label of a class 2 supply. Source: NEC chapter 9, table
 * 11(B), and UL 1310, direct current: 5 A to 20 V, 100 VA to 60 V. */
double sw_class_2_w (double supply_v);

/* The strips that really hang on one feeder; the last may carry fewer. */
int sw_wiring_shared (const SwDesign *design);
