// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/fit-chain.h"

#include <glib/gi18n.h>
#include <math.h>

/* A washer's outside over the diameter of its bolt: plain washers of ASME B18.22.1, narrow, are
 * 2.2 to 2.5 of it (values from memory). */
#define WASHER_SHARE 2.5

#define SET_SCREWS_LOOSE_M 0.002 /* more wants a shim under set screws; own estimate */
#define CLAMP_LOOSE_M 0.008      /* more and a U-bolt's nuts run out of thread; own estimate */
#define TIE_CORD_MOST_M 0.10     /* what hem, grommet and cord make up; our own choice */
#define TIE_SLACK_M 0.001

const char *const sw_verdict_words[] = { "fits", "loose", "tight", "none" };
const char *const sw_verdict_labels[] = {
  [SW_VERDICT_FITS] = N_ ("fits"),
  [SW_VERDICT_LOOSE] = N_ ("loose"),
  [SW_VERDICT_TIGHT] = N_ ("no room"),
  [SW_VERDICT_NONE] = N_ ("nothing fits"),
};

static void
add (SwFitChain *chain, SwPair pair)
{
  g_assert (chain->n < SW_PAIRS_MOST);
  pair.clearance_m = pair.outer_m - pair.inner_m;
  chain->pairs[chain->n++] = pair;
}

/* Enough play, and not too much. */
static SwVerdict
between (double clearance_m, double least_m, double most_m)
{
  if (clearance_m < least_m)
    return SW_VERDICT_TIGHT;
  return clearance_m > most_m ? SW_VERDICT_LOOSE : SW_VERDICT_FITS;
}

static void
add_room (SwFitChain *chain, SwPair pair)
{
  pair.kind = SW_PAIR_CLEARS;
  pair.verdict = between (pair.outer_m - pair.inner_m, 0, INFINITY);
  add (chain, pair);
}

/* A clearance hole and its bolt. */
static void
add_bolt (SwFitChain *chain, SwPair pair)
{
  pair.kind = SW_PAIR_BOLTS;
  pair.verdict = between (pair.outer_m - pair.inner_m, 0, INFINITY);
  add (chain, pair);
}

/* The words for a joint and where it is. */
typedef struct {
  const char *what; /* N_() */
  SwPairPlace place;
} Joint;

static void
add_none (SwFitChain *chain, Joint joint, SwPairKind kind, const SwPipe *inner)
{
  add (chain,
       (SwPair){ .what = joint.what,
                 .place = joint.place,
                 .kind = kind,
                 .inner = inner->name,
                 .inner_m = inner->od_m,
                 .outer_m = NAN,
                 .verdict = SW_VERDICT_NONE });
}

/* One thread in another; both sizes are that of the pipe that bears it. */
static void
add_thread (SwFitChain *chain,
            Joint joint,
            const char *name,
            double inner_m,
            const SwFitting *outer)
{
  add (chain,
       (SwPair){ .what = joint.what,
                 .place = joint.place,
                 .kind = SW_PAIR_THREADS,
                 .inner = name,
                 .outer = outer->name,
                 .inner_m = inner_m,
                 .outer_m = outer->inside_m,
                 .verdict = SW_VERDICT_FITS,
                 .locked = TRUE });
}

static void
add_set_screws (SwFitChain *chain, Joint joint, const SwPipe *inner, const SwFitting *outer)
{
  double play_m = outer->inside_m - inner->od_m;

  add (chain,
       (SwPair){ .what = joint.what,
                 .place = joint.place,
                 .kind = SW_PAIR_GRIPS,
                 .inner = inner->name,
                 .outer = outer->name,
                 .inner_m = inner->od_m,
                 .outer_m = outer->inside_m,
                 .verdict = between (play_m, 0, SET_SCREWS_LOOSE_M),
                 .locked = TRUE });
}

static void
add_strips (SwFitChain *chain, const SwDesign *design, const SwCone *cone)
{
  add_room (chain,
            (SwPair){ .place = SW_AT_STRIPS,
                      .what = N_ ("Strips side by side at the crown"),
                      .inner = N_ ("width of a strip"),
                      .outer = N_ ("strip to strip at the crown"),
                      .inner_m = design->strip.width_m,
                      .outer_m = cone->spacing_crown_m });
}

static void
add_grommet (SwFitChain *chain, const SwDesign *design, const SwFittings *fittings)
{
  const SwFitting *grommet = fittings->grommet;
  gboolean open = fittings->hook != NULL && fittings->hook->form == SW_HOOK_OPEN;
  double through_m = sw_fittings_through_grommet_m (fittings);

  add (
    chain,
    (SwPair){ .place = SW_AT_GROMMET,
              .what = open ? N_ ("Grommet on its hook") : N_ ("Cable tie through the grommet"),
              .kind = SW_PAIR_HANGS,
              .inner = open ? fittings->hook->name : N_ ("cable tie"),
              .outer = grommet == NULL ? NULL : grommet->name,
              .inner_m = through_m,
              .outer_m = grommet == NULL ? NAN : grommet->inside_m,
              .verdict = grommet == NULL ? SW_VERDICT_NONE : SW_VERDICT_FITS });
  if (grommet != NULL)
    add_room (chain,
              (SwPair){ .place = SW_AT_GROMMET,
                        .what = N_ ("Grommet in the strip"),
                        .inner = N_ ("rim of the grommet"),
                        .outer = N_ ("width of a strip"),
                        .inner_m = grommet->outside_m,
                        .outer_m = design->strip.width_m });
}

