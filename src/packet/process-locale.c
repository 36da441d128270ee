// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/process-locale.h"

#include <langinfo.h>
#include <libintl.h>
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

/* The environment's own locale, apart from the process's: commands keep English words and
 * decimal points for all but the sheets. NULL where the environment names one that is not
 * installed.
 */
static locale_t
environment_locale (void)
{
  static gsize once = 0;
  static locale_t environment;

  if (g_once_init_enter (&once)) {
    environment = newlocale (LC_ALL_MASK, "", (locale_t) 0);
    bindtextdomain (GETTEXT_PACKAGE, SW_LOCALEDIR);
    bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
    g_once_init_leave (&once, 1);
  }
  return environment;
}

static const char *
translate (const char *id)
{
  locale_t before = uselocale (environment_locale ());
  const char *text = dgettext (GETTEXT_PACKAGE, id);

  uselocale (before);
  return text;
}

static void
language_init (SwLanguage *language)
{
  locale_t environment = environment_locale ();

  *language = sw_language_english;
  if (environment == (locale_t) 0)
    return;
  language->code =
    sw_language_code_of_locale (nl_langinfo_l (_NL_LOCALE_NAME (LC_MESSAGES), environment));
  language->decimal = g_intern_string (nl_langinfo_l (RADIXCHAR, environment));
  language->translate = translate;
}

const char *
sw_language_code_of_locale (const char *locale_name)
{
  g_autofree char *code = g_strndup (locale_name, strcspn (locale_name, "_.@"));

  if (strcmp (code, "C") == 0 || strcmp (code, "POSIX") == 0)
    return "en";
  return g_intern_string (code);
}

const SwLanguage *
sw_language_of_process (void)
{
  static SwLanguage language;
  static gsize once = 0;

  if (g_once_init_enter (&once)) {
    language_init (&language);
    g_once_init_leave (&once, 1);
  }
  return &language;
}

/* By name, so that a territory counts whose locale is not installed. */
SwPaper
sw_paper_of_process (void)
{
  static const char *const names[] = { "LC_ALL", "LC_PAPER", "LANG" };

  for (guint i = 0; i < G_N_ELEMENTS (names); i++) {
    const char *value = g_getenv (names[i]);
    if (value != NULL && *value != '\0')
      return sw_paper_of_locale (value);
  }
  return SW_PAPER_A4;
}
