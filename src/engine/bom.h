// SPDX-License-Identifier: GPL-3.0-or-later
/* bom.h: every part of the tree, how many, and what is to pay.
 *
 * to_buy = ⌈max (0, quantity − have)/pack⌉·pack; total = quantity·unit_price; to_pay =
 * to_buy·unit_price. Pipe and lumber are whole lengths as bought, as many as the cut plan has
 * bars; their unit_price is that of a length. Prices: the catalogue's own estimates in USD,
 * unless `prices.override` has the part; they are not converted to another currency.
 * Spares: 3 % of the strips and at least one, 3 % of the star's pixels; quantities hold them.
 */
#pragma once
#include "engine/findings.h"

typedef struct {
  const char *id, *name, *group,
    *unit; /* English; borrowed from the catalogue, groups are sw_part_groups of catalogue.h */
  double quantity, unit_price, total, have, pack, to_buy, to_pay;
} SwPart;

/* The solution has everything but its parts, findings and cost.
 * Returns: (transfer full) (element-type SwPart), in group order; only what is needed, each id
 * once.
 */
GArray *sw_bom_new (const SwSolution *solution);

double sw_bom_to_pay (const GArray *bom);

/* What a group costs: Σ to_pay of its parts. */
double sw_bom_group_to_pay (const GArray *bom, const char *group);

/* Spare strips that are made beside those that hang. */
int sw_bom_spare_strips (const SwDesign *design);
