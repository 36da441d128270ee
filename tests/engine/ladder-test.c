// SPDX-License-Identifier: GPL-3.0-or-later
/* Volts of the ladders: ngspice 39 on the same netlists (100 pixels, 18 AWG rails, 0.1 m pitch,
 * 12 V, the feed one pitch before the first pixel), and the closed sums of Kirchhoff's laws,
 * worked by hand. The netlists themselves are run in ladder-ngspice-test.c.
 */
#include "engine/ladder.h"

#include <math.h>

#define RAIL_OHM 0.002095 /* a rail, a pitch: 18 AWG at 20 °C (ASTM B258) and 0.1 m */

static SwLadder
ladder (int pixels, SwLoad load, double pixel_a, const int *feeds, guint n_feeds)
{
  return (SwLadder){ .pixels = pixels,
                     .supply_v = 12,
                     .pixel_a = pixel_a,
                     .load = load,
                     .link_ohm = 2 * RAIL_OHM,
                     .feed_ohm = 2 * RAIL_OHM,
                     .feeds = feeds,
                     .n_feeds = n_feeds };
}

typedef struct {
  int pixel;
  double volts;
} Volts;

static void
check_volts (const SwLadder *given, const Volts *wanted, guint n, double tolerance)
{
  g_autofree double *volts = g_new (double, given->pixels);
  SwLadderResult result = sw_ladder_solve (given, volts, NULL);

  g_assert_true (result.feasible);
  for (guint i = 0; i < n; i++)
    g_assert_cmpfloat_with_epsilon (volts[wanted[i].pixel - 1], wanted[i].volts, tolerance);
}

static void
test_plain_pixels_fed_at_one_end (void)
{
  static const Volts wanted[] = { { 1, 11.987430 },  { 10, 11.879956 }, { 25, 11.723460 },
                                  { 50, 11.525482 }, { 75, 11.406067 }, { 100, 11.365215 } };
  static const int feeds[] = { 1 };
  SwLadder given = ladder (100, SW_LOAD_CONSTANT_CURRENT, 0.03, feeds, 1);
  SwLadderResult result = sw_ladder_solve (&given, NULL, NULL);

  check_volts (&given, wanted, G_N_ELEMENTS (wanted), 1e-6);
  g_assert_cmpfloat_with_epsilon (result.current_a, 3.0, 1e-15);
  g_assert_cmpint (result.worst_pixel, ==, 100);
  /* by hand: drop = I·r·n(n + 1)/2 */
  g_assert_cmpfloat_with_epsilon (12 - result.worst_v,
                                  0.03 * 2 * RAIL_OHM * 100 * 101 / 2,
                                  1e-12);
}

static void
test_plain_pixels_fed_at_both_ends (void)
{
  static const Volts wanted[] = { { 1, 11.993715 },  { 10, 11.942807 }, { 25, 11.880585 },
                                  { 50, 11.839732 }, { 51, 11.839732 }, { 100, 11.993715 } };
  static const int feeds[] = { 1, 100 };
  SwLadder given = ladder (100, SW_LOAD_CONSTANT_CURRENT, 0.03, feeds, 2);
  double feed_a[2];
  SwLadderResult result = sw_ladder_solve (&given, NULL, feed_a);

  check_volts (&given, wanted, G_N_ELEMENTS (wanted), 1e-6);
  g_assert_cmpint (result.worst_pixel, ==, 50); /* 50 and 51 are equal: the lower counts */
  g_assert_cmpfloat_with_epsilon (feed_a[0], 1.5, 1e-12);
  g_assert_cmpfloat_with_epsilon (feed_a[1], 1.5, 1e-12);
}

/* Feeds sit on pixels without resistance: 101 pixels, every 25th at the supply. */
static void
test_feeds_on_the_way (void)
{
  static const Volts wanted[] = { { 11, 11.990572 },
                                  { 13, 11.990195 },
                                  { 14, 11.990195 },
                                  { 26, 12 } };
  static const int feeds[] = { 1, 26, 51, 76, 101 };
  SwLadder given = ladder (101, SW_LOAD_CONSTANT_CURRENT, 0.03, feeds, 5);

  given.feed_ohm = 0;
  check_volts (&given, wanted, G_N_ELEMENTS (wanted), 1e-6);
}

