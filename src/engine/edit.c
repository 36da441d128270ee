// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/edit.h"

#include "engine/design-keys.h"
SwDesign *
sw_edit_number (const SwDesign *design, const char *path, double value, GError **error)
{
  SwDesign *copy = sw_design_copy (design);
  const SwKey *key = sw_key_find (path);
  if (key != NULL)
    sw_key_set_number (key,
                       copy,
                       key->type == SW_KEY_NUMBER ? CLAMP (value, key->low, key->high)
                                                  : (int) (value + 0.5),
                       NULL);
  return copy;
}
SwDesign *
sw_edit_text (const SwDesign *design, const char *path, const char *value, GError **error)
{
  SwDesign *copy = sw_design_copy (design);
  sw_key_set_text (sw_key_find (path), copy, value, NULL);
  return copy;
}
SwDesign *
sw_edit_hold (const SwDesign *design, const char *path, gboolean hold)
{
  return sw_design_copy (design);
}
void
sw_edit_limits (const SwDesign *design, const char *path, double *low, double *high)
{
  const SwKey *key = sw_key_find (path);
  *low = key->low;
  *high = key->high;
}
