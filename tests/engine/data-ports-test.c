// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/data-ports.h"

/* 16 strips of 50 pixels, no star, ports as the keys start: 24 bits at 800 kbit/s, 40 Hz. */
static SwDesign *
plain_design (void)
{
  SwDesign *design = sw_design_new ();

  design->shape.strip_count = 16;
  design->strip.pixels = 50;
  design->topper.kind = SW_TOPPER_NONE;
  return design;
}

static SwDataPlan
plan_of (const SwDesign *design)
{
  SwDataPlan plan;

  sw_data_plan_init (&plan, design);
  return plan;
}

static int
port_pixels (const SwDesign *design)
{
  SwDataPlan plan = plan_of (design);
  int pixels = plan.port_pixels_max;

  sw_data_plan_clear (&plan);
  return pixels;
}

static const SwPort *
row (const SwDataPlan *plan, guint i)
{
  g_assert_cmpuint (i, <, plan->rows->len);
  return &g_array_index (plan->rows, SwPort, i);
}

static void
assert_row (const SwDataPlan *plan, guint i, SwPort wanted)
{
  const SwPort *port = row (plan, i);

  g_assert_cmpint (port->port, ==, (int) i + 1);
  g_assert_cmpint (port->first_strip, ==, wanted.first_strip);
  g_assert_cmpint (port->last_strip, ==, wanted.last_strip);
  g_assert_cmpint (port->pixels, ==, wanted.pixels);
  g_assert_cmpint (port->first_universe, ==, wanted.first_universe);
  g_assert_cmpint (port->last_universe, ==, wanted.last_universe);
}

static void
assert_address (const SwDataPlan *plan, const SwDesign *design, const int at[2], SwAddress want)
{
  SwAddress address = sw_data_address (plan, design, at[0], at[1]);

  g_assert_cmpint (address.port, ==, want.port);
  g_assert_cmpint (address.universe, ==, want.universe);
  g_assert_cmpint (address.channel, ==, want.channel);
}
#define AT(strip, pixel) ((const int[2]){ strip, pixel })

/* Source: whole-number arithmetic done apart (Python fractions) from 1.25 µs a bit. */
static const struct {
  int bits;
  double reset_us, frame_hz;
  int pixels;
} timings[] = {
  { 24, 50, 20, 1665 }, { 24, 50, 25, 1331 },  { 24, 50, 30, 1109 },  { 24, 50, 40, 831 },
  { 24, 50, 60, 553 },  { 24, 300, 20, 1656 }, { 24, 300, 25, 1323 }, { 24, 300, 30, 1101 },
  { 24, 300, 40, 823 }, { 24, 300, 60, 545 },  { 32, 300, 20, 1242 }, { 32, 300, 25, 992 },
  { 32, 300, 30, 825 }, { 32, 300, 40, 617 },  { 32, 300, 60, 409 },  { 32, 50, 20, 1248 },
  { 32, 50, 25, 998 },  { 32, 50, 30, 832 },   { 32, 50, 40, 623 },   { 32, 50, 60, 415 },
};

static void
test_timing_decides (void)
{
  g_autoptr (SwDesign) design = plain_design ();

  for (guint i = 0; i < G_N_ELEMENTS (timings); i++) {
    design->data.bits_per_pixel = timings[i].bits;
    design->data.reset_us = timings[i].reset_us;
    design->data.frame_hz = timings[i].frame_hz;
    g_assert_cmpint (port_pixels (design), ==, timings[i].pixels);
  }
}

/* Source: an LED maker's article on refresh frequency: 512 pixels at 2.5 µs a bit, 24 bits,
 * make 32.55 frames a second (32.552083… unrounded).
 */
static void
test_published_frame_rate (void)
{
  g_autoptr (SwDesign) design = plain_design ();

  design->data.bit_rate_hz = 400000;
  design->data.reset_us = 0;
  design->data.frame_hz = 32.55;
  g_assert_cmpint (port_pixels (design), ==, 512);
  design->data.frame_hz = 32.56;
  g_assert_cmpint (port_pixels (design), ==, 511);
}