static void
test_regulated_pixels (void)
{
  static const Volts one_end[] = { { 1, 11.986942 },
                                   { 25, 11.711602 },
                                   { 50, 11.503660 },
                                   { 100, 11.334401 } };
  static const Volts both[] = { { 50, 11.837907 } };
  static const int feeds[] = { 1, 100 };
  SwLadder given = ladder (100, SW_LOAD_CONSTANT_POWER, 0.03, feeds, 1);

  check_volts (&given, one_end, G_N_ELEMENTS (one_end), 1e-6);
  g_assert_cmpfloat_with_epsilon (sw_ladder_solve (&given, NULL, NULL).current_a,
                                  3.116455,
                                  1e-6);
  given.n_feeds = 2;
  check_volts (&given, both, 1, 1e-6);
  /* Shot from the middle outwards with 40 decimal digits, apart from this program. */
  g_assert_cmpfloat_with_epsilon (sw_ladder_solve (&given, NULL, NULL).current_a,
                                  3.027571449003038,
                                  1e-12);
}

/* 5 V, 0.3 W a pixel: 107 pixels just work, 108 have no solution. Independent check: shooting
 * from the dead end with SciPy. */
static void
test_collapse_is_seen (void)
{
  static const struct {
    int pixels;
    double end_v;
  } cases[] = { { 50, 4.660179 }, { 100, 3.157138 }, { 107, 2.370875 } };
  static const int feeds[] = { 1 };

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    SwLadder given = ladder (cases[i].pixels, SW_LOAD_CONSTANT_POWER, 0.06, feeds, 1);
    given.supply_v = 5;
    SwLadderResult result = sw_ladder_solve (&given, NULL, NULL);
    g_assert_true (result.feasible);
    g_assert_cmpfloat_with_epsilon (result.worst_v, cases[i].end_v, 1e-6);
  }
  SwLadder beyond = ladder (108, SW_LOAD_CONSTANT_POWER, 0.06, feeds, 1);
  beyond.supply_v = 5;
  g_assert_false (sw_ladder_solve (&beyond, NULL, NULL).feasible);
}

/* The supply voltage under which the last of `pixels` regulated pixels has end_v, stepping back
 * to the feed: the textbook method (shooting), apart from the program's.
 */
static double
shoot_v (int pixels, double watts, double end_v)
{
  double volts = end_v, current_a = 0;

  for (int i = 0; i < pixels; i++) {
    current_a += watts / volts;
    volts += 2 * RAIL_OHM * current_a;
  }
  return volts;
}

/* That voltage has one minimum; below it there is no solution. */
static double
least_supply_v (int pixels, double watts)
{
  double low = 1e-3, high = 100;

  for (int i = 0; i < 200; i++) {
    double a = low + (high - low) / 3, b = high - (high - low) / 3;
    if (shoot_v (pixels, watts, a) < shoot_v (pixels, watts, b))
      high = b;
    else
      low = a;
  }
  return shoot_v (pixels, watts, low);
}

static gboolean
works_at (int pixels, double watts, double supply_v)
{
  static const int feeds[] = { 1 };
  SwLadder given = ladder (pixels, SW_LOAD_CONSTANT_POWER, watts / supply_v, feeds, 1);

  given.supply_v = supply_v;
  return sw_ladder_solve (&given, NULL, NULL).feasible;
}

static void
test_collapse_is_decided_to_a_billionth (void)
{
  static const int pixels[] = { 1, 2, 3, 10, 50, 107, 108, 200, 1000, 2000 };

  for (guint i = 0; i < G_N_ELEMENTS (pixels); i++) {
    double least_v = least_supply_v (pixels[i], 0.3);
    g_assert_true (works_at (pixels[i], 0.3, least_v * (1 + 1e-9)));
    g_assert_false (works_at (pixels[i], 0.3, least_v * (1 - 1e-9)));
  }
}

/* Many pixels are a line that draws evenly; its least supply voltage is (n + ½)·√(rP)/(√2·D)
 * with D = 0.5410442246, the greatest value of Dawson's integral (Abramowitz & Stegun,
 * table 7.5).
 */
