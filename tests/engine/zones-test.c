// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/zones.h"
#include "solve.h"

static const char *const sets[] = {
  "power.strips_per_feeder=4",
  "power.strips_per_feeder=3; power.supply_w=90",
  "power.supply_w=20",
  "power.feed=both; power.supply_w=15",
  "power.cap=1; power.supply_w=120",
  "topper.kind=none; power.inject_every=10; power.supply_w=10",
};

/* Every strip hangs somewhere, no supply beyond its limit, and the watts add up. */
static void
test_zones_carry_the_whole_tree (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (sets); i++) {
    g_autoptr (SwSolution) s = solve_with ("lawn", sets[i]);
    double sum_w = 0;
    int next = 1;
    for (int k = 0; k < s->zones.count; k++) {
      SwZone zone = sw_zones_get (&s->zones, k);
      sum_w += zone.load_w;
      if (zone.first_strip > 0 && zone.first_strip != next)
        g_assert_cmpint (zone.first_pixel, >, 1); /* the same strips, feeds further up */
      if (zone.last_strip > 0)
        next = zone.first_strip == next ? zone.last_strip + 1 : next;
    }
    g_assert_cmpint (next, ==, s->design->shape.strip_count + 1);
    g_assert_cmpfloat_with_epsilon (sum_w, s->power.tree_w, 1e-9 * s->power.tree_w);
  }
}

/* By hand: 36 strips of 29.7 W, three on a feeder, three such groups on 280 W: four supplies
 * at 267.3 W, and the star's 49.5 W has room on none. */
static void
test_groups_stay_on_one_supply (void)
{
  g_autoptr (SwSolution) s = solve_with ("landmark", "");

  g_assert_false (s->zones.cut);
  g_assert_cmpint (s->zones.count, ==, 5);
  for (int k = 0; k < 4; k++)
    g_assert_cmpfloat_with_epsilon (sw_zones_get (&s->zones, k).load_w, 267.3, 1e-9);
  g_assert_true (sw_zones_get (&s->zones, 4).star);
  g_assert_cmpint (sw_zones_get (&s->zones, 4).first_strip, ==, 0);
}

static void
test_the_dark_need_none (void)
{
  g_autoptr (SwSolution) s = solve_with ("lawn", "power.pixel_a=0");

  g_assert_cmpint (s->zones.count, ==, 0);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/zones/zones carry the whole tree", test_zones_carry_the_whole_tree);
  g_test_add_func ("/engine/zones/groups stay on one supply", test_groups_stay_on_one_supply);
  g_test_add_func ("/engine/zones/the dark need none", test_the_dark_need_none);
  return g_test_run ();
}
