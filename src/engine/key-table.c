// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/key-table.h"

/* In the file's order. */
static const SwKeyTable *const tables[] = {
  &sw_keys_of_shape, &sw_keys_of_strips, &sw_keys_of_stand,
  &sw_keys_of_site,  &sw_keys_of_power,  &sw_keys_of_data,
};

guint
sw_n_keys (void)
{
  guint n = 0;

  for (guint i = 0; i < G_N_ELEMENTS (tables); i++)
    n += tables[i]->n;
  return n;
}

const SwKey *
sw_key_at (guint i)
{
  for (guint t = 0; t < G_N_ELEMENTS (tables); i -= tables[t++]->n) {
    if (i < tables[t]->n)
      return &tables[t]->rows[i];
  }
  g_return_val_if_reached (NULL);
}
