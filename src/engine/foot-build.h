// SPDX-License-Identifier: GPL-3.0-or-later
/* foot-build.h: how the foot is made: crossed boards with a half lap, bolts, slabs or concrete.
 *
 * Lengths are of actual lumber (ALSC PS 20). What does not apply is NAN.
 * Concrete  a bag of 80 lb (ASTM C387 mix) with 6 US pints of water sets to 0.60 ft³, as a
 * bag's data sheet prints it; so 86.26 lb in 0.60 ft³ Bucket    5 US gallons = 1155 in³ (NIST),
 * brim-full, less what the sleeve takes up
 */
#pragma once
#include "engine/height-chain.h"

#define SW_BAG_M3 0.0169901     /* 0.60 ft³ */
#define SW_BAG_WATER_M3 0.00284 /* 6 US pints to start with */
#define SW_BAG_CURE_DAYS 7 /* before it is loaded: ASTM C387 tests at 7 days (from memory) */
#define SW_SLAB_M 0.4064   /* 16 in */
#define SW_GRAVEL_M 0.15   /* below the sleeve in the ground; common practice, no source */
#define SW_PLUMB_M 0.010   /* at the crown; our own choice */

typedef struct {
  double lap_depth_m; /* half the thickness */
  double lap_width_m; /* the other board's width */
  double lap_start_m; /* from the board's end to the first cut */
  double bolt_off_m;  /* four bolts through flange and lap, from both middle lines */
  double bolt_edge_m, bolt_edge_least_m; /* from a bolt to the lap's edge; NDS: 1.5 diameters */
  double slabs;                          /* all together */
  double slab_off_m;                     /* middle of each arm's slabs from the post */
  double concrete_m3, bags, water_m3;
  double gravel_m3;
  double mass_reached_kg; /* of slabs as they come, or of what the bucket holds */
  double bucket_most_kg;
} SwFootBuild;

void sw_foot_build_init (SwFootBuild *foot,
                         const SwDesign *design,
                         const SwFittings *fittings,
                         const SwHeightChain *heights,
                         const SwCatalogue *catalogue);