/* In still air: as long as it is pulled, and how far it may go. */
static void
add_tie (SwFitChain *chain, const SwStrip *strip, double gap_m)
{
  if (!(strip->tie_length_m > 0 && strip->tie_n_per_m > 0))
    return;
  double stretch_m = strip->tension_n / strip->tie_n_per_m;
  double most_m = strip->tie_length_m * (strip->tie_stretch_max - 1);
  double cord_m = gap_m - strip->tie_length_m - most_m;
  double pulled_m = strip->tie_length_m + stretch_m;
  SwVerdict verdict = between (gap_m - pulled_m, -TIE_SLACK_M, INFINITY);
  if (verdict == SW_VERDICT_FITS && cord_m > TIE_CORD_MOST_M)
    verdict = SW_VERDICT_LOOSE;
  add (chain,
       (SwPair){ .place = SW_AT_TIE,
                 .what = N_ ("Elastic tie in the gap at the tie"),
                 .kind = SW_PAIR_STRETCHES,
                 .inner = N_ ("elastic tie, pulled in still air"),
                 .outer = N_ ("gap at the tie"),
                 .inner_m = pulled_m,
                 .outer_m = gap_m,
                 .verdict = verdict });
  add (chain,
       (SwPair){ .place = SW_AT_TIE,
                 .what = N_ ("Travel of the elastic tie"),
                 .kind = SW_PAIR_STRETCHES,
                 .inner = N_ ("stretch in still air"),
                 .outer = N_ ("all the stretch it has"),
                 .inner_m = stretch_m,
                 .outer_m = most_m,
                 .verdict = between (most_m - stretch_m, 0, INFINITY) });
}

static void
add_hook (SwFitChain *chain, const SwHook *hook)
{
  if (hook != NULL)
    add_bolt (chain,
              (SwPair){ .place = SW_AT_HOOK,
                        .what = N_ ("Hook in the crown plate"),
                        .inner = hook->name,
                        .outer = N_ ("hole in the plate"),
                        .inner_m = hook->diameter_m,
                        .outer_m = hook->hole_m });
}

double
sw_free_between_hooks_m (const SwDesign *design, const SwHook *hook)
{
  double circle_m = design->shape.crown_radius_m - design->crown.hook_reach_m;

  return 2 * circle_m - WASHER_SHARE * hook->diameter_m;
}

static void
add_flange_between_hooks (SwFitChain *chain, const SwDesign *design, const SwFittings *fittings)
{
  const SwFitting *flange = fittings->post_top.flange;

  if (flange == NULL || fittings->hook == NULL)
    return;
  add_room (chain,
            (SwPair){ .place = SW_AT_BETWEEN_HOOKS,
                      .what = N_ ("Flange between the hooks"),
                      .inner = flange->name,
                      .outer = N_ ("washer to washer across the plate"),
                      .inner_m = flange->outside_m,
                      .outer_m = sw_free_between_hooks_m (design, fittings->hook) });
}

static void
add_sleeve (SwFitChain *chain, const SwStand *stand, const SwFittings *fittings)
{
  const SwPipe *post = fittings->post, *sleeve = fittings->sleeve;
  double most_m = SW_PLAY_MOST * stand->sleeve_depth_m;

  if (post == NULL || sleeve == NULL)
    return;
  add (chain,
       (SwPair){ .place = SW_AT_SLEEVE,
                 .what = N_ ("Post in its sleeve"),
                 .kind = SW_PAIR_SLIDES,
                 .inner = post->name,
                 .outer = sleeve->name,
                 .inner_m = post->od_m,
                 .outer_m = sleeve->id_m,
                 .verdict = between (sleeve->id_m - post->od_m, SW_SLIDES_M, most_m) });
}

/* The words for the joints at one end of a pipe. */
typedef struct {
  Joint pipe_in_connector, connector_in_flange, pipe_in_flange;
} EndWords;

static void
add_end (SwFitChain *chain, const SwPipe *pipe, const SwPipeEnd *end, const EndWords *words)
{
  if (end->flange == NULL) {
    add_none (chain, words->pipe_in_flange, SW_PAIR_THREADS, pipe);
    return;
  }
  if (end->connector != NULL) {
    add_set_screws (chain, words->pipe_in_connector, pipe, end->connector);
    add_thread (chain,
                words->connector_in_flange,
                end->connector->name,
                end->connector->outside_m,
                end->flange);
    return;
  }
  if (end->flange->kind == SW_FITTING_SET_FLANGE)
    add_set_screws (chain, words->pipe_in_flange, pipe, end->flange);
  else
    add_thread (chain, words->pipe_in_flange, pipe->name, pipe->od_m, end->flange);
}

