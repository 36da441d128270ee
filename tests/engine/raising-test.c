// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/raising.h"
#include "random-design.h"

#include <math.h>

#define G 9.80665

/* Virtual work (d'Alembert, Lagrange): turning the post by dθ lifts its weight by c·cos θ·dθ,
 * and the rope gives as much work: its length changes by so much. Worked out from lengths
 * alone, without any arm. */
static double
rope_length_m (const SwRaising *raising, double post_m, double angle_deg)
{
  double angle = angle_deg * G_PI / 180;

  return hypot (SW_RAISE_WALK * post_m + raising->rope_at_m * cos (angle),
                SW_RAISE_HOLD_M - raising->rope_at_m * sin (angle));
}

static double
rope_by_work_n (const SwRaising *raising, const SwLift *lift, double post_m, double angle_deg)
{
  double step_deg = 1e-4;
  double shortens_m = rope_length_m (raising, post_m, angle_deg - step_deg) -
                      rope_length_m (raising, post_m, angle_deg + step_deg);
  double rises_m = lift->centre_m * (sin ((angle_deg + step_deg) * G_PI / 180) -
                                     sin ((angle_deg - step_deg) * G_PI / 180));

  return lift->mass_kg * G * rises_m / shortens_m;
}

static void
assert_near (double found, double expected)
{
  g_assert_cmpfloat (fabs (found - expected), <=, 1e-6 * fabs (expected) + 1e-6);
}

static void
assert_lift (const SwRaising *raising, const SwLift *lift, double post_m)
{
  for (int i = 0; i < SW_LIFT_STEPS; i++) {
    const SwLiftRow *row = &lift->rows[i];

    if (row->angle_deg >= SW_RAISE_HANDOVER_DEG)
      assert_near (row->rope_n, rope_by_work_n (raising, lift, post_m, row->angle_deg));
    g_assert_cmpfloat (row->rope_n, <=, lift->rope_most_n);
    g_assert_cmpfloat (row->push_n, <=, lift->push_most_n);
  }
}

static void
test_the_rope_does_the_work_of_the_weight (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (61);

  for (guint i = 0; i < 100; i++) {
    g_autoptr (SwDesign) design = random_design (rand);
    g_autoptr (SwSolution) solution = solve_design (design);
    SwRaising raising;

    sw_raising_init (&raising, solution);
    assert_lift (&raising, &raising.whole, solution->heights.post_m);
    assert_lift (&raising, &raising.bare, solution->heights.post_m);
  }
}

/* The bare post of the Lawn, worked by hand: it lies and is held at its end, so hands carry
 * half of it; upright nobody carries anything. */
static void
test_a_bare_post_is_half_carried_at_its_end (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  double post_kg = solution->fittings.post->mass_kg_per_m * solution->heights.post_m;
  SwRaising raising;

  sw_raising_init (&raising, solution);
  assert_near (raising.bare.mass_kg, post_kg);
  assert_near (raising.bare.centre_m, solution->heights.post_m / 2);
  assert_near (raising.bare.rows[0].push_n, post_kg * G / 2);
  assert_near (raising.bare.rows[0].press_n, post_kg * G / 2);
  assert_near (raising.bare.rows[SW_LIFT_STEPS - 1].rope_n, 0);
}

/* What lies on the sheets as the mass to lift is what is lifted here. */
static void
test_the_mass_is_the_lift (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (62);

  for (guint i = 0; i < 50; i++) {
    g_autoptr (SwDesign) design = random_design (rand);
    g_autoptr (SwSolution) solution = solve_design (design);
    SwRaising raising;

    sw_raising_init (&raising, solution);
    assert_near (raising.whole.mass_kg, solution->lift_kg);
  }
}

static void
test_a_heavier_star_takes_more_hands (void)
{
  g_autoptr (SwSolution) light = solve_with ("lawn", "topper.mass_kg=1");
  g_autoptr (SwSolution) heavy = solve_with ("lawn", "topper.mass_kg=30");
  SwRaising a, b;

  sw_raising_init (&a, light);
  sw_raising_init (&b, heavy);
  g_assert_cmpint (b.whole.people, >, a.whole.people);
  g_assert_cmpint (b.bare.people, ==, a.bare.people);
}

static const struct {
  const char *sets;
  SwRaiseWay way;
  SwRaiseAnswer answer;
} answers[] = {
  { "", SW_RAISE_TILT, SW_RAISE_YES },
  { "topper.mass_kg=60", SW_RAISE_TILT, SW_RAISE_NO_HANDS },
  { "", SW_RAISE_HOIST, SW_RAISE_NO_TOP_FIXED },
  { "shape.crown_height_m=1.7", SW_RAISE_PLATFORM, SW_RAISE_NO_LOW },
  { "shape.crown_height_m=3", SW_RAISE_PLATFORM, SW_RAISE_YES },
  { "shape.crown_height_m=4.5", SW_RAISE_PLATFORM, SW_RAISE_NO_HIGH },
};

/* 29 CFR 1926.451(c)(1): four times 0.74 m is 2.96 m; the crown is 1.3 m above that: 4.26 m. */
static void
test_each_way_says_why (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (answers); i++) {
    g_autoptr (SwSolution) solution = solve_with ("lawn", answers[i].sets);
    SwRaising raising;

    sw_raising_init (&raising, solution);
    g_assert_cmpint (raising.answers[answers[i].way], ==, answers[i].answer);
  }
}

static void
assert_each_once (const GArray *order, int strips)
{
  g_autofree gboolean *seen = g_new0 (gboolean, (gsize) strips + 1);

  g_assert_cmpuint (order->len, ==, strips);
  for (guint i = 0; i < order->len; i++) {
    int strip = g_array_index (order, int, i);
    g_assert_cmpint (strip, >=, 1);
    g_assert_cmpint (strip, <=, strips);
    g_assert_false (seen[strip]);
    seen[strip] = TRUE;
  }
}

static void
test_pairs_are_opposite (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  for (int strips = 2; strips <= 130; strips++) {
    design->shape.strip_count = strips;
    design->shape.coverage_deg = 360;
    g_autoptr (GArray) round = sw_tension_order (design);
    assert_each_once (round, strips);
    g_assert_cmpint (g_array_index (round, int, 1) - g_array_index (round, int, 0),
                     ==,
                     strips / 2);
    design->shape.coverage_deg = 200;
    g_autoptr (GArray) partial = sw_tension_order (design);
    assert_each_once (partial, strips);
    for (guint i = 0; i + 1 < partial->len; i += 2)
      g_assert_cmpint (g_array_index (partial, int, i) + g_array_index (partial, int, i + 1),
                       ==,
                       strips + 1);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/raising/the rope does the work of the weight",
                   test_the_rope_does_the_work_of_the_weight);
  g_test_add_func ("/engine/raising/a bare post is half carried at its end",
                   test_a_bare_post_is_half_carried_at_its_end);
  g_test_add_func ("/engine/raising/the mass is the lift", test_the_mass_is_the_lift);
  g_test_add_func ("/engine/raising/a heavier star takes more hands",
                   test_a_heavier_star_takes_more_hands);
  g_test_add_func ("/engine/raising/each way says why", test_each_way_says_why);
  g_test_add_func ("/engine/raising/pairs are opposite", test_pairs_are_opposite);
  return g_test_run ();
}
