// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-file.h"
#include "engine/error.h"
#include "engine/own-rows.h"
#include "engine/solution.h"
#include "raised.h"

#include <glib/gstdio.h>
#include <string.h>

/* Invented: an aluminium mast of 50 mm; mass 2.7 g/cm³ · π/4·(50² − 44²) mm² = 1.196 kg/m. */
#define MAST(name, od)                                                                         \
  "{\"part\": \"pipe\", \"name\": \"" name "\", \"material\": \"aluminium\", \"od_mm\": " od   \
  ", \"wall_mm\": 3, \"inside_mm\": 44, \"mass_kg_per_m\": 1.196, \"stock_m\": 6, "            \
  "\"price_usd_per_m\": 9, \"source\": \"own\"}"
#define ROPE                                                                                   \
  "{\"part\": \"line\", \"name\": \"Shed rope\", \"kind\": \"rope\", \"diameter_mm\": 8, "     \
  "\"break_n\": 9000, \"stiffness_n\": 60000, \"mass_kg_per_m\": 0.04, "                       \
  "\"price_usd_per_m\": 1, \"source\": \"own\"}"

typedef struct {
  char *folder;        /* owned */
  GPtrArray *problems; /* owned */
} Shed;

static void
shed_up (Shed *shed, gconstpointer unused)
{
  shed->folder = g_dir_make_tmp ("own-rows-XXXXXX", NULL);
  shed->problems = g_ptr_array_new_with_free_func (g_free);
}

static void
shed_down (Shed *shed, gconstpointer unused)
{
  g_autoptr (GDir) dir = g_dir_open (shed->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (shed->folder, name, NULL);
    g_remove (path);
  }
  g_rmdir (shed->folder);
  g_free (shed->folder);
  g_ptr_array_unref (shed->problems);
}

static void
keep (const Shed *shed, const char *name, const char *text)
{
  g_autofree char *path = g_build_filename (shed->folder, name, NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static SwCatalogue *
load (Shed *shed)
{
  return sw_own_rows_load (shed->folder, sw_catalogue_builtin (NULL), shed->problems);
}

static SwDesign *
design_of (const char *text)
{
  g_autoptr (GError) error = NULL;
  SwDesign *design = sw_design_load_from_data (text, strlen (text), &error);

  g_assert_no_error (error);
  return design;
}

static double
post_od_m (SwDesign *design, const SwCatalogue *catalogue)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSolution) solution = sw_solution_new (design, catalogue, &error);

  g_assert_no_error (error);
  return solution->post_od_m;
}

static void
test_own_rows_stand_behind_ours (Shed *shed, gconstpointer unused)
{
  keep (shed, "masts.json", "{\"my-mast\": " MAST ("Mast", "50") "}");
  keep (shed, "ropes.json", "{\"my-rope\": " ROPE "}");
  keep (shed, "notes.txt", "no rows");
  g_autoptr (SwCatalogue) catalogue = load (shed);
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (catalogue, "pipe");
  g_autoptr (GPtrArray) ours = sw_catalogue_ids (sw_catalogue_builtin (NULL), "pipe");

  g_assert_cmpuint (shed->problems->len, ==, 0);
  g_assert_cmpuint (ids->len, ==, ours->len + 1);
  g_assert_cmpstr (ids->pdata[ids->len - 1], ==, "my-mast");
  g_assert_cmpstr (sw_catalogue_name (catalogue, "line", "my-rope"), ==, "Shed rope");
  g_assert_cmpfloat_with_epsilon (sw_catalogue_pipe (catalogue, "my-mast")->od_m, 0.05, 1e-15);
  g_assert_nonnull (sw_catalogue_pipe (catalogue, "sch40-2"));
  g_assert_nonnull (sw_catalogue_nth_fitting (catalogue, 0));
}

static void
test_no_folder_has_no_rows (Shed *shed, gconstpointer unused)
{
  g_autoptr (SwCatalogue) catalogue =
    sw_own_rows_load ("/no/such/folder", sw_catalogue_builtin (NULL), shed->problems);

  g_assert_cmpuint (shed->problems->len, ==, 0);
  g_assert_nonnull (sw_catalogue_pipe (catalogue, "sch40-2"));
}

