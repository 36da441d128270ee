// SPDX-License-Identifier: GPL-3.0-or-later
/* remedy-effect.h: what a finding's remedy makes worse, so that nobody pays for it unasked. */
#pragma once
#include "engine/solution.h"

typedef struct {
  double more_to_pay; /* currency; 0 where it costs no more */
  GArray *brought;    /* owned: SwFinding that the design did not have, no stops */
  SwDesign *design;   /* owned: with the remedy put in */
} SwRemedyEffect;

/* Solves the design with the remedy. Returns: FALSE where the finding has none or it can't be
 * solved; nothing to clear then.
 */
gboolean sw_remedy_effect_init (SwRemedyEffect *effect,
                                const SwFinding *finding,
                                const SwSolution *solution);

void sw_remedy_effect_clear (SwRemedyEffect *effect);

/* Returns: (transfer full) (nullable): "Costs 12.40 USD more. Then: …"; NULL when nothing
 * becomes worse.
 */
char *sw_remedy_effect_text (const SwRemedyEffect *effect, const SwLanguage *language);
