// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/starts.h"
#include "packet/sheets.h"
#include "pdf-words.h"

#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

/* Read back by another program: poppler's tools and mupdf's. */

typedef struct {
  SwSolution *solution;
  SwSheets *sheets;
  char *path;   /* of the PDF */
  char **pages; /* its text, page by page */
} Fixture;

typedef struct {
  const char *start;
  SwPaper paper;
  SwUnits units;
  void (*change) (SwDesign *design);
  SwSheetFile file;
  const SwLanguage *language; /* NULL: English */
} Case;

static void
write_pdf (Fixture *fixture, SwSheetFile kind)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GBytes) pdf = sw_sheets_to_pdf (fixture->sheets, kind, &error);
  int file = g_file_open_tmp ("sheets-XXXXXX.pdf", &fixture->path, NULL);

  g_assert_no_error (error);
  g_close (file, NULL);
  g_file_set_contents (fixture->path,
                       g_bytes_get_data (pdf, NULL),
                       (gssize) g_bytes_get_size (pdf),
                       NULL);
}

static Fixture *
fixture_new (const Case *kind)
{
  const SwLanguage *language = kind->language ? kind->language : &sw_language_english;
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = sw_start_new (kind->start, &error);
  Fixture *fixture = g_new0 (Fixture, 1);

  g_assert_no_error (error);
  design->units = kind->units;
  if (kind->change != NULL)
    kind->change (design);
  fixture->solution = sw_solution_new (design, sw_catalogue_builtin (NULL), &error);
  g_assert_no_error (error);
  fixture->sheets = sw_sheets_new (fixture->solution, kind->paper, language);
  write_pdf (fixture, kind->file);
  fixture->pages = read_pages (fixture->path);
  return fixture;
}

static void
fixture_free (gpointer data)
{
  Fixture *fixture = data;

  g_unlink (fixture->path);
  g_free (fixture->path);
  g_strfreev (fixture->pages);
  sw_sheets_free (fixture->sheets);
  sw_solution_unref (fixture->solution);
  g_free (fixture);
}

/* Each PDF is made once and read by many tests. */
static GHashTable *fixtures;

static Fixture *
fixture_of (const Case *kind)
{
  Fixture *fixture = g_hash_table_lookup (fixtures, kind);

  if (fixture == NULL) {
    fixture = fixture_new (kind);
    g_hash_table_insert (fixtures, (gpointer) (guintptr) kind, fixture);
  }
  return fixture;
}

static int
pages_of (const Fixture *fixture, SwSheetFile file)
{
  int pages = 0;

  for (guint i = 0; i < sw_sheets_count (fixture->sheets); i++)
    pages += sw_sheets_get (fixture->sheets, i)->file == file;
  return pages;
}

/* Words of a page, joined by single spaces. Returns: (transfer full). */
static char *
page_text (const Fixture *fixture, int page)
{
  g_auto (GStrv) words = g_strsplit_set (fixture->pages[page - 1], " \n", -1);
  GString *joined = g_string_new (NULL);

  for (guint i = 0; words[i] != NULL; i++) {
    if (words[i][0] != '\0')
      g_string_append_printf (joined, "%s%s", joined->len > 0 ? " " : "", words[i]);
  }
  return g_string_free (joined, FALSE);
}

/* Source: ISO 216 and ANSI/ASME Y14.1, in points. */
static gboolean
is_paper (double a, double b, SwPaper paper)
{
  double small = paper == SW_PAPER_A4 ? 595.276 : 612;
  double large = paper == SW_PAPER_A4 ? 841.890 : 792;

  return fabs (MIN (a, b) - small) < 0.01 && fabs (MAX (a, b) - large) < 0.01;
}

