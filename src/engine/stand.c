// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/stand.h"

#include "engine/cuts.h"
#include "engine/ring-load.h"
#include "engine/stand-model.h"

#include <glib/gi18n.h>
#include <math.h>

#define PSF_PER_FT_PA 157.0874606 /* lbf/ft² a foot of depth, in Pa a metre */

const char *const sw_limit_words[] = { "none", "tipping", "sliding", "socket",
                                       "post", "guy",     "stake",   "ring" };

const char *const sw_limit_labels[] = {
  [SW_LIMIT_NONE] = N_ ("nothing"),
  [SW_LIMIT_TIPPING] = N_ ("the foot tips"),
  [SW_LIMIT_SLIDING] = N_ ("the foot slides"),
  [SW_LIMIT_SOCKET] = N_ ("the socket is not deep enough"),
  [SW_LIMIT_POST] = N_ ("the post bends too far"),
  [SW_LIMIT_GUY] = N_ ("a guy line is too weak"),
  [SW_LIMIT_STAKE] = N_ ("a stake pulls out"),
  [SW_LIMIT_RING] = N_ ("a ring tie pulls out"),
};

/* IBC table 1806.2, lateral bearing; an unknown soil is taken as the weakest of them. Doubled
 * for a single pole that may move half an inch (IBC 1806.3.4).
 */
static const double soil_psf_per_ft[] = { [SW_SOIL_UNKNOWN] = 100,
                                          [SW_SOIL_CLAY] = 100,
                                          [SW_SOIL_SAND] = 150,
                                          [SW_SOIL_GRAVEL] = 200 };

double
sw_soil_pa_per_m (SwSoil soil)
{
  return 2 * soil_psf_per_ft[soil] * PSF_PER_FT_PA;
}

gboolean
sw_model_on_foot (const SwStandModel *model)
{
  return model->design->stand.foot != SW_FOOT_SOCKET;
}

gboolean
sw_model_in_socket (const SwStandModel *model)
{
  return !sw_model_on_foot (model);
}

gboolean
sw_model_ring_on_foot (const SwStandModel *model)
{
  return model->design->stand.ring_held_by == SW_HELD_BY_FOOT;
}

gboolean
sw_model_guyed (const SwStandModel *model)
{
  return model->design->guys.count >= 3 && model->design->guys.height_m > 0 &&
         model->design->guys.radius_m > 0;
}

SwPostLoad
sw_model_load (const SwStandModel *model, double square)
{
  const SwShape *shape = &model->design->shape;
  double half_n = square * model->wind->strips_n / 2;

  return (SwPostLoad){
    .crown_n = half_n + (sw_model_ring_on_foot (model) ? 0 : model->side_n),
    .crown_m = shape->crown_height_m,
    .star_n = square * model->wind->topper_n,
    .star_m =
      shape->crown_height_m + model->design->topper.stub_m + model->design->topper.height_m / 2,
    .post_n = square * model->wind->post_n,
    .ring_n = sw_model_ring_on_foot (model) ? half_n : 0,
    .ring_m = shape->ring_height_m,
  };
}

static double
shear_at (const SwStandModel *model, double square)
{
  return square * model->wind->base_shear_n;
}

double
sw_model_moment (const SwStandModel *model, double square)
{
  return square * model->wind->wind_moment_nm + model->wind->base_moment_nm -
         model->wind->wind_moment_nm;
}

double
sw_model_over (double strength, double demand)
{
  return demand <= 0 ? INFINITY : strength / demand; /* NAN stays NAN */
}

double
sw_model_tipping (const SwStandModel *model, double square)
{
  return sw_model_over (model->foot_mass_kg * SW_GRAVITY * model->lever_m,
                        sw_model_moment (model, square));
}

double
sw_model_sliding (const SwStandModel *model, double square)
{
  return sw_model_over (model->design->stand.friction * model->foot_mass_kg * SW_GRAVITY,
                        shear_at (model, square));
}

double
sw_model_post_stress (const SwStandModel *model, double square)
{
  return sw_model_moment (model, square) / model->post.section_m3;
}

double
sw_model_socket_needed (const SwStandModel *model, double square)
{
  double force_n =
    shear_at (model, square) + (sw_model_ring_on_foot (model) ? 0 : model->side_n);

  if (!(force_n > 0))
    return 0;
  return sw_socket_depth (force_n,
                          sw_model_moment (model, square) / force_n,
                          model->design->stand.socket_diameter_m,
                          sw_soil_pa_per_m (model->design->site.soil));
}

SwGuyRig
sw_model_rig (const SwStandModel *model)
{
  const SwGuys *guys = &model->design->guys;

  return (SwGuyRig){ guys->count,       guys->height_m,     guys->radius_m,
                     guys->stiffness_n, guys->pretension_n, model->guys_pulling };
}

SwGuyAnswer
sw_model_guys (const SwStandModel *model, double square)
{
  SwGuyRig rig = sw_model_rig (model);
  SwPostLoad load = sw_model_load (model, square);

  return sw_guyed_post (&load, &rig, model->post.ei);
}

