// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/build-steps.h"

#include "engine/step-values.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

const char *const sw_step_subject_words[] = { "strips",  "star",    "foot",    "ring",
                                              "crown",   "guys",    "wiring",  "driver-box",
                                              "raising", "tension", "power-on" };

const char *const sw_step_subject_labels[] = {
  N_ ("Strips"),  N_ ("Star"),       N_ ("Post and foot"), N_ ("Ring"),
  N_ ("Crown"),   N_ ("Guys"),       N_ ("Wiring"),        N_ ("Driver box"),
  N_ ("Raising"), N_ ("Tensioning"), N_ ("Power on"),
};

static const SwStepRow *const tables[] = {
  sw_steps_of_strips, sw_steps_of_star,  sw_steps_of_foot,    sw_steps_of_ring,
  sw_steps_of_crown,  sw_steps_of_light, sw_steps_of_raising, NULL,
};

/* What a design names by id, or chooses by size. */
static const char *
pipe_id (const SwPipe *pipe)
{
  return pipe == NULL ? NULL : pipe->id;
}

static const char *
fitting_id (const SwFitting *fitting)
{
  return fitting == NULL ? NULL : fitting->id;
}

static const char *
joint_tube_id (const SwSolution *s)
{
  return pipe_id (sw_joint_tube (s->catalogue, s->fittings.post));
}

#define ROLE(name, expression)                                                                 \
  static const char *name (const SwSolution *s)                                                \
  {                                                                                            \
    return expression;                                                                         \
  }

/* clang-format off */
ROLE (role_post, s->design->stand.post)
ROLE (role_sleeve, s->design->stand.sleeve)
ROLE (role_ring_pipe, s->design->stand.ring_pipe)
ROLE (role_stub, pipe_id (s->fittings.stub))
ROLE (role_board, s->heights.board == NULL ? NULL : s->heights.board->id)
ROLE (role_hook, s->design->crown.hook)
ROLE (role_line, s->design->guys.line)
ROLE (role_grommet, fitting_id (s->fittings.grommet))
ROLE (role_post_flange, fitting_id (s->fittings.post_top.flange))
ROLE (role_post_connector, fitting_id (s->fittings.post_top.connector))
ROLE (role_foot_flange, fitting_id (s->fittings.sleeve_foot.flange))
ROLE (role_foot_connector, fitting_id (s->fittings.sleeve_foot.connector))
ROLE (role_star_flange, fitting_id (s->fittings.top_flange))
ROLE (role_reducer_1, fitting_id (s->fittings.reducers[0]))
ROLE (role_reducer_2, fitting_id (s->fittings.reducers[1]))
ROLE (role_stub_connector, fitting_id (s->fittings.stub_connector))
ROLE (role_u_bolt, fitting_id (s->fittings.u_bolt))
/* clang-format on */

static const struct {
  const char *name;
  const char *(*id) (const SwSolution *s); /* nullable */
} roles[] = {
  { "@board", role_board },
  { "@foot-connector", role_foot_connector },
  { "@foot-flange", role_foot_flange },
  { "@grommet", role_grommet },
  { "@hook", role_hook },
  { "@joint-tube", joint_tube_id },
  { "@line", role_line },
  { "@post", role_post },
  { "@post-connector", role_post_connector },
  { "@post-flange", role_post_flange },
  { "@reducer-1", role_reducer_1 },
  { "@reducer-2", role_reducer_2 },
  { "@ring-pipe", role_ring_pipe },
  { "@sleeve", role_sleeve },
  { "@star-flange", role_star_flange },
  { "@stub", role_stub },
  { "@stub-connector", role_stub_connector },
  { "@u-bolt", role_u_bolt },
};

/* Returns: (nullable): what the token's name stands for. */
static const char *
pattern_of (const SwSolution *solution, const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (roles); i++) {
    if (strcmp (roles[i].name, name) == 0)
      return roles[i].id (solution);
  }
  return name;
}

static void
add_once (GPtrArray *parts, const SwPart *part)
{
  if (!g_ptr_array_find (parts, part, NULL))
    g_ptr_array_add (parts, (gpointer) (guintptr) part);
}

/* Returns: how many rows of the parts list it stands for. */
static guint
add_matching (GPtrArray *parts, const SwSolution *solution, const char *name)
{
  const char *pattern = pattern_of (solution, name);
  guint found = 0;

  for (guint i = 0; pattern != NULL && i < solution->bom->len; i++) {
    const SwPart *part = &g_array_index (solution->bom, SwPart, i);

    if (!g_pattern_match_simple (pattern, part->id))
      continue;
    add_once (parts, part);
    found++;
  }
  return found;
}

/* Returns: FALSE where a token that must be there is not. */
static gboolean
add_token (GPtrArray *parts, const SwSolution *solution, const char *token)
{
  gboolean optional = *token == '?';
  g_auto (GStrv) names = g_strsplit (token + optional, "|", -1);
  guint found = 0;

  for (guint i = 0; names[i] != NULL; i++)
    found += add_matching (parts, solution, names[i]);
  return optional || found > 0;
}

static gboolean
add_parts (GPtrArray *parts, const SwSolution *solution, const SwStepRow *row)
{
  g_auto (GStrv) tokens = g_strsplit (row->parts == NULL ? "" : row->parts, " ", -1);

  for (guint i = 0; tokens[i] != NULL; i++) {
    if (!add_token (parts, solution, tokens[i]))
      return FALSE;
  }
  return TRUE;
}

static double
minutes_of (const SwSolution *solution, const SwStepRow *row)
{
  double count = row->each == NULL ? 1 : sw_step_value (solution, row->each);

  return 5 * ceil (row->minutes * (isfinite (count) ? count : 1) / 5 - 1e-9);
}

static void
step_free (gpointer data)
{
  SwStep *step = data;

  g_ptr_array_unref (step->parts);
  g_free (step);
}

static void
add_step (GPtrArray *steps, const SwSolution *solution, const SwStepRow *row)
{
  SwStep *step = g_new0 (SwStep, 1);

  step->row = row;
  step->parts = g_ptr_array_new ();
  step->minutes = minutes_of (solution, row);
  step->hands = row->hands_of == NULL ? row->hands : row->hands_of (solution);
  if ((row->applies == NULL || row->applies (solution)) &&
      add_parts (step->parts, solution, row))
    g_ptr_array_add (steps, step);
  else
    step_free (step);
}

GPtrArray *
sw_steps_new (const SwSolution *solution)
{
  GPtrArray *steps = g_ptr_array_new_with_free_func (step_free);

  g_return_val_if_fail (solution->bom != NULL, steps);
  for (guint i = 0; tables[i] != NULL; i++) {
    for (const SwStepRow *row = tables[i]; row->id != NULL; row++)
      add_step (steps, solution, row);
  }
  return steps;
}

double
sw_steps_hours (const GPtrArray *steps, SwStepSubject subject)
{
  double minutes = 0;

  for (guint i = 0; i < steps->len; i++) {
    const SwStep *step = steps->pdata[i];
    if (step->row->subject == subject)
      minutes += step->minutes * step->hands;
  }
  return minutes / 60;
}
