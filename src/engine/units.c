// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/units.h"

#include "engine/unit-table.h"

#include <math.h>
#include <string.h>

#define SIXTEENTH_M (0.0254 / 16)

const char *
sw_units_name (SwQuantity quantity, SwUnits units)
{
  return sw_shown_unit (quantity, units)->name;
}

double
sw_units_factor (SwQuantity quantity, SwUnits units)
{
  return sw_shown_unit (quantity, units)->factor;
}

static void
drop_zeros (GString *digits, gsize keep)
{
  if (strchr (digits->str, '.') == NULL)
    return;
  while (digits->len > keep && digits->str[digits->len - 1] == '0')
    g_string_truncate (digits, digits->len - 1);
  if (digits->str[digits->len - 1] == '.')
    g_string_truncate (digits, digits->len - 1);
}

static gboolean
is_zero (const char *digits)
{
  return strpbrk (digits, "123456789") == NULL;
}

/* Digits with the language's decimal sign; never "-0". */
static char *
decimal_text (double value, int decimals, gboolean keep_zeros, const SwLanguage *language)
{
  char digits[G_ASCII_DTOSTR_BUF_SIZE + 320];
  char format[8];

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (digits, sizeof digits, format, value);
  g_autoptr (GString) text = g_string_new (digits);
  if (is_zero (digits) && digits[0] == '-')
    g_string_erase (text, 0, 1);
  if (!keep_zeros)
    drop_zeros (text, 0);
  if (g_strcmp0 (language->decimal, ".") != 0)
    g_string_replace (text, ".", language->decimal, 0);
  return g_strdup (text->str);
}

static guint
common_divisor (guint a, guint b)
{
  return b == 0 ? a : common_divisor (b, a % b);
}

/* 5 → "5/16", 8 → "1/2" */
static void
append_sixteenths (GString *text, guint sixteenths)
{
  guint divisor = common_divisor (sixteenths, 16);

  g_string_append_printf (text, "%u/%u", sixteenths / divisor, 16 / divisor);
}

static void
append_inches (GString *text, gint64 sixteenths)
{
  gint64 whole = sixteenths / 16;
  guint rest = (guint) (sixteenths % 16);

  if (whole > 0 || rest == 0)
    g_string_append_printf (text, "%" G_GINT64_FORMAT, whole);
  if (whole > 0 && rest > 0)
    g_string_append_c (text, ' ');
  if (rest > 0)
    append_sixteenths (text, rest);
}

static gint64
in_sixteenths (double metres)
{
  return (gint64) llround (fabs (metres) / SIXTEENTH_M);
}

/* "1 5/16", without the mark. */
static char *
inches_text (double metres)
{
  gint64 sixteenths = in_sixteenths (metres);
  g_autoptr (GString) text = g_string_new (metres < 0 && sixteenths > 0 ? "−" : "");

  append_inches (text, sixteenths);
  return g_strdup (text->str);
}

/* Rounded once, to sixteenths, and only then split. */
static char *
feet_text (double metres)
{
  gint64 sixteenths = in_sixteenths (metres);
  gint64 feet = sixteenths / 192;
  g_autoptr (GString) text = g_string_new (metres < 0 && sixteenths > 0 ? "−" : "");

  sixteenths -= feet * 192;
  if (feet > 0)
    g_string_append_printf (text, "%" G_GINT64_FORMAT "′", feet);
  if (feet > 0 && sixteenths > 0)
    g_string_append_c (text, ' ');
  if (feet == 0 || sixteenths > 0) {
    append_inches (text, sixteenths);
    g_string_append (text, "″");
  }
  return g_strdup (text->str);
}

/* How far a short length may be from what its sixteenths say: to read it, a tenth of a
 * millimetre; to change it in an entry, nothing but rounding. */
#define NEAR_M 1e-4
#define EQUAL_M 1e-9

static gboolean
is_in_sixteenths (double metres, double within_m)
{
  double sixteenths = metres / SIXTEENTH_M;

  return fabs (sixteenths - round (sixteenths)) * SIXTEENTH_M <= within_m;
}

