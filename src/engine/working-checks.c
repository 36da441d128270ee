// SPDX-License-Identifier: GPL-3.0-or-later
/* working-checks.c: boards, the post as a column, the star's stub, the sleeve. */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define PIPES "data/pipes.json"

static gboolean
is_guyed (const SwSolution *s)
{
  return s->design->guys.count >= 3;
}

static gboolean
holds_up (const SwSolution *s)
{
  return isfinite (s->support.checks.column_amplifier);
}

static gboolean
in_socket (const SwSolution *s)
{
  return s->design->stand.foot == SW_FOOT_SOCKET;
}

static SwTube
stub_of (const SwSolution *s)
{
  return sw_tube_of (sw_catalogue_pipe (s->catalogue, s->design->topper.stub));
}

static double
stub_section_m3 (const SwSolution *s)
{
  return stub_of (s).section_m3;
}

static double
stub_yield_pa (const SwSolution *s)
{
  return stub_of (s).yield_pa;
}

static double
post_area_m2 (const SwSolution *s)
{
  return sw_tube_of (sw_catalogue_pipe (s->catalogue, s->design->stand.post)).area_m2;
}

static double
board_strength_pa (const SwSolution *s)
{
  return sw_board_strength_pa (s->design->stand.arm_width_m);
}

static double
lap_m (const SwSolution *s)
{
  return s->support.checks.lap_m;
}

static double
column_moment_nm (const SwSolution *s)
{
  return s->support.checks.column_moment_nm;
}

static double
column_guys_n (const SwSolution *s)
{
  return s->support.checks.column_guys_n;
}

/* Sideways, of those that pull whichever way the wind blows. */
static double
guys_n_per_m (const SwSolution *s)
{
  const SwGuys *guys = &s->design->guys;
  double length_m = hypot (guys->height_m, guys->radius_m);

  return guys->stiffness_n / length_m * pow (guys->radius_m / length_m, 2) *
         sw_guy_least_pulling (guys->count);
}

static double
sleeve_play_m (const SwSolution *s)
{
  const SwPipe *post = sw_catalogue_pipe (s->catalogue, s->design->stand.post);
  const SwPipe *sleeve = sw_catalogue_pipe (s->catalogue, s->design->stand.sleeve);

  return post == NULL || sleeve == NULL ? NAN : MAX (sleeve->id_m - post->od_m, 0);
}

static double
sleeve_moment_nm (const SwSolution *s)
{
  return s->support.checks.sleeve_moment_nm;
}

static double
sleeve_shear_n (const SwSolution *s)
{
  return s->support.checks.sleeve_shear_n;
}

static const SwWorkingTerm terms[] = {
  { "board_strength_pa",
    board_strength_pa,
    0,
    N_ ("strength of the boards: Fb of 875 psi·1.6 for wind·size·flat use·wet service"),
    "NDS 2018, No. 2 spruce-pine-fir; values from memory" },
  { "lap_m", lap_m, 0, N_ ("what the half lap leaves of a board's thickness"), "ALSC PS 20" },
  { "post_area_m2", post_area_m2, 0, N_ ("the post's area π/4·(OD² − ID²)"), PIPES },
  { "column_moment_nm",
    column_moment_nm,
    0,
    N_ ("moment in the post: wind, a partial tree's pull, its weight out of plumb; with guys "
        "the worse of a pinned and of a fixed base"),
    "beam theory; AISC Manual table 3-23" },
  { "column_guys_n",
    column_guys_n,
    0,
    N_ ("what the guys press the post down with, 0 without: the wind they hold, and what they "
        "are drawn tight with"),
    "statics" },
  { "guys_n_per_m",
    guys_n_per_m,
    0,
    N_ ("how stiff the guys hold sideways, whichever way the wind blows"),
    "stiffness_n/length·(radius_m/length)², of those that pull" },
  { "stub_section_m3",
    stub_section_m3,
    0,
    N_ ("the stub's section modulus π/32·(OD⁴ − ID⁴)/OD"),
    PIPES },
  { "stub_yield_pa", stub_yield_pa, 0, N_ ("yield of the stub, assumed"), PIPES },
  { "sleeve_play_m",
    sleeve_play_m,
    0,
    N_ ("inside of the sleeve less outside of the post"),
    PIPES },
  { "sleeve_moment_nm",
    sleeve_moment_nm,
    0,
    N_ ("moment that the sleeve carries: with guys that of a fixed base"),
    "beam theory; AISC Manual table 3-23" },
  { "sleeve_shear_n",
    sleeve_shear_n,
    0,
    N_ ("sideways force that the sleeve carries"),
    "statics" },
};

static const SwWorkingRow rows[] = {
  { .key = "checks.board_factor", .formula = "board_strength_pa/board_stress_pa" },
  { .key = "checks.board_stress_pa",
    .formula = "base_moment_nm/(arm_width_m·lap_m^2/6)",
    .assumes =
      N_ ("one arm lies with the wind and takes it all; the board in the notch does not "
          "help, as wood does not pull across the grain") },
  { .key = "checks.column_factor",
    .applies = holds_up,
    .formula = "post_yield_pa/(column_moment_nm·column_amplifier/post_section_m3 + "
               "column_axial_n/post_area_m2)",
    .assumes = N_ ("the yield is assumed; no joint is weaker than the tube") },
  { .key = "checks.column_axial_n",
    .formula = "(crown.mass_kg + star_kg + strip_count·mass_kg_per_m·slant_m + "
               "post_kg_per_m·crown_height_m)·gravity_mps2 + "
               "strip_count·strip_tension_n·cos(lean_deg·π/180) + column_guys_n",
    .assumes = N_ ("every strip is taken as the windward one") },
  { .key = "checks.column_critical_n",
    .applies = is_guyed,
    .formula = "min(π^2·post_ei_nm2/min(guys.height_m, crown_height_m)^2, "
               "π^2·post_ei_nm2/(2.1·crown_height_m)^2 + 0.75·guys_n_per_m·min(guys.height_m, "
               "crown_height_m))" },
  { .key = "checks.column_critical_n",
    .formula = "π^2·post_ei_nm2/(2.1·crown_height_m)^2",
    .assumes = N_ ("a base that gives a little: 2.1 heights instead of 2") },
  { .key = "checks.column_amplifier", .formula = "1/(1 − column_axial_n/column_critical_n)" },
  { .key = "checks.stub_factor",
    .formula = "stub_yield_pa/stub_stress_pa",
    .assumes = N_ ("the yield is assumed") },
  { .key = "checks.stub_stress_pa",
    .formula = "topper_n·(topper.stub_m + topper.height_m/2)/stub_section_m3",
    .assumes = N_ ("the star faces the wind") },
  { .key = "checks.sleeve_lean_m",
    .formula = "crown_height_m·min(sleeve_play_m/max(sleeve_depth_m, 10^−6), 1)" },
  { .key = "checks.sleeve_top_n",
    .applies = in_socket,
    .formula = "sleeve_moment_nm/sleeve_depth_m + sleeve_shear_n" },
  { .key = "checks.sleeve_top_n", .formula = "sleeve_moment_nm/sleeve_depth_m" },
  { .key = "checks.sleeve_bottom_n", .formula = "abs(sleeve_top_n − sleeve_shear_n)" },
};

const SwWorkingTable sw_working_checks = { terms,
                                           G_N_ELEMENTS (terms),
                                           rows,
                                           G_N_ELEMENTS (rows) };
