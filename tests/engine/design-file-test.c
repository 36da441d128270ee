// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-file.h"
#include "engine/design-keys.h"
#include "engine/error.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <string.h>
#include <sys/resource.h>
#include <unistd.h>

static SwDesign *
load (const char *text, GError **error)
{
  return sw_design_load_from_data (text, strlen (text), error);
}

/* Each kind of bad file, and what its message must name: the key path, the value, what is
 * allowed. */
static const struct {
  const char *text;
  const char *names[3];
} bad[] = {
  { "[]", { "design", "[…]", "object" } },
  { "3", { "design", "3", "object" } },
  { "null", { "design", "null", "object" } },
  { "{\"title\": 5}", { "title: ", "5", "200 characters" } },
  { "{\"shape\": 3}", { "shape: ", "3", "object" } },
  { "{\"site\": null}", { "site: ", "null", "object" } },
  { "{\"shape\": {\"ring_radius_m\": 0.02}}", { "shape.ring_radius_m: ", "0.02", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": 10.000000000000002}}",
    { "shape.ring_radius_m: ", "10.000000000000002", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": \"1\"}}",
    { "shape.ring_radius_m: ", "\"1\"", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": null}}", { "shape.ring_radius_m: ", "null", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": [1]}}", { "shape.ring_radius_m: ", "[…]", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": NaN}}", { "shape.ring_radius_m: ", "NaN", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": -Infinity}}",
    { "shape.ring_radius_m: ", "-Infinity", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": 1e400}}",
    { "shape.ring_radius_m: ", "1e400", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": 1, \"ring_radius_m\": 2.5}}",
    { "shape.ring_radius_m: ", "2.5", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": 1, \"ring_radius\\u005fm\": 1}}",
    { "shape.ring_radius_m: ", "twice" } },
  { "{\"shape\": {}, \"shape\": {}}", { "shape: ", "twice" } },
  { "{\"unknown\": {\"deep\": 1e400}}", { "unknown.deep: ", "1e400" } },
  { "{\"unknown\": [0, {\"deep\": 9223372036854775808}]}",
    { "unknown[1].deep: ", "9223372036854775808", "64 bits" } },
  { "{\"unknown\": -9223372036854775809}", { "unknown: ", "64 bits" } },
  { "{\"unknown\": {\"a\": 1, \"a\": 2}}", { "unknown.a: ", "2", "twice" } },
  { "{\"shape\": {\"strip_count\": 20.5}}", { "shape.strip_count: ", "20.5", "2 … 512" } },
  { "{\"shape\": {\"strip_count\": 1}}", { "shape.strip_count: ", "1 is", "2 … 512" } },
  { "{\"shape\": {\"strip_count\": 4294967298}}", { "shape.strip_count: ", "2 … 512" } },
  { "{\"shape\": {\"strip_count\": 020}}", { "shape.strip_count: ", "020", "2 … 512" } },
  { "{\"shape\": {\"crown_height_m\": 2, \"ring_height_m\": 1.9}}",
    { "shape.ring_height_m: ", "1.9", "0 … 1.8" } },
  { "{\"crown\": {\"hook_reach_m\": 0.13}}",
    { "crown.hook_reach_m: ", "0.13 is", "0 … below 0.13" } },
  { "{\"power\": {\"feed\": \"left\"}}", { "power.feed: ", "left", "ring | crown | both" } },
  { "{\"power\": {\"feed\": 1}}", { "power.feed: ", "1", "ring | crown | both" } },
  { "{\"power\": {\"supply_v\": 0}}", { "power.supply_v: ", "0 is", "above 0 … 60" } },
  { "{\"power\": {\"supply_v\": \"12\"}}", { "power.supply_v: ", "\"12\"", "above 0 … 60" } },
  { "{\"strip\": {\"measured\": 1}}", { "strip.measured: ", "1", "true | false" } },
  { "{\"data\": {\"bits_per_pixel\": 20}}", { "data.bits_per_pixel: ", "20", "8 … 128" } },
  { "{\"data\": {\"colour_order\": \"RRB\"}}", { "data.colour_order: ", "RRB", "RGBWA" } },
  { "{\"spirewright\": 2}", { "spirewright: ", "2", "newer" } },
  { "{\"spirewright\": 0}", { "spirewright: ", "0", "1 is allowed" } },
  { "{\"spirewright\": 1.5}", { "spirewright: ", "1.5", "1 is allowed" } },
  { "{\"spirewright\": \"1\"}", { "spirewright: ", "\"1\"", "1 is allowed" } },
  { "{\"held\": [\"shape.colour\"]}", { "held[0]: ", "shape.colour", "key path" } },
  { "{\"held\": [7]}", { "held[0]: ", "7", "key path" } },
  { "{\"held\": [\"strip.lead_m\", \"strip.lead_m\"]}",
    { "held[1]: ", "strip.lead_m", "twice" } },
  { "{\"held\": \"shape.crown_height_m\"}", { "held: ", "shape.crown_height_m", "list" } },
  { "{\"prices\": {\"have\": {\"hook\": -1}}}",
    { "prices.have.hook: ", "-1", "0 … 1000000000" } },
  { "{\"prices\": {\"have\": {\"hook\": \"x\"}}}",
    { "prices.have.hook: ", "\"x\"", "0 … 1000000000" } },
  { "{\"prices\": {\"override\": []}}", { "prices.override: ", "[…]", "object" } },
  { "{\"as_built\": {\"ring_points\": {}}}", { "as_built.ring_points: ", "{…}", "list" } },
  { "{\"as_built\": {\"ring_points\": [5]}}", { "as_built.ring_points[0]: ", "5", "object" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 360, \"radius_m\": 1}]}}",
    { "as_built.ring_points[0].azimuth_deg: ", "360", "0 … below 360" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 0}]}}",
    { "as_built.ring_points[0].radius_m: ", "missing", "above 0 … 20" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 0, \"radius_m\": 0}]}}",
    { "as_built.ring_points[0].radius_m: ", "0 is", "above 0 … 20" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 0, \"radius_m\": true}]}}",
    { "as_built.ring_points[0].radius_m: ", "true", "above 0 … 20" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 5, \"radius_m\": 1}, "
    "{\"azimuth_deg\": 5.0, \"radius_m\": 1}]}}",
    { "as_built.ring_points: ", "5", "twice" } },
};

static void
test_each_bad_file_is_named (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (bad); i++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SwDesign) design = load (bad[i].text, &error);
    if (design != NULL)
      g_error ("was taken: %s", bad[i].text);
    g_assert_nonnull (error);
    for (guint j = 0; j < G_N_ELEMENTS (bad[i].names) && bad[i].names[j] != NULL; j++) {
      if (strstr (error->message, bad[i].names[j]) == NULL)
        g_error ("%s: \"%s\" does not name \"%s\"",
                 bad[i].text,
                 error->message,
                 bad[i].names[j]);
    }
    g_assert_true (g_str_has_prefix (error->message, bad[i].names[0]));
    g_assert_null (strpbrk (error->message, "\r\n"));
  }
}

/* Every key of the table, beyond both of its ends and with other types. */
static void
test_every_key_keeps_its_range (void)
{
  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    const char *const values[] = { "-1e300", "1e300", "{}", "[]", "null" };
    const char *dot = strchr (key->path, '.');
    g_autofree char *group =
      dot == NULL ? NULL : g_strndup (key->path, (gsize) (dot - key->path));
    g_autofree char *allowed = sw_key_allowed (key);
    for (guint j = 0; j < G_N_ELEMENTS (values); j++) {
      g_autofree char *text =
        dot == NULL ? g_strdup_printf ("{\"%s\": %s}", key->path, values[j])
                    : g_strdup_printf ("{\"%s\": {\"%s\": %s}}", group, dot + 1, values[j]);
      g_autoptr (GError) error = NULL;
      g_assert_null (load (text, &error));
      g_assert_true (g_str_has_prefix (error->message, key->path));
      g_assert_nonnull (strstr (error->message, allowed));
    }
  }
}

static void
test_a_hundred_thousand_levels_do_no_harm (void)
{
  g_autofree char *lists = g_strnfill (100000, '[');
  g_autoptr (GError) error = NULL;

  g_assert_null (load (lists, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_SYNTAX);
}

static void
test_sixteen_levels_are_taken (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = load ("{\"a\": [[[[[[[[[[[[[[[1]]]]]]]]]]]]]]]}", &error);

  g_assert_no_error (error);
  g_assert_nonnull (design);
}

static void
test_a_file_too_large_is_refused (void)
{
  g_autofree char *spaces = g_strnfill (SW_DESIGN_FILE_MOST, ' ');
  g_autofree char *text = g_strconcat ("{}", spaces, NULL);
  g_autoptr (GError) error = NULL;

  g_assert_null (load (text, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_RANGE);
}

static void
test_not_utf8_is_refused (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (load ("{\"title\": \"\xff\"}", &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_SYNTAX);
}

static void
test_an_empty_object_is_the_start (void)
{
  g_autoptr (SwDesign) design = load ("{}", NULL);

  g_assert_cmpint (design->shape.strip_count, ==, 20);
  g_assert_cmpfloat_with_epsilon (design->shape.crown_height_m, 2.86, 1e-15);
  g_assert_cmpstr (design->stand.post, ==, "sch40-2");
}

static SwDesign *
reload (const SwDesign *design)
{
  gsize length;
  g_autofree char *data = sw_design_to_data (design, &length);
  g_autoptr (GError) error = NULL;
  SwDesign *back = sw_design_load_from_data (data, length, &error);

  g_assert_no_error (error);
  return back;
}

static void
test_what_is_saved_reads_back_to_the_bit (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  g_free (design->title);
  design->title = g_strdup ("Kai — “north” \\ 1/2″\t");
  design->shape.crown_height_m = 0.1 + 0.2 + 2;
  design->strip.pitch_m = 1.0 / 30;
  g_ptr_array_add (design->held, g_strdup ("strip.pitch_m"));
  g_assert_true (sw_design_set (design, "prices.override.sch40-2", "61.5", NULL));
  g_assert_true (sw_design_set (design, "prices.have.hook", "-0", NULL));
  g_assert_true (sw_design_set (
    design,
    "as_built.ring_points",
    "[{\"azimuth_deg\": 90, \"radius_m\": 1.02}, {\"azimuth_deg\": 0, \"radius_m\": 1.01}]",
    NULL));
  g_autoptr (SwDesign) back = reload (design);
  g_assert_true (sw_design_equal (back, design));
  g_assert_cmpint (back->as_built.ring_points->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (
    g_array_index (back->as_built.ring_points, SwRingPoint, 0).radius_m,
    1.01,
    1e-15);
}

static const char with_unknown[] =
  "{\"later\": {\"a\": [1, 0.1, null, true, -0.0, 1e300]}, \"units\": \"metric\","
  "\"shape\": {\"colour\": \"green\", \"strip_count\": 24},"
  "\"prices\": {\"shop\": {\"crown_height_m\": 5}},"
  "\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 7, \"radius_m\": 1},"
  "{\"by\": \"me\", \"azimuth_deg\": 3.5, \"radius_m\": 1}]}}";

static void
test_unknown_keys_are_kept (void)
{
  g_autoptr (SwDesign) design = load (with_unknown, NULL);
  g_autofree char *data = sw_design_to_data (design, NULL);

  g_assert_nonnull (strstr (data, "\"a\": [1, 0.1, null, true, -0.0, 1e+300]"));
  g_assert_nonnull (strstr (data, "\"colour\": \"green\""));
  g_assert_nonnull (strstr (data, "\"shop\": {\n"));
  g_assert_nonnull (strstr (data,
                            "\"azimuth_deg\": 3.5,\n        \"radius_m\": 1,\n"
                            "        \"by\": \"me\"\n"));
  g_autoptr (SwDesign) back = reload (design);
  g_assert_true (sw_design_equal (back, design));
}

/* Known keys never come back from what was read: the design's own values are written. */
static void
test_unknown_keys_hold_no_known_ones (void)
{
  g_autoptr (SwDesign) design = load (with_unknown, NULL);
  g_autoptr (SwDesign) plain = load ("{\"shape\": {\"strip_count\": 24}}", NULL);

  g_assert_null (plain->extra);
  design->shape.strip_count = 30;
  g_array_set_size (design->as_built.ring_points, 0);
  g_autoptr (SwDesign) back = reload (design);
  g_assert_cmpint (back->shape.strip_count, ==, 30);
  g_assert_cmpuint (back->as_built.ring_points->len, ==, 0);
  g_assert_false (sw_design_equal (plain, design));
}

/* A list of 400 000 numbers, one a line, would be larger than a file may be. */
static void
test_a_large_file_can_be_written_back (void)
{
  g_autoptr (GString) text = g_string_new ("{\"many\": [0");
  gsize length;

  for (int i = 0; i < 400000; i++)
    g_string_append (text, ",1");
  g_string_append (text, "]}");
  g_autoptr (SwDesign) design = load (text->str, NULL);
  g_autofree char *data = sw_design_to_data (design, &length);
  g_assert_cmpuint (length, <=, SW_DESIGN_FILE_MOST);
  g_autoptr (SwDesign) back = sw_design_load_from_data (data, length, NULL);
  g_assert_true (sw_design_equal (back, design));
}

/* The start's file, key by key as the format is laid down. Renew it after a wanted change with
 * "spirewright new". */
static void
test_keys_stand_in_the_order_of_the_format (void)
{
  g_autofree char *path =
    g_build_filename (g_getenv ("SW_SOURCE"), "tests", "data", "start.spire", NULL);
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autofree char *data = sw_design_to_data (design, NULL);
  g_autofree char *kept = NULL;

  g_assert_true (g_file_get_contents (path, &kept, NULL, NULL));
  g_assert_cmpstr (data, ==, kept);
}

static void
test_the_same_design_gives_the_same_bytes (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autofree char *one = sw_design_to_data (design, NULL);
  g_autofree char *other = sw_design_to_data (design, NULL);

  g_assert_cmpstr (one, ==, other);
}

static char *
in_folder (const char *folder, const char *name)
{
  return g_build_filename (folder, name, NULL);
}

static void
test_saving_follows_links_and_keeps_rights (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spire-XXXXXX", NULL);
  g_autofree char *file = in_folder (folder, "tree.spire"),
                  *link = in_folder (folder, "link.spire");
  g_autoptr (SwDesign) design = sw_design_new ();
  GStatBuf info;

  g_assert_true (sw_design_save (design, file, NULL));
  g_assert_cmpint (g_chmod (file, 0664), ==, 0);
  g_assert_cmpint (symlink ("tree.spire", link), ==, 0);
  design->shape.strip_count = 24;
  g_assert_true (sw_design_save (design, link, NULL));
  g_assert_cmpint (g_lstat (link, &info), ==, 0);
  g_assert_true (S_ISLNK (info.st_mode));
  g_assert_cmpint (g_stat (file, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 07777, ==, 0664);
  g_autoptr (SwDesign) back = sw_design_load (file, NULL);
  g_assert_cmpint (back->shape.strip_count, ==, 24);
  g_assert_cmpint (g_unlink (link) + g_unlink (file) + g_rmdir (folder), ==, 0);
}

/* A disk without room: the old file stays and nothing is left beside it. */
static void
test_a_failed_save_changes_nothing (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spire-XXXXXX", NULL);
  g_autofree char *file = in_folder (folder, "tree.spire");
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (GError) error = NULL;
  struct rlimit before, small;

  g_assert_true (sw_design_save (design, file, NULL));
  design->shape.strip_count = 24;
  g_assert_cmpint (getrlimit (RLIMIT_FSIZE, &before), ==, 0);
  small = (struct rlimit){ 100, before.rlim_max };
  signal (SIGXFSZ, SIG_IGN);
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &small), ==, 0);
  gboolean saved = sw_design_save (design, file, &error);
  g_assert_cmpint (setrlimit (RLIMIT_FSIZE, &before), ==, 0);
  g_assert_false (saved);
  g_assert_nonnull (error);
  g_autoptr (SwDesign) back = sw_design_load (file, NULL);
  g_assert_cmpint (back->shape.strip_count, ==, 20);
  g_assert_cmpint (g_unlink (file) + g_rmdir (folder),
                   ==,
                   0); /* rmdir: nothing else was left */
}

static void
assert_cannot_save (const char *path, int code)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (GError) error = NULL;

  g_assert_false (sw_design_save (design, path, &error));
  g_assert_error (error, G_FILE_ERROR, code);
  g_assert_true (g_str_has_prefix (error->message, "file: can't be written, "));
  g_assert_null (strpbrk (error->message, "\r\n"));
}

static void
test_where_no_file_can_stand_says_why (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spire-XXXXXX", NULL);
  g_autofree char *loop = in_folder (folder, "loop"), *file = in_folder (folder, "file");
  g_autofree char *below = in_folder (file, "tree.spire");
  g_autofree char *missing = g_build_filename (folder, "none", "tree.spire", NULL);
  g_autofree char *letters = g_strnfill (300, 'a');
  g_autofree char *name = in_folder (folder, letters);

  g_assert_true (g_file_set_contents (file, "", 0, NULL));
  g_assert_cmpint (symlink ("loop", loop), ==, 0);
  assert_cannot_save (folder, G_FILE_ERROR_ISDIR);
  assert_cannot_save (loop, G_FILE_ERROR_LOOP);
  assert_cannot_save (below, G_FILE_ERROR_NOTDIR);
  assert_cannot_save (missing, G_FILE_ERROR_NOENT);
  assert_cannot_save (name, G_FILE_ERROR_NAMETOOLONG);
  assert_cannot_save ("/dev/null", G_FILE_ERROR_INVAL);
  g_assert_cmpint (g_unlink (loop) + g_unlink (file) + g_rmdir (folder), ==, 0);
}

static void
test_a_link_to_nothing_yet_is_followed (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spire-XXXXXX", NULL);
  g_autofree char *file = in_folder (folder, "tree.spire");
  g_autofree char *first = in_folder (folder, "first"), *second = in_folder (folder, "second");
  g_autoptr (SwDesign) design = sw_design_new ();

  g_assert_cmpint (symlink (second, first), ==, 0);
  g_assert_cmpint (symlink ("tree.spire", second), ==, 0);
  g_assert_true (sw_design_save (design, first, NULL));
  g_assert_true (g_file_test (file, G_FILE_TEST_IS_REGULAR));
  g_assert_true (g_file_test (first, G_FILE_TEST_IS_SYMLINK));
  g_assert_true (g_file_test (second, G_FILE_TEST_IS_SYMLINK));
  g_assert_cmpint (g_unlink (first) + g_unlink (second) + g_unlink (file) + g_rmdir (folder),
                   ==,
                   0);
}

/* Who may do everything lays that right down for a while. */
static void
test_what_is_read_only_stays_as_it_is (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spire-XXXXXX", NULL);
  g_autofree char *file = in_folder (folder, "tree.spire");
  g_autofree char *other = in_folder (folder, "other.spire");
  gboolean root = geteuid () == 0;

  g_assert_true (g_file_set_contents (file, "{}", -1, NULL));
  g_assert_cmpint (g_chmod (file, 0444), ==, 0);
  if (root) {
    g_assert_cmpint (chown (folder, 65534, 65534) + chown (file, 65534, 65534), ==, 0);
    g_assert_cmpint (seteuid (65534), ==, 0);
  }
  assert_cannot_save (file, G_FILE_ERROR_ACCES);
  g_assert_cmpint (g_chmod (folder, 0555), ==, 0);
  assert_cannot_save (other, G_FILE_ERROR_ACCES);
  g_assert_cmpint (g_chmod (folder, 0755), ==, 0);
  if (root)
    g_assert_cmpint (seteuid (0), ==, 0);
  g_assert_cmpint (g_unlink (file) + g_rmdir (folder), ==, 0); /* nothing else was left */
}

static void
test_a_file_that_may_not_be_read_says_so (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spire-XXXXXX", NULL);
  g_autofree char *file = in_folder (folder, "tree.spire");
  g_autoptr (GError) error = NULL;
  gboolean root = geteuid () == 0;

  g_assert_true (g_file_set_contents (file, "{}", -1, NULL));
  g_assert_cmpint (g_chmod (file, 0) + g_chmod (folder, 0755), ==, 0);
  if (root)
    g_assert_cmpint (seteuid (65534), ==, 0);
  g_assert_null (sw_design_load (file, &error));
  if (root)
    g_assert_cmpint (seteuid (0), ==, 0);
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_ACCES);
  g_assert_cmpstr (error->message, ==, "file: can't be read, no right to do that here");
  g_assert_cmpint (g_unlink (file) + g_rmdir (folder), ==, 0);
}

static void
test_a_folder_or_a_pipe_is_no_design (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_null (sw_design_load ("/", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_ISDIR);
  g_clear_error (&error);
  g_assert_null (sw_design_load ("/dev/zero", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_INVAL);
  g_clear_error (&error);
  g_assert_null (sw_design_load ("/no/such/file.spire", &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

/* Some bytes changed, left out, doubled or put in. */
static char *
damaged (GRand *rand, const char *data)
{
  static const char signs[] = "{}[]\",:0123456789.eE-+truefalsn \\u/*'\n\303\200";
  g_autoptr (GString) text = g_string_new (data);

  for (int i = g_rand_int_range (rand, 1, 4); i > 0 && text->len > 8; i--) {
    gssize at = g_rand_int_range (rand, 0, (gint32) text->len - 8);
    gsize length = (gsize) g_rand_int_range (rand, 1, 8);
    g_autofree char *piece = g_strndup (text->str + at, length);
    switch (g_rand_int_range (rand, 0, 4)) {
    case 0:
      text->str[at] = signs[g_rand_int_range (rand, 0, sizeof signs - 1)];
      break;
    case 1:
      g_string_erase (text, at, (gssize) length);
      break;
    case 2:
      g_string_insert (text, at, piece);
      break;
    default:
      g_string_insert_c (text, at, signs[g_rand_int_range (rand, 0, sizeof signs - 1)]);
    }
  }
  return g_strdup (text->str);
}

/* Each damaged file is refused in one line, or reads back equal after saving, with equal bytes
 * after saving again. */
static void
test_random_damage_is_refused_or_kept (void)
{
  g_autoptr (SwDesign) design = load (with_unknown, NULL);
  g_autofree char *data = sw_design_to_data (design, NULL);
  g_autoptr (GRand) rand = g_rand_new_with_seed (17);
  guint taken = 0;

  for (int i = 0; i < 3000; i++) {
    g_autofree char *text = damaged (rand, i % 2 == 0 ? data : with_unknown);
    g_autoptr (GError) error = NULL;
    g_autoptr (SwDesign) read = load (text, &error);
    if (read == NULL) {
      g_assert_nonnull (error);
      g_assert_null (strpbrk (error->message, "\r\n"));
      continue;
    }
    g_autoptr (SwDesign) once = reload (read);
    g_autofree char *first = sw_design_to_data (read, NULL);
    g_autofree char *second = sw_design_to_data (once, NULL);
    g_assert_true (sw_design_equal (read, once));
    g_assert_cmpstr (first, ==, second);
    taken++;
  }
  g_assert_cmpuint (taken, >, 200);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/design-file/each bad file is named", test_each_bad_file_is_named);
  g_test_add_func ("/engine/design-file/every key keeps its range",
                   test_every_key_keeps_its_range);
  g_test_add_func ("/engine/design-file/100 000 levels do no harm",
                   test_a_hundred_thousand_levels_do_no_harm);
  g_test_add_func ("/engine/design-file/16 levels are taken", test_sixteen_levels_are_taken);
  g_test_add_func ("/engine/design-file/a file too large is refused",
                   test_a_file_too_large_is_refused);
  g_test_add_func ("/engine/design-file/not UTF-8 is refused", test_not_utf8_is_refused);
  g_test_add_func ("/engine/design-file/an empty object is the start",
                   test_an_empty_object_is_the_start);
  g_test_add_func ("/engine/design-file/what is saved reads back to the bit",
                   test_what_is_saved_reads_back_to_the_bit);
  g_test_add_func ("/engine/design-file/unknown keys are kept", test_unknown_keys_are_kept);
  g_test_add_func ("/engine/design-file/unknown keys hold no known ones",
                   test_unknown_keys_hold_no_known_ones);
  g_test_add_func ("/engine/design-file/a large file can be written back",
                   test_a_large_file_can_be_written_back);
  g_test_add_func ("/engine/design-file/the same design gives the same bytes",
                   test_the_same_design_gives_the_same_bytes);
  g_test_add_func ("/engine/design-file/keys stand in the order of the format",
                   test_keys_stand_in_the_order_of_the_format);
  g_test_add_func ("/engine/design-file/saving follows links and keeps rights",
                   test_saving_follows_links_and_keeps_rights);
  g_test_add_func ("/engine/design-file/a failed save changes nothing",
                   test_a_failed_save_changes_nothing);
  g_test_add_func ("/engine/design-file/what is read-only stays as it is",
                   test_what_is_read_only_stays_as_it_is);
  g_test_add_func ("/engine/design-file/a link to nothing yet is followed",
                   test_a_link_to_nothing_yet_is_followed);
  g_test_add_func ("/engine/design-file/where no file can stand says why",
                   test_where_no_file_can_stand_says_why);
  g_test_add_func ("/engine/design-file/a folder or a pipe is no design",
                   test_a_folder_or_a_pipe_is_no_design);
  g_test_add_func ("/engine/design-file/a file that may not be read says so",
                   test_a_file_that_may_not_be_read_says_so);
  g_test_add_func ("/engine/design-file/random damage is refused or kept",
                   test_random_damage_is_refused_or_kept);
  return g_test_run ();
}
