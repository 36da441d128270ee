// SPDX-License-Identifier: GPL-3.0-or-later
/* Conversions are exact by definition: NIST Special Publication 811 (2008), appendix B: 1 ft =
 * 0.3048 m, 1 lb = 0.45359237 kg, 1 lbf = 4.4482216152605 N, 1 mi = 1609.344 m, 1 nmi = 1852 m.
 */
#include "engine/error.h"
#include "engine/units.h"

#include <math.h>
#include <string.h>

static const SwLanguage comma = { .code = "de", .decimal = "," };

static const struct {
  const char *text;
  SwQuantity quantity;
  SwUnits units;
  double value;
} reads[] = {
  { "14' 6 1/2\"", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 4.4323 },
  { "14′ 6 1/2″", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.4323 },
  { "14 ft 6.5 in", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 4.4323 },
  { "14ft6.5in", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 4.4323 },
  { "14' 6-1/2\"", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.4323 },
  { "14' 6", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.4196 },
  { "14 feet", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.2672 },
  { "4.42 m", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.42 },
  { "442 cm", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.42 },
  { "4420mm", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.42 },
  { "3/4 in", SW_QUANTITY_SHORT_LENGTH, SW_UNITS_METRIC, 0.01905 },
  { "2*24 in", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 1.2192 },
  { "2 1/4\"", SW_QUANTITY_SHORT_LENGTH, SW_UNITS_METRIC, 0.05715 },
  { "12 ft - 3 in", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 3.5814 },
  { "(3 + 4) mm", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 0.007 },
  { "1 m + 2", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 3 },
  { "6 m / 4", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 1.5 },
  { "-5 cm", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, -0.05 },
  { "12", SW_QUANTITY_LENGTH, SW_UNITS_US, 3.6576 },
  { "12", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 12 },
  { "2", SW_QUANTITY_SHORT_LENGTH, SW_UNITS_US, 0.0508 },
  { "50.8", SW_QUANTITY_SHORT_LENGTH, SW_UNITS_METRIC, 0.0508 },
  { "45 mph", SW_QUANTITY_SPEED, SW_UNITS_METRIC, 20.1168 },
  { "72 km/h", SW_QUANTITY_SPEED, SW_UNITS_US, 20 },
  { "10 kn", SW_QUANTITY_SPEED, SW_UNITS_US, 18520.0 / 3600 },
  { "20", SW_QUANTITY_SPEED, SW_UNITS_METRIC, 20 },
  { "10 lb", SW_QUANTITY_MASS, SW_UNITS_METRIC, 4.5359237 },
  { "8 oz", SW_QUANTITY_MASS, SW_UNITS_METRIC, 0.226796185 },
  { "100 lbf", SW_QUANTITY_FORCE, SW_UNITS_METRIC, 444.82216152605 },
  { "50 %", SW_QUANTITY_SHARE, SW_UNITS_METRIC, 0.5 },
  { "50", SW_QUANTITY_SHARE, SW_UNITS_METRIC, 0.5 },
  { "55 mA", SW_QUANTITY_CURRENT, SW_UNITS_METRIC, 0.055 },
  { "6.4 mΩ/ft", SW_QUANTITY_RESISTANCE_PER_LENGTH, SW_UNITS_METRIC, 0.0064 / 0.3048 },
  { "300 µs", SW_QUANTITY_MICROSECONDS, SW_UNITS_METRIC, 300 },
  { "0.3 ms", SW_QUANTITY_MICROSECONDS, SW_UNITS_METRIC, 300 },
  { "90 min", SW_QUANTITY_HOURS, SW_UNITS_METRIC, 1.5 },
  { "1/4 in", SW_QUANTITY_MILLIMETRES, SW_UNITS_METRIC, 6.35 },
  { "180°", SW_QUANTITY_ANGLE, SW_UNITS_METRIC, 180 },
  { "4*5", SW_QUANTITY_COUNT, SW_UNITS_METRIC, 20 },
  { ".5", SW_QUANTITY_RATIO, SW_UNITS_METRIC, 0.5 },
  /* as drawings and shop notes have it */
  { "14'-6\"", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.4196 },
  { "14′–6 1/2″", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.4323 },
  { "14' - 6\"", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.1148 }, /* minus */
  { "14 ft-6 in", SW_QUANTITY_LENGTH, SW_UNITS_US, 4.1148 },
  { "6½\"", SW_QUANTITY_SHORT_LENGTH, SW_UNITS_METRIC, 0.1651 },
  { "¾ in", SW_QUANTITY_SHORT_LENGTH, SW_UNITS_METRIC, 0.01905 },
  { "6 1⁄2 in", SW_QUANTITY_SHORT_LENGTH, SW_UNITS_METRIC, 0.1651 },
  { "5' 11 15/16", SW_QUANTITY_LENGTH, SW_UNITS_US, 1.8272125 },
  { "5' 1/2", SW_QUANTITY_LENGTH, SW_UNITS_US, 1.5367 },
  { "6''", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 0.1524 },
  { "6′′", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 0.1524 },
  { "-5' 6\"", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, -1.6764 },
  { "−2 m", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, -2 },
  { "2\302\240m", SW_QUANTITY_LENGTH, SW_UNITS_US, 2 },
  { "  12  ft  ", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 3.6576 },
  { "2 * (3 ft + 4 in)", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 2.032 },
  { "((((1))))", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 1 },
  { "1 yd", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 0.9144 },
  { "10 × 5 cm", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 0.5 },
  { "1 m ÷ 4", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 0.25 },
  /* letters in any case */
  { "30 MPH", SW_QUANTITY_SPEED, SW_UNITS_METRIC, 13.4112 },
  { "12 v", SW_QUANTITY_VOLTAGE, SW_UNITS_METRIC, 12 },
  { "55 ma", SW_QUANTITY_CURRENT, SW_UNITS_METRIC, 0.055 },
  { "6 FT 2 IN", SW_QUANTITY_LENGTH, SW_UNITS_METRIC, 1.8796 },
  { "800 khz", SW_QUANTITY_FREQUENCY, SW_UNITS_METRIC, 800000 },
  { "350 w", SW_QUANTITY_POWER, SW_UNITS_METRIC, 350 },
  /* NIST SP 811, B.8, to the digits printed there: pounds of force to newtons and so on */
  { "1 lb/ft", SW_QUANTITY_MASS_PER_LENGTH, SW_UNITS_METRIC, 1.48816394356955 },
  { "25 lb", SW_QUANTITY_FORCE, SW_UNITS_METRIC, 111.2055403815125 },
  { "1 kgf", SW_QUANTITY_FORCE, SW_UNITS_METRIC, 9.80665 },
  { "1.2 kN", SW_QUANTITY_FORCE, SW_UNITS_METRIC, 1200 },
  { "1 lbf/in", SW_QUANTITY_STIFFNESS, SW_UNITS_METRIC, 175.126835246476 },
  { "1 psf", SW_QUANTITY_PRESSURE, SW_UNITS_METRIC, 47.8802589803358 },
  { "1 lbf·ft", SW_QUANTITY_MOMENT, SW_UNITS_METRIC, 1.3558179483314 },
  { "1 kWh", SW_QUANTITY_ENERGY, SW_UNITS_METRIC, 1 },
  { "6.385 Ω/kft", SW_QUANTITY_RESISTANCE_PER_LENGTH, SW_UNITS_METRIC, 0.006385 / 0.3048 },
  { "21", SW_QUANTITY_RESISTANCE_PER_LENGTH, SW_UNITS_METRIC, 0.021 },
  { "6.4", SW_QUANTITY_RESISTANCE_PER_LENGTH, SW_UNITS_US, 0.0064 / 0.3048 },
  { "100 kph", SW_QUANTITY_SPEED, SW_UNITS_METRIC, 100 / 3.6 },
  { "45", SW_QUANTITY_SPEED, SW_UNITS_US, 20.1168 },
  { "1.5 h", SW_QUANTITY_HOURS, SW_UNITS_METRIC, 1.5 },
  { "0.25", SW_QUANTITY_MILLIMETRES, SW_UNITS_US, 6.35 },
};

