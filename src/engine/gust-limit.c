// SPDX-License-Identifier: GPL-3.0-or-later
/* gust-limit.c: the highest gust at which every way to fail keeps its factor. */
#include "engine/stand-model.h"

#include <math.h>

static double
tipping_margin (const SwStandModel *model, double square)
{
  return sw_model_tipping (model, square) / SW_FACTOR_NEEDED;
}

static double
sliding_margin (const SwStandModel *model, double square)
{
  return sw_model_sliding (model, square) / SW_FACTOR_NEEDED;
}

static double
socket_margin (const SwStandModel *model, double square)
{
  return sw_model_over (model->design->stand.socket_depth_m,
                        sw_model_socket_needed (model, square));
}

static double
post_margin (const SwStandModel *model, double square)
{
  return sw_model_over (model->post.yield_pa, sw_model_post_stress (model, square)) /
         SW_FACTOR_NEEDED;
}

static double
ring_margin (const SwStandModel *model, double square)
{
  double gust_n = model->ring_still.tie_n * sw_model_strip_tension (model, square) /
                  model->design->strip.tension_n;

  return sw_model_over (model->design->stand.tie_hold_n, gust_n) / SW_FACTOR_STAKE;
}

static double
guy_margin (const SwStandModel *model, double square)
{
  const SwGuys *guys = &model->design->guys;

  return sw_model_over (guys->break_n * guys->end_efficiency,
                        sw_model_guys (model, square).tension_n) /
         SW_FACTOR_ROPE;
}

static double
stake_margin (const SwStandModel *model, double square)
{
  return sw_model_over (model->design->guys.stake_hold_n,
                        sw_model_guys (model, square).tension_n) /
         SW_FACTOR_STAKE;
}

static double
guyed_post_margin (const SwStandModel *model, double square)
{
  double stress_pa = sw_model_guys (model, square).post_moment_nm / model->post.section_m3;

  return sw_model_over (model->post.yield_pa, stress_pa) / SW_FACTOR_NEEDED;
}

static double
guyed_sliding_margin (const SwStandModel *model, double square)
{
  double grip_n = model->design->stand.friction * model->foot_mass_kg * SW_GRAVITY;

  return sw_model_over (grip_n, sw_model_guys (model, square).base_shear_n) / SW_FACTOR_NEEDED;
}

/* A tie that was not pulled says nothing about a gust; a finding says so. */
static gboolean
ties_tested (const SwStandModel *model)
{
  return !model->gathered && model->design->stand.tie_hold_n > 0 &&
         model->design->stand.ring_ties >= 3 && model->design->strip.tension_n > 0;
}

static gboolean
always (const SwStandModel *model)
{
  return TRUE;
}

typedef struct {
  SwLimitReason reason;
  gboolean (*applies) (const SwStandModel *model);
  SwMargin margin;
} Mode;

static const Mode unguyed_modes[] = {
  { SW_LIMIT_TIPPING, sw_model_on_foot, tipping_margin },
  { SW_LIMIT_SLIDING, sw_model_on_foot, sliding_margin },
  { SW_LIMIT_SOCKET, sw_model_in_socket, socket_margin },
  { SW_LIMIT_POST, always, post_margin },
  { SW_LIMIT_RING, ties_tested, ring_margin },
};

static const Mode guyed_modes[] = {
  { SW_LIMIT_GUY, always, guy_margin },
  { SW_LIMIT_STAKE, always, stake_margin },
  { SW_LIMIT_POST, always, guyed_post_margin },
  { SW_LIMIT_SLIDING, sw_model_on_foot, guyed_sliding_margin },
  { SW_LIMIT_RING, ties_tested, ring_margin },
};

static gboolean
holds (const SwStandModel *model, SwMargin margin, double gust_mps)
{
  double design_mps = model->design->site.gust_mps;

  return margin (model, gust_mps * gust_mps / (design_mps * design_mps)) >= 1;
}

/* Every margin falls with the gust, so halving finds its limit. */
double
sw_gust_limit_of (const SwStandModel *model, SwMargin margin)
{
  double low = 0, high = SW_GUST_MOST_MPS;

  if (isnan (margin (model, 1)))
    return NAN;
  if (!holds (model, margin, 0))
    return 0;
  if (holds (model, margin, high))
    return high;
  while (high - low > 1e-10 * high) {
    double middle = (low + high) / 2;
    if (holds (model, margin, middle))
      low = middle;
    else
      high = middle;
  }
  return low;
}

static double
least_limit (const SwStandModel *model, const Mode *modes, guint n_modes, SwLimitReason *reason)
{
  double least = SW_GUST_MOST_MPS;

  *reason = SW_LIMIT_NONE;
  for (guint i = 0; i < n_modes; i++) {
    if (!modes[i].applies (model))
      continue;
    double limit = sw_gust_limit_of (model, modes[i].margin);
    if (isnan (limit))
      return NAN;
    if (limit < least) {
      least = limit;
      *reason = modes[i].reason;
    }
  }
  return least;
}

static double
rounded_down (double gust_mps, double step_mps)
{
  return floor (gust_mps / step_mps * (1 + 1e-12)) * step_mps;
}

/* Four fifths of the limit; never above what a further check bears. */
static double
take_down_gust (const SwStandModel *model, double limit_mps, double checks_mps)
{
  const SwDesign *design = model->design;
  double step_mps = design->units == SW_UNITS_US ? 5 * 1609.344 / 3600 : 2;
  gboolean beyond = model->cone->overall_height_m > 6 || design->site.ice_mm > 0 ||
                    (sw_model_in_socket (model) && design->site.soil == SW_SOIL_UNKNOWN);

  if (beyond || isnan (limit_mps))
    return NAN;
  return rounded_down (MIN (0.8 * limit_mps, checks_mps), step_mps);
}

void
sw_gust_limits (SwSupport *support, const SwStandModel *model)
{
  support->gust_limit_guyed_mps = NAN;
  support->gust_limit_unguyed_mps = least_limit (model,
                                                 unguyed_modes,
                                                 G_N_ELEMENTS (unguyed_modes),
                                                 &support->limit_reason_unguyed);
  support->limit_reason = support->limit_reason_unguyed;
  support->gust_limit_mps = support->gust_limit_unguyed_mps;
  if (sw_model_guyed (model)) {
    support->gust_limit_guyed_mps = least_limit (model,
                                                 guyed_modes,
                                                 G_N_ELEMENTS (guyed_modes),
                                                 &support->limit_reason_guyed);
    if (model->design->guys.stakes_tested) {
      support->gust_limit_mps = support->gust_limit_guyed_mps;
      support->limit_reason = support->limit_reason_guyed;
    }
  }
  sw_stand_checks_limit (&support->checks, model);
  gboolean counted = sw_model_guyed (model) && model->design->guys.stakes_tested;
  support->take_down_gust_mps =
    take_down_gust (model,
                    support->gust_limit_mps,
                    sw_stand_checks_least_mps (&support->checks, counted));
}
