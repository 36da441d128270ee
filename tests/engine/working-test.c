// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/json-text.h"
#include "engine/report.h"
#include "engine/results.h"
#include "engine/working-table.h"
#include "engine/working.h"
#include "formula.h"
#include "random-design.h"

#include <float.h>

#define DESIGNS 50

/* The printed report, read back as a stranger would. */
static JsonNode *
printed_report (const SwSolution *solution)
{
  g_autoptr (JsonNode) report = sw_report_to_json (solution);
  g_autofree char *text = sw_json_to_text (report, NULL);
  JsonNode *back = json_from_string (text, NULL);

  g_assert_nonnull (back);
  return back;
}

static GHashTable *
inputs_of (JsonObject *working)
{
  GHashTable *values = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  JsonArray *inputs = json_object_get_array_member (working, "inputs");

  for (guint i = 0; i < json_array_get_length (inputs); i++) {
    JsonObject *input = json_array_get_object_element (inputs, i);
    double *value = g_new (double, 1);
    *value = json_object_get_double_member (input, "value");
    g_assert_true (json_object_has_member (input, "key") ||
                   json_object_has_member (input, "source"));
    g_assert_true (
      g_hash_table_insert (values,
                           g_strdup (json_object_get_string_member (input, "name")),
                           value));
  }
  return values;
}

static double
evaluate (JsonObject *working)
{
  g_autoptr (GHashTable) values = inputs_of (working);

  return formula_value (json_object_get_string_member (working, "formula"), values);
}

/* The result as it stands under its own key; lists show one of their rows. */
static void
check_result (JsonObject *root, const char *key, double result)
{
  g_auto (GStrv) parts = g_strsplit (key, ".", -1);
  JsonObject *object = root;
  guint last = g_strv_length (parts) - 1;

  if (sw_result_find (key) == NULL)
    return;
  for (guint i = 0; i < last; i++)
    object = json_object_get_object_member (object, parts[i]);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, parts[last]),
                                  result,
                                  DBL_MIN);
}

/* Doubles are printed to their last digit. What was solved is as good as its solver: the gust
 * limits are halved down to 1e-10. */
static void
check_working (JsonObject *root, const char *key, JsonObject *working, GHashTable *seen)
{
  if (!json_object_has_member (working, "formula"))
    return;
  double result = json_object_get_double_member (working, "result");
  double value = evaluate (working);
  double slack = json_object_has_member (working, "how") ? 1e-8 : 1e-10;

  check_result (root, key, result);
  const char *formula = json_object_get_string_member (working, "formula");
  g_hash_table_add (seen, g_strconcat (key, " = ", formula, NULL));
  if (!(fabs (value - result) <= slack * fabs (result) + 1e-12)) {
    g_autoptr (JsonNode) node = json_node_init_object (json_node_alloc (), working);
    g_autofree char *text = json_to_string (node, TRUE);
    g_error ("%s: the formula gives %.17g, not %.17g\n%s", key, value, result, text);
  }
}

static void
check_solution (SwSolution *solution, GHashTable *seen)
{
  g_array_set_size (solution->findings, 0); /* what remedies worsen takes long to solve */
  g_autoptr (JsonNode) report = printed_report (solution);
  JsonObject *root = json_node_get_object (report);
  JsonObject *workings = json_object_get_object_member (root, "working");
  g_autoptr (GList) keys = json_object_get_members (workings);

  for (GList *key = keys; key != NULL; key = key->next)
    check_working (root, key->data, json_object_get_object_member (workings, key->data), seen);
}