/* Each pair lasts exactly one frame, worked by hand; several have no exact binary form. */
static const struct {
  double reset_us, frame_hz;
  int pixels;
} exact_fits[] = {
  { 0, 1 / 0.036, 1200 }, /* 36 ms */
  { 0, 100 / 3.0, 1000 },    { 0, 1000 / 3.0, 100 },    { 100, 1e6 / 3400, 110 },
  { 280, 1e6 / 24280, 800 }, { 300, 1e6 / 24300, 800 }, { 10, 1e6 / 1510, 50 },
  { 40, 40, 832 },           { 110, 50, 663 },
};

static void
test_a_frame_that_fits_exactly_fits (void)
{
  g_autoptr (SwDesign) design = plain_design ();

  for (guint i = 0; i < G_N_ELEMENTS (exact_fits); i++) {
    design->data.reset_us = exact_fits[i].reset_us;
    design->data.frame_hz = exact_fits[i].frame_hz;
    g_assert_cmpint (port_pixels (design), ==, exact_fits[i].pixels);
  }
}

/* For n pixels of 30 µs and a pause, the frame of exactly that time holds n; one a millionth
 * faster holds n − 1.
 */
static void
test_every_exact_frame_fits (void)
{
  g_autoptr (SwDesign) design = plain_design ();

  for (int n = 1; n <= 3000; n++) {
    design->data.reset_us = n % 7 * 50;
    design->data.frame_hz = 1e6 / (n * 30 + design->data.reset_us);
    g_assert_cmpint (port_pixels (design), ==, n);
    design->data.frame_hz *= 1 + 1e-6;
    g_assert_cmpint (port_pixels (design), ==, n - 1);
  }
}

/* A pause of nearly a whole second leaves few digits to the rest. */
static void
test_a_long_pause_keeps_exact_frames (void)
{
  g_autoptr (SwDesign) design = plain_design ();

  design->data.frame_hz = 1;
  for (int n = 1; n <= 300; n++) {
    design->data.reset_us = 1e6 - n * 30;
    g_assert_cmpint (port_pixels (design), ==, n);
  }
}

static void
test_a_pause_longer_than_the_frame_leaves_none (void)
{
  g_autoptr (SwDesign) design = plain_design ();

  design->data.frame_hz = 1000;
  design->data.reset_us = 1000;
  g_assert_cmpint (port_pixels (design), ==, 0);
  design->data.reset_us = 1e6;
  g_assert_cmpint (port_pixels (design), ==, 0);
}

static void
test_extreme_timing_stays_in_range (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  SwDataPlan plan;

  design->data.bit_rate_hz = 1e9;
  design->data.frame_hz = 1e-9;
  plan = plan_of (design);
  g_assert_cmpint (plan.port_pixels_max, >, 1000000);
  g_assert_cmpint (plan.ports, ==, 1);
  sw_data_plan_clear (&plan);
}

static void
test_own_limit_wins_only_when_lower (void)
{
  g_autoptr (SwDesign) design = plain_design ();

  design->data.port_pixels_max = 600;
  g_assert_cmpint (port_pixels (design), ==, 600);
  design->data.port_pixels_max = 2000;
  g_assert_cmpint (port_pixels (design), ==, 823);
}

/* Worked by hand: 800 pixels on one port are ⌈800/170⌉ universes; three whole strips a universe
 * (150 pixels) make six.
 */
static void
test_one_port_drives_a_small_tree (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  SwDataPlan plan = plan_of (design);

  g_assert_cmpint (plan.strips_per_port, ==, 16);
  g_assert_cmpint (plan.ports, ==, 1);
  g_assert_cmpint (plan.universes, ==, 5);
  assert_row (&plan, 0, (SwPort){ 1, 1, 16, 800, 1, 5 });
  sw_data_plan_clear (&plan);

  design->data.pixels_per_universe = 150;
  plan = plan_of (design);
  g_assert_cmpint (plan.universes, ==, 6);
  sw_data_plan_clear (&plan);
}

