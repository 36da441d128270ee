// SPDX-License-Identifier: GPL-3.0-or-later
/* zones.h: which strips hang on which supply.
 *
 * Outputs of supplies are never joined. Feeds of one strip are joined by its own wire, so all
 * feeders of a group (strips that share their feeders) hang on one supply; groups fill supplies
 * in order. Only where one group draws more than a supply may give are its feeds dealt out to
 * several supplies, and the + of each strip is cut between them. The star goes where there is
 * room, else on a supply of its own. 0 V of all supplies is joined.
 *
 * Takes    a design, its power and wiring
 * Errors   none; without a solution, or where nothing is lit, there are no zones. A feeder that
 *          draws more than a supply may give has one to itself all the same (a finding)
 * Source   each supply at most supply_w · supply_load_max
 */
#pragma once
#include "engine/wiring.h"

typedef struct {
  int first_strip, last_strip; /* 0, 0: only the star */
  int first_pixel, last_pixel; /* feeds at these pixels and between; 0, 0: all feeds */
  gboolean star;
  double load_w;
} SwZone;

typedef struct {
  int count;           /* supplies */
  gboolean cut;        /* the + of each strip is cut between supplies */
  int strips, shared;  /* as in the design */
  int groups_a_supply; /* whole groups; 0 where they are cut */
  GArray *cuts;    /* owned: SwZone, one group's supplies where it is cut; load of the group */
  int strip_zones; /* those that have strips */
  int star_zone;   /* the one with the star, from 0; −1 without */
  double star_w;
  double strip_w;
} SwZones;

void sw_zones_init (SwZones *zones,
                    const SwDesign *design,
                    const SwPower *power,
                    const SwWiring *wiring);
void sw_zones_clear (SwZones *zones);

/* Zone 0 … count − 1. */
SwZone sw_zones_get (const SwZones *zones, int i);
