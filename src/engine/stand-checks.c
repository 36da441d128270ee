// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/stand-checks.h"

#include "engine/stand-model.h"

#include <math.h>

/* Fb = 875 psi of No. 2 spruce-pine-fir, 1.6 for wind: NDS 2018, values from memory. */
#define BOARD_PA (875 * 6894.757 * 1.6)

/* Of lumber 1 1/2 in thick up to that width: size × flat use × wet service (NDS supplement
 * 2018, table 4A; values from memory). Wet service is 0.85 where Fb × size is over 1150 psi. */
static const struct {
  double width_m, times;
} lumber[] = {
  { 0.110, 1.5 * 1.10 * 0.85 }, /* 2x4 */
  { 0.150, 1.3 * 1.15 },        /* 2x6 */
  { 0.200, 1.2 * 1.15 },        /* 2x8 */
  { 0.250, 1.1 * 1.20 },        /* 2x10 */
  { 1.000, 1.0 * 1.20 },        /* 2x12 */
};

double
sw_board_strength_pa (double width_m)
{
  guint i = 0;

  while (i + 1 < G_N_ELEMENTS (lumber) && width_m > lumber[i].width_m)
    i++;
  return BOARD_PA * lumber[i].times;
}

/* The pull of a partial tree bends the post wherever the ring hangs. */
static SwPostLoad
load_on_post (const SwStandModel *model, double square)
{
  SwPostLoad load = sw_model_load (model, square);

  if (sw_model_ring_on_foot (model))
    load.crown_n += model->side_n;
  return load;
}

static SwGuyAnswer
guyed_answer (const SwStandModel *model, const SwPostLoad *load)
{
  SwGuyRig rig = sw_model_rig (model);

  return sw_guyed_post (load, &rig, model->post.ei);
}

typedef struct {
  double axial_n, guys_n, critical_n, moment_nm, amplifier;
} Column;

/* By what they take and what they are drawn tight with. */
static double
guys_n (const SwStandModel *model, const SwPostLoad *load)
{
  const SwGuys *guys = &model->design->guys;
  double held_n = sw_post_moment (load) / guys->height_m;

  return sw_guy_down_n (guys->count, held_n, guys->height_m / guys->radius_m) +
         guys->count * guys->pretension_n * guys->height_m /
           hypot (guys->height_m, guys->radius_m);
}

/* Strips press the crown down as hard as they pull. */
static double
hung_n (const SwStandModel *model, double square)
{
  double strip_n = model->gathered ? 0 : sw_model_strip_tension (model, square);
  double down_n =
    model->design->shape.strip_count * strip_n * cos (model->cone->lean_deg * G_PI / 180);

  return model->hanging_kg * SW_GRAVITY + down_n;
}

static double
critical_n (const SwStandModel *model, gboolean guyed)
{
  SwGuyRig rig = sw_model_rig (model);

  return sw_post_critical_n (model->post.ei,
                             model->design->shape.crown_height_m,
                             guyed ? &rig : NULL);
}

static Column
column_of (const SwStandModel *model, double square, gboolean guyed)
{
  SwPostLoad load = load_on_post (model, square);
  double pressed_n = guyed ? guys_n (model, &load) : 0;
  Column column = { .axial_n = hung_n (model, square) + pressed_n,
                    .guys_n = pressed_n,
                    .critical_n = critical_n (model, guyed) };

  if (guyed)
    column.moment_nm = guyed_answer (model, &load).post_moment_nm;
  else
    column.moment_nm = sw_post_moment (&load) + model->hanging_kg * SW_GRAVITY * model->lean_m;
  column.amplifier = column.axial_n < column.critical_n
                       ? 1 / (1 - column.axial_n / column.critical_n)
                       : INFINITY;
  return column;
}

static double
column_margin_of (const SwStandModel *model, double square, gboolean guyed)
{
  Column column = column_of (model, square, guyed);
  double stress_pa = column.moment_nm * column.amplifier / model->post.section_m3 +
                     column.axial_n / model->post.area_m2;

  if (isinf (column.amplifier))
    return 0;
  return sw_model_over (model->post.yield_pa, stress_pa) / SW_FACTOR_NEEDED;
}

static double
stub_stress_pa (const SwStandModel *model, double square)
{
  const SwTopper *topper = &model->design->topper;

  if (topper->kind != SW_TOPPER_STAR)
    return NAN;
  return square * model->wind->topper_n * (topper->stub_m + topper->height_m / 2) /
         model->stub.section_m3;
}