static void
test_whole_strips_fill_ports_in_order (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  design->data.port_pixels_max = 349;
  SwDataPlan plan = plan_of (design);

  g_assert_cmpint (plan.strips_per_port, ==, 6);
  g_assert_cmpint (plan.ports, ==, 3);
  g_assert_cmpint (plan.universes, ==, 6);
  assert_row (&plan, 0, (SwPort){ 1, 1, 6, 300, 1, 2 });
  assert_row (&plan, 1, (SwPort){ 2, 7, 12, 300, 3, 4 });
  assert_row (&plan, 2, (SwPort){ 3, 13, 16, 200, 5, 6 });
  assert_address (&plan, design, AT (1, 1), (SwAddress){ 1, 1, 1 });
  assert_address (&plan, design, AT (4, 20), (SwAddress){ 1, 1, 508 });
  assert_address (&plan, design, AT (4, 21), (SwAddress){ 1, 2, 1 });
  assert_address (&plan, design, AT (7, 1), (SwAddress){ 2, 3, 1 });
  assert_address (&plan, design, AT (16, 50), (SwAddress){ 3, 6, 88 });
  sw_data_plan_clear (&plan);
}

static void
test_skipped_pixels_take_room_and_channels (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  design->data.port_pixels_max = 300;
  design->data.skipped_pixels = 1;
  SwDataPlan plan = plan_of (design);

  g_assert_cmpint (plan.strips_per_port, ==, 5);
  assert_row (&plan, 0, (SwPort){ 1, 1, 5, 250, 1, 2 });
  assert_address (&plan, design, AT (1, 1), (SwAddress){ 1, 1, 4 });
  assert_address (&plan, design, AT (6, 1), (SwAddress){ 2, 3, 4 });
  sw_data_plan_clear (&plan);
}

/* 340 pixels are two full universes; one skipped pixel more opens a third. */
static void
test_last_universe_counts_skipped_pixels (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  design->shape.strip_count = 2;
  design->strip.pixels = 170;
  SwDataPlan plan = plan_of (design);

  assert_row (&plan, 0, (SwPort){ 1, 1, 2, 340, 1, 2 });
  sw_data_plan_clear (&plan);

  design->data.skipped_pixels = 1;
  plan = plan_of (design);
  assert_row (&plan, 0, (SwPort){ 1, 1, 2, 340, 1, 3 });
  assert_address (&plan, design, AT (2, 170), (SwAddress){ 1, 3, 1 });
  sw_data_plan_clear (&plan);
}

static void
test_own_limit_of_strips (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  design->data.strips_per_port_max = 3;
  SwDataPlan plan = plan_of (design);

  g_assert_cmpint (plan.strips_per_port, ==, 3);
  g_assert_cmpint (plan.ports, ==, 6);
  assert_row (&plan, 5, (SwPort){ 6, 16, 16, 50, 6, 6 });
  sw_data_plan_clear (&plan);
}

static void
test_a_strip_too_long_gets_its_own_port (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  design->data.port_pixels_max = 50;
  SwDataPlan plan = plan_of (design);

  g_assert_false (plan.strip_too_long);
  g_assert_cmpint (plan.ports, ==, 16);
  sw_data_plan_clear (&plan);

  design->data.skipped_pixels = 1; /* a skipped pixel makes it too long */
  plan = plan_of (design);
  g_assert_true (plan.strip_too_long);
  g_assert_cmpint (plan.strips_per_port, ==, 1);
  g_assert_cmpint (plan.ports, ==, 16);
  sw_data_plan_clear (&plan);
}

static void
test_the_star_has_the_last_port (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  design->topper.kind = SW_TOPPER_STAR;
  design->topper.pixels = 171;
  design->data.skipped_pixels = 2;
  design->data.first_universe = 11;
  SwDataPlan plan = plan_of (design);

  g_assert_cmpint (plan.ports, ==, 2);
  g_assert_cmpint (plan.universes, ==, 7);
  assert_row (&plan, 1, (SwPort){ 2, 0, 0, 171, 16, 17 });
  assert_address (&plan, design, AT (0, 1), (SwAddress){ 2, 16, 7 });
  assert_address (&plan, design, AT (0, 169), (SwAddress){ 2, 17, 1 });
  g_assert_false (plan.star_too_long);
  sw_data_plan_clear (&plan);

  design->topper.pixels = 822;
  plan = plan_of (design);
  g_assert_true (plan.star_too_long);
  sw_data_plan_clear (&plan);
}

