// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-post.c: post and sleeve. */
#include "engine/cuts.h"
#include "engine/finding-table.h"
#include "engine/stand.h"
#include "engine/tube.h"

#include <glib/gi18n.h>
#include <math.h>

#define PULL_LEAST_N 1 /* a pull that bends a post to be seen; our own choice */

/* Below, gusts build up. Source: ASCE 7-16, 26.2: "rigid" is 1 Hz and more. */
#define SWAY_LEAST_HZ 1

static const SwPipe *
post_of (const SwSolution *s)
{
  return sw_catalogue_pipe (s->catalogue, s->design->stand.post);
}

static const SwPipe *
sleeve_of (const SwSolution *s)
{
  return sw_catalogue_pipe (s->catalogue, s->design->stand.sleeve);
}

/* Returns: (nullable): the lightest metal pipe for which `measure` is at least `least`. */
static const SwPipe *
lightest_with (const SwCatalogue *catalogue,
               double (*measure) (const SwPipe *pipe),
               double least)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (catalogue, "pipe");
  const SwPipe *best = NULL;

  for (guint i = 0; i < ids->len; i++) {
    const SwPipe *pipe = sw_catalogue_pipe (catalogue, ids->pdata[i]);
    if (pipe->material == SW_MATERIAL_PVC || measure (pipe) < least)
      continue;
    if (best == NULL || pipe->mass_kg_per_m < best->mass_kg_per_m)
      best = pipe;
  }
  return best;
}

static double
inside_m (const SwPipe *pipe)
{
  return pipe->id_m;
}

/* What moment it bears at its yield. */
static double
moment_at_yield_nm (const SwPipe *pipe)
{
  double inner_m = pipe->od_m - 2 * pipe->wall_m;

  return sw_material_yield (pipe->material) * G_PI / 32 *
         (pow (pipe->od_m, 4) - pow (inner_m, 4)) / pipe->od_m;
}

static gboolean
post_bends (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *post = post_of (s);
  gboolean guyed = isfinite (s->support.guyed_post_stress_pa);
  double stress_pa = guyed ? s->support.guyed_post_stress_pa : s->support.post_stress_pa;

  if (post == NULL || !(stress_pa > 0))
    return FALSE;
  double factor = sw_material_yield (post->material) / stress_pa;
  if (factor >= SW_FACTOR_NEEDED)
    return FALSE;
  const SwPipe *other = lightest_with (s->catalogue,
                                       moment_at_yield_nm,
                                       moment_at_yield_nm (post) * SW_FACTOR_NEEDED / factor);
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, factor);
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_FACTOR_NEEDED);
  if (other != NULL)
    sw_draft_remedy_text (draft, "stand.post", other->id);
  sw_draft_remedy (draft, "guys.count", 4);
  return TRUE;
}

static gboolean
column_weak (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStandChecks *checks = &s->support.checks;
  const SwPipe *post = post_of (s);

  if (post == NULL || !(checks->column.factor < SW_FACTOR_NEEDED))
    return FALSE;
  double times = SW_FACTOR_NEEDED / MAX (checks->column.factor, 0.1);
  const SwPipe *other =
    lightest_with (s->catalogue, moment_at_yield_nm, moment_at_yield_nm (post) * times);
  sw_draft_say (draft, "press", SW_QUANTITY_FORCE, checks->column_axial_n);
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, checks->column.factor);
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_FACTOR_NEEDED);
  sw_draft_say (draft, "limit", SW_QUANTITY_SPEED, checks->column.limit_mps);
  if (other != NULL)
    sw_draft_remedy_text (draft, "stand.post", other->id);
  sw_draft_remedy (draft, "guys.count", 4);
  return TRUE;
}

static gboolean
stub_bends (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStandChecks *checks = &s->support.checks;
  const SwPipe *stub = sw_catalogue_pipe (s->catalogue, s->design->topper.stub);

  if (stub == NULL || !(checks->stub.factor < SW_FACTOR_NEEDED))
    return FALSE;
  const SwPipe *other =
    lightest_with (s->catalogue,
                   moment_at_yield_nm,
                   moment_at_yield_nm (stub) * SW_FACTOR_NEEDED / checks->stub.factor);
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, checks->stub.factor);
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_FACTOR_NEEDED);
  sw_draft_say (draft, "limit", SW_QUANTITY_SPEED, checks->stub.limit_mps);
  if (other != NULL)
    sw_draft_remedy_text (draft, "topper.stub", other->id);
  return TRUE;
}

/* With the ring on the foot the pull is internal to the whole, but not to the post. */
static gboolean
pulled_on_foot (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "pull", SW_QUANTITY_FORCE, s->support.side_pull_n);
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, s->support.checks.column.factor);
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_FACTOR_NEEDED);
  return s->support.side_pull_n > PULL_LEAST_N &&
         s->design->stand.ring_held_by == SW_HELD_BY_FOOT &&
         isfinite (s->support.checks.column.factor);
}

