// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-file.h"
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

/* Each kind of bad file, and what its message must name. */
static const struct {
  const char *text;
  const char *names[2];
} bad[] = {
  { "", { "value should be" } },
  { "   ", { "value should be" } },
  { "[]", { "design", "object" } },
  { "3", { "design", "object" } },
  { "null", { "design", "object" } },
  { "{} {}", { "behind the end" } },
  { "{}x", { "behind the end" } },
  { "// note\n{}", { "value should be" } },
  { "{ /* note */ }", { "double quotes" } },
  { "{'title': \"a\"}", { "double quotes" } },
  { "{\"title\": \"a\",}", { "double quotes" } },
  { "{\"title\" \"a\"}", { "title", "colon" } },
  { "{\"title\": \"a\" \"units\": \"us\"}", { "comma" } },
  { "{\"title\": \"a", { "closing quote" } },
  { "{\"title\": \"a\\u0000b\"}", { "title", "escape" } },
  { "{\"title\": \"a\nb\"}", { "title", "line break" } },
  { "{\"title\": \"\\ud800\"}", { "title", "escape" } },
  { "{\"title\": 5}", { "title", "text" } },
  { "{\"shape\": 3}", { "shape", "object" } },
  { "{\"shape\": {\"ring_radius_m\": 0.02}}", { "shape.ring_radius_m", "0.1 … 10" } },
  { "{\"shape\": {\"ring_radius_m\": \"1\"}}", { "shape.ring_radius_m", "number" } },
  { "{\"shape\": {\"ring_radius_m\": null}}", { "shape.ring_radius_m", "number" } },
  { "{\"shape\": {\"ring_radius_m\": NaN}}", { "shape.ring_radius_m", "NaN" } },
  { "{\"shape\": {\"ring_radius_m\": 1e400}}", { "shape.ring_radius_m", "1e400" } },
  { "{\"unknown\": {\"deep\": 1e400}}", { "unknown.deep", "1e400" } },
  { "{\"unknown\": 9223372036854775808}", { "unknown", "64 bits" } },
  { "{\"unknown\": -9223372036854775809}", { "unknown", "64 bits" } },
  { "{\"shape\": {\"strip_count\": 20.5}}", { "shape.strip_count", "whole" } },
  { "{\"shape\": {\"strip_count\": 1}}", { "shape.strip_count", "2 … 512" } },
  { "{\"shape\": {\"strip_count\": 020}}", { "shape.strip_count", "JSON writes it" } },
  { "{\"shape\": {\"crown_height_m\": 0x10}}", { "shape.crown_height_m" } },
  { "{\"shape\": {\"crown_height_m\": .5}}", { "shape.crown_height_m" } },
  { "{\"shape\": {\"crown_height_m\": 1.}}", { "shape.crown_height_m" } },
  { "{\"shape\": {\"crown_height_m\": 2.0, \"crown_height_m\": 3.0}}",
    { "shape.crown_height_m", "twice" } },
  { "{\"shape\": {}, \"shape\": {}}", { "shape", "twice" } },
  { "{\"unknown\": {\"a\": 1, \"\\u0061\": 2}}", { "unknown.a", "twice" } },
  { "{\"shape\": {\"crown_height_m\": 2, \"ring_height_m\": 1.9}}",
    { "shape.ring_height_m", "1.8" } },
  { "{\"crown\": {\"hook_reach_m\": 0.13}}", { "crown.hook_reach_m", "0.13" } },
  { "{\"power\": {\"feed\": \"left\"}}", { "power.feed", "ring | crown | both" } },
  { "{\"power\": {\"supply_v\": 0}}", { "power.supply_v", "above 0" } },
  { "{\"strip\": {\"measured\": 1}}", { "strip.measured", "true or false" } },
  { "{\"data\": {\"bits_per_pixel\": 20}}", { "data.bits_per_pixel", "8" } },
  { "{\"data\": {\"colour_order\": \"RRB\"}}", { "data.colour_order" } },
  { "{\"spirewright\": 2}", { "spirewright", "newer" } },
  { "{\"spirewright\": 0}", { "spirewright" } },
  { "{\"spirewright\": \"1\"}", { "spirewright" } },
  { "{\"held\": [\"shape.colour\"]}", { "held[0]" } },
  { "{\"held\": \"shape.crown_height_m\"}", { "held", "list" } },
  { "{\"prices\": {\"have\": {\"hook\": -1}}}", { "prices.have.hook", "0 …" } },
  { "{\"prices\": {\"override\": []}}", { "prices.override", "object" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 360, \"radius_m\": 1}]}}",
    { "as_built.ring_points[0].azimuth_deg", "below 360" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 0}]}}",
    { "as_built.ring_points[0].radius_m" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 0, \"radius_m\": 0}]}}",
    { "radius_m", "above 0" } },
  { "{\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 5, \"radius_m\": 1}, "
    "{\"azimuth_deg\": 5.0, \"radius_m\": 1}]}}",
    { "as_built.ring_points", "twice" } },
  { "[[[[[[[[[[[[[[[[[", { "nested too deep" } },
  { "{\"a\nb\": 1}", { "line break" } },
  { "{\"x\\ny\": 1e400}", { "x\\u000ay" } },
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
    for (guint j = 0; j < 2 && bad[i].names[j] != NULL; j++) {
      if (strstr (error->message, bad[i].names[j]) == NULL)
        g_error ("%s: \"%s\" does not name \"%s\"",
                 bad[i].text,
                 error->message,
                 bad[i].names[j]);
    }
    g_assert_null (strpbrk (error->message, "\r\n"));
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
  design->held = (g_ptr_array_add (design->held, g_strdup ("strip.pitch_m")), design->held);
  g_assert_true (sw_design_set (design, "prices.override.sch40-2", "61.5", NULL));
  g_assert_true (sw_design_set (
    design,
    "as_built.ring_points",
    "[{\"azimuth_deg\": 90, \"radius_m\": 1.02}, {\"azimuth_deg\": 0, \"radius_m\": 1.01}]",
    NULL));
  g_autoptr (SwDesign) back = reload (design);
  g_autoptr (SwDesign) again = reload (back);
  g_assert_true (sw_design_equal (back, again));
  g_assert_cmpstr (back->title, ==, design->title);
  g_assert_cmpmem (&back->shape, sizeof back->shape, &design->shape, sizeof design->shape);
  g_assert_cmpint (back->as_built.ring_points->len, ==, 2);
  g_assert_cmpfloat_with_epsilon (
    g_array_index (back->as_built.ring_points, SwRingPoint, 0).radius_m,
    1.01,
    1e-15);
  g_assert_true (sw_design_holds (back, "strip.pitch_m"));
}

