// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-guys.c: guys, their stakes, and where they pass the strips. */
#include "engine/cone.h"
#include "engine/finding-table.h"
#include "engine/stand.h"

#include <glib/gi18n.h>
#include <math.h>

/* Both our own choice: above, a guy presses the post down more than it holds; room between guy
 * and strip, besides half the strip.
 */
#define STEEP_DEG 60
#define CLEAR_M 0.010

static gboolean
few_guys (const SwSolution *s, SwFindingDraft *draft)
{
  int count = s->design->guys.count;

  if (count != 1 && count != 2)
    return FALSE;
  sw_draft_say (draft, "count", SW_QUANTITY_COUNT, count);
  sw_draft_remedy (draft, "guys.count", 3);
  sw_draft_remedy (draft, "guys.count", 4);
  return TRUE;
}

static gboolean
guys_nowhere (const SwSolution *s, SwFindingDraft *draft)
{
  const SwGuys *guys = &s->design->guys;

  return guys->count > 0 && (!(guys->height_m > 0) || !(guys->radius_m > 0));
}

static gboolean
guys_too_high (const SwSolution *s, SwFindingDraft *draft)
{
  double crown_m = s->design->shape.crown_height_m, guys_m = s->design->guys.height_m;

  if (s->design->guys.count == 0 || guys_m <= crown_m)
    return FALSE;
  sw_draft_say (draft, "guys", SW_QUANTITY_LENGTH, guys_m);
  sw_draft_say (draft, "crown", SW_QUANTITY_LENGTH, crown_m);
  sw_draft_remedy (draft, "guys.height_m", sw_round_down (0.95 * crown_m, 0.01));
  return TRUE;
}

static gboolean
guys_inside_ring (const SwSolution *s, SwFindingDraft *draft)
{
  double ring_m = s->design->shape.ring_radius_m, guys_m = s->design->guys.radius_m;

  if (s->design->guys.count == 0 || guys_m > ring_m || !(guys_m > 0))
    return FALSE;
  sw_draft_say (draft, "guys", SW_QUANTITY_LENGTH, guys_m);
  sw_draft_say (draft, "ring", SW_QUANTITY_LENGTH, ring_m);
  sw_draft_remedy (draft, "guys.radius_m", sw_round_up (1.5 * ring_m, 0.1));
  return TRUE;
}

static gboolean
guys_steep (const SwSolution *s, SwFindingDraft *draft)
{
  const SwGuys *guys = &s->design->guys;
  double angle_deg = atan2 (guys->height_m, guys->radius_m) * 180 / G_PI;

  if (guys->count == 0 || !(guys->radius_m > 0) || angle_deg <= STEEP_DEG)
    return FALSE;
  sw_draft_say (draft, "angle", SW_QUANTITY_ANGLE, angle_deg);
  sw_draft_say (draft, "times", SW_QUANTITY_RATIO, 1 / cos (angle_deg * G_PI / 180));
  sw_draft_remedy (draft,
                   "guys.radius_m",
                   sw_round_up (guys->height_m / tan (STEEP_DEG * G_PI / 180), 0.05));
  return TRUE;
}

static gboolean
guy_weak (const SwSolution *s, SwFindingDraft *draft)
{
  const SwGuys *guys = &s->design->guys;

  if (!(s->support.guy_factor < SW_FACTOR_ROPE))
    return FALSE;
  sw_draft_say (draft, "pull", SW_QUANTITY_FORCE, s->support.guy_tension_n);
  sw_draft_say (draft, "factor", SW_QUANTITY_RATIO, s->support.guy_factor);
  sw_draft_say (draft, "needed", SW_QUANTITY_RATIO, SW_FACTOR_ROPE);
  if (guys->end_efficiency > 0)
    sw_draft_remedy (
      draft,
      "guys.break_n",
      sw_round_up (SW_FACTOR_ROPE * s->support.guy_tension_n / guys->end_efficiency, 10));
  return TRUE;
}

