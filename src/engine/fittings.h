// SPDX-License-Identifier: GPL-3.0-or-later
/* fittings.h: which fittings join post, crown plate and star, chosen by true sizes.
 *
 * Post → (connector →) flange → crown plate → flange of the same size on the same four bolts →
 * bushings → (connector →) stub → U-bolt on the star; and the sleeve's flange on the boards.
 * Steel pipe and thick conduit are threaded; thin tube goes into a set-screw connector; other
 * round pipe into a flange with set screws. A pipe whose wall its thread would cut through is
 * not threaded, nor is PVC of schedule 40 (ASTM D1785).
 * What the catalogue has no fitting for stays NULL.
 */
#pragma once
#include "engine/catalogue.h"
#include "engine/design.h"

#define SW_REDUCERS_MOST 2
#define SW_CABLE_TIE_M 0.0048 /* wide; the usual tie of 50 lbf; common practice, no source */

/* How one end of a pipe is held. */
typedef struct {
  const SwFitting *flange;    /* nullable */
  const SwFitting *connector; /* nullable: between pipe and flange */
} SwPipeEnd;

typedef struct {
  const SwPipe *post, *sleeve, *stub; /* nullable: unknown id, no star, no stub */
  const SwHook *hook;                 /* nullable */
  SwPipeEnd post_top;                 /* under the crown plate */
  SwPipeEnd sleeve_foot;              /* on the boards; none in the ground */
  const SwFitting *top_flange;        /* on the crown plate, with a star */
  gboolean shares_bolts;              /* with the flange below */
  const SwFitting *reducers[SW_REDUCERS_MOST];
  guint n_reducers;
  const SwFitting *stub_connector; /* nullable */
  gboolean stub_held;              /* whether the chain reaches the stub */
  const SwFitting *u_bolt, *grommet;
} SwFittings;

void sw_fittings_init (SwFittings *fittings,
                       const SwDesign *design,
                       const SwCatalogue *catalogue);

/* What holds the end of such a pipe. */
SwPipeEnd sw_fittings_end (const SwCatalogue *catalogue, const SwPipe *pipe);

/* From what the flange stands on to the pipe's end inside; 0 without a flange. */
double sw_pipe_end_m (const SwPipeEnd *end);

/* From the plate's top to the top of the last fitting below the stub, and to the stub's end in
 * it. */
double sw_fittings_stack_m (const SwFittings *fittings);
double sw_fittings_stub_end_m (const SwFittings *fittings);

/* How wide that is what goes through the grommet: an open hook, or a cable tie. */
double sw_fittings_through_grommet_m (const SwFittings *fittings);

/* How deep a thread cuts into the pipe: 0.8 of its pitch. Source: ASME B1.20.1. */
double sw_thread_depth_m (const SwFitting *flange);

/* Whether a stub like that can stand on that post. */
gboolean sw_fittings_hold_stub (const SwCatalogue *catalogue,
                                const SwPipe *post,
                                const SwPipe *stub);
