// SPDX-License-Identifier: GPL-3.0-or-later
/* height-chain.h: how lengths add up from the ground to the crown, and so how long post, sleeve
 * and stub are cut; where a post of several lengths is joined; what there is to lift.
 *
 *   foot + post + flange − hook drop = crown height
 *
 * foot     where the post stands: on the crossed boards and the bucket's floor; in the ground
 * on a bolt across the sleeve, `sleeve_depth` below the ground flange   from the post's end to
 * the underside of the crown plate Drop and plate thickness are measured from the plate's
 * underside. Without a fitting that fits, the post is taken to reach the plate. Lengths of what
 * is not there, or not known, are NAN.
 */
#pragma once
#include "engine/cone.h"
#include "engine/fittings.h"

#define SW_BUCKET_FLOOR_M 0.0023 /* pails of 90 mil; common practice, no source */
#define SW_STUB_HOLD_M 0.10      /* stub behind the star, for two U-bolts; no source */

typedef struct {
  const SwBoard *board; /* nullable: no boards, or none in the catalogue */
  double board_m;       /* thickness where the boards cross: they lap flush */
  double bucket_floor_m;
  double foot_m; /* above ground; below it in a socket */
  double post_m;
  double flange_m;
  double hook_drop_m;
  double plate_m;     /* thickness */
  double sleeve_m;    /* cut length */
  double stub_m;      /* cut length, with what the star is clamped to */
  double stub_bare_m; /* between its fitting and the star's lower edge; negative: none left */
} SwHeightChain;

void sw_height_chain_init (SwHeightChain *chain,
                           const SwDesign *design,
                           const SwFittings *fittings,
                           const SwCatalogue *catalogue);

/* The sum: the crown's height again. */
double sw_height_chain_crown_m (const SwHeightChain *chain);

/* Returns: (nullable): the board of the catalogue whose width comes nearest. */
const SwBoard *sw_nearest_board (const SwCatalogue *catalogue, double width_m);

#define SW_POST_PIECE_LEAST_M 0.3 /* a shorter last piece is no piece; our own choice */

/* Where a post longer than its stock is joined: whole lengths from the ground up, so that the
 * lowest joint is as high as it can be. */
typedef struct {
  int pieces;
  double stock_m, next_to_last_m, last_m;
  double lowest_joint_m; /* above the post's foot; NAN without a joint */
  gboolean in_lowest_third;
} SwPostJoints;

void sw_post_joints_init (SwPostJoints *joints, double post_m, double stock_m);

/* Length of piece 0 (lowest) … pieces − 1. */
double sw_post_piece_m (const SwPostJoints *joints, int piece);

#define SW_SLIDES_M 0.0005 /* less play between pipes binds; common practice, no source */

/* Returns: (nullable): the tightest pipe that slides over the post, to sleeve its joints. */
const SwPipe *sw_joint_tube (const SwCatalogue *catalogue, const SwPipe *post);

/* Length of that tube: six diameters to each side; common practice, no source. */
double sw_joint_tube_m (const SwPipe *post);

/* Post, crown, strips, star and stub together: what is raised. */
double sw_lift_kg (const SwDesign *design,
                   const SwCone *cone,
                   const SwFittings *fittings,
                   const SwHeightChain *chain);