static const struct {
  const char *row, *told; /* a member of the file's object; behind the file's name */
} bad[] = {
  { "\"sch40-2\": " MAST ("Mine", "50"), "sch40-2: id: does not begin with \"my-\"" },
  { "\"my-\": " MAST ("Mine", "50"), "my-: id: " },
  { "\"my-a\": 3", "my-a: part: " },
  { "\"my-a\": {\"part\": \"goods\"}",
    "my-a: part: missing or unknown, pipe | hook | line is allowed" },
  { "\"my-a\": {\"part\": \"pipe\"}", "my-a: name: missing" },
  { "\"my-a\": {\"part\": \"pipe\", \"id\": \"my-b\"}", "my-a: id: no such key" },
  { "\"my-a\": {\"part\": \"pipe\", \"nmae\": \"x\"}", "my-a: nmae: no such key" },
  { "\"my-a\": " MAST ("Wide", "5000"), "my-a: od_mm: 5000 is outside" },
  { "\"my-a\": " MAST ("Odd", "60"), "my-a: inside: does not agree" },
  { "\"my-mast\": " ROPE, "my-mast: id: stands for another row already" },
  { "\"my-a\": {\"part\": \"hook\", \"thread\": \"m99\"}", "my-a: thread: " },
};

static void
test_a_bad_row_is_told_and_the_rest_loads (Shed *shed, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autofree char *text =
      g_strdup_printf ("{%s, \"my-last\": " MAST ("Last", "50") "}", bad[i].row);
    g_autofree char *told = g_strconcat ("b.json: ", bad[i].told, NULL);
    g_ptr_array_set_size (shed->problems, 0);
    keep (shed, "a.json", "{\"my-mast\": " MAST ("Mast", "50") "}");
    keep (shed, "b.json", text);
    g_autoptr (SwCatalogue) catalogue = load (shed);
    g_assert_cmpuint (shed->problems->len, ==, 1);
    g_test_message ("%s", (char *) shed->problems->pdata[0]);
    g_assert_true (g_str_has_prefix (shed->problems->pdata[0], told));
    g_assert_nonnull (sw_catalogue_pipe (catalogue, "my-mast"));
    g_assert_nonnull (sw_catalogue_pipe (catalogue, "my-last"));
    g_assert_null (sw_catalogue_pipe (catalogue, "my-a"));
    g_assert_cmpstr (sw_catalogue_name (catalogue, "pipe", "sch40-2"), !=, "Mine");
  }
}

static void
test_a_bad_file_is_told_and_the_rest_loads (Shed *shed, gconstpointer unused)
{
  static const char *const texts[] = {
    "",    "{", "[]", "{\"my-a\": 1, \"my-a\": 2}", "{\"my-a\": {\"x\": {\"y\": {\"z\": 1}}}}",
    "\xff"
  };

  keep (shed, "good.json", "{\"my-mast\": " MAST ("Mast", "50") "}");
  for (guint i = 0; i < G_N_ELEMENTS (texts); i++) {
    g_ptr_array_set_size (shed->problems, 0);
    keep (shed, "bad.json", texts[i]);
    g_autoptr (SwCatalogue) catalogue = load (shed);
    g_assert_cmpuint (shed->problems->len, ==, 1);
    g_assert_true (g_str_has_prefix (shed->problems->pdata[0], "bad.json: "));
    g_assert_nonnull (sw_catalogue_pipe (catalogue, "my-mast"));
  }
}

static void
test_a_design_carries_what_it_uses (Shed *shed, gconstpointer unused)
{
  keep (shed, "a.json", "{\"my-mast\": " MAST ("Mast", "50") ", \"my-rope\": " ROPE "}");
  g_autoptr (SwCatalogue) catalogue = load (shed);
  g_autoptr (SwDesign) bare = design_of ("{\"stand\": {\"post\": \"my-mast\"}}");
  g_autoptr (SwDesign) design = sw_own_rows_carry (bare, catalogue);
  g_autoptr (SwDesign) again = sw_own_rows_carry (design, catalogue);
  g_autofree char *text = sw_design_to_data (design, NULL);
  g_autoptr (SwDesign) read = design_of (text);

  g_assert_null (bare->own_rows);
  g_assert_true (again == design);
  g_assert_false (sw_design_equal (bare, design));
  g_assert_true (sw_design_equal (read, design));
  g_assert_nonnull (strstr (text, "\"my-mast\": {"));
  g_assert_null (strstr (text, "my-rope"));
  /* on a computer without the folder */
  g_assert_cmpfloat_with_epsilon (post_od_m (read, sw_catalogue_builtin (NULL)), 0.05, 1e-15);
}

static void
test_what_is_used_no_more_is_dropped (Shed *shed, gconstpointer unused)
{
  g_autoptr (SwDesign) design =
    design_of ("{\"catalogue\": {\"my-mast\": " MAST ("Mast", "50") "}}");
  g_autoptr (SwDesign) carried = sw_own_rows_carry (design, sw_catalogue_builtin (NULL));
  g_autofree char *text = sw_design_to_data (carried, NULL);

  g_assert_nonnull (design->own_rows);
  g_assert_null (strstr (text, "\"catalogue\""));
}

