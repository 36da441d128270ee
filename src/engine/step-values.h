// SPDX-License-Identifier: GPL-3.0-or-later
/* step-values.h: the numbers a build step may name, each by one function of the solution. */
#pragma once
#include "engine/solution.h"

/* The text in that language, each {name} replaced by its value in the design's units; "–" where
 * it is absent. Returns: (transfer full). */
char *sw_step_text (const SwSolution *solution, const char *id, const SwLanguage *language);

/* NAN for a name that is none. */
double sw_step_value (const SwSolution *solution, const char *name);

/* How long a strip's material is cut: from fold to fold of its hems and both hems, hook end to
 * elastic tie. */
double sw_strip_cut_m (const SwSolution *solution);

/* Strips in which data runs from the ring up. */
int sw_strips_up (const SwSolution *solution);

/* How far a tie is stretched in still air, and how long it is then; NAN for a tie that does not
 * give. */
double sw_tie_stretch_m (const SwDesign *design);
