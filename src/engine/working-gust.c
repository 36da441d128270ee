// SPDX-License-Identifier: GPL-3.0-or-later
/* working-gust.c: the gust limits. Tipping and sliding have a formula; the others were found by
 * halving, and the tree solved at the limit shows that what gives has just its factor there.
 */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define ONE_MPS "the same formulas at a gust of 1 m/s"
#define AT_LIMIT "the tree solved once more at the limit"
#define CHOICE "statics; factor needed by common practice"

/* The wind alone, without a partial tree's side pull, at 1 m/s. */
static SwWind
breath (const SwSolution *s)
{
  g_autoptr (SwDesign) design = sw_design_copy (s->design);
  SwWind wind;

  design->site.gust_mps = 1;
  sw_wind_init (&wind, design, &s->cone, s->catalogue);
  return wind;
}

static double
moment_at_1_mps_nm (const SwSolution *s)
{
  return breath (s).wind_moment_nm;
}

static double
shear_at_1_mps_n (const SwSolution *s)
{
  return breath (s).base_shear_n;
}

/* What of the tree's answers at another gust; NAN where it can't be solved. */
static double
support_at (const SwSolution *s, double gust_mps, gsize offset)
{
  g_autoptr (SwDesign) design = sw_design_copy (s->design);

  design->site.gust_mps = gust_mps;
  g_autoptr (SwSolution) solution = sw_solution_new_bare (design, s->catalogue, NULL);
  if (solution == NULL)
    return NAN;
  return *(const double *) (gconstpointer) ((const char *) &solution->support + offset);
}

#define UNGUYED(field)                                                                         \
  support_at (s, s->support.gust_limit_unguyed_mps, G_STRUCT_OFFSET (SwSupport, field))
#define GUYED(field)                                                                           \
  support_at (s, s->support.gust_limit_guyed_mps, G_STRUCT_OFFSET (SwSupport, field))

static double
post_stress_then_pa (const SwSolution *s)
{
  return UNGUYED (post_stress_pa);
}

static double
socket_depth_then_m (const SwSolution *s)
{
  return UNGUYED (socket_depth_needed_m);
}

static double
ring_tie_then_n (const SwSolution *s)
{
  return UNGUYED (ring_tie_gust_n);
}

static double
guyed_ring_tie_then_n (const SwSolution *s)
{
  return GUYED (ring_tie_gust_n);
}

static double
guy_tension_then_n (const SwSolution *s)
{
  return GUYED (guy_tension_n);
}

static double
guyed_stress_then_pa (const SwSolution *s)
{
  return GUYED (guyed_post_stress_pa);
}

static double
guyed_shear_then_n (const SwSolution *s)
{
  return GUYED (guyed_base_shear_n);
}

static double
step_mps (const SwSolution *s)
{
  return s->design->units == SW_UNITS_US ? 5 * 1609.344 / 3600 : 2;
}

/* What the checks beside the limit's own bear; far above any gust where none applies. */
static double
checks_limit_mps (const SwSolution *s)
{
  gboolean counted =
    isfinite (s->support.gust_limit_guyed_mps) && s->design->guys.stakes_tested;

  return MIN (sw_stand_checks_least_mps (&s->support.checks, counted), SW_GUST_MOST_MPS);
}

static const SwWorkingTerm terms[] = {
  { "checks_limit_mps",
    checks_limit_mps,
    0,
    N_ ("highest gust that the further checks of foot, post and star bear"),
    "the stand's checks, each halved to its limit" },
  { "factor_needed", NULL, SW_FACTOR_NEEDED, N_ ("factor for tipping, sliding, post"), CHOICE },
  { "rope_factor", NULL, SW_FACTOR_ROPE, N_ ("factor for rope"), CHOICE },
  { "stake_factor_needed", NULL, SW_FACTOR_STAKE, N_ ("factor for stakes and ties"), CHOICE },
  { "most_mps", NULL, SW_GUST_MOST_MPS, N_ ("as far as is looked"), "own choice" },
  { "moment_at_1_mps_nm", moment_at_1_mps_nm, 0, N_ ("wind's moment at 1 m/s"), ONE_MPS },
  { "shear_at_1_mps_n", shear_at_1_mps_n, 0, N_ ("wind's push at 1 m/s"), ONE_MPS },
  { "post_stress_then_pa",
    post_stress_then_pa,
    0,
    N_ ("post's stress at the limit"),
    AT_LIMIT },
  { "socket_depth_then_m", socket_depth_then_m, 0, N_ ("depth needed at the limit"), AT_LIMIT },
  { "ring_tie_then_n", ring_tie_then_n, 0, N_ ("a ring tie at the limit"), AT_LIMIT },
  { "guyed_ring_tie_then_n",
    guyed_ring_tie_then_n,
    0,
    N_ ("a ring tie at the limit"),
    AT_LIMIT },
  { "guy_tension_then_n", guy_tension_then_n, 0, N_ ("a guy's pull at the limit"), AT_LIMIT },
  { "guyed_stress_then_pa",
    guyed_stress_then_pa,
    0,
    N_ ("the guyed post's stress at the limit"),
    AT_LIMIT },
  { "guyed_shear_then_n",
    guyed_shear_then_n,
    0,
    N_ ("push at the pinned base at the limit"),
    AT_LIMIT },
  { "step_mps", step_mps, 0, N_ ("5 mph, or 2 m/s"), "own choice" },
};

