// SPDX-License-Identifier: GPL-3.0-or-later
/* stand-model.h: what stand.c, gust-limit.c and the workings share: the stand at any gust.
 * `square` is the gust's square over that of the design's gust; wind forces grow with it, the
 * still-air pulls do not.
 */
#pragma once
#include "engine/ring-statics.h"
#include "engine/stand.h"
#include "engine/tube.h"

#define SW_GRAVITY 9.80665 /* m/s², standard (NIST SP 811) */

/* What the soil bears sideways, Pa a metre of depth, as a single pole may take it. */
double sw_soil_pa_per_m (SwSoil soil);

/* A strip between hook and tie, as sw_strip_tension () takes it. */
SwStripLine sw_strip_line_of (const SwDesign *design, const SwCone *cone);

/* All that the checks at one gust read; forces are for the design's gust and scale with its
 * square. */
struct SwStandModel {
  const SwDesign *design;
  const SwCone *cone;
  const SwWind *wind;
  SwTube post, ring, stub;
  double side_n; /* of a partial tree, still air, on the crown */
  double foot_mass_kg, lever_m;
  double hanging_kg; /* what presses the post down: crown, star, strips and the post itself */
  double lap_m, lap_section_m3; /* what the half lap leaves of a board; NAN without boards */
  double lean_m;           /* at the crown, from play in the sleeve; NAN for an unknown pipe */
  gboolean gathered;       /* strips off the ring and wound on the post: they pull nothing */
  double guys_pulling;     /* sw_guy_least_pulling () */
  SwRingAnswer ring_still; /* at the strips' pull in still air */
};

typedef struct {
  const SwDesign *design;
  const SwCone *cone;
  const SwWind *wind;
  const SwCatalogue *catalogue;
} SwStandGiven;

/* The model borrows what it is given, the catalogue aside. */
void sw_stand_model_init (SwStandModel *model, const SwStandGiven *given);

gboolean sw_model_on_foot (const SwStandModel *model);
gboolean sw_model_in_socket (const SwStandModel *model);
gboolean sw_model_ring_on_foot (const SwStandModel *model);
gboolean sw_model_guyed (const SwStandModel *model); /* three guys or more */

/* Strength over demand; infinite without demand. */
double sw_model_over (double strength, double demand);
/* What pushes the post. The ring's share pushes the foot, not the post; a partial tree's pull
 * counts only where it is not internal: with the ring held by the ground. */
SwPostLoad sw_model_load (const SwStandModel *model, double square);
double sw_model_moment (const SwStandModel *model, double square); /* at the ground, no guys */
SwGuyRig sw_model_rig (const SwStandModel *model);
double sw_model_tipping (const SwStandModel *model, double square);
double sw_model_sliding (const SwStandModel *model, double square);
double sw_model_post_stress (const SwStandModel *model, double square);
double sw_model_socket_needed (const SwStandModel *model, double square);
SwGuyAnswer sw_model_guys (const SwStandModel *model, double square);
double sw_model_strip_tension (const SwStandModel *model, double square);
/* The ring with every strip pulling so hard. */
SwRingAnswer sw_model_ring (const SwStandModel *model, double tension_n);

/* How far a check is from its limit: 1 and more stands. Must fall with the gust. */
typedef double (*SwMargin) (const SwStandModel *model, double square);

/* The highest gust with a margin of 1; 0: fails in still air; at most SW_GUST_MOST_MPS; NAN
 * where the margin is none. */
double sw_gust_limit_of (const SwStandModel *model, SwMargin margin);

/* Sets the gust limits, their reason, the checks' limits and the take-down gust. */
void sw_gust_limits (SwSupport *support, const SwStandModel *model);
