// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/packet.h"

#include "engine/design-file.h"
#include "engine/report.h"
#include "packet/crown-svg.h"
#include "packet/csv.h"
#include "packet/packet-list.h"

#include <string.h>

typedef struct {
  const SwSolution *solution;
  const SwSheets *sheets;
  const SwLanguage *language;
} Source;

typedef GBytes *(*MakeFile) (const Source *source, GError **error);

static GBytes *
packet_pdf (const Source *source, GError **error)
{
  return sw_sheets_to_pdf (source->sheets, SW_SHEET_PACKET, error);
}

static GBytes *
ring_tape_pdf (const Source *source, GError **error)
{
  return sw_sheets_to_pdf (source->sheets, SW_SHEET_RING_TAPE, error);
}

static GBytes *
crown_plate_pdf (const Source *source, GError **error)
{
  return sw_sheets_to_pdf (source->sheets, SW_SHEET_CROWN_PLATE, error);
}

/* Takes the text. */
static GBytes *
text_bytes (char *text)
{
  return g_bytes_new_take (text, strlen (text));
}

static GBytes *
crown_plate_svg (const Source *source, GError **error)
{
  return text_bytes (sw_crown_svg (source->solution, source->language));
}

static GBytes *
design_spire (const Source *source, GError **error)
{
  gsize length;
  char *text = sw_design_to_data (source->solution->design, &length);

  return g_bytes_new_take (text, length);
}

/* The files and what makes each; the tables first in the order of the work, then the report,
 * which lists the others. */
static const struct {
  const char *name;
  MakeFile make;                             /* or: */
  char *(*csv) (const SwSolution *solution); /* a table of csv.h */
  gboolean as_built;                         /* only when the ring was measured */
} files[] = {
  { "packet.pdf", .make = packet_pdf },
  { "ring-tape.pdf", .make = ring_tape_pdf },
  { "crown-plate.pdf", .make = crown_plate_pdf },
  { "crown-plate.svg", .make = crown_plate_svg },
  { "design.spire", .make = design_spire },
  { "parts.csv", .csv = sw_csv_parts },
  { "cuts.csv", .csv = sw_csv_cuts },
  { "marks.csv", .csv = sw_csv_marks },
  { "pixels.csv", .csv = sw_csv_pixels },
  { "ports.csv", .csv = sw_csv_ports },
  { "as-built-marks.csv", .csv = sw_csv_as_built_marks, .as_built = TRUE },
};

static void
file_clear (gpointer file)
{
  g_bytes_unref (((SwFolderFile *) file)->bytes);
}

/* Returns: (transfer full) (nullable) (element-type SwFolderFile): the report last. */
static GArray *
make_files (const Source *source, GError **error)
{
  g_autoptr (GArray) made = g_array_new (FALSE, FALSE, sizeof (SwFolderFile));
  g_autoptr (JsonNode) report = NULL;
  SwFolderFile file;

  g_array_set_clear_func (made, file_clear);
  for (guint i = 0; i < G_N_ELEMENTS (files); i++) {
    if (files[i].as_built && source->solution->as_built == NULL)
      continue;
    file.name = files[i].name;
    file.bytes = files[i].make != NULL ? files[i].make (source, error)
                                       : text_bytes (files[i].csv (source->solution));
    if (file.bytes == NULL)
      return NULL;
    g_array_append_val (made, file);
  }
  report = sw_report_to_json (source->solution);
  file.name = SW_PACKET_LIST_FILE;
  file.bytes = sw_packet_list_seal (report, (SwFolderFile *) (gpointer) made->data, made->len);
  g_array_append_val (made, file);
  return g_steal_pointer (&made);
}

gboolean
sw_packet_write (const SwSolution *solution,
                 const char *folder,
                 SwPaper paper,
                 const SwLanguage *language,
                 gboolean *stepwise,
                 GError **error)
{
  g_autofree char *place = sw_folder_check (folder, error); /* before any work is done */
  g_autoptr (SwSheets) sheets = NULL;
  g_autoptr (GArray) made = NULL;

  if (place == NULL)
    return FALSE;
  sheets = sw_sheets_new (solution, paper, language);
  made = make_files (&(Source){ solution, sheets, language }, error);
  if (made == NULL)
    return FALSE;
  return sw_folder_write (folder,
                          (const SwFolderFile *) (gconstpointer) made->data,
                          made->len,
                          stepwise,
                          error);
}
