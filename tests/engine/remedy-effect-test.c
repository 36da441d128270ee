// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/remedy-effect.h"
#include "raised.h"

#include <string.h>

static void
test_says_what_it_costs (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "stand.sleeve=sch40-2");
  const SwFinding *finding = expect_finding (solution, "post-not-in-sleeve");
  SwRemedyEffect effect;

  g_assert_true (sw_remedy_effect_init (&effect, finding, solution));
  g_autoptr (SwDesign) design = sw_finding_apply (finding, solution->design, NULL);
  g_autoptr (SwSolution) after = sw_solution_new (design, solution->catalogue, NULL);
  double more = after->cost_to_pay - solution->cost_to_pay;
  g_assert_cmpfloat_with_epsilon (effect.more_to_pay, MAX (more, 0), 1e-9);
  sw_remedy_effect_clear (&effect);
}

/* Whatever a remedy brings is named, with its numbers, and no stop is among it. */
static void
test_names_what_comes_with_it (void)
{
  static const char *const starts[] = { "porch", "lawn", "landmark" };
  guint named = 0;

  for (guint s = 0; s < G_N_ELEMENTS (starts); s++) {
    g_autoptr (SwSolution) solution = solve_with (starts[s], "site.gust_mps=30");
    for (guint i = 0; i < solution->findings->len; i++) {
      SwRemedyEffect effect;
      if (!sw_remedy_effect_init (&effect,
                                  &g_array_index (solution->findings, SwFinding, i),
                                  solution))
        continue;
      g_autofree char *text = sw_remedy_effect_text (&effect, &sw_language_english);
      g_assert_true ((text == NULL) == (effect.brought->len == 0 && !(effect.more_to_pay > 0)));
      for (guint j = 0; j < effect.brought->len; j++) {
        const SwFinding *brought = &g_array_index (effect.brought, SwFinding, j);
        g_autofree char *words = sw_finding_text (brought, effect.design, &sw_language_english);
        g_assert_cmpint (brought->level, ==, SW_LEVEL_WARN);
        g_assert_nonnull (strstr (text, words));
        named++;
      }
      sw_remedy_effect_clear (&effect);
    }
  }
  g_assert_cmpuint (named, >, 0);
}

static void
test_none_where_there_is_no_remedy (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  SwRemedyEffect effect;

  g_assert_false (
    sw_remedy_effect_init (&effect, expect_finding (solution, "strip-not-measured"), solution));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/remedy-effect/says what it costs", test_says_what_it_costs);
  g_test_add_func ("/engine/remedy-effect/names what comes with it",
                   test_names_what_comes_with_it);
  g_test_add_func ("/engine/remedy-effect/none where there is no remedy",
                   test_none_where_there_is_no_remedy);
  return g_test_run ();
}
