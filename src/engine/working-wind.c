// SPDX-License-Identifier: GPL-3.0-or-later
/* working-wind.c: a gust to forces. */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define NO_SHELTER                                                                             \
  N_ ("no strip shelters another, no flutter, no ice unless entered; a cone that is closed "   \
      "counts as a solid round body")

static double
alpha (const SwSolution *s)
{
  return sw_wind_terrain (s->design->site.exposure)->alpha;
}

static double
gradient_m (const SwSolution *s)
{
  return sw_wind_terrain (s->design->site.exposure)->gradient_m;
}

static double
widths (const SwSolution *s)
{
  return sw_wind_widths (&s->design->shape, NULL);
}

/* The strips' azimuths as vectors, each turned so that it looks at the wind: Σ|cos| is their
 * length where it is largest. */
static double
sum_seen (const SwSolution *s, double (*part) (double))
{
  double wind = s->wind.worst_azimuth_deg * G_PI / 180, sum = 0;

  for (int strip = 1; strip <= s->design->shape.strip_count; strip++) {
    double azimuth = sw_cone_azimuth_deg (&s->design->shape, strip) * G_PI / 180;
    sum += (cos (azimuth - wind) >= 0 ? 1 : -1) * part (azimuth);
  }
  return sum;
}

static double
front_widths (const SwSolution *s)
{
  return sum_seen (s, cos);
}

static double
side_widths (const SwSolution *s)
{
  return sum_seen (s, sin);
}

static double
flat_m (const SwSolution *s)
{
  return SW_WIND_CF_STRIP * s->design->strip.width_m * widths (s);
}

/* 1.2 times the cone's outline at a radius. */
static double
outline_m (const SwSolution *s, double radius_m)
{
  return SW_WIND_CF_ROUND * (2 * radius_m + s->design->strip.width_m);
}

static double
narrow_m (const SwSolution *s)
{
  const SwShape *shape = &s->design->shape;

  return outline_m (s, MIN (shape->crown_radius_m, shape->ring_radius_m));
}

static double
broad_m (const SwSolution *s)
{
  const SwShape *shape = &s->design->shape;

  return outline_m (s, MAX (shape->crown_radius_m, shape->ring_radius_m));
}

static double
closed_share (const SwSolution *s)
{
  return (flat_m (s) - narrow_m (s)) / (broad_m (s) - narrow_m (s));
}

static gboolean
is_open_all_the_way (const SwSolution *s)
{
  return flat_m (s) <= narrow_m (s);
}

static gboolean
is_closed_all_the_way (const SwSolution *s)
{
  return flat_m (s) >= broad_m (s);
}

/* Mean over the height. */
static double
lattice_mean_m (const SwSolution *s)
{
  const SwShape *shape = &s->design->shape;

  return sw_wind_lattice_area (shape, s->design->strip.width_m) /
         (shape->crown_height_m - shape->ring_height_m);
}

static double
post_od_m (const SwSolution *s)
{
  return s->post_od_m;
}

static double
nearest_share (const SwSolution *s)
{
  return s->bow.post_share;
}

static double
guy_across_m (const SwSolution *s)
{
  return s->bow.guy_across_m;
}

static double
guy_rise_m (const SwSolution *s)
{
  return s->bow.guy_rise_m;
}

static double
touch_bow_m (const SwSolution *s)
{
  return s->bow.touch_bow_m;
}

static double
touch_tension_n (const SwSolution *s)
{
  return s->bow.touch_tension_n;
}

static double
touch_facing (const SwSolution *s)
{
  return s->bow.touch_facing;
}

static gboolean
is_calm (const SwSolution *s)
{
  return !(s->bow.strip_bow_m > 0);
}

static gboolean
hits_a_guy (const SwSolution *s)
{
  return s->bow.strip_guy_gap_m <= 0;
}

static gboolean
never_touches (const SwSolution *s)
{
  return !(s->bow.strip_touch_gust_mps < SW_GUST_MOST_MPS);
}

static gboolean
touches_in_still_air (const SwSolution *s)
{
  return !(s->bow.strip_touch_gust_mps > 0);
}

#define LOOKED "every wind, strip and guy looked at; plane geometry"
#define HALVED_TO "the strip's pull solved once more at that gust"
#define TABLE_26_11 "ASCE 7-16 table 26.11-1"