static gboolean
beyond_digits (double value)
{
  return !isfinite (value) || fabs (value) >= 1e12;
}

static int
decimals_of (const SwShownUnit *unit, SwQuantity quantity, double shown)
{
  double size = fabs (shown);

  if (quantity == SW_QUANTITY_CURRENT && size < 0.1)
    return 4;
  if (quantity == SW_QUANTITY_CURRENT && size >= 10)
    return 1;
  if (quantity == SW_QUANTITY_FORCE && size < 10)
    return MAX (unit->decimals, 1);
  return unit->decimals;
}

static gboolean
keeps_zeros (SwQuantity quantity)
{
  return quantity == SW_QUANTITY_LENGTH || quantity == SW_QUANTITY_PRICE ||
         quantity == SW_QUANTITY_VOLTAGE;
}

static char *
number_text (double value, SwQuantity quantity, SwUnits units, const SwLanguage *language)
{
  const SwShownUnit *unit = sw_shown_unit (quantity, units);
  double shown = value / unit->factor;

  if (beyond_digits (shown))
    return g_strdup ("–");
  g_autofree char *digits =
    decimal_text (shown, decimals_of (unit, quantity, shown), keeps_zeros (quantity), language);
  if (digits[0] == '-')
    return g_strconcat ("−", digits + 1, NULL);
  return g_steal_pointer (&digits);
}

static gboolean
in_feet (SwQuantity quantity, SwUnits units, double value)
{
  return units == SW_UNITS_US && quantity == SW_QUANTITY_LENGTH && !beyond_digits (value);
}

static gboolean
in_inches (SwQuantity quantity, SwUnits units, double value, double within_m)
{
  return units == SW_UNITS_US && quantity == SW_QUANTITY_SHORT_LENGTH &&
         !beyond_digits (value) && is_in_sixteenths (value, within_m);
}

char *
sw_units_format (double value, SwQuantity quantity, SwUnits units, const SwLanguage *language)
{
  if (in_feet (quantity, units, value))
    return feet_text (value);

  g_autofree char *number = in_inches (quantity, units, value, NEAR_M)
                              ? inches_text (value)
                              : number_text (value, quantity, units, language);
  const char *name = sw_units_name (quantity, units);
  if (*name == '\0' || beyond_digits (value / sw_units_factor (quantity, units)))
    return g_steal_pointer (&number);
  if (quantity == SW_QUANTITY_ANGLE)
    return g_strconcat (number, name, NULL);
  if (quantity == SW_QUANTITY_SHORT_LENGTH && units == SW_UNITS_US)
    return g_strconcat (number, "″", NULL);
  return g_strconcat (number, "\302\240", name, NULL); /* a no-break space */
}

/* At least four digits count and one more than is shown elsewhere, so that an entry does not
 * hide what was typed. */
static int
decimals_of_entry (const SwShownUnit *unit, double shown)
{
  int decimals = unit->decimals + 1;

  while (decimals < 9 && fabs (shown) * pow (10, decimals) < 1000)
    decimals++;
  return decimals;
}

char *
sw_units_format_bare (double value,
                      SwQuantity quantity,
                      SwUnits units,
                      const SwLanguage *language)
{
  const SwShownUnit *unit = sw_shown_unit (quantity, units);
  double shown = value / unit->factor;

  if (in_feet (quantity, units, value))
    return feet_text (value);
  if (in_inches (quantity, units, value, EQUAL_M))
    return inches_text (value);
  if (beyond_digits (shown))
    return g_strdup ("");
  return decimal_text (shown, decimals_of_entry (unit, shown), FALSE, language);
}

char *
sw_units_format_tape (double metres, SwUnits units, const SwLanguage *language)
{
  if (beyond_digits (metres))
    return g_strdup ("–");
  g_autofree char *digits = units == SW_UNITS_US
                              ? inches_text (metres)
                              : decimal_text (metres * 1000, 1, TRUE, language);
  return g_strconcat (digits, units == SW_UNITS_US ? "″" : "\302\240mm", NULL);
}
