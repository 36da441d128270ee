// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-site.c: what surrounds the tree. "Not looked" is an answer and stays a warning. */
#include "engine/finding-table.h"

#include <glib/gi18n.h>

/* 10 ft from lines up to 50 kV. Source: 29 CFR 1910.333(c)(3). The whole tree and that distance
 * must stay clear of it while it is raised, stands, or falls.
 */
#define REACH_M 3.05
/* Our own choice: what the checks are made for, and up to where boards can be dug in level. */
#define HEIGHT_MOST_M 6
#define SLOPE_MOST_DEG 3

static double
fall_m (const SwSolution *s)
{
  return s->cone.overall_height_m + REACH_M;
}

static gboolean
clear_not_looked (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "fall", SW_QUANTITY_LENGTH, fall_m (s));
  return !(s->design->site.clear_radius_m > 0);
}

static gboolean
clear_small (const SwSolution *s, SwFindingDraft *draft)
{
  double clear_m = s->design->site.clear_radius_m;

  sw_draft_say (draft, "clear", SW_QUANTITY_LENGTH, clear_m);
  sw_draft_say (draft, "height", SW_QUANTITY_LENGTH, s->cone.overall_height_m);
  sw_draft_say (draft, "fall", SW_QUANTITY_LENGTH, fall_m (s));
  return clear_m > 0 && clear_m < fall_m (s);
}

static gboolean
line_not_looked (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "fall", SW_QUANTITY_LENGTH, fall_m (s));
  return !(s->design->site.line_distance_m > 0);
}

static gboolean
line_near (const SwSolution *s, SwFindingDraft *draft)
{
  double line_m = s->design->site.line_distance_m;

  sw_draft_say (draft, "line", SW_QUANTITY_LENGTH, line_m);
  sw_draft_say (draft, "fall", SW_QUANTITY_LENGTH, fall_m (s));
  return line_m > 0 && line_m < fall_m (s);
}

static gboolean
digs (const SwDesign *design)
{
  return design->stand.foot == SW_FOOT_SOCKET || design->guys.count > 0 ||
         (design->stand.ring_held_by == SW_HELD_BY_GROUND && design->stand.ring_ties > 0);
}

static gboolean
dig_not_marked (const SwSolution *s, SwFindingDraft *draft)
{
  return digs (s->design) && !s->design->site.dig_marked;
}

static gboolean
steep (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "slope", SW_QUANTITY_ANGLE, s->design->site.slope_deg);
  return s->design->stand.foot != SW_FOOT_SOCKET && s->design->site.slope_deg > SLOPE_MOST_DEG;
}

static gboolean
ice (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "ice", SW_QUANTITY_MILLIMETRES, s->design->site.ice_mm);
  return s->design->site.ice_mm > 0;
}

static gboolean
tall (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "height", SW_QUANTITY_LENGTH, s->cone.overall_height_m);
  sw_draft_say (draft, "most", SW_QUANTITY_LENGTH, HEIGHT_MOST_M);
  return s->cone.overall_height_m > HEIGHT_MOST_M;
}

static gboolean
soil_unknown (const SwSolution *s, SwFindingDraft *draft)
{
  return s->design->stand.foot == SW_FOOT_SOCKET && s->design->site.soil == SW_SOIL_UNKNOWN;
}

const SwFindingRow sw_findings_of_site[] = {
  { SW_LEVEL_STOP,
    "overhead-line-near",
    "site.line_distance_m",
    N_ ("An overhead line {line} away is within reach of the tree when it is raised or falls "
        "({fall}). Choose another place, and ask the utility."),
    line_near },
  { SW_LEVEL_WARN,
    "overhead-line-not-looked",
    "site.line_distance_m",
    N_ ("Not looked: how far away the nearest overhead line is. Keep every one at least {fall} "
        "from the post."),
    line_not_looked },
  { SW_LEVEL_WARN,
    "clear-ground-not-looked",
    "site.clear_radius_m",
    N_ (
      "Not looked: what lies within {fall} of the post, where a falling tree could reach it."),
    clear_not_looked },
  { SW_LEVEL_WARN,
    "clear-ground-small",
    "site.clear_radius_m",
    N_ ("Only {clear} round the post are free, but the tree is {height} high and could reach "
        "{fall}. Keep people, paths and cars out of that circle, or choose another place."),
    clear_small },
  { SW_LEVEL_WARN,
    "dig-not-marked",
    "site.dig_marked",
    N_ (
      "Buried services are not marked. Have them marked before a stake, peg or hole goes into "
      "the ground."),
    dig_not_marked },
  { SW_LEVEL_WARN,
    "tall-tree",
    "shape.crown_height_m",
    N_ ("The tree is {height} high, more than the {most} these checks are made for. Have a "
        "licensed professional look at post, foot and guys; no take-down gust is shown."),
    tall },
  { SW_LEVEL_WARN,
    "ice-not-counted",
    "site.ice_mm",
    N_ (
      "Ice of {ice} makes strips heavier and wider to the wind, which is not worked out. Take "
      "the strips down before freezing rain; no take-down gust is shown."),
    ice },
  { SW_LEVEL_WARN,
    "soil-unknown",
    "site.soil",
    N_ ("The soil is not known, so the socket is worked out for the weakest one; no take-down "
        "gust is shown."),
    soil_unknown },
  { SW_LEVEL_WARN,
    "steep-ground",
    "site.slope_deg",
    N_ ("On a slope of {slope} a crossed foot does not lie level. Dig it in, or choose flatter "
        "ground."),
    steep },
  { 0 }
};
