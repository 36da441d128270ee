// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/error.h"
#include "engine/report.h"
#include "engine/solution.h"
#include "solve.h"

/* The Landmark, solved twice, to the last bit of every number. */
static void
test_repeats_to_the_bit (void)
{
  g_autoptr (SwDesign) design = design_with ("landmark", "as_built.ring_length_m=9.5");
  g_autoptr (SwSolution) first = solve_design (design);
  g_autoptr (SwSolution) second = solve_design (design);
  g_autofree char *a = sw_report_to_text (first);
  g_autofree char *b = sw_report_to_text (second);

  g_assert_cmpstr (a, ==, b);
  g_assert_cmpint (memcmp (&first->cone, &second->cone, sizeof first->cone), ==, 0);
  g_assert_cmpint (memcmp (&first->wind, &second->wind, sizeof first->wind), ==, 0);
}

/* The moves of a drag: the same sentences about the same numbers, and no remedy yet. */
static void
test_passing_differs_in_remedies_only (void)
{
  g_autoptr (SwDesign) design = design_with ("landmark", "strip.pixels=99");
  g_autoptr (SwSolution) whole = solve_design (design);
  g_autoptr (SwSolution) passing = sw_solution_new_passing (design, whole->catalogue, NULL);
  guint remedies = 0;

  g_assert_cmpuint (passing->findings->len, ==, whole->findings->len);
  for (guint i = 0; i < whole->findings->len; i++) {
    const SwFinding *a = &g_array_index (whole->findings, SwFinding, i),
                    *b = &g_array_index (passing->findings, SwFinding, i);
    g_assert_cmpstr (a->code, ==, b->code);
    g_assert_cmpmem (a->values, sizeof a->values, b->values, sizeof b->values);
    g_assert_null (b->remedy_key);
    remedies += a->remedy_key != NULL;
  }
  g_assert_cmpuint (remedies, >, 0);
  g_assert_true (whole->remedied && !passing->remedied);
  g_assert_cmpfloat_with_epsilon (passing->cost_to_pay, whole->cost_to_pay, 1e-12);
}

static void
test_keeps_its_design (void)
{
  SwDesign *design = design_with ("lawn", "title=Kept");
  g_autoptr (SwSolution) solution = solve_design (design);
  g_autoptr (SwSolution) again = sw_solution_ref (solution);

  sw_design_unref (design);
  g_assert_cmpstr (again->design->title, ==, "Kept");
}

/* Rules that join keys, and a measured ring that is none, are errors that name their key. */
static void
test_refuses_what_is_no_design (void)
{
  static const struct {
    const char *sets, *message;
  } cases[] = {
    { "shape.ring_height_m=2.7", "shape.ring_height_m: " },
    { "crown.hook_reach_m=0.13", "crown.hook_reach_m: " },
    { "data.bits_per_pixel=20", "data.bits_per_pixel: " },
    { "stand.ring_span=arc; as_built.ring_length_m=6", "as_built.ring_length_m: " },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SwDesign) design = design_with ("lawn", cases[i].sets);
    g_assert_null (sw_solution_new (design, sw_catalogue_builtin (NULL), &error));
    g_assert_error (error, SW_ERROR, SW_ERROR_RANGE);
    g_assert_true (g_str_has_prefix (error->message, cases[i].message));
  }
}

/* An unknown part is no reason not to answer the rest. */
static void
test_unknown_part_is_solved_around (void)
{
  static const char *const keys[] = { "stand.post",  "stand.ring_pipe", "stand.sleeve",
                                      "topper.stub", "crown.hook",      "guys.line" };

  for (guint i = 0; i < G_N_ELEMENTS (keys); i++) {
    g_autofree char *set = g_strdup_printf ("%s=no-such-part", keys[i]);
    g_autoptr (SwSolution) solution = solve_with ("lawn", set);
    guint named = 0;
    for (guint k = 0; k < solution->findings->len; k++) {
      const SwFinding *finding = &g_array_index (solution->findings, SwFinding, k);
      named += finding->level == SW_LEVEL_STOP && strcmp (finding->key, keys[i]) == 0;
    }
    g_assert_cmpuint (named, ==, 1);
    g_assert_cmpuint (solution->marks->len, ==, 20);
  }
}

