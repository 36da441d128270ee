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

/* Sixteenths lose at most 1/32 in = 0.8 mm; other entries at most half of their last digit. */
static void
test_what_an_entry_shows_reads_back (void)
{
  for (guint units = 0; units < 2; units++) {
    for (SwQuantity quantity = 0; quantity < SW_QUANTITY_NONE; quantity++) {
      for (double value = 0.013; value < 60; value *= 1.37) {
        g_autofree char *text =
          sw_units_format_bare (value, quantity, units, &sw_language_english);
        double tolerance =
          MAX (0.0051 * sw_units_factor (quantity, units), 0.0254 / 32 + 1e-12);
        double back = NAN;
        if (quantity == SW_QUANTITY_COUNT)
          continue;
        sw_units_parse (text, quantity, units, &sw_language_english, &back, NULL);
        if (quantity == SW_QUANTITY_FORCE || quantity == SW_QUANTITY_STIFFNESS ||
            quantity == SW_QUANTITY_MOMENT || quantity == SW_QUANTITY_PRESSURE ||
            quantity == SW_QUANTITY_POWER || quantity == SW_QUANTITY_SPEED ||
            quantity == SW_QUANTITY_SHARE || quantity == SW_QUANTITY_MICROSECONDS)
          tolerance = 0.5 * sw_units_factor (quantity, units) + 1e-9;
        if (!(fabs (back - value) <= tolerance))
          g_error ("quantity %d: %.9g was shown as %s and read as %.9g",
                   quantity,
                   value,
                   text,
                   back);
      }
    }
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
  g_test_add_func ("/engine/units/a comma is decimal where the language says so",
                   test_a_comma_is_decimal_where_the_language_says_so);
  g_test_add_func ("/engine/units/shows what people read", test_shows_what_people_read);
  g_test_add_func ("/engine/units/tape lengths have no feet", test_tape_lengths_have_no_feet);
  g_test_add_func ("/engine/units/what an entry shows reads back",
                   test_what_an_entry_shows_reads_back);
  return g_test_run ();
}