/* What chance seldom or never draws. */
static const char *const rare[] = {
  "site.gust_mps=0; stand.tie_hold_n=0",
  "stand.foot=socket; guys.count=0; site.gust_mps=0",
  "stand.foot=socket; site.soil=gravel; stand.socket_depth_m=0.5",
  "stand.foot=socket; stand.socket_depth_m=3; stand.post=emt-1; guys.stakes_tested=true",
  "shape.crown_radius_m=1; shape.ring_radius_m=1.05; strip.width_m=0.2; shape.strip_count=60",
  "shape.crown_radius_m=0.9; shape.ring_radius_m=0.1; shape.ring_height_m=0",
  "shape.coverage_deg=100; shape.strip_count=2; stand.ring_span=arc",
  "shape.coverage_deg=180; strip.tension_n=200; stand.ballast_kg=0; stand.post=emt-1/2",
  "stand.tie_hold_n=40; stand.ballast_kg=2000; stand.post=sch40-4; stand.arm_m=2",
  "stand.tie_hold_n=0; stand.ballast_kg=2000; stand.foot=socket; stand.socket_depth_m=3",
  "guys.count=3; guys.stakes_tested=true; guys.stake_hold_n=20000; guys.break_n=1000",
  "guys.count=3; guys.stake_hold_n=40000; guys.break_n=90000; stand.friction=0.05",
  "guys.count=4; guys.stake_hold_n=40000; guys.break_n=90000; stand.ballast_kg=2000; "
  "stand.tie_hold_n=80; stand.friction=1",
  "guys.count=4; guys.stake_hold_n=40000; guys.break_n=90000; stand.ballast_kg=2000",
  "guys.count=4; guys.pretension_n=5000",
  "guys.count=4; guys.stake_hold_n=40000; guys.break_n=90000; stand.ballast_kg=5000; "
  "stand.post=sch40-4; shape.crown_height_m=0.5; guys.height_m=0.4; strip.width_m=0.001",
  "strip.tie_n_per_m=0; strip.tie_stretch_max=1; site.gust_mps=80",
  "strip.tie_n_per_m=5000; strip.tension_n=15; strip.tie_stretch_max=1; site.gust_mps=10",
  "power.load=constant-power; power.feed=both; power.inject_every=17; topper.kind=none",
  "power.load=constant-power; power.strip_ohm_per_m=0; power.feeder_ohm_per_m=0",
  "power.feeder_m=0; power.feed=both; power.inject_every=20",
  "power.strip_ohm_per_m=0; power.feed=both",
  "power.pixel_a=0; units=metric",
  "shape.coverage_deg=100; stand.ring_span=arc; stand.ring_ties=1",
  "guys.count=0; stand.arm_width_m=0.3; shape.crown_height_m=0.5; topper.kind=none; "
  "strip.width_m=0.001; stand.post=emt-1/2; shape.ring_height_m=0",
  "topper.kind=none; data.strips_per_port_max=3; data.port_pixels_max=170",
  "as_built.ring_length_m=6.5",
  "as_built.ring_length_m=6.5; shape.coverage_deg=200",
  "as_built.crown_offset_x_m=0.02; as_built.crown_offset_y_m=-0.03",
  "as_built.ring_points=[{\"azimuth_deg\":0,\"radius_m\":1.01},{\"azimuth_deg\":90,"
  "\"radius_m\":1.03},{\"azimuth_deg\":180,\"radius_m\":1.02},{\"azimuth_deg\":270,"
  "\"radius_m\":0.99}]",
};

static void
check_every_row_was_seen (GHashTable *seen)
{
  for (guint i = 0; i < sw_n_working_tables; i++) {
    for (guint j = 0; j < sw_working_tables[i]->n_rows; j++) {
      const SwWorkingRow *row = &sw_working_tables[i]->rows[j];
      g_autofree char *line = g_strconcat (row->key, " = ", row->formula, NULL);
      if (row->formula != NULL && !g_hash_table_contains (seen, line)) {
        g_test_message ("never evaluated: %s", line);
        g_test_fail ();
      }
    }
  }
}

static void
test_formulas_give_their_results (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20260);
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (int i = 0; i < DESIGNS; i++) {
    g_autoptr (SwDesign) design = random_design (rand);
    g_autoptr (SwSolution) solution = solve_design (design);
    check_solution (solution, seen);
  }
  for (guint i = 0; i < G_N_ELEMENTS (rare); i++) {
    g_autoptr (SwSolution) solution = solve_with ("lawn", rare[i]);
    check_solution (solution, seen);
  }
  check_every_row_was_seen (seen);
}

