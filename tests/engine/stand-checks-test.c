// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/stand-model.h"
#include "solve.h"

#include <math.h>

#define UNGUYED "guys.count=0; "

static SwStandChecks
checks_with (const char *start, const char *sets)
{
  g_autoptr (SwSolution) solution = solve_with (start, sets);

  return solution->support.checks;
}

/* By hand. 2x6 boards 140 mm wide, 38.1 mm thick, halved: 0.14·0.01905²/6 = 8.4677·10⁻⁶ m³. NDS
 * 2018: 875 psi × 1.6 × 1.3 × 1.15 = 2093 psi = 14.431 MPa (values from memory): 122.20 N m.
 */
static void
test_a_half_lap_is_half_a_board (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", UNGUYED);
  const SwStandChecks *checks = &solution->support.checks;

  g_assert_cmpfloat_with_epsilon (checks->lap_m, 0.01905, 1e-12);
  g_assert_cmpfloat_with_epsilon (checks->board.factor * solution->wind.base_moment_nm,
                                  122.20,
                                  0.01);
  g_assert_cmpfloat_with_epsilon (checks->board_stress_pa,
                                  solution->wind.base_moment_nm / 8.46772e-6,
                                  1e3);
}

static void
test_boards_count_only_without_guys (void)
{
  SwStandChecks guyed = checks_with ("lawn", ""), bare = checks_with ("lawn", UNGUYED);

  g_assert_true (isnan (guyed.board.factor));
  g_assert_cmpfloat_with_epsilon (guyed.board.limit_unguyed_mps, bare.board.limit_mps, 1e-9);
  g_assert_true (isnan (checks_with ("landmark", UNGUYED).board.factor)); /* a socket */
}

/* By hand: the Lawn's star, 60.695 N at 0.15 + 0.30 m, on 1/2 in conduit: section modulus
 * 224.7 mm³ from the published OD 17.93 and wall 1.07 mm; 207 MPa assumed.
 */
static void
test_a_star_bends_its_stub (void)
{
  SwStandChecks checks = checks_with ("lawn", "");

  g_assert_cmpfloat_with_epsilon (checks.stub.factor, 207e6 * 224.7e-9 / (60.695 * 0.45), 5e-3);
  g_assert_true (isnan (checks_with ("lawn", "topper.kind=none").stub.factor));
}

/* By hand: in a 2 1/2 in pipe of 2.469 in inside a 2.375 in post has 2.388 mm of play, in
 * 0.35 m; the crown is 2.86 m up.
 */
static void
test_play_lets_the_post_lean (void)
{
  SwStandChecks checks = checks_with ("lawn", "");

  g_assert_cmpfloat_with_epsilon (checks.sleeve_lean_m, 0.0023876 / 0.35 * 2.86, 1e-5);
}

/* Two forces: their couple is the moment, their difference the shear. */
static void
test_a_sleeve_is_in_balance (void)
{
  g_autoptr (SwSolution) foot = solve_with ("lawn", UNGUYED);
  g_autoptr (SwSolution) socket = solve_with ("landmark", UNGUYED);
  const SwStandChecks *a = &foot->support.checks, *b = &socket->support.checks;

  g_assert_cmpfloat_with_epsilon (a->sleeve_top_n * 0.35, foot->wind.base_moment_nm, 1e-6);
  g_assert_cmpfloat_with_epsilon (a->sleeve_top_n - a->sleeve_bottom_n,
                                  foot->wind.base_shear_n,
                                  1e-6);
  g_assert_cmpfloat_with_epsilon (b->sleeve_bottom_n * 0.8, socket->wind.base_moment_nm, 1e-6);
}

/* By hand with the Lawn's figures: weight 31.45 kg hangs on the post, twenty strips pull. */
static void
test_a_column_adds_up (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", UNGUYED);
  const SwStandChecks *checks = &s->support.checks;
  double kg = s->support.foot_mass_kg - 36;
  double axial_n =
    kg * 9.80665 + 20 * s->support.strip_tension_n * cos (s->cone.lean_deg * G_PI / 180);
  double od = 0.060325, id = od - 2 * 0.003912, area = G_PI / 4 * (od * od - id * id);
  double section = G_PI / 32 * (pow (od, 4) - pow (id, 4)) / od;
  double ei = 200e9 * section * od / 2;
  double critical_n = G_PI * G_PI * ei / pow (2.1 * 2.86, 2);
  double moment_nm = s->wind.base_moment_nm + kg * 9.80665 * checks->sleeve_lean_m;
  double stress = moment_nm / (1 - axial_n / critical_n) / section + axial_n / area;

  g_assert_cmpfloat_with_epsilon (checks->column_axial_n, axial_n, 1e-6 * axial_n);
  g_assert_cmpfloat_with_epsilon (checks->column_critical_n, critical_n, 2e-3 * critical_n);
  g_assert_cmpfloat_with_epsilon (checks->column.factor, 207e6 / stress, 2e-3 * 207e6 / stress);
}

/* The whole does not feel the pull of a partial tree whose ring hangs on the foot; the post
 * does.
 */