static void
test_no_star_no_port (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  design->topper.pixels = 100;
  SwDataPlan plan = plan_of (design);

  g_assert_cmpint (plan.ports, ==, 1);
  sw_data_plan_clear (&plan);

  design->topper.kind = SW_TOPPER_STAR;
  design->topper.pixels = 0;
  plan = plan_of (design);
  g_assert_cmpint (plan.ports, ==, 1);
  sw_data_plan_clear (&plan);
}

/* Source: ANSI E1.31: 512 slots a universe, universes 1 … 63999. */
static void
test_limits_of_the_standard (void)
{
  static const struct {
    int bits, pixels_per_universe, first_universe;
    gboolean overfull, beyond;
  } cases[] = {
    { 24, 170, 1, FALSE, FALSE },     { 24, 171, 1, TRUE, FALSE },
    { 32, 128, 1, FALSE, FALSE },     { 32, 129, 1, TRUE, FALSE },
    { 8, 512, 1, FALSE, FALSE },      { 8, 513, 1, TRUE, FALSE },
    { 24, 170, 63995, FALSE, FALSE }, { 24, 170, 63996, FALSE, TRUE },
  };
  g_autoptr (SwDesign) design = plain_design ();

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    design->data.bits_per_pixel = cases[i].bits;
    design->data.pixels_per_universe = cases[i].pixels_per_universe;
    design->data.first_universe = cases[i].first_universe;
    SwDataPlan plan = plan_of (design);
    g_assert_cmpint (plan.universe_overfull, ==, cases[i].overfull);
    g_assert_cmpint (plan.universe_beyond, ==, cases[i].beyond);
    sw_data_plan_clear (&plan);
  }
}

static void
test_up_down_turns_every_second_strip_of_a_port (void)
{
  g_autoptr (SwDesign) design = plain_design ();
  design->data.strips_per_port_max = 3;
  SwDataPlan plan = plan_of (design);

  for (int strip = 1; strip <= 16; strip++)
    g_assert_true (sw_data_runs_up (&plan, design, strip));

  design->data.path = SW_PATH_UP_DOWN;
  for (int strip = 1; strip <= 16; strip++) {
    gboolean second = (strip - 1) % 3 == 1;
    design->data.enter = SW_ENTER_RING;
    g_assert_cmpint (sw_data_runs_up (&plan, design, strip), ==, !second);
    design->data.enter = SW_ENTER_CROWN;
    g_assert_cmpint (sw_data_runs_up (&plan, design, strip), ==, second);
  }
  sw_data_plan_clear (&plan);
}

static SwDesign *
random_design (GRand *rand)
{
  static const int bits[] = { 8, 24, 32, 48 };
  SwDesign *design = sw_design_new ();

  design->shape.strip_count = g_rand_int_range (rand, 2, 65);
  design->strip.pixels = g_rand_int_range (rand, 1, 120);
  design->topper.kind = g_rand_boolean (rand) ? SW_TOPPER_STAR : SW_TOPPER_NONE;
  design->topper.pixels = g_rand_int_range (rand, 0, 200);
  design->data.bits_per_pixel = bits[g_rand_int_range (rand, 0, 4)];
  design->data.pixels_per_universe =
    g_rand_int_range (rand, 1, 512 * 8 / design->data.bits_per_pixel + 1);
  design->data.skipped_pixels = g_rand_int_range (rand, 0, 5);
  design->data.port_pixels_max = g_rand_int_range (rand, 0, 900);
  design->data.strips_per_port_max = g_rand_int_range (rand, 0, 9);
  design->data.first_universe = g_rand_int_range (rand, 1, 100);
  return design;
}

