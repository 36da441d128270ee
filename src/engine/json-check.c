// SPDX-License-Identifier: GPL-3.0-or-later
/* One pass over the bytes with a stack of open objects and lists; no recursion, so depth costs
 * nothing. Each open object keeps the set of its keys. The path of the place is built only for
 * a message.
 */
#include "engine/json-check.h"

#include "engine/error.h"

#include <errno.h>
#include <math.h>
#include <stdlib.h>
#include <string.h>

typedef struct {
  char close;       /* '}' or ']' */
  GHashTable *keys; /* owned; objects only */
  char *key;        /* owned, nullable: the one being read */
  guint index;      /* lists: the place being read */
} Level;

typedef struct {
  const char *start, *at, *end;
  GArray *levels; /* Level */
  const SwJsonRules *rules;
  GError **error;
} Scan;

static void
level_clear (gpointer data)
{
  Level *level = data;

  g_clear_pointer (&level->keys, g_hash_table_unref);
  g_clear_pointer (&level->key, g_free);
}

static Level *
top (Scan *scan)
{
  return scan->levels->len == 0 ? NULL
                                : &g_array_index (scan->levels, Level, scan->levels->len - 1);
}

static char *
path_here (Scan *scan)
{
  GString *path = g_string_new (NULL);

  for (guint i = 0; i < scan->levels->len; i++) {
    const Level *level = &g_array_index (scan->levels, Level, i);
    if (level->close == ']') {
      g_string_append_printf (path, "[%u]", level->index);
    } else if (level->key != NULL) {
      g_autofree char *key = sw_shown (level->key, -1);
      g_string_append_printf (path, "%s%s", path->len > 0 ? "." : "", key);
    }
  }
  if (path->len == 0)
    g_string_append (path, "design");
  return g_string_free (path, FALSE);
}

static guint
line_here (const Scan *scan)
{
  guint line = 1;

  for (const char *c = scan->start; c < scan->at; c++)
    line += *c == '\n';
  return line;
}

static gboolean
fail (Scan *scan, const char *what)
{
  g_autofree char *path = path_here (scan);

  g_set_error (scan->error,
               SW_ERROR,
               SW_ERROR_SYNTAX,
               "%s: %s (line %u)",
               path,
               what,
               line_here (scan));
  return FALSE;
}

/* "PATH: VALUE what, ALLOWED is allowed"; the value is what stands between start and here. */
static gboolean
fail_value (Scan *scan, SwError code, const char *start, const char *what)
{
  g_autofree char *path = path_here (scan);
  g_autofree char *value = sw_shown (start, (gssize) (scan->at - start));
  g_autofree char *allowed = scan->rules->allowed == NULL ? NULL : scan->rules->allowed (path);

  g_set_error (scan->error,
               SW_ERROR,
               code,
               "%s: %s %s%s%s%s",
               path,
               value,
               what,
               allowed == NULL ? "" : ", ",
               allowed == NULL ? "" : allowed,
               allowed == NULL ? "" : " is allowed");
  return FALSE;
}

static void
skip_space (Scan *scan)
{
  while (scan->at < scan->end && strchr (" \t\n\r", *scan->at) != NULL && *scan->at != '\0')
    scan->at++;
}

static gboolean
hex4 (Scan *scan, guint *value)
{
  *value = 0;
  for (guint i = 0; i < 4; i++, scan->at++) {
    if (scan->at >= scan->end || !g_ascii_isxdigit (*scan->at))
      return FALSE;
    *value = *value * 16 + (guint) g_ascii_xdigit_value (*scan->at);
  }
  return TRUE;
}

/* Behind "\u". A pair of surrogates is one character; half a pair is none. */
static gboolean
scan_unicode (Scan *scan, GString *into)
{
  guint high, low;

  if (!hex4 (scan, &high) || high == 0)
    return FALSE;
  if (high < 0xd800 || high > 0xdfff) {
    g_string_append_unichar (into, high);
    return TRUE;
  }
  if (high > 0xdbff || scan->end - scan->at < 6 || scan->at[0] != '\\' || scan->at[1] != 'u')
    return FALSE;
  scan->at += 2;
  if (!hex4 (scan, &low) || low < 0xdc00 || low > 0xdfff)
    return FALSE;
  g_string_append_unichar (into, 0x10000 + ((high - 0xd800) << 10) + (low - 0xdc00));
  return TRUE;
}

