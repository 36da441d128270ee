// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/feed-plan.h"
#include "engine/fuse.h"
#include "solve.h"

#include <math.h>

/* The rule in full, apart from the program's search: solved as a whole design. */
static gboolean
wiring_does (const SwDesign *design)
{
  SwPower power;
  const SwPowerSetup *setup = &design->power;

  sw_power_init (&power, design);
  if (!power.feasible || power.worst_pixel_v < setup->min_pixel_v)
    return FALSE;
  int shared = MIN (setup->strips_per_feeder, design->shape.strip_count);
  double feeder_a = power.most_feed_a * shared * (1 - 1e-9);
  double supply_a = setup->supply_w * setup->supply_load_max / setup->supply_v;
  double wire_a = MIN (setup->strip_wire_max_a, sw_wire_like (setup->feeder_ohm_per_m)->max_a);
  return sw_fuse_for (feeder_a) <= wire_a && feeder_a <= supply_a &&
         feeder_a * 2 * setup->feeder_ohm_per_m * setup->feeder_m <= 0.05 * setup->supply_v &&
         (shared == 1 || power.strip_current_a * shared * (1 - 1e-9) <= supply_a);
}

/* Fewest feeds, then most strips on a feeder, over every value of the three keys. */
static void
try_all (const SwDesign *given, int *feeds, int *shared)
{
  g_autoptr (SwDesign) design = sw_design_copy (given);

  *feeds = *shared = 0;
  for (SwFeed feed = SW_FEED_RING; feed <= SW_FEED_BOTH; feed++) {
    for (int every = 0; every < design->strip.pixels; every++) {
      design->power.feed = feed;
      design->power.inject_every = every;
      g_autoptr (GArray) at = sw_power_feeds (design);
      for (int share = 1; share <= 4 && (*feeds == 0 || (int) at->len <= *feeds); share++) {
        design->power.strips_per_feeder = share;
        if (!wiring_does (design))
          break;
        if (*feeds == 0 || (int) at->len < *feeds || share > *shared)
          *shared = share;
        *feeds = (int) at->len;
      }
    }
  }
}

static void
test_no_other_wiring_needs_less (void)
{
  static const char *const sets[] = {
    "",
    "power.min_pixel_v=11.7",
    "power.min_pixel_v=11.85; power.feeder_m=1",
    "power.strip_wire_max_a=1",
    "power.strip_wire_max_a=2; power.min_pixel_v=11.6",
    "power.load=constant-power; power.min_pixel_v=11.5",
    "power.supply_v=5; power.min_pixel_v=4.5",
    "power.load=constant-power; power.supply_v=5; power.min_pixel_v=4.6; power.feeder_m=1",
    "power.cap=1; power.strip_wire_max_a=3; power.feeder_m=2",
  };

  for (guint i = 0; i < G_N_ELEMENTS (sets); i++) {
    g_autofree char *all = g_strdup_printf ("%s%sshape.strip_count=4; strip.pixels=30",
                                            sets[i],
                                            *sets[i] == '\0' ? "" : "; ");
    g_autoptr (SwSolution) s = solve_with ("lawn", all);
    int feeds, shared;
    try_all (s->design, &feeds, &shared);
    g_assert_cmpint (feeds > 0, ==, s->feed_plan.found);
    g_assert_cmpint (s->feed_plan.n_feeds, ==, feeds);
    g_assert_cmpint (s->feed_plan.strips_per_feeder, ==, shared);
  }
}

/* 5 V, 0.3 W a pixel on 18 AWG rails of 0.1 m: 107 pixels have a solution, 108 none (shot from
 * the dead end with SciPy). */
static void
test_names_the_longest_strip_that_works (void)
{
  g_autoptr (SwSolution) s = solve_with (
    "lawn",
    "power.load=constant-power; power.supply_v=5; power.pixel_a=0.06; power.cap=1; "
    "power.strip_ohm_per_m=0.02095; strip.pitch_m=0.1; strip.pixels=140; power.min_pixel_v=0; "
    "power.feeder_m=0.1; power.feeder_ohm_per_m=0.02095; power.strips_per_feeder=1");

  g_assert_false (s->power.feasible);
  g_assert_cmpint (s->feed_plan.longest, ==, 107);
}

/* By hand: 5.5 A want a fuse of 7.5 A, 16 AWG (10 A); 6 m may drop 0.6 V: 0.0091 ohms a metre,
 * 14 AWG, 2.5 mm². */
static void
test_cable_is_sized_by_load_and_by_drop (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", "power.strips_per_feeder=4; power.feeder_m=6");

  g_assert_cmpfloat_with_epsilon (s->feed_plan.awg_by_load, 16, 1e-12);
  g_assert_cmpfloat_with_epsilon (s->feed_plan.awg_by_drop, 14, 1e-12);
  g_assert_cmpfloat_with_epsilon (s->feed_plan.awg, 14, 1e-12);
  g_assert_cmpfloat_with_epsilon (s->feed_plan.mm2, 2.5, 1e-12);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/feed-plan/no other wiring needs less",
                   test_no_other_wiring_needs_less);
  g_test_add_func ("/engine/feed-plan/names the longest strip that works",
                   test_names_the_longest_strip_that_works);
  g_test_add_func ("/engine/feed-plan/cable is sized by load and by drop",
                   test_cable_is_sized_by_load_and_by_drop);
  return g_test_run ();
}
