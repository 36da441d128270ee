// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/bom.h"

#include "engine/bom-counts.h"
#include "engine/fuse.h"

#include <glib/gi18n-lib.h>
#include <math.h>
#include <string.h>

#define FITTING_USES 10
#define GUY_ENDS_M 0.5 /* line turned back at the two ends of a guy */

static double
own_number (GHashTable *table, const char *id, double otherwise)
{
  const double *own = g_hash_table_lookup (table, id);

  return own == NULL ? otherwise : *own;
}

/* What the shop's shelf says; the rest is worked out. */
static void
add_part (GArray *bom, const SwSolution *solution, SwPart part)
{
  const SwPrices *prices = &solution->design->prices;

  if (!(part.quantity > 0)) /* also refuses NaN */
    return;
  part.unit_price = own_number (prices->override, part.id, part.unit_price);
  part.have = own_number (prices->have, part.id, 0);
  part.total = part.quantity * part.unit_price;
  part.to_buy = ceil (MAX (0, part.quantity - part.have) / part.pack) * part.pack;
  part.to_pay = part.to_buy * part.unit_price;
  g_array_append_val (bom, part);
}

static void
add_goods (GArray *bom, const SwSolution *solution, const char *id, double quantity)
{
  const SwGoods *goods = sw_catalogue_goods (solution->catalogue, id);

  if (goods == NULL)
    return;
  add_part (bom,
            solution,
            (SwPart){ .id = goods->id,
                      .name = goods->name,
                      .group = goods->group,
                      .unit = goods->unit,
                      .quantity = quantity,
                      .unit_price = goods->unit_price,
                      .pack = goods->pack });
}

/* A price worked out by length, in whole cents as a shop would print it. */
static double
length_price (double price_per_m, double length_m)
{
  return round (price_per_m * length_m * 100) / 100;
}

/* A pipe belongs where it is first used. */
static const char *
pipe_group (const SwDesign *design, const char *id)
{
  const struct {
    const char *use, *group;
  } uses[] = {
    { design->stand.post, "Post and foot" },
    { design->stand.sleeve, "Post and foot" },
    { design->stand.ring_pipe, "Ring" },
  };

  for (guint i = 0; i < G_N_ELEMENTS (uses); i++) {
    if (strcmp (uses[i].use, id) == 0)
      return uses[i].group;
  }
  return "Star";
}

static SwPart
pipe_part (const SwSolution *solution, const SwPipe *pipe, const SwCutPlan *plan)
{
  return (SwPart){ .id = pipe->id,
                   .name = pipe->name,
                   .group = pipe_group (solution->design, pipe->id),
                   .unit_price = length_price (pipe->price_per_m, plan->stock_m) };
}

static SwPart
board_part (const SwBoard *board, const SwCutPlan *plan)
{
  return (SwPart){ .id = board->id,
                   .name = board->name,
                   .group = "Post and foot",
                   .unit_price = length_price (board->price_per_m, plan->stock_m) };
}

static void
add_stock (GArray *bom, const SwSolution *solution, const SwCutPlan *plan)
{
  const SwPipe *pipe = sw_catalogue_pipe (solution->catalogue, plan->stock);
  const SwBoard *board = sw_catalogue_board (solution->catalogue, plan->stock);

  if (pipe == NULL && board == NULL)
    return;
  SwPart part = pipe != NULL ? pipe_part (solution, pipe, plan) : board_part (board, plan);
  part.unit = N_ ("length");
  part.pack = 1;
  part.quantity = plan->bars->len;
  add_part (bom, solution, part);
}

static void
add_hooks (GArray *bom, const SwSolution *solution)
{
  const SwDesign *design = solution->design;
  const SwHook *hook = sw_catalogue_hook (solution->catalogue, design->crown.hook);
  int strips = design->shape.strip_count;

  if (hook == NULL)
    return;
  g_autofree char *nut = g_strconcat ("nut-", hook->thread, NULL);
  g_autofree char *washer = g_strconcat ("washer-", hook->thread, NULL);
  add_part (bom,
            solution,
            (SwPart){ .id = hook->id,
                      .name = hook->name,
                      .group = "Crown",
                      .unit = N_ ("piece"),
                      .quantity = strips,
                      .unit_price = hook->price,
                      .pack = hook->pack });
  add_goods (bom, solution, nut, 2 * strips);
  add_goods (bom, solution, washer, 2 * strips);
}

/* A use of a fitting; several uses of one are one part, in the group of the first. */
typedef struct {
  const SwFitting *fitting; /* nullable */
  const char *group;
  int count;
} Use;

