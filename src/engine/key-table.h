// SPDX-License-Identifier: GPL-3.0-or-later
/* key-table.h: the rows behind design-keys.h, a table a group. For key*.c only.
 *
 * Upper ends of ranges are "what could be meant at all", not "what is wise": findings say what
 * is wise.
 */
#pragma once
#include "engine/design-keys.h"

#include <float.h>

typedef struct {
  const SwKey *rows;
  guint n;
} SwKeyTable;

extern const SwKeyTable sw_keys_of_shape;
extern const SwKeyTable sw_keys_of_strips;
extern const SwKeyTable sw_keys_of_stand;
extern const SwKeyTable sw_keys_of_site;
extern const SwKeyTable sw_keys_of_power;
extern const SwKeyTable sw_keys_of_data;

/* "Above 0" is written as the smallest positive number: 0 itself is then outside. */
#define ABOVE_0 DBL_MIN

#define AT(field) .path = #field, .offset = G_STRUCT_OFFSET (SwDesign, field)
#define NUMBER(field, lowest, highest, starts)                                                 \
  AT (field), .type = SW_KEY_NUMBER, .low = lowest, .high = highest, .start = starts
#define WHOLE(field, lowest, highest, starts)                                                  \
  AT (field), .type = SW_KEY_WHOLE, .low = lowest, .high = highest, .start = starts
#define FLAG(field) AT (field), .type = SW_KEY_FLAG, .high = 1
#define CHOICE(field, names, starts)                                                           \
  AT (field), .type = SW_KEY_CHOICE, .high = G_N_ELEMENTS (names##_words) - 2,                 \
              .start = starts, .choices = names##_words, .choice_labels = names##_labels
#define TEXT(field, most, starts)                                                              \
  AT (field), .type = SW_KEY_TEXT, .high = most, .start_text = starts
#define ID(field, family, starts)                                                              \
  AT (field), .type = SW_KEY_ID, .high = 64, .kind = family, .start_text = starts
#define EASE(from, to) .ease_low = from, .ease_high = to
