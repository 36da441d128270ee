// SPDX-License-Identifier: GPL-3.0-or-later
/* solution.h: all that follows from a design. Made by one call, read-only, ref-counted.
 *
 * Every view, page and table reads a solution; none computes its own.
 */
#pragma once
#include "engine/as-built.h"
#include "engine/bom.h"
#include "engine/catalogue.h"
#include "engine/cone.h"
#include "engine/crown-plate.h"
#include "engine/cut-plan.h"
#include "engine/data-ports.h"
#include "engine/design.h"
#include "engine/feed-plan.h"
#include "engine/findings.h"
#include "engine/fit-chain.h"
#include "engine/fittings.h"
#include "engine/foot-build.h"
#include "engine/height-chain.h"
#include "engine/power-network.h"
#include "engine/ring-marks.h"
#include "engine/ring.h"
#include "engine/stand.h"
#include "engine/storm-plan.h"
#include "engine/strip-bow.h"
#include "engine/strip-points.h"
#include "engine/topper.h"
#include "engine/wind.h"
#include "engine/wiring.h"
#include "engine/zones.h"

struct SwSolution {
  SwDesign *design;             /* owned, shared: not to be changed */
  const SwCatalogue *catalogue; /* borrowed: what was given, or `own` over it */
  SwCatalogue *own;             /* owned, nullable: the rows that the design carries */
  double ring_od_m;             /* outer diameter of the ring pipe; 0 for an unknown id */
  double post_od_m;
  SwFittings fittings;
  SwHeightChain heights;
  SwFitChain fits;
  SwFootBuild foot;
  double lift_kg; /* post, crown, strips, star and stub; NAN with an unknown post */
  SwCone cone;
  GArray *marks;         /* owned: SwRingMark */
  GArray *crown;         /* owned: SwHole */
  SwAsBuilt *as_built;   /* owned, nullable: only when measured */
  GArray *topper_pixels; /* owned: SwPoint */
  SwPower power;
  SwWiring wiring;
  SwZones zones;
  SwFeedPlan feed_plan; /* `solved` FALSE in a bare solution */
  SwDataPlan data;
  SwWind wind;
  SwSupport support;
  SwStripBow bow;
  SwStormPlan storm;
  SwRing ring;
  GPtrArray *cuts; /* owned: SwCutPlan */
  GArray *bom;     /* owned: SwPart */
  double cost_to_pay;
  GArray *findings;  /* owned: SwFinding */
  gboolean remedied; /* the findings have their remedies */
};

/* Returns: (transfer full) (nullable).
 * Errors: what sw_design_check () refuses; SW_ERROR_RANGE for a measured ring that is none;
 *         SW_ERROR_NUMERIC. An unknown catalogue id is a `stop` finding, not an error.
 */
SwSolution *sw_solution_new (SwDesign *design, const SwCatalogue *catalogue, GError **error);

/* The same, but the findings are without remedies: for the moves of a drag. */
SwSolution *sw_solution_new_passing (SwDesign *design,
                                     const SwCatalogue *catalogue,
                                     GError **error);

/* The same without what only people read: no cuts, no parts, no findings (all NULL), no fewest
 * ties (NAN), no feed plan. */
SwSolution *sw_solution_new_bare (SwDesign *design,
                                  const SwCatalogue *catalogue,
                                  GError **error);

/* The same with exact cut plans. Waits for them. */
SwSolution *sw_solution_new_with_cuts (SwDesign *design,
                                       const SwCatalogue *catalogue,
                                       GCancellable *cancellable,
                                       GError **error);

SwSolution *sw_solution_ref (SwSolution *solution);
void sw_solution_unref (SwSolution *solution);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSolution, sw_solution_unref)
