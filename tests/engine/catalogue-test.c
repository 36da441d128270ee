// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/catalogue.h"
#include "engine/design-keys.h"
#include "engine/error.h"

#include <math.h>
#include <string.h>

#define INCH_M 0.0254

static const SwCatalogue *
builtin (void)
{
  g_autoptr (GError) error = NULL;
  const SwCatalogue *catalogue = sw_catalogue_builtin (&error);

  g_assert_no_error (error);
  g_assert_nonnull (catalogue);
  return catalogue;
}

static const SwPipe *
pipe_of (const char *id)
{
  const SwPipe *pipe = sw_catalogue_pipe (builtin (), id);

  if (pipe == NULL)
    g_error ("no pipe %s", id);
  return pipe;
}

/* Area, second moment and section modulus of a round tube from its OD and wall, in inches. */
typedef struct {
  double a, i, s;
} Section;

static Section
section_of (const SwPipe *pipe)
{
  double outer = pipe->od_m / INCH_M, inner = outer - 2 * pipe->wall_m / INCH_M;
  double i = G_PI / 64 * (pow (outer, 4) - pow (inner, 4));

  return (Section){ G_PI / 4 * (outer * outer - inner * inner), i, 2 * i / outer };
}

/* Source: I and S as printed in Mott, Machine Elements in Mechanical Design, table A16-6
 * (schedule 40 steel pipe); 0 where that table has no such row. Three significant digits.
 */
static void
test_steel_pipe_sections (void)
{
  static const struct {
    const char *id;
    double i_in4, s_in3;
  } cases[] = {
    { "sch40-1-1/4", 0.1947, 0.2346 }, { "sch40-1-1/2", 0.3099, 0.3262 },
    { "sch40-2", 0.6658, 0.5607 },     { "sch40-2-1/2", 1.530, 1.064 },
    { "sch40-3", 3.017, 1.724 },
  };

  for (guint k = 0; k < G_N_ELEMENTS (cases); k++) {
    Section section = section_of (pipe_of (cases[k].id));
    g_assert_cmpfloat_with_epsilon (section.i / cases[k].i_in4, 1, 1.5e-3);
    g_assert_cmpfloat_with_epsilon (section.s / cases[k].s_in3, 1, 1.5e-3);
  }
}

/* Source: ASME B36.10M and NEC chapter 9 table 4, other rows than the data was taken from:
 * inside diameter of schedule 40 pipe, EMT, RMC and IMC = OD − 2·wall; the ID of 2 in EMT and
 * of 2 in schedule 40 pipe are both 2.067 in.
 */
static void
test_inside_is_od_less_two_walls (void)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (builtin (), "pipe");

  g_assert_cmpuint (ids->len, >=, 39);
  for (guint i = 0; i < ids->len; i++) {
    const SwPipe *pipe = pipe_of (ids->pdata[i]);
    double slack_m = pipe->material == SW_MATERIAL_PVC ? 0.030 * INCH_M : 0.0006 * INCH_M;
    g_assert_cmpfloat_with_epsilon (pipe->id_m, pipe->od_m - 2 * pipe->wall_m, slack_m);
  }
  g_assert_cmpfloat_with_epsilon (pipe_of ("emt-2")->id_m, pipe_of ("sch40-2")->id_m, 1e-12);
}

/* Densities from handbooks, not from the data: steel 490 lb/ft³ (AISC manual), aluminium 6061
 * 0.0975 lb/in³, PVC specific gravity 1.40 (ASTM D1784 compounds) = 1400 kg/m³. Conduit has
 * zinc, couplings and a tolerance on top, PVC a wall above its minimum.
 */
static const struct {
  double kg_per_m3, tolerance;
} densities[] = {
  [SW_MATERIAL_STEEL_PIPE] = { 7849, 0.005 },
  [SW_MATERIAL_STEEL_CONDUIT] = { 7849, 0.02 },
  [SW_MATERIAL_ALUMINIUM] = { 2698.8, 0.004 },
  [SW_MATERIAL_PVC] = { 1400, 0.015 },
};

