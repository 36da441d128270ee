// SPDX-License-Identifier: GPL-3.0-or-later
#include "program.h"

static void
test_json_has_every_group (Place *place, gconstpointer unused)
{
  static const char *const groups[] = { "geometry", "marks", "crown",    "power",
                                        "data",     "wind",  "support",  "cuts",
                                        "bom",      "cost",  "findings", "basis" };
  g_autoptr (JsonNode) report = report_of (place, "lawn.spire");

  for (guint i = 0; i < G_N_ELEMENTS (groups); i++)
    g_assert_true (json_object_has_member (json_node_get_object (report), groups[i]));
  g_assert_false (json_object_has_member (json_node_get_object (report), "as_built"));
}

/* Worked by hand: √(2.90² + 0.94²) = 3.048540634. */
static void
test_set_changes_what_is_solved (Place *place, gconstpointer unused)
{
  g_autoptr (JsonNode) report =
    report_of (place,
               "--set shape.crown_height_m=3.05 lawn.spire --set shape.ring_height_m=0.15 "
               "--set shape.crown_radius_m=0.06 -s shape.ring_radius_m=1");

  g_assert_cmpfloat_with_epsilon (number_at (report, "geometry", "slant_m"), 3.048540634, 1e-9);
}

static void
test_text_and_json_show_the_same_number (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };
  g_autoptr (JsonNode) report = report_of (place, "lawn.spire");
  double slant_m = number_at (report, "geometry", "slant_m");

  ask (place, "report lawn.spire", &answer);
  const char *line = strstr (answer.out, "slant_m ");
  g_assert_nonnull (line);
  g_assert_cmpfloat_with_epsilon (g_ascii_strtod (line + strlen ("slant_m "), NULL),
                                  slant_m,
                                  1e-15);
}

static void
test_stop_findings_end_with_1 (Place *place, gconstpointer unused)
{
  expect_done (place, "report lawn.spire", 0);
  expect_done (place, "report lawn.spire --set strip.pixels=60", 1);
}

static void
test_working_shows_one_result (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask (place, "report lawn.spire --working support.foot_lever_m", &answer);
  g_assert_nonnull (strstr (answer.out, "formula: (arm_m + arm_width_m/2)/√2\n"));
  g_assert_nonnull (strstr (answer.out, "(stand.arm_m)\n"));
  g_assert_null (strstr (answer.out, "geometry."));
  expect_refusal (place,
                  "report lawn.spire --working support.lever",
                  2,
                  "lawn.spire: --working support.lever: no such result");
}

/* The refusals of --set: usage, whatever is wrong with it. */
static const struct {
  const char *set, *message;
} refused[] = {
  { "strip.pixel=3", "strip.pixel: no such key" },
  { "strip.pixels", "--set strip.pixels: PATH=VALUE is allowed" },
  { "strip.pixels=", "strip.pixels: " },
  { "strip.pixels=2.5", "strip.pixels: 2.5 is not a whole number" },
  { "strip.pixels=2001", "strip.pixels: 2001 is outside 1 … 2000" },
  { "strip.pitch_m=nan", "strip.pitch_m: " },
  { "strip.pitch_m=0,05", "strip.pitch_m: " },
  { "power.feed=left", "power.feed: " },
  { "strip.measured=yes", "strip.measured: " },
  { "shape.ring_height_m=2.8", "shape.ring_height_m: 2.8 is outside" },
  { "crown.hook_reach_m=0.13", "crown.hook_reach_m: 0.13 is outside" },
  { "data.bits_per_pixel=25", "data.bits_per_pixel: 25 is not a multiple of 8" },
  { "held=3", "held: " },
  { "as_built.ring_points=[{\"azimuth_deg\":0,\"radius_m\":1},{\"azimuth_deg\":1,\"radius_m\":"
    "9},"
    "{\"azimuth_deg\":2,\"radius_m\":1},{\"azimuth_deg\":300,\"radius_m\":9}]",
    "as_built.ring_points: " },
};

static void
test_refused_set (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autofree char *words = g_strdup_printf ("report lawn.spire --set '%s'", refused[i].set);
    g_autofree char *message = g_strconcat ("lawn.spire: ", refused[i].message, NULL);
    expect_refusal (place, words, 2, message);
  }
}

/* The same rules broken by the file itself: the file is not valid. */
static const struct {
  const char *text, *message;
} bad_files[] = {
  { "", "" },
  { "[]", "" },
  { "{ \"spirewright\": 1, }", "" },
  { "{ \"spirewright\": 2 }", "spirewright: " },
  { "{ \"spirewright\": 1, \"strip\": { \"pixels\": 0 } }", "strip.pixels: 0 is outside" },
  { "{ \"spirewright\": 1, \"shape\": { \"ring_height_m\": 2.8 } }", "shape.ring_height_m: " },
  { "{ \"spirewright\": 1, \"crown\": { \"hook_reach_m\": 0.2 } }", "crown.hook_reach_m: " },
  { "{ \"spirewright\": 1, \"data\": { \"bits_per_pixel\": 25 } }", "data.bits_per_pixel: " },
  { "{ \"spirewright\": 1, \"strip\": 3, \"a\\nb\": 1, \"a\\nb\": 2 }", "" },
  { "{ \"spirewright\": 1, \"power\": { \"feed\": \"a\\nb\\u2028c\" } }", "power.feed: " },
  { "{ \"spirewright\": 1, \"stand\": { \"ring_span\": \"arc\" }, \"as_built\": { "
    "\"ring_length_m\": 6 } }",
    "as_built.ring_length_m: " },
};