/* The rows of a limit: what gives there. */
#define WHEN(what, which, condition)                                                           \
  static gboolean what (const SwSolution *s)                                                   \
  {                                                                                            \
    const SwSupport *support = &s->support;                                                    \
    return support->gust_limit_##which##_mps > 0 &&                                            \
           support->limit_reason_##which == SW_LIMIT_##condition;                              \
  }

WHEN (unguyed_tips, unguyed, TIPPING)
WHEN (unguyed_slides, unguyed, SLIDING)
WHEN (unguyed_socket, unguyed, SOCKET)
WHEN (unguyed_post, unguyed, POST)
WHEN (unguyed_ring, unguyed, RING)
WHEN (unguyed_nothing, unguyed, NONE)
WHEN (guyed_guy, guyed, GUY)
WHEN (guyed_stake, guyed, STAKE)
WHEN (guyed_post, guyed, POST)
WHEN (guyed_slides, guyed, SLIDING)
WHEN (guyed_ring, guyed, RING)
WHEN (guyed_nothing, guyed, NONE)

static gboolean
counts_guyed (const SwSolution *s)
{
  return isfinite (s->support.gust_limit_guyed_mps) && s->design->guys.stakes_tested;
}

#define ALL_LOOKED_AT N_ ("the least of all ways to fail; every one falls as the gust rises")
#define HALVED                                                                                 \
  N_ ("the least of all ways to fail, found by halving; the limit, put in, comes out")
#define NOTHING N_ ("nothing fails up to there")
#define STILL N_ ("it fails in still air")
#define TESTED N_ ("stakes count once each was pulled to what it must hold")

static const SwWorkingRow rows[] = {
  { .key = "support.gust_limit_unguyed_mps",
    .applies = unguyed_tips,
    .formula = "√((foot_mass_kg·gravity_mps2·foot_lever_m/factor_needed − base_moment_nm + "
               "wind_moment_nm)/moment_at_1_mps_nm)",
    .how = ALL_LOOKED_AT },
  { .key = "support.gust_limit_unguyed_mps",
    .applies = unguyed_slides,
    .formula = "√(friction·foot_mass_kg·gravity_mps2/factor_needed/shear_at_1_mps_n)",
    .how = ALL_LOOKED_AT },
  { .key = "support.gust_limit_unguyed_mps",
    .applies = unguyed_socket,
    .formula = "gust_limit_unguyed_mps·socket_depth_m/socket_depth_then_m",
    .how = HALVED },
  { .key = "support.gust_limit_unguyed_mps",
    .applies = unguyed_post,
    .formula = "gust_limit_unguyed_mps·post_yield_pa/(factor_needed·post_stress_then_pa)",
    .how = HALVED },
  { .key = "support.gust_limit_unguyed_mps",
    .applies = unguyed_ring,
    .formula = "gust_limit_unguyed_mps·tie_hold_n/(stake_factor_needed·ring_tie_then_n)",
    .how = HALVED },
  { .key = "support.gust_limit_unguyed_mps",
    .applies = unguyed_nothing,
    .formula = "most_mps",
    .how = NOTHING },
  { .key = "support.gust_limit_unguyed_mps", .formula = "0", .how = STILL },
  { .key = "support.gust_limit_guyed_mps",
    .applies = guyed_guy,
    .formula = "gust_limit_guyed_mps·break_n·end_efficiency/(rope_factor·guy_tension_then_n)",
    .how = HALVED },
  { .key = "support.gust_limit_guyed_mps",
    .applies = guyed_stake,
    .formula = "gust_limit_guyed_mps·stake_hold_n/(stake_factor_needed·guy_tension_then_n)",
    .how = HALVED },
  { .key = "support.gust_limit_guyed_mps",
    .applies = guyed_post,
    .formula = "gust_limit_guyed_mps·post_yield_pa/(factor_needed·guyed_stress_then_pa)",
    .how = HALVED },
  { .key = "support.gust_limit_guyed_mps",
    .applies = guyed_slides,
    .formula = "gust_limit_guyed_mps·friction·foot_mass_kg·gravity_mps2/"
               "(factor_needed·guyed_shear_then_n)",
    .how = HALVED },
  { .key = "support.gust_limit_guyed_mps",
    .applies = guyed_ring,
    .formula = "gust_limit_guyed_mps·tie_hold_n/(stake_factor_needed·guyed_ring_tie_then_n)",
    .how = HALVED },
  { .key = "support.gust_limit_guyed_mps",
    .applies = guyed_nothing,
    .formula = "most_mps",
    .how = NOTHING },
  { .key = "support.gust_limit_guyed_mps", .formula = "0", .how = STILL },
  { .key = "support.gust_limit_mps",
    .applies = counts_guyed,
    .formula = "gust_limit_guyed_mps",
    .assumes = TESTED },
  { .key = "support.gust_limit_mps", .formula = "gust_limit_unguyed_mps", .assumes = TESTED },
  { .key = "support.take_down_gust_mps",
    .formula =
      "floor(min(0.8·gust_limit_mps, checks_limit_mps)/step_mps·(1 + 10^−12))·step_mps",
    .assumes = N_ ("gusts are stronger in places than they were forecast") },
};

const SwWorkingTable sw_working_gust = { terms,
                                         G_N_ELEMENTS (terms),
                                         rows,
                                         G_N_ELEMENTS (rows) };