static void
check_mass (const SwPipe *pipe)
{
  double area_m2 = G_PI / 4 * (pipe->od_m * pipe->od_m - pipe->id_m * pipe->id_m);
  double mass_kg_per_m = area_m2 * densities[pipe->material].kg_per_m3;

  if (fabs (pipe->mass_kg_per_m / mass_kg_per_m - 1) > densities[pipe->material].tolerance)
    g_error ("%s: %g kg/m, expected %g", pipe->id, pipe->mass_kg_per_m, mass_kg_per_m);
}

static void
test_mass_is_area_times_density (void)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (builtin (), "pipe");

  for (guint i = 0; i < ids->len; i++)
    check_mass (pipe_of (ids->pdata[i]));
}

/* Worked by hand from ANSI C80.3, C80.6 and ASME B36.10M sizes: diametral clearance of a pipe
 * in the next, inches. Below zero: it does not go in.
 */
static void
test_telescoping_clearances (void)
{
  static const struct {
    const char *inner, *outer;
    double clearance_in;
  } cases[] = {
    { "emt-1-1/4", "emt-1-1/2", 0.100 },    { "emt-1", "emt-1-1/4", 0.217 },
    { "emt-1-1/2", "emt-2", 0.327 },        { "sch40-1-1/2", "sch40-2", 0.167 },
    { "rmc-1-1/2", "rmc-2", 0.183 },        { "imc-1-1/4", "imc-1-1/2", 0.045 },
    { "sch40-2", "sch40-2-1/2", 0.094 },    { "sch40-3", "sch40-3-1/2", 0.048 },
    { "rmc-1-1/4", "rmc-1-1/2", -0.036 },   { "sch40-1-1/4", "sch40-1-1/2", -0.050 },
    { "sch40-1-1/4", "rmc-1-1/2", -0.036 },
  };

  for (guint k = 0; k < G_N_ELEMENTS (cases); k++) {
    double clearance_m = pipe_of (cases[k].outer)->id_m - pipe_of (cases[k].inner)->od_m;
    g_assert_cmpfloat_with_epsilon (clearance_m / INCH_M, cases[k].clearance_in, 1e-9);
  }
}

/* Source: ASME B36.10M in millimetres: NPS 1 is 33.4 mm, NPS 2 is 60.3 mm outside. */
static void
test_pipe_ods_in_millimetres (void)
{
  g_assert_cmpfloat_with_epsilon (pipe_of ("pvc40-1")->od_m, 0.0334, 1e-15);
  g_assert_cmpfloat_with_epsilon (pipe_of ("pvc40-1")->od_m, 1.315 * 0.0254, 5e-6);
  g_assert_cmpfloat_with_epsilon (pipe_of ("sch40-2")->od_m, 0.0603, 5e-5);
  g_assert_cmpfloat_with_epsilon (pipe_of ("rmc-2")->od_m, pipe_of ("sch40-2")->od_m, 1e-15);
}

static void
test_ids_of_the_contract (void)
{
  static const char *const families[] = { "emt", "rmc", "imc", "sch40", "pvc40" };
  static const char *const sizes[] = { "1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3" };

  for (guint f = 0; f < G_N_ELEMENTS (families); f++) {
    for (guint s = 0; s < G_N_ELEMENTS (sizes); s++) {
      g_autofree char *id = g_strdup_printf ("%s-%s", families[f], sizes[s]);
      g_assert_cmpstr (pipe_of (id)->id, ==, id);
    }
  }
  g_assert_nonnull (sw_catalogue_pipe (builtin (), "al-2.00x0.125"));
  g_assert_null (sw_catalogue_pipe (builtin (), "sch40-9"));
  g_assert_null (sw_catalogue_pipe (builtin (), NULL));
}

/* Source: ASME B18.2.8 table 1a, normal fit (Machinery's Handbook, 31st edition: 9/32, 11/32,
 * 13/32 in, no. 2 drill) and ISO 273 medium series (6.6, 9, 11 mm).
 */
