// SPDX-License-Identifier: GPL-3.0-or-later
/* fit-chain.h: every pair that slides, threads, bolts, hangs or stretches, by true sizes.
 *
 * Clearance is what is left between the two: outer − inner, of diameters where both are round.
 * Sizes are nominal: weld seams, zinc and tolerances take 0.5 to 0.8 mm off (common practice,
 * no source), so try a pair before the rest is cut. What is not there, or not known, has no
 * row; where the catalogue has nothing that fits, the row says so and has no outer.
 */
#pragma once
#include "engine/cone.h"
#include "engine/height-chain.h"

/* Play over sleeve depth: how far out of plumb the post may stand; our own choice. */
#define SW_PLAY_MOST 0.02

typedef enum {
  SW_PAIR_SLIDES,
  SW_PAIR_THREADS,
  SW_PAIR_GRIPS, /* by set screws */
  SW_PAIR_BOLTS,
  SW_PAIR_CLAMPS,
  SW_PAIR_HANGS,
  SW_PAIR_CLEARS,
  SW_PAIR_STRETCHES,
} SwPairKind;

typedef enum {
  SW_VERDICT_FITS,
  SW_VERDICT_LOOSE,
  SW_VERDICT_TIGHT, /* does not go, or is too short */
  SW_VERDICT_NONE,  /* nothing in the catalogue fits */
} SwVerdict;

extern const char *const sw_verdict_words[];  /* "fits", "loose", "tight", "none" */
extern const char *const sw_verdict_labels[]; /* N_() */

/* Where on the tree a pair is, for drawings. */
typedef enum {
  SW_AT_STRIPS,
  SW_AT_HOOK,
  SW_AT_GROMMET,
  SW_AT_TIE,
  SW_AT_SLEEVE,
  SW_AT_SLEEVE_FOOT,
  SW_AT_POST_TOP,
  SW_AT_FLANGE_BOLTS,
  SW_AT_BETWEEN_HOOKS,
  SW_AT_STUB,
  SW_AT_BRACKET,
} SwPairPlace;

typedef struct {
  const char *what; /* N_() */
  SwPairKind kind;
  SwPairPlace place;
  const char *inner, *outer; /* N_() or a name of the catalogue; outer nullable */
  double inner_m, outer_m, clearance_m;
  SwVerdict verdict;
  gboolean locked; /* would turn, so it has a lock of its own */
} SwPair;

#define SW_PAIRS_MOST 24

typedef struct {
  SwPair pairs[SW_PAIRS_MOST];
  guint n;
} SwFitChain;

void sw_fit_chain_init (SwFitChain *chain,
                        const SwDesign *design,
                        const SwCone *cone,
                        const SwFittings *fittings);

/* How many joints must be kept from turning. */
guint sw_fit_locks (const SwFitChain *chain);

/* Across the heads and washers of opposite hooks, what is free between them for a flange. */
double sw_free_between_hooks_m (const SwDesign *design, const SwHook *hook);
