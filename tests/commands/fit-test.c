// SPDX-License-Identifier: GPL-3.0-or-later
#include "program.h"

#include <math.h>

/* What each fit does to the gap at the tie, read from a report of the new file. Worked by hand:
 * the gap is hook to tie, less the gap at the hook and (pixels - 1) pitches.
 */
static void
test_tail_becomes_the_least (Place *place, gconstpointer unused)
{
  static const char *const exact[] = { "crown_height", "ring_radius", "pitch", "lead" };

  for (guint i = 0; i < G_N_ELEMENTS (exact); i++) {
    g_autofree char *words =
      g_strdup_printf ("fit lawn.spire --give %s --set strip.tail_min_m=0.21 --to %s.spire",
                       exact[i],
                       exact[i]);
    g_autofree char *file = g_strdup_printf ("%s.spire", exact[i]);
    expect_done (place, words, 0);
    g_autoptr (JsonNode) report = report_of (place, file);
    g_assert_cmpfloat_with_epsilon (number_at (report, "geometry", "tail_m"), 0.21, 1e-9);
  }
}

/* 2.75118156 - 0.06 - 0.25 = 2.44118156 m for pitches of 0.0508 m: 48 whole ones, 49 pixels;
 * worked by hand. */
static void
test_pixels_are_whole (Place *place, gconstpointer unused)
{
  expect_done (place,
               "fit lawn.spire --give pixels --set strip.tail_min_m=0.25 --to p.spire",
               0);
  g_autofree char *text = place_read (place, "p.spire");
  g_autoptr (JsonNode) root = json_from_string (text, NULL);
  g_assert_cmpfloat_with_epsilon (number_at (root, "strip", "pixels"), 49, 1e-12);
  g_assert_cmpfloat_with_epsilon (number_at (root, "strip", "tail_min_m"), 0.25, 1e-12);
}

/* Spacing = 2π·R/N: R = 0.3·20/2π, N = round (2π/0.3) = 21; an open half tree with 20 strips
 * has 19 gaps: coverage = 0.15·19 rad. Worked by hand.
 */
static void
test_spacing (Place *place, gconstpointer unused)
{
  expect_done (place, "fit lawn.spire --spacing 0.3 --give ring_radius --to r.spire", 0);
  g_autoptr (JsonNode) r = report_of (place, "r.spire");
  g_assert_cmpfloat_with_epsilon (number_at (r, "geometry", "spacing_ring_m"), 0.3, 1e-9);
  g_assert_cmpfloat_with_epsilon (number_at (r, "geometry", "circumference_m"), 6.0, 1e-9);

  expect_done (place, "fit lawn.spire --spacing=0.3 --give strip_count --to n.spire", 0);
  g_autofree char *n = place_read (place, "n.spire");
  g_autoptr (JsonNode) n_root = json_from_string (n, NULL);
  g_assert_cmpfloat_with_epsilon (number_at (n_root, "shape", "strip_count"), 21, 1e-12);

  expect_done (place,
               "fit lawn.spire --spacing 0.15 --give coverage --set shape.coverage_deg=180 "
               "--set site.gust_mps=10 --to c.spire",
               0);
  g_autofree char *c = place_read (place, "c.spire");
  g_autoptr (JsonNode) c_root = json_from_string (c, NULL);
  g_assert_cmpfloat_with_epsilon (number_at (c_root, "shape", "coverage_deg"),
                                  0.15 * 19 * 180 / G_PI,
                                  1e-9);
}

static void
test_says_what_moved (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask (place, "fit lawn.spire --give pixels --set strip.tail_min_m=0.25 --to p.spire", &answer);
  g_assert_cmpstr (answer.out, ==, "strip.pixels: 50 -> 49\nDesign written to p.spire\n");
}

static void
test_no_solution_writes_nothing (Place *place, gconstpointer unused)
{
  expect_refusal (place,
                  "fit lawn.spire --give crown_height --set strip.pixels=400 --to x.spire",
                  1,
                  "lawn.spire: ");
  expect_refusal (
    place,
    "fit lawn.spire --give coverage --spacing 1 --set shape.coverage_deg=180 --to x.spire",
    1,
    "lawn.spire: ");
  g_assert_false (place_has (place, "x.spire"));
}

static void
test_stop_findings_end_with_1 (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask (place, "fit lawn.spire --give lead --set site.gust_mps=60 --to x.spire", &answer);
  g_assert_cmpint (answer.status, ==, 1);
  g_assert_nonnull (strstr (answer.out, "\nstop: "));
  g_assert_true (place_has (place, "x.spire"));
}

static void
test_writes_over_what_was_named (Place *place, gconstpointer unused)
{
  expect_done (place, "fit lawn.spire --give lead --to lawn.spire", 0);
  g_autoptr (JsonNode) report = report_of (place, "lawn.spire");
  g_assert_cmpfloat_with_epsilon (number_at (report, "geometry", "tail_m"), 0.2, 1e-9);
}

static const struct {
  const char *words, *message;
} refused[] = {
  { "--give tail --to x.spire", "lawn.spire: --give tail: " },
  { "--give coverage --to x.spire", "lawn.spire: --give coverage: " },
  { "--give pitch --spacing 0.3 --to x.spire", "lawn.spire: --give pitch: " },
  { "--give ring_radius --spacing 0 --to x.spire", "lawn.spire: --spacing 0: " },
  { "--give ring_radius --spacing nan --to x.spire", "lawn.spire: --spacing nan: " },
  { "--give ring_radius --spacing 0.3m --to x.spire", "lawn.spire: --spacing 0.3m: " },
  { "--to x.spire", "usage: spirewright fit FILE" },
  { "--give lead", "usage: spirewright fit FILE" },
  { "--give lead --set strip.lead=1 --to x.spire", "lawn.spire: strip.lead: no such key" },
};

static void
test_misuse (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autofree char *words = g_strdup_printf ("fit lawn.spire %s", refused[i].words);
    expect_refusal (place, words, 2, refused[i].message);
  }
  g_assert_false (place_has (place, "x.spire"));
}

static void
test_places_that_cannot_be_written (Place *place, gconstpointer unused)
{
  expect_refusal (place, "fit lawn.spire --give lead --to no/x.spire", 3, "no/x.spire: ");
  expect_refusal (place, "fit none.spire --give lead --to x.spire", 3, "none.spire: ");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_LAWN_TEST ("/commands/fit/tail becomes the least", test_tail_becomes_the_least);
  ADD_LAWN_TEST ("/commands/fit/pixels are whole", test_pixels_are_whole);
  ADD_LAWN_TEST ("/commands/fit/spacing", test_spacing);
  ADD_LAWN_TEST ("/commands/fit/says what moved", test_says_what_moved);
  ADD_LAWN_TEST ("/commands/fit/no solution writes nothing", test_no_solution_writes_nothing);
  ADD_LAWN_TEST ("/commands/fit/stop findings end with 1", test_stop_findings_end_with_1);
  ADD_LAWN_TEST ("/commands/fit/writes over what was named", test_writes_over_what_was_named);
  ADD_LAWN_TEST ("/commands/fit/misuse", test_misuse);
  ADD_LAWN_TEST ("/commands/fit/places that cannot be written",
                 test_places_that_cannot_be_written);
  return g_test_run ();
}
