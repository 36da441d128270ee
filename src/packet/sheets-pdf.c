// SPDX-License-Identifier: GPL-3.0-or-later
/* The sheets of one file as PDF: with outline, page labels and document information. */
#include "packet/sheets.h"

#include <cairo-pdf.h>
#include <gio/gio.h>
#include <string.h>

/* cairo writes the time of day where it is given none, and the same design must give the same
 * bytes. The sheets carry a date to be written by hand. */
#define FIXED_DATE "2000-01-01T00:00:00Z"

static cairo_status_t
append_cb (void *bytes, const unsigned char *data, unsigned int length)
{
  g_byte_array_append (bytes, data, length);
  return CAIRO_STATUS_SUCCESS;
}

static void
set_information (cairo_surface_t *pdf, const char *design_title)
{
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_TITLE, design_title);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_AUTHOR, "Spirewright");
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_CREATOR, "Spirewright " SW_VERSION);
  cairo_pdf_surface_set_metadata (pdf, CAIRO_PDF_METADATA_CREATE_DATE, FIXED_DATE);
}

/* One entry a sheet, on its first page. */
static void
add_outline (cairo_surface_t *pdf, const SwSheet *sheet, int number)
{
  g_autofree char *where = g_strdup_printf ("page=%d", number);

  if (sheet->page == 0)
    cairo_pdf_surface_add_outline (pdf,
                                   CAIRO_PDF_OUTLINE_ROOT,
                                   sheet->title,
                                   where,
                                   CAIRO_PDF_OUTLINE_FLAG_OPEN);
}

static void
draw_pages (const SwSheets *sheets, SwSheetFile file, cairo_surface_t *pdf)
{
  cairo_t *cr = cairo_create (pdf);
  int number = 0;

  for (guint i = 0; i < sw_sheets_count (sheets); i++) {
    const SwSheet *sheet = sw_sheets_get (sheets, i);
    char label[16];

    if (sheet->file != file)
      continue;
    number++;
    g_snprintf (label, sizeof label, "%d", number);
    cairo_pdf_surface_set_size (pdf, sheet->width_pt, sheet->height_pt);
    cairo_pdf_surface_set_page_label (pdf, label);
    add_outline (pdf, sheet, number);
    sw_sheets_draw (sheets, i, cr);
    cairo_show_page (cr);
  }
  cairo_destroy (cr);
}

GBytes *
sw_sheets_to_pdf (const SwSheets *sheets, SwSheetFile file, GError **error)
{
  g_autoptr (GByteArray) bytes = g_byte_array_new ();
  cairo_surface_t *pdf = cairo_pdf_surface_create_for_stream (append_cb, bytes, 72, 72);
  cairo_status_t status;

  cairo_pdf_surface_restrict_to_version (pdf, CAIRO_PDF_VERSION_1_5);
  set_information (pdf, sw_sheets_design_title (sheets));
  draw_pages (sheets, file, pdf);
  cairo_surface_finish (pdf);
  status = cairo_surface_status (pdf);
  cairo_surface_destroy (pdf);
  if (status != CAIRO_STATUS_SUCCESS) {
    g_set_error (error,
                 G_IO_ERROR,
                 G_IO_ERROR_FAILED,
                 "PDF: %s",
                 cairo_status_to_string (status));
    return NULL;
  }
  return g_byte_array_free_to_bytes (g_steal_pointer (&bytes));
}
