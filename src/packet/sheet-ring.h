// SPDX-License-Identifier: GPL-3.0-or-later
/* sheet-ring.h: the parts of the ring sheet that stand in files of their own. */
#pragma once
#include "packet/flow.h"

/* The bending jig: drawing, table of blocks, and how the pipe is warmed. */
void sw_ring_jig_fill (SwFlow *flow);

/* What the ring does under its strips, in the cold, and through a door. */
void sw_ring_figures_fill (SwFlow *flow);
