// SPDX-License-Identifier: GPL-3.0-or-later
/* working-stand.c: foot, post, guys, socket, the strips' own pull. */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define PIPES "data/pipes.json"
#define ONE_WAY N_ ("every force at its worst and all from one side")

static SwTube
post_of (const SwSolution *s)
{
  return sw_tube_of (sw_catalogue_pipe (s->catalogue, s->design->stand.post));
}

static double
post_ei_nm2 (const SwSolution *s)
{
  return post_of (s).ei;
}

static double
post_section_m3 (const SwSolution *s)
{
  return post_of (s).section_m3;
}

static double
post_yield_pa (const SwSolution *s)
{
  return post_of (s).yield_pa;
}

static double
post_kg_per_m (const SwSolution *s)
{
  return post_of (s).mass_kg_per_m;
}

static double
ring_kg (const SwSolution *s)
{
  const SwShape *shape = &s->design->shape;
  SwTube ring = sw_tube_of (sw_catalogue_pipe (s->catalogue, s->design->stand.ring_pipe));
  double share = s->design->stand.ring_span == SW_SPAN_ARC ? shape->coverage_deg / 360 : 1;

  return ring.mass_kg_per_m * 2 * G_PI * shape->ring_radius_m * share;
}

static double
star_kg (const SwSolution *s)
{
  return sw_working_has_star (s) ? s->design->topper.mass_kg : 0;
}

static double
guyed_moment_nm (const SwSolution *s)
{
  SwStandModel model;

  sw_working_model (&model, s);
  return sw_model_guys (&model, 1).post_moment_nm;
}

static double
socket_force_n (const SwSolution *s)
{
  double side_n = sw_working_on_foot (s) ? 0 : s->support.side_pull_n;

  return s->wind.base_shear_n + side_n;
}

static double
socket_a_m (const SwSolution *s)
{
  double strength_pa =
    sw_soil_pa_per_m (s->design->site.soil) * s->support.socket_depth_needed_m / 3;

  return 2.34 * socket_force_n (s) / (strength_pa * s->design->stand.socket_diameter_m);
}

static gboolean
is_pushed (const SwSolution *s)
{
  return socket_force_n (s) > 0;
}

static gboolean
has_three_guys (const SwSolution *s)
{
  return s->design->guys.count == 3;
}

static double
tie_give_m (const SwSolution *s)
{
  const SwStrip *strip = &s->design->strip;
  double stretched_m = strip->tie_n_per_m > 0 ? strip->tension_n / strip->tie_n_per_m : 0;

  return MAX (strip->tie_length_m * (strip->tie_stretch_max - 1) - stretched_m, 0);
}

static double
tight_pull_n (const SwSolution *s)
{
  double wind_n_per_m = s->wind.pressure_pa * SW_WIND_CF_STRIP * s->design->strip.width_m;
  double give_m = MAX (tie_give_m (s) + SW_LEAST_GIVE * s->cone.slant_m, SW_LEAST_GIVE_M);

  return wind_n_per_m * sqrt (pow (s->cone.slant_m, 3) / (24 * give_m));
}

static gboolean
pulls_as_in_still_air (const SwSolution *s)
{
  return !(s->support.strip_tension_n > s->design->strip.tension_n);
}

static gboolean
tie_is_stretched_out (const SwSolution *s)
{
  double pull_n = s->support.strip_tension_n;

  return fabs (pull_n - tight_pull_n (s)) <= 1e-12 * pull_n;
}

