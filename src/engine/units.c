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

/* Digits with the language's decimal sign; never "-0". */
static char *
decimal_text (double value, int decimals, gboolean keep_zeros, const SwLanguage *language)
{
  double step = pow (10, -decimals);
  char digits[G_ASCII_DTOSTR_BUF_SIZE + 320];
  char format[8];

  if (fabs (value) < step / 2)
    value = 0;
  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (digits, sizeof digits, format, value);
  g_autoptr (GString) text = g_string_new (digits);
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
  g_string_append (text, "″");
}

/* Rounded once, to sixteenths, and only then split. */
static char *
inches_text (double metres, gboolean with_feet)
{
  gint64 sixteenths = (gint64) llround (fabs (metres) / SIXTEENTH_M);
  gint64 feet = with_feet ? sixteenths / 192 : 0;
  g_autoptr (GString) text = g_string_new (metres < 0 && sixteenths > 0 ? "−" : "");

  sixteenths -= feet * 192;
  if (feet > 0)
    g_string_append_printf (text, "%" G_GINT64_FORMAT "′", feet);
  if (feet > 0 && sixteenths > 0)
    g_string_append_c (text, ' ');
  if (feet == 0 || sixteenths > 0)
    append_inches (text, sixteenths);
  return g_strdup (text->str);
}

/* A short length is written in sixteenths where that is the length to 0.1 mm; a pitch of 33.3
 * mm is not. */
static gboolean
reads_in_sixteenths (double metres)
{
  double sixteenths = metres / SIXTEENTH_M;

  return fabs (sixteenths - round (sixteenths)) * SIXTEENTH_M <= 0.0001;
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

  if (quantity == SW_QUANTITY_CURRENT && size < 0.1 && size > 0)
    return 3;
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
in_inches (SwQuantity quantity, SwUnits units, double value)
{
  return units == SW_UNITS_US && quantity == SW_QUANTITY_SHORT_LENGTH &&
         !beyond_digits (value) && reads_in_sixteenths (value);
}

char *
sw_units_format (double value, SwQuantity quantity, SwUnits units, const SwLanguage *language)
{
  if (in_feet (quantity, units, value) || in_inches (quantity, units, value))
    return inches_text (value, quantity == SW_QUANTITY_LENGTH);

  const char *name = sw_units_name (quantity, units);
  g_autofree char *number = number_text (value, quantity, units, language);
  if (*name == '\0' || beyond_digits (value))
    return g_steal_pointer (&number);
  if (quantity == SW_QUANTITY_ANGLE)
    return g_strconcat (number, name, NULL);
  if (quantity == SW_QUANTITY_SHORT_LENGTH && units == SW_UNITS_US)
    return g_strconcat (number, "″", NULL);
  return g_strconcat (number, "\302\240", name, NULL); /* a no-break space */
}

char *
sw_units_format_bare (double value,
                      SwQuantity quantity,
                      SwUnits units,
                      const SwLanguage *language)
{
  const SwShownUnit *unit = sw_shown_unit (quantity, units);

  if (in_feet (quantity, units, value) || in_inches (quantity, units, value))
    return inches_text (value, quantity == SW_QUANTITY_LENGTH);
  if (beyond_digits (value / unit->factor))
    return g_strdup ("");
  /* One digit more than shown elsewhere, so that an entry does not hide what was typed. */
  return decimal_text (value / unit->factor,
                       unit->decimals + (unit->decimals > 0),
                       FALSE,
                       language);
}

char *
sw_units_format_tape (double metres, SwUnits units, const SwLanguage *language)
{
  if (beyond_digits (metres))
    return g_strdup ("–");
  if (units == SW_UNITS_US)
    return inches_text (metres, FALSE);
  g_autofree char *digits = decimal_text (metres * 1000, 1, TRUE, language);
  return g_strconcat (digits, "\302\240mm", NULL);
}
