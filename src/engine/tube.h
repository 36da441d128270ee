// SPDX-License-Identifier: GPL-3.0-or-later
/* tube.h: a pipe as a beam, and what its material is taken to be.
 *
 * Assumed  yield of conduit 207 MPa (30 ksi: conduit standards give none) and of schedule 40
 *          pipe 207 MPa (ASTM A53 type F); 6061-T6 241 MPa; PVC 48 MPa (ASTM D1784 class 12454,
 *          tensile 7000 psi). E: steel 200, aluminium 69 GPa; PVC creeps: 2.76 GPa (400 ksi,
 *          D1784) for a short while, 1.40 GPa for a season (our own judgement: half), 0.965
 *          GPa (140 ksi, AASHTO LRFD 12.12.3.3, value from memory) for fifty years. Growth with
 *          warmth: steel 11.7, aluminium 23.4, PVC 52 millionths a kelvin (handbook values; PVC
 *          29·10⁻⁶ a °F by its makers)
 */
#pragma once
#include "engine/catalogue.h"

typedef struct {
  double ei, gj; /* N m²; PVC: over a season */
  double section_m3, yield_pa, mass_kg_per_m;
  double area_m2;
} SwTube;

/* An unknown pipe (NULL) gives NAN everywhere. */
SwTube sw_tube_of (const SwPipe *pipe);

/* Young's modulus, and the yield the checks assume. */
double sw_material_modulus (SwMaterial material); /* PVC: over a season */
double sw_material_modulus_short (SwMaterial material);
double sw_material_modulus_years (SwMaterial material);
double sw_material_yield (SwMaterial material);
double sw_material_growth_per_k (SwMaterial material);