static const EndWords post_words = { { N_ ("Post in its connector"), SW_AT_POST_TOP },
                                     { N_ ("Post's connector in the flange"), SW_AT_POST_TOP },
                                     { N_ ("Post in the flange under the plate"),
                                       SW_AT_POST_TOP } };
static const EndWords sleeve_words = {
  { N_ ("Sleeve in its connector"), SW_AT_SLEEVE_FOOT },
  { N_ ("Sleeve's connector in the flange"), SW_AT_SLEEVE_FOOT },
  { N_ ("Sleeve in the flange on the boards"), SW_AT_SLEEVE_FOOT }
};

static void
add_flange_bolts (SwFitChain *chain, const SwFitting *flange)
{
  if (flange != NULL)
    add_bolt (chain,
              (SwPair){ .place = SW_AT_FLANGE_BOLTS,
                        .what = N_ ("Bolts of the flange through the plate"),
                        .inner = N_ ("bolt"),
                        .outer = N_ ("hole in plate and flange"),
                        .inner_m = flange->bolt_m,
                        .outer_m = flange->hole_m });
}

/* From the flange on the plate up: bushings, connector, stub. */
static void
add_stub (SwFitChain *chain, const SwFittings *fittings)
{
  const SwFitting *below = fittings->top_flange;
  const SwPipe *stub = fittings->stub;

  if (stub == NULL || below == NULL)
    return;
  if (!fittings->stub_held) {
    add_none (chain,
              (Joint){ N_ ("Stub on the flange of the crown"), SW_AT_STUB },
              SW_PAIR_THREADS,
              stub);
    return;
  }
  for (guint i = 0; i < fittings->n_reducers; i++) {
    const SwFitting *reducer = fittings->reducers[i];
    add_thread (chain,
                (Joint){ i == 0 ? N_ ("Bushing in the flange on the plate")
                                : N_ ("Bushing in the bushing"),
                         SW_AT_STUB },
                reducer->name,
                reducer->outside_m,
                below);
    below = reducer;
  }
  if (fittings->stub_connector == NULL) {
    add_thread (chain,
                (Joint){ N_ ("Stub in its thread"), SW_AT_STUB },
                stub->name,
                stub->od_m,
                below);
    return;
  }
  add_thread (chain,
              (Joint){ N_ ("Stub's connector in its thread"), SW_AT_STUB },
              fittings->stub_connector->name,
              fittings->stub_connector->outside_m,
              below);
  add_set_screws (chain,
                  (Joint){ N_ ("Stub in its connector"), SW_AT_STUB },
                  stub,
                  fittings->stub_connector);
}

static void
add_bracket (SwFitChain *chain, const SwFittings *fittings)
{
  const SwPipe *stub = fittings->stub;

  if (stub == NULL)
    return;
  if (fittings->u_bolt == NULL) {
    add_none (chain,
              (Joint){ N_ ("Stub in the star's bracket"), SW_AT_BRACKET },
              SW_PAIR_CLAMPS,
              stub);
    return;
  }
  double play_m = fittings->u_bolt->inside_m - stub->od_m;
  add (chain,
       (SwPair){ .place = SW_AT_BRACKET,
                 .what = N_ ("Stub in the star's bracket"),
                 .kind = SW_PAIR_CLAMPS,
                 .inner = stub->name,
                 .outer = fittings->u_bolt->name,
                 .inner_m = stub->od_m,
                 .outer_m = fittings->u_bolt->inside_m,
                 .verdict = between (play_m, 0, CLAMP_LOOSE_M),
                 .locked = TRUE });
}

void
sw_fit_chain_init (SwFitChain *chain,
                   const SwDesign *design,
                   const SwCone *cone,
                   const SwFittings *fittings)
{
  *chain = (SwFitChain){ .n = 0 };
  add_strips (chain, design, cone);
  add_hook (chain, fittings->hook);
  add_grommet (chain, design, fittings);
  add_tie (chain, &design->strip, cone->tail_m);
  add_sleeve (chain, &design->stand, fittings);
  if (fittings->sleeve != NULL && design->stand.foot != SW_FOOT_SOCKET &&
      design->stand.arm_m > 0)
    add_end (chain, fittings->sleeve, &fittings->sleeve_foot, &sleeve_words);
  if (fittings->post != NULL)
    add_end (chain, fittings->post, &fittings->post_top, &post_words);
  add_flange_bolts (chain, fittings->post_top.flange);
  add_flange_between_hooks (chain, design, fittings);
  add_stub (chain, fittings);
  add_bracket (chain, fittings);
}

guint
sw_fit_locks (const SwFitChain *chain)
{
  guint locks = 0;

  for (guint i = 0; i < chain->n; i++)
    locks += chain->pairs[i].locked ? 1 : 0;
  return locks;
}
