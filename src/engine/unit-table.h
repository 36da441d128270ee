// SPDX-License-Identifier: GPL-3.0-or-later
/* unit-table.h: the units a person may type, and which one each quantity is shown in. For
 * units*.c only.
 *
 * Source  NIST Special Publication 811 (2008), appendix B: the foot, the pound, the pound-force
 * and the mile are exact.
 */
#pragma once
#include "engine/design.h"
#include "engine/quantity.h"

typedef enum {
  SW_DIMENSION_NONE,
  SW_DIMENSION_LENGTH,
  SW_DIMENSION_ANGLE,
  SW_DIMENSION_MASS,
  SW_DIMENSION_MASS_PER_LENGTH,
  SW_DIMENSION_FORCE,
  SW_DIMENSION_STIFFNESS,
  SW_DIMENSION_MOMENT,
  SW_DIMENSION_PRESSURE,
  SW_DIMENSION_SPEED,
  SW_DIMENSION_VOLTAGE,
  SW_DIMENSION_CURRENT,
  SW_DIMENSION_POWER,
  SW_DIMENSION_ENERGY,
  SW_DIMENSION_RESISTANCE_PER_LENGTH,
  SW_DIMENSION_SHARE,
  SW_DIMENSION_FREQUENCY,
  SW_DIMENSION_TIME,
} SwDimension;

typedef struct {
  const char *name; /* as typed, after units-parse.c made signs plain: "ft", "'", "inches" */
  SwDimension dimension;
  double si; /* one of it in SI */
} SwUnit;

/* The longest name that fits counts; a name may stand under two dimensions ("lb"): then the one
 * that is asked for. */
extern const SwUnit sw_unit_table[];
extern const guint sw_n_units;

typedef struct {
  SwDimension dimension;
  double factor; /* one shown unit in the quantity's own value (SI, or the key's unit) */
  double si;     /* one of the quantity's own value in SI */
  const char *name;
  int decimals;
} SwShownUnit;

/* How a quantity is shown in metric (0) and US (1) units. */
const SwShownUnit *sw_shown_unit (SwQuantity quantity, SwUnits units);
