// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-json.h"

#include "engine/design-file.h"
#include "engine/design-keys.h"
#include "engine/error.h"

#include <math.h>
#include <string.h>

#define MONEY_MOST 1e9 /* of a price and of what is had */

/* Groups in the order of the file; keys outside groups stand between them. */
static const char *const order[] = {
  "title", "units", "shape", "strip",     "crown", "topper", "stand",    "guys",
  "site",  "power", "data",  "gives_way", "held",  "prices", "as_built",
};

static gboolean
fail (GError **error, SwError code, const char *path, const char *what)
{
  g_set_error (error, SW_ERROR, code, "%s: %s", path, what);
  return FALSE;
}

static gboolean
read_number (JsonNode *node, double *value)
{
  GType type = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_value_type (node) : G_TYPE_INVALID;

  if (type == G_TYPE_INT64)
    *value = (double) json_node_get_int (node);
  else if (type == G_TYPE_DOUBLE)
    *value = json_node_get_double (node);
  else
    return FALSE;
  return isfinite (*value);
}

static gboolean
holds (JsonNode *node, GType type)
{
  return JSON_NODE_HOLDS_VALUE (node) && json_node_get_value_type (node) == type;
}

static gboolean
wrong_type (GError **error, const SwKey *key)
{
  static const char *const wanted[] = {
    [SW_KEY_NUMBER] = "a number",    [SW_KEY_WHOLE] = "a whole number",
    [SW_KEY_FLAG] = "true or false", [SW_KEY_CHOICE] = "a word of its choices",
    [SW_KEY_TEXT] = "a text",        [SW_KEY_ID] = "a catalogue id in quotes",
  };

  if (key->type == SW_KEY_NUMBER || key->type == SW_KEY_WHOLE) {
    g_autofree char *what =
      sw_plain_printf ("must be %s, %.15g … %.15g", wanted[key->type], key->low, key->high);
    return fail (error, SW_ERROR_TYPE, key->path, what);
  }
  g_autofree char *what = g_strdup_printf ("must be %s", wanted[key->type]);
  return fail (error, SW_ERROR_TYPE, key->path, what);
}

static gboolean
read_key (const SwKey *key, SwDesign *design, JsonNode *node, GError **error)
{
  double number;

  switch (key->type) {
  case SW_KEY_NUMBER:
  case SW_KEY_WHOLE:
    return read_number (node, &number) ? sw_key_set_number (key, design, number, error)
                                       : wrong_type (error, key);
  case SW_KEY_FLAG:
    return holds (node, G_TYPE_BOOLEAN)
             ? sw_key_set_number (key, design, json_node_get_boolean (node), error)
             : wrong_type (error, key);
  case SW_KEY_CHOICE:
  case SW_KEY_TEXT:
  case SW_KEY_ID:
    return holds (node, G_TYPE_STRING)
             ? sw_key_set_text (key, design, json_node_get_string (node), error)
             : wrong_type (error, key);
  }
  g_return_val_if_reached (FALSE);
}

static gboolean
read_held (SwDesign *design, JsonNode *node, GError **error)
{
  if (!JSON_NODE_HOLDS_ARRAY (node))
    return fail (error, SW_ERROR_TYPE, "held", "must be a list of key paths");
  JsonArray *list = json_node_get_array (node);
  g_ptr_array_set_size (design->held, 0);
  for (guint i = 0; i < json_array_get_length (list); i++) {
    JsonNode *item = json_array_get_element (list, i);
    g_autofree char *path = g_strdup_printf ("held[%u]", i);
    if (!holds (item, G_TYPE_STRING) || sw_key_find (json_node_get_string (item)) == NULL)
      return fail (error,
                   SW_ERROR_CHOICE,
                   path,
                   "must be the path of a known key, such as \"shape.crown_height_m\"");
    if (sw_design_holds (design, json_node_get_string (item)))
      return fail (error, SW_ERROR_REPEATED, path, "locked twice, once is allowed");
    g_ptr_array_add (design->held, g_strdup (json_node_get_string (item)));
  }
  return TRUE;
}

static char *
safe_name (const char *name)
{
  g_autofree char *head = g_utf8_substring (name, 0, MIN (g_utf8_strlen (name, -1), 60));

  return g_strcanon (g_strdup (head),
                     "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789-_./",
                     '?');
}

