// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/raising.h"

#include <glib/gi18n-lib.h>
#include <math.h>

#define GRAVITY 9.80665
#define STEP_DEG 15.0

const char *const sw_raise_way_words[] = { "tilt-up", "hoisted-crown", "platform" };

const char *const sw_raise_way_labels[] = { N_ ("Tilt up"),
                                            N_ ("Hoisted crown"),
                                            N_ ("From a platform") };

const char *const sw_raise_answers[] = {
  [SW_RAISE_YES] = N_ ("yes"),
  [SW_RAISE_NO_HANDS] = N_ (
    "no: it takes more hands than one voice can lead. Have it lifted by a machine, or choose "
    "another way"),
  [SW_RAISE_NO_TOP_FIXED] = N_ (
    "no: this crown is bolted on the post’s upper end, so nothing can be hauled up past it"),
  [SW_RAISE_NO_HIGH] = N_ (
    "no: the platform would stand higher than four times the width of a usual folding tower, "
    "more than may stand freely"),
  [SW_RAISE_NO_LOW] = N_ ("not needed: the crown is reached from the ground"),
};

typedef struct {
  double mass_kg, at_m; /* along the post from its foot */
} Lump;

static void
add_lump (SwLift *lift, Lump lump)
{
  double sum_kg = lift->mass_kg + lump.mass_kg;

  if (!(lump.mass_kg > 0))
    return;
  lift->centre_m = (lift->mass_kg * lift->centre_m + lump.mass_kg * lump.at_m) / sum_kg;
  lift->mass_kg = sum_kg;
}

static void
add_post (SwLift *lift, const SwSolution *solution)
{
  const SwPipe *post = solution->fittings.post;
  double post_m = solution->heights.post_m;
  double kg = post == NULL ? NAN : post->mass_kg_per_m * post_m;

  lift->mass_kg = kg;
  lift->centre_m = post_m / 2;
}

/* The same masses as sw_lift_kg () adds up, each where it is. */
static void
add_top (SwLift *lift, const SwSolution *solution)
{
  const SwDesign *design = solution->design;
  const SwPipe *stub = solution->fittings.stub;
  double crown_m = solution->heights.post_m, star_m = crown_m + design->topper.stub_m;
  gboolean star = design->topper.kind == SW_TOPPER_STAR;
  double strips_kg =
    design->shape.strip_count * design->strip.mass_kg_per_m * solution->cone.slant_m;

  add_lump (lift, (Lump){ design->crown.mass_kg + strips_kg, crown_m });
  if (star)
    add_lump (lift, (Lump){ design->topper.mass_kg, star_m + design->topper.height_m / 2 });
  if (stub != NULL && solution->heights.stub_m > 0)
    add_lump (lift,
              (Lump){ stub->mass_kg_per_m * solution->heights.stub_m,
                      crown_m + solution->heights.stub_m / 2 });
}

/* Hands push square to the post: they take a part of the weight off the foot, and thrust it
 * along the ground. */
static void
push_row (SwLiftRow *row, const SwLift *lift, double post_m)
{
  double angle = row->angle_deg * G_PI / 180;
  double weight_n = lift->mass_kg * GRAVITY;
  double at_m = row->angle_deg > 0 ? MIN (post_m, SW_RAISE_REACH_M / sin (angle)) : post_m;

  row->push_n = weight_n * lift->centre_m * cos (angle) / at_m;
  row->block_n = row->push_n * sin (angle);
  row->press_n = weight_n - row->push_n * cos (angle);
}

/* The post leans to −x; the rope runs from it to hands at +x. */
static void
pull_row (SwLiftRow *row, const SwLift *lift, const SwRaising *raising, double walk_m)
{
  double angle = row->angle_deg * G_PI / 180;
  double weight_n = lift->mass_kg * GRAVITY;
  double x = -raising->rope_at_m * cos (angle), z = raising->rope_at_m * sin (angle);
  double run = walk_m - x, fall = SW_RAISE_HOLD_M - z, rope_m = hypot (run, fall);
  double arm_m = (z * run - x * fall) / rope_m; /* |A × u| */

  row->rope_n = weight_n * lift->centre_m * cos (angle) / arm_m;
  row->block_n = row->rope_n * run / rope_m;
  row->press_n = weight_n - row->rope_n * fall / rope_m;
}