static gboolean
sways (const SwSolution *s, SwFindingDraft *draft)
{
  sw_draft_say (draft, "hz", SW_QUANTITY_FREQUENCY, s->support.first_hz);
  return s->support.first_hz < SWAY_LEAST_HZ;
}

static gboolean
not_in_sleeve (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *post = post_of (s), *sleeve = sleeve_of (s);

  if (post == NULL || sleeve == NULL || sleeve->id_m - post->od_m >= SW_SLIDES_M)
    return FALSE;
  const SwPipe *other = lightest_with (s->catalogue, inside_m, post->od_m + SW_SLIDES_M);
  sw_draft_say (draft, "post", SW_QUANTITY_SHORT_LENGTH, post->od_m);
  sw_draft_say (draft, "sleeve", SW_QUANTITY_SHORT_LENGTH, sleeve->id_m);
  if (other != NULL)
    sw_draft_remedy_text (draft, "stand.sleeve", other->id);
  return TRUE;
}

/* Play between post and sleeve lets the post lean until it touches top and bottom. */
static gboolean
sleeve_loose (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *post = post_of (s), *sleeve = sleeve_of (s);
  double depth_m = s->design->stand.sleeve_depth_m;

  if (post == NULL || sleeve == NULL)
    return FALSE;
  double play_m = sleeve->id_m - post->od_m;
  if (play_m < SW_SLIDES_M || play_m <= SW_PLAY_MOST * depth_m)
    return FALSE;
  sw_draft_say (draft, "play", SW_QUANTITY_SHORT_LENGTH, play_m);
  sw_draft_say (draft, "depth", SW_QUANTITY_SHORT_LENGTH, depth_m);
  sw_draft_say (draft,
                "lean",
                SW_QUANTITY_SHORT_LENGTH,
                MIN (play_m / depth_m, 1) * s->design->shape.crown_height_m);
  sw_draft_remedy (draft,
                   "stand.sleeve_depth_m",
                   sw_round_up (play_m / SW_PLAY_MOST + 0.001, 0.01));
  return TRUE;
}

static gboolean
post_needs_joint (const SwSolution *s, SwFindingDraft *draft)
{
  double stock_m = s->design->stand.post_stock_m;
  SwRuns runs;

  sw_runs_init (&runs, s->design, s->catalogue);
  sw_draft_say (draft, "post", SW_QUANTITY_LENGTH, runs.post_m);
  sw_draft_say (draft, "stock", SW_QUANTITY_LENGTH, stock_m);
  sw_draft_say (draft, "third", SW_QUANTITY_LENGTH, runs.post_m / 3);
  return post_of (s) != NULL && runs.post_m > stock_m + 1e-9;
}

const SwFindingRow sw_findings_of_post[] = {
  { SW_LEVEL_STOP,
    "post-bends",
    "stand.post",
    N_ ("The post bends: in the gust it bears {factor} times the load, {needed} are needed. "
        "Use a "
        "stronger pipe, or guys."),
    post_bends },
  { SW_LEVEL_STOP,
    "post-not-in-sleeve",
    "stand.sleeve",
    N_ ("The post is {post} across and does not slide into a sleeve that is {sleeve} inside."),
    not_in_sleeve },
  { SW_LEVEL_WARN,
    "sleeve-loose",
    "stand.sleeve",
    N_ (
      "The post has {play} of play in a sleeve {depth} deep and can lean {lean} at the crown. "
      "Wedge it, or use a deeper or tighter sleeve."),
    sleeve_loose },
  { SW_LEVEL_WARN,
    "post-needs-joint",
    "stand.post_stock_m",
    N_ ("The post is {post} long, but is sold as {stock}: it needs a joint. Keep the joint out "
        "of "
        "the lowest {third} and sleeve it."),
    post_needs_joint },
  { SW_LEVEL_WARN,
    "post-buckles",
    "stand.post",
    N_ (
      "In the gust strips, weight and guys press the post down with {press} while it bends: it "
      "bears {factor} times that, {needed} are needed, and more than {limit} is too much. Use "
      "a stronger post, or add guys."),
    column_weak },
  { SW_LEVEL_WARN,
    "star-stub-bends",
    "topper.stub",
    N_ (
      "In the gust the star's stub bears {factor} times the bending, {needed} are needed; more "
      "than {limit} is too much. Use a stronger or shorter stub, or a smaller star."),
    stub_bends },
  { SW_LEVEL_TIP,
    "post-pulled-on-foot",
    "shape.coverage_deg",
    N_ ("The strips of a partial tree pull the crown towards them with {pull}, all season. A "
        "ring on the foot takes that back below, but the post is bent by it: with it the post "
        "bears {factor} times the gust's load ({needed} are needed)."),
    pulled_on_foot },
  { SW_LEVEL_WARN,
    "sways",
    "stand.post",
    N_ ("The tree sways slowly ({hz}): gusts can build up, which is not worked out. Use a "
        "stiffer "
        "post."),
    sways },
  { 0 }
};
