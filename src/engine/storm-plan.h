// SPDX-License-Identifier: GPL-3.0-or-later
/* storm-plan.h: two steps before a storm: strips off the ring and wound on the post; then star
 * and post laid down.
 *
 * The first step is due at the take-down gust of the whole tree; the second at the one of the
 * tree with its strips wound on the post, solved with the same ways to fail, the same factors
 * and the same rounding. Wound on the post the strips pull nothing and are one rough round body
 * (ASCE 7-16 figure 29.4-1: at most 1.2, value from memory), never more to the wind than hung.
 *
 * Assumed: a strip is 10 mm thick and half of the bundle is air (our own choice, no source).
 *
 * Sustained wind: a 3-second gust is 1.53 times the mean of an hour (Durst; ASCE 7-16 figure
 * C26.5-1). Rounded down to whole mph or m/s.
 */
#pragma once
#include "engine/stand-model.h"

#define SW_GUST_FACTOR 1.53

typedef struct {
  double bundle_m;           /* across post and strips wound on it */
  double gathered_n;         /* wind on both, at the design's gust */
  double gathered_limit_mps; /* highest gust with the strips wound on the post */
  SwLimitReason gathered_reason;
  double gathered_checks_mps; /* what the further checks of stand-checks.h bear of that tree */
  double unhook_gust_mps, lower_gust_mps; /* NAN where no gust may be shown */
  double unhook_sustained_mps, lower_sustained_mps;
} SwStormPlan;

/* `hung` is the whole tree's. */
void sw_storm_plan_init (SwStormPlan *plan,
                         const SwDesign *design,
                         const SwCone *cone,
                         const SwSupport *hung,
                         const SwCatalogue *catalogue);

/* The tree with its strips wound on the post, in a gust of SW_GATHERED_MPS; the model borrows
 * from the rest, which must stay where it is. */
#define SW_GATHERED_MPS 10

typedef struct {
  SwDesign *design; /* owned */
  SwWind wind;
  SwStandModel model;
} SwGathered;

void sw_gathered_init (SwGathered *gathered,
                       const SwDesign *design,
                       const SwCone *cone,
                       const SwCatalogue *catalogue);
void sw_gathered_clear (SwGathered *gathered);
