// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-json.h"

#include "engine/design-file.h"
#include "engine/design-keys.h"
#include "engine/json-value.h"

#include <math.h>
#include <string.h>

const char *const sw_design_order[] = {
  "title", "units", "shape", "strip",     "crown", "topper", "stand",    "guys",
  "site",  "power", "data",  "gives_way", "held",  "prices", "as_built", "catalogue",
};
const guint sw_design_n_order = G_N_ELEMENTS (sw_design_order);

static gboolean
wrong_type (const SwKey *key, JsonNode *node, GError **error)
{
  static const char *const wanted[] = {
    [SW_KEY_NUMBER] = "is not a number,",
    [SW_KEY_WHOLE] = "is not a whole number,",
    [SW_KEY_FLAG] = "is not one of",
    [SW_KEY_CHOICE] = "is not one of",
    [SW_KEY_TEXT] = "is not",
    [SW_KEY_ID] = "is not",
  };
  g_autofree char *allowed = sw_key_allowed (key);
  g_autofree char *what = g_strdup_printf ("%s %s", wanted[key->type], allowed);

  return sw_json_refuse (error, SW_ERROR_TYPE, key->path, node, what);
}

static gboolean
read_key (const SwKey *key, SwDesign *design, JsonNode *node, GError **error)
{
  double number;

  switch (key->type) {
  case SW_KEY_NUMBER:
  case SW_KEY_WHOLE:
    return sw_json_get_number (node, &number) ? sw_key_set_number (key, design, number, error)
                                              : wrong_type (key, node, error);
  case SW_KEY_FLAG:
    return sw_json_holds (node, G_TYPE_BOOLEAN)
             ? sw_key_set_number (key, design, json_node_get_boolean (node), error)
             : wrong_type (key, node, error);
  case SW_KEY_CHOICE:
  case SW_KEY_TEXT:
  case SW_KEY_ID:
    return sw_json_holds (node, G_TYPE_STRING)
             ? sw_key_set_text (key, design, json_node_get_string (node), error)
             : wrong_type (key, node, error);
  }
  g_return_val_if_reached (FALSE);
}

/* A version that a later program wrote is told apart from one that never was. */
static gboolean
read_version (JsonNode *root, GError **error)
{
  JsonNode *node = sw_json_member (root, "spirewright");
  double version = SW_DESIGN_FILE_VERSION;

  if (node == NULL)
    return TRUE;
  if (!sw_json_get_number (node, &version) || !(version >= 1) || floor (version) < version)
    return sw_json_refuse (error,
                           SW_ERROR_RANGE,
                           "spirewright",
                           node,
                           "is no version of the format, 1 is allowed");
  return version <= SW_DESIGN_FILE_VERSION ||
         sw_json_refuse (error,
                         SW_ERROR_VERSION,
                         "spirewright",
                         node,
                         "is the format of a newer Spirewright, this one reads up to 1");
}

/* The known groups must be objects, whatever they hold. */
static gboolean
check_groups (JsonNode *root, GError **error)
{
  for (guint i = 0; i < sw_design_n_order; i++) {
    const char *name = sw_design_order[i];
    JsonNode *node = sw_json_member (root, name);
    gboolean group = sw_key_find (name) == NULL && !sw_design_is_structured (name);
    if (group && node != NULL && !JSON_NODE_HOLDS_OBJECT (node))
      return sw_json_refuse (error, SW_ERROR_TYPE, name, node, "is not an object of keys");
  }
  return TRUE;
}

/* Returns: (nullable): the node of "group.name" or "name". */
static JsonNode *
find_node (JsonNode *root, const char *path)
{
  const char *dot = strchr (path, '.');

  if (dot == NULL)
    return sw_json_member (root, path);
  g_autofree char *group = g_strndup (path, (gsize) (dot - path));
  return sw_json_member (sw_json_member (root, group), dot + 1);
}

static gboolean
read_keys (SwDesign *design, JsonNode *root, GError **error)
{
  for (guint i = 0; i < sw_n_keys (); i++) {
    JsonNode *node = find_node (root, sw_key_at (i)->path);
    if (node != NULL && !read_key (sw_key_at (i), design, node, error))
      return FALSE;
  }
  return TRUE;
}

static gboolean
read_structured (SwDesign *design, JsonNode *root, GError **error)
{
  static const char *const paths[] = {
    "held", "prices.override", "prices.have", "as_built.ring_points", "catalogue",
  };

  for (guint i = 0; i < G_N_ELEMENTS (paths); i++) {
    JsonNode *node = find_node (root, paths[i]);
    if (node != NULL && !sw_design_set_structured (design, paths[i], node, error))
      return FALSE;
  }
  return TRUE;
}

SwDesign *
sw_design_from_json (JsonNode *root, GError **error)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  if (!JSON_NODE_HOLDS_OBJECT (root)) {
    sw_json_refuse (error, SW_ERROR_TYPE, "design", root, "is not one JSON object");
    return NULL;
  }
  if (!read_version (root, error) || !check_groups (root, error) ||
      !read_keys (design, root, error) || !read_structured (design, root, error) ||
      !sw_design_check (design, error))
    return NULL;
  design->extra = sw_design_unknown_keys (root);
  return g_steal_pointer (&design);
}