static void
test_reads_what_people_write (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (reads); i++) {
    g_autoptr (GError) error = NULL;
    double value = NAN;
    sw_units_parse (reads[i].text,
                    reads[i].quantity,
                    reads[i].units,
                    &sw_language_english,
                    &value,
                    &error);
    g_assert_no_error (error);
    if (!(fabs (value - reads[i].value) <= 1e-12 * MAX (1, fabs (reads[i].value))))
      g_error ("%s gave %.15g, not %.15g", reads[i].text, value, reads[i].value);
  }
}

static const struct {
  const char *text;
  SwQuantity quantity;
} refused[] = {
  { "", SW_QUANTITY_LENGTH },
  { " ", SW_QUANTITY_LENGTH },
  { "tall", SW_QUANTITY_LENGTH },
  { "4 kg", SW_QUANTITY_LENGTH },
  { "4 m 3", SW_QUANTITY_LENGTH },
  { "4 m * 3 m", SW_QUANTITY_LENGTH },
  { "3 / 0", SW_QUANTITY_LENGTH },
  { "3 / 4 m", SW_QUANTITY_LENGTH },
  { "(3", SW_QUANTITY_LENGTH },
  { "3)", SW_QUANTITY_LENGTH },
  { "1..2", SW_QUANTITY_LENGTH },
  { "1e5", SW_QUANTITY_LENGTH },
  { "nan", SW_QUANTITY_LENGTH },
  { "inf", SW_QUANTITY_LENGTH },
  { "0x10", SW_QUANTITY_LENGTH },
  { "1,5", SW_QUANTITY_LENGTH },
  { "5 metric", SW_QUANTITY_LENGTH },
  { "6' 2'", SW_QUANTITY_LENGTH },
  { "3 +", SW_QUANTITY_LENGTH },
  { "\xff\xfe", SW_QUANTITY_LENGTH },
  { "99999999999999999999999999999999999999999999999", SW_QUANTITY_LENGTH },
  { "6' 2 m", SW_QUANTITY_LENGTH }, /* metres are no inches */
  { "6' 2 cm", SW_QUANTITY_LENGTH },
  { "6 3/2 in", SW_QUANTITY_LENGTH },
  { "6 1/0 in", SW_QUANTITY_LENGTH },
  { "1/0", SW_QUANTITY_LENGTH },
  { "1/(2-2)", SW_QUANTITY_LENGTH },
  { "6.5 1/2 in", SW_QUANTITY_LENGTH },
  { "3 m m", SW_QUANTITY_LENGTH },
  { "(3 mm) mm", SW_QUANTITY_LENGTH },
  { "()", SW_QUANTITY_LENGTH },
  { "5 min", SW_QUANTITY_LENGTH },
  { "5 m/s", SW_QUANTITY_LENGTH },
  { "5 s", SW_QUANTITY_SPEED },
  { "3 kg/m", SW_QUANTITY_MASS },
  { "5 N", SW_QUANTITY_MASS },
  { "5 kg", SW_QUANTITY_FORCE },
  { "7 m", SW_QUANTITY_COUNT },
  { "5 %", SW_QUANTITY_RATIO },
  { "*3", SW_QUANTITY_LENGTH },
  { "3**4", SW_QUANTITY_LENGTH },
  { "1 000", SW_QUANTITY_LENGTH },
  { "9999999999999999999999999999999999999999*9999999999999999999999999999999999999999*"
    "9999999999999999999999999999999999999999*9999999999999999999999999999999999999999*"
    "9999999999999999999999999999999999999999*99999999999999999999999999999999999999999*"
    "9999999999",
    SW_QUANTITY_LENGTH },
};

