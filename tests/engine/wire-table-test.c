// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/wire-table.h"

#include <math.h>

/* ASTM B258: d = 0.127 mm · 92^((36 − n)/39); IEC 60028: 1.7241 · 10⁻⁸ Ωm at 20 °C. */
static void
test_awg_follows_its_standard (void)
{
  for (guint i = 0; i < sw_n_wires[SW_WIRE_AWG]; i++) {
    const SwWire *wire = &sw_wires[SW_WIRE_AWG][i];
    double d_mm = 0.127 * pow (92, (36 - wire->size) / 39), mm2 = G_PI / 4 * d_mm * d_mm;
    g_assert_cmpfloat_with_epsilon (wire->mm2 / mm2, 1, 1e-5);
    g_assert_cmpfloat_with_epsilon (wire->ohm_per_m / (0.017241 / mm2), 1, 1e-4);
  }
}

/* 18 AWG 6.385, 14 AWG 2.525, 10 AWG 0.9989 ohms a thousand feet at 20 °C: handbook table of
 * solid copper wire. */
static void
test_awg_agrees_with_handbooks (void)
{
  g_assert_cmpfloat_with_epsilon (sw_wires[SW_WIRE_AWG][2].ohm_per_m * 304.8, 6.385, 5e-4);
  g_assert_cmpfloat_with_epsilon (sw_wires[SW_WIRE_AWG][4].ohm_per_m * 304.8, 2.525, 5e-4);
  g_assert_cmpfloat_with_epsilon (sw_wires[SW_WIRE_AWG][6].ohm_per_m * 304.8, 0.9989, 1e-4);
}

static void
test_thicker_drops_less_and_carries_more (void)
{
  for (guint system = 0; system < SW_N_WIRE_SYSTEMS; system++) {
    for (guint i = 1; i < sw_n_wires[system]; i++) {
      const SwWire *thin = &sw_wires[system][i - 1], *thick = thin + 1;
      g_assert_cmpfloat (thick->ohm_per_m, <, thin->ohm_per_m);
      g_assert_cmpfloat (thick->max_a, >, thin->max_a);
      g_assert_cmpfloat (thick->mm2, >, thin->mm2);
    }
  }
}

static void
test_a_resistance_counts_as_a_size (void)
{
  g_assert_cmpfloat_with_epsilon (sw_wire_like (0.0082)->size, 14, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_wire_like (0.0260)->size, 20, 1e-12); /* 0.75 mm² */
  g_assert_cmpfloat_with_epsilon (sw_wire_like (3)->size, 22, 1e-12);
  g_assert_cmpfloat_with_epsilon (sw_wire_like (0)->size, 6, 1e-12);
}

static void
test_a_size_has_a_name (void)
{
  g_autofree char *awg = sw_wire_name (&sw_wires[SW_WIRE_AWG][4], SW_WIRE_AWG);
  g_autofree char *mm2 = sw_wire_name (&sw_wires[SW_WIRE_MM2][4], SW_WIRE_MM2);

  g_assert_cmpstr (awg, ==, "14 AWG");
  g_assert_cmpstr (mm2, ==, "2.5 mm²");
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/wire-table/AWG follows its standard",
                   test_awg_follows_its_standard);
  g_test_add_func ("/engine/wire-table/AWG agrees with handbooks",
                   test_awg_agrees_with_handbooks);
  g_test_add_func ("/engine/wire-table/thicker drops less and carries more",
                   test_thicker_drops_less_and_carries_more);
  g_test_add_func ("/engine/wire-table/a resistance counts as a size",
                   test_a_resistance_counts_as_a_size);
  g_test_add_func ("/engine/wire-table/a size has a name", test_a_size_has_a_name);
  return g_test_run ();
}
