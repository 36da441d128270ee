// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/remedy-effect.h"

#include "engine/units.h"

#include <glib/gi18n.h>
#include <string.h>

#define LEAST_PRICE 0.005 /* less than a cent is no price */

static gboolean
has_code (const GArray *findings, const char *code)
{
  for (guint i = 0; i < findings->len; i++) {
    if (strcmp (g_array_index (findings, SwFinding, i).code, code) == 0)
      return TRUE;
  }
  return FALSE;
}

/* Tips are no loss. */
static GArray *
brought_by (const GArray *before, const GArray *after)
{
  GArray *brought = g_array_new (FALSE, FALSE, sizeof (SwFinding));

  for (guint i = 0; i < after->len; i++) {
    const SwFinding *finding = &g_array_index (after, SwFinding, i);
    if (finding->level != SW_LEVEL_TIP && !has_code (before, finding->code))
      g_array_append_val (brought, *finding);
  }
  return brought;
}

gboolean
sw_remedy_effect_init (SwRemedyEffect *effect,
                       const SwFinding *finding,
                       const SwSolution *solution)
{
  if (finding->remedy_key == NULL)
    return FALSE;
  g_autoptr (SwDesign) design = sw_finding_apply (finding, solution->design, NULL);
  g_autoptr (SwSolution) after =
    design == NULL ? NULL : sw_solution_new (design, solution->catalogue, NULL);
  if (after == NULL)
    return FALSE;
  double more = after->cost_to_pay - solution->cost_to_pay;
  effect->more_to_pay = more >= LEAST_PRICE ? more : 0;
  effect->brought = brought_by (solution->findings, after->findings);
  effect->design = sw_design_ref (after->design);
  return TRUE;
}

void
sw_remedy_effect_clear (SwRemedyEffect *effect)
{
  g_clear_pointer (&effect->brought, g_array_unref);
  g_clear_pointer (&effect->design, sw_design_unref);
}

static void
add_price (GString *text, const SwRemedyEffect *effect, const SwLanguage *language)
{
  const SwDesign *design = effect->design;
  g_autofree char *price =
    sw_units_format (effect->more_to_pay, SW_QUANTITY_PRICE, design->units, language);

  g_string_append (text, sw_language_text (language, N_ ("Costs {price} {currency} more.")));
  g_string_replace (text, "{price}", price, 0);
  g_string_replace (text, "{currency}", design->prices.currency, 0);
}

char *
sw_remedy_effect_text (const SwRemedyEffect *effect, const SwLanguage *language)
{
  g_autoptr (GString) text = g_string_new (NULL);

  if (effect->more_to_pay > 0)
    add_price (text, effect, language);
  for (guint i = 0; i < effect->brought->len; i++) {
    g_autofree char *brought = sw_finding_text (&g_array_index (effect->brought, SwFinding, i),
                                                effect->design,
                                                language);
    g_string_append_printf (text,
                            "%s%s %s",
                            text->len > 0 ? " " : "",
                            /* Translators: a warning that a remedy brings follows. */
                            sw_language_text (language, N_ ("But then:")),
                            brought);
  }
  return text->len == 0 ? NULL : g_strdup (text->str);
}
