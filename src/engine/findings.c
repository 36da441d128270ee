// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/findings.h"

#include "engine/design-keys.h"
#include "engine/finding-table.h"
#include "engine/units.h"

#include <glib/gi18n.h>
#include <string.h>

const char *const sw_level_words[] = { "stop", "warn", "tip" };
const char *const sw_level_labels[] = { N_ ("stop"), N_ ("warning"), N_ ("tip") };

/* Fills the draft. Returns: whether the solution has the finding. */
static gboolean
row_test (const SwFindingRow *row, const SwSolution *solution, SwFindingDraft *draft)
{
  *draft = (SwFindingDraft){ .finding = { .level = row->level,
                                          .code = row->code,
                                          .key = row->key,
                                          .template_id = row->sentence } };
  return row->test (solution, draft);
}

SwDesign *
sw_finding_apply (const SwFinding *finding, const SwDesign *design, GError **error)
{
  const SwKey *key = finding->remedy_key == NULL ? NULL : sw_key_find (finding->remedy_key);
  g_autoptr (SwDesign) changed = sw_design_copy (design);

  g_return_val_if_fail (key != NULL, NULL);
  gboolean set = finding->remedy_text != NULL
                   ? sw_key_set_text (key, changed, finding->remedy_text, error)
                   : sw_key_set_number (key, changed, finding->remedy_value, error);
  return set && sw_design_check (changed, error) ? g_steal_pointer (&changed) : NULL;
}

static gboolean
has_code (const GArray *drafts, const char *code)
{
  for (guint i = 0; i < drafts->len; i++) {
    if (strcmp (g_array_index (drafts, SwFindingDraft, i).finding.code, code) == 0)
      return TRUE;
  }
  return FALSE;
}

/* Whether in `solution` the finding is gone and no stop stands that was not there before. */
static gboolean
is_better (const SwSolution *solution, const GArray *before, const SwFinding *finding)
{
  SwFindingDraft draft;

  for (guint t = 0; sw_finding_tables[t] != NULL; t++) {
    for (const SwFindingRow *row = sw_finding_tables[t]; row->code != NULL; row++) {
      gboolean cured = strcmp (row->code, finding->code) == 0;
      gboolean new_stop = row->level == SW_LEVEL_STOP && !has_code (before, row->code);
      if ((cured || new_stop) && row_test (row, solution, &draft))
        return FALSE;
    }
  }
  return TRUE;
}

static gboolean
remedy_holds (const SwSolution *solution, const GArray *drafts, const SwFinding *finding)
{
  if (sw_design_holds (solution->design, finding->remedy_key))
    return FALSE;
  g_autoptr (SwDesign) design = sw_finding_apply (finding, solution->design, NULL);
  g_autoptr (SwSolution) after =
    design == NULL ? NULL : sw_solution_new_bare (design, solution->catalogue, NULL);
  return after != NULL && is_better (after, drafts, finding);
}

static void
forget_remedy (SwFinding *finding)
{
  finding->remedy_key = finding->remedy_text = NULL;
  finding->remedy_value = 0;
}

/* The first remedy that holds; none where there is none. */
static void
choose_remedy (const SwSolution *solution, const GArray *drafts, SwFindingDraft *draft)
{
  SwFinding *finding = &draft->finding;

  for (guint i = 0; i < draft->n_remedies; i++) {
    finding->remedy_key = draft->remedies[i].key;
    finding->remedy_value = draft->remedies[i].value;
    finding->remedy_text = draft->remedies[i].text;
    if (remedy_holds (solution, drafts, finding))
      return;
  }
  forget_remedy (finding);
}

/* Returns: (transfer full) (element-type SwFindingDraft), in the tables' order. */
static GArray *
drafts_of (const SwSolution *solution)
{
  GArray *drafts = g_array_new (FALSE, FALSE, sizeof (SwFindingDraft));
  SwFindingDraft draft;

  for (guint t = 0; sw_finding_tables[t] != NULL; t++) {
    for (const SwFindingRow *row = sw_finding_tables[t]; row->code != NULL; row++) {
      if (row_test (row, solution, &draft))
        g_array_append_val (drafts, draft);
    }
  }
  return drafts;
}

GArray *
sw_findings_new (const SwSolution *solution, gboolean with_remedies)
{
  g_autoptr (GArray) drafts = drafts_of (solution);
  GArray *findings = g_array_new (FALSE, TRUE, sizeof (SwFinding));

  for (SwLevel level = SW_LEVEL_STOP; level <= SW_LEVEL_TIP; level++) {
    for (guint i = 0; i < drafts->len; i++) {
      SwFindingDraft *draft = &g_array_index (drafts, SwFindingDraft, i);
      if (draft->finding.level != level)
        continue;
      if (with_remedies)
        choose_remedy (solution, drafts, draft);
      g_array_append_val (findings, draft->finding);
    }
  }
  return findings;
}

static char *
value_text (const SwFindingValue *value, const SwDesign *design, const SwLanguage *language)
{
  if (value->text != NULL)
    return g_strdup (value->word ? sw_language_text (language, value->text) : value->text);
  return sw_units_format (value->value, value->quantity, design->units, language);
}

char *
sw_finding_text (const SwFinding *finding, const SwDesign *design, const SwLanguage *language)
{
  g_autoptr (GString) text = g_string_new (sw_language_text (language, finding->template_id));

  for (guint i = 0; i < finding->n_values; i++) {
    g_autofree char *name = g_strdup_printf ("{%s}", finding->values[i].name);
    g_autofree char *value = value_text (&finding->values[i], design, language);
    g_string_replace (text, name, value, 0);
  }
  return g_strdup (text->str);
}

static char *
remedy_value_text (const SwFinding *finding,
                   const SwKey *key,
                   const SwDesign *design,
                   const SwLanguage *language)
{
  if (finding->remedy_text != NULL)
    return g_strdup (finding->remedy_text);
  if (key->type == SW_KEY_CHOICE)
    return g_strdup (
      sw_language_text (language, key->choice_labels[(int) finding->remedy_value]));
  return sw_units_format (finding->remedy_value, key->quantity, design->units, language);
}

char *
sw_finding_remedy_text (const SwFinding *finding,
                        const SwDesign *design,
                        const SwLanguage *language)
{
  const SwKey *key = finding->remedy_key == NULL ? NULL : sw_key_find (finding->remedy_key);

  if (key == NULL)
    return NULL;
  g_autofree char *value = remedy_value_text (finding, key, design, language);
  g_autoptr (GString) text =
    g_string_new (sw_language_text (language, N_ ("Set {setting} to {value}")));
  g_string_replace (text, "{setting}", sw_language_text (language, key->label), 0);
  g_string_replace (text, "{value}", value, 0);
  return g_strdup (text->str);
}

guint
sw_findings_count (const GArray *findings, SwLevel level)
{
  guint count = 0;

  for (guint i = 0; i < findings->len; i++)
    count += g_array_index (findings, SwFinding, i).level == level;
  return count;
}
