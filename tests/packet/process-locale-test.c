// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/process-locale.h"

/* Source: where letter paper is the usual one, as the locale data of the C library have it
 * (LC_PAPER of en_US, en_CA, fr_CA, es_MX). */
static void
test_paper_of_the_territory (void)
{
  static const struct {
    const char *locale;
    SwPaper paper;
  } cases[] = {
    { "en_US.UTF-8", SW_PAPER_LETTER },
    { "fr_CA.UTF-8", SW_PAPER_LETTER },
    { "es_MX", SW_PAPER_LETTER },
    { "es_US@euro", SW_PAPER_LETTER },
    { "de_DE.UTF-8", SW_PAPER_A4 },
    { "en_GB.UTF-8", SW_PAPER_A4 },
    { "C", SW_PAPER_A4 },
    { "C.UTF-8", SW_PAPER_A4 },
    { "POSIX", SW_PAPER_A4 },
    { NULL, SW_PAPER_A4 },
  };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++)
    g_assert_cmpint (sw_paper_of_locale (cases[i].locale), ==, cases[i].paper);
}

static void
set_all (const char *all, const char *paper, const char *lang)
{
  g_setenv ("LC_ALL", all, TRUE);
  g_setenv ("LC_PAPER", paper, TRUE);
  g_setenv ("LANG", lang, TRUE);
}

/* Source: POSIX.1-2017, XBD 8.2: LC_ALL, then LC_PAPER, then LANG; an empty one is not set. */
static void
test_paper_of_the_environment (void)
{
  set_all ("en_US.UTF-8", "de_DE.UTF-8", "de_DE.UTF-8");
  g_assert_cmpint (sw_paper_of_process (), ==, SW_PAPER_LETTER);
  set_all ("", "de_DE.UTF-8", "en_US.UTF-8");
  g_assert_cmpint (sw_paper_of_process (), ==, SW_PAPER_A4);
  set_all ("", "", "en_CA.UTF-8");
  g_assert_cmpint (sw_paper_of_process (), ==, SW_PAPER_LETTER);
  set_all ("", "", "");
  g_assert_cmpint (sw_paper_of_process (), ==, SW_PAPER_A4);
}

static void
test_language_code (void)
{
  g_assert_cmpstr (sw_language_code_of_locale ("de_DE.UTF-8"), ==, "de");
  g_assert_cmpstr (sw_language_code_of_locale ("nb@x"), ==, "nb");
  g_assert_cmpstr (sw_language_code_of_locale ("C.UTF-8"), ==, "en");
  g_assert_cmpstr (sw_language_code_of_locale ("POSIX"), ==, "en");
}

/* Also where the environment's locale is not installed. */
static void
test_language_is_never_missing (void)
{
  set_all ("xx_XX.UTF-8", "", "");
  const SwLanguage *language = sw_language_of_process ();

  g_assert_cmpstr (language->code, ==, "en");
  g_assert_cmpstr (language->decimal, ==, ".");
  g_assert_cmpstr (sw_language_text (language, "Strips"), ==, "Strips");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packet/process-locale/paper of the territory",
                   test_paper_of_the_territory);
  g_test_add_func ("/packet/process-locale/paper of the environment",
                   test_paper_of_the_environment);
  g_test_add_func ("/packet/process-locale/language code", test_language_code);
  g_test_add_func ("/packet/process-locale/language is never missing",
                   test_language_is_never_missing);
  return g_test_run ();
}
