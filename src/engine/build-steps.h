// SPDX-License-Identifier: GPL-3.0-or-later
/* build-steps.h: the work from the first strip to the first evening, as this design asks for
 * it.
 *
 * One row a step, one table a subject (steps-….c). A step is there when all parts it cannot do
 * without are in the parts list, and its own test, where it has one, says so.
 *
 * Takes    a whole solution (with parts)
 * Errors   none
 * Source   minutes and hands: common practice, no source; drill sizes are the catalogue's
 */
#pragma once
#include "engine/solution.h"

typedef enum {
  SW_STEP_STRIPS,
  SW_STEP_STAR,
  SW_STEP_FOOT,
  SW_STEP_RING,
  SW_STEP_CROWN,
  SW_STEP_GUYS,
  SW_STEP_WIRING,
  SW_STEP_BOX,
  SW_STEP_RAISING,
  SW_STEP_TENSION,
  SW_STEP_POWER,
  SW_STEP_SUBJECTS, /* how many */
} SwStepSubject;

extern const char *const sw_step_subject_words[];  /* "strips", … */
extern const char *const sw_step_subject_labels[]; /* N_() */

/* Parts: tokens between blanks. A token is an id of the parts list, "*" standing for any
 * letters; or what the design names, "@post"; alternatives stand between "|". A token after "?"
 * need not be there. */
typedef struct {
  SwStepSubject subject;
  const char *id;
  gboolean (*applies) (const SwSolution *solution); /* NULL: when its parts are there */
  const char *what;                                 /* N_(), with {names} of step-values.h */
  const char *check;                                /* N_(): what may fail, and by how much */
  const char *parts;                                /* NULL: none */
  const char *tools;                                /* N_(), nullable */
  double minutes;   /* of work, for all hands together at once */
  const char *each; /* nullable: the value whose count the minutes are for */
  int hands;
  int (*hands_of) (const SwSolution *solution); /* nullable: worked out instead */
  double wait_days;                             /* before what follows */
} SwStepRow;

/* Each ends with a row without an id. */
extern const SwStepRow sw_steps_of_strips[], sw_steps_of_star[], sw_steps_of_foot[],
  sw_steps_of_ring[], sw_steps_of_crown[], sw_steps_of_light[], sw_steps_of_raising[];

typedef struct {
  const SwStepRow *row;
  GPtrArray *parts; /* owned: const SwPart *, of the solution's parts list, each once */
  double minutes;   /* for all of them, in whole fives */
  int hands;
} SwStep;

/* Returns: (transfer full) (element-type SwStep): in the order of the work; it borrows from the
 * solution. */
GPtrArray *sw_steps_new (const SwSolution *solution);

/* Hours of one subject: Σ minutes·hands/60. */
double sw_steps_hours (const GPtrArray *steps, SwStepSubject subject);