static void
test_a_ring_on_the_foot_bends_the_post (void)
{
  g_autoptr (SwSolution) s = solve_with ("porch", "site.gust_mps=0.001");
  const SwStandChecks *checks = &s->support.checks;
  double least_nm = s->support.side_pull_n * 1.90;

  g_assert_cmpfloat (s->support.side_pull_n, >, 6);
  g_assert_cmpfloat (s->support.post_stress_pa, <, 1);
  g_assert_cmpfloat_with_epsilon (checks->sleeve_top_n * 0.30, least_nm, 1e-3);
}

static double
kept (const char *start, const char *sets, gsize offset, double needed)
{
  SwStandChecks first = checks_with (start, sets);
  const SwCheck *check = (const SwCheck *) (gconstpointer) ((const char *) &first + offset);
  g_autofree char *put_back =
    g_strdup_printf ("%s; site.gust_mps=%.12g", sets, check->limit_mps);

  g_assert_cmpfloat (check->limit_mps, >, 1);
  g_assert_cmpfloat (check->limit_mps, <, SW_GUST_MOST_MPS);
  SwStandChecks again = checks_with (start, put_back);
  return ((const SwCheck *) (gconstpointer) ((const char *) &again + offset))->factor / needed;
}

static void
test_a_limit_put_back_just_keeps_its_factor (void)
{
  static const struct {
    const char *start, *sets;
    gsize check;
    double needed;
  } cases[] = {
    { "lawn", "guys.count=0", G_STRUCT_OFFSET (SwStandChecks, board), SW_FACTOR_BOARD },
    { "porch", "title=x", G_STRUCT_OFFSET (SwStandChecks, board), SW_FACTOR_BOARD },
    { "lawn", "guys.count=0", G_STRUCT_OFFSET (SwStandChecks, column), SW_FACTOR_NEEDED },
    { "lawn", "guys.count=3", G_STRUCT_OFFSET (SwStandChecks, column), SW_FACTOR_NEEDED },
    { "porch", "title=x", G_STRUCT_OFFSET (SwStandChecks, column), SW_FACTOR_NEEDED },
    { "landmark", "title=x", G_STRUCT_OFFSET (SwStandChecks, column), SW_FACTOR_NEEDED },
    { "lawn", "title=x", G_STRUCT_OFFSET (SwStandChecks, stub), SW_FACTOR_NEEDED },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (
      kept (cases[i].start, cases[i].sets, cases[i].check, cases[i].needed),
      1,
      1e-3);
}

static void
test_twice_the_gust_is_four_times_the_stress (void)
{
  SwStandChecks once = checks_with ("lawn", UNGUYED "site.gust_mps=10"),
                twice = checks_with ("lawn", UNGUYED "site.gust_mps=20");

  g_assert_cmpfloat_with_epsilon (twice.stub_stress_pa / once.stub_stress_pa, 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (twice.board_stress_pa / once.board_stress_pa, 4, 1e-9);
  g_assert_cmpfloat_with_epsilon (once.board.factor / twice.board.factor, 4, 1e-9);
}

static void
test_more_wind_never_helps (void)
{
  static const char *const starts[] = { "porch", "lawn", "landmark" };

  for (guint i = 0; i < G_N_ELEMENTS (starts); i++) {
    double column = INFINITY, stub = INFINITY;
    for (int gust = 2; gust <= 60; gust += 2) {
      g_autofree char *sets = g_strdup_printf ("site.gust_mps=%d", gust);
      SwStandChecks checks = checks_with (starts[i], sets);
      g_assert_cmpfloat (checks.column.factor, <=, column);
      g_assert_cmpfloat (checks.stub.factor, <, stub);
      column = checks.column.factor;
      stub = checks.stub.factor;
    }
  }
}

static void
test_no_take_down_gust_above_a_check (void)
{
  g_autoptr (SwSolution) s = solve_with ("porch", "stand.arm_width_m=0.04");
  const SwSupport *support = &s->support;

  g_assert_cmpfloat (support->checks.board.limit_mps, <, 0.7 * support->gust_limit_mps);
  g_assert_cmpfloat (support->take_down_gust_mps, <=, support->checks.board.limit_mps);
  g_assert_cmpfloat (support->take_down_gust_mps, >, support->checks.board.limit_mps - 2.3);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/stand-checks/a half lap is half a board",
                   test_a_half_lap_is_half_a_board);
  g_test_add_func ("/engine/stand-checks/boards count only without guys",
                   test_boards_count_only_without_guys);
  g_test_add_func ("/engine/stand-checks/a star bends its stub", test_a_star_bends_its_stub);
  g_test_add_func ("/engine/stand-checks/play lets the post lean",
                   test_play_lets_the_post_lean);
  g_test_add_func ("/engine/stand-checks/a sleeve is in balance", test_a_sleeve_is_in_balance);
  g_test_add_func ("/engine/stand-checks/a column adds up", test_a_column_adds_up);
  g_test_add_func ("/engine/stand-checks/a ring on the foot bends the post",
                   test_a_ring_on_the_foot_bends_the_post);
  g_test_add_func ("/engine/stand-checks/a limit put back just keeps its factor",
                   test_a_limit_put_back_just_keeps_its_factor);
  g_test_add_func ("/engine/stand-checks/twice the gust is four times the stress",
                   test_twice_the_gust_is_four_times_the_stress);
  g_test_add_func ("/engine/stand-checks/more wind never helps", test_more_wind_never_helps);
  g_test_add_func ("/engine/stand-checks/no take-down gust above a check",
                   test_no_take_down_gust_above_a_check);
  return g_test_run ();
}
