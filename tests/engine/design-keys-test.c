// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-keys.h"
#include "engine/error.h"

#include <math.h>
#include <string.h>

/* Missing keys of a file stand for these. They are part of the format: written down here once
 * more, from the format's description, so that none changes by the way.
 */
static const struct {
  const char *path, *start;
} starts[] = {
  { "units", "us" },
  { "shape.crown_height_m", "2.86" },
  { "shape.ring_height_m", "0.25" },
  { "shape.crown_radius_m", "0.13" },
  { "shape.ring_radius_m", "1.0" },
  { "shape.coverage_deg", "360" },
  { "shape.facing_deg", "0" },
  { "shape.strip_count", "20" },
  { "strip.pixels", "50" },
  { "strip.pitch_m", "0.0508" },
  { "strip.lead_m", "0.06" },
  { "strip.tail_min_m", "0.2" },
  { "strip.width_m", "0.032" },
  { "strip.mass_kg_per_m", "0.22" },
  { "strip.tension_n", "15" },
  { "strip.tie_length_m", "0.1" },
  { "strip.tie_stretch_max", "1.8" },
  { "strip.tie_n_per_m", "150" },
  { "strip.measured", "false" },
  { "crown.hook", "eye-1/4" },
  { "crown.hook_reach_m", "0" },
  { "crown.hook_drop_m", "0" },
  { "crown.plate_thickness_m", "0.006" },
  { "crown.mass_kg", "2.0" },
  { "topper.kind", "star" },
  { "topper.pixels", "100" },
  { "topper.points", "5" },
  { "topper.rings", "3" },
  { "topper.height_m", "0.6" },
  { "topper.width_m", "0.6" },
  { "topper.mass_kg", "1.8" },
  { "topper.solidity", "0.45" },
  { "topper.stub", "emt-1/2" },
  { "topper.stub_m", "0.15" },
  { "stand.post", "sch40-2" },
  { "stand.post_stock_m", "6.4" },
  { "stand.ring_pipe", "pvc40-1" },
  { "stand.ring_ties", "8" },
  { "stand.ring_held_by", "ground" },
  { "stand.ring_span", "full" },
  { "stand.ring_sections", "4" },
  { "stand.ring_spokes", "0" },
  { "stand.tie_hold_n", "0" },
  { "stand.foot", "slabs" },
  { "stand.arm_m", "0.95" },
  { "stand.arm_width_m", "0.14" },
  { "stand.sleeve", "sch40-2-1/2" },
  { "stand.sleeve_depth_m", "0.35" },
  { "stand.socket_depth_m", "0.9" },
  { "stand.socket_diameter_m", "0.25" },
  { "stand.ballast_kg", "36" },
  { "stand.friction", "0.2" },
  { "guys.count", "4" },
  { "guys.height_m", "2.75" },
  { "guys.radius_m", "2.0" },
  { "guys.first_azimuth_deg", "9" },
  { "guys.line", "wire-1/8-7x19" },
  { "guys.break_n", "8000" },
  { "guys.end_efficiency", "0.8" },
  { "guys.stiffness_n", "200000" },
  { "guys.pretension_n", "50" },
  { "guys.stake_hold_n", "1100" },
  { "guys.stakes_tested", "false" },
  { "site.gust_mps", "20" },
  { "site.exposure", "C" },
  { "site.soil", "unknown" },
  { "site.slope_deg", "0" },
  { "site.ice_mm", "0" },
  { "site.clear_radius_m", "0" },
  { "site.line_distance_m", "0" },
  { "site.dig_marked", "false" },
  { "site.view_m", "12" },
  { "site.door_m", "0" },
  { "power.supply_v", "12" },
  { "power.pixel_a", "0.055" },
  { "power.load", "constant-current" },
  { "power.cap", "0.5" },
  { "power.brightness", "0.25" },
  { "power.min_pixel_v", "10.5" },
  { "power.strip_ohm_per_m", "0.021" },
  { "power.wire_per_pixel_m", "0" },
  { "power.feed", "ring" },
  { "power.inject_every", "0" },
  { "power.strips_per_feeder", "1" },
  { "power.feeder_m", "3.0" },
  { "power.feeder_ohm_per_m", "0.0082" },
  { "power.strip_wire_max_a", "5" },
  { "power.supply_w", "350" },
  { "power.supply_load_max", "0.8" },
  { "power.hours_per_evening", "5" },
  { "power.energy_price", "0.17" },
  { "data.bits_per_pixel", "24" },
  { "data.bit_rate_hz", "800000" },
  { "data.reset_us", "300" },
  { "data.frame_hz", "40" },
  { "data.port_pixels_max", "0" },
  { "data.strips_per_port_max", "0" },
  { "data.skipped_pixels", "0" },
  { "data.lead_m", "1.5" },
  { "data.colour_order", "RGB" },
  { "data.enter", "ring" },
  { "data.path", "same-end" },
  { "data.first_universe", "1" },
  { "data.pixels_per_universe", "170" },
  { "gives_way", "tail" },
  { "prices.currency", "USD" },
  { "as_built.ring_length_m", "0" },
  { "as_built.crown_offset_x_m", "0" },
  { "as_built.crown_offset_y_m", "0" },
};

