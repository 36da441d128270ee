// SPDX-License-Identifier: GPL-3.0-or-later
/* working-data.c: ports and universes. */
#include "engine/working-table.h"

#include <glib/gi18n.h>

#define FIRST_PORT N_ ("shown for port 1; later ports go on from there")
#define FITS N_ ("a frame that fits exactly fits; the billionth makes up for rounding")

static gboolean
has_own_limit (const SwSolution *s)
{
  return s->design->data.port_pixels_max > 0;
}

static gboolean
has_strip_limit (const SwSolution *s)
{
  return s->design->data.strips_per_port_max > 0;
}

static gboolean
has_lit_star (const SwSolution *s)
{
  return sw_working_has_star (s) && s->design->topper.pixels > 0;
}

static double
own_port_pixels (const SwSolution *s)
{
  return s->design->data.port_pixels_max;
}

static double
full_ports (const SwSolution *s)
{
  return s->design->shape.strip_count / s->data.strips_per_port;
}

static double
strips_left (const SwSolution *s)
{
  return s->design->shape.strip_count % s->data.strips_per_port;
}

static const SwPort *
first_port (const SwSolution *s)
{
  return &g_array_index (s->data.rows, SwPort, 0);
}

static double
first_port_pixels (const SwSolution *s)
{
  return first_port (s)->pixels;
}

static double
last_universe (const SwSolution *s)
{
  return first_port (s)->last_universe;
}

static double
last_strip (const SwSolution *s)
{
  return first_port (s)->last_strip;
}

static double
first_universe (const SwSolution *s)
{
  return first_port (s)->first_universe;
}

static const SwWorkingTerm terms[] = {
  { "first_port_pixels", first_port_pixels, 0, N_ ("lit pixels on port 1"), "data.rows" },
  { "own_port_pixels",
    own_port_pixels,
    0,
    N_ ("a limit of one's own"),
    "data.port_pixels_max" },
  { "full_ports", full_ports, 0, N_ ("ports with as many strips as they take"), "count" },
  { "strips_left", strips_left, 0, N_ ("strips on the last port, if it is not full"), "count" },
};

static const SwWorkingRow rows[] = {
  { .key = "data.port_pixels_max",
    .applies = has_own_limit,
    .formula = "min(own_port_pixels, max(0, floor((1/frame_hz − reset_us/1000000)·"
               "bit_rate_hz/bits_per_pixel + 10^−9)))",
    .assumes = FITS },
  { .key = "data.port_pixels_max",
    .formula =
      "max(0, floor((1/frame_hz − reset_us/1000000)·bit_rate_hz/bits_per_pixel + 10^−9))",
    .assumes = FITS },
  { .key = "data.strips_per_port",
    .applies = has_strip_limit,
    .formula = "max(1, min(strip_count, strips_per_port_max, "
               "floor((port_pixels_max − skipped_pixels)/strip.pixels)))" },
  { .key = "data.strips_per_port",
    .formula =
      "max(1, min(strip_count, floor((port_pixels_max − skipped_pixels)/strip.pixels)))" },
  { .key = "data.ports",
    .applies = has_lit_star,
    .formula = "ceil(strip_count/strips_per_port) + 1" },
  { .key = "data.ports", .formula = "ceil(strip_count/strips_per_port)" },
  { .key = "data.universes",
    .applies = has_lit_star,
    .formula =
      "full_ports·ceil((strips_per_port·strip.pixels + skipped_pixels)/pixels_per_universe) + "
      "min(1, strips_left)·ceil((strips_left·strip.pixels + "
      "skipped_pixels)/pixels_per_universe) + "
      "ceil((topper.pixels + skipped_pixels)/pixels_per_universe)" },
  { .key = "data.universes",
    .formula =
      "full_ports·ceil((strips_per_port·strip.pixels + skipped_pixels)/pixels_per_universe) + "
      "min(1, strips_left)·ceil((strips_left·strip.pixels + "
      "skipped_pixels)/pixels_per_universe)" },
  { "data.rows.last_strip", NULL, "strips_per_port", FIRST_PORT, NULL, last_strip },
  { "data.rows.pixels",
    NULL,
    "strips_per_port·strip.pixels",
    FIRST_PORT,
    NULL,
    first_port_pixels },
  { "data.rows.first_universe", NULL, "data.first_universe", FIRST_PORT, NULL, first_universe },
  { "data.rows.last_universe",
    NULL,
    "first_universe + ceil((first_port_pixels + skipped_pixels)/pixels_per_universe) − 1",
    N_ ("shown for port 1; each port begins a new universe"),
    NULL,
    last_universe },
};

const SwWorkingTable sw_working_data = { terms,
                                         G_N_ELEMENTS (terms),
                                         rows,
                                         G_N_ELEMENTS (rows) };
