// SPDX-License-Identifier: GPL-3.0-or-later
/* design-lists.c: the keys of a design that are lists and tables: what is locked, prices, ring
 * points.
 */
#include "engine/design-json.h"
#include "engine/design-keys.h"
#include "engine/json-value.h"
#include "engine/own-rows.h"

#include <string.h>

#define MONEY_MOST 1e9 /* of a price and of what is had */
#define RADIUS_MOST 20 /* metres */

static gboolean
read_held (SwDesign *design, const char *path, JsonNode *node, GError **error)
{
  g_autoptr (GPtrArray) held = g_ptr_array_new_with_free_func (g_free);

  if (!JSON_NODE_HOLDS_ARRAY (node))
    return sw_json_refuse (error, SW_ERROR_TYPE, path, node, "is not a list of key paths");
  JsonArray *list = json_node_get_array (node);
  for (guint i = 0; i < json_array_get_length (list); i++) {
    JsonNode *item = json_array_get_element (list, i);
    const char *name = sw_json_holds (item, G_TYPE_STRING) ? json_node_get_string (item) : "";
    g_autofree char *place = g_strdup_printf ("%s[%u]", path, i);
    if (sw_key_find (name) == NULL)
      return sw_json_refuse (error,
                             SW_ERROR_CHOICE,
                             place,
                             item,
                             "is no key path, such as \"shape.crown_height_m\"");
    if (g_ptr_array_find_with_equal_func (held, name, g_str_equal, NULL))
      return sw_json_refuse (error,
                             SW_ERROR_REPEATED,
                             place,
                             item,
                             "stands twice, once is allowed");
    g_ptr_array_add (held, g_strdup (name));
  }
  g_ptr_array_unref (design->held);
  design->held = g_steal_pointer (&held);
  return TRUE;
}

static gboolean
check_price (const char *path, double price, GError **error)
{
  if (price >= 0 && price <= MONEY_MOST)
    return TRUE;
  g_autofree char *shown = sw_shown (path, -1);
  sw_set_error (error,
                SW_ERROR_RANGE,
                "%s: %.15g is outside 0 … %.15g",
                shown,
                price,
                MONEY_MOST);
  return FALSE;
}

static void
set_price (GHashTable *table, const char *id, double price)
{
  g_hash_table_insert (table, g_strdup (id), g_memdup2 (&price, sizeof price));
}

static gboolean
read_prices (GHashTable *table, const char *path, JsonNode *node, GError **error)
{
  JsonObjectIter iter;
  const char *id;
  JsonNode *member;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return sw_json_refuse (error,
                           SW_ERROR_TYPE,
                           path,
                           node,
                           "is not an object of part ids and numbers");
  g_hash_table_remove_all (table);
  json_object_iter_init_ordered (&iter, json_node_get_object (node));
  while (json_object_iter_next_ordered (&iter, &id, &member)) {
    g_autofree char *shown = sw_shown (id, -1);
    g_autofree char *place = g_strdup_printf ("%s.%s", path, shown);
    double price;
    if (!sw_json_get_number (member, &price))
      return sw_json_refuse (error,
                             SW_ERROR_TYPE,
                             place,
                             member,
                             "is not a number, 0 … 1000000000 is allowed");
    if (!check_price (place, price, error))
      return FALSE;
    set_price (table, id, price);
  }
  return TRUE;
}

static const struct {
  const char *name, *allowed;
  gsize offset;
} place_keys[] = {
  { "azimuth_deg", "0 … below 360", G_STRUCT_OFFSET (SwRingPoint, azimuth_deg) },
  { "radius_m", "above 0 … 20", G_STRUCT_OFFSET (SwRingPoint, radius_m) },
};

static gboolean
read_place (JsonNode *node, const char *path, guint i, SwRingPoint *point, GError **error)
{
  JsonNode *member = sw_json_member (node, place_keys[i].name);
  g_autofree char *full = g_strdup_printf ("%s.%s", path, place_keys[i].name);
  double *field = (gpointer) ((char *) point + place_keys[i].offset);

  if (member == NULL) {
    sw_set_error (error,
                  SW_ERROR_TYPE,
                  "%s: missing, %s is allowed",
                  full,
                  place_keys[i].allowed);
    return FALSE;
  }
  if (sw_json_get_number (member, field))
    return TRUE;
  g_autofree char *what =
    g_strdup_printf ("is not a number, %s is allowed", place_keys[i].allowed);
  return sw_json_refuse (error, SW_ERROR_TYPE, full, member, what);
}

static gboolean
refuse_place (const char *path, guint i, double value, GError **error)
{
  sw_set_error (error,
                SW_ERROR_RANGE,
                "%s.%s: %.15g is outside %s",
                path,
                place_keys[i].name,
                value,
                place_keys[i].allowed);
  return FALSE;
}

