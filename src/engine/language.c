// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/language.h"

const SwLanguage sw_language_english = { .code = "en", .decimal = "." };

const char *
sw_language_text (const SwLanguage *language, const char *id)
{
  return language->translate == NULL ? id : language->translate (id);
}
