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
