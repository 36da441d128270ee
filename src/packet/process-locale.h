// SPDX-License-Identifier: GPL-3.0-or-later
/* process-locale.h: language and paper out of the environment, for whoever starts a packet
 * (commands, window). */
#pragma once
#include "packet/sheets.h"

/* LC_PAPER's territory: US, CA, MX: Letter; else (and C) A4. */
SwPaper sw_paper_of_locale (const char *locale_name);

/* "de" of "de_DE.UTF-8"; "en" of C. */
const char *sw_language_code_of_locale (const char *locale_name);

/* What the environment asks for: words by gettext, decimal sign by LC_NUMERIC; English where
 * its locale is not installed. Whether setlocale () was called makes no difference.
 */
const SwLanguage *sw_language_of_process (void);

/* The territory of the first of LC_ALL, LC_PAPER, LANG that is set. */
SwPaper sw_paper_of_process (void);
