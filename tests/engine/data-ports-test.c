// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/data-ports.h"

/* Pixels whose frame fits: whole pixels of bits at 1.25 µs in what a frame leaves beside the
 * pause. Figures worked by hand from the chips' published bit time and pause; the 1 024 pixels
 * at 30 frames a second that data sheets promise are below them.
 */
static const struct {
  int bits;
  double reset_us, frame_hz;
  int pixels;
} timing[] = {
  { 24, 50, 20, 1665 }, { 24, 50, 25, 1331 },  { 24, 50, 30, 1109 },  { 24, 50, 40, 831 },
  { 24, 50, 60, 553 },  { 24, 300, 20, 1656 }, { 24, 300, 25, 1323 }, { 24, 300, 30, 1101 },
  { 24, 300, 40, 823 }, { 24, 300, 60, 545 },  { 32, 300, 20, 1242 }, { 32, 300, 25, 992 },
  { 32, 300, 30, 825 }, { 32, 300, 40, 617 },  { 32, 300, 60, 409 },  { 32, 50, 20, 1248 },
  { 32, 50, 25, 998 },  { 32, 50, 30, 832 },   { 32, 50, 40, 623 },   { 32, 50, 60, 415 },
};

static void
test_frames_that_fit (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (timing); i++) {
    g_autoptr (SwDesign) design = sw_design_new ();
    SwDataPlan plan;
    design->data.bits_per_pixel = timing[i].bits;
    design->data.reset_us = timing[i].reset_us;
    design->data.frame_hz = timing[i].frame_hz;
    sw_data_plan_init (&plan, design);
    g_assert_cmpint (plan.port_pixels_max, ==, timing[i].pixels);
    sw_data_plan_clear (&plan);
  }
}

/* 512 pixels of 24 bits at 2.5 µs take 30.72 ms, 32.552083 frames a second: a published refresh
 * table for LED strings. */
static void
test_a_frame_that_fits_exactly_fits (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  SwDataPlan plan;

  design->data.bit_rate_hz = 400000;
  design->data.reset_us = 0;
  design->data.frame_hz = 1 / (512 * 24 * 2.5e-6);
  g_assert_cmpfloat_with_epsilon (design->data.frame_hz, 32.552083, 1e-6);
  sw_data_plan_init (&plan, design);
  g_assert_cmpint (plan.port_pixels_max, ==, 512);
  sw_data_plan_clear (&plan);
}

static SwDesign *
sixteen_by_fifty (void)
{
  SwDesign *design = sw_design_new ();

  design->shape.strip_count = 16;
  design->strip.pixels = 50;
  design->topper.kind = SW_TOPPER_NONE;
  return design;
}

/* By hand: 823 pixels a port hold 16 strips of 50; 800 pixels of 170 are 5 universes. Three
 * whole strips a universe make 6. */
static void
test_whole_strips_fill_ports (void)
{
  g_autoptr (SwDesign) design = sixteen_by_fifty ();
  SwDataPlan plan;

  sw_data_plan_init (&plan, design);
  g_assert_cmpint (plan.ports, ==, 1);
  g_assert_cmpint (plan.universes, ==, 5);
  sw_data_plan_clear (&plan);
  design->data.strips_per_port_max = 3;
  sw_data_plan_init (&plan, design);
  g_assert_cmpint (plan.ports, ==, 6);
  g_assert_cmpint (plan.universes, ==, 6);
  g_assert_cmpint (g_array_index (plan.rows, SwPort, 5).first_strip, ==, 16);
  g_assert_cmpint (g_array_index (plan.rows, SwPort, 5).pixels, ==, 50);
  sw_data_plan_clear (&plan);
}

static void
test_the_star_has_a_port_of_its_own (void)
{
  g_autoptr (SwDesign) design = sixteen_by_fifty ();
  SwDataPlan plan;

  design->topper.kind = SW_TOPPER_STAR;
  design->topper.pixels = 200;
  sw_data_plan_init (&plan, design);
  g_assert_cmpint (plan.ports, ==, 2);
  g_assert_cmpint (plan.universes, ==, 7);
  const SwPort *star = &g_array_index (plan.rows, SwPort, 1);
  g_assert_cmpint (star->first_strip + star->last_strip, ==, 0);
  g_assert_cmpint (star->first_universe, ==, 6);
  g_assert_cmpint (star->last_universe, ==, 7);
  g_assert_cmpint (sw_data_address (&plan, design, 0, 171).universe, ==, 7);
  g_assert_cmpint (sw_data_address (&plan, design, 0, 171).channel, ==, 1);
  sw_data_plan_clear (&plan);
}

static void
test_skipped_pixels_take_channels (void)
{
  g_autoptr (SwDesign) design = sixteen_by_fifty ();
  SwDataPlan plan;

  design->data.skipped_pixels = 2;
  design->data.port_pixels_max = 101; /* 2 skipped and one strip, not two */
  sw_data_plan_init (&plan, design);
  g_assert_cmpint (plan.strips_per_port, ==, 1);
  g_assert_cmpint (plan.ports, ==, 16);
  g_assert_cmpint (sw_data_address (&plan, design, 1, 1).channel, ==, 7);
  g_assert_cmpint (sw_data_address (&plan, design, 2, 1).channel, ==, 7);
  g_assert_cmpint (sw_data_address (&plan, design, 2, 1).universe, ==, 2);
  sw_data_plan_clear (&plan);
}