static void
test_unknown_keys_are_kept (void)
{
  g_autoptr (SwDesign) design = load (
    "{\"future\": {\"a\": [1, 0.1, null, true]}, \"shape\": {\"colour\": \"green\"},"
    "\"as_built\": {\"ring_points\": [{\"azimuth_deg\": 3, \"radius_m\": 1, \"by\": \"me\"}]}}",
    NULL);
  g_autofree char *data = sw_design_to_data (design, NULL);

  g_assert_nonnull (strstr (data, "\"a\": [1, 0.1, null, true]"));
  g_assert_nonnull (strstr (data, "\"colour\": \"green\""));
  g_assert_nonnull (strstr (data, "\"by\": \"me\""));
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

/* Bytes changed at random: each is refused in one line or reads back equal after saving. */
static void
test_random_damage_is_refused_or_kept (void)
{
  static const char signs[] = "{}[]\",:0123456789.eE-+truefalsn \\u/*'";
  g_autoptr (SwDesign) design = sw_design_new ();
  gsize length;
  g_autofree char *data = sw_design_to_data (design, &length);
  g_autoptr (GRand) rand = g_rand_new_with_seed (17);

  for (int i = 0; i < 2000; i++) {
    g_autofree char *damaged = g_memdup2 (data, length);
    for (int j = g_rand_int_range (rand, 1, 4); j > 0; j--)
      damaged[g_rand_int_range (rand, 0, (gint32) length)] =
        signs[g_rand_int_range (rand, 0, sizeof signs - 1)];
    g_autoptr (GError) error = NULL;
    g_autoptr (SwDesign) read = sw_design_load_from_data (damaged, length, &error);
    if (read == NULL) {
      g_assert_nonnull (error);
      g_assert_null (strpbrk (error->message, "\r\n"));
    } else {
      g_autoptr (SwDesign) once = reload (read);
      g_autoptr (SwDesign) twice = reload (once);
      g_assert_true (sw_design_equal (once, twice));
    }
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/design-file/each bad file is named", test_each_bad_file_is_named);
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
  g_test_add_func ("/engine/design-file/the same design gives the same bytes",
                   test_the_same_design_gives_the_same_bytes);
  g_test_add_func ("/engine/design-file/saving follows links and keeps rights",
                   test_saving_follows_links_and_keeps_rights);
  g_test_add_func ("/engine/design-file/a failed save changes nothing",
                   test_a_failed_save_changes_nothing);
  g_test_add_func ("/engine/design-file/a folder or a pipe is no design",
                   test_a_folder_or_a_pipe_is_no_design);
  g_test_add_func ("/engine/design-file/random damage is refused or kept",
                   test_random_damage_is_refused_or_kept);
  return g_test_run ();
}
