// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-shape.c: cone, crown plate and what the sight of them says. */
#include "engine/cone.h"
#include "engine/finding-table.h"

#include <glib/gi18n.h>
#include <math.h>

/* Holes of bolts stand at least 2⅔ diameters apart. Source: AISC 360-16, J3.3. */
#define HOLES_APART (8.0 / 3)

/* Strips that lean more sag visibly and pull on the crown more than they weigh; common
 * practice, no source. */
#define LEAN_MOST_DEG 45

static gboolean
crown_crowded (const SwSolution *s, SwFindingDraft *draft)
{
  const SwDesign *design = s->design;
  double width_m = design->strip.width_m;

  if (!(s->cone.spacing_crown_m < width_m))
    return FALSE;
  double radius_m = design->shape.crown_radius_m * width_m / s->cone.spacing_crown_m;
  sw_draft_say (draft, "spacing", SW_QUANTITY_SHORT_LENGTH, s->cone.spacing_crown_m);
  sw_draft_say (draft, "width", SW_QUANTITY_SHORT_LENGTH, width_m);
  sw_draft_say (draft, "radius", SW_QUANTITY_SHORT_LENGTH, sw_round_up (radius_m, 0.001));
  sw_draft_remedy (draft, "shape.crown_radius_m", sw_round_up (radius_m, 0.001));
  return TRUE;
}

static gboolean
crown_wider (const SwSolution *s, SwFindingDraft *draft)
{
  const SwShape *shape = &s->design->shape;

  sw_draft_say (draft, "crown", SW_QUANTITY_LENGTH, shape->crown_radius_m);
  sw_draft_say (draft, "ring", SW_QUANTITY_LENGTH, shape->ring_radius_m);
  return shape->crown_radius_m > shape->ring_radius_m;
}

static gboolean
flat_cone (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "lean", SW_QUANTITY_ANGLE, s->cone.lean_deg);
  return s->cone.lean_deg > LEAN_MOST_DEG;
}

static double
hole_circle_m (const SwDesign *design)
{
  return design->shape.crown_radius_m - design->crown.hook_reach_m;
}

/* Middle to middle of neighbouring holes. */
static double
holes_apart_m (const SwDesign *design)
{
  double step_rad = sw_cone_step_deg (&design->shape) * G_PI / 180;

  return 2 * hole_circle_m (design) * sin (step_rad / 2);
}

/* A crown that is so wide that the holes stand `apart_m`; its holes' circle grows alike. */
static void
offer_wider_crown (const SwSolution *s, SwFindingDraft *draft, double apart_m)
{
  double circle_m = hole_circle_m (s->design) * apart_m / holes_apart_m (s->design);

  sw_draft_remedy (draft,
                   "shape.crown_radius_m",
                   sw_round_up (circle_m + s->design->crown.hook_reach_m, 0.001));
}

static gboolean
holes_meet (const SwSolution *s, SwFindingDraft *draft)
{
  const SwHook *hook = sw_catalogue_hook (s->catalogue, s->design->crown.hook);
  double apart_m = holes_apart_m (s->design);

  if (hook == NULL || apart_m > hook->hole_m)
    return FALSE;
  sw_draft_say (draft, "apart", SW_QUANTITY_SHORT_LENGTH, apart_m);
  sw_draft_say (draft, "hole", SW_QUANTITY_SHORT_LENGTH, hook->hole_m);
  offer_wider_crown (s, draft, HOLES_APART * hook->diameter_m);
  return TRUE;
}

static gboolean
holes_close (const SwSolution *s, SwFindingDraft *draft)
{
  const SwHook *hook = sw_catalogue_hook (s->catalogue, s->design->crown.hook);
  double apart_m = holes_apart_m (s->design);

  if (hook == NULL || apart_m <= hook->hole_m || apart_m >= HOLES_APART * hook->diameter_m)
    return FALSE;
  sw_draft_say (draft, "apart", SW_QUANTITY_SHORT_LENGTH, apart_m);
  sw_draft_say (draft, "least", SW_QUANTITY_SHORT_LENGTH, HOLES_APART * hook->diameter_m);
  offer_wider_crown (s, draft, HOLES_APART * hook->diameter_m);
  return TRUE;
}