static void
test_collapse_nears_that_of_an_even_line (void)
{
  static const int pixels[] = { 200, 500, 1000, 2000 };

  for (guint i = 0; i < G_N_ELEMENTS (pixels); i++) {
    double line_v = (pixels[i] + 0.5) * sqrt (2 * RAIL_OHM * 0.3) / (sqrt (2) * 0.5410442246);
    g_assert_true (works_at (pixels[i], 0.3, line_v * 1.00001));
    g_assert_false (works_at (pixels[i], 0.3, line_v * 0.99999));
  }
}

/* On a strip fed at both ends, or in its middle, both halves are alike. */
static void
test_symmetric_feeds_give_symmetric_volts (void)
{
  static const int feed_sets[][3] = { { 1, 101, 0 }, { 51, 0, 0 }, { 1, 51, 101 } };
  static const guint sizes[] = { 2, 1, 3 };
  double volts[101];

  for (guint i = 0; i < 6; i++) {
    SwLadder given = ladder (101, i % 2, 0.03, feed_sets[i / 2], sizes[i / 2]);
    g_assert_true (sw_ladder_solve (&given, volts, NULL).feasible);
    for (int j = 0; j < 101; j++)
      g_assert_cmpfloat_with_epsilon (volts[j], volts[100 - j], 1e-13);
  }
}

static SwLadder
random_ladder (GRand *rand, int feeds[3])
{
  int pixels = g_rand_int_range (rand, 3, 300);

  feeds[0] = g_rand_int_range (rand, 1, pixels);
  feeds[1] = g_rand_int_range (rand, feeds[0] + 1, pixels + 1);
  return ladder (pixels,
                 SW_LOAD_CONSTANT_CURRENT,
                 g_rand_double_range (rand, 0.0001, 0.02),
                 feeds,
                 g_rand_boolean (rand) ? 1 : 2);
}

static void
test_double_current_doubles_drops (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (7);
  double volts[300], doubled[300];

  for (int i = 0; i < 100; i++) {
    int feeds[3];
    SwLadder given = random_ladder (rand, feeds);
    sw_ladder_solve (&given, volts, NULL);
    given.pixel_a *= 2;
    sw_ladder_solve (&given, doubled, NULL);
    for (int j = 0; j < given.pixels; j++)
      g_assert_cmpfloat_with_epsilon (12 - doubled[j], 2 * (12 - volts[j]), 1e-12);
  }
}

static void
test_regulated_pixels_never_draw_less (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (8);

  for (int i = 0; i < 100; i++) {
    int feeds[3];
    SwLadder given = random_ladder (rand, feeds);
    SwLadderResult plain = sw_ladder_solve (&given, NULL, NULL);
    given.load = SW_LOAD_CONSTANT_POWER;
    SwLadderResult regulated = sw_ladder_solve (&given, NULL, NULL);
    if (regulated.feasible) {
      g_assert_cmpfloat (regulated.current_a, >, plain.current_a);
      g_assert_cmpfloat (regulated.worst_v, <, plain.worst_v);
    }
  }
}

/* One load behind one resistor: V = (V0 + √(V0² − 4RP))/2, none above P = V0²/4R (180 W here),
 * by hand. */
static void
test_one_regulated_pixel_by_hand (void)
{
  static const int feeds[] = { 1 };
  SwLadder given = ladder (1, SW_LOAD_CONSTANT_POWER, 100.0 / 12, feeds, 1);

  given.feed_ohm = 0.2;
  g_assert_cmpfloat_with_epsilon (sw_ladder_solve (&given, NULL, NULL).worst_v, 10.0, 1e-12);
  given.pixel_a = 179.999 / 12;
  g_assert_cmpfloat_with_epsilon (sw_ladder_solve (&given, NULL, NULL).worst_v,
                                  6 + sqrt (144 - 4 * 0.2 * 179.999) / 2,
                                  1e-9);
  given.pixel_a = 181.0 / 12;
  g_assert_false (sw_ladder_solve (&given, NULL, NULL).feasible);
}

