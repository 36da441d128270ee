// SPDX-License-Identifier: GPL-3.0-or-later
/* working-words.h: the working of one number in words, as the readout opens it. */
#pragma once
#include "engine/working.h"

/* The formula, what goes in with its values, how it was found, what was taken for granted and
 * the source, a line each, behind the text; the value itself is the caller's. */
void sw_working_words_append (GString *text,
                              const SwWorking *working,
                              const SwSolution *solution);
