// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/finding-table.h"

#include <math.h>

const SwFindingRow *const sw_finding_tables[] = { sw_findings_of_shape,
                                                  sw_findings_of_fits,
                                                  sw_findings_of_strips,
                                                  sw_findings_of_foot,
                                                  sw_findings_of_post,
                                                  sw_findings_of_guys,
                                                  sw_findings_of_ring,
                                                  sw_findings_of_site,
                                                  sw_findings_of_power,
                                                  sw_findings_of_data,
                                                  sw_findings_as_built,
                                                  sw_findings_of_parts,
                                                  NULL };

static SwFindingValue *
next_value (SwFindingDraft *draft, const char *name)
{
  SwFinding *finding = &draft->finding;

  g_assert (finding->n_values < G_N_ELEMENTS (finding->values));
  finding->values[finding->n_values] = (SwFindingValue){ .name = name };
  return &finding->values[finding->n_values++];
}

void
sw_draft_say (SwFindingDraft *draft, const char *name, SwQuantity quantity, double value)
{
  SwFindingValue *said = next_value (draft, name);

  said->quantity = quantity;
  said->value = value;
}

void
sw_draft_say_text (SwFindingDraft *draft, const char *name, const char *text)
{
  SwFindingValue *said = next_value (draft, name);

  said->quantity = SW_QUANTITY_NONE;
  said->text = text;
}

void
sw_draft_say_word (SwFindingDraft *draft, const char *name, const char *word)
{
  sw_draft_say_text (draft, name, word);
  draft->finding.values[draft->finding.n_values - 1].word = TRUE;
}

static SwRemedy *
next_remedy (SwFindingDraft *draft, const char *key)
{
  g_assert (draft->n_remedies < G_N_ELEMENTS (draft->remedies));
  draft->remedies[draft->n_remedies] = (SwRemedy){ .key = key };
  return &draft->remedies[draft->n_remedies++];
}

void
sw_draft_remedy (SwFindingDraft *draft, const char *key, double value)
{
  if (isfinite (value))
    next_remedy (draft, key)->value = value;
}

void
sw_draft_remedy_text (SwFindingDraft *draft, const char *key, const char *text)
{
  next_remedy (draft, key)->text = text;
}

/* A millionth of a step is no reason for another. */
double
sw_round_up (double value, double step)
{
  return ceil (value / step - 1e-6) * step;
}

double
sw_round_down (double value, double step)
{
  return floor (value / step + 1e-6) * step;
}
