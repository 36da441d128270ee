// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/json-text.h"
#include "engine/report.h"
#include "solve.h"

#include <math.h>

static JsonObject *
root_of (JsonNode *report)
{
  return json_node_get_object (report);
}

/* Returns: (nullable): the node at "geometry.slant_m" or "marks[2].arc_m". */
static JsonNode *
find (JsonNode *report, const char *path)
{
  g_auto (GStrv) parts = g_strsplit_set (path, ".[", -1);
  JsonNode *node = report;

  for (guint i = 0; parts[i] != NULL && node != NULL; i++) {
    if (g_str_has_suffix (parts[i], "]"))
      node = json_array_get_element (json_node_get_array (node), (guint) atoi (parts[i]));
    else
      node = json_object_get_member (json_node_get_object (node), parts[i]);
  }
  return node;
}

typedef struct {
  const char *path;
  double value, within;
} Expected;

static void
check_all (const char *start, const char *sets, const Expected *expected, guint n)
{
  g_autoptr (SwSolution) solution = solve_with (start, sets);
  g_autoptr (JsonNode) report = sw_report_to_json (solution);

  for (guint i = 0; i < n; i++) {
    JsonNode *node = find (report, expected[i].path);
    if (isnan (expected[i].value)) {
      g_assert_null (node);
      continue;
    }
    if (node == NULL)
      g_error ("%s is missing", expected[i].path);
    g_test_message ("%s", expected[i].path);
    g_assert_cmpfloat_with_epsilon (json_node_get_double (node),
                                    expected[i].value,
                                    expected[i].within);
  }
}

/* A cone of 2.90 by 0.94 m with 16 strips on a ring of 1 m. Worked by hand with Pythagoras,
 * atan, 2π/16 and 2 sin (π/16); the ring pipe pvc40-1/2 is 0.02134 m across (ASTM D1785: 0.840
 * in = 0.021336 m).
 */
static const char cone[] = "shape.crown_height_m=3.05; shape.ring_height_m=0.15; "
                           "shape.crown_radius_m=0.06; shape.ring_radius_m=1; "
                           "shape.strip_count=16; strip.pixels=50; strip.pitch_m=0.05; "
                           "strip.lead_m=0.12; stand.ring_pipe=pvc40-1/2";
static const Expected cone_numbers[] = {
  { "geometry.slant_m", 3.048540634, 1e-9 },
  { "geometry.lean_deg", 17.95947609, 1e-8 },
  { "geometry.run_m", 2.45, 1e-12 },
  { "geometry.tail_m", 0.478540634, 1e-9 },
  { "geometry.circumference_m", 2 * G_PI, 1e-12 },
  { "geometry.spacing_ring_m", 0.392699082, 1e-9 },
  { "geometry.chord_ring_m", 0.390180644, 1e-9 },
  { "geometry.spacing_crown_m", 0.023561945, 1e-9 },
  { "geometry.strip_pixels_total", 800, 1e-12 },
  { "geometry.pixels_total", 900, 1e-12 },
  { "geometry.overall_height_m", 3.80, 1e-12 },
  { "marks[0].strip", 1, 1e-12 },
  { "marks[0].azimuth_deg", 180, 1e-12 },
  { "marks[0].arc_m", 0, 1e-15 },
  { "marks[15].strip", 16, 1e-12 },
  { "marks[15].azimuth_deg", 157.5, 1e-12 },
  { "marks[15].arc_m", (1 + 0.021336 / 2) * 2 * G_PI * 15 / 16, 1e-9 },
  { "marks[15].chord_m", (1 + 0.021336 / 2) * 2 * 0.195090322016128, 1e-9 },
  { "crown[4].x_m", -0.06, 1e-12 },
  { "crown[0].y_m", 0.06, 1e-12 },
  { "as_built", NAN, 0 },
};

static void
test_a_cone_by_hand (void)
{
  check_all ("lawn", cone, cone_numbers, G_N_ELEMENTS (cone_numbers));
}

/* What does not apply has no key. */
static const Expected open_numbers[] = {
  { "marks[8].azimuth_deg", 90, 1e-12 },       { "marks[8].chord_m", NAN, 0 },
  { "support.guy_tension_n", NAN, 0 },         { "support.guy_factor", NAN, 0 },
  { "support.stake_factor", NAN, 0 },          { "support.gust_limit_guyed_mps", NAN, 0 },
  { "support.socket_depth_needed_m", NAN, 0 }, { "support.tipping_factor_held", NAN, 0 },
};

static void
test_absent_has_no_key (void)
{
  check_all ("porch", "", open_numbers, G_N_ELEMENTS (open_numbers));
}

