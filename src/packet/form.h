// SPDX-License-Identifier: GPL-3.0-or-later
/* form.h: tables to write on: what to measure, what the design has, and room for a pen. */
#pragma once
#include "packet/flow.h"
#include "packet/table.h"

/* Room to write, as a cell's text. */
#define SW_CELL_WRITE "__________"

/* What to measure, what the design has, what was measured. */
SwTable *sw_form_new (void);
/* `words` N_(); takes the value, nullable: none to compare with. */
void sw_form_add (SwTable *form, const SwPen *pen, const char *words, char *value);

/* Words, ticked one after the other; NULL-ended, N_(). */
void sw_flow_ticks (SwFlow *flow, const char *const *words);
