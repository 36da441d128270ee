// SPDX-License-Identifier: GPL-3.0-or-later
/* packet.h: the whole build packet, or nothing: packet.pdf, ring-tape.pdf, crown-plate.pdf,
 * crown-plate.svg, design.spire, report.json, parts.csv, cuts.csv, marks.csv, pixels.csv,
 * ports.csv, and as-built-marks.csv when the ring was measured.
 *
 * The folder may be missing, empty, or hold only an unchanged earlier packet (names and SHA-256
 * sums in its report.json). The new one is written and synced beside it and exchanged in one
 * step. Errors  SW_ERROR_EXISTS naming the first file that is in the way; G_IO_ERROR,
 * G_FILE_ERROR
 */
#pragma once
#include "packet/sheets.h"

/* The solution must have its exact cuts (sw_solution_new_with_cuts ()). `stepwise` (nullable)
 * is set when the file system could not exchange folders and files were renamed one by one.
 */
gboolean sw_packet_write (const SwSolution *solution,
                          const char *folder,
                          SwPaper paper,
                          const SwLanguage *language,
                          gboolean *stepwise,
                          GError **error);
