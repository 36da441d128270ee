// SPDX-License-Identifier: GPL-3.0-or-later
/* sheets.h: the build sheets as a list of pages, each drawn by one call; window, PDF and
 * printer use it. */
#pragma once
#include "drawing/style.h"
#include "engine/solution.h"

typedef enum { SW_PAPER_A4, SW_PAPER_LETTER } SwPaper;

typedef enum { SW_SHEET_PACKET, SW_SHEET_RING_TAPE, SW_SHEET_CROWN_PLATE } SwSheetFile;

typedef struct {
  const char *title; /* translated by the language given; borrowed from it */
  SwSheetFile file;  /* which PDF it belongs to */
  double width_pt, height_pt;
  gboolean true_size; /* must print at 100 % */
  guint row;          /* which row of the table of sheets */
  int page;           /* which page of that row */
} SwSheet;

typedef struct SwSheets SwSheets;

/* The sheets that apply to the design, in the order of the work. The solution and the language
 * are borrowed. */
SwSheets *sw_sheets_new (const SwSolution *solution, SwPaper paper, const SwLanguage *language);
void sw_sheets_free (SwSheets *sheets);

guint sw_sheets_count (const SwSheets *sheets);
const SwSheet *sw_sheets_get (const SwSheets *sheets, guint i);

/* Borrowed. */
const char *sw_sheets_design_title (const SwSheets *sheets);

/* In points, origin at the page's upper left. */
void sw_sheets_draw (const SwSheets *sheets, guint i, cairo_t *cr);

/* One PDF. Returns: (transfer full) (nullable): its bytes. */
GBytes *sw_sheets_to_pdf (const SwSheets *sheets, SwSheetFile file, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwSheets, sw_sheets_free)
