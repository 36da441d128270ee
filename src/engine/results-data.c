// SPDX-License-Identifier: GPL-3.0-or-later
/* results-data.c: ports and universes. */
#include "engine/result-table.h"

#define E131 "ANSI E1.31: 512 slots a universe, universes 1 to 63999"

static const SwResult rows[] = {
  AS ("data.port_pixels_max",
      SW_RESULT_WHOLE,
      data.port_pixels_max,
      "⌊(1/frame_hz − reset)·bit_rate/bits⌋, or the user's limit if lower",
      "timing of one-wire pixels from their data sheets"),
  AS ("data.strips_per_port",
      SW_RESULT_WHOLE,
      data.strips_per_port,
      "⌊(port_pixels_max − skipped)/pixels⌋, at most strips_per_port_max, at least 1",
      "count"),
  AS ("data.ports",
      SW_RESULT_WHOLE,
      data.ports,
      "⌈strip_count/strips_per_port⌉ + 1 for a star",
      "count"),
  AS ("data.universes",
      SW_RESULT_WHOLE,
      data.universes,
      "Σ over ports ⌈(pixels + skipped)/pixels_per_universe⌉",
      E131),
};

const SwResultTable sw_results_of_data = { rows, G_N_ELEMENTS (rows) };
