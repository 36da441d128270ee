// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/form.h"

#include <glib/gi18n.h>

static const SwColumn columns[] = {
  { N_ ("Measure"), SW_TEXT_LEFT, 1 },
  { N_ ("Design"), SW_TEXT_RIGHT, 0 },
  { N_ ("Found"), SW_TEXT_RIGHT, 0 },
};

SwTable *
sw_form_new (void)
{
  return sw_table_new (columns, G_N_ELEMENTS (columns));
}

void
sw_form_add (SwTable *form, const SwPen *pen, const char *words, char *value)
{
  g_autofree char *owned = value;
  const char *cells[] = { sw_pen_word (pen, words), owned, SW_CELL_WRITE };

  sw_table_add (form, SW_ROW_PLAIN, cells);
}

void
sw_flow_ticks (SwFlow *flow, const char *const *words)
{
  for (guint i = 0; words[i] != NULL; i++)
    sw_flow_tick (flow, sw_pen_word (sw_flow_pen (flow), words[i]));
}
