// SPDX-License-Identifier: GPL-3.0-or-later
/* formula.h: reads and evaluates the notation of working.h, knowing nothing of the engine:
 * names come from a table, everything else from the text.
 */
#pragma once
#include <glib.h>
#include <math.h>
#include <string.h>

typedef struct {
  const char *at;
  GHashTable *values; /* name → double * */
  gboolean failed;
} Formula;

static inline double formula_sum (Formula *f);

static inline gboolean
formula_takes (Formula *f, const char *sign)
{
  while (*f->at == ' ')
    f->at++;
  if (!g_str_has_prefix (f->at, sign))
    return FALSE;
  f->at += strlen (sign);
  return TRUE;
}

static inline double
formula_fail (Formula *f)
{
  f->failed = TRUE;
  return NAN;
}

/* first (x, …): the first of the rest that is at least x; count (x, …): how many are. */
static inline double
formula_look_up (Formula *f, gboolean counts)
{
  double least = formula_sum (f), found = NAN;
  guint n = 0;

  while (formula_takes (f, ",")) {
    double next = formula_sum (f);
    if (!(next >= least))
      continue;
    if (n++ == 0)
      found = next;
  }
  if (!formula_takes (f, ")"))
    return formula_fail (f);
  return counts ? n : found;
}

static inline double
formula_call (Formula *f, const char *name)
{
  static const struct {
    const char *name;
    double (*of) (double);
  } functions[] = { { "sin", sin },   { "cos", cos },  { "tan", tan },     { "acos", acos },
                    { "atan", atan }, { "abs", fabs }, { "floor", floor }, { "ceil", ceil } };
  if (strcmp (name, "first") == 0 || strcmp (name, "count") == 0)
    return formula_look_up (f, strcmp (name, "count") == 0);

  double first = formula_sum (f), value = first;
  guint more = 0;

  for (; formula_takes (f, ","); more++) {
    double next = formula_sum (f);
    if (strcmp (name, "min") == 0)
      value = fmin (value, next);
    else if (strcmp (name, "max") == 0)
      value = fmax (value, next);
    else if (strcmp (name, "atan2") == 0 && more == 0)
      value = atan2 (first, next);
    else
      return formula_fail (f);
  }
  if (!formula_takes (f, ")"))
    return formula_fail (f);
  for (guint i = 0; more == 0 && i < G_N_ELEMENTS (functions); i++) {
    if (strcmp (name, functions[i].name) == 0)
      return functions[i].of (first);
  }
  return more > 0 ? value : formula_fail (f);
}

static inline double
formula_word (Formula *f)
{
  const char *begin = f->at;

  while (g_ascii_isalnum (*f->at) || *f->at == '_' || *f->at == '.')
    f->at++;
  g_autofree char *word = g_strndup (begin, (gsize) (f->at - begin));
  if (*f->at == '(') {
    f->at++;
    return formula_call (f, word);
  }
  const double *value = g_hash_table_lookup (f->values, word);
  return value == NULL ? formula_fail (f) : *value;
}

static inline double
formula_atom (Formula *f)
{
  if (formula_takes (f, "π"))
    return G_PI;
  if (formula_takes (f, "√"))
    return sqrt (formula_atom (f));
  if (formula_takes (f, "(")) {
    double inside = formula_sum (f);
    return formula_takes (f, ")") ? inside : formula_fail (f);
  }
  if (g_ascii_isalpha (*f->at))
    return formula_word (f);
  char *end = NULL;
  g_autofree char *digits = g_strndup (f->at, strspn (f->at, "0123456789."));
  double number = g_ascii_strtod (digits, &end);
  if (end == digits || *end != '\0')
    return formula_fail (f);
  f->at += strlen (digits);
  return number;
}

static inline double
formula_power (Formula *f)
{
  if (formula_takes (f, "−"))
    return -formula_power (f);
  double base = formula_atom (f);
  return formula_takes (f, "^") ? pow (base, formula_power (f)) : base;
}

static inline double
formula_product (Formula *f)
{
  double value = formula_power (f);

  for (;;) {
    if (formula_takes (f, "·"))
      value *= formula_power (f);
    else if (formula_takes (f, "/"))
      value /= formula_power (f);
    else
      return value;
  }
}

static inline double
formula_sum (Formula *f)
{
  double value = formula_product (f);

  for (;;) {
    if (formula_takes (f, "+"))
      value += formula_product (f);
    else if (formula_takes (f, "−"))
      value -= formula_product (f);
    else
      return value;
  }
}

/* NAN for what can't be read to its end. */
static inline double
formula_value (const char *text, GHashTable *values)
{
  Formula f = { text, values, FALSE };
  double value = formula_sum (&f);

  while (*f.at == ' ')
    f.at++;
  return f.failed || *f.at != '\0' ? NAN : value;
}
