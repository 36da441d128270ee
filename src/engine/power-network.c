// SPDX-License-Identifier: GPL-3.0-or-later
/* The ladder is solved for the drops u = V0 − V, which are ≥ 0 everywhere. Its matrix is an
 * M-matrix; eliminating it by what each row has over its neighbours (its "excess") adds only
 * positive numbers, so no digits cancel. Constant power: Newton from u = 0. A pivot that is not
 * positive, or a voltage not above 0, shows that there is no solution.
 */
#include "engine/power-network.h"

#include <math.h>
#include <string.h>

#define NEWTON_MOST 200
#define SAME_VOLTAGE 1e-12 /* relative; two pixels count as equally low */

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

static gboolean
solve_constant_power (Network *network, const SwLadder *ladder, double *work)
{
  double *relief = work, *before = work + ladder->pixels;
  double last = INFINITY;

  memset (work, 0, 2 * (gsize) ladder->pixels * sizeof *work);
  for (int step = 0; step < NEWTON_MOST; step++) {
    double most = newton_step (network, ladder, relief, before);
    if (most < 0)
      return FALSE;
    /* The way down is monotone; once steps stop shrinking only rounding is left. */
    if (most <= 1e-15 * ladder->supply_v || (most < 1e-9 * ladder->supply_v && most >= last))
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

  for (int pixel = 1; pixel <= ladder->pixels; pixel++) {
    double drop = drop_at (network, pixel);
    double volt = ladder->supply_v - drop;
    result.current_a += pixel_current (ladder, drop);
    if (volts != NULL)
      volts[pixel - 1] = volt;
    if (volt < result.worst_v - SAME_VOLTAGE * ladder->supply_v) {
      result.worst_v = volt;
      result.worst_pixel = pixel;
    }
  }
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

static void
add_feed (GArray *feeds, int pixel)
{
  for (guint i = 0; i < feeds->len; i++) {
    if (g_array_index (feeds, int, i) == pixel)
      return; /* a feed that falls on a feed is that feed */
  }
  g_array_append_val (feeds, pixel);
}

static int
rising (gconstpointer a, gconstpointer b)
{
  return *(const int *) a - *(const int *) b;
}

GArray *
sw_power_feeds (const SwDesign *design)
{
  const SwPowerSetup *power = &design->power;
  GArray *feeds = g_array_new (FALSE, FALSE, sizeof (int));
  int pixels = design->strip.pixels;

  if (power->feed != SW_FEED_CROWN)
    add_feed (feeds, 1);
  if (power->feed != SW_FEED_RING)
    add_feed (feeds, pixels);
  for (int k = power->inject_every; k > 0 && 1 + k <= pixels; k += power->inject_every)
    add_feed (feeds, 1 + k);
  g_array_sort (feeds, rising);
  return feeds;
}

static SwLadder
ladder_of (const SwDesign *design, double share, const GArray *feeds)
{
  const SwPowerSetup *power = &design->power;
  double wire_m = power->wire_per_pixel_m > 0 ? power->wire_per_pixel_m : design->strip.pitch_m;

  return (SwLadder){
    .pixels = design->strip.pixels,
    .supply_v = power->supply_v,
    .pixel_a = power->pixel_a * share,
    .load = power->load,
    .link_ohm = 2 * power->strip_ohm_per_m * wire_m,
    .feed_ohm = 2 * power->feeder_ohm_per_m * power->feeder_m * power->strips_per_feeder,
    .feeds = (const int *) (gconstpointer) feeds->data,
    .n_feeds = feeds->len,
  };
}

typedef struct {
  SwLadderResult strip;
  double tree_a, tree_w, most_feed_a;
} Draw;

static Draw
draw_at (const SwDesign *design, double share, const GArray *feeds, double *feed_a)
{
  SwLadder ladder = ladder_of (design, share, feeds);
  double topper = design->topper.kind == SW_TOPPER_STAR ? design->topper.pixels : 0;
  Draw draw = { .strip = sw_ladder_solve (&ladder, NULL, feed_a) };

  draw.tree_a =
    design->shape.strip_count * draw.strip.current_a + topper * design->power.pixel_a * share;
  draw.tree_w = design->power.supply_v * draw.tree_a;
  for (guint i = 0; i < feeds->len; i++)
    draw.most_feed_a = MAX (draw.most_feed_a, feed_a[i]);
  return draw;
}

/* Exactly full supplies do not ask for one more. */
static int
supplies_for (const SwPowerSetup *power, double tree_w)
{
  double supplies = tree_w / (power->supply_w * power->supply_load_max);

  return (int) MIN (ceil (supplies * (1 - 1e-12)), G_MAXINT);
}

static void
set_at_cap (SwPower *power, const SwDesign *design, const Draw *draw)
{
  power->feasible = draw->strip.feasible;
  power->strip_current_a = draw->strip.current_a;
  power->tree_current_a = draw->tree_a;
  power->tree_w = draw->tree_w;
  power->worst_pixel_v = draw->strip.worst_v;
  power->worst_pixel = draw->strip.worst_pixel;
  power->strip_drop_v = design->power.supply_v - draw->strip.worst_v;
  power->most_feed_a = draw->most_feed_a;
  power->supplies = draw->strip.feasible ? supplies_for (&design->power, draw->tree_w) : 0;
}

void
sw_power_init (SwPower *power, const SwDesign *design)
{
  g_autoptr (GArray) feeds = sw_power_feeds (design);
  g_autofree double *feed_a = g_new0 (double, feeds->len);
  double average = MIN (design->power.brightness, design->power.cap);
  Draw draw = draw_at (design, design->power.cap, feeds, feed_a);

  *power = (SwPower){ .n_feeds = (int) feeds->len };
  set_at_cap (power, design, &draw);
  draw = draw_at (design, average, feeds, feed_a);
  power->average_w = draw.tree_w;
  power->evening_kwh = draw.tree_w * design->power.hours_per_evening / 1000;
  draw = draw_at (design, 1, feeds, feed_a);
  power->full_white_feasible = draw.strip.feasible;
  power->full_white_current_a = draw.tree_a;
  power->full_white_w = draw.tree_w;
  power->full_white_worst_v = draw.strip.worst_v;
}

gboolean
sw_power_volts (const SwDesign *design, double share, double *volts)
{
  g_autoptr (GArray) feeds = sw_power_feeds (design);
  SwLadder ladder = ladder_of (design, share, feeds);

  return sw_ladder_solve (&ladder, volts, NULL).feasible;
}