static void
test_pages_have_the_paper (gconstpointer data)
{
  const Case *kind = data;
  const Fixture *fixture = fixture_of (kind);
  const char *argv[] = { "pdfinfo", "-f", "1", "-l", "999", fixture->path, NULL };
  g_autofree char *info = output_of (argv);
  g_auto (GStrv) lines = g_strsplit (info, "\n", -1);
  int pages = 0;

  for (guint i = 0; lines[i] != NULL; i++) {
    double width, height;
    int page;

    if (sscanf (lines[i], "Page %d size: %lf x %lf", &page, &width, &height) != 3)
      continue;
    g_assert_true (is_paper (width, height, kind->paper));
    pages++;
  }
  g_assert_cmpint (pages, ==, pages_of (fixture, kind->file));
}

static void
test_the_title_stands_on_the_pages (gconstpointer data)
{
  const Case *kind = data;
  const Fixture *fixture = fixture_of (kind);
  int last = kind->file == SW_SHEET_PACKET ? pages_of (fixture, kind->file) : 1;

  for (int page = 1; page <= last; page++) {
    g_autofree char *text = page_text (fixture, page);

    if (strstr (text, fixture->solution->design->title) == NULL)
      g_error ("page %d has no title: %s", page, text);
  }
}

static void
test_sheets_are_numbered (gconstpointer data)
{
  const Fixture *fixture = fixture_of (data);
  int pages = pages_of (fixture, SW_SHEET_PACKET);

  for (int page = 1; page <= pages; page++) {
    g_autofree char *text = page_text (fixture, page);
    g_autofree char *number = g_strdup_printf ("%d of %d", page, pages);

    g_assert_nonnull (strstr (text, number));
  }
}

static void
test_no_word_runs_into_another (gconstpointer data)
{
  const Fixture *fixture = fixture_of (data);
  g_autoptr (GArray) words = words_of (fixture->path);

  g_assert_cmpuint (words->len, >, 100);
  for (guint i = 0; i < words->len; i++) {
    const Word *a = &g_array_index (words, Word, i);

    for (guint j = i + 1; j < words->len; j++) {
      const Word *b = &g_array_index (words, Word, j);

      if (b->page != a->page)
        break;
      if (overlap (a, b))
        g_error ("page %d: “%s” and “%s” overlap", a->page, a->text, b->text);
    }
  }
}

/* Source: ISO 5457, frame 20 mm from the left edge and 10 mm from the others. */
static void
test_no_word_leaves_the_frame (gconstpointer data)
{
  const Fixture *fixture = fixture_of (data);
  g_autoptr (GArray) words = words_of (fixture->path);

  for (guint i = 0; i < words->len; i++) {
    const Word *word = &g_array_index (words, Word, i);
    const SwSheet *sheet = sw_sheets_get (fixture->sheets, (guint) word->page - 1);
    gboolean inside = word->x0 >= 20 * 72 / 25.4 && word->y0 >= 10 * 72 / 25.4 &&
                      word->x1 <= sheet->width_pt - 10 * 72 / 25.4 &&
                      word->y1 <= sheet->height_pt - 10 * 72 / 25.4 + 1;

    if (!inside)
      g_error ("page %d: “%s” is outside the frame", word->page, word->text);
  }
}

/* Worked by hand: 20 strips on 1.0167 m: mark 2 at 319.4 mm = 12.575 in = 1 ft 0 9/16 in. */
static void
test_ring_marks_in_both_units (gconstpointer data)
{
  const Fixture *fixture = fixture_of (data);
  gboolean found = FALSE;

  for (int page = 1; page <= pages_of (fixture, SW_SHEET_PACKET); page++) {
    g_autofree char *text = page_text (fixture, page);

    found = found || (strstr (text, "Ring marks") != NULL && strstr (text, " 319 ") != NULL &&
                      strstr (text, "9/16″") != NULL);
  }
  g_assert_true (found);
}

/* Worked by hand: joints of four pieces lie 9° from the marks and ties of the Lawn, 1.0167·π/20
 * = 159.7 mm from mark 1. A jig of 90° on an inner face of 983.3 mm: a base line of 2·983.3·sin
 * 45° = 1390.6 mm, in its middle, at 695 mm, 983.3·(1 − cos 45°) = 288.0 mm out. */
