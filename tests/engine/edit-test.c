// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cone.h"
#include "engine/design-keys.h"
#include "engine/edit.h"
#include "engine/error.h"

#include <math.h>

static double
tail_m (const SwDesign *design)
{
  SwCone cone;
  sw_cone_init (&cone, design);
  return cone.tail_m;
}

static void
test_the_gap_takes_the_difference (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwDesign) taller = sw_edit_number (design, "shape.crown_height_m", 3.0, NULL);

  g_assert_cmpfloat_with_epsilon (taller->shape.crown_height_m, 3.0, 1e-15);
  g_assert_cmpint (taller->strip.pixels, ==, design->strip.pixels);
  g_assert_cmpfloat (tail_m (taller), >, tail_m (design));
}

static void
test_what_gives_way_moves (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->gives_way = SW_GIVES_RING_RADIUS;
  g_autoptr (SwDesign) taller = sw_edit_number (design, "shape.crown_height_m", 2.9, NULL);
  g_assert_cmpfloat_with_epsilon (tail_m (taller), design->strip.tail_min_m, 1e-14);
  g_assert_cmpfloat_with_epsilon (taller->shape.crown_height_m, 2.9, 1e-15);
}

static void
test_a_locked_key_refuses (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwDesign) locked = sw_edit_hold (design, "shape.ring_radius_m", TRUE);
  g_autoptr (GError) error = NULL;

  g_assert_null (sw_edit_number (locked, "shape.ring_radius_m", 1.2, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_RANGE);
  g_assert_nonnull (g_strrstr (error->message, "locked"));
  g_autoptr (SwDesign) freed = sw_edit_hold (locked, "shape.ring_radius_m", FALSE);
  g_assert_true (sw_design_equal (freed, design));
}

/* A locked quantity does not give way either: the gap takes it. */
static void
test_a_locked_quantity_does_not_give_way (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwDesign) locked = sw_edit_hold (design, "shape.ring_radius_m", TRUE);

  locked->gives_way = SW_GIVES_RING_RADIUS;
  g_autoptr (SwDesign) taller = sw_edit_number (locked, "shape.crown_height_m", 2.9, NULL);
  g_assert_cmpfloat_with_epsilon (taller->shape.ring_radius_m, 1.0, 1e-15);
}

static void
test_what_cannot_give_way_refuses (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (GError) error = NULL;

  design->gives_way = SW_GIVES_RING_RADIUS;
  g_assert_null (sw_edit_number (design, "shape.crown_height_m", 9, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_NO_SOLUTION);
  g_assert_nonnull (g_strrstr (error->message, "shape.ring_radius_m"));
}

static void
test_limits_are_what_an_edit_takes (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->crown.hook_reach_m = 0.05;
  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    double low, high;
    if (key->type == SW_KEY_TEXT || key->type == SW_KEY_ID ||
        g_str_equal (key->path, "data.bits_per_pixel"))
      continue;
    sw_edit_limits (design, key->path, &low, &high);
    g_autoptr (SwDesign) least = sw_edit_number (design, key->path, -1e9, NULL);
    g_autoptr (SwDesign) most = sw_edit_number (design, key->path, 1e12, NULL);
    g_assert_nonnull (least);
    g_assert_nonnull (most);
    g_assert_cmpfloat_with_epsilon (sw_key_get_number (key, least), low, 1e-12);
    g_assert_cmpfloat_with_epsilon (sw_key_get_number (key, most), high, 1e-12);
  }
}

static void
test_spacing_moves_the_first_that_may (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (SwDesign) wide = sw_edit_number (design, SW_EDIT_SPACING, 0.4, NULL);
  g_autoptr (SwDesign) locked = sw_edit_hold (design, "shape.ring_radius_m", TRUE);
  g_autoptr (SwDesign) fewer = sw_edit_number (locked, SW_EDIT_SPACING, 0.4, NULL);
  SwCone cone;

  sw_cone_init (&cone, wide);
  g_assert_cmpfloat_with_epsilon (cone.spacing_ring_m, 0.4, 1e-14);
  g_assert_cmpint (fewer->shape.strip_count, ==, 16);
}

static void
test_not_a_number_is_refused (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  g_assert_null (sw_edit_number (design, "shape.crown_height_m", NAN, NULL));
  g_assert_null (sw_edit_number (design, "shape.colour", 1, NULL));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/edit/the gap takes the difference",
                   test_the_gap_takes_the_difference);
  g_test_add_func ("/engine/edit/what gives way moves", test_what_gives_way_moves);
  g_test_add_func ("/engine/edit/a locked key refuses", test_a_locked_key_refuses);
  g_test_add_func ("/engine/edit/a locked quantity does not give way",
                   test_a_locked_quantity_does_not_give_way);
  g_test_add_func ("/engine/edit/what cannot give way refuses",
                   test_what_cannot_give_way_refuses);
  g_test_add_func ("/engine/edit/limits are what an edit takes",
                   test_limits_are_what_an_edit_takes);
  g_test_add_func ("/engine/edit/spacing moves the first that may",
                   test_spacing_moves_the_first_that_may);
  g_test_add_func ("/engine/edit/not a number is refused", test_not_a_number_is_refused);
  return g_test_run ();
}
