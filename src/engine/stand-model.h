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

/* All that the checks at one gust read; forces are for the design's gust and scale with its
 * square. */
typedef struct {
  const SwDesign *design;
  const SwCone *cone;
  const SwWind *wind;
  SwTube post, ring;
  double side_n; /* of a partial tree, still air, on the crown */
  double foot_mass_kg, lever_m;
  double guys_pulling;     /* sw_guy_least_pulling () */
  SwRingAnswer ring_still; /* at the strips' pull in still air */
} SwStandModel;

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
double sw_model_tipping (const SwStandModel *model, double square);
double sw_model_sliding (const SwStandModel *model, double square);
double sw_model_post_stress (const SwStandModel *model, double square);
double sw_model_socket_needed (const SwStandModel *model, double square);
SwGuyAnswer sw_model_guys (const SwStandModel *model, double square);
double sw_model_strip_tension (const SwStandModel *model, double square);
/* The ring with every strip pulling so hard. */
SwRingAnswer sw_model_ring (const SwStandModel *model, double tension_n);

/* Sets the gust limits, their reason and the take-down gust. */
void sw_gust_limits (SwSupport *support, const SwStandModel *model);