/* ANSI E1.31: 512 slots a universe, so 170 pixels of three colours (510) and 128 of four. */
static void
test_no_pixel_is_split (void)
{
  g_autoptr (SwDesign) design = sixteen_by_fifty ();
  SwDataPlan plan;

  sw_data_plan_init (&plan, design);
  SwAddress last = sw_data_address (&plan, design, 4, 20); /* pixel 170 of the port */
  SwAddress next = sw_data_address (&plan, design, 4, 21);
  g_assert_cmpint (last.universe, ==, 1);
  g_assert_cmpint (last.channel, ==, 508);
  g_assert_cmpint (next.universe, ==, 2);
  g_assert_cmpint (next.channel, ==, 1);
  g_assert_false (plan.universe_overfull);
  sw_data_plan_clear (&plan);
  design->data.bits_per_pixel = 32;
  sw_data_plan_init (&plan, design);
  g_assert_true (plan.universe_overfull);
  sw_data_plan_clear (&plan);
  design->data.pixels_per_universe = 128;
  sw_data_plan_init (&plan, design);
  g_assert_false (plan.universe_overfull);
  sw_data_plan_clear (&plan);
}

static void
test_too_long_strips_get_a_port_each (void)
{
  g_autoptr (SwDesign) design = sixteen_by_fifty ();
  SwDataPlan plan;

  design->data.port_pixels_max = 49;
  sw_data_plan_init (&plan, design);
  g_assert_true (plan.strip_too_long);
  g_assert_cmpint (plan.ports, ==, 16);
  sw_data_plan_clear (&plan);
}

static void
test_universes_end_at_63999 (void)
{
  g_autoptr (SwDesign) design = sixteen_by_fifty ();
  SwDataPlan plan;

  design->data.first_universe = 63995;
  sw_data_plan_init (&plan, design);
  g_assert_false (plan.universe_beyond);
  sw_data_plan_clear (&plan);
  design->data.first_universe = 63996;
  sw_data_plan_init (&plan, design);
  g_assert_true (plan.universe_beyond);
  sw_data_plan_clear (&plan);
}

static void
test_up_one_down_the_next_begins_anew_on_each_port (void)
{
  g_autoptr (SwDesign) design = sixteen_by_fifty ();
  SwDataPlan plan;

  design->data.path = SW_PATH_UP_DOWN;
  design->data.strips_per_port_max = 3;
  sw_data_plan_init (&plan, design);
  g_assert_true (sw_data_runs_up (&plan, design, 1));
  g_assert_false (sw_data_runs_up (&plan, design, 2));
  g_assert_true (sw_data_runs_up (&plan, design, 3));
  g_assert_true (sw_data_runs_up (&plan, design, 4)); /* first on port 2 */
  design->data.enter = SW_ENTER_CROWN;
  g_assert_false (sw_data_runs_up (&plan, design, 4));
  g_assert_true (sw_data_runs_up (&plan, design, 5));
  sw_data_plan_clear (&plan);
}

/* No two pixels share a channel, whatever the limits. */
static void
test_every_pixel_has_channels_of_its_own (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (11);

  for (int i = 0; i < 30; i++) {
    g_autoptr (SwDesign) design = sw_design_new ();
    g_autoptr (GHashTable) seen = g_hash_table_new (NULL, NULL);
    SwDataPlan plan;
    design->shape.strip_count = g_rand_int_range (rand, 2, 30);
    design->strip.pixels = g_rand_int_range (rand, 1, 120);
    design->data.strips_per_port_max = g_rand_int_range (rand, 0, 5);
    design->data.skipped_pixels = g_rand_int_range (rand, 0, 3);
    design->data.pixels_per_universe = g_rand_int_range (rand, 1, 171);
    sw_data_plan_init (&plan, design);
    for (int strip = 0; strip <= design->shape.strip_count; strip++) {
      for (int pixel = 1; pixel <= (strip == 0 ? design->topper.pixels : design->strip.pixels);
           pixel++) {
        SwAddress at = sw_data_address (&plan, design, strip, pixel);
        g_assert_true (
          g_hash_table_add (seen, GINT_TO_POINTER (at.universe * 1000 + at.channel)));
        g_assert_cmpint (at.channel + 2, <=, 512);
      }
    }
    sw_data_plan_clear (&plan);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/data-ports/frames that fit", test_frames_that_fit);
  g_test_add_func ("/engine/data-ports/a frame that fits exactly fits",
                   test_a_frame_that_fits_exactly_fits);
  g_test_add_func ("/engine/data-ports/whole strips fill ports", test_whole_strips_fill_ports);
  g_test_add_func ("/engine/data-ports/the star has a port of its own",
                   test_the_star_has_a_port_of_its_own);
  g_test_add_func ("/engine/data-ports/skipped pixels take channels",
                   test_skipped_pixels_take_channels);
  g_test_add_func ("/engine/data-ports/no pixel is split", test_no_pixel_is_split);
  g_test_add_func ("/engine/data-ports/too long strips get a port each",
                   test_too_long_strips_get_a_port_each);
  g_test_add_func ("/engine/data-ports/universes end at 63999", test_universes_end_at_63999);
  g_test_add_func ("/engine/data-ports/up one, down the next begins anew on each port",
                   test_up_one_down_the_next_begins_anew_on_each_port);
  g_test_add_func ("/engine/data-ports/every pixel has channels of its own",
                   test_every_pixel_has_channels_of_its_own);
  return g_test_run ();
}
