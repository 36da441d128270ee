// SPDX-License-Identifier: GPL-3.0-or-later
/* language.h: how words and digits are given to a person.
 *
 * Nothing below the application reads the locale: whoever shows text passes a language down.
 * Engine tables hold msgids marked with N_(); drawing and packet wrap theirs in
 * sw_language_text (language, N_("…")).
 */
#pragma once
#include <glib.h>

typedef struct {
  const char *code;                          /* "en", "de", … as the PDF's language */
  const char *decimal;                       /* decimal sign, "." or "," */
  const char *(*translate) (const char *id); /* NULL: English */
} SwLanguage;

/* English words, a decimal point. */
extern const SwLanguage sw_language_english;

/* Returns: the text in that language; English where there is no translation. */
const char *sw_language_text (const SwLanguage *language, const char *id) G_GNUC_FORMAT (2);