static gboolean
stake_weak (const SwSolution *s, SwFindingDraft *draft)
{
  double needed_n = sw_round_up (SW_FACTOR_STAKE * s->support.guy_tension_n, 10);

  if (!(s->support.stake_factor < SW_FACTOR_STAKE))
    return FALSE;
  sw_draft_say (draft, "pull", SW_QUANTITY_FORCE, s->support.guy_tension_n);
  sw_draft_say (draft, "hold", SW_QUANTITY_FORCE, s->design->guys.stake_hold_n);
  sw_draft_say (draft, "needed", SW_QUANTITY_FORCE, needed_n);
  sw_draft_remedy (draft, "guys.stake_hold_n", needed_n);
  return TRUE;
}

static gboolean
break_above_line (const SwSolution *s, SwFindingDraft *draft)
{
  const SwLine *line = sw_catalogue_line (s->catalogue, s->design->guys.line);

  if (s->design->guys.count == 0 || line == NULL ||
      s->design->guys.break_n <= line->break_n * 1.001)
    return FALSE;
  sw_draft_say (draft, "counted", SW_QUANTITY_FORCE, s->design->guys.break_n);
  sw_draft_say (draft, "line", SW_QUANTITY_FORCE, line->break_n);
  sw_draft_remedy (draft, "guys.break_n", sw_round_down (line->break_n, 10));
  return TRUE;
}

/* How far from the axis a guy goes through the cone of strips; NAN where it does not. */
static double
crossing_radius_m (const SwDesign *design)
{
  const SwShape *shape = &design->shape;
  const SwGuys *guys = &design->guys;
  double widens = (shape->ring_radius_m - shape->crown_radius_m) /
                  (shape->crown_height_m - shape->ring_height_m);
  double runs_out = guys->radius_m / guys->height_m;

  /* runs_out·(guy height − z) = crown radius + widens·(crown height − z) */
  double z_m =
    (runs_out * guys->height_m - shape->crown_radius_m - widens * shape->crown_height_m) /
    (runs_out - widens);
  gboolean crosses = runs_out > widens && z_m > shape->ring_height_m && z_m < guys->height_m &&
                     z_m < shape->crown_height_m;
  return crosses ? runs_out * (guys->height_m - z_m) : NAN;
}

/* Angle from the guy to the nearest strip. */
static double
nearest_strip_deg (const SwShape *shape, double azimuth_deg)
{
  double step_deg = sw_cone_step_deg (shape);
  double from_first_deg = sw_azimuth_wrap_deg (azimuth_deg - sw_cone_azimuth_deg (shape, 1));
  double strips = floor (from_first_deg / step_deg); /* passed since the first one */

  if (shape->coverage_deg >= 360 || strips < shape->strip_count - 1) {
    double off_deg = from_first_deg - strips * step_deg;
    return MIN (off_deg, step_deg - off_deg);
  }
  return MIN (from_first_deg - shape->coverage_deg,
              360 - from_first_deg); /* in the open part */
}

/* Of all guys, when the first one stands there. */
static double
least_off_deg (const SwDesign *design, double first_deg)
{
  double least = 360;

  for (int i = 0; i < design->guys.count; i++)
    least =
      MIN (least,
           nearest_strip_deg (&design->shape, first_deg + i * 360.0 / design->guys.count));
  return least;
}

/* The turn of the guys, in whole degrees and halves, that leaves most room. */
static double
best_first_deg (const SwDesign *design)
{
  double best = design->guys.first_azimuth_deg, most = 0;

  for (int half = 0; half < 720 / design->guys.count; half++) {
    double off = least_off_deg (design, half / 2.0);
    if (off > most + 1e-9) {
      most = off;
      best = half / 2.0;
    }
  }
  return best;
}

/* The least of the values, each 1.5 times the last, with which no strip touches a guy in the
 * design's gust; NAN where none up to `most` does. `at` is a number of the copy. */
static double
least_clear (const SwSolution *s, gsize at, double most)
{
  g_autoptr (SwDesign) design = sw_design_copy (s->design);
  double *number = (double *) (gpointer) ((char *) design + at);

  for (double value = *number * 1.5; value <= most && value > 0; value *= 1.5) {
    *number = sw_round_up (value, 1);
    if (!sw_strip_bow_hits_guy (design, &s->cone))
      return *number;
  }
  return NAN;
}

