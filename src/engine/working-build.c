// SPDX-License-Identifier: GPL-3.0-or-later
/* working-build.c: lengths along the post, what there is to lift, and the storm plan. */
#include "engine/working-table.h"

#include <glib/gi18n.h>

static double
stub_kg (const SwSolution *s)
{
  return s->fittings.stub == NULL ? 0 : s->fittings.stub->mass_kg_per_m * s->heights.stub_m;
}

static double
shown_step_mps (const SwSolution *s)
{
  return s->design->units == SW_UNITS_US ? 1609.344 / 3600 : 1;
}

static const SwWorkingTerm terms[] = {
  { "stub_kg", stub_kg, 0, N_ ("the stub's mass, 0 without one"), "data/pipes.json" },
  { "shown_step_mps", shown_step_mps, 0, N_ ("1 mph, or 1 m/s"), "NIST SP 811, appendix B" },
  { "durst",
    NULL,
    SW_GUST_FACTOR,
    N_ ("3-second gust over the mean of an hour"),
    "Durst; ASCE 7-16 figure C26.5-1" },
};

#define ROUNDED N_ ("rounded down, as a weather app shows whole ones")

static const SwWorkingRow rows[] = {
  { .key = "heights.post_m",
    .formula = "crown_height_m + hook_drop_m − heights.flange_m − heights.foot_m" },
  { .key = "heights.lift_kg",
    .formula = "crown.mass_kg + star_kg + strip_count·mass_kg_per_m·slant_m + "
               "post_kg_per_m·heights.post_m + stub_kg" },
  { .key = "storm.bundle_m",
    .formula = "√(post_od_m^2 + 4/π·strip_count·strip.width_m·0.010/0.5)",
    .assumes = N_ ("strips are 10 mm thick, and half of the bundle is air") },
  { .key = "storm.gathered_n",
    .formula = "min(pressure_pa·cf_round·bundle_m·crown_height_m, post_n + strips_n)",
    .assumes = N_ ("one rough round body, never more to the wind than strips that hang") },
  { .key = "storm.unhook_gust_mps", .formula = "take_down_gust_mps" },
  { .key = "storm.unhook_sustained_mps",
    .formula = "floor(unhook_gust_mps/durst/shown_step_mps)·shown_step_mps",
    .assumes = ROUNDED },
  { .key = "storm.lower_sustained_mps",
    .formula = "floor(lower_gust_mps/durst/shown_step_mps)·shown_step_mps",
    .assumes = ROUNDED },
};

const SwWorkingTable sw_working_build = { terms,
                                          G_N_ELEMENTS (terms),
                                          rows,
                                          G_N_ELEMENTS (rows) };
