// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/basis.h"
#include "engine/report.h"
#include "engine/results.h"
#include "solve.h"

/* Designs that together show every key there is. */
static const char *const designs[] = {
  "",
  "shape.coverage_deg=180; stand.foot=socket; as_built.ring_length_m=6.5",
  "strip.pixels=60; stand.ring_held_by=foot; stand.foot=bucket",
  "power.load=constant-power; power.pixel_a=1; power.cap=1",
};

static void check_node (const char *path, JsonNode *node, JsonObject *basis);

static void
check_object (const char *path, JsonObject *object, JsonObject *basis)
{
  g_autoptr (GList) names = json_object_get_members (object);

  for (GList *name = names; name != NULL; name = name->next) {
    g_autofree char *full = *path == '\0'
                              ? g_strdup (name->data)
                              : g_strdup_printf ("%s.%s", path, (char *) name->data);
    check_node (full, json_object_get_member (object, name->data), basis);
  }
}

static void
check_row (const char *path, JsonObject *basis)
{
  SwBasis row;

  if (!sw_basis_find (path, &row) || !json_object_has_member (basis, path))
    g_error ("%s has no basis", path);
  g_assert_cmpstr (row.key, ==, path);
  g_autofree char *line = g_strdup_printf ("%s; %s", row.formula, row.source);
  g_assert_cmpstr (json_object_get_string_member (basis, path), ==, line);
  g_assert_cmpuint (strlen (row.formula), >, 2);
  g_assert_cmpuint (strlen (row.source), >, 2);
  g_assert_null (strchr (line, '\n'));
}

static void
check_node (const char *path, JsonNode *node, JsonObject *basis)
{
  if (strcmp (path, "basis") == 0 || strcmp (path, "working") == 0)
    return;
  if (JSON_NODE_HOLDS_OBJECT (node)) {
    check_object (path, json_node_get_object (node), basis);
    return;
  }
  check_row (path, basis);
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return;
  JsonArray *array = json_node_get_array (node);
  for (guint i = 0; i < json_array_get_length (array); i++) {
    if (JSON_NODE_HOLDS_OBJECT (json_array_get_element (array, i)))
      check_object (path, json_array_get_object_element (array, i), basis);
  }
}

static void
test_each_key_has_its_basis (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (designs); i++) {
    g_autoptr (SwSolution) solution = solve_with ("lawn", designs[i]);
    g_autoptr (JsonNode) report = sw_report_to_json (solution);
    JsonObject *root = json_node_get_object (report);
    check_object ("", root, json_object_get_object_member (root, "basis"));
  }
}

/* The other way round: a basis for what is not in the report would be a stale row. */
static void
test_absent_numbers_have_none (void)
{
  g_autoptr (SwSolution) solution =
    solve_with ("lawn", "power.load=constant-power; power.pixel_a=1; power.cap=1");
  g_autoptr (GArray) rows = sw_basis_of (solution);
  gboolean feasible = FALSE;

  for (guint i = 0; i < rows->len; i++) {
    const char *key = g_array_index (rows, SwBasis, i).key;
    g_assert_cmpstr (key, !=, "power.tree_w");
    g_assert_cmpstr (key, !=, "power.full_white.tree_w");
    g_assert_cmpstr (key, !=, "as_built.perimeter_m");
    feasible = feasible || strcmp (key, "power.feasible") == 0;
  }
  g_assert_true (feasible);
}

static void
test_each_row_stands_once (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", designs[1]);
  g_autoptr (GArray) rows = sw_basis_of (solution);
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);
  SwBasis row;

  for (guint i = 0; i < rows->len; i++)
    g_assert_true (
      g_hash_table_add (seen, (gpointer) (guintptr) g_array_index (rows, SwBasis, i).key));
  g_assert_false (sw_basis_find ("geometry.slant", &row));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/basis/each key has its basis", test_each_key_has_its_basis);
  g_test_add_func ("/engine/basis/absent numbers have none", test_absent_numbers_have_none);
  g_test_add_func ("/engine/basis/each row stands once", test_each_row_stands_once);
  return g_test_run ();
}