/* Numbers of the report that no formula gives, and why. */
static const struct {
  const char *key, *why;
} spoken[] = {
  { "as_built.marks.azimuth_deg", "along a spline through measured points" },
  { "as_built.marks.radius_m", "off a spline through measured points" },
  { "as_built.marks.strip", "counts the list's rows" },
  { "bom.have", "as entered" },
  { "bom.pack", "the catalogue's" },
  { "bom.quantity", "each part by a rule of its own" },
  { "bom.unit_price", "the catalogue's, or as entered" },
  { "crown.strip", "counts the list's rows" },
  { "cuts.bars", "searched for" },
  { "cuts.kerf_m", "the saw's" },
  { "cuts.pieces", "lengths that stand elsewhere" },
  { "cuts.stock_m", "the catalogue's" },
  { "data.rows.first_strip", "where the last port ended" },
  { "data.rows.port", "counts the list's rows" },
  { "findings.remedy.value", "a value of a file key, solved whole" },
  { "fits.inner_m", "the catalogue's, or as entered" },
  { "fits.outer_m", "the catalogue's, or as entered" },
  { "marks.strip", "counts the list's rows" },
  { "power.feeds.pixel", "a place" },
  { "power.plan.further_every", "searched for" },
  { "power.plan.strips_sharing", "searched for" },
  { "power.zones.first_pixel", "a place" },
  { "power.zones.first_strip", "where the last supply ended" },
  { "power.zones.last_pixel", "a place" },
  { "power.zones.supply", "counts the list's rows" },
  { "ring.joints.joint", "counts the list's rows" },
  { "ring.pieces.piece", "counts the list's rows" },
  { "ring.spokes.spoke", "counts the list's rows" },
};

static gboolean
is_spoken (const char *key)
{
  for (guint i = 0; i < G_N_ELEMENTS (spoken); i++) {
    if (strcmp (spoken[i].key, key) == 0)
      return TRUE;
  }
  return FALSE;
}

static gboolean
has_formula (JsonObject *workings, const char *key)
{
  return json_object_has_member (workings, key) &&
         json_object_has_member (json_object_get_object_member (workings, key), "formula");
}

/* All numbers below a node, lists counted as one row. */
static void
check_numbers (JsonNode *node, const char *path, JsonObject *workings, GHashTable *met)
{
  if (JSON_NODE_HOLDS_OBJECT (node)) {
    g_autoptr (GList) names = json_object_get_members (json_node_get_object (node));
    for (GList *name = names; name != NULL; name = name->next) {
      g_autofree char *below = g_strconcat (path, *path == '\0' ? "" : ".", name->data, NULL);
      check_numbers (json_object_get_member (json_node_get_object (node), name->data),
                     below,
                     workings,
                     met);
    }
  } else if (JSON_NODE_HOLDS_ARRAY (node)) {
    JsonArray *list = json_node_get_array (node);
    for (guint i = 0; i < json_array_get_length (list); i++)
      check_numbers (json_array_get_element (list, i), path, workings, met);
  } else if (json_node_get_value_type (node) == G_TYPE_DOUBLE ||
             json_node_get_value_type (node) == G_TYPE_INT64) {
    g_hash_table_add (met, g_strdup (path));
    if (!has_formula (workings, path) && !is_spoken (path))
      g_error ("%s has no formula", path);
  }
}

/* A stranger's walk through the report: each number is worked out, or one of those above. */
static void
test_every_number_has_a_formula (void)
{
  static const struct {
    const char *start, *sets;
  } designs[] = {
    { "lawn", "" },
    { "porch", "" },
    { "landmark", "" },
    { "lawn", "as_built.crown_offset_x_m=0.02; stand.ring_spokes=6" },
    { "lawn",
      "as_built.ring_points=[{\"azimuth_deg\":0,\"radius_m\":1.01},{\"azimuth_deg\":90,"
      "\"radius_m\":1.03},{\"azimuth_deg\":180,\"radius_m\":1.02},{\"azimuth_deg\":270,"
      "\"radius_m\":0.99}]" },
    { "lawn", "stand.foot=slabs; guys.count=3; guys.stakes_tested=true" },
    { "lawn", "stand.foot=socket; shape.coverage_deg=180; stand.ring_span=arc" },
  };
  g_autoptr (GHashTable) met = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (designs); i++) {
    g_autoptr (SwSolution) solution = solve_with (designs[i].start, designs[i].sets);
    g_autoptr (JsonNode) report = printed_report (solution);
    JsonObject *root = json_node_get_object (report);
    JsonObject *workings = json_object_get_object_member (root, "working");
    json_object_ref (workings);
    json_object_remove_member (root, "working");
    check_numbers (report, "", workings, met);
    json_object_unref (workings);
  }
  for (guint i = 0; i < G_N_ELEMENTS (spoken); i++) {
    if (!g_hash_table_contains (met, spoken[i].key))
      g_error ("%s is not reported", spoken[i].key);
  }
}

