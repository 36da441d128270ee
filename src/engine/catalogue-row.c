// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/catalogue-row.h"

#include "engine/error.h"

#include <string.h>

/* SI = value · times / over; the inch, the pound and its force are exact by definition (1959
 * yard and pound agreement, standard gravity 9.80665 m/s²).
 */
static const struct {
  SwFieldType type;
  const char *suffix;
  double times, over;
} units[] = {
  { SW_FIELD_LENGTH, "_in", 0.0254, 1 },
  { SW_FIELD_LENGTH, "_ft", 0.3048, 1 },
  { SW_FIELD_LENGTH, "_mm", 1, 1000 },
  { SW_FIELD_LENGTH, "_m", 1, 1 },
  { SW_FIELD_MASS, "_lb", 0.45359237, 1 },
  { SW_FIELD_MASS, "_kg", 1, 1 },
  { SW_FIELD_MASS_PER_LENGTH, "_lb_per_ft", 0.45359237, 0.3048 },
  { SW_FIELD_MASS_PER_LENGTH, "_kg_per_m", 1, 1 },
  { SW_FIELD_FORCE, "_lbf", 4.4482216152605, 1 },
  { SW_FIELD_FORCE, "_n", 1, 1 },
  { SW_FIELD_PRICE, "_usd", 1, 1 },
  { SW_FIELD_PRICE_PER_LENGTH, "_usd_per_ft", 1, 0.3048 },
  { SW_FIELD_PRICE_PER_LENGTH, "_usd_per_m", 1, 1 },
  { SW_FIELD_NUMBER, "", 1, 1 },
  { SW_FIELD_TEXT, "", 1, 1 },
  { SW_FIELD_CHOICE, "", 1, 1 },
};

typedef struct {
  const char *key; /* as the file writes it */
  const SwField *field;
  guint unit;
} Place;

static gpointer
field_of (const SwField *field, gpointer row)
{
  return (char *) row + field->offset;
}

static void
refuse (GError **error, const char *key, const char *what)
{
  g_autofree char *shown = g_strescape (key, NULL);

  g_set_error (error, SW_ERROR, SW_ERROR_CATALOGUE, "%s: %s", shown, what);
}

/* "od", "od_in" → the unit's row. */
static gboolean
find_unit (const SwField *field, const char *key, guint *unit)
{
  gsize length = strlen (field->name);

  if (strncmp (field->name, key, length) != 0)
    return FALSE;
  for (guint i = 0; i < G_N_ELEMENTS (units); i++) {
    if (units[i].type == field->type && strcmp (units[i].suffix, key + length) == 0) {
      *unit = i;
      return TRUE;
    }
  }
  return FALSE;
}

static gboolean
find_place (const SwFieldTable *table, const char *key, Place *place)
{
  for (guint i = 0; i < table->n_fields; i++) {
    if (find_unit (&table->fields[i], key, &place->unit)) {
      place->key = key;
      place->field = &table->fields[i];
      return TRUE;
    }
  }
  return FALSE;
}

static gboolean
is_number (JsonNode *node)
{
  return JSON_NODE_HOLDS_VALUE (node) && (json_node_get_value_type (node) == G_TYPE_INT64 ||
                                          json_node_get_value_type (node) == G_TYPE_DOUBLE);
}

static gboolean
read_number (const Place *place, JsonNode *node, gpointer row, GError **error)
{
  const SwField *field = place->field;
  double times = units[place->unit].times, over = units[place->unit].over;

  if (!is_number (node)) {
    refuse (error, place->key, "not a number");
    return FALSE;
  }
  double written = json_node_get_double (node);
  double value = written * times / over;
  if (!(value >= field->low && value <= field->high)) { /* also refuses NaN */
    g_autofree char *what = sw_plain_printf ("%.15g is outside %.6g … %.6g",
                                             written,
                                             field->low * over / times,
                                             field->high * over / times);
    refuse (error, place->key, what);
    return FALSE;
  }
  *(double *) field_of (field, row) = value;
  return TRUE;
}

