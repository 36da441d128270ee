// SPDX-License-Identifier: GPL-3.0-or-later
/* units-parse.c: sw_units_parse (), a small calculator with units.
 *
 * Every value carries whether it has a unit. Sum: both sides alike, a bare side takes the row's
 * unit. Product: at most one side has a unit; a quotient of two lengths is a plain number.
 * Mixed numbers ("6 1/2", "6-1/2", "6½") and feet with their inches ("14' 6\"", "14'-6\"") are
 * read as one value. At the end a bare number takes the row's unit.
 */
#include "engine/error.h"
#include "engine/unit-table.h"
#include "engine/units.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#define DEEPEST 16  /* brackets and signs */
#define LONGEST 256 /* bytes */

typedef struct {
  double value; /* SI where it has a unit */
  gboolean has_unit;
  const SwUnit *unit; /* the last unit read; NULL for a bare number or a product */
} Term;

typedef struct {
  const char *at;
  const SwShownUnit *row;
  const char *decimal;
  int depth;
  gboolean bad, wrong_unit;
} Reader;

static Term read_sum (Reader *reader);

static void
skip_space (Reader *reader)
{
  for (;;) {
    gunichar c = g_utf8_get_char (reader->at);
    if (c == 0 || !g_unichar_isspace (c))
      return;
    reader->at += g_utf8_skip[(guchar) *reader->at];
  }
}

static gboolean
take (Reader *reader, const char *sign)
{
  skip_space (reader);
  if (!g_str_has_prefix (reader->at, sign))
    return FALSE;
  reader->at += strlen (sign);
  return TRUE;
}

/* What is written in several ways, in the one that is read on. */
static char *
in_plain_signs (const char *text)
{
  static const struct {
    const char *sign, *plain;
  } table[] = {
    { "½", " 1/2" }, { "⅓", " 1/3" }, { "⅔", " 2/3" }, { "¼", " 1/4" }, { "¾", " 3/4" },
    { "⅛", " 1/8" }, { "⅜", " 3/8" }, { "⅝", " 5/8" }, { "⅞", " 7/8" }, { "⁄", "/" },
    { "÷", "/" },    { "×", "*" },    { "−", "-" },    { "–", "-" },    { "’", "'" },
    { "′′", "\"" },  { "''", "\"" },  { "′", "'" },    { "″", "\"" },   { "”", "\"" },
  };
  g_autoptr (GString) plain = g_string_new (text);

  for (guint i = 0; i < G_N_ELEMENTS (table); i++)
    g_string_replace (plain, table[i].sign, table[i].plain, 0);
  return g_strdup (plain->str);
}

static gboolean
starts_number (const Reader *reader)
{
  return g_ascii_isdigit (*reader->at) || *reader->at == '.' ||
         (g_str_has_prefix (reader->at, reader->decimal) &&
          g_ascii_isdigit (reader->at[strlen (reader->decimal)]));
}

/* Digits with at most one decimal sign. */
static double
read_digits (Reader *reader)
{
  g_autoptr (GString) digits = g_string_new (NULL);
  gboolean seen_sign = FALSE, seen_digit = FALSE;

  for (;;) {
    gsize sign = g_str_has_prefix (reader->at, reader->decimal) ? strlen (reader->decimal)
                                                                : *reader->at == '.';
    if (g_ascii_isdigit (*reader->at)) {
      g_string_append_c (digits, *reader->at++);
      seen_digit = TRUE;
    } else if (sign > 0 && !seen_sign) {
      g_string_append_c (digits, '.');
      reader->at += sign;
      seen_sign = TRUE;
    } else {
      break;
    }
  }
  if (!seen_digit || digits->len > 40)
    reader->bad = TRUE;
  return g_ascii_strtod (digits->str, NULL);
}

/* "1/2" right behind a whole number: "6 1/2", also "6-1/2". Leaves the reader alone otherwise.
 */
static gboolean
read_fraction (Reader *reader, double *fraction)
{
  Reader ahead = *reader;
  char *end;

  skip_space (&ahead);
  if (*ahead.at == '-' && ahead.at == reader->at)
    ahead.at++;
  if (!g_ascii_isdigit (*ahead.at))
    return FALSE;
  guint64 upper = g_ascii_strtoull (ahead.at, &end, 10);
  if (*end != '/' || !g_ascii_isdigit (end[1]))
    return FALSE;
  guint64 lower = g_ascii_strtoull (end + 1, &end, 10);
  if (lower == 0 || upper >= lower || *end == '.')
    return FALSE;
  *fraction = (double) upper / (double) lower;
  reader->at = end;
  return TRUE;
}

/* Whether the unit's name stands here and is not the beginning of a longer word. */
static gboolean
stands_here (const char *at, const SwUnit *unit, gboolean any_case)
{
  gsize length = strlen (unit->name);

  if (any_case ? g_ascii_strncasecmp (at, unit->name, length) != 0
               : strncmp (at, unit->name, length) != 0)
    return FALSE;
  return !g_ascii_isalpha (unit->name[length - 1]) ||
         !g_unichar_isalpha (g_utf8_get_char (at + length));
}