/* A nut under the plate must clear the post and its flange's neck. */
static gboolean
hooks_over_post (const SwSolution *s, SwFindingDraft *draft)
{
  const SwHook *hook = sw_catalogue_hook (s->catalogue, s->design->crown.hook);

  if (hook == NULL || !(s->post_od_m > 0))
    return FALSE;
  double least_m = s->post_od_m / 2 + hook->hole_m;
  if (hole_circle_m (s->design) >= least_m)
    return FALSE;
  sw_draft_say (draft, "circle", SW_QUANTITY_SHORT_LENGTH, hole_circle_m (s->design));
  sw_draft_say (draft, "post", SW_QUANTITY_SHORT_LENGTH, s->post_od_m);
  sw_draft_remedy (draft, "crown.hook_reach_m", 0);
  sw_draft_remedy (draft,
                   "shape.crown_radius_m",
                   sw_round_up (least_m + s->design->crown.hook_reach_m, 0.001));
  return TRUE;
}

static gboolean
nothing_gives (const SwSolution *s, SwFindingDraft *draft)
{
  static const char *const paths[] = {
    [SW_GIVES_TAIL] = NULL,
    [SW_GIVES_CROWN_HEIGHT] = "shape.crown_height_m",
    [SW_GIVES_RING_RADIUS] = "shape.ring_radius_m",
    [SW_GIVES_PIXELS] = "strip.pixels",
    [SW_GIVES_PITCH] = "strip.pitch_m",
    [SW_GIVES_LEAD] = "strip.lead_m",
  };
  const char *path = paths[s->design->gives_way];

  if (path == NULL || !sw_design_holds (s->design, path))
    return FALSE;
  sw_draft_remedy (draft, "gives_way", SW_GIVES_TAIL);
  return TRUE;
}

static gboolean
star_dark (const SwSolution *s, SwFindingDraft *draft)
{
  return s->design->topper.kind == SW_TOPPER_STAR && s->design->topper.pixels == 0;
}

const SwFindingRow sw_findings_of_shape[] = {
  { SW_LEVEL_STOP,
    "crown-holes-meet",
    "shape.crown_radius_m",
    N_ ("The holes in the crown plate stand {apart} apart, but each is {hole} across: they run "
        "into one another. Make the crown wider or the hooks thinner."),
    holes_meet },
  { SW_LEVEL_STOP,
    "hooks-over-post",
    "crown.hook_reach_m",
    N_ ("The holes of the hooks stand {circle} from the middle of the crown plate, over the "
        "post, "
        "which is {post} across. Make the crown wider or the hooks' reach shorter."),
    hooks_over_post },
  { SW_LEVEL_WARN,
    "crown-holes-close",
    "shape.crown_radius_m",
    N_ ("The holes in the crown plate stand {apart} apart; {least} leave enough metal between "
        "them. Make the crown wider or the hooks thinner."),
    holes_close },
  { SW_LEVEL_WARN,
    "crown-crowded",
    "shape.crown_radius_m",
    N_ ("Strips are {spacing} apart at the crown but {width} wide: they overlap there. A crown "
        "radius of {radius} lets them hang side by side."),
    crown_crowded },
  { SW_LEVEL_WARN,
    "crown-wider-than-ring",
    "shape.crown_radius_m",
    N_ ("The crown radius of {crown} is more than the ring's {ring}: the tree widens upwards."),
    crown_wider },
  { SW_LEVEL_WARN,
    "flat-cone",
    "shape.ring_radius_m",
    N_ ("The strips lean by {lean}: they sag, and pull hard on crown and ring. Make the tree "
        "higher or the ring narrower."),
    flat_cone },
  { SW_LEVEL_WARN,
    "nothing-gives-way",
    "gives_way",
    N_ ("What should give way is locked, so the gap at the tie takes every difference."),
    nothing_gives },
  { SW_LEVEL_TIP,
    "star-dark",
    "topper.pixels",
    N_ ("The star has no pixels and stays dark."),
    star_dark },
  { 0 }
};