static void
test_refuses_what_it_does_not_understand (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autoptr (GError) error = NULL;
    double value = 42;
    if (sw_units_parse (refused[i].text,
                        refused[i].quantity,
                        SW_UNITS_METRIC,
                        &sw_language_english,
                        &value,
                        &error))
      g_error ("\"%s\" was read as %.15g", refused[i].text, value);
    g_assert_error (error, SW_ERROR, SW_ERROR_SYNTAX);
    g_assert_null (strchr (error->message, '\n'));
    g_assert_cmpfloat_with_epsilon (value, 42, 1e-12);
  }
}

static void
test_a_deep_bracket_is_refused (void)
{
  g_autofree char *deep = g_strnfill (200, '(');
  double value;

  g_assert_false (
    sw_units_parse (deep, SW_QUANTITY_LENGTH, SW_UNITS_US, &sw_language_english, &value, NULL));
}

static void
test_a_long_row_of_signs_is_refused (void)
{
  g_autofree char *signs = g_strnfill (200, '-');
  g_autofree char *text = g_strconcat (signs, "1", NULL);
  double value;

  g_assert_false (
    sw_units_parse (text, SW_QUANTITY_LENGTH, SW_UNITS_US, &sw_language_english, &value, NULL));
}

static void
test_another_kind_of_unit_is_told_apart (void)
{
  g_autoptr (GError) error = NULL;
  double value;

  g_assert_false (sw_units_parse ("4 kg",
                                  SW_QUANTITY_LENGTH,
                                  SW_UNITS_METRIC,
                                  &sw_language_english,
                                  &value,
                                  &error));
  g_assert_cmpstr (error->message,
                   ==,
                   "\"4 kg\" has a unit of another kind, try 2.86 m, 9' 4 1/2\"");
}

