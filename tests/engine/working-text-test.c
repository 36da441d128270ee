// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/working-text.h"

#include <math.h>

typedef struct {
  double value;
  const char *unit;
  const char *si, *metric, *us;
} Case;

/* No line may break inside a value. */
static void
assert_reads (const char *text, const char *wanted)
{
  g_auto (GStrv) parts = g_strsplit (wanted, " ", -1);
  g_autofree char *unbroken = g_strjoinv ("\u00a0", parts);
  g_auto (GStrv) feet = g_strsplit (text, " ", -1);
  g_autofree char *shown = g_strjoinv ("\u00a0", feet);

  g_assert_cmpstr (shown, ==, unbroken);
}

/* Worked by hand: 2.86 m = 112.598 in = 9 ft 4 10/16 in; 12.7 mm = 1/2 in; 100 N = 22.48 lbf;
 * 70.2 N m · 0.737562 = 51.8 lbf ft; 613 Pa/47.8803 = 12.8 psf; 20 m/s · 2.236936 = 44.7 mph,
 * shown whole. Factors: NIST SP 811, appendix B. */
static const Case cases[] = {
  { 2.86, "m", "2.86 m", "2.86 m", "9′ 4 5/8″" },
  { 0.0127, "m", "0.0127 m", "12.7 mm", "1/2″" },
  { 100, "N", "100 N", "100 N", "22.5 lbf" },
  { 70.2, "N m", "70.2 N m", "70 N·m", "52 lbf·ft" },
  { 20, "m/s", "20 m/s", "20 m/s", "45 mph" },
  { 613, "Pa", "613 Pa", "613 Pa", "12.8 psf" },
  { 2e8, "Pa", "2·10^8 Pa", "2·10^8 Pa", "2·10^8 Pa" },
  { 0, "N", "0 N", "0 N", "0 lbf" },
  { 1.23456789, "", "1.23457", "1.23457", "1.23457" },
  { 20, "", "20", "20", "20" },
  { 20.12345678, "°", "20.1235°", "20.1235°", "20.1235°" },
  { -3.5, "A", "−3.5 A", "−3.5 A", "−3.5 A" },
  { 2.07e11, "N m²", "2.07·10^11 N m²", "2.07·10^11 N m²", "2.07·10^11 N m²" },
  { -1.5e-7, "m³", "−1.5·10^−7 m³", "−1.5·10^−7 m³", "−1.5·10^−7 m³" },
};

static void
test_values_read_well (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    const Case *c = &cases[i];
    const SwLanguage *english = &sw_language_english;
    g_autofree char *si = sw_working_text_si (c->value, c->unit, english);
    g_autofree char *metric =
      sw_working_text_in_units (c->value, c->unit, SW_UNITS_METRIC, english);
    g_autofree char *us = sw_working_text_in_units (c->value, c->unit, SW_UNITS_US, english);

    assert_reads (si, c->si);
    assert_reads (metric, c->metric);
    assert_reads (us, c->us);
  }
}

/* 0.1 mm is 0.0039 in: hundredths of an inch would say nothing of it. */
static void
test_rounding_never_hides_a_value (void)
{
  g_autofree char *thin =
    sw_working_text_in_units (0.0001, "m", SW_UNITS_US, &sw_language_english);
  g_autofree char *little =
    sw_working_text_in_units (0.2, "N", SW_UNITS_METRIC, &sw_language_english);

  assert_reads (thin, "0.0001 m");
  assert_reads (little, "0.2 N");
}

static void
test_what_is_none_is_a_dash (void)
{
  g_autofree char *absent = sw_working_text_si (NAN, "m", &sw_language_english);
  g_autofree char *endless =
    sw_working_text_in_units (INFINITY, "m", SW_UNITS_US, &sw_language_english);

  g_assert_cmpstr (absent, ==, "–");
  g_assert_cmpstr (endless, ==, "–");
}

static void
test_the_decimal_sign_is_the_languages (void)
{
  const SwLanguage comma = { .code = "xx", .decimal = "," };
  g_autofree char *text = sw_working_text_si (2.07e8, "Pa", &comma);

  assert_reads (text, "2,07·10^8 Pa");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/working-text/values read well", test_values_read_well);
  g_test_add_func ("/engine/working-text/rounding never hides a value",
                   test_rounding_never_hides_a_value);
  g_test_add_func ("/engine/working-text/what is none is a dash", test_what_is_none_is_a_dash);
  g_test_add_func ("/engine/working-text/the decimal sign is the language's",
                   test_the_decimal_sign_is_the_languages);
  return g_test_run ();
}
