// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-foot.c: the gust asked for against what holds the tree up, and the foot's own part.
 */
#include "engine/finding-table.h"
#include "engine/stand.h"

#include <glib/gi18n.h>
#include <math.h>

#define GRAVITY 9.80665 /* m/s², standard (NIST SP 811) */

#define BOARD_MISS_M 0.003    /* lumber swells as much; our own choice */
#define CONCRETE_LEAST_M 0.05 /* round the sleeve; common practice, no source */

static gboolean
guyed (const SwSolution *s)
{
  return isfinite (s->support.guy_tension_n);
}

static gboolean
on_foot (const SwSolution *s)
{
  return s->design->stand.foot != SW_FOOT_SOCKET;
}

/* With tested stakes, were they not. */
static double
best_limit_mps (const SwSolution *s)
{
  return guyed (s) ? s->support.gust_limit_guyed_mps : s->support.gust_limit_unguyed_mps;
}

/* What pushes the foot sideways at the design's gust. */
static double
shear_n (const SwSolution *s)
{
  return guyed (s) ? s->support.guyed_base_shear_n : s->wind.base_shear_n;
}

static double
grip_factor (const SwSolution *s)
{
  return s->design->stand.friction * s->support.foot_mass_kg * GRAVITY / shear_n (s);
}

/* Ballast that brings the foot to so much mass. */
static double
ballast_for_kg (const SwSolution *s, double mass_kg)
{
  return sw_round_up (s->design->stand.ballast_kg + mass_kg - s->support.foot_mass_kg, 1);
}

static double
mass_against_tipping_kg (const SwSolution *s)
{
  return SW_FACTOR_NEEDED * s->wind.base_moment_nm / (GRAVITY * s->support.foot_lever_m);
}

static double
mass_against_sliding_kg (const SwSolution *s)
{
  return SW_FACTOR_NEEDED * shear_n (s) / (GRAVITY * s->design->stand.friction);
}

/* One change that might carry the whole tree through the gust. */
static void
offer_against_gust (const SwSolution *s, SwFindingDraft *draft)
{
  if (guyed (s)) {
    double pull_n = s->support.guy_tension_n;
    double kept = s->design->guys.end_efficiency;
    sw_draft_remedy (draft, "guys.stake_hold_n", sw_round_up (SW_FACTOR_STAKE * pull_n, 10));
    sw_draft_remedy (draft, "guys.break_n", sw_round_up (SW_FACTOR_ROPE * pull_n / kept, 10));
    return;
  }
  if (on_foot (s))
    sw_draft_remedy (
      draft,
      "stand.ballast_kg",
      ballast_for_kg (s, MAX (mass_against_tipping_kg (s), mass_against_sliding_kg (s))));
  else
    sw_draft_remedy (draft,
                     "stand.socket_depth_m",
                     sw_round_up (s->support.socket_depth_needed_m, 0.05));
  sw_draft_remedy (draft, "guys.count", 4);
}

static gboolean
gust_too_high (const SwSolution *s, SwFindingDraft *draft)
{
  double gust_mps = s->design->site.gust_mps, limit_mps = best_limit_mps (s);
  SwLimitReason reason =
    guyed (s) ? s->support.limit_reason_guyed : s->support.limit_reason_unguyed;

  if (!(gust_mps > limit_mps))
    return FALSE;
  sw_draft_say (draft, "gust", SW_QUANTITY_SPEED, gust_mps);
  sw_draft_say (draft, "limit", SW_QUANTITY_SPEED, limit_mps);
  sw_draft_say_word (draft, "what", sw_limit_labels[reason]);
  if (!(limit_mps > 0))
    draft->finding.template_id =
      N_ ("Even in still air there is not enough in reserve before {what}; a gust of {gust} is "
          "asked for.");

  offer_against_gust (s, draft);
  return TRUE;
}

