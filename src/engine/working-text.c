// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/working-text.h"

#include "engine/units.h"

#include <math.h>
#include <stdlib.h>
#include <string.h>

#define DIGITS "%.6g"
#define MOST_ROUNDED 0.02
#define NO_BREAK "\u00a0"

/* "2.07e+08" as formulas write it: "2.07·10^8". */
static void
write_power (GString *text)
{
  char *e = strchr (text->str, 'e');

  if (e == NULL)
    return;
  int power = atoi (e + 1);
  g_string_truncate (text, (gsize) (e - text->str));
  g_string_append_printf (text, "·10^%s%d", power < 0 ? "−" : "", ABS (power));
}

char *
sw_working_text_si (double value, const char *unit, const SwLanguage *language)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE];

  if (!isfinite (value))
    return g_strdup ("–");
  g_ascii_formatd (digits, sizeof digits, DIGITS, fabs (value));
  g_autoptr (GString) text = g_string_new (digits);
  write_power (text);
  g_string_replace (text, ".", language->decimal, 1);
  if (value < 0)
    g_string_prepend (text, "−");
  if (*unit != '\0')
    g_string_append_printf (text, strcmp (unit, "°") == 0 ? "%s" : NO_BREAK "%s", unit);
  g_string_replace (text, " ", NO_BREAK, 0);
  return g_string_free (g_steal_pointer (&text), FALSE);
}

static const struct {
  const char *unit;
  SwQuantity quantity;
} quantities[] = {
  { "m", SW_QUANTITY_LENGTH },
  { "kg", SW_QUANTITY_MASS },
  { "kg/m", SW_QUANTITY_MASS_PER_LENGTH },
  { "N", SW_QUANTITY_FORCE },
  { "N m", SW_QUANTITY_MOMENT },
  { "N/m", SW_QUANTITY_STIFFNESS },
  { "Pa", SW_QUANTITY_PRESSURE },
  { "m/s", SW_QUANTITY_SPEED },
  { "Ω/m", SW_QUANTITY_RESISTANCE_PER_LENGTH },
};

#define SHORT_M 0.3   /* below it millimetres, or inches alone */
#define STRESS_PA 1e5 /* above it no wind: nobody gives a stress in pounds a square foot */

static SwQuantity
quantity_of (double value, const char *unit)
{
  if (strcmp (unit, "m") == 0 && fabs (value) < SHORT_M)
    return SW_QUANTITY_SHORT_LENGTH;
  if (strcmp (unit, "Pa") == 0 && fabs (value) > STRESS_PA)
    return SW_QUANTITY_NONE;
  for (guint i = 0; i < G_N_ELEMENTS (quantities); i++) {
    if (strcmp (quantities[i].unit, unit) == 0)
      return quantities[i].quantity;
  }
  return SW_QUANTITY_NONE;
}

char *
sw_working_text_in_units (double value,
                          const char *unit,
                          SwUnits units,
                          const SwLanguage *language)
{
  SwQuantity quantity = quantity_of (value, unit);
  double back;

  if (quantity == SW_QUANTITY_NONE || !isfinite (value))
    return sw_working_text_si (value, unit, language);
  g_autofree char *text = sw_units_format (value, quantity, units, language);
  if (sw_units_parse (text, quantity, units, language, &back, NULL) &&
      fabs (back - value) <= MOST_ROUNDED * fabs (value))
    return g_steal_pointer (&text);
  return sw_working_text_si (value, unit, language);
}