static gboolean
read_price (GHashTable *table,
            const char *group,
            const char *id,
            JsonNode *node,
            GError **error)
{
  double value;

  if (read_number (node, &value) && value >= 0 && value <= MONEY_MOST) {
    value += 0.0; /* no −0 */
    g_hash_table_insert (table, g_strdup (id), g_memdup2 (&value, sizeof value));
    return TRUE;
  }
  g_autofree char *name = safe_name (id);
  g_autofree char *path = g_strdup_printf ("%s.%s", group, name);
  return fail (error, SW_ERROR_RANGE, path, "must be a number, 0 … 1000000000");
}

static gboolean
read_prices (GHashTable *table, const char *path, JsonNode *node, GError **error)
{
  JsonObjectIter iter;
  const char *id;
  JsonNode *value;

  if (!JSON_NODE_HOLDS_OBJECT (node))
    return fail (error, SW_ERROR_TYPE, path, "must be an object of part ids and numbers");
  g_hash_table_remove_all (table);
  json_object_iter_init (&iter, json_node_get_object (node));
  while (json_object_iter_next (&iter, &id, &value)) {
    if (!read_price (table, path, id, value, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
read_member (JsonNode *node, const char *path, const char *name, double *value, GError **error)
{
  JsonObject *object = JSON_NODE_HOLDS_OBJECT (node) ? json_node_get_object (node) : NULL;
  JsonNode *member = object == NULL ? NULL : json_object_get_member (object, name);

  if (member != NULL && read_number (member, value))
    return TRUE;
  g_autofree char *full = g_strdup_printf ("%s.%s", path, name);
  return fail (error, SW_ERROR_TYPE, full, "must be a number");
}

static gboolean
read_ring_point (GArray *points, JsonNode *node, const char *path, GError **error)
{
  SwRingPoint point;

  if (!read_member (node, path, "azimuth_deg", &point.azimuth_deg, error) ||
      !read_member (node, path, "radius_m", &point.radius_m, error))
    return FALSE;
  if (!(point.azimuth_deg >= 0 && point.azimuth_deg < 360)) {
    g_autofree char *what =
      sw_plain_printf ("%.15g is outside 0 … below 360", point.azimuth_deg);
    g_autofree char *full = g_strconcat (path, ".azimuth_deg", NULL);
    return fail (error, SW_ERROR_RANGE, full, what);
  }
  if (!(point.radius_m > 0 && point.radius_m <= 20)) {
    g_autofree char *what = sw_plain_printf ("%.15g is outside above 0 … 20", point.radius_m);
    g_autofree char *full = g_strconcat (path, ".radius_m", NULL);
    return fail (error, SW_ERROR_RANGE, full, what);
  }
  point.azimuth_deg += 0.0; /* no −0 */
  g_array_append_val (points, point);
  return TRUE;
}

static int
by_azimuth (gconstpointer a, gconstpointer b)
{
  double first = ((const SwRingPoint *) a)->azimuth_deg,
         second = ((const SwRingPoint *) b)->azimuth_deg;

  return (first > second) - (first < second);
}

static gboolean
read_ring_points (SwDesign *design, JsonNode *node, GError **error)
{
  g_autoptr (GArray) points = g_array_new (FALSE, FALSE, sizeof (SwRingPoint));

  if (!JSON_NODE_HOLDS_ARRAY (node))
    return fail (error,
                 SW_ERROR_TYPE,
                 "as_built.ring_points",
                 "must be a list of {azimuth_deg, radius_m}");
  JsonArray *list = json_node_get_array (node);
  for (guint i = 0; i < json_array_get_length (list); i++) {
    g_autofree char *path = g_strdup_printf ("as_built.ring_points[%u]", i);
    if (!read_ring_point (points, json_array_get_element (list, i), path, error))
      return FALSE;
  }
  g_array_sort (points, by_azimuth);
  for (guint i = 1; i < points->len; i++) {
    if (by_azimuth (&g_array_index (points, SwRingPoint, i - 1),
                    &g_array_index (points, SwRingPoint, i)) == 0)
      return fail (error,
                   SW_ERROR_REPEATED,
                   "as_built.ring_points",
                   "an azimuth stands twice, once is allowed");
  }
  g_array_unref (design->as_built.ring_points);
  design->as_built.ring_points = g_steal_pointer (&points);
  return TRUE;
}

gboolean
sw_design_set_structured (SwDesign *design, const char *path, JsonNode *value, GError **error)
{
  if (strcmp (path, "held") == 0)
    return read_held (design, value, error);
  if (strcmp (path, "prices.override") == 0)
    return read_prices (design->prices.override, path, value, error);
  if (strcmp (path, "prices.have") == 0)
    return read_prices (design->prices.have, path, value, error);
  if (strcmp (path, "as_built.ring_points") == 0)
    return read_ring_points (design, value, error);
  g_autofree char *name = safe_name (path);
  return fail (error, SW_ERROR_UNKNOWN_KEY, name, "no such key");
}

/* Returns: (nullable): the node of "group.name" or "name"; FALSE in *well where the group is no
 * object. */
static JsonNode *
find_member (JsonObject *root, const char *path, gboolean *well, GError **error)
{
  const char *dot = strchr (path, '.');

  *well = TRUE;
  if (dot == NULL)
    return json_object_get_member (root, path);
  g_autofree char *group = g_strndup (path, (gsize) (dot - path));
  JsonNode *node = json_object_get_member (root, group);
  if (node == NULL)
    return NULL;
  if (!JSON_NODE_HOLDS_OBJECT (node)) {
    *well = fail (error, SW_ERROR_TYPE, group, "must be an object");
    return NULL;
  }
  return json_object_get_member (json_node_get_object (node), dot + 1);
}

static gboolean
read_version (JsonObject *root, GError **error)
{
  JsonNode *node = json_object_get_member (root, "spirewright");
  double version = SW_DESIGN_FILE_VERSION;

  if (node != NULL && !read_number (node, &version))
    return fail (error, SW_ERROR_TYPE, "spirewright", "must be the format's version, 1");
  if (version > SW_DESIGN_FILE_VERSION) {
    g_autofree char *what =
      sw_plain_printf ("format %.15g is from a newer Spirewright, this one reads up to %d",
                       version,
                       SW_DESIGN_FILE_VERSION);
    return fail (error, SW_ERROR_VERSION, "spirewright", what);
  }
  if (!(version >= 1) || floor (version) < version)
    return fail (error, SW_ERROR_RANGE, "spirewright", "must be the format's version, 1");
  return TRUE;
}

static gboolean
read_keys (SwDesign *design, JsonObject *root, GError **error)
{
  gboolean well;

  for (guint i = 0; i < sw_n_keys; i++) {
    JsonNode *node = find_member (root, sw_keys[i].path, &well, error);
    if (!well || (node != NULL && !read_key (&sw_keys[i], design, node, error)))
      return FALSE;
  }
  return TRUE;
}

static const char *const structured[] = { "held",
                                          "prices.override",
                                          "prices.have",
                                          "as_built.ring_points" };

static gboolean
read_structured (SwDesign *design, JsonObject *root, GError **error)
{
  gboolean well;

  for (guint i = 0; i < G_N_ELEMENTS (structured); i++) {
    JsonNode *node = find_member (root, structured[i], &well, error);
    if (!well ||
        (node != NULL && !sw_design_set_structured (design, structured[i], node, error)))
      return FALSE;
  }
  return TRUE;
}

SwDesign *
sw_design_from_json (JsonNode *root, GError **error)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  if (!JSON_NODE_HOLDS_OBJECT (root)) {
    fail (error, SW_ERROR_TYPE, "design", "must be one JSON object");
    return NULL;
  }
  JsonObject *object = json_node_get_object (root);
  if (!read_version (object, error) || !read_keys (design, object, error) ||
      !read_structured (design, object, error) || !sw_design_check (design, error))
    return NULL;
  design->extra = json_node_ref (root);
  return g_steal_pointer (&design);
}

static JsonNode *
node_of_key (const SwKey *key, const SwDesign *design)
{
  JsonNode *node = json_node_alloc ();

  if (key->type == SW_KEY_FLAG)
    return json_node_init_boolean (node, sw_key_get_number (key, design) > 0);
  if (key->type == SW_KEY_WHOLE)
    return json_node_init_int (node, (gint64) sw_key_get_number (key, design));
  if (key->type == SW_KEY_NUMBER)
    return json_node_init_double (node, sw_key_get_number (key, design));
  return json_node_init_string (node, sw_key_get_text (key, design));
}

static JsonNode *
node_of_held (const SwDesign *design)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < design->held->len; i++)
    json_array_add_string_element (list, design->held->pdata[i]);
  JsonNode *node = json_node_init_array (json_node_alloc (), list);
  json_array_unref (list);
  return node;
}

static JsonNode *
node_of_prices (GHashTable *table)
{
  JsonObject *object = json_object_new ();
  g_autoptr (GList) ids = g_list_sort (g_hash_table_get_keys (table), (GCompareFunc) strcmp);

  for (GList *id = ids; id != NULL; id = id->next)
    json_object_set_double_member (object,
                                   id->data,
                                   *(const double *) g_hash_table_lookup (table, id->data));
  JsonNode *node = json_node_init_object (json_node_alloc (), object);
  json_object_unref (object);
  return node;
}

/* Members of `from` that `into` does not have. */
static void
add_unknown (JsonObject *into, JsonNode *from)
{
  JsonObjectIter iter;
  const char *name;
  JsonNode *node;

  if (from == NULL || !JSON_NODE_HOLDS_OBJECT (from))
    return;
  json_object_iter_init_ordered (&iter, json_node_get_object (from));
  while (json_object_iter_next_ordered (&iter, &name, &node)) {
    if (!json_object_has_member (into, name))
      json_object_set_member (into, name, json_node_copy (node));
  }
}

static JsonNode *
member_of (JsonNode *node, const char *name)
{
  if (node == NULL || !JSON_NODE_HOLDS_OBJECT (node))
    return NULL;
  return json_object_get_member (json_node_get_object (node), name);
}

/* What was said of the same point in the file, such as a note. */
static JsonNode *
point_in_file (JsonNode *points, double azimuth_deg)
{
  JsonArray *list =
    points != NULL && JSON_NODE_HOLDS_ARRAY (points) ? json_node_get_array (points) : NULL;

  for (guint i = 0; list != NULL && i < json_array_get_length (list); i++) {
    JsonNode *azimuth = member_of (json_array_get_element (list, i), "azimuth_deg");
    double value;
    if (azimuth != NULL && read_number (azimuth, &value) && fabs (value - azimuth_deg) <= 0)
      return json_array_get_element (list, i);
  }
  return NULL;
}

static JsonNode *
node_of_ring_points (const SwDesign *design, JsonNode *in_file)
{
  const GArray *points = design->as_built.ring_points;
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < points->len; i++) {
    const SwRingPoint *point = &g_array_index (points, SwRingPoint, i);
    JsonObject *object = json_object_new ();
    json_object_set_double_member (object, "azimuth_deg", point->azimuth_deg);
    json_object_set_double_member (object, "radius_m", point->radius_m);
    add_unknown (object, point_in_file (in_file, point->azimuth_deg));
    json_array_add_object_element (list, object);
  }
  JsonNode *node = json_node_init_array (json_node_alloc (), list);
  json_array_unref (list);
  return node;
}

