// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/edit.h"

#include "engine/cone.h"
#include "engine/design-keys.h"
#include "engine/error.h"
#include "engine/fit.h"

#include <math.h>
#include <string.h>

/* The keys on which the gap at the tie depends. */
static const char *const fit_paths[] = {
  "shape.crown_height_m", "shape.ring_height_m", "shape.crown_radius_m",
  "shape.ring_radius_m",  "strip.pixels",        "strip.pitch_m",
  "strip.lead_m",         "strip.tail_min_m",    "gives_way",
};

static const char *const gives_paths[] = {
  [SW_GIVES_TAIL] = NULL,
  [SW_GIVES_CROWN_HEIGHT] = "shape.crown_height_m",
  [SW_GIVES_RING_RADIUS] = "shape.ring_radius_m",
  [SW_GIVES_PIXELS] = "strip.pixels",
  [SW_GIVES_PITCH] = "strip.pitch_m",
  [SW_GIVES_LEAD] = "strip.lead_m",
};

static gboolean
moves_fit (const char *path)
{
  for (guint i = 0; i < G_N_ELEMENTS (fit_paths); i++) {
    if (strcmp (fit_paths[i], path) == 0)
      return TRUE;
  }
  return FALSE;
}

/* Ends below a strict bound stop one step of double short of it. */
static double
below (double bound)
{
  return nextafter (bound, -INFINITY);
}

void
sw_edit_limits (const SwDesign *design, const char *path, double *low, double *high)
{
  const SwKey *key = sw_key_find (path);
  const SwShape *shape = &design->shape;

  g_return_if_fail (key != NULL);
  *low = key->low;
  *high = key->high;
  if (strcmp (path, "shape.crown_height_m") == 0)
    *low = MAX (*low, shape->ring_height_m + 0.2);
  if (strcmp (path, "shape.ring_height_m") == 0)
    *high = MIN (*high, shape->crown_height_m - 0.2);
  if (strcmp (path, "shape.crown_radius_m") == 0 && design->crown.hook_reach_m >= *low)
    *low = nextafter (design->crown.hook_reach_m, INFINITY);
  if (strcmp (path, "crown.hook_reach_m") == 0)
    *high = MIN (*high, below (shape->crown_radius_m));
}

static gboolean
refuse_held (const SwDesign *design, const char *path, GError **error)
{
  if (!sw_design_holds (design, path))
    return TRUE;
  g_set_error (error, SW_ERROR, SW_ERROR_RANGE, "%s: locked", path);
  return FALSE;
}

/* What gives way moves; when it is the very thing that was edited, or locked, the gap takes the
 * difference. */
static SwDesign *
settled (SwDesign *design, const char *edited, GError **error)
{
  const char *path = gives_paths[design->gives_way];
  SwDesign *fitted;

  if (path == NULL || strcmp (path, edited) == 0 || !moves_fit (edited) ||
      sw_design_holds (design, path))
    return design;
  fitted = sw_fit_tail (design, design->gives_way, error);
  sw_design_unref (design);
  return fitted;
}

/* Spacing is no key: the first of radius, coverage and count that may move takes it. */
static SwDesign *
edit_spacing (const SwDesign *design, double spacing_m, GError **error)
{
  const SwShape *shape = &design->shape;
  gboolean open = shape->coverage_deg < 360;
  double gaps = open ? shape->strip_count - 1 : shape->strip_count;
  double spacing = CLAMP (spacing_m, 1e-3, 100);

  if (!sw_design_holds (design, "shape.ring_radius_m"))
    return sw_edit_number (design,
                           "shape.ring_radius_m",
                           spacing * gaps / (shape->coverage_deg * G_PI / 180),
                           error);
  if (open && !sw_design_holds (design, "shape.coverage_deg"))
    return sw_edit_number (
      design,
      "shape.coverage_deg",
      MIN (spacing * gaps / shape->ring_radius_m * 180 / G_PI, below (360)),
      error);
  gaps = round (shape->ring_radius_m * (shape->coverage_deg * G_PI / 180) / spacing);
  return sw_edit_number (design, "shape.strip_count", open ? gaps + 1 : gaps, error);
}

SwDesign *
sw_edit_number (const SwDesign *design, const char *path, double value, GError **error)
{
  const SwKey *key = sw_key_find (path);
  double low, high;

  if (strcmp (path, SW_EDIT_SPACING) == 0)
    return edit_spacing (design, value, error);
  if (key == NULL || key->type == SW_KEY_TEXT || key->type == SW_KEY_ID) {
    g_set_error (error, SW_ERROR, SW_ERROR_UNKNOWN_KEY, "%s: no such number", path);
    return NULL;
  }
  if (isnan (value)) {
    g_set_error (error, SW_ERROR, SW_ERROR_RANGE, "%s: not a number", path);
    return NULL;
  }
  if (!refuse_held (design, path, error))
    return NULL;
  sw_edit_limits (design, path, &low, &high);
  if (key->type != SW_KEY_NUMBER)
    value = round (value);
  g_autoptr (SwDesign) edited = sw_design_copy (design);
  if (!sw_key_set_number (key, edited, CLAMP (value, low, high), error) ||
      !sw_design_check (edited, error))
    return NULL;
  return settled (g_steal_pointer (&edited), path, error);
}

SwDesign *
sw_edit_text (const SwDesign *design, const char *path, const char *value, GError **error)
{
  const SwKey *key = sw_key_find (path);

  if (key == NULL) {
    g_set_error (error, SW_ERROR, SW_ERROR_UNKNOWN_KEY, "%s: no such key", path);
    return NULL;
  }
  if (!refuse_held (design, path, error))
    return NULL;
  g_autoptr (SwDesign) edited = sw_design_copy (design);
  if (!sw_key_set_from_words (edited, path, value, error) || !sw_design_check (edited, error))
    return NULL;
  return settled (g_steal_pointer (&edited), path, error);
}

SwDesign *
sw_edit_hold (const SwDesign *design, const char *path, gboolean hold)
{
  SwDesign *edited = sw_design_copy (design);
  guint index;

  if (g_ptr_array_find_with_equal_func (edited->held, path, g_str_equal, &index)) {
    if (!hold)
      g_ptr_array_remove_index (edited->held, index);
  } else if (hold) {
    g_ptr_array_add (edited->held, g_strdup (path));
  }
  return edited;
}