/* Without its pipe the ring has no outer face: marks stand on the tie circle itself. */
static void
test_unknown_ring_pipe_has_no_thickness (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "stand.ring_pipe=none");

  g_assert_cmpfloat_with_epsilon (solution->ring_od_m, 0, 1e-15);
  g_assert_cmpfloat_with_epsilon (g_array_index (solution->marks, SwRingMark, 10).arc_m,
                                  G_PI,
                                  1e-12);
}

static void
test_exact_cuts_change_nothing_else (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = design_with ("landmark", "");
  g_autoptr (SwSolution) quick = solve_design (design);
  g_autoptr (SwSolution) exact =
    sw_solution_new_with_cuts (design, sw_catalogue_builtin (NULL), NULL, &error);
  static const char *const others[] = {
    "geometry", "marks", "power", "data", "wind", "support"
  };

  g_assert_no_error (error);
  g_assert_cmpuint (exact->cuts->len, ==, quick->cuts->len);
  for (guint i = 0; i < exact->cuts->len; i++)
    g_assert_true (((SwCutPlan *) exact->cuts->pdata[i])->optimal);
  g_autoptr (JsonNode) a = sw_report_to_json (quick);
  g_autoptr (JsonNode) b = sw_report_to_json (exact);
  for (guint i = 0; i < G_N_ELEMENTS (others); i++)
    g_assert_true (
      json_node_equal (json_object_get_member (json_node_get_object (a), others[i]),
                       json_object_get_member (json_node_get_object (b), others[i])));
}

static void
test_exact_cuts_can_be_called_off (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = design_with ("landmark", "");
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_cancellable_cancel (cancellable);
  g_assert_null (
    sw_solution_new_with_cuts (design, sw_catalogue_builtin (NULL), cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

/* Every number at both ends of its range: an answer or an error, never NaN where there is
 * meaning, never a crash.
 */
static void
test_ends_of_every_range (void)
{
  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    if (key->type == SW_KEY_TEXT || key->type == SW_KEY_ID)
      continue;
    for (int end = 0; end < 2; end++) {
      g_autoptr (GError) error = NULL;
      g_autoptr (SwDesign) design = design_with ("lawn", "");
      g_assert_true (sw_key_set_number (key, design, end == 0 ? key->low : key->high, &error));
      g_autoptr (SwSolution) solution =
        sw_solution_new (design, sw_catalogue_builtin (NULL), &error);
      g_assert_true (solution != NULL || error != NULL);
      if (solution == NULL)
        continue;
      g_autofree char *text = sw_report_to_text (solution);
      g_assert_null (strstr (text, "nan"));
      g_assert_null (strstr (text, " inf"));
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/solution/repeats to the bit", test_repeats_to_the_bit);
  g_test_add_func ("/engine/solution/passing-differs-in-remedies-only",
                   test_passing_differs_in_remedies_only);
  g_test_add_func ("/engine/solution/keeps its design", test_keeps_its_design);
  g_test_add_func ("/engine/solution/refuses what is no design",
                   test_refuses_what_is_no_design);
  g_test_add_func ("/engine/solution/unknown part is solved around",
                   test_unknown_part_is_solved_around);
  g_test_add_func ("/engine/solution/unknown ring pipe has no thickness",
                   test_unknown_ring_pipe_has_no_thickness);
  g_test_add_func ("/engine/solution/exact cuts change nothing else",
                   test_exact_cuts_change_nothing_else);
  g_test_add_func ("/engine/solution/exact cuts can be called off",
                   test_exact_cuts_can_be_called_off);
  g_test_add_func ("/engine/solution/ends of every range", test_ends_of_every_range);
  return g_test_run ();
}