static void
add_use (GArray *bom, const SwSolution *solution, const Use *uses, guint i)
{
  const SwFitting *fitting = uses[i].fitting;
  int count = uses[i].count;

  for (guint k = 0; k < i; k++) {
    if (uses[k].fitting == fitting)
      return;
  }
  for (guint k = i + 1; k < FITTING_USES; k++)
    count += uses[k].fitting == fitting ? uses[k].count : 0;
  if (fitting != NULL)
    add_part (bom,
              solution,
              (SwPart){ .id = fitting->id,
                        .name = fitting->name,
                        .group = uses[i].group,
                        .unit = N_ ("piece"),
                        .quantity = count,
                        .unit_price = fitting->price,
                        .pack = fitting->pack });
}

static void
add_fittings (GArray *bom, const SwSolution *solution)
{
  const SwFittings *f = &solution->fittings;
  int strips = solution->design->shape.strip_count + sw_bom_spare_strips (solution->design);
  const Use uses[FITTING_USES] = {
    { f->grommet, "Strips", 2 * strips },
    { f->post_top.flange, "Crown", 1 },
    { f->post_top.connector, "Crown", 1 },
    { f->stub_held ? f->top_flange : NULL, "Star", 1 },
    { f->reducers[0], "Star", 1 },
    { f->reducers[1], "Star", 1 },
    { f->stub_held ? f->stub_connector : NULL, "Star", 1 },
    { f->u_bolt, "Star", 2 },
    { f->sleeve_foot.flange, "Post and foot", 1 },
    { f->sleeve_foot.connector, "Post and foot", 1 },
  };

  for (guint i = 0; i < FITTING_USES; i++)
    add_use (bom, solution, uses, i);
}

static void
add_guy_line (GArray *bom, const SwSolution *solution)
{
  const SwGuys *guys = &solution->design->guys;
  const SwLine *line = sw_catalogue_line (solution->catalogue, guys->line);

  if (line == NULL)
    return;
  double length_m = hypot (guys->height_m, guys->radius_m) + GUY_ENDS_M;
  add_part (bom,
            solution,
            (SwPart){ .id = line->id,
                      .name = line->name,
                      .group = "Guys",
                      .unit = "m",
                      .quantity = guys->count * length_m,
                      .unit_price = length_price (line->price_per_m, 1),
                      .pack = 1 });
}

static void
add_cable_and_fuses (GArray *bom, const SwCounts *counts)
{
  g_autofree char *cable = sw_feeder_cable_id (counts);

  add_goods (bom, counts->solution, cable, sw_feeder_cable_m (counts));
  for (guint i = 0; i < sw_n_fuses; i++) {
    g_autofree char *fuse = sw_fuse_id (sw_fuses_a[i]);
    add_goods (bom, counts->solution, fuse, sw_fuse_count (counts, sw_fuses_a[i]));
  }
}

static int
group_place (const char *group)
{
  int place = 0;

  while (sw_part_groups[place] != NULL && strcmp (sw_part_groups[place], group) != 0)
    place++;
  return place;
}

static int
by_group_cb (gconstpointer a, gconstpointer b)
{
  const SwPart *left = a, *right = b;

  return group_place (left->group) - group_place (right->group);
}

GArray *
sw_bom_new (const SwSolution *solution)
{
  GArray *bom = g_array_new (FALSE, TRUE, sizeof (SwPart));
  SwCounts counts;

  sw_counts_init (&counts, solution);
  for (guint i = 0; i < solution->cuts->len; i++)
    add_stock (bom, solution, g_ptr_array_index (solution->cuts, i));
  add_hooks (bom, solution);
  add_guy_line (bom, solution);
  add_fittings (bom, solution);
  add_cable_and_fuses (bom, &counts);
  for (guint i = 0; i < sw_n_count_rows; i++)
    add_goods (bom, solution, sw_count_rows[i].id, sw_count_rows[i].quantity (&counts));
  g_array_sort (bom, by_group_cb); /* keeps the order inside a group */
  return bom;
}

double
sw_bom_to_pay (const GArray *bom)
{
  double sum = 0;

  for (guint i = 0; i < bom->len; i++)
    sum += g_array_index (bom, SwPart, i).to_pay;
  return sum;
}

double
sw_bom_group_to_pay (const GArray *bom, const char *group)
{
  double sum = 0;

  for (guint i = 0; i < bom->len; i++) {
    const SwPart *part = &g_array_index (bom, SwPart, i);
    if (strcmp (part->group, group) == 0)
      sum += part->to_pay;
  }
  return sum;
}