/* What has words only still says what it rests on. */
static void
test_words_stand_in_for_a_formula (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  g_autoptr (SwWorking) reason = sw_working_new (solution, "support.limit_reason");

  g_assert_nonnull (reason);
  g_assert_null (reason->formula);
  g_assert_cmpuint (reason->inputs->len, ==, 0);
  g_assert_cmpuint (strlen (reason->words), >, 2);
  g_assert_cmpuint (strlen (reason->source), >, 2);
}

static gboolean
ends_key (const char *key, const char *name)
{
  g_autofree char *dotted = g_strconcat (".", name, NULL);

  return strcmp (key, name) == 0 || g_str_has_suffix (key, dotted);
}

static guint
results_called (const char *name)
{
  guint count = 0;

  for (guint i = 0; i < sw_n_results (); i++)
    count += ends_key (sw_result_at (i)->key, name);
  return count;
}

static guint
file_keys_called (const char *name)
{
  guint count = 0;

  for (guint i = 0; i < sw_n_keys (); i++)
    count += ends_key (sw_key_at (i)->path, name);
  return count;
}

static guint
terms_called (const char *name)
{
  guint count = 0;

  for (guint i = 0; i < sw_n_working_tables; i++) {
    for (guint j = 0; j < sw_working_tables[i]->n_terms; j++)
      count += strcmp (sw_working_tables[i]->terms[j].name, name) == 0;
  }
  return count;
}

/* "tree_w" is the tree's at cap, though full white has one too: the shorter key is meant. */
static void
check_name (const char *formula, const char *name)
{
  guint terms = terms_called (name), results = results_called (name);
  gboolean one = terms == 1                   ? results + file_keys_called (name) == 0
                 : terms == 0 && results == 0 ? file_keys_called (name) == 1
                 : terms == 0 && strchr (name, '.') == NULL ? results <= 2
                                                            : terms == 0 && results == 1;

  if (!one) {
    g_test_message ("%s: %s could mean more than one thing, or nothing", formula, name);
    g_test_fail ();
  }
}

static void
test_names_mean_one_thing (void)
{
  g_autoptr (GRegex) names =
    g_regex_new ("[A-Za-z][A-Za-z0-9_.]*(?![A-Za-z0-9_.(])", 0, 0, NULL);

  for (guint i = 0; i < sw_n_working_tables; i++) {
    for (guint j = 0; j < sw_working_tables[i]->n_rows; j++) {
      const char *formula = sw_working_tables[i]->rows[j].formula;
      g_autoptr (GMatchInfo) match = NULL;
      if (formula == NULL)
        continue;
      for (g_regex_match (names, formula, 0, &match); g_match_info_matches (match);
           g_match_info_next (match, NULL)) {
        g_autofree char *name = g_match_info_fetch (match, 0);
        check_name (formula, name);
      }
    }
  }
}

static void
test_every_term_is_used_and_sourced (void)
{
  for (guint i = 0; i < sw_n_working_tables; i++) {
    for (guint j = 0; j < sw_working_tables[i]->n_terms; j++) {
      const SwWorkingTerm *term = &sw_working_tables[i]->terms[j];
      gboolean used = FALSE;
      for (guint t = 0; t < sw_n_working_tables; t++) {
        for (guint r = 0; r < sw_working_tables[t]->n_rows; r++)
          used = used || (sw_working_tables[t]->rows[r].formula != NULL &&
                          strstr (sw_working_tables[t]->rows[r].formula, term->name) != NULL);
      }
      if (!used)
        g_error ("no formula uses %s", term->name);
      g_assert_cmpuint (strlen (term->what), >, 2);
      g_assert_cmpuint (strlen (term->source), >, 2);
    }
  }
}

