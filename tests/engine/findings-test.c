// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/finding-table.h"
#include "engine/findings.h"
#include "finding-cases.h"
#include "raised.h"

static void
test_each_code_has_its_designs (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (SwSolution) raised = solve_with (cases[i].start, cases[i].raised);
    g_autoptr (SwSolution) spared = solve_with (cases[i].start, cases[i].spared);
    if (find_finding (raised, cases[i].code) == NULL)
      g_error ("%s does not raise %s", cases[i].raised, cases[i].code);
    if (find_finding (spared, cases[i].code) != NULL)
      g_error ("%s raises %s", cases[i].spared, cases[i].code);
  }
}

static void
test_each_remedy_is_offered (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (SwSolution) raised = solve_with (cases[i].start, cases[i].raised);
    const SwFinding *finding = expect_finding (raised, cases[i].code);
    if (g_strcmp0 (finding->remedy_key, cases[i].remedy) != 0)
      g_error ("%s, %s: %s is offered", cases[i].code, cases[i].raised, finding->remedy_key);
  }
}

static gboolean
in_cases (const char *code)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    if (strcmp (cases[i].code, code) == 0)
      return TRUE;
  }
  return FALSE;
}

static void
test_no_code_is_left_out (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  guint codes = 0;

  for (guint t = 0; sw_finding_tables[t] != NULL; t++) {
    for (const SwFindingRow *row = sw_finding_tables[t]; row->code != NULL; row++) {
      g_assert_true (g_hash_table_add (seen, (gpointer) (guintptr) row->code));
      if (!in_cases (row->code))
        g_error ("%s has no design", row->code);
      g_assert_true (sw_key_find (row->key) != NULL ||
                     strstr (row->key, "ring_points") != NULL);
      codes++;
    }
  }
  g_assert_cmpuint (codes, >=, 50);
}

/* What a remedy may never touch: the weather, the ground, the factors, the look, and what was
 * not done. */
static const char *const forbidden[] = { "site.gust_mps",
                                         "site.exposure",
                                         "site.soil",
                                         "site.slope_deg",
                                         "site.ice_mm",
                                         "site.clear_radius_m",
                                         "site.line_distance_m",
                                         "site.dig_marked",
                                         "site.door_m",
                                         "stand.friction",
                                         "power.supply_load_max",
                                         "power.cap",
                                         "power.brightness",
                                         "power.min_pixel_v",
                                         "strip.measured",
                                         "guys.stakes_tested",
                                         "stand.tie_hold_n",
                                         "guys.end_efficiency",
                                         "strip.tail_min_m",
                                         NULL };

static void
check_remedy (const SwSolution *before, const SwFinding *finding)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = sw_finding_apply (finding, before->design, &error);

  g_assert_no_error (error);
  g_assert_false (g_strv_contains (forbidden, finding->remedy_key));
  g_assert_false (sw_design_holds (before->design, finding->remedy_key));
  g_autoptr (SwSolution) after = solve_design (design);
  g_assert_null (find_finding (after, finding->code));
  for (guint i = 0; i < after->findings->len; i++) {
    const SwFinding *left = &g_array_index (after->findings, SwFinding, i);
    if (left->level == SW_LEVEL_STOP && find_finding (before, left->code) == NULL)
      g_error ("%s = %g brings %s", finding->remedy_key, finding->remedy_value, left->code);
  }
}

static void
test_each_remedy_puts_it_right (void)
{
  guint remedies = 0;

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (SwSolution) raised = solve_with (cases[i].start, cases[i].raised);
    for (guint k = 0; k < raised->findings->len; k++) {
      const SwFinding *finding = &g_array_index (raised->findings, SwFinding, k);
      if (finding->remedy_key == NULL)
        continue;
      check_remedy (raised, finding);
      remedies++;
    }
  }
  g_assert_cmpuint (remedies, >, 50);
}

