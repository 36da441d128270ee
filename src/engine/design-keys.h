// SPDX-License-Identifier: GPL-3.0-or-later
/* design-keys.h: one row a file key: type, range, start, words. The loader, --set, sliders and
 * help all read these rows, so they cannot disagree.
 *
 * The structured keys (held, prices.override, prices.have, as_built.ring_points, catalogue) are
 * not rows; design-file.c reads and writes them.
 */
#pragma once
#include "engine/design.h"
#include "engine/quantity.h"

typedef enum {
  SW_KEY_NUMBER, /* double */
  SW_KEY_WHOLE,  /* int */
  SW_KEY_FLAG,   /* gboolean */
  SW_KEY_CHOICE, /* an enum of design.h, stored as int */
  SW_KEY_TEXT,   /* char *, free words */
  SW_KEY_ID,     /* char *, a catalogue id */
} SwKeyType;

typedef struct {
  const char *path; /* "shape.crown_height_m" */
  SwKeyType type;
  gsize offset;     /* into SwDesign */
  double low, high; /* what the file may hold; for text: the most characters in `high` */
  double start;     /* number, whole, flag (0 or 1), choice (its value) */
  double ease_low, ease_high; /* the slider's ends: what is usual; equal: no slider */
  SwQuantity quantity;
  const char *start_text;           /* text and id */
  const char *const *choices;       /* file words by enum value, NULL-ended; NULL otherwise */
  const char *const *choice_labels; /* N_(): the same on screen */
  const char *kind;                 /* id: the catalogue kind ("pipe", "hook", "line") */
  const char *group; /* N_(): the settings group it stands in; NULL: not in the panel */
  const char *label; /* N_() */
  const char *help;  /* N_() */
  const char *words; /* N_(): what else the trade calls it, for the search box */
} SwKey;

/* Every row, in the file's order: 0 ≤ i < sw_n_keys (). */
guint sw_n_keys (void);
const SwKey *sw_key_at (guint i);

/* Returns: (nullable): the row of that path. */
const SwKey *sw_key_find (const char *path);

/* The value of a number, whole, flag or choice as a double. */
double sw_key_get_number (const SwKey *key, const SwDesign *design);
/* Returns: (nullable): the word of a text, id or choice. */
const char *sw_key_get_text (const SwKey *key, const SwDesign *design);

/* What may stand under the key, for messages: "0.1 … 10", "ring | crown | both", "at most 200
 * characters". Returns: (transfer full).
 */
char *sw_key_allowed (const SwKey *key);

/* Whether the value may stand under the key. Errors: SW_ERROR_RANGE, SW_ERROR_TYPE (a broken
 * whole), "path: value is outside low … high".
 */
gboolean sw_key_check_number (const SwKey *key, double value, GError **error);

/* Set after checking; `design` must have one owner. Rules that join keys are sw_design_check
 * ()'s. */
gboolean sw_key_set_number (const SwKey *key, SwDesign *design, double value, GError **error);
gboolean sw_key_set_text (const SwKey *key,
                          SwDesign *design,
                          const char *value,
                          GError **error);

/* As --set takes it: "4.42", "true", "ring", "sch40-2". Takes whatever type the key has.
 * Errors: SW_ERROR_UNKNOWN_KEY for no such path, else as above.
 */
gboolean sw_key_set_from_words (SwDesign *design,
                                const char *path,
                                const char *value,
                                GError **error);

/* "4.42", "-1e3"; not "nan", "0x10" or what has anything behind it. Overflow gives infinity. */
gboolean sw_number_from_words (const char *value, double *number);
