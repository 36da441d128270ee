// SPDX-License-Identifier: GPL-3.0-or-later
/* catalogue-row.h: one JSON object of data/…json into one struct, by a table of fields.
 *
 * A key is the field's name and a unit: the field "od" is read from "od_in" or "od_mm" or
 * "od_m", so that a file can keep the figure its source prints. Inside it is SI.
 * Errors  SW_ERROR_CATALOGUE "KEY: what is wrong, what is allowed": a key that is missing,
 *         unknown, given twice or of the wrong type; a number outside its range; an empty text
 */
#pragma once
#include <json-glib/json-glib.h>

typedef enum {
  SW_FIELD_TEXT,
  SW_FIELD_CHOICE, /* one of `words`; read into an int */
  SW_FIELD_LENGTH,
  SW_FIELD_MASS,
  SW_FIELD_MASS_PER_LENGTH,
  SW_FIELD_FORCE,
  SW_FIELD_PRICE,
  SW_FIELD_PRICE_PER_LENGTH,
  SW_FIELD_NUMBER, /* no unit */
} SwFieldType;

typedef struct {
  const char *name;
  SwFieldType type;
  gsize offset;
  double low, high; /* SI; unused for texts and choices */
  gboolean optional;
  const char *const *words; /* of a choice; ends with NULL */
} SwField;

typedef struct {
  const SwField *fields;
  guint n_fields; /* at most 32 */
} SwFieldTable;

/* Fills `row`, which is all zero; on an error the texts read so far stay in it. */
gboolean sw_row_read (const SwFieldTable *table,
                      JsonObject *object,
                      gpointer row,
                      GError **error);

/* Frees the texts in `row`, not the row. */
void sw_row_clear (const SwFieldTable *table, gpointer row);