/* Lists, reports and error lines take these texts as they are. */
static gboolean
is_one_line (const char *text)
{
  for (const char *c = text; *c != '\0'; c++) {
    if (g_ascii_iscntrl (*c))
      return FALSE;
  }
  return *text != '\0';
}

static const char *
text_of (const Place *place, JsonNode *node, GError **error)
{
  const char *text = JSON_NODE_HOLDS_VALUE (node) ? json_node_get_string (node) : NULL;

  if (text == NULL)
    refuse (error, place->key, "not a text");
  else if (!is_one_line (text))
    refuse (error, place->key, "empty or with a line break, one line of text is needed");
  else
    return text;
  return NULL;
}

static char *
joined (const char *const *words)
{
  GString *all = g_string_new (words[0]);

  for (int i = 1; words[i] != NULL; i++)
    g_string_append_printf (all, " | %s", words[i]);
  return g_string_free (all, FALSE);
}

static gboolean
read_choice (const Place *place, JsonNode *node, gpointer row, GError **error)
{
  const char *const *words = place->field->words;
  const char *text = text_of (place, node, error);

  if (text == NULL)
    return FALSE;
  for (int i = 0; words[i] != NULL; i++) {
    if (strcmp (words[i], text) == 0) {
      *(int *) field_of (place->field, row) = i;
      return TRUE;
    }
  }
  g_autofree char *all = joined (words);
  g_autofree char *what = g_strdup_printf ("\"%s\" is not one of %s", text, all);
  refuse (error, place->key, what);
  return FALSE;
}

static gboolean
read_value (const Place *place, JsonNode *node, gpointer row, GError **error)
{
  if (place->field->type == SW_FIELD_CHOICE)
    return read_choice (place, node, row, error);
  if (place->field->type != SW_FIELD_TEXT)
    return read_number (place, node, row, error);
  const char *text = text_of (place, node, error);
  *(char **) field_of (place->field, row) = g_strdup (text);
  return text != NULL;
}

/* "od_in | od_ft | od_mm | od_m" */
static char *
spellings (const SwField *field)
{
  GString *all = g_string_new (NULL);

  for (guint i = 0; i < G_N_ELEMENTS (units); i++) {
    if (units[i].type == field->type)
      g_string_append_printf (all,
                              "%s%s%s",
                              all->len > 0 ? " | " : "",
                              field->name,
                              units[i].suffix);
  }
  return g_string_free (all, FALSE);
}

static gboolean
check_complete (const SwFieldTable *table, guint32 seen, GError **error)
{
  for (guint i = 0; i < table->n_fields; i++) {
    if (table->fields[i].optional || (seen & (1u << i)) != 0)
      continue;
    g_autofree char *key = spellings (&table->fields[i]);
    refuse (error, key, "missing");
    return FALSE;
  }
  return TRUE;
}

gboolean
sw_row_read (const SwFieldTable *table, JsonObject *object, gpointer row, GError **error)
{
  g_return_val_if_fail (table->n_fields <= 32, FALSE);
  JsonObjectIter iter;
  const char *key;
  JsonNode *node;
  guint32 seen = 0;

  json_object_iter_init_ordered (&iter, object);
  while (json_object_iter_next_ordered (&iter, &key, &node)) {
    Place place;
    if (!find_place (table, key, &place)) {
      refuse (error, key, "no such key");
      return FALSE;
    }
    guint32 bit = 1u << (place.field - table->fields);
    if ((seen & bit) != 0) {
      refuse (error, key, "given twice, in two units");
      return FALSE;
    }
    seen |= bit;
    if (!read_value (&place, node, row, error))
      return FALSE;
  }
  return check_complete (table, seen, error);
}

void
sw_row_clear (const SwFieldTable *table, gpointer row)
{
  for (guint i = 0; i < table->n_fields; i++) {
    if (table->fields[i].type == SW_FIELD_TEXT)
      g_clear_pointer ((char **) field_of (&table->fields[i], row), g_free);
  }
}
