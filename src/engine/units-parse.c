// SPDX-License-Identifier: GPL-3.0-or-later
/* units-parse.c: sw_units_parse (), a small calculator with units.
 *
 * Every value carries whether it has a unit. Sum: both sides alike, a bare side takes the row's
 * unit. Product: at most one side has a unit; a quotient of two lengths is a plain number.
 * Mixed numbers ("6 1/2") and feet followed by inches are read as one value. At the end a bare
 * number takes the row's unit.
 */
#include "engine/error.h"
#include "engine/unit-table.h"
#include "engine/units.h"

#include <math.h>
#include <string.h>

#define DEEPEST 16 /* brackets */

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
  gboolean bad;
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

static const SwUnit *
read_unit (Reader *reader)
{
  const SwUnit *best = NULL;

  skip_space (reader);
  for (guint i = 0; i < sw_n_units; i++) {
    const SwUnit *unit = &sw_unit_table[i];
    gboolean longer = best == NULL || strlen (unit->name) > strlen (best->name);
    if (longer && g_str_has_prefix (reader->at, unit->name))
      best = unit;
  }
  if (best == NULL)
    return NULL;
  const char *after = reader->at + strlen (best->name);
  if (g_ascii_isalpha (best->name[0]) && g_unichar_isalpha (g_utf8_get_char (after)))
    return NULL;
  reader->at = after;
  if (best->dimension != reader->row->dimension)
    reader->bad = TRUE;
  return best;
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
is_foot (const SwUnit *unit)
{
  return unit != NULL && fabs (unit->si - 0.3048) < 1e-9;
}

/* 14' 6 1/2": what follows feet without a sign are inches, named or not. */
static Term
read_length (Reader *reader)
{
  Term term = read_number (reader);

  if (!is_foot (term.unit))
    return term;
  skip_space (reader);
  if (!starts_number (reader))
    return term;
  Term inches = read_number (reader);
  if (is_foot (inches.unit))
    reader->bad = TRUE;
  term.value += inches.has_unit ? inches.value : inches.value * 0.0254;
  return term;
}

static Term
read_factor (Reader *reader)
{
  Term term = { 0 };

  skip_space (reader);
  if (take (reader, "-") || take (reader, "−")) {
    if (++reader->depth > DEEPEST) {
      reader->bad = TRUE;
      return term;
    }
    term = read_factor (reader);
    reader->depth--;
    term.value = -term.value;
    return term;
  }
  if (take (reader, "(")) {
    if (++reader->depth > DEEPEST) {
      reader->bad = TRUE;
      return term;
    }
    term = read_sum (reader);
    reader->depth--;
    if (!take (reader, ")"))
      reader->bad = TRUE;
    const SwUnit *unit = term.has_unit ? NULL : read_unit (reader); /* (3 + 4) mm */
    if (unit != NULL)
      term = (Term){ term.value * unit->si, TRUE, unit };
    return term;
  }
  if (!starts_number (reader)) {
    reader->bad = TRUE;
    return term;
  }
  return read_length (reader);
}

static Term
read_product (Reader *reader)
{
  Term left = read_factor (reader);

  while (!reader->bad) {
    if (take (reader, "*") || take (reader, "×")) {
      Term right = read_factor (reader);
      if (left.has_unit && right.has_unit)
        reader->bad = TRUE;
      left = (Term){ left.value * right.value, left.has_unit || right.has_unit, NULL };
    } else if (take (reader, "/") || take (reader, "÷")) {
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
    else if (take (reader, "-") || take (reader, "−"))
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

static const char *
example_of (SwQuantity quantity, SwUnits units)
{
  const SwShownUnit *row = sw_shown_unit (quantity, units);

  if (row->dimension == SW_DIMENSION_LENGTH)
    return units == SW_UNITS_US ? "9' 4 1/2\" or 2.86 m" : "2.86 m or 9' 4 1/2\"";
  return row->dimension == SW_DIMENSION_SPEED ? "45 mph or 20 m/s" : "12.5 or 3*4";
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
  Reader reader = { .at = text, .row = row, .decimal = language->decimal };

  reader.bad = strlen (text) > 256 || !g_utf8_validate (text, -1, NULL);
  Term term = reader.bad ? (Term){ 0 } : read_sum (&reader);
  if (!reader.bad)
    skip_space (&reader);
  double result = in_si (&reader, term) / row->si;
  if (reader.bad || *reader.at != '\0' || !isfinite (result)) {
    g_autofree char *shown = g_utf8_make_valid (text, MIN (strlen (text), 60));
    g_autofree char *quoted = g_strescape (shown, "′″°µΩ×÷−’”");
    g_set_error (error,
                 SW_ERROR,
                 SW_ERROR_SYNTAX,
                 "\"%s\" is not understood, try %s",
                 quoted,
                 example_of (quantity, units));
    return FALSE;
  }
  *value = result;
  return TRUE;
}
