// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/stand.h"

const char *const sw_limit_words[] = { "none", "tipping", "sliding", "socket",
                                       "post", "guy",     "stake",   "ring" };
gboolean
sw_support_init (SwSupport *support,
                 const SwDesign *design,
                 const SwCone *cone,
                 const SwWind *wind,
                 const SwCatalogue *catalogue,
                 GError **error)
{
  *support = (SwSupport){ .gust_limit_mps = 17 };
  return TRUE;
}
