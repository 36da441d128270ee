// SPDX-License-Identifier: GPL-3.0-or-later
/* finding-table.h: one row a finding, one table a subject; findings.c walks them.
 *
 * A test says whether a solution has the finding. When it has, it fills in the numbers of the
 * sentence and what might put it right, best first; findings.c solves each of those and keeps
 * the first that clears the finding and brings no new stop.
 *
 * Remedies change only what one can build, buy or place: never gust, exposure, friction, soil,
 * a load factor, brightness, a pixel's lowest voltage, or a test that was not made.
 */
#pragma once
#include "engine/solution.h"

typedef struct {
  const char *key;
  double value;     /* number, whole number, choice */
  const char *text; /* an id instead; borrowed from the catalogue */
} SwRemedy;

typedef struct {
  SwFinding finding;
  SwRemedy remedies[8];
  guint n_remedies;
} SwFindingDraft;

typedef struct {
  SwLevel level;
  const char *code;
  const char *key;      /* the file key it is about */
  const char *sentence; /* N_(): with {names} of values; a test may choose another */
  gboolean (*test) (const SwSolution *solution, SwFindingDraft *draft);
} SwFindingRow;

/* Each ends with a row without a code. */
extern const SwFindingRow sw_findings_of_fits[], sw_findings_of_shape[],
  sw_findings_of_strips[], sw_findings_as_built[], sw_findings_of_site[], sw_findings_of_foot[],
  sw_findings_of_post[], sw_findings_of_guys[], sw_findings_of_ring[], sw_findings_of_power[],
  sw_findings_of_data[], sw_findings_of_parts[];

/* All of them, NULL-ended. */
extern const SwFindingRow *const sw_finding_tables[];

/* For tests: names must live as long as the program. */
void sw_draft_say (SwFindingDraft *draft, const char *name, SwQuantity quantity, double value);
void sw_draft_say_text (SwFindingDraft *draft, const char *name, const char *text);
/* The same with a word of our own, N_(), which is translated. */
void sw_draft_say_word (SwFindingDraft *draft, const char *name, const char *word);
/* Not when the value is no number. */
void sw_draft_remedy (SwFindingDraft *draft, const char *key, double value);
void sw_draft_remedy_text (SwFindingDraft *draft, const char *key, const char *text);

/* Up or down to a whole number of steps; a value that is one already stays. */
double sw_round_up (double value, double step);
double sw_round_down (double value, double step);
