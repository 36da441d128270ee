// SPDX-License-Identifier: GPL-3.0-or-later
/* findings.h: what is unwise about a design that can be solved: stop, warning, tip.
 *
 * A finding is a row of the table, and the numbers that go into its sentence. Findings never
 * stop a solve. Sentences are templates "{name}" over named values, so that they can be
 * translated.
 */
#pragma once
#include "engine/design.h"
#include "engine/language.h"
#include "engine/quantity.h"

typedef enum { SW_LEVEL_STOP, SW_LEVEL_WARN, SW_LEVEL_TIP } SwLevel;

extern const char *const sw_level_words[];  /* "stop", "warn", "tip" */
extern const char *const sw_level_labels[]; /* N_(): "stop", "warning", "tip" */

typedef struct {
  const char *name; /* as in the template */
  SwQuantity quantity;
  double value;
  const char *text; /* used instead of the value when not NULL; borrowed from the design */
  gboolean word;    /* the text is one of ours, N_() */
} SwFindingValue;

typedef struct {
  SwLevel level;
  const char *code;        /* "strip-too-long" */
  const char *key;         /* the file key it is about */
  const char *template_id; /* N_(): the sentence */
  SwFindingValue values[6];
  guint n_values;
  const char *remedy_key; /* nullable: what would put it right */
  double remedy_value;
  const char
    *remedy_text; /* a catalogue id instead of the value; borrowed from the catalogue */
} SwFinding;

typedef struct SwSolution SwSolution;

/* Each remedy was solved: it clears its finding, brings no new stop and moves nothing locked.
 * with_remedies: FALSE leaves them out; they take longer than all the rest of a solution.
 * Returns: (transfer full) (element-type SwFinding): stops first, then warnings, then tips.
 */
GArray *sw_findings_new (const SwSolution *solution, gboolean with_remedies);

/* The design with the remedy put in.
 * Returns: (transfer full) (nullable); Errors: SW_ERROR_RANGE where rules that join keys
 * refuse.
 */
SwDesign *sw_finding_apply (const SwFinding *finding, const SwDesign *design, GError **error);

/* Returns: (transfer full): the sentence with its numbers in the design's units. */
char *sw_finding_text (const SwFinding *finding,
                       const SwDesign *design,
                       const SwLanguage *language);

/* Returns: (transfer full) (nullable): "Set Pixels a strip to 47". */
char *sw_finding_remedy_text (const SwFinding *finding,
                              const SwDesign *design,
                              const SwLanguage *language);

guint sw_findings_count (const GArray *findings, SwLevel level);