static void
test_hook_holes (void)
{
  static const struct {
    const char *id;
    double hole_mm;
  } cases[] = {
    { "eye-10-24", 5.6134 }, { "eye-1/4", 7.14375 },  { "j-1/4", 7.14375 },
    { "eye-5/16", 8.73125 }, { "eye-3/8", 10.31875 }, { "eye-m6", 6.6 },
    { "eye-m8", 9 },         { "eye-m10", 11 },
  };

  for (guint k = 0; k < G_N_ELEMENTS (cases); k++) {
    const SwHook *hook = sw_catalogue_hook (builtin (), cases[k].id);
    g_assert_nonnull (hook);
    g_assert_cmpfloat_with_epsilon (hook->hole_m * 1000, cases[k].hole_mm, 1e-9);
  }
}

static void
test_hooks_have_their_nuts (void)
{
  g_autoptr (GPtrArray) ids = sw_catalogue_ids (builtin (), "hook");

  g_assert_cmpuint (ids->len, >, 0);
  for (guint i = 0; i < ids->len; i++) {
    const SwHook *hook = sw_catalogue_hook (builtin (), ids->pdata[i]);
    g_autofree char *nut = g_strconcat ("nut-", hook->thread, NULL);
    g_autofree char *washer = g_strconcat ("washer-", hook->thread, NULL);
    g_assert_nonnull (sw_catalogue_goods (builtin (), nut));
    g_assert_nonnull (sw_catalogue_goods (builtin (), washer));
  }
}

/* Source: MIL-DTL-83420 for 1/8 and 3/16 in 7x19 (2000 and 4200 lbf; 1 lbf = 4.44822 N);
 * MIL-C-5040H type III, 550 lbf.
 */
static void
test_line_breaks (void)
{
  static const struct {
    const char *id;
    double break_n;
  } cases[] = {
    { "wire-1/8-7x19", 8896.44 },
    { "wire-3/16-7x19", 18682.5 },
    { "nylon-550", 2446.52 },
  };

  for (guint k = 0; k < G_N_ELEMENTS (cases); k++) {
    const SwLine *line = sw_catalogue_line (builtin (), cases[k].id);
    g_assert_nonnull (line);
    g_assert_cmpfloat_with_epsilon (line->break_n / cases[k].break_n, 1, 1e-5);
  }
}

/* Source: ALSC PS 20, dry: 2 x 4 is 38 x 89 mm, 2 x 6 is 38 x 140 mm, 2 x 12 is 38 x 286 mm. */
static void
test_board_sizes (void)
{
  static const struct {
    const char *id;
    double width_mm;
  } cases[] = { { "board-2x4", 89 }, { "board-2x6", 140 }, { "board-2x12", 286 } };

  for (guint k = 0; k < G_N_ELEMENTS (cases); k++) {
    const SwBoard *board = sw_catalogue_board (builtin (), cases[k].id);
    g_assert_nonnull (board);
    g_assert_cmpfloat_with_epsilon (board->width_m * 1000, cases[k].width_mm, 0.5);
    g_assert_cmpfloat_with_epsilon (board->thickness_m * 1000, 38, 0.5);
  }
}

static void
test_starting_ids_are_known (void)
{
  guint seen = 0;

  for (guint i = 0; i < sw_n_keys (); i++) {
    if (sw_key_at (i)->type != SW_KEY_ID)
      continue;
    if (sw_catalogue_name (builtin (), sw_key_at (i)->kind, sw_key_at (i)->start_text) == NULL)
      g_error ("%s: no %s %s",
               sw_key_at (i)->path,
               sw_key_at (i)->kind,
               sw_key_at (i)->start_text);
    seen++;
  }
  g_assert_cmpuint (seen, >=, 6);
}

static gpointer
load_cb (gpointer data)
{
  return (gpointer) (guintptr) sw_catalogue_builtin (NULL);
}

static void
test_threads_share_one (void)
{
  GThread *threads[8];

  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    threads[i] = g_thread_new ("load", load_cb, NULL);
  for (guint i = 0; i < G_N_ELEMENTS (threads); i++)
    g_assert_true (g_thread_join (threads[i]) == (gconstpointer) builtin ());
}

static SwCatalogue *
read_pipes (const char *text, GError **error)
{
  g_autoptr (GHashTable) texts =
    g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);

  g_hash_table_insert (texts, g_strdup ("pipes.json"), g_strdup (text));
  return sw_catalogue_new_from_texts (texts, error);
}

