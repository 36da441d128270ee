// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/solution.h"

#include "engine/cuts.h"
#include "engine/own-rows.h"

/* SwSolution lives behind g_atomic_rc_box, like the design. */

static void
solution_clear (gpointer data)
{
  SwSolution *solution = data;

  g_clear_pointer (&solution->design, sw_design_unref);
  g_clear_pointer (&solution->marks, g_array_unref);
  g_clear_pointer (&solution->crown, g_array_unref);
  g_clear_pointer (&solution->as_built, sw_as_built_free);
  g_clear_pointer (&solution->topper_pixels, g_array_unref);
  sw_wiring_clear (&solution->wiring);
  sw_zones_clear (&solution->zones);
  sw_data_plan_clear (&solution->data);
  g_clear_pointer (&solution->cuts, g_ptr_array_unref);
  g_clear_pointer (&solution->bom, g_array_unref);
  g_clear_pointer (&solution->findings, g_array_unref);
  g_clear_pointer (&solution->own, sw_catalogue_free);
}

SwSolution *
sw_solution_ref (SwSolution *solution)
{
  return g_atomic_rc_box_acquire (solution);
}

void
sw_solution_unref (SwSolution *solution)
{
  g_atomic_rc_box_release_full (solution, solution_clear);
}

static double
pipe_od_m (const SwCatalogue *catalogue, const char *id)
{
  const SwPipe *pipe = sw_catalogue_pipe (catalogue, id);

  return pipe == NULL ? 0 : pipe->od_m;
}

static gboolean
solve_as_built (SwSolution *solution, GError **error)
{
  if (!sw_as_built_measured (solution->design))
    return TRUE;
  solution->as_built = sw_as_built_new (solution->design, solution->ring_od_m, error);
  return solution->as_built != NULL;
}

static gboolean
solve (SwSolution *solution, GError **error)
{
  const SwDesign *design = solution->design;
  const SwCatalogue *catalogue = solution->catalogue;

  solution->ring_od_m = pipe_od_m (catalogue, design->stand.ring_pipe);
  solution->post_od_m = pipe_od_m (catalogue, design->stand.post);
  sw_cone_init (&solution->cone, design);
  sw_fittings_init (&solution->fittings, design, catalogue);
  sw_height_chain_init (&solution->heights, design, &solution->fittings, catalogue);
  sw_fit_chain_init (&solution->fits, design, &solution->cone, &solution->fittings);
  sw_foot_build_init (&solution->foot,
                      design,
                      &solution->fittings,
                      &solution->heights,
                      catalogue);
  solution->lift_kg =
    sw_lift_kg (design, &solution->cone, &solution->fittings, &solution->heights);
  solution->marks = sw_ring_marks_new (&design->shape, solution->ring_od_m);
  solution->crown = sw_crown_plate_new (design);
  solution->topper_pixels = sw_topper_pixels (design);
  sw_power_init (&solution->power, design);
  sw_wiring_init (&solution->wiring, design, &solution->power);
  sw_zones_init (&solution->zones, design, &solution->power, &solution->wiring);
  sw_data_plan_init (&solution->data, design);
  sw_wind_init (&solution->wind, design, &solution->cone, catalogue);
  if (!solve_as_built (solution, error) || !sw_support_init (&solution->support,
                                                             design,
                                                             &solution->cone,
                                                             &solution->wind,
                                                             catalogue,
                                                             error))
    return FALSE;
  sw_strip_bow_init (&solution->bow, design, &solution->cone, solution->post_od_m);
  sw_storm_plan_init (&solution->storm, design, &solution->cone, &solution->support, catalogue);
  sw_ring_init (&solution->ring, design, &solution->cone, &solution->support, catalogue);
  return TRUE;
}

static gboolean
take_catalogue (SwSolution *solution, const SwCatalogue *catalogue, GError **error)
{
  JsonNode *rows = solution->design->own_rows;

  solution->catalogue = catalogue;
  if (rows == NULL)
    return TRUE;
  solution->own = sw_own_rows_over (rows, catalogue, error);
  solution->catalogue = solution->own;
  return solution->own != NULL;
}

SwSolution *
sw_solution_new_bare (SwDesign *design, const SwCatalogue *catalogue, GError **error)
{
  if (!sw_design_check (design, error))
    return NULL;

  g_autoptr (SwSolution) solution = g_atomic_rc_box_new0 (SwSolution);
  solution->design = sw_design_ref (design);
  return take_catalogue (solution, catalogue, error) && solve (solution, error)
           ? g_steal_pointer (&solution)
           : NULL;
}

/* Takes `cuts`, which may be NULL after an error. */
static SwSolution *
solution_finish (SwSolution *started, GPtrArray *cuts, gboolean with_remedies)
{
  g_autoptr (SwSolution) solution = started;

  if (cuts == NULL)
    return NULL;
  solution->cuts = cuts;
  solution->ring.fewest_ties =
    sw_ring_fewest_ties (solution->design, &solution->cone, solution->catalogue);
  sw_feed_plan_init (&solution->feed_plan, solution->design, &solution->power);
  solution->bom = sw_bom_new (solution);
  solution->cost_to_pay = sw_bom_to_pay (solution->bom);
  solution->findings = sw_findings_new (solution, with_remedies);
  solution->remedied = with_remedies;
  return g_steal_pointer (&solution);
}

static SwSolution *
solution_at_once (SwDesign *design,
                  const SwCatalogue *catalogue,
                  gboolean with_remedies,
                  GError **error)
{
  SwSolution *solution = sw_solution_new_bare (design, catalogue, error);

  if (solution == NULL)
    return NULL;
  return solution_finish (solution,
                          sw_cuts_new (design, solution->catalogue, error),
                          with_remedies);
}

SwSolution *
sw_solution_new (SwDesign *design, const SwCatalogue *catalogue, GError **error)
{
  return solution_at_once (design, catalogue, TRUE, error);
}

SwSolution *
sw_solution_new_passing (SwDesign *design, const SwCatalogue *catalogue, GError **error)
{
  return solution_at_once (design, catalogue, FALSE, error);
}

SwSolution *
sw_solution_new_with_cuts (SwDesign *design,
                           const SwCatalogue *catalogue,
                           GCancellable *cancellable,
                           GError **error)
{
  SwSolution *solution = sw_solution_new_bare (design, catalogue, error);

  if (solution == NULL)
    return NULL;
  return solution_finish (solution,
                          sw_cuts_new_exact (design, solution->catalogue, cancellable, error),
                          TRUE);
}
