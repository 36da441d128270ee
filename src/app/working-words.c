// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/working-words.h"

#include "engine/design-keys.h"
#include "engine/working-text.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>
#include <string.h>

/* Returns: (nullable): what the name stands for, where that says more than the name. */
static const char *
meaning (const SwWorkingInput *input)
{
  const SwKey *key = input->key == NULL ? NULL : sw_key_find (input->key);

  if (input->what != NULL)
    return _ (input->what);
  return key == NULL || key->label == NULL ? NULL : _ (key->label);
}

/* Formulas reckon in SI, so that stands beside people's own units: "9′ 4 5/8″ (2.86 m)". */
static void
append_value (GString *text, const SwWorkingInput *input, SwUnits units)
{
  const SwLanguage *language = sw_language_of_process ();
  g_autofree char *own = sw_working_text_in_units (input->value, input->unit, units, language);
  g_autofree char *si = sw_working_text_si (input->value, input->unit, language);

  g_string_append (text, own);
  if (units != SW_UNITS_METRIC && strcmp (own, si) != 0)
    g_string_append_printf (text, " (%s)", si);
}

static void
append_input (GString *text, const SwWorkingInput *input, const SwSolution *solution)
{
  const char *words = meaning (input);

  g_string_append_printf (text, "\n  %s = ", input->name);
  append_value (text, input, solution->design->units);
  if (words != NULL)
    g_string_append_printf (text, ", %s", words);
  if (input->source != NULL)
    g_string_append_printf (text, " [%s]", input->source);
}

void
sw_working_words_append (GString *text, const SwWorking *working, const SwSolution *solution)
{
  const char *formula = working->formula != NULL ? working->formula : working->words;

  g_string_append_printf (text, "\n= %s", formula);
  for (guint i = 0; i < working->inputs->len; i++)
    append_input (text, &g_array_index (working->inputs, SwWorkingInput, i), solution);
  if (working->how != NULL)
    g_string_append_printf (text, _ ("\nHow it was found: %s"), _ (working->how));
  if (working->assumes != NULL)
    g_string_append_printf (text, _ ("\nTaken for granted: %s"), _ (working->assumes));
  g_string_append_printf (text, _ ("\nSource: %s"), working->source);
}
