// SPDX-License-Identifier: GPL-3.0-or-later
/* working-pipe.c: the ring pipe in its own plane, over the years, in pieces, through a door. */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define MATERIALS "handbook values, tube.h; PVC by ASTM D1784 and AASHTO LRFD 12.12.3.3"
#define LISTED "geometry of marks, ties, joints and spokes"
#define LAST_JOINT N_ ("shown for the last joint; for another put its number in")
#define LAST_PIECE N_ ("shown for the last piece")
#define LAST_SPOKE N_ ("shown for the last spoke; for another put its number in")

static const SwPipe *
pipe_of (const SwSolution *s)
{
  return sw_catalogue_pipe (s->catalogue, s->design->stand.ring_pipe);
}

static gboolean
is_arc (const SwSolution *s)
{
  return sw_ring_is_arc (s->design);
}

static gboolean
is_free_arc (const SwSolution *s)
{
  return is_arc (s) && s->design->stand.ring_ties < 2;
}

static double
ring_span_deg (const SwSolution *s)
{
  return is_arc (s) ? s->design->shape.coverage_deg : 360;
}

#define OF_MATERIAL(name)                                                                      \
  static double name##_pa (const SwSolution *s)                                                \
  {                                                                                            \
    return sw_material_##name (pipe_of (s)->material);                                         \
  }

OF_MATERIAL (modulus)
OF_MATERIAL (modulus_short)
OF_MATERIAL (modulus_years)

static double
growth_per_k (const SwSolution *s)
{
  return sw_material_growth_per_k (pipe_of (s)->material);
}

static double
joints_count (const SwSolution *s)
{
  return s->ring.joints.count;
}

static double
ring_pieces (const SwSolution *s)
{
  return s->ring.joints.parts;
}

static double
joint_first_deg (const SwSolution *s)
{
  return s->ring.joints.first_deg;
}

static double
joint_moved_m (const SwSolution *s)
{
  const SwRingJoints *joints = &s->ring.joints;

  return s->design->stand.ring_sections > 1 ? fabs (joints->first_m - joints->part_m) : 0;
}

static double
piece_turned_m (const SwSolution *s)
{
  return s->ring.joints.part_m - s->ring.joints.last_m;
}

static double
strip_1_deg (const SwSolution *s)
{
  return sw_cone_azimuth_deg (&s->design->shape, 1);
}

static gboolean
has_joints (const SwSolution *s)
{
  return s->ring.joints.count > 0;
}

static double
joint_azimuth_deg (const SwSolution *s)
{
  const SwRingJoints *joints = &s->ring.joints;

  return has_joints (s) ? sw_ring_joint_azimuth_deg (joints, joints->count) : NAN;
}

static double
joint_arc_m (const SwSolution *s)
{
  const SwRingJoints *joints = &s->ring.joints;

  return has_joints (s)
           ? sw_ring_joint_arc_m (joints, joints->count, s->design, pipe_of (s)->od_m)
           : NAN;
}

static double
piece_m (const SwSolution *s)
{
  const SwRingJoints *joints = &s->ring.joints;

  return joints->parts > 0 ? sw_ring_piece_m (joints, joints->parts) : NAN;
}

static double
spoke_azimuth_deg (const SwSolution *s)
{
  const SwRingJoints *joints = &s->ring.joints;

  return joints->spokes > 0 ? sw_ring_spoke_azimuth_deg (joints, joints->spokes) : NAN;
}

static double
spoke_first_deg (const SwSolution *s)
{
  return s->ring.joints.spoke_first_deg;
}

static double
apart_deg (double a_deg, double b_deg)
{
  return fabs (remainder (a_deg - b_deg, 360));
}

/* From a place to the nearest mark or tie. */
static double
nearest_deg (const SwSolution *s, double at_deg)
{
  const SwDesign *design = s->design;
  double nearest = 180;

  for (int strip = 1; strip <= design->shape.strip_count; strip++)
    nearest = MIN (nearest, apart_deg (sw_cone_azimuth_deg (&design->shape, strip), at_deg));
  for (int tie = 1; tie <= design->stand.ring_ties; tie++)
    nearest = MIN (nearest, apart_deg (sw_ring_tie_azimuth_deg (design, tie), at_deg));
  return nearest;
}

