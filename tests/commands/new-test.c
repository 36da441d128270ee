// SPDX-License-Identifier: GPL-3.0-or-later
#include "program.h"

static void
test_starts_with_the_lawn (Place *place, gconstpointer unused)
{
  expect_done (place, "new a.spire", 0);
  expect_done (place, "new b.spire --example lawn", 0);
  g_autofree char *a = place_read (place, "a.spire");
  g_autofree char *b = place_read (place, "b.spire");
  g_assert_cmpstr (a, ==, b);
}

/* Source: the scenarios are our own; crown heights as they were set for the three starts. */
static const struct {
  const char *name;
  double crown_height_m, strips;
} starts[] = { { "porch", 1.90, 9 }, { "lawn", 2.86, 20 }, { "landmark", 4.94, 36 } };

static void
test_each_start_has_no_stop (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (starts); i++) {
    g_autofree char *create =
      g_strdup_printf ("new %s.spire --example %s", starts[i].name, starts[i].name);
    g_autofree char *report = g_strdup_printf ("report %s.spire", starts[i].name);
    g_autofree char *file = g_strdup_printf ("%s.spire", starts[i].name);
    expect_done (place, create, 0);
    expect_done (place, report, 0);
    g_autofree char *text = place_read (place, file);
    g_autoptr (JsonNode) root = json_from_string (text, NULL);
    g_assert_cmpfloat_with_epsilon (number_at (root, "shape", "crown_height_m"),
                                    starts[i].crown_height_m,
                                    1e-12);
    g_assert_cmpfloat_with_epsilon (number_at (root, "shape", "strip_count"),
                                    starts[i].strips,
                                    1e-12);
  }
}

static void
test_never_over_a_file (Place *place, gconstpointer unused)
{
  place_write (place, "mine.spire", "mine");
  expect_refusal (place, "new mine.spire", 3, "mine.spire: file: stands already");
  g_autofree char *kept = place_read (place, "mine.spire");
  g_assert_cmpstr (kept, ==, "mine");
  expect_done (place, "new mine.spire --force --example porch", 0);
  g_autofree char *written = place_read (place, "mine.spire");
  g_assert_nonnull (strstr (written, "Boathouse deck"));
}

/* A link that leads nowhere is a name that is taken. */
static void
test_never_through_a_link (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (place, "ln -s elsewhere.spire link.spire; \"$SW\" new link.spire", &answer);
  g_assert_cmpint (answer.status, ==, 3);
  g_assert_false (place_has (place, "elsewhere.spire"));
}

/* Of many that begin at once only one writes. */
static void
test_only_one_of_many_wins (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (
    place,
    "for k in 1 2 3 4 5 6 7 8; do (\"$SW\" new one.spire 2>/dev/null; echo $?) & done; wait",
    &answer);
  g_auto (GStrv) lines = g_strsplit (answer.out, "\n", -1);
  guint won = 0, refused = 0;
  for (guint i = 0; lines[i] != NULL; i++) {
    won += strcmp (lines[i], "0") == 0;
    refused += strcmp (lines[i], "3") == 0;
  }
  g_assert_cmpuint (won, ==, 1);
  g_assert_cmpuint (refused, ==, 7);
  expect_done (place, "report one.spire", 0);
}

static void
test_places_that_cannot_be_written (Place *place, gconstpointer unused)
{
  expect_refusal (place, "new no/folder/a.spire", 3, "no/folder/a.spire: file: No such file");
  expect_refusal (place, "new . --force", 3, ".: ");
  expect_refusal (place, "new a.spire --example moon", 2, "");
  g_assert_false (place_has (place, "a.spire"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_TEST ("/commands/new/starts with the Lawn", test_starts_with_the_lawn);
  ADD_TEST ("/commands/new/each start has no stop", test_each_start_has_no_stop);
  ADD_TEST ("/commands/new/never over a file", test_never_over_a_file);
  ADD_TEST ("/commands/new/never through a link", test_never_through_a_link);
  ADD_TEST ("/commands/new/only one of many wins", test_only_one_of_many_wins);
  ADD_TEST ("/commands/new/places that cannot be written", test_places_that_cannot_be_written);
  return g_test_run ();
}
