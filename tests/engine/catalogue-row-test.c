// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/catalogue-row.h"
#include "engine/error.h"

#include <string.h>

/* A thing with a field of every kind. */
typedef struct {
  char *word;
  char *remark;
  int colour;
  double length, mass, mass_per_length, force, price, price_per_length, number;
} Thing;

static const char *const colours[] = { "red", "green", NULL };

#define AT(field) .offset = G_STRUCT_OFFSET (Thing, field)
#define ANY .low = -1e6, .high = 1e6, .optional = TRUE

static const SwField fields[] = {
  { "word", SW_FIELD_TEXT, AT (word) },
  { "remark", SW_FIELD_TEXT, AT (remark), .optional = TRUE },
  { "colour", SW_FIELD_CHOICE, AT (colour), .optional = TRUE, .words = colours },
  { "length", SW_FIELD_LENGTH, AT (length), ANY },
  { "mass", SW_FIELD_MASS, AT (mass), ANY },
  { "density", SW_FIELD_MASS_PER_LENGTH, AT (mass_per_length), ANY },
  { "force", SW_FIELD_FORCE, AT (force), ANY },
  { "price", SW_FIELD_PRICE, AT (price), ANY },
  { "rate", SW_FIELD_PRICE_PER_LENGTH, AT (price_per_length), ANY },
  { "number", SW_FIELD_NUMBER, AT (number), ANY },
};
static const SwFieldTable table = { fields, G_N_ELEMENTS (fields) };

static gboolean
read_thing (const char *text, Thing *thing, GError **error)
{
  g_autoptr (JsonNode) node = json_from_string (text, NULL);

  g_assert_nonnull (node);
  return sw_row_read (&table, json_node_get_object (node), thing, error);
}

/* Sources: NIST SP 811, appendix B.8: inch 0.0254 m, foot 0.3048 m, pound 0.453 592 37 kg,
 * pound-force 4.448 222 N, pound a foot 1.488 164 kg/m. Price a foot: over 0.3048.
 */
static const struct {
  const char *text;
  gsize offset;
  double expected, tolerance;
} units[] = {
  { "{\"word\":\"x\",\"length_in\":2.375}", G_STRUCT_OFFSET (Thing, length), 0.060325, 1e-15 },
  { "{\"word\":\"x\",\"length_ft\":21}", G_STRUCT_OFFSET (Thing, length), 6.4008, 1e-14 },
  { "{\"word\":\"x\",\"length_mm\":33.4}", G_STRUCT_OFFSET (Thing, length), 0.0334, 1e-17 },
  { "{\"word\":\"x\",\"length_m\":3}", G_STRUCT_OFFSET (Thing, length), 3, 1e-15 },
  { "{\"word\":\"x\",\"mass_lb\":80}", G_STRUCT_OFFSET (Thing, mass), 36.2873896, 1e-12 },
  { "{\"word\":\"x\",\"mass_kg\":0.5}", G_STRUCT_OFFSET (Thing, mass), 0.5, 1e-15 },
  { "{\"word\":\"x\",\"density_lb_per_ft\":1}",
    G_STRUCT_OFFSET (Thing, mass_per_length),
    1.488164,
    5e-7 },
  { "{\"word\":\"x\",\"density_kg_per_m\":2}",
    G_STRUCT_OFFSET (Thing, mass_per_length),
    2,
    1e-15 },
  { "{\"word\":\"x\",\"force_lbf\":1}", G_STRUCT_OFFSET (Thing, force), 4.448222, 5e-7 },
  { "{\"word\":\"x\",\"force_n\":7}", G_STRUCT_OFFSET (Thing, force), 7, 1e-15 },
  { "{\"word\":\"x\",\"price_usd\":9.5}", G_STRUCT_OFFSET (Thing, price), 9.5, 1e-15 },
  { "{\"word\":\"x\",\"rate_usd_per_ft\":0.3048}",
    G_STRUCT_OFFSET (Thing, price_per_length),
    1,
    1e-15 },
  { "{\"word\":\"x\",\"rate_usd_per_m\":4}",
    G_STRUCT_OFFSET (Thing, price_per_length),
    4,
    1e-15 },
  { "{\"word\":\"x\",\"number\":-3}", G_STRUCT_OFFSET (Thing, number), -3, 1e-15 },
};

static void
test_units_become_si (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (units); k++) {
    g_autoptr (GError) error = NULL;
    Thing thing = { 0 };
    g_assert_true (read_thing (units[k].text, &thing, &error));
    g_assert_no_error (error);
    gconstpointer at = (const char *) &thing + units[k].offset;
    g_assert_cmpfloat_with_epsilon (*(const double *) at,
                                    units[k].expected,
                                    units[k].tolerance);
    sw_row_clear (&table, &thing);
  }
}

static void
test_texts_and_choices (void)
{
  g_autoptr (GError) error = NULL;
  Thing thing = { 0 };

  g_assert_true (
    read_thing ("{\"colour\":\"green\",\"word\":\"wörd\",\"remark\":\"r\"}", &thing, &error));
  g_assert_cmpstr (thing.word, ==, "wörd");
  g_assert_cmpstr (thing.remark, ==, "r");
  g_assert_cmpint (thing.colour, ==, 1);
  sw_row_clear (&table, &thing);
  g_assert_null (thing.word);
  g_assert_null (thing.remark);
}

static const struct {
  const char *text, *message;
} wrongs[] = {
  { "{}", "word: missing" },
  { "{\"word\":[]}", "word: not a text" },
  { "{\"word\":{}}", "word: not a text" },
  { "{\"word\":\"a\\tb\"}", "word: empty or with a line break, one line of text is needed" },
  { "{\"word\":\"a\",\"wor\":1}", "wor: no such key" },
  { "{\"word\":\"a\",\"words\":1}", "words: no such key" },
  { "{\"word\":\"a\",\"length\":1}", "length: no such key" },
  { "{\"word\":\"a\",\"length_kg\":1}", "length_kg: no such key" },
  { "{\"word\":\"a\",\"number\":null}", "number: not a number" },
  { "{\"word\":\"a\",\"number\":2e6}", "number: 2000000 is outside -1e+06 … 1e+06" },
  { "{\"word\":\"a\",\"colour\":\"blue\"}", "colour: \"blue\" is not one of red | green" },
  { "{\"word\":\"a\",\"colour\":1}", "colour: not a text" },
  { "{\"word\":\"a\",\"mass_kg\":1,\"mass_lb\":1}", "mass_lb: given twice, in two units" },
};

static void
test_wrong (gconstpointer data)
{
  guint k = GPOINTER_TO_UINT (data);
  g_autoptr (GError) error = NULL;
  Thing thing = { 0 };

  g_assert_false (read_thing (wrongs[k].text, &thing, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_CATALOGUE);
  g_assert_cmpstr (error->message, ==, wrongs[k].message);
  sw_row_clear (&table, &thing);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/catalogue-row/units become SI", test_units_become_si);
  g_test_add_func ("/engine/catalogue-row/texts and choices", test_texts_and_choices);
  for (guint k = 0; k < G_N_ELEMENTS (wrongs); k++) {
    g_autofree char *path =
      g_strdup_printf ("/engine/catalogue-row/refuses/%u %s", k, wrongs[k].message);
    g_strdelimit (path + strlen ("/engine/catalogue-row/refuses/"), "/", '-');
    g_test_add_data_func (path, GUINT_TO_POINTER (k), test_wrong);
  }
  return g_test_run ();
}
