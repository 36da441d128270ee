// SPDX-License-Identifier: GPL-3.0-or-later
/* sheet-wiring.h: the part of the power sheet that says what hangs on what: feeds with their
 * cable and fuses, supplies with their strips, heat, the mains side. For sheet-power.c. */
#pragma once
#include "packet/flow.h"

void sw_wiring_fill (SwFlow *flow);
