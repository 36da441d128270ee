// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring.h"

#include "engine/cuts.h"
#include "engine/design-keys.h"

#include <math.h>

#define ROUNDING 1e-9

/* The middle stands proud of the chord, the ends' inner corners bound the other side; past a
 * half ring the ends' outer corners do. */
double
sw_ring_section_width_m (double radius_m, double od_m, double angle_deg)
{
  double end = cos (MIN (angle_deg, 360) * G_PI / 360);
  double outer_m = radius_m + od_m / 2, inner_m = radius_m - od_m / 2;

  return outer_m - end * (end > 0 ? inner_m : outer_m);
}

double
sw_ring_joint_room_m (double pipe_od_m)
{
  return MAX (pipe_od_m, 0.022);
}

static double
span_deg (const SwDesign *design)
{
  return sw_ring_is_arc (design) ? design->shape.coverage_deg : 360;
}

typedef struct {
  const SwDesign *design;
  const SwCone *cone;
  const SwSupport *support;
  const SwPipe *pipe;
  SwTube tube;
} Case;

/* Inward, over the part of the ring where the strips stand. */
static double
inward_n_per_m (const Case *c)
{
  const SwShape *shape = &c->design->shape;
  double pull_n =
    shape->strip_count * c->design->strip.tension_n * sin (c->cone->lean_deg * G_PI / 180);

  return pull_n / (shape->ring_radius_m * shape->coverage_deg * G_PI / 180);
}

/* What a gust does to the factor: more pull of every strip, but no time to creep. */
static double
gust_share (const Case *c)
{
  SwMaterial material = c->pipe->material;

  return c->design->strip.tension_n / c->support->strip_tension_n *
         sw_material_modulus_short (material) / sw_material_modulus (material);
}

/* An evenly pulled whole ring carries it as hoop thrust; so does an arc between its ties. In a
 * gust, when the pull is least even, the ties are counted on to hold the pipe sideways. */
static void
set_plane (SwRing *ring, const Case *c)
{
  const SwShape *shape = &c->design->shape;
  const SwStand *stand = &c->design->stand;
  gboolean arc = sw_ring_is_arc (c->design);
  double waves = arc ? sw_arc_waves (shape->coverage_deg, stand->ring_ties)
                     : sw_ring_waves (stand->ring_spokes);
  double tied = arc ? waves : sw_ring_waves (MAX (stand->ring_spokes, stand->ring_ties));
  SwRingPlane plane = { shape->ring_radius_m, c->tube.ei, waves };
  SwRingPlane in_gust = { shape->ring_radius_m, c->tube.ei, tied };

  ring->waves = waves;
  ring->plane_stiffness_pa = sw_ring_plane_stiffness (&plane);
  ring->buckling_n_per_m = sw_ring_plane_buckling (&plane);
  ring->inward_n_per_m = inward_n_per_m (c);
  ring->hoop_n = ring->inward_n_per_m * shape->ring_radius_m;
  if (!(ring->inward_n_per_m > 0))
    return;
  ring->buckling_factor = ring->buckling_n_per_m / ring->inward_n_per_m;
  ring->buckling_gust_factor =
    sw_ring_plane_buckling (&in_gust) / ring->inward_n_per_m * gust_share (c);
}

/* A full tree's ring carries the inward pull itself. An arc hands each tie the pull of a bay; a
 * whole ring under a partial tree, stiff against its ties, shares its strips' sum evenly. */
static void
set_tie_side (SwRing *ring, const Case *c)
{
  const SwShape *shape = &c->design->shape;
  int ties = c->design->stand.ring_ties;

  if (shape->coverage_deg >= 360 || ties < 2)
    return;
  if (sw_ring_is_arc (c->design))
    ring->tie_side_n = fabs (ring->inward_n_per_m) * sw_ring_length_m (c->design) / (ties - 1);
  else
    ring->tie_side_n = c->support->side_pull_n / ties;
  ring->tie_side_gust_n =
    ring->tie_side_n * c->support->strip_tension_n / c->design->strip.tension_n;
}

