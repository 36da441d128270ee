// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cuts.h"

#include "engine/error.h"
#include "engine/ring-load.h"

#include <math.h>
#include <string.h>

/* Shorter stock than this is a slip of the hand; the pipe's usual length is taken then. */
#define LEAST_STOCK_M 0.5
#define ROUNDING_M 1e-6 /* plans count whole micrometres */

double
sw_pipe_stock_m (const SwPipe *pipe, const SwDesign *design)
{
  const SwStand *stand = &design->stand;
  gboolean is_post = strcmp (pipe->id, stand->post) == 0;

  return is_post && stand->post_stock_m >= LEAST_STOCK_M ? stand->post_stock_m : pipe->stock_m;
}

static int
parts_of (double run_m, double stock_m)
{
  return MAX (1, (int) ceil ((run_m - ROUNDING_M) / stock_m));
}

static void
init_ring (SwRuns *runs, const SwDesign *design, const SwCatalogue *catalogue)
{
  const SwShape *shape = &design->shape;
  const SwStand *stand = &design->stand;
  const SwPipe *pipe = sw_catalogue_pipe (catalogue, stand->ring_pipe);
  const SwPipe *post = sw_catalogue_pipe (catalogue, stand->post);

  runs->ring_closed = !sw_ring_is_arc (design);
  if (pipe == NULL)
    return;
  double stock_m = sw_pipe_stock_m (pipe, design);
  runs->ring_m = sw_ring_length_m (design);
  runs->ring_parts =
    stand->ring_sections * parts_of (runs->ring_m / stand->ring_sections, stock_m);
  SwRingJob job = { design, runs->ring_parts, stock_m, pipe->od_m };
  sw_ring_joints_init (&runs->ring_joints, &job);
  if (stand->ring_spokes > 0)
    runs->spoke_m = MAX (0, shape->ring_radius_m - (post == NULL ? 0 : post->od_m / 2));
}

static double
length_or_none (double length_m)
{
  return length_m > 0 ? length_m : 0; /* also of NAN */
}

static void
init_post (SwRuns *runs, const SwDesign *design, const SwCatalogue *catalogue)
{
  const SwPipe *post = runs->fittings.post;

  if (post == NULL)
    return;
  runs->post_m = runs->heights.post_m;
  sw_post_joints_init (&runs->joints, runs->post_m, sw_pipe_stock_m (post, design));
  runs->joint_tube = runs->joints.pieces > 1 ? sw_joint_tube (catalogue, post) : NULL;
  runs->joint_tube_m = runs->joint_tube == NULL ? 0 : sw_joint_tube_m (post);
}

void
sw_runs_init (SwRuns *runs, const SwDesign *design, const SwCatalogue *catalogue)
{
  *runs = (SwRuns){ 0 };
  sw_fittings_init (&runs->fittings, design, catalogue);
  sw_height_chain_init (&runs->heights, design, &runs->fittings, catalogue);
  init_post (runs, design, catalogue);
  init_ring (runs, design, catalogue);
  runs->sleeve_m = length_or_none (runs->heights.sleeve_m);
  runs->stub_m = length_or_none (runs->heights.stub_m);
  runs->board = runs->heights.board;
  runs->board_m = runs->board == NULL ? 0 : 2 * design->stand.arm_m;
}

/* What is cut out of one catalogue id. */
typedef struct {
  const char *stock; /* borrowed */
  double stock_m, kerf_m;
  GArray *pieces; /* owned: SwPiece */
} Order;

static void
clear_order_cb (gpointer data)
{
  Order *order = data;

  g_array_unref (order->pieces);
}

static Order *
order_for (GArray *orders, const char *stock)
{
  for (guint i = 0; i < orders->len; i++) {
    Order *order = &g_array_index (orders, Order, i);
    if (strcmp (order->stock, stock) == 0)
      return order;
  }
  Order fresh = { .stock = stock, .pieces = g_array_new (FALSE, FALSE, sizeof (SwPiece)) };
  g_array_append_val (orders, fresh);
  return &g_array_index (orders, Order, orders->len - 1);
}

static void
add_piece (Order *order, double length_m, int count)
{
  /* a part as long as its stock must not be refused for the last bit of a division */
  SwPiece piece = { MIN (length_m, order->stock_m), count };

  if (piece.count > 0 && piece.length_m >= ROUNDING_M)
    g_array_append_val (order->pieces, piece);
}

typedef struct {
  const SwDesign *design;
  const SwCatalogue *catalogue;
  GArray *orders; /* owned by the caller */
} Shop;

/* `count` runs of pipe, each in equal parts that fit the stock. */
static void
add_pipe (const Shop *shop, const char *id, double run_m, int count)
{
  const SwPipe *pipe = sw_catalogue_pipe (shop->catalogue, id);

  if (pipe == NULL || run_m < ROUNDING_M || count <= 0)
    return;
  Order *order = order_for (shop->orders, pipe->id);
  order->stock_m = sw_pipe_stock_m (pipe, shop->design);
  order->kerf_m = SW_PIPE_KERF_M;
  int parts = parts_of (run_m, order->stock_m);
  add_piece (order, run_m / parts, parts * count);
}

/* Whole lengths from the ground up; see height-chain.h. */
static void
add_post (const Shop *shop, const SwRuns *runs)
{
  if (runs->post_m < ROUNDING_M)
    return;
  Order *order = order_for (shop->orders, runs->fittings.post->id);
  order->stock_m = runs->joints.stock_m;
  order->kerf_m = SW_PIPE_KERF_M;
  for (int i = 0; i < runs->joints.pieces; i++)
    add_piece (order, sw_post_piece_m (&runs->joints, i), 1);
}