SwStripLine
sw_strip_line_of (const SwDesign *design, const SwCone *cone)
{
  const SwStrip *strip = &design->strip;
  double longest_m = strip->tie_length_m * (strip->tie_stretch_max - 1);
  double stretched_m = strip->tie_n_per_m > 0 ? strip->tension_n / strip->tie_n_per_m : 0;

  return (SwStripLine){ strip->tension_n,
                        strip->tie_n_per_m,
                        MAX (longest_m - stretched_m, 0),
                        cone->slant_m };
}

/* The strip that faces the wind broadside. */
double
sw_model_strip_tension (const SwStandModel *model, double square)
{
  SwStripLine line = sw_strip_line_of (model->design, model->cone);
  double wind_n_per_m =
    square * model->wind->pressure_pa * SW_WIND_CF_STRIP * model->design->strip.width_m;

  return sw_strip_tension (&line, wind_n_per_m);
}

SwRingAnswer
sw_model_ring (const SwStandModel *model, double tension_n)
{
  return sw_ring_load_answer (model->design,
                              model->cone,
                              &model->ring,
                              model->design->stand.ring_ties,
                              tension_n);
}

/* Bending alone: where an evenly pulled ring bends most, at a tie, it is not twisted. */
static double
ring_stress (const SwStandModel *model, const SwRingAnswer *answer)
{
  return answer->moment_nm / model->ring.section_m3;
}

static double
foot_mass_kg (const SwStandModel *model)
{
  const SwDesign *design = model->design;
  const SwShape *shape = &design->shape;
  double strips_kg = shape->strip_count * design->strip.mass_kg_per_m * model->cone->slant_m;
  double star_kg = design->topper.kind == SW_TOPPER_STAR ? design->topper.mass_kg : 0;
  double mass = design->stand.ballast_kg + model->post.mass_kg_per_m * shape->crown_height_m +
                design->crown.mass_kg + star_kg + strips_kg;

  if (sw_model_ring_on_foot (model))
    mass += model->ring.mass_kg_per_m * 2 * G_PI * shape->ring_radius_m *
            (design->stand.ring_span == SW_SPAN_ARC ? shape->coverage_deg / 360 : 1);
  return mass;
}

static void
set_foot (SwSupport *support, const SwStandModel *model)
{
  const SwDesign *design = model->design;
  double down_n = design->shape.strip_count * design->strip.tension_n *
                  cos (model->cone->lean_deg * G_PI / 180);

  support->foot_mass_kg = support->foot_lever_m = support->tipping_factor = NAN;
  support->tipping_factor_held = support->sliding_factor = support->socket_depth_needed_m = NAN;
  if (sw_model_in_socket (model)) {
    support->socket_depth_needed_m = sw_model_socket_needed (model, 1);
    return;
  }
  support->foot_mass_kg = model->foot_mass_kg;
  support->foot_lever_m = model->lever_m;
  support->tipping_factor = sw_model_tipping (model, 1);
  support->sliding_factor = sw_model_sliding (model, 1);
  if (!sw_model_ring_on_foot (model))
    support->tipping_factor_held =
      support->tipping_factor +
      sw_model_over (down_n * model->lever_m, sw_model_moment (model, 1));
}

/* A mass on a cantilever: √(3EI/mL³)/2π; of the post itself 33/140 count (Rayleigh; Thomson,
 * Theory of Vibration). */
static double
first_frequency (const SwStandModel *model)
{
  const SwDesign *design = model->design;
  double l = design->shape.crown_height_m;
  double star_kg = design->topper.kind == SW_TOPPER_STAR ? design->topper.mass_kg : 0;
  double strips_kg =
    design->shape.strip_count * design->strip.mass_kg_per_m * model->cone->slant_m / 2;
  double mass =
    design->crown.mass_kg + star_kg + strips_kg + 33.0 / 140 * model->post.mass_kg_per_m * l;

  return sqrt (3 * model->post.ei / (mass * l * l * l)) / (2 * G_PI);
}

static void
set_post (SwSupport *support, const SwStandModel *model)
{
  SwPostLoad load = sw_model_load (model, 1);

  support->post_stress_pa = sw_model_post_stress (model, 1);
  support->post_factor = sw_model_over (model->post.yield_pa, support->post_stress_pa);
  support->tip_deflection_m = sw_post_deflection (&load, model->post.ei, load.crown_m);
  support->side_pull_n = model->side_n;
  support->first_hz = first_frequency (model);
}

static void
set_guys (SwSupport *support, const SwStandModel *model)
{
  const SwGuys *guys = &model->design->guys;

  support->guy_tension_n = support->guy_factor = support->stake_factor = NAN;
  support->guyed_post_stress_pa = support->guyed_base_shear_n = NAN;
  if (!sw_model_guyed (model))
    return;
  SwGuyAnswer answer = sw_model_guys (model, 1);
  support->guy_tension_n = answer.tension_n;
  support->guy_factor = sw_model_over (guys->break_n * guys->end_efficiency, answer.tension_n);
  support->stake_factor = sw_model_over (guys->stake_hold_n, answer.tension_n);
  support->guyed_post_stress_pa = answer.post_moment_nm / model->post.section_m3;
  support->guyed_base_shear_n = answer.base_shear_n;
}