static const SwWorkingTerm terms[] = {
  { "gravity_mps2", NULL, SW_GRAVITY, N_ ("standard gravity"), "NIST SP 811, appendix B" },
  { "post_kg_per_m", post_kg_per_m, 0, N_ ("the post's mass a metre"), PIPES },
  { "post_ei_nm2",
    post_ei_nm2,
    0,
    N_ ("the post's stiffness E·π/64·(OD⁴ − ID⁴); E of steel 200 GPa, of aluminium 69 GPa"),
    PIPES "; E: handbook values" },
  { "post_section_m3",
    post_section_m3,
    0,
    N_ ("the post's section modulus π/32·(OD⁴ − ID⁴)/OD"),
    PIPES },
  { "post_yield_pa",
    post_yield_pa,
    0,
    N_ ("yield of the post, assumed"),
    "ASTM A53 for steel pipe, 6061-T6 for aluminium; conduit: an assumption, no standard" },
  { "ring_kg", ring_kg, 0, N_ ("the ring's mass"), PIPES },
  { "star_kg", star_kg, 0, N_ ("the star's mass, 0 without one"), "topper.mass_kg" },
  { "guyed_moment_nm",
    guyed_moment_nm,
    0,
    N_ ("largest moment in the guyed post: above the guys, between them and a pinned base, or "
        "at a fixed base"),
    "beam on an elastic prop; AISC Manual table 3-23" },
  { "socket_force_n", socket_force_n, 0, N_ ("push at the ground, with the side pull"), "sum" },
  { "socket_a_m",
    socket_a_m,
    0,
    N_ ("A = 2.34·P/(S1·b), S1 the soil's strength at a third of the depth that is needed"),
    "IBC 1807.3.2.1" },
  { "tie_give_m",
    tie_give_m,
    0,
    N_ ("how far the elastic tie can still stretch"),
    "tie_length_m·(tie_stretch_max − 1) − tension_n/tie_n_per_m" },
  { "least_give",
    NULL,
    SW_LEAST_GIVE,
    N_ ("what hooks, strip and ring give, as a share of the strip"),
    "own judgement, no source" },
  { "least_give_m", NULL, SW_LEAST_GIVE_M, N_ ("never less than that"), "own judgement" },
};

#define WEIGHTS                                                                                \
  N_ ("the boards' own weight is left out; the post counts up to the crown; strips hang from " \
      "it whole")
#define BARE N_ ("no guys help")
#define PINNED N_ ("the base is a hinge: the guys take the whole moment")

