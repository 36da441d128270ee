// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/foot-build.h"

#include <math.h>

#define ARMS 4
#define BUCKET_M3 0.018927  /* 1155 in³ */
#define BUCKET_DEEP_M 0.362 /* 14 to 14.5 in, as pails are sold */
#define EDGE_DIAMETERS 1.5  /* NDS 2018 table 12.5.1C, along the grain */
#define LEAST 1e-9

static double
whole (double amount)
{
  return ceil (amount - LEAST);
}

static void
init_boards (SwFootBuild *foot, const SwDesign *design, const SwHeightChain *heights)
{
  const SwBoard *board = heights->board;

  foot->lap_depth_m = foot->lap_width_m = foot->lap_start_m = NAN;
  if (board == NULL)
    return;
  foot->lap_depth_m = board->thickness_m / 2;
  foot->lap_width_m = board->width_m;
  foot->lap_start_m = MAX (0, design->stand.arm_m - board->width_m / 2);
}

/* The flange is turned so that its bolts stand on the lap's diagonals. */
static void
init_bolts (SwFootBuild *foot, const SwFittings *fittings, const SwHeightChain *heights)
{
  const SwFitting *flange = fittings->sleeve_foot.flange;

  foot->bolt_off_m = foot->bolt_edge_m = foot->bolt_edge_least_m = NAN;
  if (flange == NULL || heights->board == NULL)
    return;
  foot->bolt_off_m = flange->circle_m / 2 / G_SQRT2;
  foot->bolt_edge_m = heights->board->width_m / 2 - foot->bolt_off_m;
  foot->bolt_edge_least_m = EDGE_DIAMETERS * flange->bolt_m;
}

static double
goods_mass_kg (const SwCatalogue *catalogue, const char *id)
{
  const SwGoods *goods = sw_catalogue_goods (catalogue, id);

  return goods == NULL || goods->mass_kg <= 0 ? INFINITY : goods->mass_kg;
}

/* The same number on each arm; they clear one another where their inner edge is half a slab
 * from the post. */
static void
init_slabs (SwFootBuild *foot, const SwStand *stand, const SwCatalogue *catalogue)
{
  double slab_kg = goods_mass_kg (catalogue, "slab");

  foot->slabs = ARMS * whole (stand->ballast_kg / ARMS / slab_kg);
  foot->slab_off_m = SW_SLAB_M;
  foot->mass_reached_kg = foot->slabs > 0 ? foot->slabs * slab_kg : 0;
}

static double
tube_area_m2 (const SwPipe *pipe)
{
  return pipe == NULL ? 0 : G_PI / 4 * pipe->od_m * pipe->od_m;
}

static void
init_bucket (SwFootBuild *foot,
             const SwStand *stand,
             const SwPipe *sleeve,
             const SwCatalogue *catalogue)
{
  double density = goods_mass_kg (catalogue, "concrete-bag") / SW_BAG_M3;
  double sleeve_m3 = tube_area_m2 (sleeve) * MIN (stand->sleeve_depth_m, BUCKET_DEEP_M);

  foot->bucket_most_kg = (BUCKET_M3 - sleeve_m3) * density;
  foot->mass_reached_kg = MIN (stand->ballast_kg, foot->bucket_most_kg);
  foot->concrete_m3 = stand->ballast_kg / density;
}

/* Concrete fills the hole round the sleeve, gravel lies under it. */
static void
init_socket (SwFootBuild *foot, const SwStand *stand, const SwPipe *sleeve)
{
  double hole_m2 = G_PI / 4 * stand->socket_diameter_m * stand->socket_diameter_m;

  foot->concrete_m3 = MAX (0, hole_m2 - tube_area_m2 (sleeve)) * stand->socket_depth_m;
  foot->gravel_m3 = hole_m2 * SW_GRAVEL_M;
}

void
sw_foot_build_init (SwFootBuild *foot,
                    const SwDesign *design,
                    const SwFittings *fittings,
                    const SwHeightChain *heights,
                    const SwCatalogue *catalogue)
{
  const SwStand *stand = &design->stand;

  *foot = (SwFootBuild){ .slabs = NAN,
                         .slab_off_m = NAN,
                         .concrete_m3 = NAN,
                         .gravel_m3 = NAN,
                         .mass_reached_kg = NAN,
                         .bucket_most_kg = NAN };
  init_boards (foot, design, heights);
  init_bolts (foot, fittings, heights);
  switch (stand->foot) {
  case SW_FOOT_SLABS:
    init_slabs (foot, stand, catalogue);
    break;
  case SW_FOOT_BUCKET:
    init_bucket (foot, stand, fittings->sleeve, catalogue);
    break;
  case SW_FOOT_SOCKET:
    init_socket (foot, stand, fittings->sleeve);
    break;
  }
  foot->bags = whole (foot->concrete_m3 / SW_BAG_M3);
  foot->water_m3 = foot->concrete_m3 / SW_BAG_M3 * SW_BAG_WATER_M3;
}