static void
set_ring (SwSupport *support, const SwStandModel *model)
{
  const SwRingAnswer *still = &model->ring_still;
  double still_n = model->design->strip.tension_n;

  support->strip_tension_n = sw_model_strip_tension (model, 1);
  double more = still_n > 0 ? support->strip_tension_n / still_n : NAN;
  support->ring_lift_m = still->lift_m;
  support->ring_stress_pa = ring_stress (model, still);
  support->ring_tie_n = still->tie_n;
  support->ring_tie_gust_n = still->tie_n * more;
  support->ring_stress_gust_pa = support->ring_stress_pa * more;
}

/* Forces at no wind can't be scaled: the limits then start from a breath of wind. */
static SwWind
wind_to_scale (const SwWind *wind,
               SwDesign *design,
               const SwCone *cone,
               const SwCatalogue *catalogue)
{
  SwWind scaled = *wind;

  if (design->site.gust_mps >= 1)
    return scaled;
  design->site.gust_mps = 1;
  sw_wind_init (&scaled, design, cone, catalogue);
  return scaled;
}

static void
set_at_gust (SwSupport *support, const SwStandModel *model)
{
  set_foot (support, model);
  set_post (support, model);
  set_guys (support, model);
  set_ring (support, model);
}

/* The mass that presses the post down: what hangs from the crown and the post itself. */
static double
hanging_kg (const SwStandModel *model)
{
  const SwStand *setup = &model->design->stand;
  double ring_kg = sw_model_ring_on_foot (model)
                     ? model->ring.mass_kg_per_m * sw_ring_length_m (model->design)
                     : 0;

  return model->foot_mass_kg - setup->ballast_kg - ring_kg;
}

/* Boards are as thick as the ones nearest in width; half is left at the lap. */
static void
set_lap (SwStandModel *model, const SwStandGiven *given)
{
  SwRuns runs;

  sw_runs_init (&runs, given->design, given->catalogue);
  model->lap_m = runs.board == NULL ? NAN : runs.board->thickness_m / 2;
  model->lap_section_m3 = given->design->stand.arm_width_m * model->lap_m * model->lap_m / 6;
}

/* Play lets the post turn until it touches the sleeve at both ends. */
static double
lean_m (const SwStandGiven *given)
{
  const SwStand *setup = &given->design->stand;
  const SwPipe *post = sw_catalogue_pipe (given->catalogue, setup->post);
  const SwPipe *sleeve = sw_catalogue_pipe (given->catalogue, setup->sleeve);

  if (post == NULL || sleeve == NULL)
    return NAN;
  double play_m = MAX (sleeve->id_m - post->od_m, 0);
  return MIN (play_m / MAX (setup->sleeve_depth_m, 1e-6), 1) *
         given->design->shape.crown_height_m;
}

void
sw_stand_model_init (SwStandModel *model, const SwStandGiven *given)
{
  const SwDesign *design = given->design;
  const SwStand *setup = &design->stand;

  *model =
    (SwStandModel){ .design = design,
                    .cone = given->cone,
                    .wind = given->wind,
                    .post = sw_tube_of (sw_catalogue_pipe (given->catalogue, setup->post)),
                    .ring = sw_tube_of (sw_catalogue_pipe (given->catalogue, setup->ring_pipe)),
                    .side_n = sw_wind_side_pull (design, given->cone),
                    .lever_m = (setup->arm_m + setup->arm_width_m / 2) / sqrt (2) };
  model->stub = sw_tube_of (sw_catalogue_pipe (given->catalogue, design->topper.stub));
  model->foot_mass_kg = foot_mass_kg (model);
  model->hanging_kg = hanging_kg (model);
  model->lean_m = lean_m (given);
  set_lap (model, given);
  model->ring_still = sw_model_ring (model, design->strip.tension_n);
  model->guys_pulling =
    sw_model_guyed (model) ? sw_guy_least_pulling (design->guys.count) : NAN;
}

gboolean
sw_support_init (SwSupport *support,
                 const SwDesign *design,
                 const SwCone *cone,
                 const SwWind *wind,
                 const SwCatalogue *catalogue,
                 GError **error)
{
  SwStandModel model;

  sw_stand_model_init (&model, &(SwStandGiven){ design, cone, wind, catalogue });
  *support = (SwSupport){ 0 };
  set_at_gust (support, &model);
  sw_stand_checks_init (&support->checks, &model);
  g_autoptr (SwDesign) breath = sw_design_copy (design);
  SwWind scaled = wind_to_scale (wind, breath, cone, catalogue);
  model.design = breath;
  model.wind = &scaled;
  sw_gust_limits (support, &model);
  return TRUE;
}
