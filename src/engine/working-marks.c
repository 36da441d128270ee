// SPDX-License-Identifier: GPL-3.0-or-later
/* working-marks.c: the lists, a row a strip: shown for strip 2, where the list begins to move.
 */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define SHOWN N_ ("shown for strip 2; for another strip put its number in")
#define SHOWN_2 1 /* its place in the lists */

static double
azimuth_deg (const SwSolution *s)
{
  return g_array_index (s->marks, SwRingMark, SHOWN_2).azimuth_deg;
}

static double
arc_m (const SwSolution *s)
{
  return g_array_index (s->marks, SwRingMark, SHOWN_2).arc_m;
}

/* Strip 1 has a chord, however few there are. */
static double
chord_m (const SwSolution *s)
{
  return g_array_index (s->marks, SwRingMark, 0).chord_m;
}

static double
hole_x_m (const SwSolution *s)
{
  return g_array_index (s->crown, SwHole, SHOWN_2).x_m;
}

static double
hole_y_m (const SwSolution *s)
{
  return g_array_index (s->crown, SwHole, SHOWN_2).y_m;
}

static double
ring_od_m (const SwSolution *s)
{
  return s->ring_od_m;
}

static const SwAsBuiltMark *
built (const SwSolution *s)
{
  return &g_array_index (s->as_built->marks, SwAsBuiltMark, SHOWN_2);
}

static double
perimeter_m (const SwSolution *s)
{
  return s->as_built == NULL ? NAN : s->as_built->perimeter_m;
}

static double
built_arc_m (const SwSolution *s)
{
  return s->as_built == NULL ? NAN : built (s)->arc_m;
}

static double
built_azimuth_deg (const SwSolution *s)
{
  return s->as_built == NULL ? NAN : built (s)->azimuth_deg;
}

static double
built_radius_m (const SwSolution *s)
{
  return s->as_built == NULL ? NAN : built (s)->radius_m;
}

static double
built_slant_m (const SwSolution *s)
{
  return s->as_built == NULL ? NAN : built (s)->slant_m;
}

static double
built_tail_m (const SwSolution *s)
{
  return s->as_built == NULL ? NAN : built (s)->tail_m;
}

/* From the first mark of an open tree to its last. */
static double
shared_m (const SwSolution *s)
{
  const GArray *marks = s->as_built->marks;

  return g_array_index (marks, SwAsBuiltMark, marks->len - 1).arc_m;
}

static gboolean
by_points (const SwSolution *s)
{
  return s->design->as_built.ring_points->len >= 4;
}

static gboolean
by_length (const SwSolution *s)
{
  return s->design->as_built.ring_length_m > 0;
}

static double
mean_radius_m (const SwSolution *s)
{
  return perimeter_m (s) / (2 * G_PI);
}

static gboolean
by_circle (const SwSolution *s)
{
  return !by_points (s);
}

static const SwWorkingTerm terms[] = {
  { "strip", NULL, 2, N_ ("number of the strip that is shown"), "count" },
  { "ring_od_m", ring_od_m, 0, N_ ("outside of the ring pipe"), "data/pipes.json" },
  { "azimuth_deg", azimuth_deg, 0, N_ ("azimuth of that strip"), "the list of marks" },
  { "built_mean_m",
    mean_radius_m,
    0,
    N_ ("mean over the azimuth of √(ρ² + ρ′²), ρ the measured radius; numerically integrated"),
    "Gauss–Legendre quadrature of the periodic spline" },
  { "built_perimeter_m", perimeter_m, 0, N_ ("length round the ring as built"), "as_built" },
  { "built_shared_m",
    shared_m,
    0,
    N_ ("length along the ring as built from the first strip to the last; numerically "
        "integrated"),
    "Gauss–Legendre quadrature" },
  { "built_azimuth_deg", built_azimuth_deg, 0, N_ ("azimuth of that strip's tie"), "as_built" },
  { "built_radius_m", built_radius_m, 0, N_ ("outer face of the ring there"), "as_built" },
  { "built_slant_m", built_slant_m, 0, N_ ("hook to tie of that strip, as built"), "as_built" },
};

