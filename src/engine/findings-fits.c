// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-fits.c: what does not go together at the crown, and joints of the post. */
#include "engine/cuts.h"
#include "engine/finding-table.h"
#include "engine/stand.h"

#include <glib/gi18n.h>
#include <math.h>

#define BARE_STUB_LEAST_M 0.005 /* room below the star; our own choice */

static double
second_moment_m4 (const SwPipe *pipe)
{
  return pow (pipe->od_m, 4) - pow (pipe->od_m - 2 * pipe->wall_m, 4);
}

/* Bears and stiffens as much as the other. */
static gboolean
as_strong (const SwPipe *pipe, const SwPipe *other)
{
  double stiffness = sw_material_modulus (pipe->material) * second_moment_m4 (pipe);
  double strength = sw_material_yield (pipe->material) * second_moment_m4 (pipe) / pipe->od_m;

  return stiffness >= sw_material_modulus (other->material) * second_moment_m4 (other) &&
         strength >=
           sw_material_yield (other->material) * second_moment_m4 (other) / other->od_m;
}

typedef gboolean (*Holds) (const SwSolution *s, const SwPipe *pipe);

/* Returns: (nullable): the lightest pipe as strong as `pipe` that `holds`. */
static const SwPipe *
replacement (const SwSolution *s, const SwPipe *pipe, Holds holds)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (s->catalogue, "pipe");
  const SwPipe *best = NULL;

  for (guint i = 0; i < ids->len; i++) {
    const SwPipe *other = sw_catalogue_pipe (s->catalogue, ids->pdata[i]);
    if (!as_strong (other, pipe) || !holds (s, other))
      continue;
    if (best == NULL || other->mass_kg_per_m < best->mass_kg_per_m)
      best = other;
  }
  return best;
}

static gboolean
post_goes (const SwSolution *s, const SwPipe *post)
{
  const SwPipe *sleeve = s->fittings.sleeve;

  return sw_fittings_end (s->catalogue, post).flange != NULL &&
         (sleeve == NULL || sleeve->id_m - post->od_m >= SW_SLIDES_M);
}

static gboolean
no_flange (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *post = s->fittings.post;

  if (post == NULL || s->fittings.post_top.flange != NULL)
    return FALSE;
  const SwPipe *other = replacement (s, post, post_goes);
  sw_draft_say (draft, "post", SW_QUANTITY_SHORT_LENGTH, post->od_m);
  if (other != NULL)
    sw_draft_remedy_text (draft, "stand.post", other->id);
  return TRUE;
}

static gboolean
stub_goes (const SwSolution *s, const SwPipe *stub)
{
  return sw_fittings_hold_stub (s->catalogue, s->fittings.post, stub);
}

static gboolean
stub_not_held (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *stub = s->fittings.stub;

  if (stub == NULL || s->fittings.top_flange == NULL || s->fittings.stub_held)
    return FALSE;
  const SwPipe *other = replacement (s, stub, stub_goes);
  sw_draft_say (draft, "stub", SW_QUANTITY_SHORT_LENGTH, stub->od_m);
  sw_draft_say (draft, "flange", SW_QUANTITY_SHORT_LENGTH, s->fittings.top_flange->inside_m);
  if (other != NULL)
    sw_draft_remedy_text (draft, "topper.stub", other->id);
  return TRUE;
}

static gboolean
stub_short (const SwSolution *s, SwFindingDraft *draft)
{
  double bare_m = s->heights.stub_bare_m, stub_m = s->design->topper.stub_m;

  if (!(bare_m < 0))
    return FALSE;
  sw_draft_say (draft, "stub", SW_QUANTITY_SHORT_LENGTH, stub_m);
  sw_draft_say (draft, "needed", SW_QUANTITY_SHORT_LENGTH, stub_m - bare_m);
  sw_draft_remedy (draft,
                   "topper.stub_m",
                   sw_round_up (stub_m - bare_m + BARE_STUB_LEAST_M, 0.005));
  return TRUE;
}

/* The catalogue's hook that holds as much and lets a narrower grommet in. */
static const SwHook *
closed_hook (const SwSolution *s)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (s->catalogue, "hook");

  for (guint i = 0; i < ids->len; i++) {
    const SwHook *hook = sw_catalogue_hook (s->catalogue, ids->pdata[i]);
    if (hook->form == SW_HOOK_EYE && hook->diameter_m >= s->fittings.hook->diameter_m)
      return hook;
  }
  return NULL;
}

