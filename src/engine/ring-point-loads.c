// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-point-loads.h"

#include <math.h>

#define FEWEST_TIES 3
#define PLACES_A_BAY 4    /* at least, where the answer is read: the middle of a bay too */
#define PLACES_A_RING 360 /* and at least so many in all */

/* A place on the ring, with what it takes to subtract angles without calling sin again. */
typedef struct {
  double angle, cos, sin;
} Spot;

static Spot
spot_at (double deg)
{
  double angle = (deg - 360 * floor (deg / 360)) * G_PI / 180;

  return (Spot){ angle, cos (angle), sin (angle) };
}

/* What a force of 1 at one place does at another: deflection, moment, torque, in units of
 * R³/π, R/π, R/π; the parts of the deflection that 1/EI and 1/GJ multiply apart. */
typedef struct {
  double bend, twist, moment, torque;
} Influence;

/* Sums over n ≥ 2 with x the angle between the places and y = π − |x|:
 *   moment  Σ cos nx/(n² − 1)                torque  Σ sin nx/(n(n² − 1))
 *   bend    Σ cos nx/(n² − 1)²               twist   Σ cos nx/(n²(n² − 1)²)
 * The first is Gradshteyn & Ryzhik 1.444-1.445; bend'' + bend = −moment; torque' = moment;
 * twist = Σ cos nx/n² − moment + bend.
 */
static Influence
influence (const Spot *at, const Spot *from)
{
  double apart = fabs (at->angle - from->angle);
  double x = MIN (apart, 2 * G_PI - apart), y = G_PI - x;
  double c = at->cos * from->cos + at->sin * from->sin;
  double turn = at->sin * from->cos - at->cos * from->sin; /* > 0: `at` lies ahead */
  double s = fabs (turn);
  double moment = 0.5 + c / 4 - y * s / 2;
  double bend = -0.5 + y * s / 4 + y * y * c / 8 - (3.0 / 16 + G_PI * G_PI / 24) * c;
  double squares = G_PI * G_PI / 6 - G_PI * x / 2 + x * x / 4 - c;
  double torque = -y / 2 + 0.75 * s + y * c / 2;

  return (Influence){ bend, squares - moment + bend, moment, turn < 0 ? -torque : torque };
}

typedef struct {
  const SwRingPoints *given;
  Spot *strips, *ties;
  double *tie_n;   /* downward pull of each tie */
  double *lift_m;  /* by the strips alone, at the ties, free ring */
  double rigid[3]; /* the ring's shift, and its tilts */
  double force_m;  /* R³/π */
} Ring;

static double
deflection (const Ring *ring, const Influence *unit)
{
  return ring->force_m * (unit->bend / ring->given->ei + unit->twist / ring->given->gj);
}

/* One harmonic of values at the ties: Σ value·cos (pk·2π/K), Σ value·sin (…). */
static void
harmonic (const double *values, int ties, int p, double wave[2])
{
  wave[0] = wave[1] = 0;
  for (int k = 0; k < ties; k++) {
    double angle = 2 * G_PI * ((long) p * k % ties) / ties;
    wave[0] += values[k] * cos (angle);
    wave[1] += values[k] * sin (angle);
  }
}

static void
add_wave (Ring *ring, int p, const double wave[2])
{
  int ties = ring->given->ties;

  for (int k = 0; k < ties; k++) {
    double angle = 2 * G_PI * ((long) p * k % ties) / ties;
    ring->tie_n[k] += (wave[0] * cos (angle) + wave[1] * sin (angle)) / ties;
  }
}

/* Forces and moments of ties and strips about the middle balance: the harmonics 0 and 1. */
static void
balance (Ring *ring)
{
  double sum[3] = { 0, 0, 0 };

  for (int i = 0; i < ring->given->strip_count; i++) {
    const Spot *strip = &ring->strips[i], *first = &ring->ties[0];
    sum[0] += ring->given->strip_n;
    sum[1] += 2 * ring->given->strip_n * (strip->cos * first->cos + strip->sin * first->sin);
    sum[2] += 2 * ring->given->strip_n * (strip->sin * first->cos - strip->cos * first->sin);
  }
  add_wave (ring, 0, (double[]){ sum[0], 0 });
  add_wave (ring, 1, (double[]){ sum[1], sum[2] });
}

static void
find_lift_at_ties (Ring *ring)
{
  for (int k = 0; k < ring->given->ties; k++) {
    ring->lift_m[k] = 0;
    for (int i = 0; i < ring->given->strip_count; i++) {
      Influence unit = influence (&ring->ties[k], &ring->strips[i]);
      ring->lift_m[k] += ring->given->strip_n * deflection (ring, &unit);
    }
  }
}

/* How far ties pulling in one harmonic move themselves: evenly spaced ties make a circulant
 * matrix, whose harmonics do not mix. */
