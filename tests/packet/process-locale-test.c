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

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packet/process-locale/paper of the territory",
                   test_paper_of_the_territory);
  return g_test_run ();
}
