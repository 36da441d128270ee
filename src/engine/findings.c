// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/findings.h"

#include "engine/design-keys.h"
#include "engine/finding-table.h"
#include "engine/units.h"

#include <glib/gi18n.h>
#include <string.h>

const char *const sw_level_words[] = { "stop", "warn", "tip" };
const char *const sw_level_labels[] = { N_ ("stop"), N_ ("warning"), N_ ("tip") };

GArray *
sw_findings_new (const SwSolution *solution)
{
  GArray *findings = g_array_new (FALSE, TRUE, sizeof (SwFinding));

  for (SwLevel level = SW_LEVEL_STOP; level <= SW_LEVEL_TIP; level++) {
    for (guint i = 0; i < sw_n_finding_rows; i++) {
      const SwFindingRow *row = &sw_finding_rows[i];
      SwFinding finding = { .level = level,
                            .code = row->code,
                            .key = row->key,
                            .template_id = row->sentence };
      if (row->level == level && row->test (solution, &finding))
        g_array_append_val (findings, finding);
    }
  }
  return findings;
}

static char *
value_text (const SwFindingValue *value, const SwDesign *design, const SwLanguage *language)
{
  if (value->text != NULL)
    return g_strdup (sw_language_text (language, value->text));
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

char *
sw_finding_remedy_text (const SwFinding *finding,
                        const SwDesign *design,
                        const SwLanguage *language)
{
  const SwKey *key = finding->remedy_key == NULL ? NULL : sw_key_find (finding->remedy_key);

  if (key == NULL)
    return NULL;
  g_autofree char *value =
    key->type == SW_KEY_CHOICE
      ? g_strdup (sw_language_text (language, key->choice_labels[(int) finding->remedy_value]))
      : sw_units_format (finding->remedy_value, key->quantity, design->units, language);
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
