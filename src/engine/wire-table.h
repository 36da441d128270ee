// SPDX-License-Identifier: GPL-3.0-or-later
/* wire-table.h: copper wire by size: what it resists and what it may carry.
 *
 * Units    ohms per metre of one conductor at 20 °C; cold wire resists less, so that is the
 *          safe side of winter
 * Sources  stand in each row. AWG: areas of ASTM B258, solid annealed copper of IEC 60028
 *          (1.7241 · 10⁻⁸ Ωm). Metric: IEC 60228, class 5, plain, largest resistance allowed.
 *          Copper-clad aluminium resists about half as much again: it is not in the table
 */
#pragma once
#include <glib.h>

typedef enum { SW_WIRE_AWG, SW_WIRE_MM2 } SwWireSystem;
#define SW_N_WIRE_SYSTEMS 2

typedef struct {
  double size; /* 14 of "14 AWG", 2.5 of "2.5 mm²" */
  double mm2;
  double ohm_per_m;
  double max_a; /* the largest fuse that protects it */
  const char *source;
} SwWire;

/* From thin to thick. The thinnest that are sold as outdoor feeders are 18 AWG and 0.75 mm².
 */
extern const SwWire *const sw_wires[SW_N_WIRE_SYSTEMS];
extern const guint sw_n_wires[SW_N_WIRE_SYSTEMS];

/* The AWG size a conductor counts as: the thickest with at least 95 % of its resistance, for
 * stranding and rounding; 0.0082 Ω/m counts as 14 AWG. Of what resists still more: the
 * thinnest. Returns: never NULL. */
const SwWire *sw_wire_like (double ohm_per_m);

/* "14 AWG", "2.5 mm²". Returns: (transfer full). */
char *sw_wire_name (const SwWire *wire, SwWireSystem system);
