// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/units.h"

gboolean
sw_units_parse (const char *text,
                SwQuantity quantity,
                SwUnits units,
                const SwLanguage *language,
                double *value,
                GError **error)
{
  *value = g_ascii_strtod (text, NULL);
  return TRUE;
}
char *
sw_units_format (double value, SwQuantity quantity, SwUnits units, const SwLanguage *language)
{
  return g_strdup_printf ("%.3f m", value);
}
char *
sw_units_format_bare (double value,
                      SwQuantity quantity,
                      SwUnits units,
                      const SwLanguage *language)
{
  return g_strdup_printf ("%.3f", value);
}
char *
sw_units_format_tape (double metres, SwUnits units, const SwLanguage *language)
{
  return g_strdup_printf ("%.0f mm", metres * 1000);
}
const char *
sw_units_name (SwQuantity quantity, SwUnits units)
{
  return "m";
}
double
sw_units_factor (SwQuantity quantity, SwUnits units)
{
  return 1;
}