static const char *
shout (const char *id)
{
  return g_str_has_suffix (id, "try {example}") ? "{typed}?! {example}!" : id;
}

static void
test_refuses_in_the_reader_s_language (void)
{
  const SwLanguage loud = { .code = "en", .decimal = ".", .translate = shout };
  g_autoptr (GError) error = NULL;
  double value;

  g_assert_false (
    sw_units_parse ("{example}", SW_QUANTITY_RATIO, SW_UNITS_US, &loud, &value, &error));
  g_assert_cmpstr (error->message, ==, "{example}?! 1.8!");
}

/* Each quantity's example is one that is read. */
static void
test_what_is_proposed_is_read (void)
{
  for (SwQuantity quantity = 0; quantity <= SW_QUANTITY_NONE; quantity++) {
    for (guint units = 0; units < 2; units++) {
      g_autoptr (GError) error = NULL;
      double value;
      g_assert_false (
        sw_units_parse ("?", quantity, units, &sw_language_english, &value, &error));
      g_auto (GStrv) proposed = g_strsplit (strstr (error->message, ", try ") + 6, ", ", -1);
      for (guint i = 0; proposed[i] != NULL; i++)
        g_assert_true (
          sw_units_parse (proposed[i], quantity, units, &sw_language_english, &value, NULL));
    }
  }
}

