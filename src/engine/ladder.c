// SPDX-License-Identifier: GPL-3.0-or-later
/* The ladder is solved for the drops u = V0 − V, which are ≥ 0 everywhere. Its matrix is an
 * M-matrix; eliminating it by what each row has over its neighbours (its "excess") adds only
 * positive numbers, so no digits cancel. Constant power: Newton from u = 0. A pivot that is not
 * positive, or a voltage not above 0, shows that there is no solution.
 */
#include "engine/ladder.h"

#include <math.h>
#include <string.h>

/* Newton doubles the digits at each step, and halves the distance where the two solutions
 * nearly meet: half the 52 bits of a double, with room to spare.
 */
enum { NEWTON_MOST = 100 };

static const double same_voltage = 1e-12; /* relative; two pixels count as equally low */

typedef struct {
  int nodes;      /* pixels; 1 when all pixels are one node (no link resistance) */
  int per_node;   /* pixels at one node */
  double link_s;  /* conductance of a link */
  double *feed_s; /* conductance to the supply at each node; INFINITY: at the supply itself */
  double *pivot, *load, *drop;
} Network;

static void
network_init (Network *network, const SwLadder *ladder, double *work)
{
  gboolean one_node = !(ladder->link_ohm > 0);

  network->nodes = one_node ? 1 : ladder->pixels;
  network->per_node = one_node ? ladder->pixels : 1;
  network->link_s = one_node ? 0 : 1 / ladder->link_ohm;
  network->feed_s = work;
  network->pivot = work + ladder->pixels;
  network->load = work + 2 * ladder->pixels;
  network->drop = work + 3 * ladder->pixels;
  memset (work, 0, 4 * (gsize) ladder->pixels * sizeof *work);
  for (guint i = 0; i < ladder->n_feeds; i++) {
    int node = one_node ? 0 : ladder->feeds[i] - 1;
    network->feed_s[node] += ladder->feed_ohm > 0 ? 1 / ladder->feed_ohm : INFINITY;
  }
}

/* Solves (links + feeds − relief)·drop = load. `relief` ≥ 0 weakens the diagonal (constant
 * power's Jacobian); NULL is none. Returns: FALSE when the matrix is no M-matrix any more.
 */
static gboolean
solve_drops (Network *network, const double *relief)
{
  double excess = 0, current = 0; /* what is carried down the ladder */
  int n = network->nodes;

  for (int i = 0; i < n; i++) {
    if (isinf (network->feed_s[i])) { /* at the supply: drop 0, the ladder begins anew */
      network->pivot[i] = INFINITY;
      excess = network->link_s;
      current = 0;
      continue;
    }
    double own = excess + network->feed_s[i] - (relief == NULL ? 0 : relief[i]);
    double pivot = own + (i < n - 1 ? network->link_s : 0);
    double carried = network->load[i] + current;
    if (!(pivot > 0))
      return FALSE;
    network->pivot[i] = pivot;
    network->drop[i] = carried; /* until the way back */
    excess = network->link_s * own / pivot;
    current = carried * network->link_s / pivot;
  }
  for (int i = n - 1; i >= 0; i--) {
    double next = i < n - 1 ? network->drop[i + 1] : 0;
    network->drop[i] =
      isinf (network->pivot[i])
        ? 0
        : (network->drop[i] + (i < n - 1 ? network->link_s * next : 0)) / network->pivot[i];
  }
  return TRUE;
}

static void
solve_constant_current (Network *network, const SwLadder *ladder)
{
  for (int i = 0; i < network->nodes; i++)
    network->load[i] = ladder->pixel_a * network->per_node;
  solve_drops (network, NULL);
}

/* One Newton step for: links·u = P/(V0 − u). Returns: the largest change, or a negative number
 * when there is no solution. */