static void
add_structured (JsonObject *object,
                const SwDesign *design,
                const char *group,
                JsonNode *in_file)
{
  if (strcmp (group, "prices") == 0) {
    json_object_set_member (object, "override", node_of_prices (design->prices.override));
    json_object_set_member (object, "have", node_of_prices (design->prices.have));
  }
  if (strcmp (group, "as_built") == 0)
    json_object_set_member (object,
                            "ring_points",
                            node_of_ring_points (design, member_of (in_file, "ring_points")));
}

/* Returns: (nullable): the group as an object; NULL when no key begins with "group.". */
static JsonObject *
object_of_group (const SwDesign *design, const char *group, JsonNode *in_file)
{
  g_autofree char *start = g_strconcat (group, ".", NULL);
  JsonObject *object = json_object_new ();

  for (guint i = 0; i < sw_n_keys; i++) {
    if (g_str_has_prefix (sw_keys[i].path, start))
      json_object_set_member (object,
                              sw_keys[i].path + strlen (start),
                              node_of_key (&sw_keys[i], design));
  }
  add_structured (object, design, group, in_file);
  add_unknown (object, in_file);
  return object;
}

JsonNode *
sw_design_to_json (const SwDesign *design)
{
  JsonObject *root = json_object_new ();

  json_object_set_int_member (root, "spirewright", SW_DESIGN_FILE_VERSION);
  for (guint i = 0; i < G_N_ELEMENTS (order); i++) {
    const SwKey *key = sw_key_find (order[i]);
    if (key != NULL)
      json_object_set_member (root, order[i], node_of_key (key, design));
    else if (strcmp (order[i], "held") == 0)
      json_object_set_member (root, "held", node_of_held (design));
    else
      json_object_set_object_member (
        root,
        order[i],
        object_of_group (design, order[i], member_of (design->extra, order[i])));
  }
  add_unknown (root, design->extra);
  JsonNode *node = json_node_init_object (json_node_alloc (), root);
  json_object_unref (root);
  return node;
}
