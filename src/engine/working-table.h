// SPDX-License-Identifier: GPL-3.0-or-later
/* working-table.h: the rows behind working.h, a table a subject. For working*.c only.
 *
 * A formula's name is looked up among the terms first, then among the results, then among the
 * file keys: it is the end of their key from a point on ("topper.height_m"), and must fit one
 * only.
 */
#pragma once
#include "engine/solution.h"
#include "engine/stand-model.h"

/* What goes in and is neither a result nor a file key. */
typedef struct {
  const char *name;                             /* ends in its unit */
  double (*value) (const SwSolution *solution); /* NULL: `fixed` */
  double fixed;
  const char *what; /* N_() */
  const char *source;
} SwWorkingTerm;

typedef struct {
  const char *key;
  gboolean (*applies) (const SwSolution *solution); /* NULL: always; the first that applies */
  const char *formula;                              /* NULL: none can be; `how` says why */
  const char *how, *assumes;                        /* N_(), nullable */
  double (*value) (const SwSolution *solution);     /* NULL: the result of results.h */
} SwWorkingRow;

typedef struct {
  const SwWorkingTerm *terms;
  guint n_terms;
  const SwWorkingRow *rows;
  guint n_rows;
} SwWorkingTable;

extern const SwWorkingTable sw_working_shape, sw_working_marks, sw_working_power,
  sw_working_data, sw_working_wind, sw_working_stand, sw_working_ring, sw_working_gust,
  sw_working_parts, sw_working_checks, sw_working_build, sw_working_foot, sw_working_feeds,
  sw_working_cable, sw_working_pipe, sw_working_limits;

extern const SwWorkingTable *const sw_working_tables[];
extern const guint sw_n_working_tables;

/* Facts that more than one subject asks for. */
gboolean sw_working_closed (const SwSolution *solution); /* strips all the way round */
gboolean sw_working_has_star (const SwSolution *solution);
gboolean sw_working_on_foot (const SwSolution *solution); /* the ring is tied to the foot */

/* The stand's model at the design's gust; it borrows from the solution. */
void sw_working_model (SwStandModel *model, const SwSolution *solution);
