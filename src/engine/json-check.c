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

#define SHOWN_MOST 60 /* characters of a name or value in a message */

typedef struct {
  char close;       /* '}' or ']' */
  GHashTable *keys; /* owned; objects only */
  char *key;        /* owned, nullable: the one being read */
  guint index;      /* lists: the place being read */
} Level;

typedef struct {
  const char *at, *end;
  GArray *levels; /* Level */
  guint deepest;
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

/* A name or value as it may stand in one line. */
static char *
shown (const char *text, gsize length)
{
  g_autofree char *valid = g_utf8_make_valid (text, (gssize) length);
  gboolean cut = g_utf8_strlen (valid, -1) > SHOWN_MOST;
  g_autofree char *head =
    g_utf8_substring (valid, 0, MIN (g_utf8_strlen (valid, -1), SHOWN_MOST));
  g_autoptr (GString) line = g_string_new (NULL);

  for (const char *c = head; *c != '\0'; c += g_utf8_skip[(guchar) *c]) {
    gunichar u = g_utf8_get_char (c);
    if (g_unichar_iscntrl (u) || u == 0x2028 || u == 0x2029)
      g_string_append_printf (line, "\\u%04x", u);
    else
      g_string_append_unichar (line, u);
  }
  return g_strconcat (line->str, cut ? "…" : "", NULL);
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
      g_autofree char *key = shown (level->key, strlen (level->key));
      g_string_append_printf (path, "%s%s", path->len > 0 ? "." : "", key);
    }
  }
  if (path->len == 0)
    g_string_append (path, "design");
  return g_string_free (path, FALSE);
}

static gboolean
fail (Scan *scan, SwError code, const char *what)
{
  g_autofree char *path = path_here (scan);

  g_set_error (scan->error, SW_ERROR, code, "%s: %s", path, what);
  return FALSE;
}

static gboolean
fail_with (Scan *scan, SwError code, const char *start, const char *what)
{
  g_autofree char *text = shown (start, (gsize) (scan->at - start));
  g_autofree char *line = g_strdup_printf ("%s %s", text, what);

  return fail (scan, code, line);
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
      return fail (scan,
                   SW_ERROR_SYNTAX,
                   "a control character or line break inside a text, write it as \\u00…");
    if (*scan->at != '\\')
      g_string_append_c (into, *scan->at++);
    else if (!scan_escape (scan, into))
      return fail (scan, SW_ERROR_SYNTAX, "an escape that JSON does not have, or \\u0000");
  }
  if (scan->at >= scan->end) {
    scan->at = start + 1;
    return fail (scan, SW_ERROR_SYNTAX, "a text without its closing quote");
  }
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

static gboolean
scan_number (Scan *scan)
{
  const char *start = scan->at;
  gboolean whole = TRUE, well;

  if (*scan->at == '-')
    scan->at++;
  gboolean zero = scan->at < scan->end && *scan->at == '0';
  gsize digits = skip_digits (scan);
  well = digits > 0 && !(zero && digits > 1);
  if (well && scan->at < scan->end && *scan->at == '.') {
    whole = FALSE;
    scan->at++;
    well = skip_digits (scan) > 0;
  }
  if (well && scan->at < scan->end && (*scan->at == 'e' || *scan->at == 'E')) {
    whole = FALSE;
    scan->at++;
    if (scan->at < scan->end && (*scan->at == '+' || *scan->at == '-'))
      scan->at++;
    well = skip_digits (scan) > 0;
  }
  if (!well)
    return fail_with (scan, SW_ERROR_SYNTAX, start, "is not a number as JSON writes it");
  g_autofree char *text = g_strndup (start, (gsize) (scan->at - start));
  if (whole && beyond_64_bits (text))
    return fail_with (scan, SW_ERROR_RANGE, start, "is a whole number beyond 64 bits");
  if (!isfinite (g_ascii_strtod (text, NULL)))
    return fail_with (scan, SW_ERROR_RANGE, start, "is too large for a number");
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
  while (scan->at < scan->end && strchr (" \t\r\n,]}", *scan->at) == NULL)
    scan->at++;
  if (scan->at == start && scan->at < scan->end)
    scan->at++;
  return fail_with (scan, SW_ERROR_SYNTAX, start, "where a JSON value should be");
}

static gboolean
open_level (Scan *scan, char close)
{
  Level level = { .close = close };

  if (scan->levels->len >= scan->deepest) {
    g_autofree char *what =
      g_strdup_printf ("nested too deep, at most %u levels are allowed", scan->deepest);
    return fail (scan, SW_ERROR_SYNTAX, what);
  }
  if (close == '}')
    level.keys = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);
  g_array_append_val (scan->levels, level);
  scan->at++;
  return TRUE;
}

/* "name": in an object. */
static gboolean
scan_key (Scan *scan)
{
  g_autoptr (GString) key = g_string_new (NULL);
  Level *level = top (scan);

  skip_space (scan);
  if (scan->at >= scan->end || *scan->at != '"')
    return fail (scan, SW_ERROR_SYNTAX, "a key in double quotes is missing");
  if (!scan_string (scan, key))
    return FALSE;
  g_free (level->key);
  level->key = g_strdup (key->str);
  if (!g_hash_table_add (level->keys, g_strdup (key->str)))
    return fail (scan, SW_ERROR_REPEATED, "given twice, once is allowed");
  skip_space (scan);
  if (scan->at >= scan->end || *scan->at != ':')
    return fail (scan, SW_ERROR_SYNTAX, "the colon behind the key is missing");
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
    return fail (scan, SW_ERROR_SYNTAX, "the file ends where a value should be");
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
    return fail (scan, SW_ERROR_SYNTAX, "the file ends before its closing bracket");
  if (*scan->at != ',')
    return fail (scan, SW_ERROR_SYNTAX, "a comma or a closing bracket is missing");
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
    return fail (scan, SW_ERROR_SYNTAX, "something stands behind the end of the JSON");
  return TRUE;
}

gboolean
sw_json_check (const char *data, gsize length, guint deepest, GError **error)
{
  Scan scan = { data,
                data + length,
                g_array_new (FALSE, TRUE, sizeof (Level)),
                deepest,
                error };
  gboolean well;

  g_array_set_clear_func (scan.levels, level_clear);
  if (!g_utf8_validate_len (data, length, NULL))
    well = fail (&scan, SW_ERROR_SYNTAX, "not UTF-8 text");
  else
    well = scan_all (&scan);
  g_array_unref (scan.levels);
  return well;
}
