// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring.h"
#include "solve.h"

#include <math.h>

/* 16 strips of 10 N between circles of 0.06 and 1 m, 2.90 m apart, on 1/2 in PVC pipe. */
#define EXAMPLE                                                                                \
  "shape.crown_radius_m=0.06; crown.hook_reach_m=0.02; shape.ring_height_m=0.15; "             \
  "shape.crown_height_m=3.05; shape.strip_count=16; strip.tension_n=10; "                      \
  "stand.ring_pipe=pvc40-1/2; "

/* Worked by hand: sin 17.95948° = 0.3083443; 16·10·0.3083443/2π = 7.851922 N/m. EI over a
 * season of 21.336 by 2.7686 mm pipe: 1.40e9·7.1142e-9 m⁴ = 9.9599; 3·9.9599/7.851922 = 3.8054.
 */
static void
test_the_example_by_hand (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", EXAMPLE);

  g_assert_cmpfloat_with_epsilon (s->ring.inward_n_per_m, 7.851922, 1e-6);
  g_assert_cmpfloat_with_epsilon (s->ring.hoop_n, 7.851922, 1e-6);
  g_assert_cmpfloat_with_epsilon (s->ring.buckling_factor, 3.8054, 2e-4);
  g_assert_cmpfloat_with_epsilon (s->ring.cold_strain, 0.010668, 1e-9);
  g_assert_cmpfloat_with_epsilon (s->ring.cold_radius_m, 6.4008, 1e-9);
  g_assert_cmpfloat_with_epsilon (s->ring.shrink_m, 2 * G_PI * 52e-6 * 40, 1e-12);
  g_assert_cmpfloat_with_epsilon (s->ring.joint_gap_m, s->ring.shrink_m / 4, 1e-12);
}

/* By hand: a half tree of 16 strips pulls 16·10·0.3083443 = 49.335 N inwards in all: four bays
 * of 12.334 N. On a whole ring the vector sum of 29.337 N goes to eight ties
 * alike. */
static void
test_ties_hold_a_part_sideways (void)
{
  g_autoptr (SwSolution) arc =
    solve_with ("lawn",
                EXAMPLE "shape.coverage_deg=180; stand.ring_span=arc; stand.ring_ties=5");
  g_autoptr (SwSolution) whole =
    solve_with ("lawn", EXAMPLE "shape.coverage_deg=180; stand.ring_ties=8");
  g_autoptr (SwSolution) full = solve_with ("lawn", EXAMPLE);

  g_assert_cmpfloat_with_epsilon (arc->ring.tie_side_n, 12.33377, 1e-4);
  g_assert_cmpfloat_with_epsilon (whole->ring.tie_side_n, 29.33700 / 8, 1e-5);
  g_assert_cmpfloat_with_epsilon (arc->ring.tie_side_gust_n / arc->ring.tie_side_n,
                                  arc->support.strip_tension_n / 10,
                                  1e-9);
  g_assert_true (isnan (full->ring.tie_side_n));
}

static void
test_spokes_stiffen_from_six_on (void)
{
  double last = 0;

  for (int spokes = 0; spokes <= 12; spokes++) {
    g_autofree char *sets = g_strdup_printf (EXAMPLE "stand.ring_spokes=%d", spokes);
    g_autoptr (SwSolution) s = solve_with ("lawn", sets);
    g_assert_cmpfloat (s->ring.buckling_factor, >=, last);
    g_assert_cmpint (s->ring.waves > 2, ==, spokes >= 6);
    last = s->ring.buckling_factor;
  }
}

/* Steel does not creep, and is not kept from being bent cold. A crown wider than its ring pulls
 * outwards: nothing to buckle. */
static void
test_what_does_not_apply_is_absent (void)
{
  g_autoptr (SwSolution) steel = solve_with ("lawn", "stand.ring_pipe=emt-1/2");
  g_autoptr (SwSolution) wide =
    solve_with ("lawn", "shape.crown_radius_m=1.2; shape.ring_radius_m=1.0");
  g_autoptr (SwSolution) none = solve_with ("lawn", "stand.ring_pipe=oak");

  g_assert_true (isnan (steel->ring.lift_years_m));
  g_assert_true (isnan (steel->ring.cold_radius_m));
  g_assert_false (isnan (steel->ring.shrink_m));
  g_assert_true (isnan (wide->ring.buckling_factor));
  g_assert_true (isnan (none->ring.section_width_m));
  g_assert_true (isnan (none->ring.fewest_ties));
  g_assert_true (isnan (steel->ring.sections_for_door));
}

/* Fresh PVC is 400 000 psi, over fifty years 140 000 psi: 2.86 times the lift (ASTM D1784;
 * AASHTO LRFD 12.12.3.3, value from memory). */
static void
test_creep_lifts_by_stiffness (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", EXAMPLE);

  g_assert_cmpfloat_with_epsilon (s->ring.lift_years_m / s->ring.lift_fresh_m,
                                  400.0 / 140,
                                  0.01);
  g_assert_cmpfloat (s->ring.lift_fresh_m, <, s->support.ring_lift_m);
  g_assert_cmpfloat (s->support.ring_lift_m, <, s->ring.lift_years_m);
}