static const SwWorkingRow rows[] = {
  { "marks.azimuth_deg",
    sw_working_closed,
    "facing_deg + 180 + (strip − 1)·360/strip_count − 360·floor((facing_deg + 180 + "
    "(strip − 1)·360/strip_count)/360)",
    SHOWN,
    NULL,
    azimuth_deg },
  { "marks.azimuth_deg",
    NULL,
    "facing_deg − coverage_deg/2 + (strip − 1)·coverage_deg/(strip_count − 1) − "
    "360·floor((facing_deg − coverage_deg/2 + (strip − 1)·coverage_deg/(strip_count − 1))/360)",
    SHOWN,
    NULL,
    azimuth_deg },
  { "marks.arc_m",
    sw_working_closed,
    "(ring_radius_m + ring_od_m/2)·(strip − 1)·coverage_deg/strip_count·π/180",
    SHOWN,
    NULL,
    arc_m },
  { "marks.arc_m",
    NULL,
    "(ring_radius_m + ring_od_m/2)·(strip − 1)·coverage_deg/(strip_count − 1)·π/180",
    SHOWN,
    NULL,
    arc_m },
  { "marks.chord_m",
    sw_working_closed,
    "2·(ring_radius_m + ring_od_m/2)·sin(coverage_deg/strip_count·π/360)",
    N_ ("the same between any two neighbours"),
    NULL,
    chord_m },
  { "marks.chord_m",
    NULL,
    "2·(ring_radius_m + ring_od_m/2)·sin(coverage_deg/(strip_count − 1)·π/360)",
    N_ ("the same between any two neighbours"),
    NULL,
    chord_m },
  { "crown.x_m",
    NULL,
    "(crown_radius_m − hook_reach_m)·sin(azimuth_deg·π/180)",
    SHOWN,
    NULL,
    hole_x_m },
  { "crown.y_m",
    NULL,
    "−(crown_radius_m − hook_reach_m)·cos(azimuth_deg·π/180)",
    SHOWN,
    NULL,
    hole_y_m },
  { "as_built.perimeter_m",
    by_points,
    "2·π·built_mean_m",
    N_ ("the mean is numerically integrated over the spline through the measured points"),
    N_ ("the ring runs smoothly between the points"),
    perimeter_m },
  { "as_built.perimeter_m",
    by_length,
    "ring_length_m",
    NULL,
    N_ ("the ring is a circle"),
    perimeter_m },
  { "as_built.perimeter_m",
    NULL,
    "2·π·(ring_radius_m + ring_od_m/2)",
    NULL,
    N_ ("the ring is as designed: only the crown was measured"),
    perimeter_m },
  { "as_built.marks.arc_m",
    sw_working_closed,
    "built_perimeter_m·(strip − 1)/strip_count",
    SHOWN,
    NULL,
    built_arc_m },
  { "as_built.marks.arc_m",
    NULL,
    "built_shared_m·(strip − 1)/(strip_count − 1)",
    SHOWN,
    NULL,
    built_arc_m },
  { "as_built.marks.azimuth_deg",
    by_circle,
    "azimuth_deg",
    SHOWN,
    N_ ("on a circle equal lengths are equal angles"),
    built_azimuth_deg },
  { "as_built.marks.azimuth_deg",
    NULL,
    NULL,
    N_ ("no formula: the spline through the measured points is followed until its length is "
        "arc_m"),
    NULL,
    built_azimuth_deg },
  { "as_built.marks.radius_m",
    by_circle,
    "built_perimeter_m/(2·π)",
    SHOWN,
    N_ ("the ring is a circle"),
    built_radius_m },
  { "as_built.marks.radius_m",
    NULL,
    NULL,
    N_ ("no formula: read off the spline through the measured points"),
    NULL,
    built_radius_m },
  { "as_built.marks.slant_m",
    NULL,
    "√((crown_radius_m·sin(azimuth_deg·π/180) + crown_offset_x_m − (built_radius_m − "
    "ring_od_m/2)·sin(built_azimuth_deg·π/180))^2 + (crown_offset_y_m − "
    "crown_radius_m·cos(azimuth_deg·π/180) + (built_radius_m − "
    "ring_od_m/2)·cos(built_azimuth_deg·π/180))^2 + (crown_height_m − ring_height_m)^2)",
    SHOWN,
    N_ ("the hook keeps its design azimuth, the crown its design height"),
    built_slant_m },
  { "as_built.marks.tail_m",
    NULL,
    "built_slant_m − strip.lead_m − run_m",
    SHOWN,
    NULL,
    built_tail_m },
};

const SwWorkingTable sw_working_marks = { terms,
                                          G_N_ELEMENTS (terms),
                                          rows,
                                          G_N_ELEMENTS (rows) };
