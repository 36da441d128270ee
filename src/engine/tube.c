// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/tube.h"

#include <math.h>

static const struct {
  double modulus_pa, short_pa, years_pa, poisson, yield_pa, growth_per_k;
} materials[] = {
  [SW_MATERIAL_STEEL_CONDUIT] = { 200e9, 200e9, 200e9, 0.30, 207e6, 11.7e-6 },
  [SW_MATERIAL_STEEL_PIPE] = { 200e9, 200e9, 200e9, 0.30, 207e6, 11.7e-6 },
  [SW_MATERIAL_ALUMINIUM] = { 69e9, 69e9, 69e9, 0.33, 241e6, 23.4e-6 },
  [SW_MATERIAL_PVC] = { 1.40e9, 2.76e9, 0.965e9, 0.38, 48e6, 52e-6 },
};

double
sw_material_modulus (SwMaterial material)
{
  return materials[material].modulus_pa;
}

double
sw_material_modulus_short (SwMaterial material)
{
  return materials[material].short_pa;
}

double
sw_material_modulus_years (SwMaterial material)
{
  return materials[material].years_pa;
}

double
sw_material_yield (SwMaterial material)
{
  return materials[material].yield_pa;
}

double
sw_material_growth_per_k (SwMaterial material)
{
  return materials[material].growth_per_k;
}

SwTube
sw_tube_of (const SwPipe *pipe)
{
  if (pipe == NULL)
    return (SwTube){ NAN, NAN, NAN, NAN, NAN, NAN };
  double inner_m = pipe->od_m - 2 * pipe->wall_m;
  double second_m4 = G_PI / 64 * (pow (pipe->od_m, 4) - pow (inner_m, 4));
  double e = materials[pipe->material].modulus_pa, nu = materials[pipe->material].poisson;
  return (SwTube){ e * second_m4,
                   e / (2 * (1 + nu)) * 2 * second_m4,
                   second_m4 / (pipe->od_m / 2),
                   materials[pipe->material].yield_pa,
                   pipe->mass_kg_per_m,
                   G_PI / 4 * (pipe->od_m * pipe->od_m - inner_m * inner_m) };
}