/* The longest name that stands here. Returns: (nullable). */
static const SwUnit *
find_unit (const char *at, const SwDimension *only, gboolean any_case)
{
  const SwUnit *best = NULL;

  for (guint i = 0; i < sw_n_units; i++) {
    const SwUnit *unit = &sw_unit_table[i];
    gboolean longer = best == NULL || strlen (unit->name) > strlen (best->name);
    if (longer && (only == NULL || unit->dimension == *only) &&
        stands_here (at, unit, any_case))
      best = unit;
  }
  return best;
}

/* "MPH" and "v" are taken too, where they are no other unit of the row's kind. */
static const SwUnit *
read_unit (Reader *reader)
{
  const SwDimension *wanted = &reader->row->dimension;
  const SwUnit *unit;

  skip_space (reader);
  unit = find_unit (reader->at, wanted, FALSE);
  if (unit == NULL)
    unit = find_unit (reader->at, wanted, TRUE);
  if (unit == NULL && (unit = find_unit (reader->at, NULL, FALSE)) != NULL)
    reader->bad = reader->wrong_unit = TRUE;
  if (unit != NULL)
    reader->at += strlen (unit->name);
  return unit;
}

static Term
read_number (Reader *reader)
{
  const char *start = reader->at;
  Term term = { .value = read_digits (reader) };
  double fraction = 0;
  gboolean whole = strcspn (start, ".,/") >= (gsize) (reader->at - start);

  if (whole && read_fraction (reader, &fraction))
    term.value += fraction;
  /* "3/4 in" is a fraction of an inch, not 3 over 4 inches. */
  else if (whole && *reader->at == '/' && g_ascii_isdigit (reader->at[1])) {
    reader->at++;
    double lower = read_digits (reader);
    if (!(lower > 0))
      reader->bad = TRUE;
    term.value /= lower;
  }
  term.unit = read_unit (reader);
  term.has_unit = term.unit != NULL;
  if (term.has_unit)
    term.value *= term.unit->si;
  return term;
}

static gboolean
is_unit (const Term *term, double si)
{
  return term->unit != NULL && term->unit->dimension == SW_DIMENSION_LENGTH &&
         fabs (term->unit->si - si) < 1e-9;
}

/* 14'-6": a dash that touches both is no minus. */
static void
skip_joint (Reader *reader)
{
  if (reader->at[0] == '-' && reader->at[-1] == '\'' && g_ascii_isdigit (reader->at[1]))
    reader->at++;
}

/* 14' 6 1/2": what follows feet without a sign are inches, named or not. */
static Term
read_length (Reader *reader)
{
  Term term = read_number (reader);

  if (!is_unit (&term, 0.3048))
    return term;
  skip_joint (reader);
  skip_space (reader);
  if (!starts_number (reader))
    return term;
  Term inches = read_number (reader);
  if (inches.has_unit && !is_unit (&inches, 0.0254))
    reader->bad = TRUE;
  term.value += inches.has_unit ? inches.value : inches.value * 0.0254;
  return term;
}

/* Behind an opening bracket. */
static Term
read_bracket (Reader *reader)
{
  Term term = read_sum (reader);

  if (!take (reader, ")"))
    reader->bad = TRUE;
  const SwUnit *unit = term.has_unit ? NULL : read_unit (reader); /* (3 + 4) mm */
  return unit == NULL ? term : (Term){ term.value * unit->si, TRUE, unit };
}

static Term
read_factor (Reader *reader)
{
  gboolean minus = take (reader, "-");
  gboolean bracket = !minus && take (reader, "(");
  Term term = { 0 };

  if ((minus || bracket) && ++reader->depth > DEEPEST) {
    reader->bad = TRUE;
  } else if (minus) {
    term = read_factor (reader);
    term.value = -term.value;
    reader->depth--;
  } else if (bracket) {
    term = read_bracket (reader);
    reader->depth--;
  } else if (starts_number (reader)) {
    term = read_length (reader);
  } else {
    reader->bad = TRUE;
  }
  return term;
}

static Term
read_product (Reader *reader)
{
  Term left = read_factor (reader);

  while (!reader->bad) {
    if (take (reader, "*")) {
      Term right = read_factor (reader);
      if (left.has_unit && right.has_unit)
        reader->bad = TRUE;
      left = (Term){ left.value * right.value, left.has_unit || right.has_unit, NULL };
    } else if (take (reader, "/")) {
      Term right = read_factor (reader);
      if ((!left.has_unit && right.has_unit) || !(fabs (right.value) > 0))
        reader->bad = TRUE;
      left = (Term){ left.value / right.value, left.has_unit && !right.has_unit, NULL };
    } else {
      break;
    }
  }
  return left;
}

static double
in_si (const Reader *reader, Term term)
{
  return term.has_unit ? term.value : term.value * reader->row->factor * reader->row->si;
}

