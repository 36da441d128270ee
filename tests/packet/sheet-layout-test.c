// SPDX-License-Identifier: GPL-3.0-or-later
/* sheet-layout-test.c: whatever the design, no words run into one another and none leaves its
 * frame: read back by poppler. */
#include "../engine/random-design.h"
#include "packet/sheets.h"
#include "pdf-words.h"

#include <cairo-pdf.h>
#include <glib/gstdio.h>

#define DESIGNS 24       /* at every run */
#define DESIGNS_SLOW 200 /* with -m slow */
#define WITH_WORKING 8   /* the long appendix is looked at on every so many-th */

typedef struct {
  SwSheets *sheets;
  GArray *drawn; /* guint: which sheet stands on the page */
  char *path;
} Paper;

static gboolean
is_drawn (const SwSheet *sheet, gboolean with_working)
{
  return sheet->file == SW_SHEET_PACKET &&
         (with_working || !g_str_equal (sheet->title, "Working"));
}

static void
draw_all (Paper *paper, gboolean with_working)
{
  cairo_surface_t *surface = cairo_pdf_surface_create (paper->path, 1, 1);
  cairo_t *cr = cairo_create (surface);

  for (guint i = 0; i < sw_sheets_count (paper->sheets); i++) {
    const SwSheet *sheet = sw_sheets_get (paper->sheets, i);

    if (!is_drawn (sheet, with_working))
      continue;
    cairo_pdf_surface_set_size (surface, sheet->width_pt, sheet->height_pt);
    sw_sheets_draw (paper->sheets, i, cr);
    cairo_show_page (cr);
    g_array_append_val (paper->drawn, i);
  }
  cairo_destroy (cr);
  cairo_surface_finish (surface);
  g_assert_cmpint (cairo_surface_status (surface), ==, CAIRO_STATUS_SUCCESS);
  cairo_surface_destroy (surface);
}

static void
paper_init (Paper *paper, const SwSolution *solution, guint i)
{
  SwPaper kind = i % 2 == 0 ? SW_PAPER_A4 : SW_PAPER_LETTER;
  int file = g_file_open_tmp ("layout-XXXXXX.pdf", &paper->path, NULL);

  g_close (file, NULL);
  paper->sheets = sw_sheets_new (solution, kind, &sw_language_english);
  paper->drawn = g_array_new (FALSE, FALSE, sizeof (guint));
  draw_all (paper, i % WITH_WORKING == 0);
}

static void
paper_clear (Paper *paper)
{
  g_unlink (paper->path);
  g_free (paper->path);
  g_array_unref (paper->drawn);
  sw_sheets_free (paper->sheets);
}

static const SwSheet *
sheet_of (const Paper *paper, const Word *word)
{
  guint i = g_array_index (paper->drawn, guint, word->page - 1);

  return sw_sheets_get (paper->sheets, i);
}

/* Source: ISO 5457, frame 20 mm from the left edge and 10 mm from the others. */
static gboolean
is_in_frame (const Word *word, const SwSheet *sheet)
{
  double edge = 10 * 72 / 25.4;

  return word->x0 >= 2 * edge && word->y0 >= edge && word->x1 <= sheet->width_pt - edge &&
         word->y1 <= sheet->height_pt - edge + 1;
}

static void
check_words (const Paper *paper, const GArray *words, guint design)
{
  for (guint i = 0; i < words->len; i++) {
    const Word *a = &g_array_index (words, Word, i);

    if (!is_in_frame (a, sheet_of (paper, a)))
      g_error ("design %u: %s: “%s” is outside the frame",
               design,
               sheet_of (paper, a)->title,
               a->text);
    for (guint j = i + 1; j < words->len; j++) {
      const Word *b = &g_array_index (words, Word, j);

      if (b->page != a->page)
        break;
      if (overlap (a, b))
        g_error ("design %u: %s: “%s” and “%s” overlap",
                 design,
                 sheet_of (paper, a)->title,
                 a->text,
                 b->text);
    }
  }
}

static void
check_design (GRand *rand, guint i)
{
  g_autoptr (SwDesign) design = random_design (rand);

  design->units = i / 2 % 2 == 0 ? SW_UNITS_US : SW_UNITS_METRIC;
  g_autoptr (SwSolution) solution = solve_design (design);
  Paper paper;

  paper_init (&paper, solution, i);
  g_autoptr (GArray) words = words_of (paper.path);
  g_assert_cmpuint (words->len, >, 1000);
  check_words (&paper, words, i);
  paper_clear (&paper);
}

/* Both papers, both unit systems. */
static void
test_words_keep_apart_and_inside (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (71);

  for (int i = 0; i < (g_test_slow () ? DESIGNS_SLOW : DESIGNS); i++)
    check_design (rand, (guint) i);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packet/sheet-layout/words keep apart and inside the frame",
                   test_words_keep_apart_and_inside);
  return g_test_run ();
}
