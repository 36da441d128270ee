// SPDX-License-Identifier: GPL-3.0-or-later
/* wind.h: a gust to pressure to forces on strips, post and star, at site.gust_mps.
 *
 * Kd = Kzt = Ke = G = 1: the question is "can it stand a gust of V", not a map wind.
 * Source  velocity pressure 0.613·Kz·V² and Kz = 2.01·(z/zg)^(2/α): ASCE 7-16, 26.10; force
 * coefficients: ASCE 7-16 table 29.4-2 (flat members 2.0, round members 1.2) and figure 29.3-1
 * (a solid panel 1.8) Limits  no flutter, no ice, no shielding of one strip by another: on the
 * safe side for hobby sizes; refer to a licensed professional beyond
 */
#pragma once
#include "engine/catalogue.h"
#include "engine/cone.h"

#define SW_WIND_CF_STRIP 2.0 /* flat member, broadside */
#define SW_WIND_CF_ROUND 1.2 /* post, and a cone closed like a solid round body */
#define SW_WIND_CF_STAR 1.8  /* panel */

typedef struct {
  double kz, pressure_pa;
  double strips_n, post_n, topper_n;
  double lattice_n; /* strips_n by sw_wind_lattice_area (); NAN for a partial tree */
  double base_shear_n, wind_moment_nm, base_moment_nm;
  double worst_azimuth_deg; /* the wind blows from there; the least of equally bad ones */
} SwWind;

void sw_wind_init (SwWind *wind,
                   const SwDesign *design,
                   const SwCone *cone,
                   const SwCatalogue *catalogue);

/* Exponent α and gradient height zg of an exposure. */
typedef struct {
  double alpha, gradient_m;
} SwTerrain;

const SwTerrain *sw_wind_terrain (SwExposure exposure);

/* Velocity pressure coefficient at a height. */
double sw_wind_kz (SwExposure exposure, double height_m);

/* The largest Σ|cos(azimuth − θ)| over θ: strips' widths as the wind sees them. `worst_deg` may
 * be NULL. */
double sw_wind_widths (const SwShape *shape, double *worst_deg);

/* ∫ min (flat_m, 1.2·(2ρ(z) + width)) dz from ring to crown: force area of the strips, m². */
double sw_wind_strip_area (const SwShape *shape, double width_m, double flat_m);

/* Force area of a closed tree taken as a square lattice tower, m²: ∫ Cf·ε·2ρ dz with the
 * solidity ε = N·width/2πρ (at most 1) and Cf = 4.0·ε² − 5.9·ε + 4.0. A second opinion on
 * strips_n, not used: strips shelter each other in it. Source: ASCE 7-16 figure 29.4-3, values
 * from memory. NAN for a partial tree.
 */
double sw_wind_lattice_area (const SwShape *shape, double width_m);

/* Steady sideways pull of a partial tree's strips on the crown, still air; 0 for a closed tree.
 */
double sw_wind_side_pull (const SwDesign *design, const SwCone *cone);
