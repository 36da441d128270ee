// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/night-view.h"
#include "trees.h"

#include <string.h>

static cairo_surface_t *
picture (const SwSolution *solution, const char *scene, double time_s, gboolean day)
{
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, 300, 320);
  SwNight night = { scene, time_s, day };

  sw_night_view_draw (image, solution, &night);
  return image;
}

static gboolean
same (cairo_surface_t *a, cairo_surface_t *b)
{
  gsize length =
    (gsize) cairo_image_surface_get_stride (a) * cairo_image_surface_get_height (a);

  return memcmp (cairo_image_surface_get_data (a), cairo_image_surface_get_data (b), length) ==
         0;
}

static SwSolution *
lawn (void)
{
  g_autoptr (SwDesign) design = sw_start_new ("lawn", NULL);

  return tree_solve (design);
}

static void
test_the_same_moment_gives_the_same_bytes (void)
{
  g_autoptr (SwSolution) solution = lawn ();

  for (guint i = 0; sw_scenes[i] != NULL; i++) {
    cairo_surface_t *once = picture (solution, sw_scenes[i], 3.7, FALSE),
                    *again = picture (solution, sw_scenes[i], 3.7, FALSE);
    g_assert_true (same (once, again));
    cairo_surface_destroy (once);
    cairo_surface_destroy (again);
  }
}

static void
test_every_scene_moves_and_differs (void)
{
  g_autoptr (SwSolution) solution = lawn ();
  cairo_surface_t *first = picture (solution, sw_scenes[0], 0.5, FALSE);

  for (guint i = 0; sw_scenes[i] != NULL; i++) {
    cairo_surface_t *now = picture (solution, sw_scenes[i], 0.5, FALSE),
                    *later = picture (solution, sw_scenes[i], 2.9, FALSE);
    g_assert_false (same (now, later));
    g_assert_true (i == 0 || !same (now, first));
    cairo_surface_destroy (now);
    cairo_surface_destroy (later);
  }
  cairo_surface_destroy (first);
}

static guint64
brightness (cairo_surface_t *image)
{
  const guchar *data = cairo_image_surface_get_data (image);
  guint64 sum = 0;

  for (int y = 0; y < cairo_image_surface_get_height (image); y++) {
    const guint32 *row =
      (const guint32 *) (gconstpointer) (data +
                                         (gsize) y * cairo_image_surface_get_stride (image));
    for (int x = 0; x < cairo_image_surface_get_width (image); x++)
      sum += (row[x] >> 16 & 255) + (row[x] >> 8 & 255) + (row[x] & 255);
  }
  return sum;
}

static void
test_more_strips_are_brighter (void)
{
  g_autoptr (SwDesign) design = sw_start_new ("lawn", NULL);
  g_autoptr (SwSolution) few = tree_solve (design);
  g_autoptr (SwDesign) more = sw_design_copy (design);
  more->shape.strip_count = 40;
  g_autoptr (SwSolution) many = tree_solve (more);
  cairo_surface_t *dim = picture (few, "warm-white", 0, FALSE),
                  *bright = picture (many, "warm-white", 0, FALSE);

  g_assert_cmpuint (brightness (bright), >, brightness (dim));
  cairo_surface_destroy (dim);
  cairo_surface_destroy (bright);
}

static void
test_day_is_brighter_than_night (void)
{
  g_autoptr (SwSolution) solution = lawn ();
  cairo_surface_t *night = picture (solution, NULL, 0, FALSE),
                  *day = picture (solution, NULL, 0, TRUE);

  g_assert_cmpuint (brightness (day), >, 2 * brightness (night));
  cairo_surface_destroy (night);
  cairo_surface_destroy (day);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/drawing/night-view/the same moment gives the same bytes",
                   test_the_same_moment_gives_the_same_bytes);
  g_test_add_func ("/drawing/night-view/every scene moves and differs",
                   test_every_scene_moves_and_differs);
  g_test_add_func ("/drawing/night-view/more strips are brighter",
                   test_more_strips_are_brighter);
  g_test_add_func ("/drawing/night-view/day is brighter than night",
                   test_day_is_brighter_than_night);
  return g_test_run ();
}