static int
hands_for (double force_n, double each_n)
{
  return isfinite (force_n) ? (int) ceil (force_n / each_n - 1e-9) : 0;
}

static void
solve_lift (SwLift *lift, const SwRaising *raising, const SwSolution *solution)
{
  double post_m = solution->heights.post_m;

  for (int i = 0; i < SW_LIFT_STEPS; i++) {
    SwLiftRow *row = &lift->rows[i];

    *row = (SwLiftRow){ .angle_deg = i * STEP_DEG };
    if (row->angle_deg < SW_RAISE_HANDOVER_DEG)
      push_row (row, lift, post_m);
    else
      pull_row (row, lift, raising, SW_RAISE_WALK * post_m);
    lift->push_most_n = fmax (lift->push_most_n, row->push_n);
    lift->rope_most_n = fmax (lift->rope_most_n, row->rope_n);
    lift->block_most_n = fmax (lift->block_most_n, fabs (row->block_n));
  }
  lift->hands = MAX (1, hands_for (lift->push_most_n, SW_RAISE_HAND_N));
  lift->rope_hands = MAX (1, hands_for (lift->rope_most_n, SW_RAISE_ROPE_N));
  lift->people = lift->hands + lift->rope_hands + 2;
}

/* The bare post goes straight up into its sleeve: all of its weight, by hand. */
static void
solve_platform (SwRaising *raising, const SwSolution *solution)
{
  double weight_n = raising->bare.mass_kg * GRAVITY;

  raising->platform_m = solution->design->shape.crown_height_m - SW_RAISE_CHEST_M;
  raising->platform_people = 2 + MAX (2, hands_for (weight_n, SW_RAISE_HAND_N));
}

static SwRaiseAnswer
platform_answer (const SwRaising *raising)
{
  if (raising->platform_m <= 0.5)
    return SW_RAISE_NO_LOW;
  return raising->platform_m > SW_PLATFORM_SLENDER * SW_PLATFORM_WIDTH_M ? SW_RAISE_NO_HIGH
                                                                         : SW_RAISE_YES;
}

void
sw_raising_init (SwRaising *raising, const SwSolution *solution)
{
  *raising = (SwRaising){ 0 };
  raising->rope_at_m = solution->design->guys.count > 0
                         ? MIN (solution->design->guys.height_m, solution->heights.post_m)
                         : 0.8 * solution->heights.post_m;
  add_post (&raising->bare, solution);
  add_post (&raising->whole, solution);
  add_top (&raising->whole, solution);
  solve_lift (&raising->bare, raising, solution);
  solve_lift (&raising->whole, raising, solution);
  solve_platform (raising, solution);
  raising->answers[SW_RAISE_TILT] =
    raising->whole.hands + raising->whole.rope_hands > SW_RAISE_MOST_HANDS ? SW_RAISE_NO_HANDS
                                                                           : SW_RAISE_YES;
  raising->answers[SW_RAISE_HOIST] = SW_RAISE_NO_TOP_FIXED;
  raising->answers[SW_RAISE_PLATFORM] = platform_answer (raising);
}

static guint
mirrored (guint i, guint bits)
{
  guint turned = 0;

  for (guint bit = 0; bit < bits; bit++)
    turned |= ((i >> bit) & 1u) << (bits - 1 - bit);
  return turned;
}

/* Pair 0 … pairs − 1: strip 1 and the one across it; of a partial tree the outermost two. */
static void
add_pair (GArray *order, const SwDesign *design, int pair)
{
  int strips = design->shape.strip_count;
  int first = pair + 1;
  int second = design->shape.coverage_deg >= 360 ? first + strips / 2 : strips - pair;

  g_array_append_val (order, first);
  g_array_append_val (order, second);
}

GArray *
sw_tension_order (const SwDesign *design)
{
  GArray *order = g_array_new (FALSE, FALSE, sizeof (int));
  int strips = design->shape.strip_count, pairs = strips / 2;
  guint bits = 0;

  while ((1 << bits) < pairs)
    bits++;
  for (guint i = 0; i < 1u << bits; i++) {
    int pair = (int) mirrored (i, bits);
    if (pair < pairs)
      add_pair (order, design, pair);
  }
  if (strips % 2 != 0) {
    int alone = design->shape.coverage_deg >= 360 ? strips : pairs + 1;
    g_array_append_val (order, alone);
  }
  return order;
}