static void
expect_start (const char *path, const char *start, const SwDesign *design)
{
  const SwKey *key = sw_key_find (path);
  double value;

  g_test_message ("%s", path);
  g_assert_nonnull (key);
  switch (key->type) {
  case SW_KEY_NUMBER:
  case SW_KEY_WHOLE:
    g_assert_true (sw_number_from_words (start, &value));
    g_assert_cmpfloat_with_epsilon (sw_key_get_number (key, design), value, 1e-15);
    break;
  case SW_KEY_FLAG:
    g_assert_cmpint (sw_key_get_number (key, design) > 0, ==, strcmp (start, "true") == 0);
    break;
  case SW_KEY_CHOICE:
  case SW_KEY_TEXT:
  case SW_KEY_ID:
    g_assert_cmpstr (sw_key_get_text (key, design), ==, start);
    break;
  default:
    g_assert_not_reached ();
  }
}

static void
test_starts_are_those_of_the_format (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  for (guint i = 0; i < G_N_ELEMENTS (starts); i++)
    expect_start (starts[i].path, starts[i].start, design);
  g_assert_cmpuint (sw_n_keys (), ==, G_N_ELEMENTS (starts) + 1); /* and the title */
}

static void
test_rows_agree_with_themselves (void)
{
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    g_test_message ("%s", key->path);
    g_assert_true (g_hash_table_add (seen, (gpointer) (guintptr) key->path));
    g_assert_true (sw_key_find (key->path) == key);
    g_assert_true (key->label != NULL && *key->label != '\0');
    g_assert_cmpfloat (key->low, <=, key->high);
    if (key->type == SW_KEY_TEXT || key->type == SW_KEY_ID)
      continue;
    g_assert_true (key->low <= key->start && key->start <= key->high);
    if (key->ease_high > key->ease_low) /* else it has no slider */
      g_assert_true (key->ease_low >= key->low && key->ease_high <= key->high);
    g_assert_true ((key->choices != NULL) == (key->type == SW_KEY_CHOICE));
  }
}

/* Its ends may stand under a key; what is next to them, and what is no number, may not. */
static void
test_ranges_are_closed (void)
{
  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    double step = key->type == SW_KEY_NUMBER ? 1e-6 : 1;
    const double outside[] = { key->low - step, key->high + step, NAN, INFINITY, -INFINITY };
    if (key->type == SW_KEY_TEXT || key->type == SW_KEY_ID)
      continue;
    g_assert_true (sw_key_check_number (key, key->low, NULL));
    g_assert_true (sw_key_check_number (key, key->high, NULL));
    for (guint k = 0; k < G_N_ELEMENTS (outside); k++) {
      g_autoptr (GError) error = NULL;
      g_assert_false (sw_key_check_number (key, outside[k], &error));
      g_assert_true (g_str_has_prefix (error->message, key->path));
    }
  }
}

static void
test_counts_are_whole (void)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (sw_key_check_number (sw_key_find ("strip.pixels"), 2.5, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_TYPE);
}

static void
test_words_of_numbers (void)
{
  static const char *const no_numbers[] = { "",   "nan", "inf", "0x10", "3x", "3,5",
                                            "1e", "+",   "--1", "1 2",  "-",  "infinity" };
  double value;

  g_assert_true (sw_number_from_words ("4.42", &value));
  g_assert_cmpfloat_with_epsilon (value, 4.42, 1e-15);
  g_assert_true (sw_number_from_words ("-1e3", &value));
  g_assert_cmpfloat_with_epsilon (value, -1000, 1e-12);
  for (guint i = 0; i < G_N_ELEMENTS (no_numbers); i++)
    g_assert_false (sw_number_from_words (no_numbers[i], &value));
}

static void
test_unknown_paths_are_named (void)
{
  static const char *const paths[] = { "shape",
                                       "shape.",
                                       "shape.crown",
                                       "",
                                       "Shape.facing_deg" };
  g_autoptr (SwDesign) design = sw_design_new ();

  for (guint i = 0; i < G_N_ELEMENTS (paths); i++) {
    g_autoptr (GError) error = NULL;
    g_assert_null (sw_key_find (paths[i]));
    g_assert_false (sw_key_set_from_words (design, paths[i], "1", &error));
    g_assert_error (error, SW_ERROR, SW_ERROR_UNKNOWN_KEY);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/design-keys/starts are those of the format",
                   test_starts_are_those_of_the_format);
  g_test_add_func ("/engine/design-keys/rows agree with themselves",
                   test_rows_agree_with_themselves);
  g_test_add_func ("/engine/design-keys/ranges are closed", test_ranges_are_closed);
  g_test_add_func ("/engine/design-keys/counts are whole", test_counts_are_whole);
  g_test_add_func ("/engine/design-keys/words of numbers", test_words_of_numbers);
  g_test_add_func ("/engine/design-keys/unknown paths are named", test_unknown_paths_are_named);
  return g_test_run ();
}