static const SwWorkingTerm terms[] = {
  { "alpha", alpha, 0, N_ ("exponent of the exposure"), TABLE_26_11 },
  { "gradient_m", gradient_m, 0, N_ ("gradient height of the exposure"), TABLE_26_11 },
  { "cf_strip",
    NULL,
    SW_WIND_CF_STRIP,
    N_ ("force coefficient, flat"),
    "ASCE 7-16 table 29.4-2" },
  { "cf_round",
    NULL,
    SW_WIND_CF_ROUND,
    N_ ("force coefficient, round"),
    "ASCE 7-16 table 29.4-2" },
  { "cf_star",
    NULL,
    SW_WIND_CF_STAR,
    N_ ("force coefficient, panel"),
    "ASCE 7-16 figure 29.3-1" },
  { "widths",
    widths,
    0,
    N_ ("how many strips' widths the wind sees: the largest Σ|cos (azimuth − θ)| over θ"),
    "scanned piece by piece" },
  { "front_widths", front_widths, 0, N_ ("Σ cos of the azimuths turned to the wind"), "sum" },
  { "side_widths", side_widths, 0, N_ ("Σ sin of the azimuths turned to the wind"), "sum" },
  { "narrow_m", narrow_m, 0, N_ ("1.2 times the outline's width at its narrow end"), "sum" },
  { "flat_m", flat_m, 0, N_ ("2.0·strip width·the widths the wind sees"), "sum" },
  { "closed_share",
    closed_share,
    0,
    N_ ("share of the height where the cone is closed: (flat − narrow)/(broad − narrow)"),
    "similar triangles" },
  { "lattice_mean_m",
    lattice_mean_m,
    0,
    N_ ("mean over the height of (4.0ε² − 5.9ε + 4.0)·ε·2ρ, ε the strips' share of the cone's "
        "skin, 1 at most, ρ its radius; Simpson's rule, 512 steps"),
    "ASCE 7-16 figure 29.4-3, value from memory" },
  { "post_od_m", post_od_m, 0, N_ ("outside of the post"), "data/pipes.json" },
  { "nearest_share",
    nearest_share,
    0,
    N_ ("where the bowed strip is nearest to the axis: hook 0, tie 1"),
    "1/2 − (ring_radius − crown_radius)/(8·bow), within 0 … 1" },
  { "guy_across_m", guy_across_m, 0, N_ ("level part of the shortest way"), LOOKED },
  { "guy_rise_m", guy_rise_m, 0, N_ ("upright part of the shortest way"), LOOKED },
  { "touch_bow_m", touch_bow_m, 0, N_ ("bow at which a strip first touches"), LOOKED },
  { "touch_tension_n", touch_tension_n, 0, N_ ("that strip's pull then"), HALVED_TO },
  { "touch_facing", touch_facing, 0, N_ ("|cos| between the wind and that strip"), LOOKED },
};

#define SCANNED                                                                                \
  N_ ("every direction is looked at, piece by piece between those that see a strip edge-on; "  \
      "the integral over the height is exact")

#define NO_WEIGHT                                                                              \
  N_ ("a steady gust from the side, no swing; the strips' own weight is left out, their bow "  \
      "is flat")

