// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cone.h"

#include <math.h>

/* The example of all cone tests: crown 3.05/0.060 m, ring 0.15/1.000 m, 16 strips of 50 pixels
 * at 0.050 m, the first one 0.12 m below its hook. Figures by an independent program
 * (SciPy 1.10) from the same plane geometry, unless said otherwise.
 */
static SwDesign *
sixteen_strips (void)
{
  SwDesign *design = sw_design_new ();

  design->shape = (SwShape){ 3.05, 0.15, 0.060, 1.0, 360, 0, 16 };
  design->strip.pixels = 50;
  design->strip.pitch_m = 0.050;
  design->strip.lead_m = 0.12;
  return design;
}

static SwCone
cone_of (const SwDesign *design)
{
  SwCone cone;

  sw_cone_init (&cone, design);
  return cone;
}

static void
test_slant_and_lean (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  SwCone cone = cone_of (design);

  g_assert_cmpfloat_with_epsilon (cone.slant_m, 3.048540634, 1e-9);
  g_assert_cmpfloat_with_epsilon (cone.lean_deg, 17.95947609, 1e-8);
  g_assert_cmpfloat_with_epsilon (cos (cone.lean_deg * G_PI / 180), 0.951274839, 1e-9);
  g_assert_cmpfloat_with_epsilon (sin (cone.lean_deg * G_PI / 180), 0.308344258, 1e-9);
}

/* Source: right triangles in whole numbers; the tablet Plimpton 322, rows 1 and 11, and 3-4-5.
 */
static void
test_slants_of_whole_triangles (void)
{
  static const int triples[][3] = { { 3, 4, 5 }, { 119, 120, 169 }, { 45, 60, 75 } };
  g_autoptr (SwDesign) design = sixteen_strips ();

  for (guint i = 0; i < G_N_ELEMENTS (triples); i++) {
    design->shape.ring_radius_m = 0.060 + triples[i][0] / 100.0;
    design->shape.crown_height_m = 0.15 + triples[i][1] / 100.0;
    g_assert_cmpfloat_with_epsilon (cone_of (design).slant_m, triples[i][2] / 100.0, 1e-12);
  }
}

static void
test_a_crown_wider_than_the_ring_leans_in (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  double lean_deg = cone_of (design).lean_deg;

  design->shape.crown_radius_m = 1.0;
  design->shape.ring_radius_m = 0.060;
  g_assert_cmpfloat_with_epsilon (cone_of (design).lean_deg, -lean_deg, 1e-12);
  g_assert_cmpfloat_with_epsilon (cone_of (design).slant_m, 3.048540634, 1e-9);
}

/* A slant of 3.2 m belongs to these heights and radii. */
static void
test_slants_come_back (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();

  design->shape.crown_height_m = 0.15 + 3.058823303;
  g_assert_cmpfloat_with_epsilon (cone_of (design).slant_m, 3.2, 1e-9);
  design->shape.crown_height_m = 3.05;
  design->shape.ring_radius_m = 1.412774926;
  g_assert_cmpfloat_with_epsilon (cone_of (design).slant_m, 3.2, 1e-9);
}

static void
test_lengths_along_a_strip (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();

  g_assert_cmpfloat_with_epsilon (cone_of (design).run_m, 49 * 0.05, 1e-12);
  g_assert_cmpfloat_with_epsilon (cone_of (design).tail_m, 0.478540634, 1e-9);

  design->strip.pitch_m = 0.057725319; /* leaves exactly 0.10 m */
  g_assert_cmpfloat_with_epsilon (cone_of (design).tail_m, 0.10, 1e-7);

  design->strip.pixels = 60;
  g_assert_cmpfloat (cone_of (design).tail_m, <, 0);

  design->strip.pixels = 1;
  g_assert_cmpfloat_with_epsilon (cone_of (design).run_m, 0, 1e-15);
}

static void
test_spacings (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  SwCone cone = cone_of (design);

  g_assert_cmpfloat_with_epsilon (cone.spacing_ring_m, 0.392699082, 1e-9);
  g_assert_cmpfloat_with_epsilon (cone.chord_ring_m, 0.390180644, 1e-9);
  g_assert_cmpfloat_with_epsilon (cone.spacing_ring_m - cone.chord_ring_m, 0.002518438, 1e-9);
  g_assert_cmpfloat_with_epsilon (cone.spacing_crown_m, 0.023561945, 1e-9);
  g_assert_cmpfloat_with_epsilon (cone.circumference_m, 6.283185307179586, 1e-12);
}

/* An open tree has one gap fewer than strips: dividing by 16 would leave 196 mm of ring over.
 */
static void
test_open_trees_have_a_gap_fewer (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();

  design->shape.coverage_deg = 180;
  g_assert_cmpfloat_with_epsilon (cone_of (design).spacing_ring_m, 0.209439510, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_cone_step_deg (&design->shape), 12, 1e-12);
  design->shape.coverage_deg = 270;
  g_assert_cmpfloat_with_epsilon (cone_of (design).spacing_ring_m, 0.314159265, 1e-9);
}

/* Pixels a square metre of the cone's face: N·n/(θ/2·(R + r)·s). */
static void
test_density_of_pixels (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();
  SwCone cone = cone_of (design);
  double face_m2 = G_PI * (1.0 + 0.060) * cone.slant_m;

  design->topper.kind = SW_TOPPER_NONE;
  g_assert_cmpint (cone.strip_pixels_total, ==, 800);
  g_assert_cmpfloat_with_epsilon (cone.strip_pixels_total / face_m2, 78.80291, 1e-5);
}

