// SPDX-License-Identifier: GPL-3.0-or-later
/* working-text.h: the values of a working as a person reads them. Inside a value no line
 * breaks: its spaces are no-break ones.
 */
#pragma once
#include "engine/design.h"
#include "engine/language.h"

/* As the formula wants it, in SI, six digits: "2.86 m", "2.07·10^8 Pa", "–" where it is none.
 * `unit` as SwWorking has it. Returns: (transfer full). */
char *sw_working_text_si (double value, const char *unit, const SwLanguage *language);

/* In the design's units, "9′ 4 5/8″"; as above where a person has no unit of their own for it,
 * or where those would round it by more than two per cent. Returns: (transfer full). */
char *sw_working_text_in_units (double value,
                                const char *unit,
                                SwUnits units,
                                const SwLanguage *language);
