// SPDX-License-Identifier: GPL-3.0-or-later
/* bom.h: every part of the tree, how many, and what is to pay.
 *
 * to_buy = ⌈max (0, quantity − have)/pack⌉·pack; total = quantity·unit_price; to_pay =
 * to_buy·unit_price.
 */
#pragma once
#include "engine/findings.h"

typedef struct {
  const char *id, *name, *group,
    *unit; /* English; borrowed from the catalogue, groups are N_() in bom.c */
  double quantity, unit_price, total, have, pack, to_buy, to_pay;
} SwPart;

/* Returns: (transfer full) (element-type SwPart), in group order. */
GArray *sw_bom_new (const SwSolution *solution);

double sw_bom_to_pay (const GArray *bom);
