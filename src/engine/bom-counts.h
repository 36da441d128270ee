// SPDX-License-Identifier: GPL-3.0-or-later
/* bom-counts.h: how many of each goods a solved tree needs. */
#pragma once
#include "engine/cuts.h"
#include "engine/solution.h"

/* What several counts share. */
typedef struct {
  const SwSolution *solution; /* borrowed */
  SwRuns runs;
  int strips;      /* that hang */
  int strips_made; /* with spares */
  int strip_feeds; /* places where power enters a strip, all strips */
  int feeders;     /* with the star's */
  int jumpers;     /* from strip to strip on one port */
} SwCounts;

void sw_counts_init (SwCounts *counts, const SwSolution *solution);

/* One row a goods: its id and its quantity, 0 where it is not needed. */
typedef struct {
  const char *id;
  double (*quantity) (const SwCounts *counts);
} SwCountRow;

/* Goods that are one row a size: "feeder-cable-14", "fuse-7.5". Without a solution of the
 * power no load is known, and no fuse is counted. Returns: (transfer full) its id, and its
 * quantity. */
char *sw_feeder_cable_id (const SwCounts *counts);
double sw_feeder_cable_m (const SwCounts *counts);
char *sw_fuse_id (double fuse_a);
double sw_fuse_count (const SwCounts *counts, double fuse_a);

extern const SwCountRow sw_count_rows[];
extern const guint sw_n_count_rows;