static void
add_ring (const Shop *shop, const SwRuns *runs)
{
  const char *pipe = shop->design->stand.ring_pipe;
  const SwRingJoints *joints = &runs->ring_joints;
  int alike = runs->ring_closed ? joints->parts : joints->parts - 2;

  add_pipe (shop, pipe, joints->part_m, alike);
  if (runs->ring_closed)
    return;
  add_pipe (shop, pipe, joints->first_m, MIN (joints->parts, 1));
  add_pipe (shop, pipe, joints->last_m, joints->parts > 1);
}

static double
board_stock_m (const SwBoard *board, double length_m)
{
  double more_m = MAX (0, length_m - ROUNDING_M - board->stock_m);
  double stock_m = board->stock_m + ceil (more_m / board->stock_step_m) * board->stock_step_m;

  return MIN (stock_m, board->stock_longest_m);
}

static void
add_boards (const Shop *shop, const SwRuns *runs)
{
  if (runs->board == NULL)
    return;
  Order *order = order_for (shop->orders, runs->board->id);
  order->stock_m = board_stock_m (runs->board, runs->board_m);
  order->kerf_m = SW_LUMBER_KERF_M;
  int parts = parts_of (runs->board_m, order->stock_m);
  add_piece (order, runs->board_m / parts, parts * 2);
}

static double
room_needed_m (const Order *order)
{
  double sum_m = -order->kerf_m;

  for (guint i = 0; i < order->pieces->len; i++) {
    const SwPiece *piece = &g_array_index (order->pieces, SwPiece, i);
    sum_m += piece->count * (piece->length_m + order->kerf_m);
  }
  return sum_m;
}

/* Nobody buys 6.4 m of pipe for a sleeve of 0.4 m where the shop cuts it. */
static void
shorten_stock (const Shop *shop, Order *order)
{
  const SwPipe *pipe = sw_catalogue_pipe (shop->catalogue, order->stock);

  if (pipe == NULL || pipe->cut_step_m <= 0 || strcmp (pipe->id, shop->design->stand.post) == 0)
    return;
  double steps = ceil ((room_needed_m (order) - ROUNDING_M) / pipe->cut_step_m);
  order->stock_m = MIN (order->stock_m, MAX (1, steps) * pipe->cut_step_m);
}

static GArray *
orders_of (const SwDesign *design, const SwCatalogue *catalogue)
{
  const SwStand *stand = &design->stand;
  GArray *orders = g_array_new (FALSE, FALSE, sizeof (Order));
  Shop shop = { design, catalogue, orders };
  SwRuns runs;

  g_array_set_clear_func (orders, clear_order_cb);
  sw_runs_init (&runs, design, catalogue);
  add_pipe (&shop, design->topper.stub, runs.stub_m, 1);
  add_post (&shop, &runs);
  if (runs.joint_tube != NULL)
    add_pipe (&shop, runs.joint_tube->id, runs.joint_tube_m, runs.joints.pieces - 1);
  add_pipe (&shop, stand->sleeve, runs.sleeve_m, 1);
  add_boards (&shop, &runs);
  add_ring (&shop, &runs);
  add_pipe (&shop, stand->ring_pipe, runs.spoke_m, stand->ring_spokes);
  for (guint i = 0; i < orders->len; i++)
    shorten_stock (&shop, &g_array_index (orders, Order, i));
  return orders;
}

typedef SwCutPlan *(*Planner) (const Order *order, GCancellable *cancellable, GError **error);

static const SwPiece *
pieces_of (const Order *order)
{
  return (const SwPiece *) (gpointer) order->pieces->data;
}

static SwCutPlan *
plan_first_fit (const Order *order, GCancellable *cancellable, GError **error)
{
  return sw_cut_plan_first_fit (order->stock,
                                order->stock_m,
                                order->kerf_m,
                                pieces_of (order),
                                order->pieces->len,
                                error);
}

static SwCutPlan *
plan_exact (const Order *order, GCancellable *cancellable, GError **error)
{
  g_autoptr (GError) problem = NULL;
  SwCutPlan *plan = sw_cut_plan_exact (order->stock,
                                       order->stock_m,
                                       order->kerf_m,
                                       pieces_of (order),
                                       order->pieces->len,
                                       0,
                                       cancellable,
                                       &problem);

  if (g_error_matches (problem, SW_ERROR, SW_ERROR_NUMERIC))
    return plan_first_fit (order, cancellable, error);
  if (plan == NULL)
    g_propagate_error (error, g_steal_pointer (&problem));
  return plan;
}

static void
free_plan_cb (gpointer plan)
{
  sw_cut_plan_free (plan);
}

static GPtrArray *
plans_of (const GArray *orders, Planner planner, GCancellable *cancellable, GError **error)
{
  g_autoptr (GPtrArray) plans = g_ptr_array_new_with_free_func (free_plan_cb);

  for (guint i = 0; i < orders->len; i++) {
    const Order *order = &g_array_index (orders, Order, i);
    SwCutPlan *plan = planner (order, cancellable, error);
    if (plan == NULL)
      return NULL;
    g_ptr_array_add (plans, plan);
  }
  return g_steal_pointer (&plans);
}

GPtrArray *
sw_cuts_new (const SwDesign *design, const SwCatalogue *catalogue, GError **error)
{
  g_autoptr (GArray) orders = orders_of (design, catalogue);

  return plans_of (orders, plan_first_fit, NULL, error);
}

GPtrArray *
sw_cuts_new_exact (const SwDesign *design,
                   const SwCatalogue *catalogue,
                   GCancellable *cancellable,
                   GError **error)
{
  g_autoptr (GArray) orders = orders_of (design, catalogue);

  return plans_of (orders, plan_exact, cancellable, error);
}