static void
test_a_comma_is_decimal_where_the_language_says_so (void)
{
  double value = 0;

  g_assert_true (
    sw_units_parse ("4,42 m", SW_QUANTITY_LENGTH, SW_UNITS_US, &comma, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 4.42, 1e-12);
  g_assert_true (
    sw_units_parse ("4.42 m", SW_QUANTITY_LENGTH, SW_UNITS_US, &comma, &value, NULL));
  g_assert_cmpfloat_with_epsilon (value, 4.42, 1e-12);
}

static const struct {
  double value;
  SwQuantity quantity;
  SwUnits units;
  const char *text;
} shows[] = {
  { 4.4323, SW_QUANTITY_LENGTH, SW_UNITS_US, "14′ 6 1/2″" },
  { 3.6576, SW_QUANTITY_LENGTH, SW_UNITS_US, "12′" },
  { 0.3048 - 0.0001, SW_QUANTITY_LENGTH, SW_UNITS_US, "1′" }, /* 11 15.9/16 carries */
  { 0.0254 / 2, SW_QUANTITY_LENGTH, SW_UNITS_US, "1/2″" },
  { 0, SW_QUANTITY_LENGTH, SW_UNITS_US, "0″" },
  { -0.00001, SW_QUANTITY_LENGTH, SW_UNITS_US, "0″" },
  { -0.3048, SW_QUANTITY_LENGTH, SW_UNITS_US, "−1′" },
  { 2.86, SW_QUANTITY_LENGTH, SW_UNITS_METRIC, "2.86\302\240m" },
  { 3, SW_QUANTITY_LENGTH, SW_UNITS_METRIC, "3.00\302\240m" },
  { -0.0001, SW_QUANTITY_LENGTH, SW_UNITS_METRIC, "0.00\302\240m" },
  { 0.0508, SW_QUANTITY_SHORT_LENGTH, SW_UNITS_US, "2″" },
  { 0.0508, SW_QUANTITY_SHORT_LENGTH, SW_UNITS_METRIC, "50.8\302\240mm" },
  { 0.0333, SW_QUANTITY_SHORT_LENGTH, SW_UNITS_US, "1 5/16″" }, /* 0.04 mm off */
  { 0.0300,
    SW_QUANTITY_SHORT_LENGTH,
    SW_UNITS_US,
    "1.18″" }, /* sixteenths would lose 0.16 mm */
  { 20.1168, SW_QUANTITY_SPEED, SW_UNITS_US, "45\302\240mph" },
  { 0.5, SW_QUANTITY_SHARE, SW_UNITS_US, "50\302\240%" },
  { 360, SW_QUANTITY_ANGLE, SW_UNITS_US, "360°" },
  { 0.055, SW_QUANTITY_CURRENT, SW_UNITS_US, "0.055\302\240A" },
  { 412, SW_QUANTITY_PRICE, SW_UNITS_US, "412.00" },
  { 1940, SW_QUANTITY_COUNT, SW_UNITS_US, "1940" },
  { 0.2127, SW_QUANTITY_LENGTH, SW_UNITS_US, "8 3/8″" },
  { 0.3048 - 0.0007, SW_QUANTITY_LENGTH, SW_UNITS_US, "1′" },        /* 11 15.56/16 */
  { 0.3048 - 0.0009, SW_QUANTITY_LENGTH, SW_UNITS_US, "11 15/16″" }, /* 11 15.43/16 */
  { 3.048 - 0.0001, SW_QUANTITY_LENGTH, SW_UNITS_US, "10′" },
  { 1.5367, SW_QUANTITY_LENGTH, SW_UNITS_US, "5′ 1/2″" },
  { -0.01, SW_QUANTITY_LENGTH, SW_UNITS_US, "−3/8″" },
  { -0.5, SW_QUANTITY_POWER, SW_UNITS_US, "0\302\240W" },
  { -0.5, SW_QUANTITY_MICROSECONDS, SW_UNITS_US, "0\302\240µs" },
  { -0.005, SW_QUANTITY_VOLTAGE, SW_UNITS_US, "−0.01\302\240V" },
  { -0.004, SW_QUANTITY_VOLTAGE, SW_UNITS_US, "0.00\302\240V" },
  { 0.0125, SW_QUANTITY_CURRENT, SW_UNITS_US, "0.0125\302\240A" },
  { 30.3, SW_QUANTITY_CURRENT, SW_UNITS_US, "30.3\302\240A" },
  { 0.125, SW_QUANTITY_SHARE, SW_UNITS_US, "12.5\302\240%" },
  { 6.5, SW_QUANTITY_FORCE, SW_UNITS_METRIC, "6.5\302\240N" },
  { 0.021, SW_QUANTITY_RESISTANCE_PER_LENGTH, SW_UNITS_METRIC, "21\302\240mΩ/m" },
  { 1e13, SW_QUANTITY_LENGTH, SW_UNITS_US, "–" },
  { INFINITY, SW_QUANTITY_FORCE, SW_UNITS_US, "–" },
  { NAN, SW_QUANTITY_SHARE, SW_UNITS_US, "–" },
};

static void
test_shows_what_people_read (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shows); i++) {
    g_autofree char *text =
      sw_units_format (shows[i].value, shows[i].quantity, shows[i].units, &sw_language_english);
    g_assert_cmpstr (text, ==, shows[i].text);
  }
}

static void
test_tape_lengths_have_no_feet (void)
{
  g_autofree char *inches = sw_units_format_tape (2.8575, SW_UNITS_US, &sw_language_english);
  g_autofree char *millimetres = sw_units_format_tape (2.8575, SW_UNITS_METRIC, &comma);

  g_assert_cmpstr (inches, ==, "112 1/2″");
  g_assert_cmpstr (millimetres, ==, "2857,5\302\240mm");
}