/* Worked by hand: a quarter of 1 m radius stands 1 − cos 45° = 0.29289 m proud of its chord; a
 * half ring is as wide as its radius, a whole one as its diameter, each with the pipe. */
static void
test_widths_by_hand (void)
{
  g_assert_cmpfloat_with_epsilon (sw_ring_section_width_m (1, 0, 90), 0.292893219, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_ring_section_width_m (1, 0.04, 180), 1.02, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_ring_section_width_m (1, 0.04, 360), 2.04, 1e-9);
  g_assert_cmpfloat (sw_ring_section_width_m (1, 0.04, 270), <, 2.04);
}

/* Source of the widths: points of the bent pipe's two faces, measured across the chord. */
static void
test_sections_pass_their_door (void)
{
  for (double door_m = 0.3; door_m < 2.2; door_m += 0.07) {
    g_autofree char *sets = g_strdup_printf ("site.door_m=%.3f", door_m);
    g_autoptr (SwSolution) s = solve_with ("lawn", sets);
    double od_m = s->ring_od_m, widest[2] = { 0, 0 };
    int sections = (int) s->ring.sections_for_door;
    g_assert_cmpint (sections, >=, 1);
    for (int fewer = 0; fewer < 2; fewer++) {
      double half = sections == 1 && fewer ? G_PI : G_PI / (sections - fewer), low = 9,
             high = -9;
      for (int i = -500; i <= 500; i++) {
        low = MIN (
          low,
          MIN ((1 - od_m / 2) * cos (half * i / 500), (1 + od_m / 2) * cos (half * i / 500)));
        high = MAX (high, (1 + od_m / 2) * cos (half * i / 500));
      }
      widest[fewer] = high - low;
    }
    g_assert_cmpfloat (widest[0], <=, door_m + 1e-6);
    if (sections > 1)
      g_assert_cmpfloat (widest[1], >, door_m - 1e-6);
  }
}

static double
lift_with (const char *sets, int ties)
{
  g_autofree char *all = g_strdup_printf ("%s; stand.ring_ties=%d", sets, ties);
  g_autoptr (SwSolution) s = solve_with ("lawn", all);

  return s->support.ring_lift_m;
}

static const char *const rings[] = {
  EXAMPLE "strip.tension_n=10",
  EXAMPLE "shape.coverage_deg=180; stand.ring_span=arc",
  EXAMPLE "shape.coverage_deg=270; stand.ring_span=arc; shape.ring_radius_m=1.4",
  "strip.tension_n=40",
};

/* The fewest keep it level, one fewer does not. */
static void
test_fewest_ties_are_the_fewest (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rings); i++) {
    g_autoptr (SwSolution) s = solve_with ("lawn", rings[i]);
    int fewest = (int) s->ring.fewest_ties;
    g_assert_cmpint (fewest, >, 3);
    g_assert_cmpfloat (lift_with (rings[i], fewest), <=, SW_RING_LIFT_MOST_M);
    g_assert_cmpfloat (lift_with (rings[i], fewest - 1), >, SW_RING_LIFT_MOST_M);
  }
}

static void
test_more_ties_never_lift_more (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (rings); i++) {
    for (int ties = 3; ties < 24; ties++)
      g_assert_cmpfloat (lift_with (rings[i], ties + 1), <, lift_with (rings[i], ties));
  }
}

/* A whole ring under a partial tree is lifted where its strips are: a tie more moves all the
 * others and may leave a wider bay there. Ties put between those that stand never do. */
static void
test_ties_between_never_lift_more (void)
{
  for (int coverage = 90; coverage < 360; coverage += 45) {
    g_autofree char *sets = g_strdup_printf (EXAMPLE "shape.coverage_deg=%d", coverage);
    for (int ties = 3; ties < 13; ties++) {
      g_assert_cmpfloat (lift_with (sets, 2 * ties), <, lift_with (sets, ties));
      g_assert_cmpfloat (lift_with (sets, 3 * ties), <, lift_with (sets, ties));
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ring/the example by hand", test_the_example_by_hand);
  g_test_add_func ("/engine/ring/ties hold a part sideways", test_ties_hold_a_part_sideways);
  g_test_add_func ("/engine/ring/spokes stiffen from six on", test_spokes_stiffen_from_six_on);
  g_test_add_func ("/engine/ring/what does not apply is absent",
                   test_what_does_not_apply_is_absent);
  g_test_add_func ("/engine/ring/creep lifts by stiffness", test_creep_lifts_by_stiffness);
  g_test_add_func ("/engine/ring/widths by hand", test_widths_by_hand);
  g_test_add_func ("/engine/ring/sections pass their door", test_sections_pass_their_door);
  g_test_add_func ("/engine/ring/fewest ties are the fewest", test_fewest_ties_are_the_fewest);
  g_test_add_func ("/engine/ring/more ties never lift more", test_more_ties_never_lift_more);
  g_test_add_func ("/engine/ring/ties between never lift more",
                   test_ties_between_never_lift_more);
  return g_test_run ();
}
