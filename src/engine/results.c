// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/results.h"

#include <math.h>
#include <string.h>

#define PLANE "plane geometry"
#define KIRCHHOFF "Kirchhoff's laws on the ladder of pixels, feeds and feeders"
#define E131 "ANSI E1.31: 512 slots a universe, universes 1 to 63999"
#define ASCE "ASCE 7-16, 26.10 with Kd = Kzt = Ke = G = 1"
#define BEAM "beam theory; AISC Manual table 3-23"
#define STABILITY "Timoshenko & Gere, Theory of Elastic Stability, chapter 7"
#define OWN_FACTOR "statics; factor needed by common practice"

#define AT(field) G_STRUCT_OFFSET (SwSolution, field)
#define NUMBER(group, name, words, from)                                                       \
  {                                                                                            \
#group "." #name, SW_RESULT_NUMBER, AT(group.name), words, from                            \
  }
#define AS(key, kind, field, words, from)                                                      \
  {                                                                                            \
    key, kind, AT (field), words, from                                                         \
  }

const SwResult sw_results[] = {
  AS ("geometry.slant_m",
      SW_RESULT_NUMBER,
      cone.slant_m,
      "√((crown_height − ring_height)² + (ring_radius − crown_radius)²)",
      PLANE),
  AS ("geometry.lean_deg",
      SW_RESULT_NUMBER,
      cone.lean_deg,
      "atan ((ring_radius − crown_radius)/(crown_height − ring_height))",
      PLANE),
  AS ("geometry.run_m", SW_RESULT_NUMBER, cone.run_m, "(pixels − 1)·pitch", PLANE),
  AS ("geometry.tail_m", SW_RESULT_NUMBER, cone.tail_m, "slant − lead − run", PLANE),
  AS ("geometry.circumference_m",
      SW_RESULT_NUMBER,
      cone.circumference_m,
      "2π·ring_radius",
      PLANE),
  AS ("geometry.spacing_ring_m",
      SW_RESULT_NUMBER,
      cone.spacing_ring_m,
      "coverage·ring_radius/gaps",
      PLANE),
  AS ("geometry.chord_ring_m",
      SW_RESULT_NUMBER,
      cone.chord_ring_m,
      "2·ring_radius·sin (step/2)",
      PLANE),
  AS ("geometry.spacing_crown_m",
      SW_RESULT_NUMBER,
      cone.spacing_crown_m,
      "coverage·crown_radius/gaps",
      PLANE),
  AS ("geometry.strip_pixels_total",
      SW_RESULT_WHOLE,
      cone.strip_pixels_total,
      "strip_count·pixels",
      "count"),
  AS ("geometry.pixels_total",
      SW_RESULT_WHOLE,
      cone.pixels_total,
      "strip_count·pixels + star's pixels",
      "count"),
  AS ("geometry.overall_height_m",
      SW_RESULT_NUMBER,
      cone.overall_height_m,
      "crown_height + stub + star height",
      PLANE),

  AS ("heights.foot_m",
      SW_RESULT_NUMBER,
      heights.foot_m,
      "thickness of the boards + bucket floor; in the ground −min (sleeve_depth, socket_depth)",
      "ALSC PS 20: actual board; bucket floor of 90 mil: common practice"),
  AS ("heights.flange_m",
      SW_RESULT_NUMBER,
      heights.flange_m,
      "height of flange and connector − engagement of the last",
      "ASME B1.20.1: engagement; heights from the catalogue: measure yours"),
  AS ("heights.post_m",
      SW_RESULT_NUMBER,
      heights.post_m,
      "crown_height + hook_drop − flange − foot",
      "lengths along one line add"),
  AS ("heights.sleeve_m",
      SW_RESULT_NUMBER,
      heights.sleeve_m,
      "sleeve_depth − its flange; in the ground socket_depth",
      "lengths along one line add"),
  AS ("heights.stub_m",
      SW_RESULT_NUMBER,
      heights.stub_m,
      "stub_m − hook_drop − plate_thickness − fittings below its end + 0.10 behind the star",
      "lengths along one line add; 0.10 for two U-bolts: common practice, no source"),
  AS ("heights.lift_kg",
      SW_RESULT_NUMBER,
      lift_kg,
      "post + crown + strip_count·mass_kg_per_m·slant + star + stub",
      "sum"),

  AS ("power.feasible",
      SW_RESULT_FLAG,
      power.feasible,
      "whether the ladder has a solution",
      "Newton from the supply voltage; Ortega & Rheinboldt, monotone convergence"),
  NUMBER (power, strip_current_a, "Σ of the pixels' currents at cap", KIRCHHOFF),
  NUMBER (power,
          tree_current_a,
          "strip_count·strip_current + star pixels·pixel_a·cap",
          KIRCHHOFF),
  NUMBER (power, tree_w, "supply_v·tree_current", KIRCHHOFF),
  NUMBER (power, worst_pixel_v, "lowest voltage of a strip's pixels", KIRCHHOFF),
  AS ("power.worst_pixel",
      SW_RESULT_WHOLE,
      power.worst_pixel,
      "the pixel with it, 1 = at the ring",
      KIRCHHOFF),
  NUMBER (power, strip_drop_v, "supply_v − worst_pixel_v", KIRCHHOFF),
  AS ("power.supplies",
      SW_RESULT_WHOLE,
      power.supplies,
      "⌈tree_w/(supply_w·supply_load_max)⌉",
      "load at most 80 %: NEC 210.20(A) for continuous loads, as a start"),
  NUMBER (power, average_w, "tree_w at min (brightness, cap)", KIRCHHOFF),
  NUMBER (power, evening_kwh, "average_w·hours_per_evening/1000", KIRCHHOFF),
  AS ("power.most_feed_a",
      SW_RESULT_NUMBER,
      power.most_feed_a,
      "largest current through one strip's feed at cap",
      KIRCHHOFF),
  AS ("power.full_white.tree_current_a",
      SW_RESULT_NUMBER,
      power.full_white_current_a,
      "tree_current at share 1",
      KIRCHHOFF),
  AS ("power.full_white.tree_w",
      SW_RESULT_NUMBER,
      power.full_white_w,
      "tree_w at share 1",
      KIRCHHOFF),
  AS ("power.full_white.worst_pixel_v",
      SW_RESULT_NUMBER,
      power.full_white_worst_v,
      "worst_pixel_v at share 1",
      KIRCHHOFF),

  AS ("data.port_pixels_max",
      SW_RESULT_WHOLE,
      data.port_pixels_max,
      "⌊(1/frame_hz − reset)·bit_rate/bits⌋, or the user's limit if lower",
      "timing of one-wire pixels from their data sheets"),
  AS ("data.strips_per_port",
      SW_RESULT_WHOLE,
      data.strips_per_port,
      "⌊(port_pixels_max − skipped)/pixels⌋, at most strips_per_port_max, at least 1",
      "count"),
  AS ("data.ports",
      SW_RESULT_WHOLE,
      data.ports,
      "⌈strip_count/strips_per_port⌉ + 1 for a star",
      "count"),
  AS ("data.universes",
      SW_RESULT_WHOLE,
      data.universes,
      "Σ over ports ⌈(pixels + skipped)/pixels_per_universe⌉",
      E131),

  NUMBER (wind, kz, "2.01·(max (overall_height, 4.572)/zg)^(2/α)", ASCE),
  NUMBER (wind, pressure_pa, "0.613·kz·gust²", ASCE),
  NUMBER (wind,
          strips_n,
          "pressure·∫ min (2.0·width·Σ|cos|, 1.2·(2ρ + width)) dz, worst direction",
          "ASCE 7-16 table 29.4-2, flat and round members; cap: a solid round body"),
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

  NUMBER (
    support,
    foot_mass_kg,
    "ballast + post + crown + star + strips (+ ring when tied to the foot); boards left out",
    "sum"),
  NUMBER (support,
          foot_lever_m,
          "(arm + arm_width/2)/√2",
          "plane geometry: the edge that joins two neighbouring arm ends"),
  NUMBER (support,
          tipping_factor,
          "foot_mass·9.80665·foot_lever/base_moment; needed 1.5",
          OWN_FACTOR),
  NUMBER (support,
          tipping_factor_held,
          "tipping_factor with the strips' pull to a ring tied to the ground",
          OWN_FACTOR),
  NUMBER (support,
          sliding_factor,
          "friction·foot_mass·9.80665/base_shear; needed 1.5",
          OWN_FACTOR),
  NUMBER (support, post_stress_pa, "base_moment/section modulus, no guys", BEAM),
  NUMBER (support,
          post_factor,
          "assumed yield/post_stress; needed 1.5",
          "yield of conduit 207 MPa is an assumption: conduit standards give none"),
  NUMBER (support,
          tip_deflection_m,
          "cantilever under strips/2, star and post wind, at the crown",
          BEAM),
  NUMBER (support,
          guy_tension_n,
          "max (share·M/z/cos, pretension + 2·M/z/(count·cos)); share 2/√3 with three guys",
          "statics of a pinned mast"),
  NUMBER (support, guy_factor, "break·end_efficiency/guy_tension; needed 3", OWN_FACTOR),
  NUMBER (support, stake_factor, "stake_hold/guy_tension; needed 2", OWN_FACTOR),
  NUMBER (support,
          guyed_post_stress_pa,
          "largest moment of pinned and fixed base/section modulus",
          BEAM),
  NUMBER (support,
          guyed_base_shear_n,
          "|base shear − M/z|, pinned base",
          "statics of a pinned mast"),
  NUMBER (support,
          socket_depth_needed_m,
          "0.5·A·(1 + √(1 + 4.36·h/A)), A = 2.34·P/(S1·b)",
          "IBC 1807.3.2.1, soil by IBC table 1806.2, doubled for a single pole"),
  NUMBER (support,
          side_pull_n,
          "tension·sin (lean)·|sin (N·step/2)/sin (step/2)|",
          "vector sum of the strips' pulls"),
  NUMBER (support,
          strip_tension_n,
          "T²(T − T0) = k·w²·s³/24 until the tie is as long as it goes",
          "Irvine, Cable Structures: flat parabola"),
  NUMBER (support,
          first_hz,
          "√(3EI/(m·L³))/2π",
          "Rayleigh's method, 33/140 of the post's mass"),
  NUMBER (support,
          ring_lift_m,
          "closed: 4wR⁴·Σ (1/EI + 1/((mK)²GJ))/((mK)² − 1)²; whole ring under a partial tree: "
          "strip by strip; arc: grid elements",
          "harmonic series of a free ring, checked against a frame model"),
  NUMBER (support,
          ring_stress_pa,
          "w·R²·(1 − θ·cot θ)/section modulus, θ = π/K; partial tree: largest moment/section "
          "modulus",
          "Hassoun, Structural Concrete, table 21.1"),
  NUMBER (support,
          ring_tie_n,
          "strip_count·tension·cos (lean)/K; partial tree: largest tie",
          "statics"),
  NUMBER (support,
          ring_tie_gust_n,
          "ring_tie·strip_tension/tension",
          "statics, every strip taken as the windward one"),
  NUMBER (support,
          ring_stress_gust_pa,
          "ring_stress·strip_tension/tension",
          "statics, every strip taken as the windward one"),
  NUMBER (
    support,
    gust_limit_unguyed_mps,
    "highest gust at which tipping, sliding or socket, post and ring ties keep their factor",
    OWN_FACTOR),
  NUMBER (support,
          gust_limit_guyed_mps,
          "the same over guys, stakes, post, sliding and ring ties",
          OWN_FACTOR),
  NUMBER (support,
          gust_limit_mps,
          "the guyed limit on pull-tested stakes, else the unguyed one",
          OWN_FACTOR),
  NUMBER (support,
          take_down_gust_mps,
          "at most 80 % of gust_limit, rounded down to 5 mph or 2 m/s",
          "our own choice"),
  AS ("support.limit_reason",
      SW_RESULT_REASON,
      support.limit_reason,
      "what gives first at gust_limit",
      OWN_FACTOR),

  NUMBER (ring,
          inward_n_per_m,
          "strip_count·tension·sin (lean)/(ring_radius·coverage)",
          "vector sum of the strips' pulls, smeared along the pipe"),
  NUMBER (ring, hoop_n, "inward·ring_radius", "statics of a ring under even pressure"),
  NUMBER (ring,
          waves,
          "max (2, ⌊ring_spokes/2⌋); arc: max (1, 180·(ring_ties − 1)/coverage)",
          "shape with a pinned spoke, or a tie, in each still point; an odd spoke not counted"),
  NUMBER (ring,
          plane_stiffness_pa,
          "(waves² − 1)²·EI/ring_radius⁴, E over a season",
          STABILITY),
  NUMBER (ring, buckling_n_per_m, "(waves² − 1)·EI/ring_radius³, E over a season", STABILITY),
  NUMBER (ring,
          buckling_factor,
          "buckling/inward; needed 2.5",
          "AWWA M45 asks 2.5 of buried plastic pipe, value from memory"),
  NUMBER (
    ring,
    buckling_gust_factor,
    "(waves of the ties² − 1)·EI fresh/ring_radius³/(inward·strip_tension/tension); needed "
    "2.5",
    "every strip taken as the windward one; ties, two a wave, hold the pipe sideways"),
  NUMBER (ring, cold_strain, "OD/(2·ring_radius)", "beam theory: strain of the outer face"),
  NUMBER (ring,
          cold_radius_m,
          "300·OD",
          "shortest cold bend of PVC pipe: a maker's bulletin; Uni-Bell Handbook, from memory"),
  NUMBER (ring,
          lift_fresh_m,
          "ring_lift·1.40/2.76",
          "ASTM D1784, class 12454: 400 000 psi; lift goes with 1/E"),
  NUMBER (ring,
          lift_years_m,
          "ring_lift·1.40/0.965",
          "AASHTO LRFD 12.12.3.3: 140 000 psi for 50 years, value from memory"),
  NUMBER (ring,
          shrink_m,
          "growth·40 K·length of the pipe; growth: steel 11.7, aluminium 23.4, PVC 52 µm/m K",
          "handbook values; 40 K: a workshop of 20 °C to a night of −20 °C"),
  NUMBER (ring,
          shrink_radius_m,
          "growth·40 K·ring_radius, joints glued or pinned",
          "handbook values; 40 K: a workshop of 20 °C to a night of −20 °C"),
  NUMBER (ring, joint_gap_m, "shrink/joints, joints that can slide", "division"),
  NUMBER (ring,
          section_width_m,
          "ring_radius + OD/2 − (ring_radius − OD/2)·cos (section/2), carried along its chord",
          PLANE),
  AS ("ring.sections_for_door",
      SW_RESULT_COUNT,
      ring.sections_for_door,
      "fewest sections whose width passes site.door_m",
      PLANE),
  AS ("ring.fewest_ties",
      SW_RESULT_COUNT,
      ring.fewest_ties,
      "fewest ties with ring_lift ≤ 0.010 m, each number solved; found by doubling, then one "
      "by one",
      "10 mm: our own choice"),
  AS ("ring.joint_clear_m",
      SW_RESULT_NUMBER,
      ring.joints.clear_m,
      "(ring_radius + OD/2)·half the widest gap between marks and ties laid over one another "
      "modulo the joints' spacing",
      PLANE),
  AS ("ring.spoke_clear_m",
      SW_RESULT_NUMBER,
      ring.joints.spoke_clear_m,
      "the same for the spokes' tees, joints too",
      PLANE),
};
const guint sw_n_results = G_N_ELEMENTS (sw_results);

const SwResult *
sw_result_find (const char *key)
{
  for (guint i = 0; i < sw_n_results; i++) {
    if (strcmp (sw_results[i].key, key) == 0)
      return &sw_results[i];
  }
  return NULL;
}

static gboolean
is_absent (const SwResult *result, const SwSolution *solution)
{
  gboolean full_white = g_str_has_prefix (result->key, "power.full_white.");
  gboolean power =
    !full_white && g_str_has_prefix (result->key, "power.") && result->type != SW_RESULT_FLAG;

  return (full_white && !solution->power.full_white_feasible) ||
         (power && !solution->power.feasible);
}

double
sw_result_value (const SwResult *result, const SwSolution *solution)
{
  gconstpointer field = (const char *) solution + result->offset;
  double value = NAN;

  if (is_absent (result, solution))
    return NAN;
  switch (result->type) {
  case SW_RESULT_NUMBER:
  case SW_RESULT_COUNT:
    value = *(const double *) field;
    break;
  case SW_RESULT_WHOLE:
  case SW_RESULT_FLAG:
  case SW_RESULT_REASON:
    value = *(const int *) field;
    break;
  }
  return isfinite (value) ? value : NAN; /* a factor over no demand at all does not apply */
}