static void
test_bad_files (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (bad_files); i++) {
    g_autofree char *message = g_strconcat ("bad.spire: ", bad_files[i].message, NULL);
    place_write (place, "bad.spire", bad_files[i].text);
    expect_refusal (place, "report bad.spire", 3, message);
  }
  expect_refusal (place, "report none.spire", 3, "none.spire: ");
  expect_refusal (place, "report .", 3, ".: ");
  expect_refusal (place, "report $'a\\nb\\u2028c'", 3, "a b   c: ");
}

/* A title that is no ASCII, in whatever locale. */
static void
test_any_locale (Place *place, gconstpointer unused)
{
  static const char *const locales[] = { "C", "C.UTF-8", "POSIX", "de_DE.UTF-8" };
  g_autofree char *first = NULL;

  for (guint i = 0; i < G_N_ELEMENTS (locales); i++) {
    g_auto (Answer) answer = { 0 };
    g_autofree char *command =
      g_strdup_printf ("LC_ALL=%s \"$SW\" report lawn.spire --set 'title=Grüner Turm'",
                       locales[i]);
    ask_shell (place, command, &answer);
    g_assert_cmpint (answer.status, ==, 0);
    g_assert_nonnull (strstr (answer.out, "Grüner Turm"));
    if (first == NULL)
      first = g_strdup (answer.out);
    g_assert_cmpstr (answer.out, ==, first);
  }
}

static void
test_any_folder_and_no_home (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (
    place,
    "file=$PWD/lawn.spire; mkdir deep; cd deep; env -i HOME=/nonexistent \"$SW\" report "
    "$file >/dev/null; echo $?; cd ..; rmdir deep",
    &answer);
  g_assert_cmpstr (answer.err, ==, "");
  g_assert_cmpstr (answer.out, ==, "0\n");
}

static void
test_files_with_odd_names (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (place,
             "cp lawn.spire ./-x; cp lawn.spire report; \"$SW\" report -- -x >/dev/null && "
             "\"$SW\" report --json -- -x >/dev/null && \"$SW\" report report >/dev/null && "
             "\"$SW\" report ./-x >/dev/null; echo $?",
             &answer);
  g_assert_cmpstr (answer.err, ==, "");
  g_assert_cmpstr (answer.out, ==, "0\n");
}

static void
test_output_that_cannot_be_written (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (place,
             "\"$SW\" report lawn.spire --json >/dev/full; echo $?; \"$SW\" report lawn.spire "
             "--set strip.pixels=60 2>/dev/null >&-; echo $?",
             &answer);
  g_assert_cmpstr (answer.out, ==, "3\n3\n");
  g_assert_true (g_str_has_prefix (answer.err, "spirewright: standard output: "));
}

static void
test_leaves_the_file_alone (Place *place, gconstpointer unused)
{
  g_autofree char *before = place_read (place, "lawn.spire");

  expect_done (place, "report lawn.spire --set strip.pixels=49", 0);
  g_autofree char *after = place_read (place, "lawn.spire");
  g_assert_cmpstr (before, ==, after);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_LAWN_TEST ("/commands/report/json has every group", test_json_has_every_group);
  ADD_LAWN_TEST ("/commands/report/set changes what is solved",
                 test_set_changes_what_is_solved);
  ADD_LAWN_TEST ("/commands/report/text and json show the same number",
                 test_text_and_json_show_the_same_number);
  ADD_LAWN_TEST ("/commands/report/working shows one result", test_working_shows_one_result);
  ADD_LAWN_TEST ("/commands/report/stop findings end with 1", test_stop_findings_end_with_1);
  ADD_LAWN_TEST ("/commands/report/refused set", test_refused_set);
  ADD_LAWN_TEST ("/commands/report/bad files", test_bad_files);
  ADD_LAWN_TEST ("/commands/report/any locale", test_any_locale);
  ADD_LAWN_TEST ("/commands/report/any folder and no home", test_any_folder_and_no_home);
  ADD_LAWN_TEST ("/commands/report/files with odd names", test_files_with_odd_names);
  ADD_LAWN_TEST ("/commands/report/output that cannot be written",
                 test_output_that_cannot_be_written);
  ADD_LAWN_TEST ("/commands/report/leaves the file alone", test_leaves_the_file_alone);
  return g_test_run ();
}