static gboolean
stakes_untested (const SwSolution *s, SwFindingDraft *draft)
{
  double gust_mps = s->design->site.gust_mps;

  sw_draft_say (draft, "gust", SW_QUANTITY_SPEED, gust_mps);
  sw_draft_say (draft, "limit", SW_QUANTITY_SPEED, s->support.gust_limit_unguyed_mps);
  sw_draft_say (draft, "hold", SW_QUANTITY_FORCE, s->design->guys.stake_hold_n);
  return guyed (s) && !s->design->guys.stakes_tested &&
         gust_mps > s->support.gust_limit_unguyed_mps && gust_mps <= best_limit_mps (s);
}

static gboolean
one_guy_matters (const SwSolution *s, SwFindingDraft *draft)
{
  double gust_mps = s->design->site.gust_mps;

  sw_draft_say (draft, "gust", SW_QUANTITY_SPEED, gust_mps);
  sw_draft_say (draft, "limit", SW_QUANTITY_SPEED, s->support.gust_limit_unguyed_mps);
  return guyed (s) && s->design->guys.stakes_tested &&
         gust_mps > s->support.gust_limit_unguyed_mps && gust_mps <= best_limit_mps (s);
}

static gboolean
foot_tips (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStand *stand = &s->design->stand;

  if (guyed (s) || !on_foot (s) || !(s->support.tipping_factor < SW_FACTOR_NEEDED))
    return FALSE;
  double mass_kg = mass_against_tipping_kg (s);
  double lever_m = s->support.foot_lever_m * mass_kg / s->support.foot_mass_kg;
  double arm_m = sw_round_up (lever_m * G_SQRT2 - stand->arm_width_m / 2, 0.05);
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, s->support.tipping_factor);
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_FACTOR_NEEDED);
  sw_draft_say (draft, "ballast", SW_QUANTITY_MASS, ballast_for_kg (s, mass_kg));
  sw_draft_say (draft, "arm", SW_QUANTITY_LENGTH, arm_m);
  sw_draft_remedy (draft, "stand.ballast_kg", ballast_for_kg (s, mass_kg));
  sw_draft_remedy (draft, "stand.arm_m", arm_m);
  return TRUE;
}

static gboolean
foot_slides (const SwSolution *s, SwFindingDraft *draft)
{
  if (!on_foot (s) || !(grip_factor (s) < SW_FACTOR_NEEDED))
    return FALSE;
  double ballast_kg = ballast_for_kg (s, mass_against_sliding_kg (s));
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, grip_factor (s));
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_FACTOR_NEEDED);
  sw_draft_remedy (draft, "stand.ballast_kg", ballast_kg);
  if (isfinite (ballast_kg))
    sw_draft_say (draft, "ballast", SW_QUANTITY_MASS, ballast_kg);
  else
    draft->finding.template_id = N_ (
      "The foot slides: in the gust its grip is {factor} times the push, {needed} are needed.");
  return TRUE;
}

static gboolean
socket_shallow (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStand *stand = &s->design->stand;
  double needed_m = s->support.socket_depth_needed_m;

  if (guyed (s) || !(needed_m > stand->socket_depth_m))
    return FALSE;
  sw_draft_say (draft, "depth", SW_QUANTITY_LENGTH, stand->socket_depth_m);
  sw_draft_say (draft, "needed", SW_QUANTITY_LENGTH, needed_m);
  sw_draft_remedy (draft, "stand.socket_depth_m", sw_round_up (needed_m, 0.05));
  return TRUE;
}

static gboolean
bucket_overfull (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStand *stand = &s->design->stand;

  if (stand->foot != SW_FOOT_BUCKET || !(stand->ballast_kg > s->foot.bucket_most_kg))
    return FALSE;
  sw_draft_say (draft, "ballast", SW_QUANTITY_MASS, stand->ballast_kg);
  sw_draft_say (draft, "most", SW_QUANTITY_MASS, s->foot.bucket_most_kg);
  sw_draft_remedy (draft, "stand.foot", SW_FOOT_SLABS);
  return TRUE;
}