static gboolean
scan_escape (Scan *scan, GString *into)
{
  static const char names[] = "\"\\/bfnrt", values[] = "\"\\/\b\f\n\r\t";
  const char *found;

  if (++scan->at >= scan->end)
    return FALSE;
  if (*scan->at == 'u') {
    scan->at++;
    return scan_unicode (scan, into);
  }
  found = *scan->at == '\0' ? NULL : strchr (names, *scan->at);
  if (found == NULL)
    return FALSE;
  g_string_append_c (into, values[found - names]);
  scan->at++;
  return TRUE;
}

/* From the opening quote to behind the closing one; `into` gets the text. */
static gboolean
scan_string (Scan *scan, GString *into)
{
  const char *start = scan->at++;

  while (scan->at < scan->end && *scan->at != '"') {
    if ((guchar) *scan->at < 0x20)
      return fail (scan, "a control character or line break inside a text, write it as \\u00…");
    if (*scan->at != '\\')
      g_string_append_c (into, *scan->at++);
    else if (!scan_escape (scan, into))
      return fail (scan, "an escape that JSON does not have, or \\u0000");
  }
  if (scan->at >= scan->end) {
    scan->at = start + 1;
    return fail (scan, "a text without its closing quote");
  }
  scan->at++;
  return TRUE;
}

static gboolean
take (Scan *scan, const char *signs)
{
  if (scan->at >= scan->end || strchr (signs, *scan->at) == NULL)
    return FALSE;
  scan->at++;
  return TRUE;
}

static gsize
skip_digits (Scan *scan)
{
  const char *start = scan->at;

  while (scan->at < scan->end && g_ascii_isdigit (*scan->at))
    scan->at++;
  return (gsize) (scan->at - start);
}

static gboolean
beyond_64_bits (const char *digits)
{
  errno = 0;
  g_ascii_strtoll (digits, NULL, 10);
  return errno == ERANGE;
}

/* Whether what stands here is a number as JSON writes it; *whole: without point and power. */
static gboolean
skip_number (Scan *scan, gboolean *whole)
{
  gboolean zero;
  gsize digits;

  *whole = TRUE;
  take (scan, "-");
  zero = scan->at < scan->end && *scan->at == '0';
  digits = skip_digits (scan);
  if (digits == 0 || (zero && digits > 1))
    return FALSE;
  if (take (scan, ".")) {
    *whole = FALSE;
    if (skip_digits (scan) == 0)
      return FALSE;
  }
  if (take (scan, "eE")) {
    *whole = FALSE;
    take (scan, "+-");
    return skip_digits (scan) > 0;
  }
  return TRUE;
}

static void
skip_token (Scan *scan)
{
  while (scan->at < scan->end && strchr (" \t\r\n,:]}", *scan->at) == NULL)
    scan->at++;
}

static gboolean
scan_number (Scan *scan)
{
  const char *start = scan->at;
  gboolean whole;
  gboolean well = skip_number (scan, &whole);
  const char *end = scan->at;

  skip_token (scan); /* 0x10, 020 and 1.2.3 are shown whole */
  if (!well || scan->at > end)
    return fail_value (scan, SW_ERROR_SYNTAX, start, "is not a number as JSON writes it");
  g_autofree char *text = g_strndup (start, (gsize) (end - start));
  if (whole && beyond_64_bits (text))
    return fail_value (scan, SW_ERROR_RANGE, start, "is a whole number beyond 64 bits");
  if (!isfinite (g_ascii_strtod (text, NULL)))
    return fail_value (scan, SW_ERROR_RANGE, start, "is too large for a number");
  return TRUE;
}

static gboolean
scan_word (Scan *scan)
{
  static const char *const words[] = { "true", "false", "null" };
  const char *start = scan->at;

  for (guint i = 0; i < G_N_ELEMENTS (words); i++) {
    gsize length = strlen (words[i]);
    if ((gsize) (scan->end - scan->at) >= length && memcmp (scan->at, words[i], length) == 0 &&
        !(start + length < scan->end && g_ascii_isalnum (start[length]))) {
      scan->at += length;
      return TRUE;
    }
  }
  skip_token (scan);
  if (scan->at == start && scan->at < scan->end)
    scan->at++;
  return fail_value (scan, SW_ERROR_SYNTAX, start, "where a JSON value should be");
}

static gboolean
open_level (Scan *scan, char close)
{
  Level level = { .close = close };

  if (scan->levels->len >= scan->rules->deepest) {
    g_autofree char *what =
      g_strdup_printf ("nested too deep, at most %u levels are allowed", scan->rules->deepest);
    return fail (scan, what);
  }
  if (close == '}')
    level.keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_array_append_val (scan->levels, level);
  scan->at++;
  return TRUE;
}