/* Somewhere in what is usual for each number, any choice, any flag. */
static SwDesign *
random_design (GRand *rand)
{
  SwDesign *design = design_with ("lawn", "");

  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    if (g_rand_double (rand) < 0.7)
      continue;
    if (key->ease_high > key->ease_low) {
      double value = g_rand_double_range (rand, key->ease_low, key->ease_high);
      sw_key_set_number (key, design, key->type == SW_KEY_WHOLE ? (int) value : value, NULL);
    } else if (key->type == SW_KEY_CHOICE || key->type == SW_KEY_FLAG) {
      sw_key_set_number (key, design, g_rand_int_range (rand, 0, (int) key->high + 1), NULL);
    }
  }
  return design;
}

static void
test_remedies_hold_in_any_design (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20251124);
  guint remedies = 0;

  for (int i = 0; i < 300; i++) {
    g_autoptr (SwDesign) design = random_design (rand);
    g_autoptr (SwSolution) solution =
      sw_solution_new (design, sw_catalogue_builtin (NULL), NULL);
    for (guint k = 0; solution != NULL && k < solution->findings->len; k++) {
      const SwFinding *finding = &g_array_index (solution->findings, SwFinding, k);
      if (finding->remedy_key == NULL)
        continue;
      check_remedy (solution, finding);
      remedies++;
    }
  }
  g_assert_cmpuint (remedies, >, 300);
}

static void
test_sentences_are_whole (void)
{
  static const char *const units[] = { "us", "metric" };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    for (guint u = 0; u < G_N_ELEMENTS (units); u++) {
      g_autofree char *sets = g_strdup_printf ("units=%s; %s", units[u], cases[i].raised);
      g_autoptr (SwSolution) solution = solve_with (cases[i].start, sets);
      const SwFinding *finding = expect_finding (solution, cases[i].code);
      g_autofree char *text = sw_finding_text (finding, solution->design, &sw_language_english);
      if (strpbrk (text, "{}") != NULL || strstr (text, "nan") != NULL ||
          !g_str_has_suffix (text, ".") || !g_utf8_validate (text, -1, NULL))
        g_error ("%s: %s", finding->code, text);
    }
  }
}

static void
test_says_how_much_and_what_helps (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "units=metric; strip.pixels=55");
  const SwFinding *finding = expect_finding (solution, "strip-too-long");
  g_autofree char *text = sw_finding_text (finding, solution->design, &sw_language_english);
  g_autofree char *remedy =
    sw_finding_remedy_text (finding, solution->design, &sw_language_english);

  /* 0.06 + 54·0.0508 − 2.7511816 = 0.0520 m too long; worked by hand. Pixels that leave 0.2 m:
   * 50; the ring radius that does: 0.13 + √(3.0032² − 2.61²) = 1.616. */
  g_assert_cmpstr (
    text,
    ==,
    "Strips are 52\302\240mm too long for this shape. To leave room for the tie, "
    "take pixels off each strip (5), or move the ring out to 1.62\302\240m.");
  g_assert_cmpstr (remedy, ==, "Set Pixels a strip to 50");
}

