// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/tube.h"

#include <math.h>

#define IN4 4.162314256e-7 /* m⁴ */
#define IN3 1.6387064e-5   /* m³ */

static SwTube
tube (const char *id)
{
  return sw_tube_of (sw_catalogue_pipe (sw_catalogue_builtin (NULL), id));
}

/* Source: properties of schedule 40 steel pipe as tabulated in Mott, Machine Elements in
 * Mechanical Design, table A16-6: second moment in⁴, section modulus in³. */
static void
test_sections_match_the_handbook (void)
{
  static const struct {
    const char *id;
    double second, section;
  } rows[] = { { "sch40-1-1/2", 0.310, 0.326 },
               { "sch40-2", 0.666, 0.561 },
               { "sch40-2-1/2", 1.530, 1.064 },
               { "sch40-3", 3.017, 1.724 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    SwTube found = tube (rows[i].id);
    g_assert_cmpfloat_with_epsilon (found.ei / 200e9 / IN4, rows[i].second, 6e-4);
    g_assert_cmpfloat_with_epsilon (found.section_m3 / IN3, rows[i].section, 6e-4);
  }
}

/* A round tube's polar moment is twice its second moment: GJ/EI = 1/(1 + ν). */
static void
test_twist_goes_with_bending (void)
{
  SwTube steel = tube ("emt-1"), pvc = tube ("pvc40-1");

  g_assert_cmpfloat_with_epsilon (steel.gj / steel.ei, 1 / 1.30, 1e-12);
  g_assert_cmpfloat_with_epsilon (pvc.gj / pvc.ei, 1 / 1.38, 1e-12);
}

static void
test_only_plastic_creeps (void)
{
  for (SwMaterial m = SW_MATERIAL_STEEL_CONDUIT; m <= SW_MATERIAL_PVC; m++) {
    double season = sw_material_modulus (m), years = sw_material_modulus_years (m);
    g_assert_cmpfloat (years, <=, season);
    g_assert_cmpfloat (season, <=, sw_material_modulus_short (m));
    g_assert_cmpint (years < season, ==, m == SW_MATERIAL_PVC);
  }
}

static void
test_no_pipe_is_no_number (void)
{
  g_assert_true (isnan (sw_tube_of (NULL).ei));
  g_assert_true (isnan (sw_tube_of (NULL).mass_kg_per_m));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/tube/sections match the handbook",
                   test_sections_match_the_handbook);
  g_test_add_func ("/engine/tube/twist goes with bending", test_twist_goes_with_bending);
  g_test_add_func ("/engine/tube/only plastic creeps", test_only_plastic_creeps);
  g_test_add_func ("/engine/tube/no pipe is no number", test_no_pipe_is_no_number);
  return g_test_run ();
}