static gboolean
strip_hits_guy (const SwSolution *s, SwFindingDraft *draft)
{
  if (!(s->bow.strip_guy_gap_m <= 0))
    return FALSE;
  sw_draft_say (draft, "gust", SW_QUANTITY_SPEED, s->design->site.gust_mps);
  sw_draft_say (draft, "bow", SW_QUANTITY_SHORT_LENGTH, s->bow.strip_bow_m);
  sw_draft_say (draft, "touch", SW_QUANTITY_SPEED, s->bow.guy_touch_mps);
  sw_draft_remedy (draft, "guys.first_azimuth_deg", best_first_deg (s->design));
  sw_draft_remedy (draft,
                   "strip.tension_n",
                   least_clear (s, G_STRUCT_OFFSET (SwDesign, strip.tension_n), 60));
  sw_draft_remedy (draft,
                   "strip.tie_n_per_m",
                   least_clear (s, G_STRUCT_OFFSET (SwDesign, strip.tie_n_per_m), 1000));
  return TRUE;
}

static gboolean
guy_rubs (const SwSolution *s, SwFindingDraft *draft)
{
  const SwDesign *design = s->design;
  double needed_m = design->strip.width_m / 2 + CLEAR_M;
  double radius_m =
    design->guys.count > 0 && design->guys.height_m > 0 ? crossing_radius_m (design) : NAN;

  if (isnan (radius_m))
    return FALSE;
  double off_deg = least_off_deg (design, design->guys.first_azimuth_deg);
  double off_m = radius_m * off_deg * G_PI / 180;
  if (off_m >= needed_m)
    return FALSE;
  sw_draft_say (draft, "off", SW_QUANTITY_SHORT_LENGTH, off_m);
  sw_draft_say (draft, "needed", SW_QUANTITY_SHORT_LENGTH, needed_m);
  sw_draft_remedy (draft, "guys.first_azimuth_deg", best_first_deg (design));
  return TRUE;
}

const SwFindingRow sw_findings_of_guys[] = {
  { SW_LEVEL_STOP,
    "guy-weak",
    "guys.break_n",
    N_ ("In the gust a guy pulls with {pull}; the line bears {factor} times that at its ends, "
        "{needed} are needed. Use a stronger line, or spread the stakes."),
    guy_weak },
  { SW_LEVEL_STOP,
    "stake-weak",
    "guys.stake_hold_n",
    N_ (
      "In the gust a guy pulls its stake with {pull}, and {hold} is what the stake must hold. "
      "Stakes that hold {needed} are needed."),
    stake_weak },
  { SW_LEVEL_WARN,
    "too-few-guys",
    "guys.count",
    N_ (
      "One or two guys hold in one direction only and are not counted ({count}). Three or more "
      "hold the post."),
    few_guys },
  { SW_LEVEL_WARN,
    "guys-nowhere",
    "guys.height_m",
    N_ ("Guys that begin at the ground or end at the post hold nothing and are not counted."),
    guys_nowhere },
  { SW_LEVEL_WARN,
    "guys-above-crown",
    "guys.height_m",
    N_ ("The guys are to meet the post at {guys}, but the post ends at the crown, at {crown}."),
    guys_too_high },
  { SW_LEVEL_WARN,
    "guys-inside-ring",
    "guys.radius_m",
    N_ (
      "The stakes stand {guys} from the post, inside the ring of {ring}: the guys pull against "
      "the strips and hold little."),
    guys_inside_ring },
  { SW_LEVEL_WARN,
    "guys-steep",
    "guys.radius_m",
    N_ (
      "The guys rise at {angle}: each pulls {times} times as hard as it holds. Set the stakes "
      "further out."),
    guys_steep },
  { SW_LEVEL_WARN,
    "guy-rubs-strip",
    "guys.first_azimuth_deg",
    N_ ("A guy passes {off} beside the middle of a strip; {needed} keep it from rubbing. Turn "
        "the "
        "guys between two strips."),
    guy_rubs },
  { SW_LEVEL_WARN,
    "strip-hits-guy",
    "guys.first_azimuth_deg",
    N_ ("In a gust of {gust} the wind bows a strip by up to {bow} and presses one into a guy; "
        "the "
        "first touches at {touch}. Turn the guys between two strips, or let strips bow less; "
        "look for chafed strips after each wind."),
    strip_hits_guy },
  { SW_LEVEL_WARN,
    "line-weaker-than-counted",
    "guys.break_n",
    N_ ("The guys are counted to break at {counted}, but the line chosen breaks at {line}."),
    break_above_line },
  { 0 }
};
