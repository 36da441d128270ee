// SPDX-License-Identifier: GPL-3.0-or-later
/* table.h: tables of a build sheet: columns as wide as they need, one that wraps, the head
 * again on every page. No text ever runs into another: it wraps or ends in "…".
 */
#pragma once
#include "packet/flow.h"

typedef struct {
  const char *title; /* N_(); NULL in all: a table without a head */
  SwTextAlign align;
  double
    share; /* 0: as wide as its longest text; else takes that share of the rest, and wraps */
} SwColumn;

typedef enum {
  SW_ROW_PLAIN,
  SW_ROW_GROUP,    /* first cell alone, bold, across the table; kept with the next row */
  SW_ROW_SUBTOTAL, /* bold, thin rule above */
  SW_ROW_TOTAL,    /* bold, thick rule above */
} SwRowKind;

typedef struct SwTable SwTable;

SwTable *sw_table_new (const SwColumn *columns, guint n_columns);
void sw_table_free (SwTable *table);

/* In the smaller lettering, for what is looked up and not worked from. */
void sw_table_set_small (SwTable *table);

/* One cell a column; NULL or "" leaves it empty. SW_CELL_TICK draws a box to tick. */
#define SW_CELL_TICK "\001"
void sw_table_add (SwTable *table, SwRowKind kind, const char *const *cells);

/* A table of facts: words and their value, without a head. */
SwTable *sw_table_new_facts (void);
/* `words` N_(); takes the value. */
void sw_table_add_fact (SwTable *table, const SwPen *pen, const char *words, char *value);

/* Lays it out at the flow's width. */
void sw_flow_table (SwFlow *flow, const SwTable *table);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwTable, sw_table_free)