static Term
read_sum (Reader *reader)
{
  Term left = read_product (reader);

  while (!reader->bad) {
    double sign = 0;
    if (take (reader, "+"))
      sign = 1;
    else if (take (reader, "-"))
      sign = -1;
    else
      break;
    Term right = read_product (reader);
    if (left.has_unit || right.has_unit)
      left = (Term){ in_si (reader, left) + sign * in_si (reader, right), TRUE, NULL };
    else
      left.value += sign * right.value;
  }
  return left;
}

/* { metric, US } */
static const char *const examples[][2] = {
  [SW_QUANTITY_LENGTH] = { "2.86 m, 9' 4 1/2\"", "9' 4 1/2\", 2.86 m" },
  [SW_QUANTITY_SHORT_LENGTH] = { "50.8 mm, 2 in", "1 5/16, 33.3 mm" },
  [SW_QUANTITY_ANGLE] = { "180", "180" },
  [SW_QUANTITY_COUNT] = { "48, 4*12", "48, 4*12" },
  [SW_QUANTITY_MASS] = { "36 kg, 80 lb", "80 lb, 36 kg" },
  [SW_QUANTITY_MASS_PER_LENGTH] = { "0.22 kg/m, 0.15 lb/ft", "0.15 lb/ft, 0.22 kg/m" },
  [SW_QUANTITY_FORCE] = { "15 N, 3.4 lbf", "3.4 lbf, 15 N" },
  [SW_QUANTITY_STIFFNESS] = { "150 N/m, 0.86 lbf/in", "0.86 lbf/in, 150 N/m" },
  [SW_QUANTITY_MOMENT] = { "90 N·m", "66 lbf·ft" },
  [SW_QUANTITY_PRESSURE] = { "250 Pa", "5 psf" },
  [SW_QUANTITY_SPEED] = { "20 m/s, 45 mph", "45 mph, 20 m/s" },
  [SW_QUANTITY_VOLTAGE] = { "12 V", "12 V" },
  [SW_QUANTITY_CURRENT] = { "0.055, 55 mA", "0.055, 55 mA" },
  [SW_QUANTITY_POWER] = { "350 W", "350 W" },
  [SW_QUANTITY_ENERGY] = { "1.5 kWh", "1.5 kWh" },
  [SW_QUANTITY_RESISTANCE_PER_LENGTH] = { "21 mΩ/m, 6.4 mΩ/ft", "6.4 mΩ/ft, 21 mΩ/m" },
  [SW_QUANTITY_SHARE] = { "50 %", "50 %" },
  [SW_QUANTITY_RATIO] = { "1.8", "1.8" },
  [SW_QUANTITY_FREQUENCY] = { "40 Hz, 800 kHz", "40 Hz, 800 kHz" },
  [SW_QUANTITY_MICROSECONDS] = { "300 µs, 0.3 ms", "300 µs, 0.3 ms" },
  [SW_QUANTITY_HOURS] = { "5 h, 90 min", "5 h, 90 min" },
  [SW_QUANTITY_MILLIMETRES] = { "6 mm, 1/4 in", "1/4 in, 6 mm" },
  [SW_QUANTITY_PRICE] = { "0.17, 3*4.50", "0.17, 3*4.50" },
  [SW_QUANTITY_NONE] = { "3*4", "3*4" },
};

static const char *
sentence_of (const Reader *reader, const SwLanguage *language)
{
  if (reader->wrong_unit)
    return sw_language_text (language,
                             N_ ("\"{typed}\" has a unit of another kind, try {example}"));
  return sw_language_text (language, N_ ("\"{typed}\" is not understood, try {example}"));
}

/* `sentence` takes the text and an example. */
static gboolean
refuse (const char *text, const char *sentence, const char *example, GError **error)
{
  g_autofree char *shown = sw_shown (text, -1);
  g_autoptr (GString) message = g_string_new (sentence);

  g_string_replace (message, "{example}", example, 1);
  g_string_replace (message, "{typed}", shown, 1);
  g_set_error_literal (error, SW_ERROR, SW_ERROR_SYNTAX, message->str);
  return FALSE;
}

gboolean
sw_units_parse (const char *text,
                SwQuantity quantity,
                SwUnits units,
                const SwLanguage *language,
                double *value,
                GError **error)
{
  const SwShownUnit *row = sw_shown_unit (quantity, units);
  gboolean readable = strlen (text) <= LONGEST && g_utf8_validate (text, -1, NULL);
  g_autofree char *plain = readable ? in_plain_signs (text) : g_strdup ("");
  Reader reader = { .at = plain, .row = row, .decimal = language->decimal };
  Term term = read_sum (&reader);
  double result = in_si (&reader, term) / row->si;

  if (!reader.bad)
    skip_space (&reader);
  if (reader.bad || *reader.at != '\0' || !isfinite (result))
    return refuse (text,
                   sentence_of (&reader, language),
                   examples[quantity][units == SW_UNITS_US],
                   error);
  *value = result;
  return TRUE;
}
