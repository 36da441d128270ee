// SPDX-License-Identifier: GPL-3.0-or-later
/* working-limits.c: highest gusts beside those of working-gust.c: what boards, column and stub
 * bear, and the tree with its strips wound on the post.
 */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define AT_LIMIT "the tree solved once more at the limit"
#define GATHERED "strips wound on the post; the same formulas at a gust of 1 m/s"

/* The rows of a limit: 0, as far as is looked, or in between. */
static gboolean
is_most (double limit_mps)
{
  return limit_mps >= SW_GUST_MOST_MPS;
}

#define ENDS(name, limit)                                                                      \
  static gboolean name##_most (const SwSolution *s)                                            \
  {                                                                                            \
    return is_most (s->limit);                                                                 \
  }                                                                                            \
  static gboolean name##_none (const SwSolution *s)                                            \
  {                                                                                            \
    return !(s->limit > 0);                                                                    \
  }

ENDS (board, support.checks.board.limit_unguyed_mps)
ENDS (column, support.checks.column.limit_mps)
ENDS (bare_column, support.checks.column.limit_unguyed_mps)
ENDS (gathered, storm.gathered_limit_mps)

/* A star that faces no wind bends nothing. */
static gboolean
stub_most (const SwSolution *s)
{
  return is_most (s->support.checks.stub.limit_mps);
}

/* What the post's column bears at a gust, guys or none. */
static double
column_stress_pa (const SwSolution *s, double gust_mps, int guys)
{
  g_autoptr (SwDesign) design = sw_design_copy (s->design);

  design->site.gust_mps = gust_mps;
  design->guys.count = guys;
  g_autoptr (SwSolution) solution = sw_solution_new_bare (design, s->catalogue, NULL);
  SwTube post = sw_tube_of (s->fittings.post);
  return solution == NULL ? NAN : post.yield_pa / solution->support.checks.column.factor;
}

static double
column_stress_then_pa (const SwSolution *s)
{
  return column_stress_pa (s, s->support.checks.column.limit_mps, s->design->guys.count);
}

static double
bare_column_stress_then_pa (const SwSolution *s)
{
  return column_stress_pa (s, s->support.checks.column.limit_unguyed_mps, 0);
}

typedef double (*OfModel) (const SwStandModel *model, double square);

static double
of_gathered (const SwSolution *s, OfModel value, double gust_mps)
{
  SwGathered tree;

  sw_gathered_init (&tree, s->design, &s->cone, s->catalogue);
  double result = value (&tree.model, pow (gust_mps / SW_GATHERED_MPS, 2));
  sw_gathered_clear (&tree);
  return result;
}

static double
shear_n (const SwStandModel *model, double square)
{
  return square * model->wind->base_shear_n;
}

static double
guy_tension_n (const SwStandModel *model, double square)
{
  return sw_model_guys (model, square).tension_n;
}

static double
guyed_moment_nm (const SwStandModel *model, double square)
{
  return sw_model_guys (model, square).post_moment_nm;
}

static double
guyed_shear_n (const SwStandModel *model, double square)
{
  return sw_model_guys (model, square).base_shear_n;
}

static double
gathered_moment_at_1_mps_nm (const SwSolution *s)
{
  return of_gathered (s, sw_model_moment, 1);
}

static double
gathered_shear_at_1_mps_n (const SwSolution *s)
{
  return of_gathered (s, shear_n, 1);
}

static double
gathered_socket_then_m (const SwSolution *s)
{
  return of_gathered (s, sw_model_socket_needed, s->storm.gathered_limit_mps);
}

static double
gathered_guy_then_n (const SwSolution *s)
{
  return of_gathered (s, guy_tension_n, s->storm.gathered_limit_mps);
}

static double
gathered_moment_then_nm (const SwSolution *s)
{
  return of_gathered (s, guyed_moment_nm, s->storm.gathered_limit_mps);
}

static double
gathered_shear_then_n (const SwSolution *s)
{
  return of_gathered (s, guyed_shear_n, s->storm.gathered_limit_mps);
}