static void
test_totals_with_and_without_a_star (void)
{
  g_autoptr (SwDesign) design = sixteen_strips ();

  design->topper.kind = SW_TOPPER_STAR;
  design->topper.pixels = 100;
  design->topper.stub_m = 0.15;
  design->topper.height_m = 0.60;
  g_assert_cmpint (cone_of (design).strip_pixels_total, ==, 800);
  g_assert_cmpint (cone_of (design).pixels_total, ==, 900);
  g_assert_cmpfloat_with_epsilon (cone_of (design).overall_height_m, 3.80, 1e-12);

  design->topper.kind = SW_TOPPER_NONE;
  g_assert_cmpint (cone_of (design).pixels_total, ==, 800);
  g_assert_cmpfloat_with_epsilon (cone_of (design).overall_height_m, 3.05, 1e-12);
}

/* Worked by hand: a full tree has its seam at the back, an open one strips at both ends. */
static const struct {
  double coverage_deg, facing_deg;
  int strip_count, strip;
  double azimuth_deg;
} azimuths[] = {
  { 360, 0, 16, 1, 180 },      { 360, 0, 16, 2, 202.5 }, { 360, 0, 16, 9, 0 },
  { 360, 0, 16, 16, 157.5 },   { 360, 90, 4, 1, 270 },   { 360, 90, 4, 2, 0 },
  { 360, 180, 4, 1, 0 },       { 360, -180, 4, 1, 0 },   { 360, -180, 4, 4, 270 },
  { 360, 0.25, 3, 2, 300.25 }, { 180, 0, 7, 1, 270 },    { 180, 0, 7, 4, 0 },
  { 180, 0, 7, 7, 90 },        { 180, 45, 7, 1, 315 },   { 180, 45, 7, 7, 135 },
  { 20, -180, 2, 1, 170 },     { 20, -180, 2, 2, 190 },  { 350, 180, 8, 1, 5 },
  { 350, 180, 8, 8, 355 },     { 270, 100, 4, 1, 325 },  { 270, 100, 4, 2, 55 },
};

static void
test_azimuths_of_strips (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (azimuths); i++) {
    SwShape shape = { 3.05,
                      0.15,
                      0.060,
                      1.0,
                      azimuths[i].coverage_deg,
                      azimuths[i].facing_deg,
                      azimuths[i].strip_count };
    g_assert_cmpfloat_with_epsilon (sw_cone_azimuth_deg (&shape, azimuths[i].strip),
                                    azimuths[i].azimuth_deg,
                                    1e-12);
  }
}

static void
test_azimuths_stay_inside_one_turn (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (21);

  for (int i = 0; i < 2000; i++) {
    SwShape shape = { 3.05,
                      0.15,
                      0.060,
                      1.0,
                      i % 2 == 0 ? 360 : g_rand_double_range (rand, 20, 360),
                      g_rand_double_range (rand, -180, 180),
                      g_rand_int_range (rand, 2, 513) };
    int strip = g_rand_int_range (rand, 1, shape.strip_count + 1);
    double azimuth_deg = sw_cone_azimuth_deg (&shape, strip);
    g_assert_cmpfloat (azimuth_deg, >=, 0);
    g_assert_cmpfloat (azimuth_deg, <, 360);
  }
}

static void
test_any_angle_comes_into_one_turn (void)
{
  static const double angles[][2] = { { 0, 0 },      { 360, 0 },    { -360, 0 },
                                      { -0.0, 0 },   { -1, 359 },   { 725, 5 },
                                      { -725, 355 }, { -1e-17, 0 }, { 359.5, 359.5 } };

  for (guint i = 0; i < G_N_ELEMENTS (angles); i++) {
    double wrapped_deg = sw_azimuth_wrap_deg (angles[i][0]);
    g_assert_cmpfloat_with_epsilon (wrapped_deg, angles[i][1], 1e-12);
    g_assert_cmpfloat (wrapped_deg, <, 360);
    g_assert_false (signbit (wrapped_deg)); /* -0 would be printed with its sign */
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/cone/slant and lean", test_slant_and_lean);
  g_test_add_func ("/engine/cone/slants of whole triangles", test_slants_of_whole_triangles);
  g_test_add_func ("/engine/cone/a crown wider than the ring leans in",
                   test_a_crown_wider_than_the_ring_leans_in);
  g_test_add_func ("/engine/cone/slants come back", test_slants_come_back);
  g_test_add_func ("/engine/cone/lengths along a strip", test_lengths_along_a_strip);
  g_test_add_func ("/engine/cone/spacings", test_spacings);
  g_test_add_func ("/engine/cone/open trees have a gap fewer",
                   test_open_trees_have_a_gap_fewer);
  g_test_add_func ("/engine/cone/density of pixels", test_density_of_pixels);
  g_test_add_func ("/engine/cone/totals with and without a star",
                   test_totals_with_and_without_a_star);
  g_test_add_func ("/engine/cone/azimuths of strips", test_azimuths_of_strips);
  g_test_add_func ("/engine/cone/azimuths stay inside one turn",
                   test_azimuths_stay_inside_one_turn);
  g_test_add_func ("/engine/cone/any angle comes into one turn",
                   test_any_angle_comes_into_one_turn);
  return g_test_run ();
}
