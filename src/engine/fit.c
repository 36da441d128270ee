// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/fit.h"

#include "engine/cone.h"
#include "engine/design-keys.h"
#include "engine/error.h"

#include <math.h>

/* A tail counts as the least allowed when it misses by no more than rounding. */
#define ROUNDING_M 1e-12

static const char *const tail_paths[] = {
  [SW_GIVES_TAIL] = NULL,
  [SW_GIVES_CROWN_HEIGHT] = "shape.crown_height_m",
  [SW_GIVES_RING_RADIUS] = "shape.ring_radius_m",
  [SW_GIVES_PIXELS] = "strip.pixels",
  [SW_GIVES_PITCH] = "strip.pitch_m",
  [SW_GIVES_LEAD] = "strip.lead_m",
};

static const char *const spacing_paths[] = {
  [SW_FIT_RING_RADIUS] = "shape.ring_radius_m",
  [SW_FIT_STRIP_COUNT] = "shape.strip_count",
  [SW_FIT_COVERAGE] = "shape.coverage_deg",
};

static double
tail_m (const SwDesign *design)
{
  SwCone cone;

  sw_cone_init (&cone, design);
  return cone.tail_m;
}

/* The slant that leaves exactly the least gap at the tie. */
static double
slant_wanted_m (const SwDesign *design)
{
  const SwStrip *strip = &design->strip;

  return strip->lead_m + (strip->pixels - 1) * strip->pitch_m + strip->tail_min_m;
}

static gboolean
no_solution (GError **error, const char *path, const char *why)
{
  g_set_error (error, SW_ERROR, SW_ERROR_NO_SOLUTION, "%s: %s", path, why);
  return FALSE;
}

static gboolean
crown_height (const SwDesign *design, double *value, GError **error)
{
  const SwShape *shape = &design->shape;
  double slant = slant_wanted_m (design);
  double out = shape->ring_radius_m - shape->crown_radius_m;

  if (slant < fabs (out))
    return no_solution (
      error,
      tail_paths[SW_GIVES_CROWN_HEIGHT],
      "the strip is shorter than the ring is far from the crown, whatever the height");
  *value = shape->ring_height_m + sqrt ((slant - fabs (out)) * (slant + fabs (out)));
  return TRUE;
}

static gboolean
ring_radius (const SwDesign *design, double *value, GError **error)
{
  const SwShape *shape = &design->shape;
  double slant = slant_wanted_m (design);
  double up = shape->crown_height_m - shape->ring_height_m;

  if (slant < up)
    return no_solution (
      error,
      tail_paths[SW_GIVES_RING_RADIUS],
      "the strip does not reach down from crown to ring, whatever the radius");
  *value = shape->crown_radius_m + sqrt ((slant - up) * (slant + up));
  return TRUE;
}

static gboolean
pixels (const SwDesign *design, double *value, GError **error)
{
  g_autoptr (SwDesign) trial = sw_design_copy (design);
  const SwKey *key = sw_key_find (tail_paths[SW_GIVES_PIXELS]);
  double room = tail_m (design) + (design->strip.pixels - 1) * design->strip.pitch_m -
                design->strip.tail_min_m;
  double count =
    floor (room / design->strip.pitch_m) + 2; /* one too many: rounding may have hidden it */

  for (count = MIN (count, key->high); count >= 1; count--) {
    trial->strip.pixels = (int) count;
    if (tail_m (trial) >= design->strip.tail_min_m - ROUNDING_M) {
      *value = count;
      return TRUE;
    }
  }
  return no_solution (error, key->path, "not even one pixel fits between hook and tie");
}

static gboolean
pitch (const SwDesign *design, double *value, GError **error)
{
  const SwStrip *strip = &design->strip;

  if (strip->pixels < 2)
    return no_solution (error,
                        tail_paths[SW_GIVES_PITCH],
                        "a strip of one pixel has no pitch to move");
  *value = (tail_m (design) + (strip->pixels - 1) * strip->pitch_m - strip->tail_min_m) /
           (strip->pixels - 1);
  return TRUE;
}

static gboolean
lead (const SwDesign *design, double *value, GError **error)
{
  *value = tail_m (design) + design->strip.lead_m - design->strip.tail_min_m;
  return TRUE;
}

typedef gboolean (*Solve) (const SwDesign *design, double *value, GError **error);

static const Solve solve_tail[] = {
  [SW_GIVES_CROWN_HEIGHT] = crown_height,
  [SW_GIVES_RING_RADIUS] = ring_radius,
  [SW_GIVES_PIXELS] = pixels,
  [SW_GIVES_PITCH] = pitch,
  [SW_GIVES_LEAD] = lead,
};

static gboolean
refuse_held (const SwDesign *design, const char *path, GError **error)
{
  if (!sw_design_holds (design, path))
    return TRUE;
  return no_solution (error,
                      path,
                      "locked, so it can't move; free it or move another quantity");
}