static const SwWorkingRow rows[] = {
  { .key = "support.foot_mass_kg",
    .applies = sw_working_on_foot,
    .formula = "ballast_kg + post_kg_per_m·crown_height_m + crown.mass_kg + star_kg + "
               "strip_count·mass_kg_per_m·slant_m + ring_kg",
    .assumes = WEIGHTS },
  { .key = "support.foot_mass_kg",
    .formula = "ballast_kg + post_kg_per_m·crown_height_m + crown.mass_kg + star_kg + "
               "strip_count·mass_kg_per_m·slant_m",
    .assumes = WEIGHTS },
  { .key = "support.foot_lever_m",
    .formula = "(arm_m + arm_width_m/2)/√2",
    .assumes = N_ ("firm, level ground") },
  { .key = "support.tipping_factor",
    .formula = "foot_mass_kg·gravity_mps2·foot_lever_m/base_moment_nm",
    .assumes = N_ ("neither strips nor guys help") },
  { .key = "support.tipping_factor_held",
    .formula = "tipping_factor + strip_count·tension_n·cos(lean_deg·π/180)·foot_lever_m/"
               "base_moment_nm",
    .assumes = N_ ("every strip pulls as in still air, and its tie holds") },
  { .key = "support.sliding_factor",
    .formula = "friction·foot_mass_kg·gravity_mps2/base_shear_n",
    .assumes = N_ ("the friction that was entered") },
  { .key = "support.post_stress_pa",
    .formula = "base_moment_nm/post_section_m3",
    .assumes = BARE },
  { .key = "support.post_factor",
    .formula = "post_yield_pa/post_stress_pa",
    .assumes = N_ ("the yield is assumed; no joint is weaker than the tube") },
  { .key = "support.tip_deflection_m",
    .applies = sw_working_on_foot,
    .formula = "crown_height_m^2/post_ei_nm2·(strips_n/2·crown_height_m/3 + "
               "topper_n·(2·crown_height_m + 3·topper.stub_m + 3·topper.height_m/2)/6 + "
               "post_n·crown_height_m/8)",
    .assumes = BARE },
  { .key = "support.tip_deflection_m",
    .formula = "crown_height_m^2/post_ei_nm2·((strips_n/2 + side_pull_n)·crown_height_m/3 + "
               "topper_n·(2·crown_height_m + 3·topper.stub_m + 3·topper.height_m/2)/6 + "
               "post_n·crown_height_m/8)",
    .assumes = BARE },
  { .key = "support.guy_tension_n",
    .applies = has_three_guys,
    .formula = "max(2/√3·base_moment_nm/guys.height_m·√(guys.height_m^2 + "
               "guys.radius_m^2)/guys.radius_m, pretension_n + "
               "2·base_moment_nm/guys.height_m/guys.count·√(guys.height_m^2 + "
               "guys.radius_m^2)/guys.radius_m)",
    .assumes = PINNED },
  { .key = "support.guy_tension_n",
    .formula = "max(base_moment_nm/guys.height_m·√(guys.height_m^2 + "
               "guys.radius_m^2)/guys.radius_m, pretension_n + "
               "2·base_moment_nm/guys.height_m/guys.count·√(guys.height_m^2 + "
               "guys.radius_m^2)/guys.radius_m)",
    .assumes = PINNED },
  { .key = "support.guy_factor",
    .formula = "break_n·end_efficiency/guy_tension_n",
    .assumes = N_ ("no rubbing, no ageing") },
  { .key = "support.stake_factor",
    .formula = "stake_hold_n/guy_tension_n",
    .assumes = N_ ("each stake holds what was entered") },
  { .key = "support.guyed_post_stress_pa",
    .formula = "guyed_moment_nm/post_section_m3",
    .how = N_ ("worse of a pinned and of a fixed base on elastic guys") },
  { .key = "support.guyed_base_shear_n",
    .applies = sw_working_on_foot,
    .formula = "abs(base_shear_n − base_moment_nm/guys.height_m)",
    .assumes = PINNED },
  { .key = "support.guyed_base_shear_n",
    .formula = "abs(base_shear_n + side_pull_n − base_moment_nm/guys.height_m)",
    .assumes = PINNED },
  { .key = "support.socket_depth_needed_m",
    .applies = is_pushed,
    .formula = "0.5·socket_a_m·(1 + √(1 + 4.36·base_moment_nm/socket_force_n/socket_a_m))",
    .how = N_ ("A holds the depth itself: halved until the depth put in comes out"),
    .assumes = N_ ("undisturbed soil of the kind entered, the weakest where it is not known; "
                   "nothing stiff at the surface; a pole that may move half an inch") },
  { .key = "support.socket_depth_needed_m", .formula = "0" },
  { .key = "support.side_pull_n", .applies = sw_working_closed, .formula = "0" },
  { .key = "support.side_pull_n",
    .formula = "tension_n·abs(sin(lean_deg·π/180)·sin(strip_count·coverage_deg/(strip_count − "
               "1)·π/360)/sin(coverage_deg/(strip_count − 1)·π/360))",
    .assumes = N_ ("every strip pulls alike, in still air") },
  { .key = "support.strip_tension_n",
    .applies = pulls_as_in_still_air,
    .formula = "tension_n" },
  { .key = "support.strip_tension_n",
    .applies = tie_is_stretched_out,
    .formula = "pressure_pa·cf_strip·strip.width_m·√(slant_m^3/(24·max(tie_give_m + "
               "least_give·slant_m, least_give_m)))",
    .how = N_ ("the tie is as long as it goes: the strip bows until it hangs in that length"),
    .assumes = N_ ("the strip faces the wind broadside") },
  { .key = "support.strip_tension_n",
    .formula = "tension_n + tie_n_per_m·(pressure_pa·cf_strip·strip.width_m)^2·slant_m^3/24/"
               "strip_tension_n^2",
    .how = N_ ("Newton's method; the tension found, put in, comes out"),
    .assumes = N_ ("the strip faces the wind broadside") },
  { .key = "support.first_hz",
    .formula =
      "√(3·post_ei_nm2/((crown.mass_kg + star_kg + strip_count·mass_kg_per_m·slant_m/2 "
      "+ 33/140·post_kg_per_m·crown_height_m)·crown_height_m^3))/(2·π)",
    .assumes = N_ ("a fixed base, no guys") },
};

const SwWorkingTable sw_working_stand = { terms,
                                          G_N_ELEMENTS (terms),
                                          rows,
                                          G_N_ELEMENTS (rows) };