static double
newton_step (Network *network, const SwLadder *ladder, double *relief, double *before)
{
  double power_w = ladder->pixel_a * ladder->supply_v * network->per_node, most = 0;

  for (int i = 0; i < network->nodes; i++) {
    double volts = ladder->supply_v - before[i];
    relief[i] = power_w / (volts * volts);
    network->load[i] = power_w / volts - relief[i] * before[i];
  }
  if (!solve_drops (network, relief))
    return -1;
  for (int i = 0; i < network->nodes; i++) {
    if (!(network->drop[i] < ladder->supply_v))
      return -1;
    most = MAX (most, fabs (network->drop[i] - before[i]));
    before[i] = network->drop[i];
  }
  return most;
}

/* Steps, as shares of the supply voltage, fall as their squares: the next one is foreseen from
 * two. Near collapse they stop shrinking once only rounding is left of them.
 */
static gboolean
is_settled (double step, double last)
{
  double next = step * (step / last) * (step / last);

  return next <= 1e-16 || (step < 1e-9 && step >= last);
}

static gboolean
solve_constant_power (Network *network, const SwLadder *ladder, double *work)
{
  double *relief = work, *before = work + ladder->pixels;
  double last = ladder->supply_v;

  memset (work, 0, 2 * (gsize) ladder->pixels * sizeof *work);
  for (int step = 0; step < NEWTON_MOST; step++) {
    double most = newton_step (network, ladder, relief, before);
    if (most < 0)
      return FALSE;
    if (is_settled (most / ladder->supply_v, last / ladder->supply_v))
      return TRUE;
    last = most;
  }
  return FALSE;
}

static double
pixel_current (const SwLadder *ladder, double drop)
{
  return ladder->load == SW_LOAD_CONSTANT_CURRENT
           ? ladder->pixel_a
           : ladder->pixel_a * ladder->supply_v / (ladder->supply_v - drop);
}

static double
drop_at (const Network *network, int pixel)
{
  return network->drop[network->nodes == 1 ? 0 : pixel - 1];
}

/* A feed without resistance carries what its node's neighbours and its own pixels draw. */
static double
feed_current (const Network *network, const SwLadder *ladder, int pixel)
{
  int node = network->nodes == 1 ? 0 : pixel - 1;
  double sum = 0;

  if (!isinf (network->feed_s[node]))
    return network->drop[node] / ladder->feed_ohm;
  if (network->nodes == 1)
    return pixel_current (ladder, 0) * ladder->pixels / ladder->n_feeds;
  sum = pixel_current (ladder, 0);
  if (node > 0)
    sum += network->link_s * network->drop[node - 1];
  if (node < network->nodes - 1)
    sum += network->link_s * network->drop[node + 1];
  return sum;
}

static SwLadderResult
result_of (const Network *network, const SwLadder *ladder, double *volts)
{
  SwLadderResult result = { .feasible = TRUE, .worst_v = INFINITY };
  double sum_a = 0;

  for (int pixel = 1; pixel <= ladder->pixels; pixel++) {
    double drop = drop_at (network, pixel);
    double volt = ladder->supply_v - drop;
    sum_a += pixel_current (ladder, drop);
    if (volts != NULL)
      volts[pixel - 1] = volt;
    if (volt < result.worst_v - same_voltage * ladder->supply_v) {
      result.worst_v = volt;
      result.worst_pixel = pixel;
    }
  }
  /* 50 times 27.5 mA, not the sum that ends in …07 */
  result.current_a =
    ladder->load == SW_LOAD_CONSTANT_CURRENT ? ladder->pixels * ladder->pixel_a : sum_a;
  return result;
}

SwLadderResult
sw_ladder_solve (const SwLadder *ladder, double *volts, double *feed_a)
{
  g_autofree double *work = g_new (double, 6 * (gsize) ladder->pixels);
  gboolean feasible = TRUE;
  Network network;

  network_init (&network, ladder, work);
  if (ladder->load == SW_LOAD_CONSTANT_CURRENT)
    solve_constant_current (&network, ladder);
  else
    feasible = solve_constant_power (&network, ladder, work + 4 * ladder->pixels);
  if (!feasible)
    return (SwLadderResult){ .feasible = FALSE, .current_a = NAN, .worst_v = NAN };
  for (guint i = 0; feed_a != NULL && i < ladder->n_feeds; i++)
    feed_a[i] = feed_current (&network, ladder, ladder->feeds[i]);
  return result_of (&network, ladder, volts);
}
