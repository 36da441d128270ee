// SPDX-License-Identifier: GPL-3.0-or-later
/* results-wind.c: what the wind presses on, and strips that bow. */
#include "engine/result-table.h"

#define ASCE "ASCE 7-16, 26.10 with Kd = Kzt = Ke = G = 1"
#define PARABOLA "Irvine, Cable Structures: flat parabola; place by plane geometry"

static const SwResult rows[] = {
  NUMBER (wind, kz, "2.01·(max (overall_height, 4.572)/zg)^(2/α)", ASCE),
  NUMBER (wind, pressure_pa, "0.613·kz·gust²", ASCE),
  NUMBER (wind,
          strips_n,
          "pressure·∫ min (2.0·width·Σ|cos|, 1.2·(2ρ + width)) dz, worst direction",
          "ASCE 7-16 table 29.4-2, flat and round members; cap: a solid round body"),
  NUMBER (wind,
          lattice_n,
          "pressure·∫ (4.0ε² − 5.9ε + 4.0)·ε·2ρ dz, ε = min (strip_count·width/2πρ, 1); closed "
          "trees; a second opinion, not used",
          "ASCE 7-16 figure 29.4-3, square trussed towers; value from memory"),
  NUMBER (wind,
          post_n,
          "pressure·1.2·OD·crown_height",
          "ASCE 7-16 table 29.4-2, round members"),
  NUMBER (wind,
          topper_n,
          "pressure·1.8·solidity·width·height",
          "ASCE 7-16 figure 29.3-1, solid panel"),
  NUMBER (wind,
          base_shear_n,
          "strips/2 + post + star (+ strips/2 when the ring hangs on the foot)",
          "statics"),
  NUMBER (
    wind,
    wind_moment_nm,
    "strips/2·crown_height + post·crown_height/2 + star·its middle (+ strips/2·ring_height)",
    "statics"),
  NUMBER (wind,
          base_moment_nm,
          "wind_moment + side_pull·crown_height when the ring is held by the ground",
          "statics"),
  NUMBER (wind,
          worst_azimuth_deg,
          "the direction with the largest Σ|cos (azimuth − θ)|",
          "scanned piece by piece"),
  AS ("wind.strip_bow_m",
      SW_RESULT_NUMBER,
      bow.strip_bow_m,
      "pressure·2.0·width·slant²/(8·strip_tension), a strip that faces the wind",
      PARABOLA),
  AS ("wind.strip_post_gap_m",
      SW_RESULT_NUMBER,
      bow.strip_post_gap_m,
      "least of the bowed strip's distance from the axis − OD/2; below 0 it hits the post",
      PARABOLA),
  AS ("wind.strip_guy_gap_m",
      SW_RESULT_NUMBER,
      bow.strip_guy_gap_m,
      "least distance of a bowed strip from a guy, every wind; 0 where it hits one",
      PARABOLA),
  AS ("wind.strip_touch_gust_mps",
      SW_RESULT_NUMBER,
      bow.strip_touch_gust_mps,
      "least gust at which a strip touches post or guy; at most 150",
      PARABOLA),
};

const SwResultTable sw_results_of_wind = { rows, G_N_ELEMENTS (rows) };
