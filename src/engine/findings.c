// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/findings.h"

const char *const sw_level_words[] = { "stop", "warn", "tip" };
const char *const sw_level_labels[] = { "stop", "warning", "tip" };
GArray *
sw_findings_new (const SwSolution *solution)
{
  return g_array_new (FALSE, TRUE, sizeof (SwFinding));
}
char *
sw_finding_text (const SwFinding *finding, const SwDesign *design, const SwLanguage *language)
{
  return g_strdup ("");
}
char *
sw_finding_remedy_text (const SwFinding *finding,
                        const SwDesign *design,
                        const SwLanguage *language)
{
  return NULL;
}
guint
sw_findings_count (const GArray *findings, SwLevel level)
{
  return 0;
}