static void
test_remedies_in_words (void)
{
  static const struct {
    const char *sets, *code, *text;
  } words[] = {
    { "power.min_pixel_v=11.7", "pixel-voltage-low", "Set Power enters to At both ends" },
    { "stand.sleeve=sch40-2", "post-not-in-sleeve", "Set Sleeve to emt-2-1/2" },
    { "gives_way=pixels; held=[\"strip.pixels\"]",
      "nothing-gives-way",
      "Set Gives way to Gap at tie" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (words); i++) {
    g_autoptr (SwSolution) solution = solve_with ("lawn", words[i].sets);
    g_autofree char *text = sw_finding_remedy_text (expect_finding (solution, words[i].code),
                                                    solution->design,
                                                    &sw_language_english);
    g_assert_cmpstr (text, ==, words[i].text);
  }
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  g_assert_null (sw_finding_remedy_text (expect_finding (solution, "strip-not-measured"),
                                         solution->design,
                                         &sw_language_english));
}

/* Worked by hand, 20 strips of 50 pixels of 55 mA, half white, and a star of 100 pixels: 30.25
 * A at either voltage, 151 W of 5 V and 363 W of 12 V; two feeds a strip, one at 12 V.
 * Regulated pixels of 0.275 W draw 151 W at either. Feeders are those of the plan, worked out
 * in feed-plan-test.c. */
static void
test_12_v_is_compared (void)
{
  static const struct {
    const char *load;
    double other_w;
  } loads[] = { { "constant-current", 363 }, { "constant-power", 151.25 } };

  for (guint i = 0; i < G_N_ELEMENTS (loads); i++) {
    g_autofree char *sets = g_strdup_printf ("power.supply_v=5; power.min_pixel_v=4.2; "
                                             "power.strip_ohm_per_m=0.3; power.load=%s",
                                             loads[i].load);
    g_autoptr (SwSolution) solution = solve_with ("lawn", sets);
    const SwFinding *finding = expect_finding (solution, "higher-voltage");
    double slack = i == 0 ? 1e-9 : 10;
    g_assert_cmpfloat_with_epsilon (finding->values[0].value, 2, 1e-9);
    g_assert_cmpfloat_with_epsilon (finding->values[2].value, 151.25, slack);
    g_assert_cmpfloat_with_epsilon (finding->values[3].value, 1, 1e-9);
    g_assert_cmpfloat_with_epsilon (finding->values[5].value, loads[i].other_w, slack);
  }
}

static const char *
shout (const char *id)
{
  return strcmp (id, "the foot tips") == 0 ? "DER FUSS KIPPT" : id;
}

/* Words of our own inside a sentence are translated too, ids are not. */
static void
test_reasons_are_translated (void)
{
  const SwLanguage language = { "de", ",", shout };
  g_autoptr (SwSolution) solution =
    solve_with ("lawn", "guys.count=0; stand.friction=0.9; site.gust_mps=25");
  g_autofree char *text =
    sw_finding_text (expect_finding (solution, "gust-too-high"), solution->design, &language);

  g_assert_nonnull (strstr (text, "DER FUSS KIPPT"));
}

static void
test_stops_come_first (void)
{
  g_autoptr (SwSolution) solution =
    solve_with ("lawn", "strip.pixels=60; stand.post=oak; data.frame_hz=10");
  SwLevel level = SW_LEVEL_STOP;

  for (guint i = 0; i < solution->findings->len; i++) {
    const SwFinding *finding = &g_array_index (solution->findings, SwFinding, i);
    g_assert_cmpint (finding->level, >=, level);
    level = finding->level;
  }
  g_assert_cmpuint (sw_findings_count (solution->findings, SW_LEVEL_STOP), ==, 2);
  g_assert_cmpuint (sw_findings_count (solution->findings, SW_LEVEL_STOP) +
                      sw_findings_count (solution->findings, SW_LEVEL_WARN) +
                      sw_findings_count (solution->findings, SW_LEVEL_TIP),
                    ==,
                    solution->findings->len);
}

static void
test_starts_have_no_stop (void)
{
  for (guint i = 0; i < sw_n_starts; i++) {
    g_autoptr (SwSolution) solution = solve_with (sw_starts[i].name, "");
    g_assert_cmpuint (sw_findings_count (solution->findings, SW_LEVEL_STOP), ==, 0);
    g_assert_cmpuint (sw_findings_count (solution->findings, SW_LEVEL_WARN), >, 0);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/findings/each code has its designs",
                   test_each_code_has_its_designs);
  g_test_add_func ("/engine/findings/no code is left out", test_no_code_is_left_out);
  g_test_add_func ("/engine/findings/each remedy is offered", test_each_remedy_is_offered);
  g_test_add_func ("/engine/findings/each remedy puts it right",
                   test_each_remedy_puts_it_right);
  g_test_add_func ("/engine/findings/remedies hold in any design",
                   test_remedies_hold_in_any_design);
  g_test_add_func ("/engine/findings/sentences are whole", test_sentences_are_whole);
  g_test_add_func ("/engine/findings/says how much and what helps",
                   test_says_how_much_and_what_helps);
  g_test_add_func ("/engine/findings/remedies in words", test_remedies_in_words);
  g_test_add_func ("/engine/findings/12 V is compared", test_12_v_is_compared);
  g_test_add_func ("/engine/findings/reasons are translated", test_reasons_are_translated);
  g_test_add_func ("/engine/findings/stops come first", test_stops_come_first);
  g_test_add_func ("/engine/findings/starts have no stop", test_starts_have_no_stop);
  return g_test_run ();
}
