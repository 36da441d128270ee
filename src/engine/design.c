// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design.h"

#include "engine/design-keys.h"
#include "engine/error.h"

#include <string.h>

/* SwDesign lives behind g_atomic_rc_box: the count is beside the value, not in it. */

static char **
text_field (const SwKey *key, SwDesign *design)
{
  return (gpointer) ((char *) design + key->offset);
}

static gboolean
owns_text (const SwKey *key)
{
  return key->type == SW_KEY_TEXT || key->type == SW_KEY_ID;
}

static GHashTable *
price_table_new (void)
{
  return g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_free);
}

static GHashTable *
price_table_copy (GHashTable *table)
{
  GHashTable *copy = price_table_new ();
  GHashTableIter iter;
  gpointer id, price;

  g_hash_table_iter_init (&iter, table);
  while (g_hash_table_iter_next (&iter, &id, &price))
    g_hash_table_insert (copy, g_strdup (id), g_memdup2 (price, sizeof (double)));
  return copy;
}

SwDesign *
sw_design_new (void)
{
  SwDesign *design = g_atomic_rc_box_new0 (SwDesign);

  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    if (owns_text (key))
      *text_field (key, design) = g_strdup (key->start_text);
    else
      sw_key_set_number (key, design, key->start, NULL);
  }
  design->held = g_ptr_array_new_with_free_func (g_free);
  design->prices.override = price_table_new ();
  design->prices.have = price_table_new ();
  design->as_built.ring_points = g_array_new (FALSE, FALSE, sizeof (SwRingPoint));
  return design;
}

static gpointer
copy_text (gconstpointer text, gpointer unused)
{
  return g_strdup (text);
}

SwDesign *
sw_design_copy (const SwDesign *design)
{
  SwDesign *copy = g_atomic_rc_box_new0 (SwDesign);

  *copy = *design;

  for (guint i = 0; i < sw_n_keys (); i++) {
    if (owns_text (sw_key_at (i)))
      *text_field (sw_key_at (i), copy) = g_strdup (*text_field (sw_key_at (i), copy));
  }
  copy->held = g_ptr_array_copy (design->held, copy_text, NULL);
  g_ptr_array_set_free_func (copy->held, g_free);
  copy->prices.override = price_table_copy (design->prices.override);
  copy->prices.have = price_table_copy (design->prices.have);
  copy->as_built.ring_points = g_array_copy (design->as_built.ring_points);
  if (copy->own_rows != NULL)
    json_node_ref (copy->own_rows);
  if (copy->extra != NULL)
    json_node_ref (copy->extra);
  return copy;
}

SwDesign *
sw_design_ref (SwDesign *design)
{
  return g_atomic_rc_box_acquire (design);
}

static void
design_clear (gpointer data)
{
  SwDesign *design = data;

  for (guint i = 0; i < sw_n_keys (); i++) {
    if (owns_text (sw_key_at (i)))
      g_free (*text_field (sw_key_at (i), design));
  }
  g_ptr_array_unref (design->held);
  g_hash_table_unref (design->prices.override);
  g_hash_table_unref (design->prices.have);
  g_array_unref (design->as_built.ring_points);
  g_clear_pointer (&design->own_rows, json_node_unref);
  g_clear_pointer (&design->extra, json_node_unref);
}

void
sw_design_unref (SwDesign *design)
{
  g_atomic_rc_box_release_full (design, design_clear);
}

static gboolean
same_bits (double a, double b)
{
  return memcmp (&a, &b, sizeof a) == 0;
}

static gboolean
price_tables_equal (GHashTable *a, GHashTable *b)
{
  GHashTableIter iter;
  gpointer id, price;

  if (g_hash_table_size (a) != g_hash_table_size (b))
    return FALSE;
  g_hash_table_iter_init (&iter, a);
  while (g_hash_table_iter_next (&iter, &id, &price)) {
    const double *other = g_hash_table_lookup (b, id);
    if (other == NULL || !same_bits (*(double *) price, *other))
      return FALSE;
  }
  return TRUE;
}

static gboolean
held_equal (const GPtrArray *a, const GPtrArray *b)
{
  if (a->len != b->len)
    return FALSE;
  for (guint i = 0; i < a->len; i++) {
    if (strcmp (a->pdata[i], b->pdata[i]) != 0)
      return FALSE;
  }
  return TRUE;
}

static gboolean
ring_points_equal (const GArray *a, const GArray *b)
{
  return a->len == b->len &&
         (a->len == 0 || memcmp (a->data, b->data, a->len * sizeof (SwRingPoint)) == 0);
}

static gboolean
keys_equal (const SwDesign *a, const SwDesign *b)
{
  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    gboolean same = owns_text (key)
                      ? strcmp (sw_key_get_text (key, a), sw_key_get_text (key, b)) == 0
                      : same_bits (sw_key_get_number (key, a), sw_key_get_number (key, b));
    if (!same)
      return FALSE;
  }
  return TRUE;
}

static gboolean
nodes_equal (JsonNode *a, JsonNode *b)
{
  return a == b || (a != NULL && b != NULL && json_node_equal (a, b));
}

gboolean
sw_design_equal (const SwDesign *a, const SwDesign *b)
{
  return nodes_equal (a->extra, b->extra) && nodes_equal (a->own_rows, b->own_rows) &&
         keys_equal (a, b) && held_equal (a->held, b->held) &&
         price_tables_equal (a->prices.override, b->prices.override) &&
         price_tables_equal (a->prices.have, b->prices.have) &&
         ring_points_equal (a->as_built.ring_points, b->as_built.ring_points);
}

gboolean
sw_design_holds (const SwDesign *design, const char *path)
{
  return g_ptr_array_find_with_equal_func (design->held, path, g_str_equal, NULL);
}

gboolean
sw_design_check (const SwDesign *design, GError **error)
{
  const SwShape *shape = &design->shape;
  double ring_top = shape->crown_height_m - 0.2;

  /* An unrounded 0.2 below the crown may miss by the last bit; allow that much. */
  if (!(shape->ring_height_m <= ring_top + 1e-12)) {
    sw_set_error (error,
                  SW_ERROR_RANGE,
                  "shape.ring_height_m: %.15g is outside 0 … %.15g (0.2 below the crown)",
                  shape->ring_height_m,
                  ring_top);
    return FALSE;
  }
  if (!(design->crown.hook_reach_m < shape->crown_radius_m)) {
    sw_set_error (error,
                  SW_ERROR_RANGE,
                  "crown.hook_reach_m: %.15g is outside 0 … below %.15g (the crown radius)",
                  design->crown.hook_reach_m,
                  shape->crown_radius_m);
    return FALSE;
  }
  if (design->data.bits_per_pixel % 8 != 0) {
    g_set_error (error,
                 SW_ERROR,
                 SW_ERROR_RANGE,
                 "data.bits_per_pixel: %d is not a multiple of 8, 8 … 128",
                 design->data.bits_per_pixel);
    return FALSE;
  }
  return TRUE;
}