/* A load of constant power without a solution: `feasible` false and no solved figure. */
static void
test_collapsed_power_has_no_figures (void)
{
  g_autoptr (SwSolution) solution =
    solve_with ("lawn", "power.load=constant-power; power.pixel_a=1; power.cap=1");
  g_autoptr (JsonNode) report = sw_report_to_json (solution);
  JsonObject *power = json_object_get_object_member (root_of (report), "power");

  g_assert_false (json_object_get_boolean_member (power, "feasible"));
  g_assert_cmpuint (json_object_get_size (power), ==, 1);
}

/* The cap solved alone leaves out only what a white frame would do. */
static void
test_only_white_collapses (void)
{
  g_autoptr (SwSolution) solution =
    solve_with ("lawn", "power.load=constant-power; power.pixel_a=0.5; power.cap=0.1");
  g_autoptr (JsonNode) report = sw_report_to_json (solution);
  JsonObject *power = json_object_get_object_member (root_of (report), "power");

  g_assert_true (json_object_get_boolean_member (power, "feasible"));
  g_assert_true (json_object_has_member (power, "tree_w"));
  g_assert_false (json_object_has_member (power, "full_white"));
}

static void
test_measured_ring (void)
{
  static const Expected expected[] = {
    { "as_built.perimeter_m", 6.6, 1e-12 },
    { "as_built.marks[1].arc_m", 6.6 / 20, 1e-12 },
    { "as_built.marks[19].azimuth_deg", 162, 1e-9 },
    { "as_built.marks[3].radius_m", 6.6 / (2 * G_PI), 1e-9 },
  };

  check_all ("lawn", "as_built.ring_length_m=6.6", expected, G_N_ELEMENTS (expected));
}

/* JSON holds every bit of the solution's numbers. */
static void
test_numbers_read_back_to_the_same_bits (void)
{
  g_autoptr (SwSolution) solution = solve_with ("landmark", "");
  g_autoptr (JsonNode) report = sw_report_to_json (solution);
  g_autofree char *text = sw_json_to_text (report, NULL);
  g_autoptr (JsonNode) again = json_from_string (text, NULL);
  double arc_m = json_node_get_double (find (again, "marks[7].arc_m"));
  double slant_m = json_node_get_double (find (again, "geometry.slant_m"));

  g_assert_cmpint (memcmp (&slant_m, &solution->cone.slant_m, sizeof slant_m), ==, 0);
  g_assert_cmpint (
    memcmp (&arc_m, &g_array_index (solution->marks, SwRingMark, 7).arc_m, sizeof arc_m),
    ==,
    0);
}

static void
test_lists_are_whole (void)
{
  g_autoptr (SwSolution) solution = solve_with ("landmark", "");
  g_autoptr (JsonNode) report = sw_report_to_json (solution);
  JsonObject *root = root_of (report);
  JsonObject *data = json_object_get_object_member (root, "data");
  double to_pay = 0;
  JsonArray *bom = json_object_get_array_member (root, "bom");

  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "marks")),
                    ==,
                    36);
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "crown")),
                    ==,
                    36);
  g_assert_cmpint (json_array_get_length (json_object_get_array_member (data, "rows")),
                   ==,
                   json_object_get_int_member (data, "ports"));
  g_assert_cmpuint (json_array_get_length (json_object_get_array_member (root, "cuts")),
                    ==,
                    solution->cuts->len);
  for (guint i = 0; i < json_array_get_length (bom); i++)
    to_pay += json_object_get_double_member (json_array_get_object_element (bom, i), "to_pay");
  g_assert_cmpfloat_with_epsilon (
    json_object_get_double_member (json_object_get_object_member (root, "cost"), "total"),
    to_pay,
    1e-9);
}

static void
test_findings_carry_their_remedy (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "strip.pixels=60");
  g_autoptr (JsonNode) report = sw_report_to_json (solution);

  g_assert_cmpstr (json_node_get_string (find (report, "findings[0].level")), ==, "stop");
  g_assert_cmpstr (json_node_get_string (find (report, "findings[0].key")), ==, "strip.pixels");
  g_assert_cmpstr (json_node_get_string (find (report, "findings[0].remedy.key")),
                   ==,
                   "strip.pixels");
  g_assert_cmpfloat_with_epsilon (
    json_node_get_double (find (report, "findings[0].remedy.value")),
    50,
    1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/report/a cone by hand", test_a_cone_by_hand);
  g_test_add_func ("/engine/report/absent has no key", test_absent_has_no_key);
  g_test_add_func ("/engine/report/collapsed power has no figures",
                   test_collapsed_power_has_no_figures);
  g_test_add_func ("/engine/report/only white collapses", test_only_white_collapses);
  g_test_add_func ("/engine/report/measured ring", test_measured_ring);
  g_test_add_func ("/engine/report/numbers read back to the same bits",
                   test_numbers_read_back_to_the_same_bits);
  g_test_add_func ("/engine/report/lists are whole", test_lists_are_whole);
  g_test_add_func ("/engine/report/findings carry their remedy",
                   test_findings_carry_their_remedy);
  return g_test_run ();
}
