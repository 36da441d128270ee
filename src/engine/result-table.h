// SPDX-License-Identifier: GPL-3.0-or-later
/* result-table.h: the rows behind results.h, a table a subject. For results*.c only. */
#pragma once
#include "engine/results.h"

typedef struct {
  const SwResult *rows;
  guint n;
} SwResultTable;

extern const SwResultTable sw_results_of_shape;
extern const SwResultTable sw_results_of_power;
extern const SwResultTable sw_results_of_data;
extern const SwResultTable sw_results_of_wind;
extern const SwResultTable sw_results_of_stand;
extern const SwResultTable sw_results_of_ring;
extern const SwResultTable sw_results_of_checks;

/* A row of SwSolution's field; of `group.name`, where key and field are called the same. */
#define AS(key, kind, field, words, from)                                                      \
  {                                                                                            \
    key, kind, G_STRUCT_OFFSET (SwSolution, field), words, from                                \
  }
#define NUMBER(group, name, words, from)                                                       \
  AS (#group "." #name, SW_RESULT_NUMBER, group.name, words, from)
