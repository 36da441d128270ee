// SPDX-License-Identifier: GPL-3.0-or-later
/* wind.h: a gust to pressure to forces on strips, post and star, at site.gust_mps.
 *
 * Absent values are NAN. Kd = Kzt = Ke = G = 1.
 * Source  velocity pressure 0.613·Kz·V² and Kz = 2.01·(z/zg)^(2/α): ASCE 7-16, 26.10; force
 *         coefficients: ASCE 7-16 table 29.4-2 (flat members 2.0), long round members 1.2
 * Limits  no flutter, no ice, no shielding; refer to a licensed professional above hobby size
 */
#pragma once
#include "engine/catalogue.h"
#include "engine/cone.h"

typedef struct {
  double kz, pressure_pa;
  double strips_n, post_n, topper_n;
  double base_shear_n, wind_moment_nm, base_moment_nm;
  double worst_azimuth_deg; /* the wind blows from there */
} SwWind;

void sw_wind_init (SwWind *wind,
                   const SwDesign *design,
                   const SwCone *cone,
                   const SwCatalogue *catalogue);
