// SPDX-License-Identifier: GPL-3.0-or-later
/* working-ring.c: the ring between its ties. Where no short formula is, the answer grows with
 * the strips' pull, so it is solved for a pull of 1 N and multiplied.
 */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define PIPES "data/pipes.json"
#define MODEL "ring-statics: harmonic series, or straight grid elements"

static SwTube
ring_of (const SwSolution *s)
{
  return sw_tube_of (sw_catalogue_pipe (s->catalogue, s->design->stand.ring_pipe));
}

static double
ring_ei_nm2 (const SwSolution *s)
{
  return ring_of (s).ei;
}

static double
ring_gj_nm2 (const SwSolution *s)
{
  return ring_of (s).gj;
}

static double
ring_section_m3 (const SwSolution *s)
{
  return ring_of (s).section_m3;
}

static SwRingAnswer
at_one_newton (const SwSolution *s)
{
  SwStandModel model;

  sw_working_model (&model, s);
  return sw_model_ring (&model, 1);
}

static double
lift_m_per_n (const SwSolution *s)
{
  return at_one_newton (s).lift_m;
}

static double
moment_nm_per_n (const SwSolution *s)
{
  return at_one_newton (s).moment_nm;
}

static double
tie_n_per_n (const SwSolution *s)
{
  return at_one_newton (s).tie_n;
}

static double
bending_sum (const SwSolution *s)
{
  double bending, twist;

  sw_ring_series (s->design->stand.ring_ties, &bending, &twist);
  return bending;
}

static double
twist_sum (const SwSolution *s)
{
  double bending, twist;

  sw_ring_series (s->design->stand.ring_ties, &bending, &twist);
  return twist;
}

static const SwWorkingTerm terms[] = {
  { "ring_ei_nm2",
    ring_ei_nm2,
    0,
    N_ ("the ring's stiffness in bending; E of PVC over a season 1.40 GPa"),
    PIPES "; long-term modulus of PVC" },
  { "ring_gj_nm2",
    ring_gj_nm2,
    0,
    N_ ("the ring's stiffness in twist, E/(2·(1 + ν))·2·I"),
    PIPES },
  { "ring_section_m3", ring_section_m3, 0, N_ ("the ring's section modulus"), PIPES },
  { "bending_sum",
    bending_sum,
    0,
    N_ ("Σ 1/((mK)² − 1)² over odd m: u/4·(u·(1 + tan² u) − tan u), u = π/2K"),
    "Gradshteyn & Ryzhik 1.421" },
  { "twist_sum",
    twist_sum,
    0,
    N_ ("Σ 1/((mK)²·((mK)² − 1)²) over odd m: u/2·(u − tan u) + bending sum"),
    "Gradshteyn & Ryzhik 1.421" },
  { "lift_m_per_n", lift_m_per_n, 0, N_ ("lift at a pull of 1 N a strip"), MODEL },
  { "moment_nm_per_n",
    moment_nm_per_n,
    0,
    N_ ("largest moment at a pull of 1 N a strip"),
    MODEL },
  { "tie_n_per_n", tie_n_per_n, 0, N_ ("largest tie at a pull of 1 N a strip"), MODEL },
};

#define EVEN                                                                                   \
  N_ ("the strips pull evenly all round; ties hold up and down only; the pipe's own weight "   \
      "and its joints are left out")
#define PARTIAL                                                                                \
  N_ ("ties hold up and down only; the pipe's own weight and its joints are left out")
#define BY_PIECES                                                                              \
  N_ (                                                                                         \
    "strip by strip on a whole ring, or grid elements along an arc; solved at a pull of 1 N, " \
    "with which it grows")
#define WINDWARD N_ ("every strip is taken as the windward one")

static const SwWorkingRow rows[] = {
  { .key = "support.ring_lift_m",
    .applies = sw_working_closed,
    .formula = "4·strip_count·tension_n·cos(lean_deg·π/180)/(2·π)·ring_radius_m^3·"
               "(bending_sum/ring_ei_nm2 + twist_sum/ring_gj_nm2)",
    .assumes = EVEN },
  { .key = "support.ring_lift_m",
    .formula = "tension_n·lift_m_per_n",
    .how = BY_PIECES,
    .assumes = PARTIAL },
  { .key = "support.ring_stress_pa",
    .applies = sw_working_closed,
    .formula = "strip_count·tension_n·cos(lean_deg·π/180)/(2·π)·ring_radius_m·(1 − "
               "π/ring_ties/tan(π/ring_ties))/ring_section_m3",
    .assumes = EVEN },
  { .key = "support.ring_stress_pa",
    .formula = "tension_n·moment_nm_per_n/ring_section_m3",
    .how = BY_PIECES,
    .assumes = PARTIAL },
  { .key = "support.ring_tie_n",
    .applies = sw_working_closed,
    .formula = "strip_count·tension_n·cos(lean_deg·π/180)/ring_ties",
    .assumes = EVEN },
  { .key = "support.ring_tie_n",
    .formula = "tension_n·tie_n_per_n",
    .how = BY_PIECES,
    .assumes = PARTIAL },
  { .key = "support.ring_tie_gust_n",
    .formula = "ring_tie_n·strip_tension_n/tension_n",
    .assumes = WINDWARD },
  { .key = "support.ring_stress_gust_pa",
    .formula = "ring_stress_pa·strip_tension_n/tension_n",
    .assumes = WINDWARD },
};

const SwWorkingTable sw_working_ring = { terms,
                                         G_N_ELEMENTS (terms),
                                         rows,
                                         G_N_ELEMENTS (rows) };