static double
joint_clear_deg (const SwSolution *s)
{
  const SwRingJoints *joints = &s->ring.joints;
  double nearest = is_arc (s) ? 180 : joints->step_deg / 2;

  for (int joint = 1; joint <= joints->count; joint++)
    nearest = MIN (nearest, nearest_deg (s, sw_ring_joint_azimuth_deg (joints, joint)));
  return nearest;
}

static double
spoke_clear_deg (const SwSolution *s)
{
  const SwRingJoints *joints = &s->ring.joints;
  double nearest = joints->spoke_step_deg / 2;

  for (int spoke = 1; spoke <= joints->spokes; spoke++) {
    double at_deg = sw_ring_spoke_azimuth_deg (joints, spoke);
    nearest = MIN (nearest, nearest_deg (s, at_deg));
    for (int joint = 1; joint <= joints->count; joint++)
      nearest = MIN (nearest, apart_deg (sw_ring_joint_azimuth_deg (joints, joint), at_deg));
  }
  return nearest;
}

/* A section of more than half a ring is as wide as the ring at its widest. */
static gboolean
is_over_half (const SwSolution *s)
{
  double moved_deg = joint_moved_m (s) / s->design->shape.ring_radius_m * 180 / G_PI;

  return ring_span_deg (s) / s->design->stand.ring_sections + moved_deg >= 180;
}

static gboolean
door_takes_half (const SwSolution *s)
{
  const SwDesign *design = s->design;

  return design->site.door_m >= design->shape.ring_radius_m + s->ring_od_m / 2;
}

static gboolean
needs_three_ties (const SwSolution *s)
{
  return s->ring.fewest_ties <= 3;
}

static double
one_tie_fewer (const SwSolution *s)
{
  return s->ring.fewest_ties - 1;
}

static double
fewer_lift_m (const SwSolution *s)
{
  SwTube tube = sw_tube_of (pipe_of (s));

  return sw_ring_load_answer (s->design,
                              &s->cone,
                              &tube,
                              (int) s->ring.fewest_ties - 1,
                              s->design->strip.tension_n)
    .lift_m;
}

static const SwWorkingTerm terms[] = {
  { "ring_span_deg",
    ring_span_deg,
    0,
    N_ ("how far round the pipe goes: 360, or an arc's coverage"),
    "stand.ring_span, shape.coverage_deg" },
  { "season_pa", modulus_pa, 0, N_ ("E of the pipe over a season"), MATERIALS },
  { "fresh_pa", modulus_short_pa, 0, N_ ("E of the pipe for a short while"), MATERIALS },
  { "years_pa", modulus_years_pa, 0, N_ ("E of the pipe after fifty years"), MATERIALS },
  { "growth_per_k", growth_per_k, 0, N_ ("growth with warmth, a kelvin"), MATERIALS },
  { "colder_k", NULL, SW_RING_COLDER_K, N_ ("from a workshop to a cold night"), "own choice" },
  { "joints_count", joints_count, 0, N_ ("joints of the ring pipe"), "the cut list" },
  { "ring_pieces", ring_pieces, 0, N_ ("pieces of the ring pipe"), "the cut list" },
  { "joint_first_deg",
    joint_first_deg,
    0,
    N_ ("azimuth of joint 1, turned to where marks and ties are farthest"),
    "midway in the widest gap of marks and ties laid over one another" },
  { "joint_moved_m",
    joint_moved_m,
    0,
    N_ ("by how much an arc's joints were moved, which makes a section longer"),
    LISTED },
  { "piece_turned_m",
    piece_turned_m,
    0,
    N_ ("what an arc's last piece gives to its first"),
    LISTED },
  { "strip_1_deg", strip_1_deg, 0, N_ ("azimuth of strip 1"), "the list of marks" },
  { "joint_azimuth_deg", joint_azimuth_deg, 0, N_ ("azimuth of that joint"), LISTED },
  { "spoke_first_deg",
    spoke_first_deg,
    0,
    N_ ("azimuth of spoke 1, turned to where marks, ties and joints are farthest"),
    "midway in the widest gap of all laid over one another" },
  { "joint_clear_deg",
    joint_clear_deg,
    0,
    N_ ("from a joint to the nearest mark or tie, at most half way to the next joint"),
    LISTED },
  { "spoke_clear_deg",
    spoke_clear_deg,
    0,
    N_ ("from a spoke to the nearest mark, tie or joint, at most half way to the next spoke"),
    LISTED },
  { "one_tie_fewer", one_tie_fewer, 0, N_ ("one tie fewer"), "count" },
  { "fewer_lift_m",
    fewer_lift_m,
    0,
    N_ ("lift with one tie fewer"),
    "ring-statics: harmonic series, or straight grid elements" },
};