static double
board_margin (const SwStandModel *model, double square)
{
  double strength_pa = sw_board_strength_pa (model->design->stand.arm_width_m);

  return sw_model_over (strength_pa * model->lap_section_m3, sw_model_moment (model, square)) /
         SW_FACTOR_BOARD;
}

static double
does_not_apply (const SwStandModel *model, double square)
{
  return NAN;
}

static double
column_margin (const SwStandModel *model, double square)
{
  return column_margin_of (model, square, FALSE);
}

static double
column_margin_guyed (const SwStandModel *model, double square)
{
  return column_margin_of (model, square, TRUE);
}

static double
stub_margin (const SwStandModel *model, double square)
{
  return sw_model_over (model->stub.yield_pa, stub_stress_pa (model, square)) /
         SW_FACTOR_NEEDED;
}

static const struct {
  gsize offset; /* of its SwCheck */
  double needed;
  SwMargin unguyed, guyed;
} rows[] = {
  { G_STRUCT_OFFSET (SwStandChecks, board), SW_FACTOR_BOARD, board_margin, does_not_apply },
  { G_STRUCT_OFFSET (SwStandChecks, column),
    SW_FACTOR_NEEDED,
    column_margin,
    column_margin_guyed },
  { G_STRUCT_OFFSET (SwStandChecks, stub), SW_FACTOR_NEEDED, stub_margin, stub_margin },
};

static SwCheck *
check_at (SwStandChecks *checks, guint row)
{
  return (SwCheck *) (gpointer) ((char *) checks + rows[row].offset);
}

/* In a foot the sleeve stands on the boards and its upper end takes the moment at the ground;
 * in a socket it hangs below the ground, and the shear adds to it. */
static void
set_sleeve (SwStandChecks *checks, const SwStandModel *model)
{
  gboolean guyed = sw_model_guyed (model);
  SwPostLoad load = load_on_post (model, 1);
  SwGuyAnswer answer = guyed ? guyed_answer (model, &load) : (SwGuyAnswer){ 0 };
  double depth_m = model->design->stand.sleeve_depth_m;
  double moment_nm = guyed ? fabs (answer.base_moment_nm) : sw_post_moment (&load);
  double shear_n = guyed ? answer.base_shear_n : sw_post_shear (&load);

  checks->sleeve_moment_nm = moment_nm;
  checks->sleeve_shear_n = shear_n;
  checks->sleeve_lean_m = model->lean_m;
  checks->sleeve_top_n = checks->sleeve_bottom_n = NAN;
  if (!(depth_m > 0) || isnan (model->lean_m))
    return;
  double couple_n = moment_nm / depth_m;
  checks->sleeve_top_n = couple_n + (sw_model_in_socket (model) ? shear_n : 0);
  checks->sleeve_bottom_n = fabs (checks->sleeve_top_n - shear_n);
}

void
sw_stand_checks_init (SwStandChecks *checks, const SwStandModel *model)
{
  gboolean guyed = sw_model_guyed (model);
  Column column = column_of (model, 1, guyed);

  *checks = (SwStandChecks){ .column_axial_n = column.axial_n,
                             .column_guys_n = column.guys_n,
                             .column_moment_nm = column.moment_nm,
                             .column_critical_n = column.critical_n,
                             .column_amplifier = column.amplifier,
                             .lap_m = model->lap_m,
                             .stub_stress_pa = stub_stress_pa (model, 1) };
  checks->board_stress_pa = sw_model_moment (model, 1) / model->lap_section_m3;
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    check_at (checks, i)->factor =
      rows[i].needed * (guyed ? rows[i].guyed : rows[i].unguyed) (model, 1);
  set_sleeve (checks, model);
}

void
sw_stand_checks_limit (SwStandChecks *checks, const SwStandModel *model)
{
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    SwCheck *check = check_at (checks, i);
    check->limit_unguyed_mps = check->limit_mps = sw_gust_limit_of (model, rows[i].unguyed);
    if (sw_model_guyed (model))
      check->limit_mps = sw_gust_limit_of (model, rows[i].guyed);
  }
}

double
sw_stand_checks_least_mps (const SwStandChecks *checks, gboolean guyed)
{
  const SwCheck *all[] = { &checks->board, &checks->column, &checks->stub };
  double least_mps = SW_GUST_MOST_MPS;

  for (guint i = 0; i < G_N_ELEMENTS (all); i++)
    least_mps = fmin (least_mps, guyed ? all[i]->limit_mps : all[i]->limit_unguyed_mps);
  return least_mps;
}
