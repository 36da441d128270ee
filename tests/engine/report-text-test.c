// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/json-text.h"
#include "engine/report.h"
#include "solve.h"

static void expect_shown (const char *text, JsonNode *node);

static void
expect_members_shown (const char *text, JsonObject *object)
{
  g_autoptr (GList) names = json_object_get_members (object);

  for (GList *name = names; name != NULL; name = name->next) {
    g_assert_nonnull (strstr (text, name->data));
    expect_shown (text, json_object_get_member (object, name->data));
  }
}

/* Each name and each number to the last digit stands somewhere in the text. */
static void
expect_shown (const char *text, JsonNode *node)
{
  if (JSON_NODE_HOLDS_OBJECT (node)) {
    expect_members_shown (text, json_node_get_object (node));
  } else if (JSON_NODE_HOLDS_ARRAY (node)) {
    JsonArray *array = json_node_get_array (node);
    for (guint i = 0; i < json_array_get_length (array); i++)
      expect_shown (text, json_array_get_element (array, i));
  } else if (json_node_get_value_type (node) == G_TYPE_STRING) {
    g_assert_nonnull (strstr (text, json_node_get_string (node)));
  } else if (json_node_get_value_type (node) != G_TYPE_BOOLEAN) {
    g_autofree char *number = sw_json_number (json_node_get_double (node));
    if (strstr (text, number) == NULL)
      g_error ("%s is not shown", number);
  }
}

static void
test_shows_what_the_json_has (void)
{
  static const char *const sets[] = { "", "as_built.ring_length_m=6.5; strip.pixels=60" };

  for (guint i = 0; i < G_N_ELEMENTS (sets); i++) {
    g_autoptr (SwSolution) solution = solve_with ("lawn", sets[i]);
    g_autoptr (JsonNode) json = sw_report_to_json (solution);
    g_autofree char *text = sw_report_to_text (solution);
    JsonObject *root = json_node_get_object (json);
    json_object_remove_member (root, "findings"); /* sentences, not names */
    json_object_remove_member (root, "working");  /* only asked for */
    expect_members_shown (text, root);
  }
}

static void
test_findings_are_sentences (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "strip.pixels=60");
  g_autofree char *text = sw_report_to_text (solution);

  g_assert_nonnull (strstr (text, "\nfindings\n  stop  Strips are "));
  g_assert_nonnull (strstr (text, "\n        puts it right: strip.pixels = 50\n"));
}

/* Lines of a table are as long as their head tells: columns stand under their names. */
static void
test_tables_are_aligned (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  g_autofree char *text = sw_report_to_text (solution);
  g_auto (GStrv) lines =
    g_strsplit (strstr (text, "\nmarks\n") + strlen ("\nmarks\n"), "\n", -1);

  for (guint i = 1; i <= 20; i++)
    g_assert_cmpuint (strlen (lines[i]), ==, strlen (lines[0]));
}

static void
test_bars_are_told_apart (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  g_autofree char *text = sw_report_to_text (solution);

  g_assert_nonnull (strstr (text, "  1.9 | 1.9  ")); /* two boards of the foot, a bar each */
}

static void
test_same_design_same_text (void)
{
  static const char *const starts[] = { "porch", "lawn", "landmark" };

  for (guint i = 0; i < G_N_ELEMENTS (starts); i++) {
    g_autoptr (SwSolution) first = solve_with (starts[i], "");
    g_autoptr (SwSolution) second = solve_with (starts[i], "");
    g_autofree char *a = sw_report_to_text (first);
    g_autofree char *b = sw_report_to_text (second);
    g_assert_cmpstr (a, ==, b);
    g_assert_true (g_utf8_validate (a, -1, NULL));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/report-text/shows what the json has", test_shows_what_the_json_has);
  g_test_add_func ("/engine/report-text/findings are sentences", test_findings_are_sentences);
  g_test_add_func ("/engine/report-text/tables are aligned", test_tables_are_aligned);
  g_test_add_func ("/engine/report-text/bars are told apart", test_bars_are_told_apart);
  g_test_add_func ("/engine/report-text/same design, same text", test_same_design_same_text);
  return g_test_run ();
}