static const SwWorkingRow rows[] = {
  { .key = "wind.kz",
    .formula = "2.01·(max(overall_height_m, 4.572)/gradient_m)^(2/alpha)",
    .assumes = N_ ("level ground; no floor under town or woods") },
  { .key = "wind.pressure_pa",
    .formula = "0.613·kz·gust_mps^2",
    .assumes = N_ ("the gust lasts three seconds, at 10 m above open ground; Kd, Kzt, Ke and G "
                   "are 1") },
  { .key = "wind.strips_n",
    .applies = is_open_all_the_way,
    .formula = "pressure_pa·cf_strip·strip.width_m·widths·(crown_height_m − ring_height_m)",
    .how = SCANNED,
    .assumes = NO_SHELTER },
  { .key = "wind.strips_n",
    .applies = is_closed_all_the_way,
    .formula = "pressure_pa·cf_round·(crown_radius_m + ring_radius_m + "
               "strip.width_m)·(crown_height_m − ring_height_m)",
    .how = SCANNED,
    .assumes = NO_SHELTER },
  { .key = "wind.strips_n",
    .formula = "pressure_pa·(crown_height_m − ring_height_m)·(closed_share·(narrow_m + "
               "flat_m)/2 + (1 − closed_share)·flat_m)",
    .how = SCANNED,
    .assumes = NO_SHELTER },
  { .key = "wind.lattice_n",
    .formula = "pressure_pa·(crown_height_m − ring_height_m)·lattice_mean_m",
    .assumes = N_ ("the cone as a trussed tower: a second opinion, not used") },
  { .key = "wind.post_n",
    .formula = "pressure_pa·cf_round·post_od_m·crown_height_m",
    .assumes = N_ ("the post is bare up to the crown") },
  { .key = "wind.topper_n",
    .applies = sw_working_has_star,
    .formula = "pressure_pa·cf_star·solidity·topper.width_m·topper.height_m",
    .assumes = N_ ("the star faces the wind") },
  { .key = "wind.topper_n", .formula = "0" },
  { .key = "wind.base_shear_n",
    .applies = sw_working_on_foot,
    .formula = "strips_n + post_n + topper_n" },
  { .key = "wind.base_shear_n",
    .formula = "strips_n/2 + post_n + topper_n",
    .assumes = N_ ("the ring's pegs take the other half of the strips' wind") },
  { .key = "wind.wind_moment_nm",
    .applies = sw_working_on_foot,
    .formula = "strips_n/2·crown_height_m + post_n·crown_height_m/2 + topper_n·(crown_height_m "
               "+ topper.stub_m + topper.height_m/2) + strips_n/2·ring_height_m" },
  { .key = "wind.wind_moment_nm",
    .formula = "strips_n/2·crown_height_m + post_n·crown_height_m/2 + topper_n·(crown_height_m "
               "+ topper.stub_m + topper.height_m/2)",
    .assumes = N_ ("half of the strips' wind acts at the crown, half on the ring") },
  { .key = "wind.base_moment_nm",
    .applies = sw_working_on_foot,
    .formula = "wind_moment_nm",
    .assumes = N_ ("strips that pull at crown and foot alike tip nothing") },
  { .key = "wind.base_moment_nm",
    .formula = "wind_moment_nm + side_pull_n·crown_height_m",
    .assumes = N_ ("the side pull of a partial tree works with the wind") },
  { .key = "wind.worst_azimuth_deg",
    .formula = "atan2(side_widths, front_widths)·180/π",
    .how = SCANNED },
  { .key = "wind.strip_bow_m", .applies = is_calm, .formula = "0", .assumes = NO_WEIGHT },
  { .key = "wind.strip_bow_m",
    .formula = "pressure_pa·cf_strip·strip.width_m·slant_m^2/(8·strip_tension_n)",
    .assumes = NO_WEIGHT },
  { .key = "wind.strip_post_gap_m",
    .formula = "crown_radius_m + (ring_radius_m − crown_radius_m)·nearest_share − "
               "4·strip_bow_m·nearest_share·(1 − nearest_share) − post_od_m/2",
    .assumes = NO_WEIGHT },
  { .key = "wind.strip_guy_gap_m", .applies = hits_a_guy, .formula = "0" },
  { .key = "wind.strip_guy_gap_m",
    .formula = "√(guy_across_m^2 + guy_rise_m^2)",
    .how = N_ ("every wind, strip and guy looked at, the nearest looked at closer"),
    .assumes = NO_WEIGHT },
  { .key = "wind.strip_touch_gust_mps", .applies = never_touches, .formula = "most_mps" },
  { .key = "wind.strip_touch_gust_mps", .applies = touches_in_still_air, .formula = "0" },
  { .key = "wind.strip_touch_gust_mps",
    .formula = "√(8·touch_tension_n·touch_bow_m/"
               "(slant_m^2·0.613·kz·cf_strip·strip.width_m·touch_facing))",
    .how = N_ ("the gust halved until the strip bows just so far, its pull solved each time"),
    .assumes = NO_WEIGHT },
};

const SwWorkingTable sw_working_wind = { terms,
                                         G_N_ELEMENTS (terms),
                                         rows,
                                         G_N_ELEMENTS (rows) };