#define GOOD_WORDS                                                                             \
  "\"id\": \"x-1\", \"name\": \"x\", \"material\": \"pvc\", \"source\": \"own\""
#define GOOD_SIZES                                                                             \
  "\"od_mm\": 40, \"wall_mm\": 2, \"inside_mm\": 36, \"mass_kg_per_m\": 0.3, \"stock_m\": 4, " \
  "\"price_usd_per_m\": 2"
#define FILE_OF(row) "{ \"about\": \"\", \"rows\": [ " row " ] }"

static void
test_units_of_choice (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCatalogue) catalogue =
    read_pipes (FILE_OF ("{" GOOD_WORDS ", " GOOD_SIZES "}"), &error);

  g_assert_no_error (error);
  const SwPipe *pipe = sw_catalogue_pipe (catalogue, "x-1");
  g_assert_nonnull (pipe);
  g_assert_cmpfloat_with_epsilon (pipe->od_m, 0.040, 1e-15);
  g_assert_cmpfloat_with_epsilon (pipe->stock_m, 4, 1e-15);
  g_assert_cmpstr (sw_catalogue_name (catalogue, "pipe", "x-1"), ==, "x");
  g_assert_null (sw_catalogue_name (catalogue, "hook", "x-1"));
  g_assert_null (sw_catalogue_name (catalogue, "planet", "x-1"));
}

/* What is wrong with a file → how the refusal begins. */
static const struct {
  const char *claim, *text, *message;
} bad_files[] = {
  { "a row that is no object", FILE_OF ("7"), "pipes.json: row 1: not an object" },
  { "rows that are no list", "{ \"rows\": {} }", "pipes.json: rows: not a list" },
  { "no rows", "{ \"about\": \"\" }", "pipes.json: rows: not a list" },
  { "a list at the top", "[]", "pipes.json: not an object" },
  { "an unknown key at the top", "{ \"rows\": [], \"x\": 1 }", "pipes.json: x: no such key" },
  { "a missing id", FILE_OF ("{ \"name\": \"x\" }"), "pipes.json: row 1: id: missing" },
  { "a missing source",
    FILE_OF ("{ \"id\": \"a\", \"name\": \"x\", \"material\": \"pvc\", " GOOD_SIZES "}"),
    "pipes.json: a: source: missing" },
  { "a missing size",
    FILE_OF ("{" GOOD_WORDS ", \"od_mm\": 40}"),
    "pipes.json: x-1: wall_in | wall_ft | wall_mm | wall_m: missing" },
  { "an unknown key",
    FILE_OF ("{" GOOD_WORDS ", \"colour\": 1, " GOOD_SIZES "}"),
    "pipes.json: x-1: colour: no such key" },
  { "a size in two units",
    FILE_OF ("{" GOOD_WORDS ", \"od_in\": 2, " GOOD_SIZES "}"),
    "pipes.json: x-1: od_mm: given twice" },
  { "a text for a number",
    FILE_OF ("{" GOOD_WORDS ", \"od_in\": \"2\"}"),
    "pipes.json: x-1: od_in: not a number" },
  { "a number for a text",
    FILE_OF ("{ \"id\": \"a\", \"name\": 3 }"),
    "pipes.json: a: name: not a text" },
  { "a flag for a number",
    FILE_OF ("{" GOOD_WORDS ", \"od_in\": true}"),
    "pipes.json: x-1: od_in: not a number" },
  { "null for a text", FILE_OF ("{ \"id\": null }"), "pipes.json: row 1: id: not a text" },
  { "an empty text",
    FILE_OF ("{ \"id\": \"a\", \"name\": \"\" }"),
    "pipes.json: a: name: empty" },
  { "a text of two lines",
    FILE_OF ("{ \"id\": \"a\", \"name\": \"b\\nc\" }"),
    "pipes.json: a: name: empty or with a line break" },
  { "a material nobody knows",
    FILE_OF ("{ \"id\": \"a\", \"material\": \"glass\" }"),
    "pipes.json: a: material: \"glass\" is not one of steel-conduit | steel-pipe | aluminium" },
  { "a number out of range",
    FILE_OF ("{ \"id\": \"a\", \"od_in\": 90 }"),
    "pipes.json: a: od_in: 90 is outside 0.19685 … 19.685" },
  { "a number below zero",
    FILE_OF ("{ \"id\": \"a\", \"od_in\": -1 }"),
    "pipes.json: a: od_in: -1 is outside" },
  { "an id given twice",
    FILE_OF ("{" GOOD_WORDS ", " GOOD_SIZES "}, {" GOOD_WORDS ", " GOOD_SIZES "}"),
    "pipes.json: x-1: id: stands for another row already" },
  { "sizes that disagree",
    FILE_OF ("{" GOOD_WORDS ", \"od_mm\": 40, \"wall_mm\": 2, \"inside_mm\": 30, "
             "\"mass_kg_per_m\": 0.3, \"stock_m\": 4, \"price_usd_per_m\": 2}"),
    "pipes.json: x-1: inside: does not agree" },
  { "a hole larger than the pipe",
    FILE_OF ("{" GOOD_WORDS ", \"od_mm\": 40, \"wall_mm\": 2, \"inside_mm\": 40, "
             "\"mass_kg_per_m\": 0.3, \"stock_m\": 4, \"price_usd_per_m\": 2}"),
    "pipes.json: x-1: inside: not smaller than od" },
  { "half a file", "{ \"rows\": [", "pipes.json: " },
  { "nothing", "", "pipes.json: " },
};