#define WINDWARD N_ ("every strip is taken as the windward one")
#define STIFF N_ ("ties hold sideways, the ring stiff against them")
#define SOFTEST                                                                                \
  N_ ("spokes are pinned and hold in their direction only; an odd one is not counted")
#define FRESH N_ ("a gust gives plastic no time to creep; ties, two a wave, hold sideways")

static const SwWorkingRow rows[] = {
  { .key = "ring.inward_n_per_m",
    .formula = "strip_count·tension_n·sin(lean_deg·π/180)/(ring_radius_m·coverage_deg·π/180)",
    .assumes = N_ ("the strips' pull is smeared along the pipe") },
  { .key = "ring.tie_side_n",
    .applies = is_arc,
    .formula = "abs(inward_n_per_m)·ring_radius_m·coverage_deg·π/180/(ring_ties − 1)",
    .assumes = STIFF },
  { .key = "ring.tie_side_n", .formula = "side_pull_n/ring_ties", .assumes = STIFF },
  { .key = "ring.tie_side_gust_n",
    .formula = "tie_side_n·strip_tension_n/tension_n",
    .assumes = WINDWARD },
  { .key = "ring.hoop_n", .formula = "inward_n_per_m·ring_radius_m" },
  { .key = "ring.waves", .applies = is_free_arc, .formula = "1" },
  { .key = "ring.waves",
    .applies = is_arc,
    .formula = "max(1, 180·(ring_ties − 1)/coverage_deg)" },
  { .key = "ring.waves", .formula = "max(2, floor(ring_spokes/2))", .assumes = SOFTEST },
  { .key = "ring.plane_stiffness_pa",
    .formula = "(waves^2 − 1)^2·ring_ei_nm2/ring_radius_m^4" },
  { .key = "ring.buckling_n_per_m", .formula = "(waves^2 − 1)·ring_ei_nm2/ring_radius_m^3" },
  { .key = "ring.buckling_factor", .formula = "buckling_n_per_m/inward_n_per_m" },
  { .key = "ring.buckling_gust_factor",
    .applies = is_arc,
    .formula = "buckling_n_per_m/inward_n_per_m·tension_n/strip_tension_n·fresh_pa/season_pa",
    .assumes = FRESH },
  { .key = "ring.buckling_gust_factor",
    .formula = "(max(2, floor(max(ring_spokes, ring_ties)/2))^2 − 1)·ring_ei_nm2/"
               "ring_radius_m^3/inward_n_per_m·tension_n/strip_tension_n·fresh_pa/season_pa",
    .assumes = FRESH },
  { .key = "ring.cold_strain", .formula = "ring_od_m/(2·ring_radius_m)" },
  { .key = "ring.cold_radius_m", .formula = "300·ring_od_m" },
  { .key = "ring.lift_fresh_m", .formula = "ring_lift_m·season_pa/fresh_pa" },
  { .key = "ring.lift_years_m", .formula = "ring_lift_m·season_pa/years_pa" },
  { .key = "ring.shrink_m",
    .formula = "growth_per_k·colder_k·ring_radius_m·ring_span_deg·π/180" },
  { .key = "ring.shrink_radius_m",
    .formula = "growth_per_k·colder_k·ring_radius_m",
    .assumes = N_ ("the joints are glued or pinned") },
  { .key = "ring.joint_gap_m",
    .formula = "shrink_m/joints_count",
    .assumes = N_ ("every joint can slide, and all share evenly") },
  { .key = "ring.section_width_m",
    .applies = is_over_half,
    .formula = "(ring_radius_m + ring_od_m/2)·(1 − cos(min(ring_span_deg/ring_sections + "
               "joint_moved_m/ring_radius_m·180/π, 360)·π/360))" },
  { .key = "ring.section_width_m",
    .formula = "ring_radius_m + ring_od_m/2 − (ring_radius_m − ring_od_m/2)·"
               "cos((ring_span_deg/ring_sections + joint_moved_m/ring_radius_m·180/π)·π/360)",
    .assumes = N_ ("carried along its chord") },
  { .key = "ring.sections_for_door",
    .applies = door_takes_half,
    .formula = "ceil(ring_span_deg·π/360/acos(max(−1, (ring_radius_m + ring_od_m/2 − door_m − "
               "10^−9)/(ring_radius_m + ring_od_m/2))))",
    .assumes = N_ ("a door as wide as the half ring takes more than a half") },
  { .key = "ring.sections_for_door",
    .formula = "ceil(ring_span_deg·π/360/acos((ring_radius_m + ring_od_m/2 − door_m − "
               "10^−9)/(ring_radius_m − ring_od_m/2)))",
    .assumes = N_ ("sections are equal, and carried along their chord") },
  { .key = "ring.fewest_ties",
    .applies = needs_three_ties,
    .formula = "3",
    .assumes = N_ ("fewer do not hold a ring level") },
  { .key = "ring.fewest_ties",
    .formula = "one_tie_fewer + count(0.010, fewer_lift_m)",
    .how = N_ ("each number of ties solved; one more is needed, as without it the ring still "
               "lifts more than 10 mm") },
  { .key = "ring.joint_clear_m",
    .formula = "(ring_radius_m + ring_od_m/2)·joint_clear_deg·π/180",
    .how = N_ ("every joint against every mark and tie") },
  { .key = "ring.spoke_clear_m",
    .formula = "(ring_radius_m + ring_od_m/2)·spoke_clear_deg·π/180",
    .how = N_ ("every spoke against every mark, tie and joint") },

  { "ring.joints.azimuth_deg",
    NULL,
    "joint_first_deg + (joints_count − 1)·ring_span_deg/ring_pieces − "
    "360·floor((joint_first_deg + (joints_count − 1)·ring_span_deg/ring_pieces)/360)",
    LAST_JOINT,
    NULL,
    joint_azimuth_deg },
  { "ring.joints.arc_m",
    NULL,
    "(ring_radius_m + ring_od_m/2)·(joint_azimuth_deg − strip_1_deg − "
    "360·floor((joint_azimuth_deg − strip_1_deg)/360))·π/180",
    LAST_JOINT,
    NULL,
    joint_arc_m },
  { "ring.pieces.length_m",
    NULL,
    "ring_radius_m·ring_span_deg·π/180/ring_pieces − piece_turned_m",
    LAST_PIECE,
    N_ ("measured along the pipe's middle"),
    piece_m },
  { "ring.spokes.azimuth_deg",
    NULL,
    "spoke_first_deg + (ring_spokes − 1)·ring_span_deg/ring_spokes − "
    "360·floor((spoke_first_deg + (ring_spokes − 1)·ring_span_deg/ring_spokes)/360)",
    LAST_SPOKE,
    NULL,
    spoke_azimuth_deg },
};

const SwWorkingTable sw_working_pipe = { terms,
                                         G_N_ELEMENTS (terms),
                                         rows,
                                         G_N_ELEMENTS (rows) };