static void
set_creep (SwRing *ring, const Case *c)
{
  double season = sw_material_modulus (c->pipe->material);

  ring->cold_strain = c->pipe->od_m / (2 * c->design->shape.ring_radius_m);
  if (c->pipe->material != SW_MATERIAL_PVC)
    return;
  ring->cold_radius_m = SW_RING_COLD_RADII * c->pipe->od_m;
  ring->lift_fresh_m =
    c->support->ring_lift_m * season / sw_material_modulus_short (c->pipe->material);
  ring->lift_years_m =
    c->support->ring_lift_m * season / sw_material_modulus_years (c->pipe->material);
}

static void
set_warmth (SwRing *ring, const Case *c)
{
  double strain = sw_material_growth_per_k (c->pipe->material) * SW_RING_COLDER_K;

  ring->shrink_m = strain * sw_ring_length_m (c->design);
  if (!sw_ring_is_arc (c->design))
    ring->shrink_radius_m = strain * c->design->shape.ring_radius_m;
  if (ring->joints.count > 0)
    ring->joint_gap_m = ring->shrink_m / ring->joints.count;
}

/* An arc's first section is longer by what its joints were moved. */
static double
section_deg (const Case *c, const SwRingJoints *joints, int sections)
{
  double moved_m = sections > 1 ? fabs (joints->first_m - joints->part_m) : 0;

  return span_deg (c->design) / sections +
         moved_m / c->design->shape.ring_radius_m * 180 / G_PI;
}

static void
set_door (SwRing *ring, const Case *c)
{
  const SwDesign *design = c->design;
  double radius_m = design->shape.ring_radius_m, od_m = c->pipe->od_m;
  double door_m = design->site.door_m;
  int most = (int) sw_key_find ("stand.ring_sections")->high;

  ring->section_width_m =
    sw_ring_section_width_m (radius_m,
                             od_m,
                             section_deg (c, &ring->joints, design->stand.ring_sections));
  for (int sections = 1; door_m > 0 && sections <= most; sections++) {
    double angle_deg = span_deg (design) / sections;
    if (sw_ring_section_width_m (radius_m, od_m, angle_deg) > door_m + ROUNDING)
      continue;
    ring->sections_for_door = sections;
    return;
  }
}

static void
set_joints (SwRing *ring, const Case *c, const SwCatalogue *catalogue)
{
  SwRuns runs;

  sw_runs_init (&runs, c->design, catalogue);
  ring->joints = runs.ring_joints;
}

void
sw_ring_init (SwRing *ring,
              const SwDesign *design,
              const SwCone *cone,
              const SwSupport *support,
              const SwCatalogue *catalogue)
{
  const SwPipe *pipe = sw_catalogue_pipe (catalogue, design->stand.ring_pipe);
  Case c = { design, cone, support, pipe, sw_tube_of (pipe) };

  *ring = (SwRing){ NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN,
                    NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, NAN, { 0 } };
  if (pipe == NULL)
    return;
  set_joints (ring, &c, catalogue);
  set_plane (ring, &c);
  set_tie_side (ring, &c);
  set_creep (ring, &c);
  set_warmth (ring, &c);
  set_door (ring, &c);
}

static gboolean
holds_level (const Case *c, int ties)
{
  return sw_ring_load_is_level (c->design, c->cone, &c->tube, ties, SW_RING_LIFT_MOST_M);
}

/* Twice the ties keep every one that was there and never lift more; between, a whole ring under
 * a partial tree may lift more with one tie more, so each number is tried. */
double
sw_ring_fewest_ties (const SwDesign *design, const SwCone *cone, const SwCatalogue *catalogue)
{
  const SwPipe *pipe = sw_catalogue_pipe (catalogue, design->stand.ring_pipe);
  Case c = { design, cone, NULL, pipe, sw_tube_of (pipe) };
  int high = 3, low = 2;

  while (pipe != NULL && high <= SW_RING_MOST_TIES && !holds_level (&c, high)) {
    low = high;
    high *= 2;
  }
  if (pipe == NULL || high > SW_RING_MOST_TIES)
    return NAN;
  for (int ties = low + 1; ties < high; ties++) {
    if (holds_level (&c, ties))
      return ties;
  }
  return high;
}