/* A new design with the value under the key; out of range means no solution. */
static SwDesign *
with_value (const SwDesign *design, const char *path, double value, GError **error)
{
  g_autoptr (SwDesign) moved = sw_design_copy (design);
  g_autoptr (GError) problem = NULL;

  if (sw_key_set_number (sw_key_find (path), moved, value, &problem) &&
      sw_design_check (moved, &problem))
    return g_steal_pointer (&moved);
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_NO_SOLUTION,
               "%s, so nothing inside the range fits",
               problem->message);
  return NULL;
}

/* The closed forms lose a few last bits; one step on the true tail brings them back. */
static SwDesign *
polished (SwDesign *design, SwGives quantity)
{
  const SwKey *key = sw_key_find (tail_paths[quantity]);
  double miss = tail_m (design) - design->strip.tail_min_m;
  double value = sw_key_get_number (key, design);
  SwCone cone;
  double slope;

  sw_cone_init (&cone, design);
  if (quantity == SW_GIVES_CROWN_HEIGHT)
    slope = (design->shape.crown_height_m - design->shape.ring_height_m) / cone.slant_m;
  else if (quantity == SW_GIVES_RING_RADIUS)
    slope = (design->shape.ring_radius_m - design->shape.crown_radius_m) / cone.slant_m;
  else if (quantity == SW_GIVES_PITCH)
    slope = -(design->strip.pixels - 1);
  else
    slope = -1;
  if (quantity == SW_GIVES_PIXELS || fabs (slope) < 1e-3)
    return design;
  g_autoptr (SwDesign) better = sw_design_copy (design);
  if (!sw_key_set_number (key, better, value - miss / slope, NULL) ||
      !sw_design_check (better, NULL) ||
      fabs (tail_m (better) - design->strip.tail_min_m) >= fabs (miss))
    return design;
  sw_design_unref (design);
  return g_steal_pointer (&better);
}

SwDesign *
sw_fit_tail (const SwDesign *design, SwGives quantity, GError **error)
{
  const char *path = tail_paths[quantity];
  double value;
  SwDesign *fitted;

  if (path == NULL) {
    no_solution (error, "gives_way", "tail is what is left over, another quantity must move");
    return NULL;
  }
  if (!refuse_held (design, path, error) || !solve_tail[quantity](design, &value, error))
    return NULL;
  fitted = with_value (design, path, value, error);
  return fitted == NULL ? NULL : polished (fitted, quantity);
}

static double
gaps_of (const SwShape *shape)
{
  return shape->coverage_deg >= 360 ? shape->strip_count : shape->strip_count - 1;
}

/* The count whose spacing is nearest; a closed tree has as many gaps as strips. */
static gboolean
strip_count (const SwDesign *design, double spacing_m, double *value, GError **error)
{
  const SwShape *shape = &design->shape;
  double gaps = shape->ring_radius_m * (shape->coverage_deg * G_PI / 180) / spacing_m;

  *value = round (gaps) + (shape->coverage_deg >= 360 ? 0 : 1);
  return TRUE;
}

static gboolean
radius_for_spacing (const SwDesign *design, double spacing_m, double *value, GError **error)
{
  *value = spacing_m * gaps_of (&design->shape) / (design->shape.coverage_deg * G_PI / 180);
  return TRUE;
}

/* With N strips the open tree has N − 1 gaps. At 360° the two ends would be one place: no such
 * tree. */
static gboolean
coverage (const SwDesign *design, double spacing_m, double *value, GError **error)
{
  const SwShape *shape = &design->shape;
  double closed_m = 2 * G_PI * shape->ring_radius_m / shape->strip_count;

  if (fabs (closed_m - spacing_m) <= ROUNDING_M) {
    *value = 360; /* closed: as many gaps as strips */
    return TRUE;
  }
  *value = spacing_m * (shape->strip_count - 1) / shape->ring_radius_m * 180 / G_PI;
  if (*value >= 360)
    return no_solution (
      error,
      spacing_paths[SW_FIT_COVERAGE],
      "so many strips at that spacing go more than once round, below 360 is allowed");
  return TRUE;
}

typedef gboolean (*SolveSpacing) (const SwDesign *design,
                                  double spacing_m,
                                  double *value,
                                  GError **error);

static const SolveSpacing solve_spacing[] = {
  [SW_FIT_RING_RADIUS] = radius_for_spacing,
  [SW_FIT_STRIP_COUNT] = strip_count,
  [SW_FIT_COVERAGE] = coverage,
};

SwDesign *
sw_fit_spacing (const SwDesign *design, SwFitSpacing quantity, double spacing_m, GError **error)
{
  const char *path = spacing_paths[quantity];
  double value;

  if (!(spacing_m > 0) || !isfinite (spacing_m)) {
    no_solution (error, "geometry.spacing_ring_m", "a spacing must be above 0");
    return NULL;
  }
  if (!refuse_held (design, path, error) ||
      !solve_spacing[quantity](design, spacing_m, &value, error))
    return NULL;
  return with_value (design, path, value, error);
}
