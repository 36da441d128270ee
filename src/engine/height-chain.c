// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/height-chain.h"

#include <math.h>

#define ROUNDING_M 1e-6 /* plans count whole micrometres */

const SwBoard *
sw_nearest_board (const SwCatalogue *catalogue, double width_m)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (catalogue, "board");
  const SwBoard *nearest = NULL;

  for (guint i = 0; i < ids->len; i++) {
    const SwBoard *board = sw_catalogue_board (catalogue, ids->pdata[i]);
    if (nearest == NULL || fabs (board->width_m - width_m) < fabs (nearest->width_m - width_m))
      nearest = board;
  }
  return nearest;
}

static void
init_foot (SwHeightChain *chain, const SwDesign *design, const SwCatalogue *catalogue)
{
  const SwStand *stand = &design->stand;

  if (stand->foot == SW_FOOT_SOCKET) {
    chain->foot_m = -MIN (stand->sleeve_depth_m, stand->socket_depth_m);
    return;
  }
  if (stand->arm_m > 0)
    chain->board = sw_nearest_board (catalogue, stand->arm_width_m);
  if (chain->board != NULL)
    chain->board_m = chain->board->thickness_m;
  if (stand->foot == SW_FOOT_BUCKET)
    chain->bucket_floor_m = SW_BUCKET_FLOOR_M;
  chain->foot_m = chain->board_m + chain->bucket_floor_m;
}

static double
sleeve_m (const SwStand *stand, const SwFittings *fittings)
{
  if (fittings->sleeve == NULL)
    return NAN;
  if (stand->foot == SW_FOOT_SOCKET)
    return stand->socket_depth_m;
  return MAX (0, stand->sleeve_depth_m - sw_pipe_end_m (&fittings->sleeve_foot));
}

/* From its end inside the fittings to behind the star. */
static void
init_stub (SwHeightChain *chain, const SwTopper *topper, const SwFittings *fittings)
{
  chain->stub_bare_m = chain->stub_m = NAN;
  if (fittings->stub == NULL)
    return;
  double above_plate_m = topper->stub_m - chain->hook_drop_m - chain->plate_m;
  chain->stub_bare_m = above_plate_m - sw_fittings_stack_m (fittings);
  chain->stub_m = MAX (0, above_plate_m - sw_fittings_stub_end_m (fittings) + SW_STUB_HOLD_M);
}

void
sw_height_chain_init (SwHeightChain *chain,
                      const SwDesign *design,
                      const SwFittings *fittings,
                      const SwCatalogue *catalogue)
{
  *chain = (SwHeightChain){ .flange_m = sw_pipe_end_m (&fittings->post_top),
                            .hook_drop_m = design->crown.hook_drop_m,
                            .plate_m = design->crown.plate_thickness_m };
  init_foot (chain, design, catalogue);
  chain->post_m = fittings->post == NULL ? NAN
                                         : design->shape.crown_height_m + chain->hook_drop_m -
                                             chain->flange_m - chain->foot_m;
  chain->sleeve_m = sleeve_m (&design->stand, fittings);
  init_stub (chain, &design->topper, fittings);
}

double
sw_height_chain_crown_m (const SwHeightChain *chain)
{
  return chain->foot_m + chain->post_m + chain->flange_m - chain->hook_drop_m;
}

void
sw_post_joints_init (SwPostJoints *joints, double post_m, double stock_m)
{
  int pieces = MAX (1, (int) ceil ((post_m - ROUNDING_M) / stock_m));
  double last_m = post_m - (pieces - 1) * stock_m;
  double short_by_m = pieces > 1 ? MAX (0, SW_POST_PIECE_LEAST_M - last_m) : 0;

  *joints = (SwPostJoints){ .pieces = pieces,
                            .stock_m = stock_m,
                            .next_to_last_m = stock_m - short_by_m,
                            .last_m = last_m + short_by_m,
                            .lowest_joint_m = NAN };
  if (pieces < 2)
    return;
  joints->lowest_joint_m = sw_post_piece_m (joints, 0);
  joints->in_lowest_third = joints->lowest_joint_m < post_m / 3 - ROUNDING_M;
}

double
sw_post_piece_m (const SwPostJoints *joints, int piece)
{
  if (piece == joints->pieces - 1)
    return joints->last_m;
  return piece == joints->pieces - 2 ? joints->next_to_last_m : joints->stock_m;
}

const SwPipe *
sw_joint_tube (const SwCatalogue *catalogue, const SwPipe *post)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (catalogue, "pipe");
  const SwPipe *best = NULL;

  for (guint i = 0; post != NULL && i < ids->len; i++) {
    const SwPipe *pipe = sw_catalogue_pipe (catalogue, ids->pdata[i]);
    if (pipe->material == SW_MATERIAL_PVC || pipe->id_m - post->od_m < SW_SLIDES_M)
      continue;
    if (best == NULL || pipe->id_m < best->id_m)
      best = pipe;
  }
  return best;
}

double
sw_joint_tube_m (const SwPipe *post)
{
  return 2 * 6 * post->od_m;
}

double
sw_lift_kg (const SwDesign *design,
            const SwCone *cone,
            const SwFittings *fittings,
            const SwHeightChain *chain)
{
  gboolean star = design->topper.kind == SW_TOPPER_STAR;
  double strips_kg = design->shape.strip_count * design->strip.mass_kg_per_m * cone->slant_m;
  double post_kg = fittings->post == NULL ? NAN : fittings->post->mass_kg_per_m * chain->post_m;
  double stub_kg = fittings->stub == NULL ? 0 : fittings->stub->mass_kg_per_m * chain->stub_m;

  return design->crown.mass_kg + strips_kg + post_kg + stub_kg +
         (star ? design->topper.mass_kg : 0);
}