static gboolean
board_not_sold (const SwSolution *s, SwFindingDraft *draft)
{
  const SwBoard *board = s->heights.board;
  double width_m = s->design->stand.arm_width_m;

  if (board == NULL || fabs (board->width_m - width_m) <= BOARD_MISS_M)
    return FALSE;
  sw_draft_say (draft, "width", SW_QUANTITY_SHORT_LENGTH, width_m);
  sw_draft_say (draft, "sold", SW_QUANTITY_SHORT_LENGTH, board->width_m);
  sw_draft_remedy (draft, "stand.arm_width_m", board->width_m);
  return TRUE;
}

/* The narrowest board of the catalogue on which the bolts stand far enough from the edge. */
static double
width_for_bolts_m (const SwSolution *s)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (s->catalogue, "board");
  double least_m = 2 * (s->foot.bolt_off_m + s->foot.bolt_edge_least_m), best_m = NAN;

  for (guint i = 0; i < ids->len; i++) {
    double width_m = sw_catalogue_board (s->catalogue, ids->pdata[i])->width_m;
    if (width_m >= least_m && !(width_m >= best_m))
      best_m = width_m;
  }
  return best_m;
}

static gboolean
bolts_near_edge (const SwSolution *s, SwFindingDraft *draft)
{
  if (!(s->foot.bolt_edge_m < s->foot.bolt_edge_least_m))
    return FALSE;
  sw_draft_say (draft, "edge", SW_QUANTITY_SHORT_LENGTH, s->foot.bolt_edge_m);
  sw_draft_say (draft, "least", SW_QUANTITY_SHORT_LENGTH, s->foot.bolt_edge_least_m);
  sw_draft_remedy (draft, "stand.arm_width_m", width_for_bolts_m (s));
  return TRUE;
}

static gboolean
arms_short (const SwSolution *s, SwFindingDraft *draft)
{
  double arm_m = s->design->stand.arm_m;

  if (!(s->foot.slabs > 0 && arm_m < s->foot.slab_off_m))
    return FALSE;
  sw_draft_say (draft, "arm", SW_QUANTITY_LENGTH, arm_m);
  sw_draft_say (draft, "middle", SW_QUANTITY_LENGTH, s->foot.slab_off_m);
  sw_draft_remedy (draft, "stand.arm_m", sw_round_up (s->foot.slab_off_m, 0.05));
  return TRUE;
}

static gboolean
socket_narrow (const SwSolution *s, SwFindingDraft *draft)
{
  const SwPipe *sleeve = s->fittings.sleeve;

  if (on_foot (s) || sleeve == NULL)
    return FALSE;
  double round_m = (s->design->stand.socket_diameter_m - sleeve->od_m) / 2;
  if (round_m >= CONCRETE_LEAST_M)
    return FALSE;
  sw_draft_say (draft, "hole", SW_QUANTITY_SHORT_LENGTH, s->design->stand.socket_diameter_m);
  sw_draft_say (draft, "least", SW_QUANTITY_SHORT_LENGTH, CONCRETE_LEAST_M);
  sw_draft_remedy (draft,
                   "stand.socket_diameter_m",
                   sw_round_up (sleeve->od_m + 2 * CONCRETE_LEAST_M, 0.01));
  return TRUE;
}

static gboolean
sleeve_below_socket (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStand *stand = &s->design->stand;

  sw_draft_say (draft, "sleeve", SW_QUANTITY_LENGTH, stand->sleeve_depth_m);
  sw_draft_say (draft, "socket", SW_QUANTITY_LENGTH, stand->socket_depth_m);
  sw_draft_remedy (draft, "stand.sleeve_depth_m", stand->socket_depth_m);
  return !on_foot (s) && stand->sleeve_depth_m > stand->socket_depth_m;
}

/* Actual widths of lumber as sold, ALSC PS 20: 2x4 to 2x12. */
static const double board_widths_m[] = { 0.0889, 0.1397, 0.18415, 0.23495, 0.28575 };