static double
gathered_checks_mps (const SwSolution *s)
{
  return s->storm.gathered_checks_mps;
}

static gboolean
counts_guyed (const SwSolution *s)
{
  return s->design->guys.count >= 3 && s->design->guys.stakes_tested;
}

static gboolean
gives_when (const SwSolution *s, SwLimitReason reason, gboolean guyed)
{
  return counts_guyed (s) == guyed && s->storm.gathered_reason == reason;
}

#define WHEN(name, reason, guyed)                                                              \
  static gboolean name (const SwSolution *s)                                                   \
  {                                                                                            \
    return gives_when (s, SW_LIMIT_##reason, guyed);                                           \
  }

WHEN (bare_tips, TIPPING, FALSE)
WHEN (bare_slides, SLIDING, FALSE)
WHEN (bare_socket, SOCKET, FALSE)
WHEN (bare_post, POST, FALSE)
WHEN (guyed_guy, GUY, TRUE)
WHEN (guyed_stake, STAKE, TRUE)
WHEN (guyed_post, POST, TRUE)

static const SwWorkingTerm terms[] = {
  { "column_stress_then_pa",
    column_stress_then_pa,
    0,
    N_ ("stress of the post as a column at the limit"),
    AT_LIMIT },
  { "bare_column_stress_then_pa",
    bare_column_stress_then_pa,
    0,
    N_ ("stress of the post as a column at the limit, without guys"),
    AT_LIMIT },
  { "gathered_moment_at_1_mps_nm",
    gathered_moment_at_1_mps_nm,
    0,
    N_ ("wind's moment with the strips wound on the post, at 1 m/s"),
    GATHERED },
  { "gathered_shear_at_1_mps_n",
    gathered_shear_at_1_mps_n,
    0,
    N_ ("wind's push with the strips wound on the post, at 1 m/s"),
    GATHERED },
  { "gathered_socket_then_m",
    gathered_socket_then_m,
    0,
    N_ ("depth needed at the limit"),
    AT_LIMIT },
  { "gathered_guy_then_n", gathered_guy_then_n, 0, N_ ("a guy's pull at the limit"), AT_LIMIT },
  { "gathered_moment_then_nm",
    gathered_moment_then_nm,
    0,
    N_ ("the guyed post's moment at the limit"),
    AT_LIMIT },
  { "gathered_shear_then_n",
    gathered_shear_then_n,
    0,
    N_ ("push at the pinned base at the limit"),
    AT_LIMIT },
  { "gathered_checks_mps",
    gathered_checks_mps,
    0,
    N_ ("highest gust that boards, column and stub bear with the strips wound on the post"),
    "the stand's checks, each halved to its limit" },
};

#define HALVED                                                                                 \
  N_ ("found by halving, as buckling has no short formula; the limit, put in, comes out")
#define WOUND                                                                                  \
  N_ ("strips wound on the post pull nothing; the least of all ways to fail, every one "       \
      "falling as the gust rises")
#define WOUND_HALVED                                                                           \
  N_ ("strips wound on the post pull nothing; the least of all ways to fail, found by "        \
      "halving; the limit, put in, comes out")
#define NOTHING N_ ("nothing fails up to there")
#define STILL N_ ("it fails in still air")

#define BOARD_LIMIT                                                                            \
  "√((board_strength_pa·arm_width_m·lap_m^2/6 − base_moment_nm + wind_moment_nm)/"       \
  "moment_at_1_mps_nm)"

static const SwWorkingRow rows[] = {
  { .key = "checks.board_limit_mps",
    .applies = board_most,
    .formula = "most_mps",
    .how = NOTHING },
  { .key = "checks.board_limit_mps", .applies = board_none, .formula = "0", .how = STILL },
  { .key = "checks.board_limit_mps", .formula = BOARD_LIMIT },
  { .key = "checks.board_limit_unguyed_mps",
    .applies = board_most,
    .formula = "most_mps",
    .how = NOTHING },
  { .key = "checks.board_limit_unguyed_mps",
    .applies = board_none,
    .formula = "0",
    .how = STILL },
  { .key = "checks.board_limit_unguyed_mps", .formula = BOARD_LIMIT },
  { .key = "checks.column_limit_mps",
    .applies = column_most,
    .formula = "most_mps",
    .how = NOTHING },
  { .key = "checks.column_limit_mps", .applies = column_none, .formula = "0", .how = STILL },
  { .key = "checks.column_limit_mps",
    .formula = "column_limit_mps·post_yield_pa/(factor_needed·column_stress_then_pa)",
    .how = HALVED },
  { .key = "checks.column_limit_unguyed_mps",
    .applies = bare_column_most,
    .formula = "most_mps",
    .how = NOTHING },
  { .key = "checks.column_limit_unguyed_mps",
    .applies = bare_column_none,
    .formula = "0",
    .how = STILL },
  { .key = "checks.column_limit_unguyed_mps",
    .formula =
      "column_limit_unguyed_mps·post_yield_pa/(factor_needed·bare_column_stress_then_pa)",
    .how = HALVED },
  { .key = "checks.stub_limit_mps",
    .applies = stub_most,
    .formula = "most_mps",
    .how = NOTHING },
  { .key = "checks.stub_limit_mps",
    .formula =
      "√(stub_yield_pa·stub_section_m3/(factor_needed·(topper.stub_m + "
      "topper.height_m/2)·0.613·kz·cf_star·solidity·topper.width_m·topper.height_m))" },

  { .key = "storm.gathered_limit_mps",
    .applies = gathered_most,
    .formula = "most_mps",
    .how = NOTHING },
  { .key = "storm.gathered_limit_mps", .applies = gathered_none, .formula = "0", .how = STILL },
  { .key = "storm.gathered_limit_mps",
    .applies = bare_tips,
    .formula = "√(foot_mass_kg·gravity_mps2·foot_lever_m/(factor_needed·"
               "gathered_moment_at_1_mps_nm))",
    .how = WOUND },
  { .key = "storm.gathered_limit_mps",
    .applies = bare_slides,
    .formula = "√(friction·foot_mass_kg·gravity_mps2/(factor_needed·"
               "gathered_shear_at_1_mps_n))",
    .how = WOUND },
  { .key = "storm.gathered_limit_mps",
    .applies = bare_post,
    .formula = "√(post_yield_pa·post_section_m3/(factor_needed·gathered_moment_at_1_mps_nm))",
    .how = WOUND },
  { .key = "storm.gathered_limit_mps",
    .applies = bare_socket,
    .formula = "gathered_limit_mps·socket_depth_m/gathered_socket_then_m",
    .how = WOUND_HALVED },
  { .key = "storm.gathered_limit_mps",
    .applies = guyed_guy,
    .formula = "gathered_limit_mps·break_n·end_efficiency/(rope_factor·gathered_guy_then_n)",
    .how = WOUND_HALVED },
  { .key = "storm.gathered_limit_mps",
    .applies = guyed_stake,
    .formula = "gathered_limit_mps·stake_hold_n/(stake_factor_needed·gathered_guy_then_n)",
    .how = WOUND_HALVED },
  { .key = "storm.gathered_limit_mps",
    .applies = guyed_post,
    .formula = "gathered_limit_mps·post_yield_pa·post_section_m3/"
               "(factor_needed·gathered_moment_then_nm)",
    .how = WOUND_HALVED },
  { .key = "storm.gathered_limit_mps",
    .formula = "gathered_limit_mps·friction·foot_mass_kg·gravity_mps2/"
               "(factor_needed·gathered_shear_then_n)",
    .how = WOUND_HALVED },
  { .key = "storm.lower_gust_mps",
    .formula = "max(unhook_gust_mps, floor(min(0.8·gathered_limit_mps, gathered_checks_mps)/"
               "step_mps·(1 + 10^−12))·step_mps)",
    .assumes = N_ ("gusts are stronger in places than they were forecast") },
};

const SwWorkingTable sw_working_limits = { terms,
                                           G_N_ELEMENTS (terms),
                                           rows,
                                           G_N_ELEMENTS (rows) };