static double
give_of (const Ring *ring, int p)
{
  double sum = 0;

  for (int k = 0; k < ring->given->ties; k++) {
    Influence unit = influence (&ring->ties[0], &ring->ties[k]);
    sum += deflection (ring, &unit) *
           cos (2 * G_PI * ((long) p * k % ring->given->ties) / ring->given->ties);
  }
  return sum;
}

/* The ties' other harmonics bring every tie back to rest. */
static void
find_tie_forces (Ring *ring)
{
  int ties = ring->given->ties;

  balance (ring);
  find_lift_at_ties (ring);
  for (int p = 2; 2 * p <= ties; p++) {
    double wave[2], twice = 2 * p == ties ? 1 : 2, give = give_of (ring, p);
    harmonic (ring->lift_m, ties, p, wave);
    add_wave (ring, p, (double[]){ twice * wave[0] / give, twice * wave[1] / give });
  }
}

static Influence
all_at (const Ring *ring, const Spot *at)
{
  Influence sum = { 0, 0, 0, 0 };

  for (int i = 0; i < ring->given->strip_count + ring->given->ties; i++) {
    int tie = i - ring->given->strip_count;
    double force_n = tie < 0 ? ring->given->strip_n : -ring->tie_n[tie];
    Influence unit = influence (at, tie < 0 ? &ring->strips[i] : &ring->ties[tie]);
    sum.bend += force_n * unit.bend;
    sum.twist += force_n * unit.twist;
    sum.moment += force_n * unit.moment;
    sum.torque += force_n * unit.torque;
  }
  return sum;
}

/* With its ties at rest the ring has only shifted and tilted there. */
static void
find_rigid (Ring *ring)
{
  int ties = ring->given->ties;
  double wave[2];

  for (int k = 0; k < ties; k++) {
    Influence sum = all_at (ring, &ring->ties[k]);
    ring->lift_m[k] = -deflection (ring, &sum);
  }
  harmonic (ring->lift_m, ties, 0, wave);
  ring->rigid[0] = wave[0] / ties;
  harmonic (ring->lift_m, ties, 1, wave);
  const Spot *first = &ring->ties[0];
  ring->rigid[1] = 2 * (wave[0] * first->cos - wave[1] * first->sin) / ties;
  ring->rigid[2] = 2 * (wave[0] * first->sin + wave[1] * first->cos) / ties;
}

static void
look_at (const Ring *ring, const Spot *at, SwRingAnswer *answer)
{
  Influence sum = all_at (ring, at);
  double lift_m = deflection (ring, &sum) + ring->rigid[0] + ring->rigid[1] * at->cos +
                  ring->rigid[2] * at->sin;
  double lever_m = ring->given->radius_m / G_PI;

  answer->lift_m = MAX (answer->lift_m, lift_m);
  answer->moment_nm = MAX (answer->moment_nm, fabs (sum.moment) * lever_m);
  answer->torque_nm = MAX (answer->torque_nm, fabs (sum.torque) * lever_m);
}

static gboolean
is_enough (const Ring *ring, const SwRingAnswer *answer)
{
  return ring->given->enough_m > 0 && answer->lift_m > ring->given->enough_m;
}

/* Under the strips first: there it is lifted most. */
static void
read_answer (const Ring *ring, SwRingAnswer *answer)
{
  const SwRingPoints *given = ring->given;
  int a_bay = MAX (PLACES_A_BAY, (PLACES_A_RING + given->ties - 1) / given->ties + 1) & ~1;
  int places = given->ties * a_bay;

  *answer = (SwRingAnswer){ 0 };
  for (int i = 0; i < given->strip_count && !is_enough (ring, answer); i++)
    look_at (ring, &ring->strips[i], answer);
  for (int i = 0; i < places && !is_enough (ring, answer); i++) {
    Spot at = spot_at (given->first_tie_deg + i * 360.0 / places);
    look_at (ring, &at, answer);
  }
  for (int k = 0; k < given->ties; k++)
    answer->tie_n = MAX (answer->tie_n, fabs (ring->tie_n[k]));
}

gboolean
sw_ring_point_loads (const SwRingPoints *load, SwRingAnswer *answer)
{
  gboolean sound = load->ties >= FEWEST_TIES && load->ei > 0 && load->gj > 0;

  *answer = (SwRingAnswer){ NAN, NAN, NAN, NAN };
  if (!sound)
    return FALSE;
  g_autofree Spot *spots = g_new (Spot, load->strip_count + load->ties);
  g_autofree double *work = g_new0 (double, 2 * load->ties);
  Ring ring = { .given = load,
                .strips = spots,
                .ties = spots + load->strip_count,
                .tie_n = work,
                .lift_m = work + load->ties,
                .force_m = pow (load->radius_m, 3) / G_PI };
  for (int i = 0; i < load->strip_count; i++)
    ring.strips[i] = spot_at (load->strip_deg[i]);
  for (int k = 0; k < load->ties; k++)
    ring.ties[k] = spot_at (load->first_tie_deg + k * 360.0 / load->ties);
  find_tie_forces (&ring);
  find_rigid (&ring);
  read_answer (&ring, answer);
  return TRUE;
}
