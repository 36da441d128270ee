// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-ring.c: the ring, its ties, and the pull of a partial tree. */
#include "engine/finding-table.h"
#include "engine/stand.h"
#include "engine/tube.h"

#include <glib/gi18n.h>
#include <math.h>

#define TIES_LEAST 3
#define LIFT_MOST_M 0.010 /* a ring that waves more is seen; our own choice */
#define COLD_RADII 300 /* of the pipe's OD, strain 0.17 %: makers of PVC pipe allow it cold */
#define PULL_LEAST_N 1

static gboolean
few_ties (const SwSolution *s, SwFindingDraft *draft)
{
  int ties = s->design->stand.ring_ties;

  if (ties >= TIES_LEAST)
    return FALSE;
  sw_draft_say (draft, "ties", SW_QUANTITY_COUNT, ties);
  sw_draft_remedy (draft, "stand.ring_ties", 8);
  sw_draft_remedy (draft, "stand.ring_ties", 12);
  return TRUE;
}

/* Lift falls with the fourth power of the ties, a little less along an arc. */
static void
offer_more_ties (const SwSolution *s, SwFindingDraft *draft, double times)
{
  double ties = ceil (s->design->stand.ring_ties * times);

  sw_draft_remedy (draft, "stand.ring_ties", ties);
  sw_draft_remedy (draft, "stand.ring_ties", ties + 1);
  sw_draft_remedy (draft, "stand.ring_ties", ties + 3);
}

static gboolean
ring_lifts (const SwSolution *s, SwFindingDraft *draft)
{
  double lift_m = s->support.ring_lift_m;

  if (!(lift_m > LIFT_MOST_M))
    return FALSE;
  sw_draft_say (draft, "lift", SW_QUANTITY_SHORT_LENGTH, lift_m);
  sw_draft_say (draft, "ties", SW_QUANTITY_COUNT, s->design->stand.ring_ties);
  offer_more_ties (s, draft, sqrt (sqrt (lift_m / LIFT_MOST_M)));
  return TRUE;
}

static const SwPipe *
ring_pipe (const SwSolution *s)
{
  return sw_catalogue_pipe (s->catalogue, s->design->stand.ring_pipe);
}

static gboolean
ring_overstressed (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *pipe = ring_pipe (s);
  double stress_pa = s->support.ring_stress_gust_pa;

  if (pipe == NULL || !(stress_pa > 0))
    return FALSE;
  double factor = sw_material_yield (pipe->material) / stress_pa;
  if (factor >= SW_FACTOR_NEEDED)
    return FALSE;
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, factor);
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_FACTOR_NEEDED);
  offer_more_ties (s,
                   draft,
                   sqrt (SW_FACTOR_NEEDED / factor)); /* moment goes with bay squared */
  return TRUE;
}

static gboolean
ties_untested (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStand *stand = &s->design->stand;
  double pull_n = SW_FACTOR_STAKE * s->support.ring_tie_gust_n;

  sw_draft_say (draft, "pull", SW_QUANTITY_FORCE, pull_n);
  return stand->ring_held_by == SW_HELD_BY_GROUND && stand->ring_ties >= TIES_LEAST &&
         !(stand->tie_hold_n > 0) && isfinite (pull_n);
}

static gboolean
ring_bent_cold (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *pipe = ring_pipe (s);
  double radius_m = s->design->shape.ring_radius_m;

  if (pipe == NULL || pipe->material != SW_MATERIAL_PVC || radius_m >= COLD_RADII * pipe->od_m)
    return FALSE;
  sw_draft_say (draft, "radius", SW_QUANTITY_LENGTH, radius_m);
  sw_draft_say (draft, "least", SW_QUANTITY_LENGTH, COLD_RADII * pipe->od_m);
  return TRUE;
}

static gboolean
pulls_sideways (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "pull", SW_QUANTITY_FORCE, s->support.side_pull_n);
  return s->support.side_pull_n > PULL_LEAST_N &&
         s->design->stand.ring_held_by == SW_HELD_BY_GROUND;
}

const SwFindingRow sw_findings_of_ring[] = {
  { SW_LEVEL_STOP,
    "too-few-ties",
    "stand.ring_ties",
    N_ (
      "Fewer than three ties do not hold a ring down ({ties}): the strips lift it on the free "
      "side."),
    few_ties },
  { SW_LEVEL_WARN,
    "ring-lifts",
    "stand.ring_ties",
    N_ (
      "Between its {ties} ties the strips lift the ring by {lift}. More ties or a stiffer pipe "
      "keep it level."),
    ring_lifts },
  { SW_LEVEL_WARN,
    "ring-overstressed",
    "stand.ring_ties",
    N_ (
      "In the gust the ring pipe bears {factor} times its load, {needed} are needed. Use more "
      "ties or a stronger pipe."),
    ring_overstressed },
  { SW_LEVEL_WARN,
    "ring-ties-untested",
    "stand.tie_hold_n",
    N_ ("What a ring tie holds was not tested. Pull one to {pull} before you count on it."),
    ties_untested },
  { SW_LEVEL_WARN,
    "ring-bent-cold",
    "stand.ring_pipe",
    N_ (
      "A ring of {radius} radius is tighter than this pipe's makers allow cold ({least}). Form "
      "it warm on a jig, or expect it to creep, and to spring open when it is cut."),
    ring_bent_cold },
  { SW_LEVEL_WARN,
    "pulls-sideways",
    "shape.coverage_deg",
    N_ (
      "A partial tree pulls its crown towards the strips with {pull}, all season. Put a guy on "
      "the other side, or hang the ring on the foot."),
    pulls_sideways },
  { 0 }
};
