// SPDX-License-Identifier: GPL-3.0-or-later
/* catalogue-kinds.h: which kinds of thing there are: file, struct, keys and ranges of each. */
#pragma once
#include "engine/catalogue-row.h"

enum {
  SW_KIND_PIPE,
  SW_KIND_BOARD,
  SW_KIND_HOOK,
  SW_KIND_LINE,
  SW_KIND_GOODS,
  SW_KIND_FITTING,
  SW_N_KINDS
};

typedef struct {
  const char *word; /* "pipe" */
  const char *file; /* "pipes.json" */
  gsize size;       /* of the struct, which starts with `char *id, *name` */
  SwFieldTable table;
  /* Nullable; the rules that join two keys. Returns: (nullable): "KEY: what is wrong". */
  const char *(*check) (gconstpointer row);
} SwKind;

extern const SwKind sw_kinds[SW_N_KINDS];
