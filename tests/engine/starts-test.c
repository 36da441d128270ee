// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/error.h"
#include "solve.h"

static void
test_names_in_any_case (void)
{
  g_autoptr (SwDesign) small = sw_start_new ("porch", NULL);
  g_autoptr (SwDesign) large = sw_start_new ("PORCH", NULL);

  g_assert_nonnull (large);
  g_assert_true (sw_design_equal (small, large));
}

static void
test_other_names_are_refused (void)
{
  static const char *const names[] = { "", "lawns", "../lawn", "law\nn" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_null (sw_start_new (names[i], &error));
    g_assert_error (error, SW_ERROR, SW_ERROR_CHOICE);
    g_assert_nonnull (strstr (error->message, "porch | lawn | landmark"));
    g_assert_null (strchr (error->message, '\n'));
  }
}

/* What the card says of each: "lower than a door" (a door is 2.03 m, 6 ft 8 in: common
 * practice, no source), half and full trees, guys, socket. */
static void
test_starts_are_what_they_say (void)
{
  g_autoptr (SwDesign) porch = sw_start_new ("porch", NULL);
  g_autoptr (SwDesign) lawn = sw_start_new ("lawn", NULL);
  g_autoptr (SwDesign) landmark = sw_start_new ("landmark", NULL);

  g_assert_cmpfloat (porch->shape.crown_height_m, <, 2.03);
  g_assert_cmpfloat_with_epsilon (porch->shape.coverage_deg, 180, 1e-12);
  g_assert_cmpfloat_with_epsilon (lawn->shape.coverage_deg, 360, 1e-12);
  g_assert_cmpint (lawn->guys.count, >=, 3);
  g_assert_cmpint (lawn->stand.foot, ==, SW_FOOT_SLABS);
  g_assert_cmpfloat (landmark->shape.crown_height_m, >, lawn->shape.crown_height_m);
  g_assert_cmpint (landmark->stand.foot, ==, SW_FOOT_SOCKET);
}

/* Strips fit as they are: a newcomer's first design has nothing to mend. */
static void
test_strips_fit (void)
{
  for (guint i = 0; i < sw_n_starts; i++) {
    g_autoptr (SwSolution) solution = solve_with (sw_starts[i].name, "");
    g_assert_cmpfloat (solution->cone.tail_m, >=, solution->design->strip.tail_min_m);
    g_assert_cmpfloat (solution->cone.tail_m - solution->design->strip.tail_min_m,
                       <,
                       solution->design->strip.pitch_m);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/starts/names in any case", test_names_in_any_case);
  g_test_add_func ("/engine/starts/other names are refused", test_other_names_are_refused);
  g_test_add_func ("/engine/starts/are what they say", test_starts_are_what_they_say);
  g_test_add_func ("/engine/starts/strips fit", test_strips_fit);
  return g_test_run ();
}
