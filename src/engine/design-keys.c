// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-keys.h"

#include "engine/error.h"
#include "engine/json-text.h"

#include <float.h>
#include <math.h>
#include <string.h>

/* key-table.h writes "above 0" as the smallest positive number. */
#define ABOVE_0 DBL_MIN

const SwKey *
sw_key_find (const char *path)
{
  for (guint i = 0; i < sw_n_keys (); i++) {
    if (strcmp (sw_key_at (i)->path, path) == 0)
      return sw_key_at (i);
  }
  return NULL;
}

static gconstpointer
field_of (const SwKey *key, const SwDesign *design)
{
  return (const char *) design + key->offset;
}

static gpointer
field_to_change (const SwKey *key, SwDesign *design)
{
  return (char *) design + key->offset;
}

static gboolean
is_text (const SwKey *key)
{
  return key->type == SW_KEY_TEXT || key->type == SW_KEY_ID;
}

double
sw_key_get_number (const SwKey *key, const SwDesign *design)
{
  g_return_val_if_fail (!is_text (key), NAN);
  if (key->type == SW_KEY_NUMBER)
    return *(const double *) field_of (key, design);
  return *(const int *) field_of (key, design);
}

const char *
sw_key_get_text (const SwKey *key, const SwDesign *design)
{
  if (key->type == SW_KEY_CHOICE)
    return key->choices[*(const int *) field_of (key, design)];
  return is_text (key) ? *(char *const *) field_of (key, design) : NULL;
}

static char *
range_words (const SwKey *key)
{
  if (key->low <= ABOVE_0 && key->low > 0)
    return sw_plain_printf ("above 0 … %.15g", key->high);
  return sw_plain_printf ("%.15g … %.15g", key->low, key->high);
}

static char *
choice_words (const SwKey *key)
{
  GString *all = g_string_new (key->choices[0]);

  for (int i = 1; key->choices[i] != NULL; i++)
    g_string_append_printf (all, " | %s", key->choices[i]);
  return g_string_free (all, FALSE);
}

char *
sw_key_allowed (const SwKey *key)
{
  switch (key->type) {
  case SW_KEY_NUMBER:
  case SW_KEY_WHOLE:
    return range_words (key);
  case SW_KEY_FLAG:
    return g_strdup ("true | false");
  case SW_KEY_CHOICE:
    return choice_words (key);
  case SW_KEY_TEXT:
  case SW_KEY_ID:
    return g_strdup_printf ("a text of at most %.0f characters", key->high);
  }
  g_return_val_if_reached (NULL);
}

/* All digits, so that a value just outside a range does not read as its end. */
static char *
value_words (double value)
{
  return isfinite (value) ? sw_json_number (value) : sw_plain_printf ("%g", value);
}

gboolean
sw_key_check_number (const SwKey *key, double value, GError **error)
{
  gboolean inside = value >= key->low && value <= key->high; /* also refuses NaN */

  if (inside && (key->type == SW_KEY_NUMBER || floor (value) >= value))
    return TRUE;
  g_autofree char *shown = value_words (value);
  g_autofree char *range = range_words (key);
  if (!inside)
    sw_set_error (error, SW_ERROR_RANGE, "%s: %s is outside %s", key->path, shown, range);
  else
    sw_set_error (error,
                  SW_ERROR_TYPE,
                  "%s: %s is not a whole number, %s",
                  key->path,
                  shown,
                  range);
  return FALSE;
}

gboolean
sw_key_set_number (const SwKey *key, SwDesign *design, double value, GError **error)
{
  g_return_val_if_fail (!is_text (key), FALSE);
  if (!sw_key_check_number (key, value, error))
    return FALSE;
  if (key->type == SW_KEY_NUMBER)
    *(double *) field_to_change (key, design) =
      value + 0.0; /* no −0: JSON would lose its sign */
  else
    *(int *) field_to_change (key, design) = (int) value;
  return TRUE;
}

