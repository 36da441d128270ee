// SPDX-License-Identifier: GPL-3.0-or-later
#include "program.h"

static void
test_writes_every_file (Place *place, gconstpointer unused)
{
  static const char *const names[] = { "packet.pdf",      "ring-tape.pdf", "crown-plate.pdf",
                                       "crown-plate.svg", "design.spire",  "report.json",
                                       "parts.csv",       "cuts.csv",      "marks.csv",
                                       "pixels.csv",      "ports.csv" };
  g_auto (Answer) answer = { 0 };

  ask (place, "packet lawn.spire --to out", &answer);
  g_assert_cmpint (answer.status, ==, 0);
  g_assert_cmpstr (answer.out, ==, "Build packet written to out\n");
  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    g_autofree char *name = g_build_filename ("out", names[i], NULL);
    g_assert_true (place_has (place, name));
  }
}

/* The packet's report is what `report --json` prints, with the packet's own list besides. */
static void
test_report_is_the_report (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  expect_done (place, "packet lawn.spire --to out --set shape.ring_radius_m=1.01", 0);
  ask (place, "report lawn.spire --json --set shape.ring_radius_m=1.01", &answer);
  g_autofree char *text = place_read (place, "out/report.json");
  g_autoptr (JsonNode) packet = json_from_string (text, NULL);
  g_autoptr (JsonNode) report = json_from_string (answer.out, NULL);
  JsonObject *whole = json_node_get_object (packet);
  g_autoptr (GList) names = json_object_get_members (json_node_get_object (report));
  for (GList *name = names; name != NULL; name = name->next)
    g_assert_true (
      json_node_equal (json_object_get_member (json_node_get_object (report), name->data),
                       json_object_get_member (whole, name->data)));
}

/* Points are 1/72 in: A4 is 595.276 × 841.89, Letter 612 × 792. Source: ISO 216, ANSI Y14.1. */
static void
test_paper (Place *place, gconstpointer unused)
{
  static const struct {
    const char *how, *size;
  } cases[] = {
    { "\"$SW\" packet lawn.spire --to out --paper a4", "595.276 x 841.89" },
    { "\"$SW\" packet lawn.spire --to out --paper letter", "612 x 792" },
    { "LC_ALL= LC_PAPER=en_US.UTF-8 \"$SW\" packet lawn.spire --to out", "612 x 792" },
    { "LC_ALL= LC_PAPER=de_DE.UTF-8 \"$SW\" packet lawn.spire --to out", "595.276 x 841.89" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_auto (Answer) answer = { 0 };
    g_autofree char *command =
      g_strdup_printf ("%s && pdfinfo out/packet.pdf | grep 'Page size'", cases[i].how);
    ask_shell (place, command, &answer);
    g_test_message ("%s: %s%s", cases[i].how, answer.out, answer.err);
    g_assert_nonnull (strstr (answer.out, cases[i].size));
  }
}

static void
test_same_design_same_bytes (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (
    place,
    "\"$SW\" packet lawn.spire --to one && sleep 1.1 && \"$SW\" packet lawn.spire --to two "
    ">/dev/null && diff -r one two && echo same",
    &answer);
  g_assert_cmpstr (answer.out, ==, "Build packet written to one\nsame\n");
}

static void
test_stop_findings_end_with_1 (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask (place, "packet lawn.spire --to out --set strip.pixels=60", &answer);
  g_assert_cmpint (answer.status, ==, 1);
  g_assert_nonnull (strstr (answer.out, "\nstop: "));
  g_assert_true (place_has (place, "out/packet.pdf"));
}

static void
test_over_an_unchanged_packet_only (Place *place, gconstpointer unused)
{
  expect_done (place, "packet lawn.spire --to out", 0);
  expect_done (place, "packet lawn.spire --to out --set site.view_m=20", 0);
  place_write (place, "out/marks.csv", "mine");
  g_auto (Answer) answer = { 0 };
  ask (place, "packet lawn.spire --to out", &answer);
  g_assert_cmpint (answer.status, ==, 3);
  g_assert_nonnull (strstr (answer.err, "out/marks.csv: changed"));
  g_autofree char *kept = place_read (place, "out/marks.csv");
  g_assert_cmpstr (kept, ==, "mine");
}

static void
test_refusals (Place *place, gconstpointer unused)
{
  place_write (place, "file", "");
  expect_refusal (place, "packet lawn.spire --to file", 3, "file: ");
  expect_refusal (place, "packet none.spire --to out", 3, "none.spire: ");
  expect_refusal (place, "packet lawn.spire --to out --paper a3", 2, "--paper: a4 | letter");
  expect_refusal (place,
                  "packet lawn.spire --to out --set x=1",
                  2,
                  "lawn.spire: x: no such key");
  g_assert_false (place_has (place, "out"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_LAWN_TEST ("/commands/packet/writes every file", test_writes_every_file);
  ADD_LAWN_TEST ("/commands/packet/report is the report", test_report_is_the_report);
  ADD_LAWN_TEST ("/commands/packet/paper", test_paper);
  ADD_LAWN_TEST ("/commands/packet/same design, same bytes", test_same_design_same_bytes);
  ADD_LAWN_TEST ("/commands/packet/stop findings end with 1", test_stop_findings_end_with_1);
  ADD_LAWN_TEST ("/commands/packet/over an unchanged packet only",
                 test_over_an_unchanged_packet_only);
  ADD_LAWN_TEST ("/commands/packet/refusals", test_refusals);
  return g_test_run ();
}
