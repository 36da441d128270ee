// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/fittings.h"

#include <math.h>

/* A pipe's OD may miss its thread's by this and still be cut: ANSI C80.6 gives intermediate
 * conduit an OD up to 0.025 in below the pipe's. */
#define THREAD_MISS_M 0.00076
#define CONNECTOR_PLAY_M 0.00085 /* 1/32 in and a little; own estimate */
#define SET_PLAY_LEAST_M 0.0003  /* less binds; own estimate */
#define SET_PLAY_MOST_M 0.006    /* more leaves set screws askew; own estimate */
#define U_BOLT_PLAY_M 0.0005     /* less does not go over the tube; own estimate */
#define GROMMET_PLAY_M 0.001     /* less tears when it is hung; own estimate */
#define SAME_M 1e-6              /* sizes out of one table */

typedef gboolean (*Takes) (const SwFitting *fitting, double size_m);

/* Returns: (nullable): of the kind, the tightest that takes the size. */
static const SwFitting *
tightest (const SwCatalogue *catalogue, SwFittingKind kind, double size_m, Takes takes)
{
  const SwFitting *best = NULL, *row;

  for (guint i = 0; (row = sw_catalogue_nth_fitting (catalogue, i)) != NULL; i++) {
    if (row->kind != kind || !takes (row, size_m))
      continue;
    if (best == NULL || row->inside_m < best->inside_m)
      best = row;
  }
  return best;
}

double
sw_thread_depth_m (const SwFitting *flange)
{
  return 0.8 * flange->pitch_m;
}

static gboolean
same_thread (const SwFitting *flange, double od_m)
{
  return fabs (flange->inside_m - od_m) <= THREAD_MISS_M;
}

static gboolean
takes_tube (const SwFitting *connector, double od_m)
{
  double play_m = connector->inside_m - od_m;

  return play_m >= 0 && play_m <= CONNECTOR_PLAY_M;
}

static gboolean
sets_pipe (const SwFitting *flange, double od_m)
{
  double play_m = flange->inside_m - od_m;

  return play_m >= SET_PLAY_LEAST_M && play_m <= SET_PLAY_MOST_M;
}

static gboolean
clamps_tube (const SwFitting *bolt, double od_m)
{
  return bolt->inside_m - od_m >= U_BOLT_PLAY_M;
}

static gboolean
lets_through (const SwFitting *grommet, double width_m)
{
  return grommet->inside_m - width_m >= GROMMET_PLAY_M;
}

/* Returns: (nullable): the flange whose thread can be cut on the pipe. */
static const SwFitting *
thread_for (const SwCatalogue *catalogue, const SwPipe *pipe)
{
  const SwFitting *flange = tightest (catalogue, SW_FITTING_FLANGE, pipe->od_m, same_thread);

  if (flange == NULL || pipe->material == SW_MATERIAL_PVC ||
      pipe->wall_m <= sw_thread_depth_m (flange))
    return NULL;
  return flange;
}

static const SwFitting *
connector_for (const SwCatalogue *catalogue, const SwPipe *pipe)
{
  if (pipe->material == SW_MATERIAL_PVC)
    return NULL;
  return tightest (catalogue, SW_FITTING_CONNECTOR, pipe->od_m, takes_tube);
}

static const SwFitting *
flange_of_thread (const SwCatalogue *catalogue, double od_m)
{
  return tightest (catalogue, SW_FITTING_FLANGE, od_m, same_thread);
}

SwPipeEnd
sw_fittings_end (const SwCatalogue *catalogue, const SwPipe *pipe)
{
  SwPipeEnd end = { NULL, NULL };

  if (pipe == NULL)
    return end;
  end.flange = thread_for (catalogue, pipe);
  if (end.flange != NULL)
    return end;
  end.connector = connector_for (catalogue, pipe);
  if (end.connector != NULL)
    end.flange = flange_of_thread (catalogue, end.connector->outside_m);
  else
    end.flange = tightest (catalogue, SW_FITTING_SET_FLANGE, pipe->od_m, sets_pipe);
  return end;
}

double
sw_pipe_end_m (const SwPipeEnd *end)
{
  const SwFitting *last = end->connector != NULL ? end->connector : end->flange;

  if (end->flange == NULL)
    return 0;
  return end->flange->height_m + (end->connector != NULL ? end->connector->height_m : 0) -
         last->engagement_m;
}

/* A flange with set screws has no thread: on the plate then goes the threaded one of its size,
 * the largest that is not wider inside. */
static const SwFitting *
threaded_partner (const SwCatalogue *catalogue, const SwFitting *flange)
{
  const SwFitting *best = NULL, *row;

  if (flange == NULL || flange->kind == SW_FITTING_FLANGE)
    return flange;
  for (guint i = 0; (row = sw_catalogue_nth_fitting (catalogue, i)) != NULL; i++) {
    if (row->kind == SW_FITTING_FLANGE && row->inside_m <= flange->inside_m &&
        (best == NULL || row->inside_m > best->inside_m))
      best = row;
  }
  return best;
}