static gboolean
refuse_text (const SwKey *key,
             SwError code,
             const char *value,
             const char *what,
             GError **error)
{
  g_autofree char *shown = sw_shown (value, -1);
  g_autofree char *allowed = sw_key_allowed (key);

  sw_set_error (error, code, "%s: \"%s\" %s %s", key->path, shown, what, allowed);
  return FALSE;
}

static gboolean
set_choice (const SwKey *key, SwDesign *design, const char *value, GError **error)
{
  for (int i = 0; key->choices[i] != NULL; i++) {
    if (strcmp (key->choices[i], value) == 0) {
      *(int *) field_to_change (key, design) = i;
      return TRUE;
    }
  }
  return refuse_text (key, SW_ERROR_CHOICE, value, "is not one of", error);
}

static gboolean
is_colour_order (const char *value)
{
  for (const char *c = value; *c != '\0'; c++) {
    if (strchr ("RGBWA", *c) == NULL || strchr (c + 1, *c) != NULL)
      return FALSE;
  }
  return strlen (value) >= 1;
}

static gboolean
check_text (const SwKey *key, const char *value, GError **error)
{
  if (!g_utf8_validate (value, -1, NULL))
    return refuse_text (key, SW_ERROR_TYPE, value, "is not UTF-8 text,", error);
  if (g_utf8_strlen (value, -1) > key->high)
    return refuse_text (key, SW_ERROR_RANGE, value, "is too long,", error);
  if (key->offset != G_STRUCT_OFFSET (SwDesign, data.colour_order) || is_colour_order (value))
    return TRUE;
  g_autofree char *shown = sw_shown (value, -1);
  sw_set_error (error,
                SW_ERROR_CHOICE,
                "%s: \"%s\" is not a colour order, letters of RGBWA each once are allowed",
                key->path,
                shown);
  return FALSE;
}

gboolean
sw_key_set_text (const SwKey *key, SwDesign *design, const char *value, GError **error)
{
  if (key->type == SW_KEY_CHOICE)
    return set_choice (key, design, value, error);
  g_return_val_if_fail (is_text (key), FALSE);
  if (!check_text (key, value, error))
    return FALSE;
  char **field = field_to_change (key, design);
  g_free (*field);
  *field = g_strdup (value);
  return TRUE;
}

static gboolean
parse_flag (const SwKey *key, const char *value, double *out, GError **error)
{
  *out = strcmp (value, "true") == 0;
  if (*out > 0 || strcmp (value, "false") == 0)
    return TRUE;
  return refuse_text (key, SW_ERROR_TYPE, value, "is not one of", error);
}

gboolean
sw_number_from_words (const char *value, double *number)
{
  char *end = NULL;
  gboolean digits =
    strspn (value, "+-.0123456789eE") == strlen (value); /* no "nan", "inf", "0x" */

  *number = g_ascii_strtod (value, &end);
  return digits && end != value && *end == '\0';
}

static gboolean
parse_plain (const SwKey *key, const char *value, double *out, GError **error)
{
  return sw_number_from_words (value, out) ||
         refuse_text (key, SW_ERROR_TYPE, value, "is not a number,", error);
}

gboolean
sw_key_set_from_words (SwDesign *design, const char *path, const char *value, GError **error)
{
  const SwKey *key = sw_key_find (path);
  double number;

  if (key == NULL) {
    g_autofree char *shown = sw_shown (path, -1);
    g_set_error (error, SW_ERROR, SW_ERROR_UNKNOWN_KEY, "%s: no such key", shown);
    return FALSE;
  }
  switch (key->type) {
  case SW_KEY_TEXT:
  case SW_KEY_ID:
  case SW_KEY_CHOICE:
    return sw_key_set_text (key, design, value, error);
  case SW_KEY_FLAG:
    return parse_flag (key, value, &number, error) &&
           sw_key_set_number (key, design, number, error);
  case SW_KEY_NUMBER:
  case SW_KEY_WHOLE:
    return parse_plain (key, value, &number, error) &&
           sw_key_set_number (key, design, number, error);
  }
  g_return_val_if_reached (FALSE);
}
