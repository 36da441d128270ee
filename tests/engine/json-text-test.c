// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/json-text.h"

#include <math.h>
#include <string.h>

/* Source: IEEE 754 double: largest (2 − 2⁻⁵²)·2¹⁰²³, least normal 2⁻¹⁰²², least 2⁻¹⁰⁷⁴; the
 * decimals are their shortest that read back (Steele & White, How to Print Floating-Point
 * Numbers Accurately, 1990; same as Python's repr).
 */
static const struct {
  double value;
  const char *text;
} shortest[] = {
  { 0.0, "0" },
  { -0.0, "-0.0" },
  { 1, "1" },
  { -2.5, "-2.5" },
  { 0.1, "0.1" },
  { 0.1 + 0.2, "0.30000000000000004" },
  { 1.0 / 3, "0.3333333333333333" },
  { 2.0 / 3, "0.6666666666666666" },
  { 0.0508, "0.0508" },
  { 20, "20" },
  { 800000, "800000" },
  { 1e22, "1e+22" },
  { 123456789012345680.0, "1.2345678901234568e+17" },
  { 9007199254740993.0, "9007199254740992" },
  { 0x1.fffffffffffffp1023, "1.7976931348623157e+308" },
  { 0x1p-1022, "2.2250738585072014e-308" },
  { 0x1p-1074, "5e-324" },
};

static void
test_numbers_have_the_fewest_digits (void)
{
  for (guint i = 0; i < G_N_ELEMENTS (shortest); i++) {
    g_autofree char *text = sw_json_number (shortest[i].value);
    g_assert_cmpstr (text, ==, shortest[i].text);
  }
}

/* Any double: 64 random bits. */
static void
test_numbers_read_back_to_the_bit (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (3);

  for (int i = 0; i < 20000; i++) {
    guint64 bits = (guint64) g_rand_int (rand) << 32 | g_rand_int (rand);
    double value, back;
    memcpy (&value, &bits, sizeof value);
    if (!isfinite (value))
      continue;
    g_autofree char *text = sw_json_number (value);
    back = g_ascii_strtod (text, NULL);
    g_assert_cmpmem (&back, sizeof back, &value, sizeof value);
  }
}

static JsonNode *
parsed (const char *text)
{
  g_autoptr (GError) error = NULL;
  JsonNode *node = json_from_string (text, &error);

  g_assert_no_error (error);
  return node;
}

static void
test_text_is_laid_out_for_people (void)
{
  g_autoptr (JsonNode) node =
    parsed ("{\"b\":[1,\"two\",null,true],\"a\":{\"x\":0.5},\"e\":{},\"f\":[],\"g\":[[1],2]}");
  gsize length;
  g_autofree char *text = sw_json_to_text (node, &length);

  g_assert_cmpstr (text,
                   ==,
                   "{\n"
                   "  \"b\": [1, \"two\", null, true],\n"
                   "  \"a\": {\n"
                   "    \"x\": 0.5\n"
                   "  },\n"
                   "  \"e\": {},\n"
                   "  \"f\": [],\n"
                   "  \"g\": [\n"
                   "    [1],\n"
                   "    2\n"
                   "  ]\n"
                   "}\n");
  g_assert_cmpuint (length, ==, strlen (text));
}

static void
test_a_long_list_stands_one_a_line (void)
{
  g_autoptr (JsonNode) node = parsed ("[1,2,3,4,5,6,7,8,9,10,11,12,13]");
  g_autofree char *text = sw_json_to_text (node, NULL);

  g_assert_true (g_str_has_prefix (text, "[\n  1,\n  2,\n"));
}

static void
test_tight_text_has_no_spaces (void)
{
  const char *tight = "{\"b\":[1,\"a b\",{\"c\":[]}],\"d\":{}}\n";
  g_autoptr (JsonNode) node = parsed (tight);
  g_autofree char *text = sw_json_to_tight_text (node, NULL);

  g_assert_cmpstr (text, ==, tight);
}

/* RFC 8259, 7: quote, backslash and U+0000 … U+001F must be escaped; all else may stand. */
static void
test_strings_are_escaped_and_read_back (void)
{
  g_autoptr (JsonNode) node = json_node_alloc ();
  g_autoptr (GString) all = g_string_new (NULL);

  for (gunichar c = 1; c < 0x3000; c++)
    g_string_append_unichar (all, c);
  g_string_append_unichar (all, 0x1f384);
  json_node_init_string (node, all->str);
  g_autofree char *text = sw_json_to_text (node, NULL);
  for (const char *c = text; c < text + strlen (text) - 1; c++)
    g_assert_cmpint ((guchar) *c, >=, 0x20);
  g_autoptr (JsonNode) back = parsed (text);
  g_assert_cmpstr (json_node_get_string (back), ==, all->str);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/json-text/numbers have the fewest digits",
                   test_numbers_have_the_fewest_digits);
  g_test_add_func ("/engine/json-text/numbers read back to the bit",
                   test_numbers_read_back_to_the_bit);
  g_test_add_func ("/engine/json-text/text is laid out for people",
                   test_text_is_laid_out_for_people);
  g_test_add_func ("/engine/json-text/a long list stands one a line",
                   test_a_long_list_stands_one_a_line);
  g_test_add_func ("/engine/json-text/tight text has no spaces", test_tight_text_has_no_spaces);
  g_test_add_func ("/engine/json-text/strings are escaped and read back",
                   test_strings_are_escaped_and_read_back);
  return g_test_run ();
}
