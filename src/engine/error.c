// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/error.h"

#include <locale.h>

GQuark
sw_error_quark (void)
{
  return g_quark_from_static_string ("sw-error-quark");
}

static char *plain_vprintf (const char *format, va_list args) G_GNUC_PRINTF (1, 0);

static char *
plain_vprintf (const char *format, va_list args)
{
  locale_t plain = newlocale (LC_ALL_MASK, "C", (locale_t) 0);
  locale_t before = uselocale (plain); /* of this thread only */
  char *text = g_strdup_vprintf (format, args);

  uselocale (before);
  freelocale (plain);
  return text;
}

void
sw_set_error (GError **error, SwError code, const char *format, ...)
{
  va_list args;

  va_start (args, format);
  g_autofree char *text = plain_vprintf (format, args);
  va_end (args);
  g_set_error_literal (error, SW_ERROR, (int) code, text);
}

char *
sw_plain_printf (const char *format, ...)
{
  va_list args;

  va_start (args, format);
  char *text = plain_vprintf (format, args);
  va_end (args);
  return text;
}

#define SHOWN_MOST 60 /* characters */

/* What some reader takes for the end of a line: control characters, LS and PS (UAX 14). */
static gboolean
may_break_lines (gunichar c)
{
  return g_unichar_iscntrl (c) || c == 0x2028 || c == 0x2029;
}

char *
sw_shown (const char *text, gssize length)
{
  g_autofree char *valid = g_utf8_make_valid (text, length);
  GString *line = g_string_new (NULL);
  const char *c = valid;

  for (guint i = 0; i < SHOWN_MOST && *c != '\0'; i++) {
    gunichar u = g_utf8_get_char (c);
    c += g_utf8_skip[(guchar) *c];
    if (may_break_lines (u))
      g_string_append_printf (line, "\\u%04x", u);
    else
      g_string_append_unichar (line, u);
  }
  if (*c != '\0')
    g_string_append (line, "…");
  return g_string_free (line, FALSE);
}