static void
test_the_ring_sheet_says_how_to_make_it (gconstpointer data)
{
  static const char *const wanted[] = { "Bending jig", "Warming PVC", "Joint 4",
                                        "160",         "695",         "288" };
  const Fixture *fixture = fixture_of (data);
  g_autoptr (GString) all = g_string_new (NULL);

  for (int page = 1; page <= pages_of (fixture, SW_SHEET_PACKET); page++) {
    g_autofree char *text = page_text (fixture, page);
    if (strstr (text, "Bending jig") != NULL || strstr (text, "Joint 4") != NULL)
      g_string_append (all, text);
  }
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++) {
    if (strstr (all->str, wanted[i]) == NULL)
      g_error ("the ring sheet does not say %s", wanted[i]);
  }
}

/* Worked by hand: the Lawn's post is 2.86 m less 1.803 in, 110.795 in; its stub 203.6 mm, 8 in;
 * and the six joints that would turn are 8, 9 and 12 to 15.
 */
static void
test_the_fits_sheet_says_what_to_cut (gconstpointer data)
{
  static const char *const wanted[] = { "110 13/16″",
                                        "Star stub, cut 8″",
                                        "cut through the middle",
                                        "2.4 mm",
                                        "9: Post in the flange",
                                        "15: Stub in the star",
                                        "a tether",
                                        "69 lb" };
  const Fixture *fixture = fixture_of (data);
  g_autoptr (GString) all = g_string_new (NULL);

  for (int page = 1; page <= pages_of (fixture, SW_SHEET_PACKET); page++) {
    g_autofree char *text = page_text (fixture, page);
    if (strstr (text, "How it fits together") != NULL)
      g_string_append (all, text);
  }
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++) {
    if (strstr (all->str, wanted[i]) == NULL)
      g_error ("the fits sheet does not say %s: %s", wanted[i], all->str);
  }
}

/* Worked by hand: arms of 0.95 m less half of 5-1/2 in: 34.65 in; half of 1-1/2 in; bolts 1.945
 * in off; 36 kg are 4 slabs of 16 kg, 141 lb. Boards of actual size: ALSC PS 20.
 */
static void
test_the_foot_sheet_says_how_to_make_it (gconstpointer data)
{
  static const char *const wanted[] = { "34 5/8″",        "5 1/2″",
                                        "3/4″",           "1 15/16″",
                                        "141.1 lb",       "diagonals",
                                        "Cap the sleeve", "More than 3/8″: shim" };
  const Fixture *fixture = fixture_of (data);
  g_autofree char *found = NULL;

  for (int page = 1; page <= pages_of (fixture, SW_SHEET_PACKET); page++) {
    g_autofree char *text = page_text (fixture, page);
    if (strstr (text, "Hang a plumb line") == NULL)
      continue;
    g_free (found); /* the build steps say it as well, before the foot's own sheet */
    found = g_steal_pointer (&text);
  }
  g_assert_nonnull (found);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++) {
    if (strstr (found, wanted[i]) == NULL)
      g_error ("the foot sheet does not say %s: %s", wanted[i], found);
  }
}

/* Worked by hand, the Landmark: 36 strips of 90 pixels and a star of 150, 55 mA each, half
 * white: 2.475 A a strip, which both its ends share, and 4.125 A for the star. A feeder of 3
 * strips carries 3.71 A: fuse 5 A at 80 % (NEC 210.20(A)); the star's: 7.5 A. Nine strips draw
 * 22.275 A or 267.3 W, 76.4 % of 350 W; three more would be over 80 %; four such leave no room
 * for the star's 49.5 W. 1119 W / 0.85 = 1316 W; at 120 V and a power factor of 0.6 that is
 * 18.3 A. Class 2 at 12 V: 5 A (UL 1310).
 */
