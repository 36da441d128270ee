// SPDX-License-Identifier: GPL-3.0-or-later
/* working-shape.c: the cone in numbers. */
#include "engine/working-table.h"

#include <glib/gi18n.h>

#define STAR N_ ("a star stands on its stub, on the crown")

static const SwWorkingRow rows[] = {
  { .key = "geometry.slant_m",
    .formula = "√((crown_height_m − ring_height_m)^2 + (ring_radius_m − crown_radius_m)^2)" },
  { .key = "geometry.lean_deg",
    .formula =
      "atan((ring_radius_m − crown_radius_m)/(crown_height_m − ring_height_m))·180/π" },
  { .key = "geometry.run_m", .formula = "(strip.pixels − 1)·pitch_m" },
  { .key = "geometry.tail_m", .formula = "slant_m − strip.lead_m − run_m" },
  { .key = "geometry.circumference_m", .formula = "2·π·ring_radius_m" },
  { .key = "geometry.spacing_ring_m",
    .applies = sw_working_closed,
    .formula = "coverage_deg·π/180·ring_radius_m/strip_count" },
  { .key = "geometry.spacing_ring_m",
    .formula = "coverage_deg·π/180·ring_radius_m/(strip_count − 1)" },
  { .key = "geometry.chord_ring_m",
    .applies = sw_working_closed,
    .formula = "2·ring_radius_m·sin(coverage_deg·π/360/strip_count)" },
  { .key = "geometry.chord_ring_m",
    .formula = "2·ring_radius_m·sin(coverage_deg·π/360/(strip_count − 1))" },
  { .key = "geometry.spacing_crown_m",
    .applies = sw_working_closed,
    .formula = "coverage_deg·π/180·crown_radius_m/strip_count" },
  { .key = "geometry.spacing_crown_m",
    .formula = "coverage_deg·π/180·crown_radius_m/(strip_count − 1)" },
  { .key = "geometry.strip_pixels_total", .formula = "strip_count·strip.pixels" },
  { .key = "geometry.pixels_total",
    .applies = sw_working_has_star,
    .formula = "strip_pixels_total + topper.pixels" },
  { .key = "geometry.pixels_total", .formula = "strip_pixels_total" },
  { .key = "geometry.overall_height_m",
    .applies = sw_working_has_star,
    .formula = "crown_height_m + topper.stub_m + topper.height_m",
    .assumes = STAR },
  { .key = "geometry.overall_height_m", .formula = "crown_height_m" },
};

const SwWorkingTable sw_working_shape = { NULL, 0, rows, G_N_ELEMENTS (rows) };