static gboolean
is_bushing (const SwFitting *fitting, double from_m)
{
  return fitting->kind == SW_FITTING_BUSHING && fabs (fitting->outside_m - from_m) < SAME_M;
}

/* Returns: (nullable): the bushing from one thread to the other. */
static const SwFitting *
bushing_to (const SwCatalogue *catalogue, double from_m, double to_m)
{
  const SwFitting *row;

  for (guint i = 0; (row = sw_catalogue_nth_fitting (catalogue, i)) != NULL; i++) {
    if (is_bushing (row, from_m) && fabs (row->inside_m - to_m) < SAME_M)
      return row;
  }
  return NULL;
}

/* None, one or two bushings from the thread of the top flange to the stub's. */
static gboolean
reduce (SwFittings *fittings, const SwCatalogue *catalogue, double to_m)
{
  double from_m = fittings->top_flange->inside_m;
  const SwFitting *first, *second;

  if (fabs (from_m - to_m) < SAME_M)
    return TRUE;
  first = bushing_to (catalogue, from_m, to_m);
  if (first != NULL) {
    fittings->reducers[fittings->n_reducers++] = first;
    return TRUE;
  }
  for (guint i = 0; (first = sw_catalogue_nth_fitting (catalogue, i)) != NULL; i++) {
    second = is_bushing (first, from_m) ? bushing_to (catalogue, first->inside_m, to_m) : NULL;
    if (second == NULL)
      continue;
    fittings->reducers[0] = first;
    fittings->reducers[1] = second;
    fittings->n_reducers = 2;
    return TRUE;
  }
  return FALSE;
}

static void
init_stub (SwFittings *fittings, const SwCatalogue *catalogue)
{
  const SwFitting *flange = fittings->post_top.flange;

  fittings->top_flange = threaded_partner (catalogue, flange);
  fittings->shares_bolts = fittings->top_flange != NULL && fittings->top_flange == flange;
  if (fittings->stub == NULL || fittings->top_flange == NULL)
    return;
  const SwFitting *thread = thread_for (catalogue, fittings->stub);
  if (thread == NULL)
    fittings->stub_connector = connector_for (catalogue, fittings->stub);
  if (thread == NULL && fittings->stub_connector == NULL)
    return;
  fittings->stub_held =
    reduce (fittings,
            catalogue,
            thread != NULL ? thread->inside_m : fittings->stub_connector->outside_m);
}

gboolean
sw_fittings_hold_stub (const SwCatalogue *catalogue, const SwPipe *post, const SwPipe *stub)
{
  SwFittings fittings = { .post = post, .stub = stub };

  fittings.post_top = sw_fittings_end (catalogue, post);
  init_stub (&fittings, catalogue);
  return fittings.stub_held;
}

double
sw_fittings_through_grommet_m (const SwFittings *fittings)
{
  const SwHook *hook = fittings->hook;

  return hook != NULL && hook->form == SW_HOOK_OPEN ? hook->diameter_m : SW_CABLE_TIE_M;
}

void
sw_fittings_init (SwFittings *fittings, const SwDesign *design, const SwCatalogue *catalogue)
{
  const SwStand *stand = &design->stand;
  gboolean stub = design->topper.kind == SW_TOPPER_STAR && design->topper.stub_m > 0;

  *fittings = (SwFittings){ .post = sw_catalogue_pipe (catalogue, stand->post),
                            .sleeve = sw_catalogue_pipe (catalogue, stand->sleeve),
                            .hook = sw_catalogue_hook (catalogue, design->crown.hook) };
  fittings->post_top = sw_fittings_end (catalogue, fittings->post);
  if (stand->foot != SW_FOOT_SOCKET && stand->arm_m > 0)
    fittings->sleeve_foot = sw_fittings_end (catalogue, fittings->sleeve);
  if (stub) {
    fittings->stub = sw_catalogue_pipe (catalogue, design->topper.stub);
    init_stub (fittings, catalogue);
  }
  if (fittings->stub != NULL)
    fittings->u_bolt =
      tightest (catalogue, SW_FITTING_U_BOLT, fittings->stub->od_m, clamps_tube);
  fittings->grommet = tightest (catalogue,
                                SW_FITTING_GROMMET,
                                sw_fittings_through_grommet_m (fittings),
                                lets_through);
}

static double
last_engagement_m (const SwFittings *fittings)
{
  if (fittings->stub_connector != NULL)
    return fittings->stub_connector->engagement_m;
  if (fittings->n_reducers > 0)
    return fittings->reducers[fittings->n_reducers - 1]->engagement_m;
  return fittings->top_flange->engagement_m;
}

double
sw_fittings_stack_m (const SwFittings *fittings)
{
  if (!fittings->stub_held)
    return 0;
  double stack_m = fittings->top_flange->height_m;
  for (guint i = 0; i < fittings->n_reducers; i++)
    stack_m += fittings->reducers[i]->height_m;
  if (fittings->stub_connector != NULL)
    stack_m += fittings->stub_connector->height_m;
  return stack_m;
}

double
sw_fittings_stub_end_m (const SwFittings *fittings)
{
  return fittings->stub_held ? sw_fittings_stack_m (fittings) - last_engagement_m (fittings)
                             : 0;
}
