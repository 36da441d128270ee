// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/process-locale.h"

#include <glib/gi18n.h>
#include <locale.h>
#include <string.h>

SwPaper
sw_paper_of_locale (const char *locale_name)
{
  static const char *const letter[] = { "_US", "_CA", "_MX" };

  for (guint i = 0; i < G_N_ELEMENTS (letter); i++) {
    if (locale_name != NULL && strstr (locale_name, letter[i]) != NULL)
      return SW_PAPER_LETTER;
  }
  return SW_PAPER_A4;
}

static const char *
translate (const char *id)
{
  return g_dgettext (GETTEXT_PACKAGE, id);
}

const SwLanguage *
sw_language_of_process (void)
{
  static SwLanguage language;
  static gsize once = 0;

  if (g_once_init_enter (&once)) {
    language.code = g_intern_string (g_get_language_names ()[0]);
    language.decimal = g_intern_string (localeconv ()->decimal_point);
    language.translate = translate;
    g_once_init_leave (&once, 1);
  }
  return &language;
}

SwPaper
sw_paper_of_process (void)
{
  return sw_paper_of_locale (setlocale (LC_PAPER, NULL));
}