static void
test_the_power_sheet_says_what_hangs_where (gconstpointer data)
{
  static const char *const wanted[] = { "3.71 A",
                                        "14 AWG (2.1 mm²)",
                                        "7.5 A",
                                        "Strips 28 to 36",
                                        "76.4 %",
                                        "14.1 %",
                                        "1316 W",
                                        "18.3 A at 120 V",
                                        "12.00 V, 60 W at most",
                                        "licensed electrician",
                                        "Never join the + outputs",
                                        "GFCI",
                                        "within ten minutes" };
  const Fixture *fixture = fixture_of (data);
  g_autoptr (GString) all = g_string_new (NULL);

  for (int page = 1; page <= pages_of (fixture, SW_SHEET_PACKET); page++) {
    g_autofree char *text = page_text (fixture, page);
    if (strstr (text, "Feeders and fuses") != NULL || strstr (text, "Heat in") != NULL)
      g_string_append (all, text);
  }
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++) {
    if (strstr (all->str, wanted[i]) == NULL)
      g_error ("the power sheet does not say %s: %s", wanted[i], all->str);
  }
}

/* Worked by hand in height-chain-test.c: 31.3 kg, shown as 69 lb. */
static void
test_each_sheet_says_what_to_lift (gconstpointer data)
{
  const Fixture *fixture = fixture_of (data);

  for (int page = 1; page <= pages_of (fixture, SW_SHEET_PACKET); page++) {
    g_autofree char *text = page_text (fixture, page);
    const char *foot = strstr (text, "To lift");

    if (foot == NULL || strstr (text, "69 lb") == NULL)
      g_error ("page %d does not say what to lift", page);
  }
}

/* Worked by hand: √((2.86 − 0.25)² + (1 − 0.13)²) = 2.75118 m, 108.31 in. */
static void
test_the_working_can_be_followed (gconstpointer data)
{
  static const char *const wanted[] = {
    "√((crown_height_m − ring_height_m)^2 + (ring_radius_m − crown_radius_m)^2)",
    "crown_height_m = 2.86 m",
    "ring_height_m = 0.25 m",
    "2.75118 m",
    "9′ 5/16″",
    "tipping_factor: neither strips nor guys help.",
    "mass_kg_per_m = 0.22 kg/m;",
    "gravity_mps2 9.80665 m/s² standard gravity NIST",
  };
  const Fixture *fixture = fixture_of (data);
  g_autoptr (GString) all = g_string_new (NULL);

  for (guint i = 0; i < sw_sheets_count (fixture->sheets); i++) {
    if (strcmp (sw_sheets_get (fixture->sheets, i)->title, "Working") != 0)
      continue;
    g_autofree char *text = page_text (fixture, (int) i + 1);
    g_string_append_printf (all, "%s ", text);
  }
  g_string_replace (all, "\u00a0", " ", 0);
  g_string_replace (all, "\u2060", "", 0);
  for (guint i = 0; i < G_N_ELEMENTS (wanted); i++) {
    if (strstr (all->str, wanted[i]) == NULL)
      g_error ("the working does not say %s: %s", wanted[i], all->str);
  }
}

static void
test_fonts_are_embedded_in_part (gconstpointer data)
{
  const Fixture *fixture = fixture_of (data);
  const char *argv[] = { "pdffonts", fixture->path, NULL };
  g_autofree char *fonts = output_of (argv);
  g_auto (GStrv) lines = g_strsplit (fonts, "\n", -1);

  g_assert_cmpuint (g_strv_length (lines), >, 3);
  for (guint i = 2; lines[i] != NULL && lines[i][0] != '\0'; i++)
    g_assert_nonnull (strstr (lines[i], "yes yes yes")); /* embedded, subset, searchable */
}

static void
test_the_outline_names_the_sheets (gconstpointer data)
{
  const Fixture *fixture = fixture_of (data);
  const char *argv[] = { "mutool", "show", fixture->path, "outline", NULL };
  g_autofree char *outline = output_of (argv);

  for (guint i = 0; i < sw_sheets_count (fixture->sheets); i++) {
    const SwSheet *sheet = sw_sheets_get (fixture->sheets, i);

    if (sheet->file == SW_SHEET_PACKET)
      g_assert_nonnull (strstr (outline, sheet->title));
  }
}

