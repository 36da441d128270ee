// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/storm-plan.h"

#include <math.h>

#define THICK_M 0.010 /* see the header */
#define SOLID 0.5

/* Strips and post in one circle. */
static double
bundle_m (const SwDesign *design, const SwCatalogue *catalogue)
{
  const SwPipe *post = sw_catalogue_pipe (catalogue, design->stand.post);
  double strips_m2 = design->shape.strip_count * design->strip.width_m * THICK_M / SOLID;

  return post == NULL ? NAN : sqrt (post->od_m * post->od_m + 4 / G_PI * strips_m2);
}

static void
gather (SwWind *wind, const SwDesign *design, double across_m)
{
  double height_m = design->shape.crown_height_m;
  double bundle_n = wind->pressure_pa * SW_WIND_CF_ROUND * across_m * height_m;
  double star_m = height_m + design->topper.stub_m + design->topper.height_m / 2;

  wind->post_n = MIN (bundle_n, wind->post_n + wind->strips_n);
  wind->strips_n = 0;
  wind->base_shear_n = wind->post_n + wind->topper_n;
  wind->wind_moment_nm = wind->post_n * height_m / 2 + wind->topper_n * star_m;
  wind->base_moment_nm = wind->wind_moment_nm;
}

static double
sustained_mps (double gust_mps, SwUnits units)
{
  double step_mps = units == SW_UNITS_US ? 1609.344 / 3600 : 1;

  return floor (gust_mps / SW_GUST_FACTOR / step_mps) * step_mps;
}

void
sw_gathered_init (SwGathered *gathered,
                  const SwDesign *design,
                  const SwCone *cone,
                  const SwCatalogue *catalogue)
{
  gathered->design = sw_design_copy (design);
  gathered->design->site.gust_mps = SW_GATHERED_MPS;
  sw_wind_init (&gathered->wind, gathered->design, cone, catalogue);
  gather (&gathered->wind, gathered->design, bundle_m (design, catalogue));
  sw_stand_model_init (&gathered->model,
                       &(SwStandGiven){ gathered->design, cone, &gathered->wind, catalogue });
  gathered->model.side_n = 0;
  gathered->model.gathered = TRUE;
}

void
sw_gathered_clear (SwGathered *gathered)
{
  sw_design_unref (gathered->design);
}

void
sw_storm_plan_init (SwStormPlan *plan,
                    const SwDesign *design,
                    const SwCone *cone,
                    const SwSupport *hung,
                    const SwCatalogue *catalogue)
{
  SwGathered tree;
  SwSupport support = { 0 };
  gboolean counted = design->guys.count >= 3 && design->guys.stakes_tested;

  *plan = (SwStormPlan){ .bundle_m = bundle_m (design, catalogue) };
  sw_gathered_init (&tree, design, cone, catalogue);
  sw_gust_limits (&support, &tree.model);
  plan->gathered_n = tree.wind.post_n * pow (design->site.gust_mps / SW_GATHERED_MPS, 2);
  sw_gathered_clear (&tree);

  plan->gathered_limit_mps = support.gust_limit_mps;
  plan->gathered_reason = support.limit_reason;
  plan->gathered_checks_mps = sw_stand_checks_least_mps (&support.checks, counted);
  plan->unhook_gust_mps = hung->take_down_gust_mps;
  plan->lower_gust_mps = MAX (support.take_down_gust_mps, hung->take_down_gust_mps);
  plan->unhook_sustained_mps = sustained_mps (plan->unhook_gust_mps, design->units);
  plan->lower_sustained_mps = sustained_mps (plan->lower_gust_mps, design->units);
}
