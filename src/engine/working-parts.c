// SPDX-License-Identifier: GPL-3.0-or-later
/* working-parts.c: parts and cuts: shown for one row of each list. */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define SHOWN N_ ("shown for the part that costs most; the same for every part")
#define FIRST N_ ("shown for the first cut plan; the same for each")

/* Nullable; a solution without parts has no working of them. */
static const SwPart *
dearest (const SwSolution *s)
{
  const SwPart *most = NULL;

  for (guint i = 0; s->bom != NULL && i < s->bom->len; i++) {
    const SwPart *part = &g_array_index (s->bom, SwPart, i);
    if (most == NULL || part->to_pay > most->to_pay)
      most = part;
  }
  return most;
}

#define OF_DEAREST(what)                                                                       \
  static double part_##what (const SwSolution *s)                                              \
  {                                                                                            \
    const SwPart *part = dearest (s);                                                          \
    return part == NULL ? NAN : part->what;                                                    \
  }

OF_DEAREST (quantity)
OF_DEAREST (unit_price)
OF_DEAREST (have)
OF_DEAREST (pack)
OF_DEAREST (to_buy)
OF_DEAREST (total)
OF_DEAREST (to_pay)

static const SwCutPlan *
first_plan (const SwSolution *s)
{
  return s->cuts == NULL || s->cuts->len == 0 ? NULL : s->cuts->pdata[0];
}

static double
plan_bars (const SwSolution *s)
{
  const SwCutPlan *plan = first_plan (s);

  return plan == NULL ? NAN : plan->bars->len;
}

static double
plan_stock_m (const SwSolution *s)
{
  const SwCutPlan *plan = first_plan (s);

  return plan == NULL ? NAN : plan->stock_m;
}

static double
plan_pieces_m (const SwSolution *s)
{
  const SwCutPlan *plan = first_plan (s);
  double sum_m = 0;

  for (guint i = 0; plan != NULL && i < plan->bars->len; i++) {
    const GArray *bar = plan->bars->pdata[i];
    for (guint j = 0; j < bar->len; j++)
      sum_m += g_array_index (bar, double, j);
  }
  return sum_m;
}

static double
waste_m (const SwSolution *s)
{
  const SwCutPlan *plan = first_plan (s);

  return plan == NULL ? NAN : plan->waste_m;
}

static double
cost_total (const SwSolution *s)
{
  return s->bom == NULL ? NAN : s->cost_to_pay;
}

/* The first pair of which both are there. */
static const SwPair *
first_pair (const SwSolution *s)
{
  for (guint i = 0; i < s->fits.n; i++) {
    if (!isnan (s->fits.pairs[i].clearance_m))
      return &s->fits.pairs[i];
  }
  return NULL;
}

#define OF_PAIR(what)                                                                          \
  static double pair_##what (const SwSolution *s)                                              \
  {                                                                                            \
    const SwPair *pair = first_pair (s);                                                       \
    return pair == NULL ? NAN : pair->what;                                                    \
  }

OF_PAIR (inner_m)
OF_PAIR (outer_m)
OF_PAIR (clearance_m)

#define OF_GROUP(name, i)                                                                      \
  static double name##_pay (const SwSolution *s)                                               \
  {                                                                                            \
    return sw_bom_group_to_pay (s->bom, sw_part_groups[i]);                                    \
  }

OF_GROUP (strips, 0)
OF_GROUP (star, 1)
OF_GROUP (crown, 2)
OF_GROUP (post, 3)
OF_GROUP (ring, 4)
OF_GROUP (guys, 5)
OF_GROUP (power, 6)
OF_GROUP (data, 7)

#define LIST "the list of parts"

static const SwWorkingTerm terms[] = {
  { "part_quantity", part_quantity, 0, N_ ("needed, with spares"), LIST },
  { "part_unit_price", part_unit_price, 0, N_ ("price of one"), LIST },
  { "part_have", part_have, 0, N_ ("in the shed"), LIST },
  { "part_pack", part_pack, 0, N_ ("how many a pack holds"), LIST },
  { "part_to_buy", part_to_buy, 0, N_ ("to buy, in whole packs"), LIST },
  { "plan_bars", plan_bars, 0, N_ ("bars of the plan"), "the cut list" },
  { "plan_stock_m", plan_stock_m, 0, N_ ("length of a bar"), "the cut list" },
  { "plan_pieces_m", plan_pieces_m, 0, N_ ("all its pieces, end to end"), "the cut list" },
  { "pair_inner_m", pair_inner_m, 0, N_ ("true size of the inner"), "fits.inner_m" },
  { "pair_outer_m", pair_outer_m, 0, N_ ("true size of the outer"), "fits.outer_m" },
  { "strips_pay", strips_pay, 0, N_ ("Strips"), LIST },
  { "star_pay", star_pay, 0, N_ ("Star"), LIST },
  { "crown_pay", crown_pay, 0, N_ ("Crown"), LIST },
  { "post_pay", post_pay, 0, N_ ("Post and foot"), LIST },
  { "ring_pay", ring_pay, 0, N_ ("Ring"), LIST },
  { "guys_pay", guys_pay, 0, N_ ("Guys"), LIST },
  { "power_pay", power_pay, 0, N_ ("Power"), LIST },
  { "data_pay", data_pay, 0, N_ ("Data"), LIST },
};

static const SwWorkingRow rows[] = {
  { "fits.clearance_m",
    NULL,
    "pair_outer_m − pair_inner_m",
    N_ ("shown for the first pair; the same for each"),
    N_ ("nominal sizes"),
    pair_clearance_m },
  { "cuts.bars",
    NULL,
    NULL,
    N_ ("no formula: patterns of cuts are searched; `optimal` says that no plan has fewer"),
    NULL,
    plan_bars },
  { "bom.quantity",
    NULL,
    NULL,
    N_ ("no formula for all: each part is counted by its own rule, from strips, holes, bars or "
        "metres; spares are in it"),
    NULL,
    part_quantity },
  { "cuts.waste_m", NULL, "plan_bars·plan_stock_m − plan_pieces_m", FIRST, NULL, waste_m },
  { "bom.total", NULL, "part_quantity·part_unit_price", SHOWN, NULL, part_total },
  { "bom.to_buy",
    NULL,
    "ceil(max(0, part_quantity − part_have)/part_pack)·part_pack",
    SHOWN,
    NULL,
    part_to_buy },
  { "bom.to_pay", NULL, "part_to_buy·part_unit_price", SHOWN, NULL, part_to_pay },
  { "cost.total",
    NULL,
    "strips_pay + star_pay + crown_pay + post_pay + ring_pay + guys_pay + power_pay + data_pay",
    NULL,
    N_ ("prices are the catalogue's estimates where none was entered"),
    cost_total },
};

const SwWorkingTable sw_working_parts = { terms,
                                          G_N_ELEMENTS (terms),
                                          rows,
                                          G_N_ELEMENTS (rows) };
