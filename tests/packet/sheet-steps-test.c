// SPDX-License-Identifier: GPL-3.0-or-later
/* sheet-steps-test.c: what the sheets of the work say, read back from the PDF by poppler. */
#include "../engine/solve.h"
#include "engine/build-steps.h"
#include "engine/raising.h"
#include "engine/units.h"
#include "packet/sheets.h"
#include "pdf-words.h"

#include <glib/gstdio.h>

/* All words of the sheets of that title, joined by single spaces. Returns: (transfer full). */
static char *
sheet_text (const SwSolution *solution, const char *title)
{
  g_autoptr (SwSheets) sheets = sw_sheets_new (solution, SW_PAPER_LETTER, &sw_language_english);
  g_autoptr (GBytes) pdf = sw_sheets_to_pdf (sheets, SW_SHEET_PACKET, NULL);
  g_autofree char *path = NULL;
  GString *text = g_string_new (NULL);

  g_close (g_file_open_tmp ("steps-XXXXXX.pdf", &path, NULL), NULL);
  g_file_set_contents (path,
                       g_bytes_get_data (pdf, NULL),
                       (gssize) g_bytes_get_size (pdf),
                       NULL);
  g_autoptr (GArray) words = words_of (path);
  for (guint i = 0; i < words->len; i++) {
    const Word *word = &g_array_index (words, Word, i);
    if (g_str_equal (sw_sheets_get (sheets, (guint) word->page - 1)->title, title))
      g_string_append_printf (text, "%s ", word->text);
  }
  g_unlink (path);
  return g_string_free (text, FALSE);
}

static void
assert_says (const char *text, const char *wanted)
{
  if (strstr (text, wanted) == NULL)
    g_error ("not there: %s\nin: %s", wanted, text);
}

static void
assert_silent (const char *text, const char *unwanted)
{
  if (strstr (text, unwanted) != NULL)
    g_error ("there: %s", unwanted);
}

typedef struct {
  const char *sets, *title;
  const char *says[6], *silent[3];
} Says;

static const Says cases[] = {
  { "",
    "Build steps",
    { "Half lap in the middle of each", "Parts:", "Tools:", "Go on only if", "opposite pairs" },
    { "Then wait, days: 7", "mirrored pairs" } },
  { "stand.foot=socket", "Build steps", { "gravel", "Then wait, days: 7" }, { "Half lap" } },
  { "guys.count=0", "Build steps", { "Raising" }, { "Drive 4" } },
  { "shape.coverage_deg=180", "Build steps", { "mirrored pairs" }, { "opposite pairs" } },
  /* Worked by hand: 20 strips, the first pair is 1 and the one half a turn on. */
  { "",
    "Raising",
    { "Tilt up", "1 + 11,", "Rehearsal: the bare post", "off by ______", "fall" },
    { "1 + 20" } },
  { "shape.coverage_deg=180", "Raising", { "1 + 20," }, { "1 + 11" } },
  { "", "Power on", { "Before", "no short", "what supply 1 gives", "Found" }, { NULL } },
  { "", "Weekly check", { "Out of plumb", "Each guy reads" }, { NULL } },
  { "guys.count=0", "Weekly check", { "Plumb line" }, { "Each guy reads" } },
  { "topper.kind=none", "Taking down", { "number order", "Elastic ties" }, { "Star off" } },
  { "", "As built", { "Azimuth", "330°" }, { NULL } },
  /* 20 strips and one spare, each a row. */
  { "", "Bench test log", { "20", "spare", "star" }, { NULL } },
  { "", "One strip first", { "Gap at hook", "Found", "Tie’s length at that pull" }, { NULL } },
};

static void
test_sheets_say (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    g_autoptr (SwSolution) solution = solve_with ("lawn", cases[i].sets);
    g_autofree char *text = sheet_text (solution, cases[i].title);

    for (guint k = 0; k < 6 && cases[i].says[k] != NULL; k++)
      assert_says (text, cases[i].says[k]);
    for (guint k = 0; k < 3 && cases[i].silent[k] != NULL; k++)
      assert_silent (text, cases[i].silent[k]);
  }
}

/* The meter's figures are the solution's: Σ of the supplies is what the tree draws. */
static void
test_readings_are_the_solutions (void)
{
  g_autoptr (SwSolution) solution = solve_with ("landmark", "");
  g_autofree char *text = sheet_text (solution, "Power on");
  double sum_w = 0;

  for (int i = 0; i < solution->zones.count; i++)
    sum_w += sw_zones_get (&solution->zones, i).load_w;
  g_assert_cmpfloat_with_epsilon (sum_w,
                                  solution->power.tree_w,
                                  0.001 * solution->power.tree_w);
  g_autofree char *amps = sw_units_format (solution->power.strip_current_a,
                                           SW_QUANTITY_CURRENT,
                                           solution->design->units,
                                           &sw_language_english);
  g_auto (GStrv) parts = g_strsplit (amps, "\u00a0", -1); /* words part there */
  g_autofree char *spaced = g_strjoinv (" ", parts);
  assert_says (text, spaced);
}

/* Each step has its number on the sheet, and the last one is the last. */
static void
test_every_step_is_there (void)
{
  g_autoptr (SwSolution) solution = solve_with ("porch", "");
  g_autoptr (GPtrArray) steps = sw_steps_new (solution);
  g_autofree char *text = sheet_text (solution, "Build steps");
  g_autofree char *last = g_strdup_printf (" %u All white", steps->len);

  assert_says (text, last);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packet/sheet-steps/sheets say what the design asks for", test_sheets_say);
  g_test_add_func ("/packet/sheet-steps/readings are the solution's",
                   test_readings_are_the_solutions);
  g_test_add_func ("/packet/sheet-steps/every step is there", test_every_step_is_there);
  return g_test_run ();
}
