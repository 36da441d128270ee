// SPDX-License-Identifier: GPL-3.0-or-later
/* process-locale.h: language and paper out of the environment, for whoever starts a packet
 * (commands, window). */
#pragma once
#include "packet/sheets.h"

/* LC_PAPER's territory: US, CA, MX: Letter; else (and C) A4. */
SwPaper sw_paper_of_locale (const char *locale_name);

/* From the process's locale: words by gettext, decimal sign by localeconv (). Call setlocale ()
 * before. */
const SwLanguage *sw_language_of_process (void);
SwPaper sw_paper_of_process (void);
