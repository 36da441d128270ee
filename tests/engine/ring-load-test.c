// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-load.h"
#include "solve.h"

#include <math.h>

/* 16 strips of 10 N between circles of 0.06 and 1 m, 2.90 m apart. */
#define EXAMPLE                                                                                \
  "shape.crown_radius_m=0.06; crown.hook_reach_m=0.02; shape.ring_height_m=0.15; "             \
  "shape.crown_height_m=3.05; shape.strip_count=16; strip.tension_n=10; "                      \
  "stand.ring_pipe=pvc40-1/2; "

static SwRingAnswer
answer_of (const char *sets, int ties)
{
  g_autoptr (SwDesign) design = design_with ("lawn", sets);
  const SwCatalogue *catalogue = sw_catalogue_builtin (NULL);
  SwTube pipe = sw_tube_of (sw_catalogue_pipe (catalogue, design->stand.ring_pipe));
  SwCone cone;

  sw_cone_init (&cone, design);
  return sw_ring_load_answer (design, &cone, &pipe, ties, design->strip.tension_n);
}

/* Source: an independent frame model (NumPy, 240 straight elements a ring) of the example in
 * fresh PVC, EI = 19.6536 N m²; over a season that is 1.40/2.76 of it. */
static void
test_an_even_pull_lifts_as_a_frame_model_says (void)
{
  static const struct {
    const char *sets;
    int ties;
    double lift_mm;
  } rows[] = { { EXAMPLE, 4, 24.09359 },
               { EXAMPLE, 8, 1.286908 },
               { EXAMPLE "stand.ring_span=arc", 6, 4.235881 } };

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++)
    g_assert_cmpfloat_with_epsilon (
      answer_of (rows[i].sets, rows[i].ties).lift_m * 1000,
      rows[i].lift_mm * 2.76 / 1.40,
      2e-3 * rows[i].lift_mm); /* the catalogue has the wall in inches */
}

/* The same pull on half the length is twice as much a metre: an arc of 180°, five ties: 4.1027
 * mm at 24.224 N/m, same frame model. */
static void
test_an_arc_bears_all_strips (void)
{
  SwRingAnswer answer = answer_of (EXAMPLE "shape.coverage_deg=180; stand.ring_span=arc", 5);

  g_assert_cmpfloat_with_epsilon (answer.lift_m * 1000, 2 * 4.1027 * 2.76 / 1.40, 0.15);
  g_assert_cmpfloat_with_epsilon (answer.tie_n, 2 * 22.482, 0.1);
}

/* A whole ring under half a tree is lifted on that side: more than the same pull all round. */
static void
test_half_a_tree_is_no_even_pull (void)
{
  double even = answer_of (EXAMPLE, 8).tie_n;
  double half = answer_of (EXAMPLE "shape.coverage_deg=180", 8).tie_n;

  g_assert_cmpfloat (half, >, 1.8 * even);
}

/* The quick question and the whole answer never differ. */
static void
test_level_is_what_the_answer_says (void)
{
  static const char *const kinds[] = { EXAMPLE,
                                       EXAMPLE "shape.coverage_deg=180",
                                       EXAMPLE "shape.coverage_deg=300",
                                       EXAMPLE "shape.coverage_deg=200; stand.ring_span=arc" };
  const SwCatalogue *catalogue = sw_catalogue_builtin (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++) {
    g_autoptr (SwDesign) design = design_with ("lawn", kinds[i]);
    SwTube pipe = sw_tube_of (sw_catalogue_pipe (catalogue, design->stand.ring_pipe));
    SwCone cone;
    sw_cone_init (&cone, design);
    for (int ties = 2; ties < 14; ties++) {
      double lift_m = answer_of (kinds[i], ties).lift_m;
      for (double most_m = 0.0003; most_m < 0.3; most_m *= 1.7)
        g_assert_cmpint (sw_ring_load_is_level (design, &cone, &pipe, ties, most_m),
                         ==,
                         lift_m <= most_m);
    }
  }
}

/* Ties of a whole ring begin behind the tree, at the seam; of an arc at its ends. */
static void
test_ties_stand_evenly (void)
{
  g_autoptr (SwDesign) whole = design_with ("lawn", "shape.facing_deg=30; stand.ring_ties=8");
  g_autoptr (SwDesign) arc = design_with (
    "lawn",
    "shape.facing_deg=30; stand.ring_ties=5; shape.coverage_deg=180; stand.ring_span=arc");

  g_assert_cmpfloat_with_epsilon (sw_ring_tie_azimuth_deg (whole, 1), 210, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_ring_tie_azimuth_deg (whole, 5), 30, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_ring_tie_azimuth_deg (arc, 1), 300, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_ring_tie_azimuth_deg (arc, 5), 120, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_ring_length_m (whole), 2 * G_PI, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_ring_length_m (arc), G_PI, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring-load/an even pull lifts as a frame model says",
                   test_an_even_pull_lifts_as_a_frame_model_says);
  g_test_add_func ("/engine/ring-load/an arc bears all strips", test_an_arc_bears_all_strips);
  g_test_add_func ("/engine/ring-load/half a tree is no even pull",
                   test_half_a_tree_is_no_even_pull);
  g_test_add_func ("/engine/ring-load/level is what the answer says",
                   test_level_is_what_the_answer_says);
  g_test_add_func ("/engine/ring-load/ties stand evenly", test_ties_stand_evenly);
  return g_test_run ();
}