/* Claims the channels of one pixel; each must lie in its port's universes and be unclaimed. */
static void
claim (GHashTable *claimed, const SwDataPlan *plan, SwAddress address)
{
  const SwPort *port = row (plan, (guint) address.port - 1);

  g_assert_cmpint (address.universe, >=, port->first_universe);
  g_assert_cmpint (address.universe, <=, port->last_universe);
  g_assert_cmpint (address.channel, >=, 1);
  for (int i = 0; i < plan->channels_per_pixel; i++) {
    int channel = address.channel + i;
    g_assert_cmpint (channel, <=, 512);
    g_assert_true (
      g_hash_table_add (claimed, GINT_TO_POINTER (address.universe * 512 + channel - 1)));
  }
}

static void
check_claims (const SwDesign *design)
{
  SwDataPlan plan = plan_of (design);
  g_autoptr (GHashTable) claimed = g_hash_table_new (NULL, NULL);
  int lit = 0, star_pixels = row (&plan, plan.rows->len - 1)->first_strip == 0
                               ? row (&plan, plan.rows->len - 1)->pixels
                               : 0;

  for (int strip = 1; strip <= design->shape.strip_count; strip++) {
    for (int pixel = 1; pixel <= design->strip.pixels; pixel++)
      claim (claimed, &plan, sw_data_address (&plan, design, strip, pixel));
  }
  for (int pixel = 1; pixel <= star_pixels; pixel++)
    claim (claimed, &plan, sw_data_address (&plan, design, 0, pixel));
  for (guint i = 0; i < plan.rows->len; i++)
    lit += row (&plan, i)->pixels;
  g_assert_cmpuint (g_hash_table_size (claimed), ==, (guint) (lit * plan.channels_per_pixel));
  g_assert_cmpint (row (&plan, plan.rows->len - 1)->last_universe + 1,
                   ==,
                   design->data.first_universe + plan.universes);
  sw_data_plan_clear (&plan);
}

static void
test_no_two_pixels_share_a_channel (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (20251);

  for (int i = 0; i < 200; i++) {
    g_autoptr (SwDesign) design = random_design (rand);
    check_claims (design);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/data-ports/timing decides", test_timing_decides);
  g_test_add_func ("/engine/data-ports/published frame rate", test_published_frame_rate);
  g_test_add_func ("/engine/data-ports/a frame that fits exactly fits",
                   test_a_frame_that_fits_exactly_fits);
  g_test_add_func ("/engine/data-ports/every exact frame fits", test_every_exact_frame_fits);
  g_test_add_func ("/engine/data-ports/a long pause keeps exact frames",
                   test_a_long_pause_keeps_exact_frames);
  g_test_add_func ("/engine/data-ports/a pause longer than the frame leaves none",
                   test_a_pause_longer_than_the_frame_leaves_none);
  g_test_add_func ("/engine/data-ports/extreme timing stays in range",
                   test_extreme_timing_stays_in_range);
  g_test_add_func ("/engine/data-ports/own limit wins only when lower",
                   test_own_limit_wins_only_when_lower);
  g_test_add_func ("/engine/data-ports/one port drives a small tree",
                   test_one_port_drives_a_small_tree);
  g_test_add_func ("/engine/data-ports/whole strips fill ports in order",
                   test_whole_strips_fill_ports_in_order);
  g_test_add_func ("/engine/data-ports/skipped pixels take room and channels",
                   test_skipped_pixels_take_room_and_channels);
  g_test_add_func ("/engine/data-ports/last universe counts skipped pixels",
                   test_last_universe_counts_skipped_pixels);
  g_test_add_func ("/engine/data-ports/own limit of strips", test_own_limit_of_strips);
  g_test_add_func ("/engine/data-ports/a strip too long gets its own port",
                   test_a_strip_too_long_gets_its_own_port);
  g_test_add_func ("/engine/data-ports/the star has the last port",
                   test_the_star_has_the_last_port);
  g_test_add_func ("/engine/data-ports/no star no port", test_no_star_no_port);
  g_test_add_func ("/engine/data-ports/limits of the standard", test_limits_of_the_standard);
  g_test_add_func ("/engine/data-ports/up-down turns every second strip of a port",
                   test_up_down_turns_every_second_strip_of_a_port);
  g_test_add_func ("/engine/data-ports/no two pixels share a channel",
                   test_no_two_pixels_share_a_channel);
  return g_test_run ();
}