static void
test_the_document_knows_its_title (gconstpointer data)
{
  const Fixture *fixture = fixture_of (data);
  const char *argv[] = { "pdfinfo", "-isodates", fixture->path, NULL };
  g_autofree char *info = output_of (argv);
  g_autofree char *title =
    g_strdup_printf ("Title:           %s\n", fixture->solution->design->title);

  g_assert_nonnull (strstr (info, title));
  g_assert_nonnull (strstr (info, "CreationDate:    2000-01-01T00:00:00Z"));
}

static void
set_many_strips (SwDesign *design)
{
  design->shape.strip_count = 512;
}

static void
set_two_strips (SwDesign *design)
{
  design->shape.strip_count = 2;
  design->shape.coverage_deg = 20;
  design->topper.kind = SW_TOPPER_NONE;
  design->guys.count = 0;
}

/* A spoked arc of bent conduit, its end pieces unlike. */
static void
set_arc (SwDesign *design)
{
  design->shape.coverage_deg = 240;
  design->stand.ring_span = SW_SPAN_ARC;
  design->stand.ring_ties = 7;
  design->stand.ring_spokes = 5;
  g_free (design->stand.ring_pipe);
  design->stand.ring_pipe = g_strdup ("emt-1/2");
}

/* 200 characters: words, as a person would type. */
static void
set_long_title (SwDesign *design)
{
  g_free (design->title);
  design->title = g_strdup ("Winter lights WWWW on the green in front of the old town hall, to "
                            "be raised by all neighbours "
                            "MMMM on the last Saturday of November & lit until the sixth of "
                            "January, if the weather holds "
                            "WWWW MMMM ok");
  g_assert_cmpint (g_utf8_strlen (design->title, -1), <=, 200);
}

static void
set_bucket (SwDesign *design)
{
  design->stand.foot = SW_FOOT_BUCKET;
}

static void
set_measured (SwDesign *design)
{
  design->as_built.ring_length_m = 9.5;
}

/* Words two fifths longer, as many languages are. */
static const char *
lengthen (const char *id)
{
  GString *longer = g_string_new (id);
  glong more = g_utf8_strlen (id, -1) * 2 / 5;

  for (glong i = 0; i < more; i++)
    g_string_append (longer, i % 7 == 6 ? " " : "ö");
  const char *kept = g_intern_string (longer->str);
  g_string_free (longer, TRUE);
  return kept;
}

static const SwLanguage longer = { .code = "xx", .decimal = ",", .translate = lengthen };

static const struct {
  const char *name;
  Case kind;
} kinds[] = {
  { "lawn", { "lawn", SW_PAPER_A4, SW_UNITS_US, NULL, SW_SHEET_PACKET, NULL } },
  { "porch, letter",
    { "porch", SW_PAPER_LETTER, SW_UNITS_METRIC, NULL, SW_SHEET_PACKET, NULL } },
  { "landmark, measured",
    { "landmark", SW_PAPER_LETTER, SW_UNITS_US, set_measured, SW_SHEET_PACKET, NULL } },
  { "512 strips",
    { "landmark", SW_PAPER_A4, SW_UNITS_METRIC, set_many_strips, SW_SHEET_PACKET, NULL } },
  { "two strips",
    { "porch", SW_PAPER_A4, SW_UNITS_METRIC, set_two_strips, SW_SHEET_PACKET, NULL } },
  { "arc of conduit",
    { "lawn", SW_PAPER_LETTER, SW_UNITS_US, set_arc, SW_SHEET_PACKET, NULL } },
  { "bucket", { "lawn", SW_PAPER_LETTER, SW_UNITS_METRIC, set_bucket, SW_SHEET_PACKET, NULL } },
  { "long title",
    { "lawn", SW_PAPER_LETTER, SW_UNITS_US, set_long_title, SW_SHEET_PACKET, NULL } },
  { "longer words",
    { "landmark", SW_PAPER_A4, SW_UNITS_US, set_measured, SW_SHEET_PACKET, &longer } },
};

