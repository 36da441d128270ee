// SPDX-License-Identifier: GPL-3.0-or-later
/* data-ports.h: which port, universe and channel drives which pixel.
 *
 * Whole strips fill a port in order; each port begins a new universe; no pixel is split across
 * two; skipped pixels come first on every port and take channels. The star has a port of its
 * own at the end.
 *
 * Takes    a design that passed sw_design_check ()
 * Errors   none; what cannot be driven is flagged, and laid out all the same
 * Source   512 slots a universe and universes 1 … 63999: ANSI E1.31; a frame lasts as long as
 *          its bits over the bit rate, plus the pause
 */
#pragma once
#include "engine/design.h"

typedef struct {
  int port;                    /* from 1 */
  int first_strip, last_strip; /* 0, 0: the star */
  int pixels;                  /* lit ones */
  int first_universe, last_universe;
} SwPort;

typedef struct {
  int port_pixels_max;  /* what timing and the user's limit allow, skipped ones included */
  int strips_per_port;  /* as laid out, ≥ 1 */
  int ports, universes; /* with the star's */
  int channels_per_pixel;
  gboolean strip_too_long; /* one strip and the skipped pixels are more than a port drives */
  gboolean star_too_long;
  gboolean universe_overfull; /* pixels_per_universe · channels > 512 */
  gboolean universe_beyond;   /* a universe above 63999 */
  GArray *rows;               /* owned: SwPort */
} SwDataPlan;

typedef struct {
  int port, universe, channel; /* channel from 1, of the pixel's first colour */
} SwAddress;

void sw_data_plan_init (SwDataPlan *plan, const SwDesign *design);
void sw_data_plan_clear (SwDataPlan *plan);

/* Whether data runs from the ring up in this strip, 1 … strip_count. */
gboolean sw_data_runs_up (const SwDataPlan *plan, const SwDesign *design, int strip);

/* `pixel` from 1 in the order data reaches them; strip 0 is the star, which must have some. */
SwAddress sw_data_address (const SwDataPlan *plan,
                           const SwDesign *design,
                           int strip,
                           int pixel);