static void
test_inputs_have_units_and_origins (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  g_autoptr (SwWorking) slant = sw_working_new (solution, "geometry.slant_m");
  g_autoptr (SwWorking) factor = sw_working_new (solution, "support.tipping_factor");
  const SwWorkingInput *height = &g_array_index (slant->inputs, SwWorkingInput, 0);
  const SwWorkingInput *gravity = &g_array_index (factor->inputs, SwWorkingInput, 1);

  g_assert_cmpuint (slant->inputs->len, ==, 4);
  g_assert_cmpstr (height->key, ==, "shape.crown_height_m");
  g_assert_cmpstr (height->unit, ==, "m");
  g_assert_cmpstr (slant->unit, ==, "m");
  g_assert_cmpstr (factor->unit, ==, "");
  g_assert_cmpstr (gravity->unit, ==, "m/s²");
  g_assert_null (gravity->key);
  g_assert_nonnull (strstr (gravity->source, "NIST"));
}

/* The evaluator itself: worked by hand. */
static void
test_notation_reads_as_it_should (void)
{
  static const struct {
    const char *text;
    double value;
  } cases[] = {
    { "2 + 3·4", 14 },
    { "12/3/2", 2 },
    { "2·3^2", 18 },
    { "2^3^2", 512 },
    { "−2^2", -4 },
    { "10^−2", 0.01 },
    { "√16·2", 8 },
    { "√(9 + 16)", 5 },
    { "max(1, 2, 3)", 3 },
    { "min(4, 2 − 3)", -1 },
    { "ceil(1.2) + floor(1.8)", 3 },
    { "4·atan(1)/π", 1 },
    { "atan2(1, 1)·4/π", 1 },
    { "abs(−3)", 3 },
    { "acos(0)·2/π", 1 },
    { "first(2.5, 1, 2, 3, 4)", 3 },
    { "first(2, 1, 2, 3)", 2 },
    { "count(2, 3, 1, 2)", 2 },
    { "count(4, 3, 1) + 1", 1 },
    { "a·b.c", 12 },
  };
  static const char *const broken[] = { "1 +", "d",         "nope(1)",        "(1",
                                        "1 2", "sin(1, 2)", "first(3, 1, 2)", "count(1",
                                        "" };
  double three = 3, four = 4;
  char name_a[] = "a", name_b[] = "b.c";
  g_autoptr (GHashTable) values = g_hash_table_new (g_str_hash, g_str_equal);

  g_hash_table_insert (values, name_a, &three);
  g_hash_table_insert (values, name_b, &four);
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpfloat_with_epsilon (formula_value (cases[i].text, values),
                                    cases[i].value,
                                    1e-12);
  for (guint i = 0; i < G_N_ELEMENTS (broken); i++)
    g_assert_true (isnan (formula_value (broken[i], values)));
}

static void
test_absent_results_have_none (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "guys.count=0; stand.foot=socket");

  g_assert_null (sw_working_new (solution, "support.guy_tension_n"));
  g_assert_null (sw_working_new (solution, "support.tipping_factor"));
  g_assert_null (sw_working_new (solution, "as_built.perimeter_m"));
  g_assert_null (sw_working_new (solution, "support.nothing"));
  g_assert_true (sw_working_known ("support"));
  g_assert_true (sw_working_known ("support.guy_tension_n"));
  g_assert_true (sw_working_known ("marks"));
  g_assert_false (sw_working_known ("supp"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/working/formulas give their results",
                   test_formulas_give_their_results);
  g_test_add_func ("/engine/working/every number has a formula",
                   test_every_number_has_a_formula);
  g_test_add_func ("/engine/working/words stand in for a formula",
                   test_words_stand_in_for_a_formula);
  g_test_add_func ("/engine/working/names mean one thing", test_names_mean_one_thing);
  g_test_add_func ("/engine/working/every term is used and sourced",
                   test_every_term_is_used_and_sourced);
  g_test_add_func ("/engine/working/inputs have units and origins",
                   test_inputs_have_units_and_origins);
  g_test_add_func ("/engine/working/notation reads as it should",
                   test_notation_reads_as_it_should);
  g_test_add_func ("/engine/working/absent results have none", test_absent_results_have_none);
  return g_test_run ();
}