/* Behind a key that stood before: the message shows the second value, or its beginning. */
static gboolean
fail_repeated (Scan *scan)
{
  skip_space (scan);
  if (scan->at < scan->end && *scan->at == ':')
    scan->at++;
  skip_space (scan);
  const char *start = scan->at;
  while (scan->at < scan->end && strchr (",]}\n\r", *scan->at) == NULL)
    scan->at++;
  return fail_value (scan, SW_ERROR_REPEATED, start, "is given to a key that stands twice");
}

/* "name": in an object. */
static gboolean
scan_key (Scan *scan)
{
  g_autoptr (GString) key = g_string_new (NULL);
  Level *level = top (scan);

  skip_space (scan);
  if (scan->at >= scan->end || *scan->at != '"')
    return fail (scan, "a key in double quotes is missing");
  if (!scan_string (scan, key))
    return FALSE;
  g_free (level->key);
  level->key = g_strdup (key->str);
  if (!g_hash_table_add (level->keys, g_strdup (key->str)))
    return fail_repeated (scan);
  skip_space (scan);
  if (scan->at >= scan->end || *scan->at != ':')
    return fail (scan, "the colon behind the key is missing");
  scan->at++;
  return TRUE;
}

/* A value, or the opening of one: then *opened is TRUE and what is inside comes next. */
static gboolean
scan_value (Scan *scan, gboolean *opened)
{
  g_autoptr (GString) text = NULL;

  *opened = FALSE;
  skip_space (scan);
  if (scan->at >= scan->end)
    return fail (scan, "the file ends where a value should be");
  if (*scan->at == '{' || *scan->at == '[') {
    *opened = TRUE;
    return open_level (scan, *scan->at == '{' ? '}' : ']');
  }
  if (*scan->at == '"') {
    text = g_string_new (NULL);
    return scan_string (scan, text);
  }
  if (*scan->at == '-' || g_ascii_isdigit (*scan->at))
    return scan_number (scan);
  return scan_word (scan);
}

static gboolean
closes (Scan *scan)
{
  skip_space (scan);
  if (top (scan) == NULL || scan->at >= scan->end || *scan->at != top (scan)->close)
    return FALSE;
  scan->at++;
  g_array_set_size (scan->levels, scan->levels->len - 1);
  return TRUE;
}

/* Behind a value: closing signs, then a comma (TRUE in *more) or the end of the outermost
 * value. */
static gboolean
scan_behind (Scan *scan, gboolean *more)
{
  *more = FALSE;
  while (closes (scan))
    ;
  if (scan->levels->len == 0)
    return TRUE;
  if (scan->at >= scan->end)
    return fail (scan, "the file ends before its closing bracket");
  if (*scan->at != ',')
    return fail (scan, "a comma or a closing bracket is missing");
  scan->at++;
  top (scan)->index++;
  *more = TRUE;
  return TRUE;
}

static gboolean
scan_all (Scan *scan)
{
  gboolean more = TRUE, opened = FALSE;

  while (more) {
    if (top (scan) != NULL && top (scan)->close == '}' && !scan_key (scan))
      return FALSE;
    if (!scan_value (scan, &opened))
      return FALSE;
    if (opened && !closes (scan))
      continue; /* the first key or value inside */
    if (!scan_behind (scan, &more))
      return FALSE;
  }
  skip_space (scan);
  if (scan->at < scan->end)
    return fail (scan, "something stands behind the end of the JSON");
  return TRUE;
}

gboolean
sw_json_check_keys (const char *data, gsize length, const SwJsonRules *rules, GError **error)
{
  Scan scan = { data,  data, data + length, g_array_new (FALSE, TRUE, sizeof (Level)),
                rules, error };
  gboolean well;

  g_array_set_clear_func (scan.levels, level_clear);
  if (!g_utf8_validate_len (data, length, NULL))
    well = fail (&scan, "not UTF-8 text");
  else if (length == 0)
    well = fail (&scan, "the file is empty, one JSON object is allowed");
  else
    well = scan_all (&scan);
  g_array_unref (scan.levels);
  return well;
}

gboolean
sw_json_check (const char *data, gsize length, guint deepest, GError **error)
{
  const SwJsonRules rules = { .deepest = deepest };

  return sw_json_check_keys (data, length, &rules, error);
}