static gboolean
half_lap_weak (const SwSolution *s, SwFindingDraft *draft)
{
  const SwCheck *board = &s->support.checks.board;
  double width_m = s->design->stand.arm_width_m;

  if (!(board->factor < SW_FACTOR_BOARD))
    return FALSE;
  sw_draft_say (draft, "left", SW_QUANTITY_SHORT_LENGTH, s->support.checks.lap_m);
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, board->factor);
  sw_draft_say (draft, "limit", SW_QUANTITY_SPEED, board->limit_mps);
  for (guint i = 0; i < G_N_ELEMENTS (board_widths_m); i++) {
    if (board_widths_m[i] > width_m + 0.01 && draft->n_remedies < 3)
      sw_draft_remedy (draft, "stand.arm_width_m", board_widths_m[i]);
  }
  sw_draft_remedy (draft, "guys.count", 4);
  return TRUE;
}

const SwFindingRow sw_findings_of_foot[] = {
  { SW_LEVEL_STOP,
    "gust-too-high",
    "site.gust_mps",
    N_ (
      "The tree is asked to stand a gust of {gust}, but only up to {limit} is there enough in "
      "reserve before {what}. Strengthen that, or take the tree down earlier."),
    gust_too_high },
  { SW_LEVEL_STOP,
    "foot-tips",
    "stand.ballast_kg",
    N_ (
      "The foot tips: in the gust it holds {factor} times the push, {needed} are needed. Make "
      "the ballast {ballast}, or the foot's arms {arm} long, or add guys."),
    foot_tips },
  { SW_LEVEL_STOP,
    "foot-slides",
    "stand.ballast_kg",
    N_ (
      "The foot slides: in the gust its grip is {factor} times the push, {needed} are needed. "
      "Make the ballast {ballast}, or pin the arms to the ground."),
    foot_slides },
  { SW_LEVEL_STOP,
    "socket-shallow",
    "stand.socket_depth_m",
    N_ ("The socket is {depth} deep, but the gust and this soil ask for {needed}."),
    socket_shallow },
  { SW_LEVEL_STOP,
    "bucket-overfull",
    "stand.ballast_kg",
    N_ ("A bucket full of concrete weighs {most}, not the {ballast} that are asked for. Use "
        "paving slabs, or a second bucket."),
    bucket_overfull },
  { SW_LEVEL_WARN,
    "bolts-near-edge",
    "stand.arm_width_m",
    N_ ("The bolts of the sleeve's flange stand {edge} from the edge of the half lap, {least} "
        "are "
        "needed. Use wider boards."),
    bolts_near_edge },
  { SW_LEVEL_WARN,
    "arms-short-for-slabs",
    "stand.arm_m",
    N_ ("The middle of a slab lies {middle} from the post, past the end of an arm of {arm}: it "
        "would tip off. Make the arms longer."),
    arms_short },
  { SW_LEVEL_WARN,
    "socket-narrow",
    "stand.socket_diameter_m",
    N_ ("A hole {hole} across leaves less than {least} of concrete round the sleeve. Dig it "
        "wider."),
    socket_narrow },
  { SW_LEVEL_WARN,
    "sleeve-below-socket",
    "stand.sleeve_depth_m",
    N_ (
      "The post is to stand {sleeve} deep, but the socket is only {socket} deep, and no deeper "
      "is counted."),
    sleeve_below_socket },
  { SW_LEVEL_TIP,
    "board-not-sold",
    "stand.arm_width_m",
    N_ ("Boards {width} wide are not sold; the cut list has the nearest, {sold} wide."),
    board_not_sold },
  { SW_LEVEL_WARN,
    "half-lap-weak",
    "stand.arm_width_m",
    N_ ("Where the boards cross, the half lap leaves {left} of wood: in the gust it bears "
        "{factor} times its bending, and more than {limit} is too much. Lay one board over the "
        "other uncut, use wider boards, or add guys."),
    half_lap_weak },
  { SW_LEVEL_WARN,
    "stakes-untested",
    "guys.stakes_tested",
    N_ ("Only the guys carry a gust of {gust}; without them the limit is {limit}. Pull every "
        "stake "
        "to {hold} with a scale before you count on it."),
    stakes_untested },
  { SW_LEVEL_WARN,
    "one-guy-matters",
    "guys.count",
    N_ ("If one guy lets go, the tree stands {limit} only, not {gust}. Look at stakes and "
        "turnbuckles before each storm."),
    one_guy_matters },
  { 0 }
};