static void
test_no_resistance_no_drop (void)
{
  static const int feeds[] = { 3, 7 };

  for (SwLoad load = SW_LOAD_CONSTANT_CURRENT; load <= SW_LOAD_CONSTANT_POWER; load++) {
    SwLadder given = ladder (10, load, 0.1, feeds, 2);
    double feed_a[2];
    given.link_ohm = 0;
    g_assert_cmpfloat_with_epsilon (sw_ladder_solve (&given, NULL, feed_a).worst_v,
                                    load == SW_LOAD_CONSTANT_CURRENT
                                      ? 12 - 0.5 * 2 * RAIL_OHM
                                      : 6 + sqrt (144 - 4 * RAIL_OHM * 12) / 2,
                                    1e-12); /* two feeds in parallel: R = RAIL_OHM */
    given.feed_ohm = 0;
    SwLadderResult result = sw_ladder_solve (&given, NULL, feed_a);
    g_assert_cmpfloat_with_epsilon (result.worst_v, 12, 1e-15);
    g_assert_cmpfloat_with_epsilon (result.current_a, 1, 1e-14);
    g_assert_cmpfloat_with_epsilon (feed_a[0] + feed_a[1], 1, 1e-14);
  }
}

static void
test_feed_currents_sum_to_the_strip (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);

  for (int i = 0; i < 200; i++) {
    int pixels = g_rand_int_range (rand, 2, 300);
    int feeds[] = { 1, 1 + pixels / 2, pixels };
    double feed_a[3];
    SwLadder given = ladder (pixels,
                             i % 2,
                             g_rand_double_range (rand, 0.001, 0.02),
                             feeds,
                             pixels > 2 ? 3 : 1);
    given.feed_ohm = i % 3 == 0 ? 0 : 0.01;
    SwLadderResult result = sw_ladder_solve (&given, NULL, feed_a);
    double sum = 0;
    for (guint j = 0; j < given.n_feeds; j++)
      sum += feed_a[j];
    g_assert_true (result.feasible);
    g_assert_cmpfloat_with_epsilon (sum, result.current_a, 1e-9 * result.current_a);
  }
}

/* By hand: 18 AWG, 3 m out and back at 3 A loses 0.3771 V before the strip. */
static void
test_a_feeder_drops_first (void)
{
  static const int feeds[] = { 1 };
  SwLadder given = { .pixels = 1,
                     .supply_v = 12,
                     .pixel_a = 3,
                     .feed_ohm = 2 * 0.0209478 * 3,
                     .feeds = feeds,
                     .n_feeds = 1 };

  g_assert_cmpfloat_with_epsilon (12 - sw_ladder_solve (&given, NULL, NULL).worst_v,
                                  0.3771,
                                  5e-5);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/ladder/plain pixels fed at one end",
                   test_plain_pixels_fed_at_one_end);
  g_test_add_func ("/engine/ladder/plain pixels fed at both ends",
                   test_plain_pixels_fed_at_both_ends);
  g_test_add_func ("/engine/ladder/feeds on the way", test_feeds_on_the_way);
  g_test_add_func ("/engine/ladder/regulated pixels", test_regulated_pixels);
  g_test_add_func ("/engine/ladder/collapse is seen", test_collapse_is_seen);
  g_test_add_func ("/engine/ladder/collapse is decided to a billionth",
                   test_collapse_is_decided_to_a_billionth);
  g_test_add_func ("/engine/ladder/collapse nears that of an even line",
                   test_collapse_nears_that_of_an_even_line);
  g_test_add_func ("/engine/ladder/symmetric feeds give symmetric volts",
                   test_symmetric_feeds_give_symmetric_volts);
  g_test_add_func ("/engine/ladder/double current doubles drops",
                   test_double_current_doubles_drops);
  g_test_add_func ("/engine/ladder/regulated pixels never draw less",
                   test_regulated_pixels_never_draw_less);
  g_test_add_func ("/engine/ladder/one regulated pixel by hand",
                   test_one_regulated_pixel_by_hand);
  g_test_add_func ("/engine/ladder/no resistance, no drop", test_no_resistance_no_drop);
  g_test_add_func ("/engine/ladder/feed currents sum to the strip",
                   test_feed_currents_sum_to_the_strip);
  g_test_add_func ("/engine/ladder/a feeder drops first", test_a_feeder_drops_first);
  return g_test_run ();
}
