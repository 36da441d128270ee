// SPDX-License-Identifier: GPL-3.0-or-later
/* starts.h: the ready-made starting points, compiled in: Porch, Lawn, Landmark. */
#pragma once
#include "engine/design.h"

typedef struct {
  const char *name;    /* "lawn" */
  const char *label;   /* N_("Lawn") */
  const char *summary; /* N_(): whom it suits, one line */
} SwStart;

extern const SwStart sw_starts[];
extern const guint sw_n_starts;

/* `name` in any case. Returns: (transfer full) (nullable); Errors: SW_ERROR_CHOICE. */
SwDesign *sw_start_new (const char *name, GError **error);