static gboolean
grommet_wide (const SwSolution *s, SwFindingDraft *draft)
{
  const SwFitting *grommet = s->fittings.grommet;
  double width_m = s->design->strip.width_m;

  if (grommet == NULL || s->fittings.hook == NULL || grommet->outside_m <= width_m)
    return FALSE;
  const SwHook *hook = closed_hook (s);
  sw_draft_say (draft, "rim", SW_QUANTITY_SHORT_LENGTH, grommet->outside_m);
  sw_draft_say (draft, "width", SW_QUANTITY_SHORT_LENGTH, width_m);
  if (s->fittings.hook->form == SW_HOOK_OPEN && hook != NULL)
    sw_draft_remedy_text (draft, "crown.hook", hook->id);
  return TRUE;
}

static gboolean
hooks_over_flange (const SwSolution *s, SwFindingDraft *draft)
{
  const SwFitting *flange = s->fittings.post_top.flange;

  if (flange == NULL || s->fittings.hook == NULL)
    return FALSE;
  double free_m = sw_free_between_hooks_m (s->design, s->fittings.hook);
  double over_m = flange->outside_m - free_m;
  if (!(over_m > 0))
    return FALSE;
  sw_draft_say (draft, "flange", SW_QUANTITY_SHORT_LENGTH, flange->outside_m);
  sw_draft_say (draft, "free", SW_QUANTITY_SHORT_LENGTH, free_m);
  if (s->design->crown.hook_reach_m > over_m / 2)
    sw_draft_remedy (draft,
                     "crown.hook_reach_m",
                     sw_round_down (s->design->crown.hook_reach_m - over_m / 2, 0.001));
  sw_draft_remedy (draft,
                   "shape.crown_radius_m",
                   sw_round_up (s->design->shape.crown_radius_m + over_m / 2, 0.001));
  return TRUE;
}

/* Four lengths never keep out of it: a joint then stands at a quarter. */
static gboolean
joint_low (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *post = s->fittings.post;
  SwPostJoints joints;

  if (post == NULL)
    return FALSE;
  sw_post_joints_init (&joints, s->heights.post_m, sw_pipe_stock_m (post, s->design));
  if (!joints.in_lowest_third)
    return FALSE;
  sw_draft_say (draft, "joint", SW_QUANTITY_LENGTH, joints.lowest_joint_m);
  sw_draft_say (draft, "third", SW_QUANTITY_LENGTH, s->heights.post_m / 3);
  sw_draft_remedy (draft, "stand.post_stock_m", post->stock_m);
  sw_draft_remedy (draft, "stand.post_stock_m", sw_round_up (s->heights.post_m / 3, 0.05));
  return TRUE;
}

const SwFindingRow sw_findings_of_fits[] = {
  { SW_LEVEL_STOP,
    "post-joint-low",
    "stand.post_stock_m",
    N_ ("Out of such lengths the post has a joint {joint} above its foot, inside the lowest "
        "{third}, where it bends most. Buy longer lengths."),
    joint_low },
  { SW_LEVEL_WARN,
    "no-flange-for-post",
    "stand.post",
    N_ ("No flange of the catalogue goes on a post {post} across. Have one made to measure, or "
        "use another pipe."),
    no_flange },
  { SW_LEVEL_WARN,
    "no-fitting-for-stub",
    "topper.stub",
    N_ (
      "No bushing or connector leads from the flange for {flange} to a stub {stub} across. Use "
      "another pipe for the stub."),
    stub_not_held },
  { SW_LEVEL_WARN,
    "stub-short",
    "topper.stub_m",
    N_ ("The stub is {stub} from crown to star, but plate, hooks' drop and fittings take "
        "{needed}: the star would stand inside them."),
    stub_short },
  { SW_LEVEL_WARN,
    "grommet-wide",
    "crown.hook",
    N_ (
      "The grommet these hooks need is {rim} across its rim, but a strip is only {width} wide. "
      "Use eyes with cable ties, or a wider strip."),
    grommet_wide },
  { SW_LEVEL_WARN,
    "hooks-over-flange",
    "shape.crown_radius_m",
    N_ ("The flange under the crown plate is {flange} across, but only {free} are free between "
        "the hooks' washers. Widen the crown."),
    hooks_over_flange },
  { 0 }
};
