// SPDX-License-Identifier: GPL-3.0-or-later
/* working.h: how each reported number comes about: a formula that can be evaluated, what goes
 * in, what comes out, and what it rests on.
 *
 * Formulas are written in a small plain notation, SI inside, angles in radians:
 *
 *   + − · / ^ √   in the usual order; − before a number changes its sign; √ takes what stands
 *                 right behind it; · and / go from left to right, ^ from right to left
 *   ( )           and functions: sin cos tan acos atan atan2 abs min max ceil floor
 *   first(x, …)   out of a table: the first of the rest that is at least x
 *   count(x, …)   how many of the rest are at least x
 *   2.01  π       numbers with a decimal point
 *   names         what goes in: the last words of a report key or file key
 *                 ("crown_height_m", "topper.height_m"), or a term with a source of its own
 *
 * Where a result comes from a solve, its formula is a relation that holds at the solution, and
 * `how` says how it was solved. Where something was looked for among many there is none, and
 * `how` says why.
 */
#pragma once
#include "engine/solution.h"

typedef struct {
  char *name; /* owned; as the formula has it */
  double value;
  const char *unit;   /* "m", "N m"; "" for a plain number */
  const char *key;    /* nullable: the report key or file key it is */
  const char *what;   /* N_(), nullable: what it is where it has no key */
  const char *source; /* nullable: where it is from where it has no key */
} SwWorkingInput;

typedef struct {
  const char *key;     /* "geometry.slant_m"; lists: "marks.arc_m", shown for one row */
  const char *formula; /* nullable: nothing that could be evaluated */
  const char *words;   /* the formula as `basis` has it, to be read */
  const char *source;
  const char *how;     /* N_(), nullable: how it was solved, or which row is shown */
  const char *assumes; /* N_(), nullable: what was taken for granted */
  GArray *inputs;      /* owned: SwWorkingInput, each name once, in the formula's order */
  double result;
  const char *unit;
} SwWorking;

/* Returns: (transfer full) (nullable): NULL for an unknown key, and for one that does not apply
 * to this design. */
SwWorking *sw_working_new (const SwSolution *solution, const char *key);
void sw_working_free (SwWorking *working);

/* Of every number that the solution has, in the report's order.
 * Returns: (transfer full) (element-type SwWorking).
 */
GPtrArray *sw_workings_new (const SwSolution *solution);

/* Whether a working may be asked for by this name: a key, or the group it stands in
 * ("support"). */
gboolean sw_working_known (const char *key_or_group);
gboolean sw_working_is_in (const SwWorking *working, const char *key_or_group);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwWorking, sw_working_free)