static void
test_the_designs_copy_wins (Shed *shed, gconstpointer unused)
{
  keep (shed, "a.json", "{\"my-mast\": " MAST ("Shed's", "50") "}");
  g_autoptr (SwCatalogue) catalogue = load (shed);
  g_autoptr (SwDesign) design =
    design_of ("{\"stand\": {\"post\": \"my-mast\"}, "
               "\"catalogue\": {\"my-mast\": " MAST ("Design's", "50.5") "}}");
  g_autoptr (SwDesign) carried = sw_own_rows_carry (design, catalogue);
  g_autoptr (SwSolution) solution = sw_solution_new (carried, catalogue, NULL);
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (solution->catalogue, "pipe");
  g_autoptr (GPtrArray) before = sw_catalogue_ids (catalogue, "pipe");

  g_assert_true (carried == design);
  g_assert_cmpfloat_with_epsilon (solution->post_od_m, 0.0505, 1e-15);
  g_assert_cmpstr (sw_catalogue_name (solution->catalogue, "pipe", "my-mast"), ==, "Design's");
  g_assert_cmpuint (ids->len, ==, before->len);
}

static void
test_an_unknown_id_opens_with_a_stop (Shed *shed, gconstpointer unused)
{
  g_autoptr (SwDesign) design = design_of ("{\"stand\": {\"post\": \"my-mast\"}}");
  g_autoptr (SwCatalogue) catalogue = load (shed);
  g_autoptr (SwDesign) carried = sw_own_rows_carry (design, catalogue);
  g_autoptr (SwSolution) solution = sw_solution_new (carried, catalogue, NULL);

  g_assert_nonnull (solution);
  g_assert_nonnull (find_finding (solution, "unknown-post"));
}

static void
test_an_own_post_is_bought_and_known (Shed *shed, gconstpointer unused)
{
  keep (shed, "a.json", "{\"my-mast\": " MAST ("Mast", "50") "}");
  g_autoptr (SwCatalogue) catalogue = load (shed);
  g_autoptr (SwDesign) design = design_of ("{\"stand\": {\"post\": \"my-mast\"}}");
  g_autoptr (SwDesign) carried = sw_own_rows_carry (design, catalogue);
  g_autoptr (SwSolution) solution = sw_solution_new (carried, catalogue, NULL);
  gboolean bought = FALSE;

  for (guint i = 0; i < solution->bom->len; i++)
    bought |= strcmp (g_array_index (solution->bom, SwPart, i).id, "my-mast") == 0;
  g_assert_true (bought);
  g_assert_null (find_finding (solution, "unknown-post"));
}

/* Strict in a design, as every key of its file. */
static void
test_a_bad_copy_refuses_the_design (Shed *shed, gconstpointer unused)
{
  static const struct {
    const char *value, *told;
  } cases[] = {
    { "3", "catalogue: 3 is not an object" },
    { "{\"sch40-2\": " MAST ("Mine", "50") "}", "catalogue.sch40-2.id: does not begin" },
    { "{\"my-a\": " MAST ("Wide", "5000") "}", "catalogue.my-a.od_mm: 5000 is outside" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autofree char *text = g_strdup_printf ("{\"catalogue\": %s}", cases[i].value);
    g_autoptr (GError) error = NULL;
    g_assert_null (sw_design_load_from_data (text, strlen (text), &error));
    g_test_message ("%s", error->message);
    g_assert_true (g_str_has_prefix (error->message, cases[i].told));
  }
}

int
main (int argc, char **argv)
{
  static const struct {
    const char *path;
    void (*run) (Shed *shed, gconstpointer unused);
  } tests[] = {
    { "own rows stand behind ours", test_own_rows_stand_behind_ours },
    { "no folder has no rows", test_no_folder_has_no_rows },
    { "a bad row is told and the rest loads", test_a_bad_row_is_told_and_the_rest_loads },
    { "a bad file is told and the rest loads", test_a_bad_file_is_told_and_the_rest_loads },
    { "a design carries what it uses", test_a_design_carries_what_it_uses },
    { "what is used no more is dropped", test_what_is_used_no_more_is_dropped },
    { "the design's copy wins", test_the_designs_copy_wins },
    { "an unknown id opens with a stop", test_an_unknown_id_opens_with_a_stop },
    { "an own post is bought and known", test_an_own_post_is_bought_and_known },
    { "a bad copy refuses the design", test_a_bad_copy_refuses_the_design },
  };

  g_test_init (&argc, &argv, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (tests); i++) {
    g_autofree char *path = g_strconcat ("/engine/own-rows/", tests[i].path, NULL);
    g_test_add (path, Shed, NULL, shed_up, tests[i].run, shed_down);
  }
  return g_test_run ();
}
