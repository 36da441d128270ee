// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-ring.c: the ring, its ties, and the pull of a partial tree. */
#include "engine/finding-table.h"
#include "engine/stand.h"
#include "engine/tube.h"

#include <glib/gi18n.h>
#include <math.h>

#define TIES_LEAST 3
#define SPOKES_THAT_HELP 6
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

  if (!(lift_m > SW_RING_LIFT_MOST_M))
    return FALSE;
  sw_draft_say (draft, "lift", SW_QUANTITY_SHORT_LENGTH, lift_m);
  sw_draft_say (draft, "most", SW_QUANTITY_SHORT_LENGTH, SW_RING_LIFT_MOST_M);
  sw_draft_say (draft, "ties", SW_QUANTITY_COUNT, s->design->stand.ring_ties);
  sw_draft_remedy (draft, "stand.ring_ties", s->ring.fewest_ties); /* none in a bare one */
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
  double radius_m = s->design->shape.ring_radius_m;

  if (!(radius_m < s->ring.cold_radius_m))
    return FALSE;
  sw_draft_say (draft, "radius", SW_QUANTITY_LENGTH, radius_m);
  sw_draft_say (draft, "least", SW_QUANTITY_LENGTH, s->ring.cold_radius_m);
  return TRUE;
}

/* Half as many waves as spokes, or ties, go round; strength goes with their square less one. */
static double
waves_needed (const SwSolution *s, double factor)
{
  double shape = s->ring.waves * s->ring.waves - 1;

  return ceil (sqrt (1 + shape * SW_RING_FACTOR / factor));
}

static gboolean
ring_buckles (const SwSolution *s, SwFindingDraft *draft)
{
  double still = s->ring.buckling_factor, gust = s->ring.buckling_gust_factor;

  if (!(MIN (still, gust) < SW_RING_FACTOR))
    return FALSE;
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, MIN (still, gust));
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_RING_FACTOR);
  if (still < SW_RING_FACTOR && !sw_ring_is_arc (s->design))
    sw_draft_remedy (draft, "stand.ring_spokes", 2 * waves_needed (s, still));
  offer_more_ties (s, draft, sqrt (SW_RING_FACTOR / MIN (still, gust)));
  return TRUE;
}

/* Three and four pinned spokes leave the oval as soft as it was; see ring-plane.h. */
static gboolean
few_spokes (const SwSolution *s, SwFindingDraft *draft)
{
  int spokes = s->design->stand.ring_spokes;

  sw_draft_say (draft, "spokes", SW_QUANTITY_COUNT, spokes);
  sw_draft_remedy (draft, "stand.ring_spokes", SPOKES_THAT_HELP);
  return spokes > 0 && spokes < SPOKES_THAT_HELP - 1 && !sw_ring_is_arc (s->design);
}

static gboolean
wider_than_door (const SwSolution *s, SwFindingDraft *draft)
{
  double door_m = s->design->site.door_m;

  if (!(door_m > 0 && s->ring.section_width_m > door_m + 1e-9))
    return FALSE;
  sw_draft_say (draft, "width", SW_QUANTITY_LENGTH, s->ring.section_width_m);
  sw_draft_say (draft, "door", SW_QUANTITY_LENGTH, door_m);
  sw_draft_remedy (draft, "stand.ring_sections", s->ring.sections_for_door);
  sw_draft_remedy (draft, "stand.ring_sections", s->ring.sections_for_door + 1);
  return TRUE;
}

/* Other numbers of sections near the one chosen, most first: a ring in more pieces still passes
 * its door. */
static void
offer_other_sections (const SwSolution *s, SwFindingDraft *draft)
{
  int sections = s->design->stand.ring_sections;

  sw_draft_remedy (draft, "stand.ring_sections", sections + 1);
  sw_draft_remedy (draft, "stand.ring_sections", sections + 2);
  if (sections > 1)
    sw_draft_remedy (draft, "stand.ring_sections", sections - 1);
}

static gboolean
joint_on_mark (const SwSolution *s, SwFindingDraft *draft)
{
  double clear_m = s->ring.joints.clear_m, room_m = sw_ring_joint_room_m (s->ring_od_m);

  if (!(clear_m < room_m))
    return FALSE;
  sw_draft_say (draft, "clear", SW_QUANTITY_SHORT_LENGTH, clear_m);
  sw_draft_say (draft, "room", SW_QUANTITY_SHORT_LENGTH, room_m);
  sw_draft_say (draft, "sections", SW_QUANTITY_COUNT, s->design->stand.ring_sections);
  offer_other_sections (s, draft);
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
    N_ ("Between its {ties} ties the strips lift the ring by {lift}; more than {most} is seen. "
        "More ties or a stiffer pipe keep it level."),
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
      "it warm on a jig, as the ring sheet says, or expect it to creep, and to spring open "
      "when "
      "it is cut."),
    ring_bent_cold },
  { SW_LEVEL_WARN,
    "ring-buckles",
    "stand.ring_pipe",
    N_ (
      "Pulled inwards by its strips, the ring keeps its shape with a factor of {factor}; "
      "{needed} are needed. Use a stiffer pipe, six or more spokes, or more ties that hold it "
      "sideways too."),
    ring_buckles },
  { SW_LEVEL_TIP,
    "ring-spokes-few",
    "stand.ring_spokes",
    N_ ("{spokes} spokes do not keep the ring from going oval, for it can move as a whole or "
        "bend between them. Six do."),
    few_spokes },
  { SW_LEVEL_WARN,
    "ring-wider-than-door",
    "stand.ring_sections",
    N_ (
      "A section of the ring is {width} wide and does not pass a door of {door}. Make the ring "
      "of more sections."),
    wider_than_door },
  { SW_LEVEL_WARN,
    "ring-joint-on-mark",
    "stand.ring_sections",
    N_ ("With {sections} sections a joint of the ring comes within {clear} of a mark or a tie, "
        "however the ring is turned; a coupling needs {room}. Another number of sections may "
        "leave more."),
    joint_on_mark },
  { SW_LEVEL_WARN,
    "pulls-sideways",
    "shape.coverage_deg",
    N_ (
      "A partial tree pulls its crown towards the strips with {pull}, all season. Put a guy on "
      "the other side, or hang the ring on the foot."),
    pulls_sideways },
  { 0 }
};
