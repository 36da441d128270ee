// SPDX-License-Identifier: GPL-3.0-or-later
/* design-write.c: a design as a JSON tree: every known key in its order, then the unknown ones.
 */
#include "engine/design-file.h"
#include "engine/design-json.h"
#include "engine/design-keys.h"
#include "engine/json-value.h"

#include <string.h>

static JsonNode *
node_of_key (const SwKey *key, const SwDesign *design)
{
  JsonNode *node = json_node_alloc ();

  switch (key->type) {
  case SW_KEY_FLAG:
    return json_node_init_boolean (node, sw_key_get_number (key, design) > 0);
  case SW_KEY_WHOLE:
    return json_node_init_int (node, (gint64) sw_key_get_number (key, design));
  case SW_KEY_NUMBER:
    return json_node_init_double (node, sw_key_get_number (key, design));
  case SW_KEY_CHOICE:
  case SW_KEY_TEXT:
  case SW_KEY_ID:
    return json_node_init_string (node, sw_key_get_text (key, design));
  }
  g_return_val_if_reached (node);
}

static JsonNode *
node_of_held (const SwDesign *design)
{
  g_autoptr (JsonArray) list = json_array_new ();

  for (guint i = 0; i < design->held->len; i++)
    json_array_add_string_element (list, design->held->pdata[i]);
  return json_node_init_array (json_node_alloc (), list);
}

/* Most designs have none: then the key is left out. */
static void
add_own_rows (JsonObject *root, const char *name, const SwDesign *design)
{
  if (design->own_rows != NULL)
    json_object_set_member (root, name, json_node_copy (design->own_rows));
}

/* By id, so that the same design gives the same bytes. */
static JsonNode *
node_of_prices (GHashTable *table)
{
  g_autoptr (JsonObject) object = json_object_new ();
  g_autoptr (GList) ids = g_list_sort (g_hash_table_get_keys (table), (GCompareFunc) strcmp);

  for (GList *id = ids; id != NULL; id = id->next)
    json_object_set_double_member (object,
                                   id->data,
                                   *(const double *) g_hash_table_lookup (table, id->data));
  return json_node_init_object (json_node_alloc (), object);
}

/* Members of `from` that `into` does not have. */
static void
add_unknown (JsonObject *into, JsonNode *from)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  if (from == NULL)
    return;
  json_object_iter_init_ordered (&iter, json_node_get_object (from));
  while (json_object_iter_next_ordered (&iter, &name, &node)) {
    if (!json_object_has_member (into, name))
      json_object_set_member (into, name, json_node_copy (node));
  }
}

/* Returns: (transfer full): azimuth (double *) → what the file says of that point. */
static GHashTable *
notes_by_azimuth (JsonNode *points)
{
  GHashTable *notes = g_hash_table_new_full (g_double_hash, g_double_equal, g_free, NULL);
  JsonArray *list = points == NULL ? NULL : json_node_get_array (points);

  for (guint i = 0; list != NULL && i < json_array_get_length (list); i++) {
    JsonNode *node = json_array_get_element (list, i);
    double azimuth_deg;
    if (sw_json_get_number (sw_json_member (node, "azimuth_deg"), &azimuth_deg))
      g_hash_table_insert (notes, g_memdup2 (&azimuth_deg, sizeof azimuth_deg), node);
  }
  return notes;
}

static JsonNode *
node_of_ring_points (const SwDesign *design, JsonNode *in_file)
{
  const GArray *points = design->as_built.ring_points;
  g_autoptr (GHashTable) notes = notes_by_azimuth (in_file);
  g_autoptr (JsonArray) list = json_array_new ();

  for (guint i = 0; i < points->len; i++) {
    const SwRingPoint *point = &g_array_index (points, SwRingPoint, i);
    JsonObject *object = json_object_new ();
    json_object_set_double_member (object, "azimuth_deg", point->azimuth_deg);
    json_object_set_double_member (object, "radius_m", point->radius_m);
    add_unknown (object, g_hash_table_lookup (notes, &point->azimuth_deg));
    json_array_add_object_element (list, object);
  }
  return json_node_init_array (json_node_alloc (), list);
}

static int
by_offset (gconstpointer a, gconstpointer b)
{
  gsize first = (*(const SwKey *const *) a)->offset,
        second = (*(const SwKey *const *) b)->offset;

  return (first > second) - (first < second);
}

/* The fields of design.h stand in the order of the file; the key table in that of the window.
 */
static void
add_known (JsonObject *object, const SwDesign *design, const char *group)
{
  g_autofree char *start = g_strconcat (group, ".", NULL);
  g_autoptr (GArray) keys = g_array_new (FALSE, FALSE, sizeof (SwKey *));

  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    if (g_str_has_prefix (key->path, start))
      g_array_append_val (keys, key);
  }
  g_array_sort (keys, by_offset);
  for (guint i = 0; i < keys->len; i++) {
    const SwKey *key = g_array_index (keys, const SwKey *, i);
    json_object_set_member (object, key->path + strlen (start), node_of_key (key, design));
  }
}

static JsonObject *
object_of_group (const SwDesign *design, const char *group, JsonNode *in_file)
{
  JsonObject *object = json_object_new ();

  if (strcmp (group, "as_built") == 0)
    json_object_set_member (
      object,
      "ring_points",
      node_of_ring_points (design, sw_json_member (in_file, "ring_points")));
  add_known (object, design, group);
  if (strcmp (group, "prices") == 0) {
    json_object_set_member (object, "override", node_of_prices (design->prices.override));
    json_object_set_member (object, "have", node_of_prices (design->prices.have));
  }
  add_unknown (object, in_file);
  return object;
}

JsonNode *
sw_design_to_json (const SwDesign *design)
{
  g_autoptr (JsonObject) root = json_object_new ();

  json_object_set_int_member (root, "spirewright", SW_DESIGN_FILE_VERSION);
  for (guint i = 0; i < sw_design_n_order; i++) {
    const char *name = sw_design_order[i];
    const SwKey *key = sw_key_find (name);
    if (key != NULL)
      json_object_set_member (root, name, node_of_key (key, design));
    else if (strcmp (name, "held") == 0)
      json_object_set_member (root, name, node_of_held (design));
    else if (strcmp (name, "catalogue") == 0)
      add_own_rows (root, name, design);
    else
      json_object_set_object_member (
        root,
        name,
        object_of_group (design, name, sw_json_member (design->extra, name)));
  }
  add_unknown (root, design->extra);
  return json_node_init_object (json_node_alloc (), root);
}