static const struct {
  double value;
  SwQuantity quantity;
  SwUnits units;
  const char *text;
} entries[] = {
  { 0.0333, SW_QUANTITY_SHORT_LENGTH, SW_UNITS_US, "1.311" }, /* 1 5/16 would move it */
  { 0.0508, SW_QUANTITY_SHORT_LENGTH, SW_UNITS_US, "2" },
  { 1.3125 * 0.0254, SW_QUANTITY_SHORT_LENGTH, SW_UNITS_US, "1 5/16" },
  { 0.0333, SW_QUANTITY_SHORT_LENGTH, SW_UNITS_METRIC, "33.3" },
  { 2.86, SW_QUANTITY_LENGTH, SW_UNITS_METRIC, "2.86" },
  { 2.8575, SW_QUANTITY_LENGTH, SW_UNITS_US, "9′ 4 1/2″" },
  { 20, SW_QUANTITY_SPEED, SW_UNITS_US, "44.74" },
  { 0.125, SW_QUANTITY_SHARE, SW_UNITS_US, "12.5" },
  { 6.5, SW_QUANTITY_FORCE, SW_UNITS_METRIC, "6.5" },
  { 0.0125, SW_QUANTITY_CURRENT, SW_UNITS_METRIC, "0.0125" },
  { 0.1725, SW_QUANTITY_PRICE, SW_UNITS_METRIC, "0.1725" },
  { 300, SW_QUANTITY_MICROSECONDS, SW_UNITS_METRIC, "300" },
  { -0.0, SW_QUANTITY_RATIO, SW_UNITS_METRIC, "0" },
  { 48, SW_QUANTITY_COUNT, SW_UNITS_US, "48" },
};

static void
test_an_entry_hides_nothing (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (entries); i++) {
    g_autofree char *text = sw_units_format_bare (entries[i].value,
                                                  entries[i].quantity,
                                                  entries[i].units,
                                                  &sw_language_english);
    g_assert_cmpstr (text, ==, entries[i].text);
  }
}

/* Half of the last digit of an entry: it has four, or one more than is shown elsewhere. */
static double
entry_tolerance (double value, SwQuantity quantity, SwUnits units)
{
  double unit = sw_units_factor (quantity, units);

  if (quantity == SW_QUANTITY_LENGTH && units == SW_UNITS_US)
    return 0.0254 / 32 + 1e-12; /* sixteenths */
  return MAX (fabs (value) * 0.5e-3, 0.05 * unit) * (1 + 1e-9);
}

static void
test_what_an_entry_shows_reads_back (void)
{
  const SwLanguage *const languages[] = { &sw_language_english, &comma };

  for (guint i = 0; i < 4; i++) {
    SwUnits units = i / 2;
    const SwLanguage *language = languages[i % 2];
    for (SwQuantity quantity = 0; quantity < SW_QUANTITY_NONE; quantity++) {
      for (double value = 0.00013; value < 60; value *= -1.37) {
        double back = NAN;
        g_autofree char *text = sw_units_format_bare (value, quantity, units, language);
        sw_units_parse (text, quantity, units, language, &back, NULL);
        if (!(fabs (back - value) <= entry_tolerance (value, quantity, units)))
          g_error ("%d: %.9g was shown as %s and read as %.9g", quantity, value, text, back);
      }
    }
  }
}

/* Half of the last digit of what is shown. */
static double
shown_tolerance (SwQuantity quantity, SwUnits units)
{
  if (quantity == SW_QUANTITY_LENGTH && units == SW_UNITS_US)
    return 0.0254 / 32 + 1e-12;
  if (quantity == SW_QUANTITY_SHORT_LENGTH && units == SW_UNITS_US)
    return 0.00508 * 0.0254 + 1e-12; /* hundredths of an inch; sixteenths only within 0.1 mm */
  return 0.5 * sw_units_factor (quantity, units) * (1 + 1e-9);
}

