// SPDX-License-Identifier: GPL-3.0-or-later
/* cuts.h: what a design cuts out of pipe and lumber.
 *
 * A run longer than its stock is made of equal parts that are joined; the post of whole lengths
 * from the ground up, so that no joint stands low; an arc of ring pipe with a longer first or
 * last piece, so that no joint falls on a mark or a tie. Pieces of one catalogue id share their
 * stock; the post's id is bought in stand.post_stock_m, others in their usual length or, where
 * shops cut it, in just enough whole steps; lumber in the shortest length sold that holds a
 * board. An unknown id cuts nothing.
 */
#pragma once
#include "engine/catalogue.h"
#include "engine/cut-plan.h"
#include "engine/design.h"
#include "engine/height-chain.h"
#include "engine/ring-joints.h"

#define SW_PIPE_KERF_M 0.003    /* pipe cutter or thin wheel; common practice, no source */
#define SW_LUMBER_KERF_M 0.0032 /* 1/8 in, a usual saw blade; common practice, no source */

/* The runs of pipe and lumber, each in so many equal parts. Lengths are 0 where a run is not
 * there.
 */
typedef struct {
  SwFittings fittings;
  SwHeightChain heights;
  double post_m; /* cut length, all its pieces together */
  SwPostJoints joints;
  const SwPipe *joint_tube; /* nullable; sleeves a joint of the post */
  double joint_tube_m;
  double sleeve_m;
  double ring_m;  /* all round, or over the coverage */
  int ring_parts; /* a multiple of stand.ring_sections */
  gboolean ring_closed;
  SwRingJoints ring_joints;
  double spoke_m;
  double stub_m;
  const SwBoard *board; /* nullable; the one whose width comes nearest to arm_width_m */
  double board_m;       /* of one of the two crossed boards */
} SwRuns;

void sw_runs_init (SwRuns *runs, const SwDesign *design, const SwCatalogue *catalogue);

/* The length a pipe is bought in for this design. */
double sw_pipe_stock_m (const SwPipe *pipe, const SwDesign *design);

/* First fit: at once.
 * Returns: (transfer full) (element-type SwCutPlan), a plan a catalogue id.
 */
GPtrArray *sw_cuts_new (const SwDesign *design, const SwCatalogue *catalogue, GError **error);

/* Exact; where GLPK gives up, the first fit, which says itself that it is not proven.
 * Errors: G_IO_ERROR_CANCELLED.
 */
GPtrArray *sw_cuts_new_exact (const SwDesign *design,
                              const SwCatalogue *catalogue,
                              GCancellable *cancellable,
                              GError **error);