static void
test_bad_file (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  g_autoptr (GError) error = NULL;
  g_autoptr (SwCatalogue) catalogue = read_pipes (bad_files[i].text, &error);

  g_assert_null (catalogue);
  g_assert_nonnull (error);
  if (!g_str_has_prefix (error->message, bad_files[i].message))
    g_error ("%s, expected %s", error->message, bad_files[i].message);
  g_assert_null (strchr (error->message, '\n'));
}

static void
test_unknown_file_is_refused (void)
{
  g_autoptr (GHashTable) texts =
    g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
  g_autoptr (GError) error = NULL;

  g_hash_table_insert (texts, g_strdup ("moons.json"), g_strdup ("{}"));
  g_assert_null (sw_catalogue_new_from_texts (texts, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_CATALOGUE);
  g_assert_true (g_str_has_prefix (error->message, "moons.json: "));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/catalogue/steel pipe sections agree with a handbook",
                   test_steel_pipe_sections);
  g_test_add_func ("/engine/catalogue/inside is od less two walls",
                   test_inside_is_od_less_two_walls);
  g_test_add_func ("/engine/catalogue/mass is area times density",
                   test_mass_is_area_times_density);
  g_test_add_func ("/engine/catalogue/clearances of pipe in pipe", test_telescoping_clearances);
  g_test_add_func ("/engine/catalogue/od in millimetres", test_pipe_ods_in_millimetres);
  g_test_add_func ("/engine/catalogue/every promised id is there", test_ids_of_the_contract);
  g_test_add_func ("/engine/catalogue/hook holes are those of the standards", test_hook_holes);
  g_test_add_func ("/engine/catalogue/every hook has its nuts and washers",
                   test_hooks_have_their_nuts);
  g_test_add_func ("/engine/catalogue/breaking loads are those of the standards",
                   test_line_breaks);
  g_test_add_func ("/engine/catalogue/boards have actual sizes", test_board_sizes);
  g_test_add_func ("/engine/catalogue/every id a design starts with is known",
                   test_starting_ids_are_known);
  g_test_add_func ("/engine/catalogue/threads share one", test_threads_share_one);
  g_test_add_func ("/engine/catalogue/a row may choose its units", test_units_of_choice);
  for (guint i = 0; i < G_N_ELEMENTS (bad_files); i++) {
    g_autofree char *path =
      g_strdup_printf ("/engine/catalogue/refuses/%s", bad_files[i].claim);
    g_test_add_data_func (path, GUINT_TO_POINTER (i), test_bad_file);
  }
  g_test_add_func ("/engine/catalogue/refuses/an unknown file", test_unknown_file_is_refused);
  return g_test_run ();
}