static void
test_what_is_shown_reads_back (void)
{
  for (guint units = 0; units < 2; units++) {
    for (SwQuantity quantity = 0; quantity < SW_QUANTITY_NONE; quantity++) {
      for (double value = 0.0013; value < 60; value *= 1.0137) {
        double back = NAN;
        g_autofree char *text = sw_units_format (value, quantity, units, &sw_language_english);
        sw_units_parse (text, quantity, units, &sw_language_english, &back, NULL);
        if (!(fabs (back - value) <= shown_tolerance (quantity, units)))
          g_error ("%d: %.9g was shown as %s and read as %.9g", quantity, value, text, back);
      }
    }
  }
}

/* Every sixteenth of an inch up to 40 feet says itself. */
static void
test_sixteenths_are_exact (void)
{
  for (int sixteenths = 0; sixteenths <= 40 * 192; sixteenths++) {
    double metres = sixteenths * 0.0254 / 16, back = NAN;
    g_autofree char *text =
      sw_units_format (metres, SW_QUANTITY_LENGTH, SW_UNITS_US, &sw_language_english);
    g_assert_true (sw_units_parse (text,
                                   SW_QUANTITY_LENGTH,
                                   SW_UNITS_METRIC,
                                   &sw_language_english,
                                   &back,
                                   NULL));
    g_assert_cmpfloat_with_epsilon (back, metres, 1e-14);
  }
}

/* Bytes at random: read or refused in one line. */
static void
test_random_text_does_no_harm (void)
{
  static const char *const pieces[] = {
    "1", "0", "9", "12", ".", ",", " ", "'",  "\"", "/",    "-", "+", "*", "(", ")",
    "m", "f", "t", "in", "½", "⁄", "′", "kg", "\n", "\377", "e", "÷", "−", "–", "%"
  };
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);

  for (int i = 0; i < 20000; i++) {
    g_autoptr (GString) text = g_string_new (NULL);
    g_autoptr (GError) error = NULL;
    double value = 0;
    for (int j = g_rand_int_range (rand, 0, 12); j > 0; j--)
      g_string_append (text, pieces[g_rand_int_range (rand, 0, G_N_ELEMENTS (pieces))]);
    SwQuantity quantity = g_rand_int_range (rand, 0, SW_QUANTITY_NONE + 1);
    if (sw_units_parse (text->str,
                        quantity,
                        i % 2,
                        i % 3 ? &comma : &sw_language_english,
                        &value,
                        &error))
      g_assert_true (isfinite (value));
    else
      g_assert_null (strpbrk (error->message, "\r\n"));
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/units/reads what people write", test_reads_what_people_write);
  g_test_add_func ("/engine/units/refuses what it does not understand",
                   test_refuses_what_it_does_not_understand);
  g_test_add_func ("/engine/units/a deep bracket is refused", test_a_deep_bracket_is_refused);
  g_test_add_func ("/engine/units/refuses in the reader's language",
                   test_refuses_in_the_reader_s_language);
  g_test_add_func ("/engine/units/what is proposed is read", test_what_is_proposed_is_read);
  g_test_add_func ("/engine/units/another kind of unit is told apart",
                   test_another_kind_of_unit_is_told_apart);
  g_test_add_func ("/engine/units/a long row of signs is refused",
                   test_a_long_row_of_signs_is_refused);
  g_test_add_func ("/engine/units/a comma is decimal where the language says so",
                   test_a_comma_is_decimal_where_the_language_says_so);
  g_test_add_func ("/engine/units/shows what people read", test_shows_what_people_read);
  g_test_add_func ("/engine/units/tape lengths have no feet", test_tape_lengths_have_no_feet);
  g_test_add_func ("/engine/units/an entry hides nothing", test_an_entry_hides_nothing);
  g_test_add_func ("/engine/units/what an entry shows reads back",
                   test_what_an_entry_shows_reads_back);
  g_test_add_func ("/engine/units/what is shown reads back", test_what_is_shown_reads_back);
  g_test_add_func ("/engine/units/sixteenths are exact", test_sixteenths_are_exact);
  g_test_add_func ("/engine/units/random text does no harm", test_random_text_does_no_harm);
  return g_test_run ();
}
