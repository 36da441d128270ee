// SPDX-License-Identifier: GPL-3.0-or-later
/* random-design.h: designs a person might draw: every number within what is usual, every choice
 * and catalogue id by lot. */
#pragma once
#include "solve.h"

#include <math.h>

static inline void
draw_number (GRand *rand, const SwKey *key, SwDesign *design)
{
  gboolean usual = key->ease_high > key->ease_low;
  double low = usual ? key->ease_low : key->start, high = usual ? key->ease_high : key->start;

  if (key->type == SW_KEY_NUMBER)
    sw_key_set_number (key, design, low + (high - low) * g_rand_double (rand), NULL);
  else
    sw_key_set_number (key,
                       design,
                       floor (low + (high - low + 1) * g_rand_double (rand)),
                       NULL);
}

static inline void
draw_key (GRand *rand, const SwKey *key, SwDesign *design)
{
  if (key->type == SW_KEY_CHOICE)
    sw_key_set_number (key, design, g_rand_int_range (rand, 0, (gint) key->high + 1), NULL);
  else if (key->type == SW_KEY_FLAG)
    sw_key_set_number (key, design, g_rand_boolean (rand), NULL);
  else if (key->type == SW_KEY_NUMBER || key->type == SW_KEY_WHOLE)
    draw_number (rand, key, design);
  else if (key->type == SW_KEY_ID) {
    g_autoptr (GPtrArray) ids = sw_catalogue_ids (sw_catalogue_builtin (NULL), key->kind);
    sw_key_set_text (key, design, ids->pdata[g_rand_int_range (rand, 0, ids->len)], NULL);
  }
}

static inline gboolean
is_measured_key (const SwKey *key)
{
  return g_str_has_prefix (key->path, "as_built.");
}

/* A third of the designs is a full tree, and a third of them was measured; what the sliders'
 * ranges never hold is drawn so. Returns: (transfer full): one that can be solved. */
static inline SwDesign *
random_design (GRand *rand)
{
  for (;;) {
    g_autoptr (SwDesign) design = sw_design_new ();
    gboolean measured = g_rand_int_range (rand, 0, 3) == 0;
    for (guint i = 0; i < sw_n_keys (); i++) {
      if (g_strcmp0 (sw_key_at (i)->group, NULL) != 0 &&
          (measured || !is_measured_key (sw_key_at (i))))
        draw_key (rand, sw_key_at (i), design);
    }
    if (g_rand_int_range (rand, 0, 3) == 0)
      design->shape.coverage_deg = 360;
    if (g_rand_boolean (rand))
      design->stand.tie_hold_n = 2000 * g_rand_double (rand);
    g_autoptr (SwSolution) solution =
      sw_solution_new_bare (design, sw_catalogue_builtin (NULL), NULL);
    if (solution != NULL)
      return g_steal_pointer (&design);
  }
}
