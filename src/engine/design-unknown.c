// SPDX-License-Identifier: GPL-3.0-or-later
/* design-unknown.c: what a file holds beyond the known keys, so that saving loses nothing. */
#include "engine/design-json.h"
#include "engine/design-keys.h"
#include "engine/json-value.h"

#include <string.h>

static gboolean
is_known (const char *path)
{
  return strcmp (path, "spirewright") == 0 || sw_design_is_structured (path) ||
         sw_key_find (path) != NULL;
}

static gboolean
is_group (const char *name)
{
  for (guint i = 0; i < sw_design_n_order; i++) {
    if (strcmp (sw_design_order[i], name) == 0)
      return !is_known (name);
  }
  return FALSE;
}

static JsonNode *
node_of (JsonObject *object)
{
  return json_node_init_object (json_node_alloc (), object);
}

/* Returns: (transfer full) (nullable): a point's azimuth and notes; NULL without notes. */
static JsonNode *
notes_of_point (JsonNode *point)
{
  g_autoptr (JsonObject) notes = json_object_new ();
  JsonObjectIter iter;
  const char *name;
  JsonNode *member;

  json_object_iter_init_ordered (&iter, json_node_get_object (point));
  while (json_object_iter_next_ordered (&iter, &name, &member)) {
    if (strcmp (name, "radius_m") != 0)
      json_object_set_member (notes, name, json_node_copy (member));
  }
  return json_object_get_size (notes) > 1 ? node_of (notes) : NULL;
}

static JsonNode *
notes_of_points (JsonNode *points)
{
  g_autoptr (JsonArray) list = json_array_new ();
  JsonArray *in_file = json_node_get_array (points);

  for (guint i = 0; i < json_array_get_length (in_file); i++) {
    JsonNode *notes = notes_of_point (json_array_get_element (in_file, i));
    if (notes != NULL)
      json_array_add_element (list, notes);
  }
  return json_array_get_length (list) == 0 ? NULL
                                           : json_node_init_array (json_node_alloc (), list);
}

/* Returns: (transfer full) (nullable). */
static JsonNode *
unknown_of_group (const char *group, JsonNode *node)
{
  g_autoptr (JsonObject) unknown = json_object_new ();
  JsonObjectIter iter;
  const char *name;
  JsonNode *member;

  json_object_iter_init_ordered (&iter, json_node_get_object (node));
  while (json_object_iter_next_ordered (&iter, &name, &member)) {
    g_autofree char *path = g_strdup_printf ("%s.%s", group, name);
    JsonNode *kept = NULL;
    if (strcmp (path, "as_built.ring_points") == 0)
      kept = notes_of_points (member);
    else if (!is_known (path))
      kept = json_node_copy (member);
    if (kept != NULL)
      json_object_set_member (unknown, name, kept);
  }
  return json_object_get_size (unknown) == 0 ? NULL : node_of (unknown);
}

JsonNode *
sw_design_unknown_keys (JsonNode *root)
{
  g_autoptr (JsonObject) unknown = json_object_new ();
  JsonObjectIter iter;
  const char *name;
  JsonNode *member;

  json_object_iter_init_ordered (&iter, json_node_get_object (root));
  while (json_object_iter_next_ordered (&iter, &name, &member)) {
    JsonNode *kept = NULL;
    if (is_group (name))
      kept = unknown_of_group (name, member);
    else if (!is_known (name))
      kept = json_node_copy (member);
    if (kept != NULL)
      json_object_set_member (unknown, name, kept);
  }
  if (json_object_get_size (unknown) == 0)
    return NULL;
  JsonNode *node = node_of (unknown);
  json_node_seal (node);
  return node;
}