static const struct {
  const char *name;
  GTestDataFunc test;
} tests[] = {
  { "pages have the paper", test_pages_have_the_paper },
  { "the title stands on every page", test_the_title_stands_on_the_pages },
  { "sheets are numbered", test_sheets_are_numbered },
  { "no word runs into another", test_no_word_runs_into_another },
  { "no word leaves the frame", test_no_word_leaves_the_frame },
  { "fonts are embedded in part", test_fonts_are_embedded_in_part },
  { "the outline names the sheets", test_the_outline_names_the_sheets },
  { "the document knows its title", test_the_document_knows_its_title },
};

static const Case long_tape = { "lawn",         SW_PAPER_LETTER,    SW_UNITS_US,
                                set_long_title, SW_SHEET_RING_TAPE, NULL };
static const Case long_plate = { "lawn",         SW_PAPER_A4,          SW_UNITS_US,
                                 set_long_title, SW_SHEET_CROWN_PLATE, NULL };
static const Case tape = {
  "lawn", SW_PAPER_LETTER, SW_UNITS_US, NULL, SW_SHEET_RING_TAPE, NULL
};
static const Case plate = {
  "lawn", SW_PAPER_A4, SW_UNITS_US, NULL, SW_SHEET_CROWN_PLATE, NULL
};

#define ADD(path, kind, test) g_test_add_data_func (path, kind, test)

int
main (int argc, char **argv)
{
  int status;

  g_test_init (&argc, &argv, NULL);
  fixtures = g_hash_table_new_full (NULL, NULL, NULL, fixture_free);
  for (guint i = 0; i < G_N_ELEMENTS (kinds); i++) {
    for (guint j = 0; j < G_N_ELEMENTS (tests); j++) {
      g_autofree char *path =
        g_strdup_printf ("/packet/sheets/%s/%s", kinds[i].name, tests[j].name);

      ADD (path, &kinds[i].kind, tests[j].test);
    }
  }
  ADD ("/packet/sheets/ring marks in both units",
       &kinds[0].kind,
       test_ring_marks_in_both_units);
  ADD ("/packet/sheets/each sheet says what to lift",
       &kinds[0].kind,
       test_each_sheet_says_what_to_lift);
  ADD ("/packet/sheets/the fits sheet says what to cut",
       &kinds[0].kind,
       test_the_fits_sheet_says_what_to_cut);
  ADD ("/packet/sheets/the foot sheet says how to make it",
       &kinds[0].kind,
       test_the_foot_sheet_says_how_to_make_it);
  ADD ("/packet/sheets/the power sheet says what hangs where",
       &kinds[2].kind,
       test_the_power_sheet_says_what_hangs_where);
  ADD ("/packet/sheets/the ring sheet says how to make it",
       &kinds[0].kind,
       test_the_ring_sheet_says_how_to_make_it);
  ADD ("/packet/sheets/the working can be followed",
       &kinds[0].kind,
       test_the_working_can_be_followed);
  ADD ("/packet/sheets/tape/pages have the paper", &tape, test_pages_have_the_paper);
  ADD ("/packet/sheets/tape/the title stands first", &tape, test_the_title_stands_on_the_pages);
  ADD ("/packet/sheets/tape/no word runs into another", &tape, test_no_word_runs_into_another);
  ADD ("/packet/sheets/tape/a long title stands whole",
       &long_tape,
       test_the_title_stands_on_the_pages);
  ADD ("/packet/sheets/tape/a long title has its place",
       &long_tape,
       test_no_word_runs_into_another);
  ADD ("/packet/sheets/plate/a long title stands whole",
       &long_plate,
       test_the_title_stands_on_the_pages);
  ADD ("/packet/sheets/plate/a long title has its place",
       &long_plate,
       test_no_word_runs_into_another);
  ADD ("/packet/sheets/plate/pages have the paper", &plate, test_pages_have_the_paper);
  ADD ("/packet/sheets/plate/the title stands first",
       &plate,
       test_the_title_stands_on_the_pages);
  status = g_test_run ();
  g_hash_table_unref (fixtures);
  return status;
}