static gboolean
read_ring_point (JsonNode *node, const char *path, SwRingPoint *point, GError **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return sw_json_refuse (error,
                           SW_ERROR_TYPE,
                           path,
                           node,
                           "is not an object of azimuth_deg and radius_m");
  if (!read_place (node, path, 0, point, error) || !read_place (node, path, 1, point, error))
    return FALSE;
  if (!(point->azimuth_deg >= 0 && point->azimuth_deg < 360))
    return refuse_place (path, 0, point->azimuth_deg, error);
  if (!(point->radius_m > 0 && point->radius_m <= RADIUS_MOST))
    return refuse_place (path, 1, point->radius_m, error);
  return TRUE;
}

static int
by_azimuth (gconstpointer a, gconstpointer b)
{
  double first = ((const SwRingPoint *) a)->azimuth_deg;
  double second = ((const SwRingPoint *) b)->azimuth_deg;

  return (first > second) - (first < second);
}

static gboolean
check_each_once (const GArray *points, const char *path, GError **error)
{
  for (guint i = 1; i < points->len; i++) {
    const SwRingPoint *point = &g_array_index (points, SwRingPoint, i);
    if (by_azimuth (point - 1, point) != 0)
      continue;
    sw_set_error (error,
                  SW_ERROR_REPEATED,
                  "%s: azimuth %.15g stands twice, once is allowed",
                  path,
                  point->azimuth_deg);
    return FALSE;
  }
  return TRUE;
}

static gboolean
read_ring_points (SwDesign *design, const char *path, JsonNode *node, GError **error)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (SwRingPoint));

  if (!JSON_NODE_HOLDS_ARRAY (node))
    return sw_json_refuse (error,
                           SW_ERROR_TYPE,
                           path,
                           node,
                           "is not a list of {azimuth_deg, radius_m}");
  JsonArray *list = json_node_get_array (node);
  for (guint i = 0; i < json_array_get_length (list); i++) {
    g_autofree char *place = g_strdup_printf ("%s[%u]", path, i);
    SwRingPoint point;
    if (!read_ring_point (json_array_get_element (list, i), place, &point, error))
      return FALSE;
    g_array_append_val (points, point);
  }
  g_array_sort (points, by_azimuth);
  if (!check_each_once (points, path, error))
    return FALSE;
  g_array_unref (design->as_built.ring_points);
  design->as_built.ring_points = g_steal_pointer (&points);
  return TRUE;
}

static gboolean
read_own_rows (SwDesign *design, const char *path, JsonNode *node, GError **error)
{
  if (!JSON_NODE_HOLDS_OBJECT (node))
    return sw_json_refuse (error, SW_ERROR_TYPE, path, node, "is not an object of rows by id");
  const SwCatalogue *builtin = sw_catalogue_builtin (error);
  g_autoptr (SwCatalogue) rows =
    builtin == NULL ? NULL : sw_own_rows_over (node, builtin, error);
  if (rows == NULL) {
    g_prefix_error (error, "%s.", path);
    return FALSE;
  }
  g_clear_pointer (&design->own_rows, json_node_unref);
  if (json_object_get_size (json_node_get_object (node)) > 0) {
    design->own_rows = json_node_copy (node);
    json_node_seal (design->own_rows);
  }
  return TRUE;
}

gboolean
sw_design_is_structured (const char *path)
{
  static const char *const paths[] = {
    "held", "prices.override", "prices.have", "as_built.ring_points", "catalogue", NULL,
  };

  return g_strv_contains (paths, path);
}

gboolean
sw_design_set_structured (SwDesign *design, const char *path, JsonNode *value, GError **error)
{
  g_return_val_if_fail (sw_design_is_structured (path), FALSE);
  if (strcmp (path, "held") == 0)
    return read_held (design, path, value, error);
  if (strcmp (path, "prices.override") == 0)
    return read_prices (design->prices.override, path, value, error);
  if (strcmp (path, "prices.have") == 0)
    return read_prices (design->prices.have, path, value, error);
  if (strcmp (path, "catalogue") == 0)
    return read_own_rows (design, path, value, error);
  return read_ring_points (design, path, value, error);
}

gboolean
sw_design_set_price (SwDesign *design, const char *path, double price, GError **error)
{
  gboolean have = g_str_has_prefix (path, "prices.have.");
  const char *id = path + strlen (have ? "prices.have." : "prices.override.");

  if (*id == '\0' || !g_utf8_validate (id, -1, NULL)) {
    g_autofree char *shown = sw_shown (path, -1);
    sw_set_error (error, SW_ERROR_UNKNOWN_KEY, "%s: a part id is missing behind it", shown);
    return FALSE;
  }
  if (!check_price (path, price, error))
    return FALSE;
  set_price (have ? design->prices.have : design->prices.override, id, price + 0.0);
  return TRUE;
}
