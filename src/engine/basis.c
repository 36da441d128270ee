// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/basis.h"

#include "engine/results.h"

#include <math.h>
#include <string.h>

#define ANGLE "ISO 80000-3: plane angle = arc over radius"
#define TRIG "plane trigonometry"
#define E131 "ANSI E1.31"
#define CATALOGUE "catalogue of parts, each row with its source"
#define CUTTING "Gilmore & Gomory, Operations Research 9 (1961)"
#define PRICES "prices are own estimates, or the design's own"
#define COUNT "count"
#define KIRCHHOFF "Kirchhoff's laws on the ladder of pixels, feeds and feeders"
#define CHOSEN "the design file"
#define RULE "the table of findings; sources stand beside each rule"

/* Rows of lists and of what is no number. */
static const SwBasis rows[] = {
  { "title", "as chosen", CHOSEN },
  { "marks", "one a strip, each from its own angle", ANGLE },
  { "marks.strip", "number of the strip", COUNT },
  { "marks.azimuth_deg",
    "closed: facing + 180 + (i − 1)·360/N; open: facing − coverage/2 + (i − 1)·coverage/(N − "
    "1)",
    "equal division of the circle" },
  { "marks.arc_m", "(ring_radius + OD/2)·angle from strip 1", ANGLE },
  { "marks.chord_m", "2·(ring_radius + OD/2)·sin (step/2)", TRIG },
  { "crown", "one hole a strip, seen from above, plate centre 0,0", TRIG },
  { "crown.strip", "number of the strip", COUNT },
  { "crown.x_m", "(crown_radius − hook_reach)·sin (azimuth)", TRIG },
  { "crown.y_m", "−(crown_radius − hook_reach)·cos (azimuth)", TRIG },
  { "as_built", "the ring and crown as they were measured", "as_built of the design file" },
  { "as_built.perimeter_m",
    "∫√(ρ² + ρ′²) dφ of the periodic cubic spline through the points; or the measured length; "
    "or "
    "2π·(ring_radius + OD/2)",
    "arc length in polar coordinates; Gauss–Legendre quadrature" },
  { "as_built.marks", "one a strip, at equal arc lengths", "arc length in polar coordinates" },
  { "as_built.marks.strip", "number of the strip", COUNT },
  { "as_built.marks.arc_m",
    "closed: perimeter·(i − 1)/N; open: length from strip 1 to strip N·(i − 1)/(N − 1)",
    "equal arc lengths" },
  { "as_built.marks.azimuth_deg",
    "where the length along the curve is arc_m",
    "root of the arc length" },
  { "as_built.marks.radius_m", "ρ (azimuth), outer face", "periodic cubic spline" },
  { "as_built.marks.slant_m",
    "from the strip's hook, shifted by the offset, to its tie point",
    "Euclid, Elements I.47 (Pythagoras)" },
  { "as_built.marks.tail_m", "slant − lead − run", "lengths along one line add" },
  { "ring.joints",
    "one a joint of the ring pipe, turned to where marks and ties are farthest",
    TRIG },
  { "ring.joints.joint", "number of the joint", COUNT },
  { "ring.joints.azimuth_deg",
    "first + (joint − 1)·span/pieces",
    "equal division of the circle" },
  { "ring.joints.arc_m",
    "(ring_radius + OD/2)·angle from strip 1, the way numbers grow",
    ANGLE },
  { "ring.pieces", "one a piece of the ring pipe, along its centreline", "sum" },
  { "ring.pieces.piece", "number of the piece", COUNT },
  { "ring.pieces.length_m",
    "length of the pipe/pieces; an arc's ends differ by the turn",
    "sum" },
  { "ring.spokes", "one a spoke, clear of marks, ties and joints", TRIG },
  { "ring.spokes.spoke", "number of the spoke", COUNT },
  { "ring.spokes.azimuth_deg", "first + (spoke − 1)·span/spokes", "equal division" },
  { "power.plan.feed",
    "where the plan feeds a strip: ring | crown | both",
    "fewest feeds, then most strips on a feeder" },
  { "power.feeds", "one a place where power enters a strip, from the ring up", KIRCHHOFF },
  { "power.feeds.pixel", "pixel it enters at, 1 = at the ring", COUNT },
  { "power.feeds.strip_a", "current into one strip at cap", KIRCHHOFF },
  { "power.feeds.feeder_a", "strip_a·min (strips_per_feeder, strip_count)", KIRCHHOFF },
  { "power.feeds.drop_v", "feeder_a·2·feeder_ohm_per_m·feeder_m", KIRCHHOFF },
  { "power.feeds.fuse_a",
    "smallest fuse with feeder_a at most 80 % of it",
    "NEC 210.20(A); sizes of ISO 8820-3" },
  { "power.zones",
    "one a supply; strips that share feeders stay on one",
    "outputs of supplies are never joined" },
  { "power.zones.supply", "number of the supply", COUNT },
  { "power.zones.first_strip", "first strip on it, 0 = only the star", COUNT },
  { "power.zones.last_strip", "last strip on it, 0 = only the star", COUNT },
  { "power.zones.first_pixel",
    "first feed on it where strips are cut between supplies, 0 = all feeds",
    COUNT },
  { "power.zones.last_pixel", "last feed on it, 0 = all feeds", COUNT },
  { "power.zones.star", "whether the star hangs on it", COUNT },
  { "power.zones.load_w", "supply_v·current of what hangs on it", KIRCHHOFF },
  { "data.rows", "whole strips fill a port in order; the star has a port of its own", E131 },
  { "data.rows.port", "number of the port", COUNT },
  { "data.rows.first_strip", "first strip on the port, 0 = the star", COUNT },
  { "data.rows.last_strip", "last strip on the port, 0 = the star", COUNT },
  { "data.rows.pixels", "lit pixels on the port", COUNT },
  { "data.rows.first_universe", "each port begins a universe", E131 },
  { "data.rows.last_universe", "first + ⌈(pixels + skipped)/pixels_per_universe⌉ − 1", E131 },
  { "fits", "every pair that slides, threads, bolts, hangs or stretches", CATALOGUE },
  { "fits.what", "what goes into what", CATALOGUE },
  { "fits.inner", "the inner of the two", CATALOGUE },
  { "fits.outer", "the outer of the two, absent where nothing fits", CATALOGUE },
  { "fits.inner_m", "its true size; of a thread, the outer diameter of the pipe", CATALOGUE },
  { "fits.outer_m", "its true size; of a thread, the outer diameter of the pipe", CATALOGUE },
  { "fits.clearance_m", "outer − inner, nominal", "sum" },
  { "fits.verdict",
    "fits | loose | tight | none, by the play each kind of pair needs",
    "common practice, no source; each limit stands in fit-chain.h and fit-chain.c" },
  { "cuts", "fewest bars with Σ pieces + (n − 1)·kerf ≤ stock", CUTTING },
  { "cuts.stock", "catalogue id", CATALOGUE },
  { "cuts.stock_m", "length as bought", CATALOGUE },
  { "cuts.kerf_m", "what one cut takes away", "common practice, no source" },
  { "cuts.bars", "fewest, or first fit where that is not proven", CUTTING },
  { "cuts.pieces", "lengths cut from each bar", CUTTING },
  { "cuts.waste_m", "bars·stock − Σ pieces", "sum" },
  { "cuts.optimal", "bars equal a bound that no plan can beat", CUTTING },
  { "bom", "each part with spares, in whole packs", PRICES },
  { "bom.id", "catalogue id", CATALOGUE },
  { "bom.name", "catalogue name", CATALOGUE },
  { "bom.group", "group of the parts list", CATALOGUE },
  { "bom.quantity", "needed, with spares", COUNT },
  { "bom.unit", "unit it is counted in", CATALOGUE },
  { "bom.unit_price", "price of one unit", PRICES },
  { "bom.total", "quantity·unit_price", PRICES },
  { "bom.have", "in the shed", CHOSEN },
  { "bom.pack", "units a pack", CATALOGUE },
  { "bom.to_buy", "⌈max (0, quantity − have)/pack⌉·pack", COUNT },
  { "bom.to_pay", "to_buy·unit_price", PRICES },
  { "cost.total", "Σ to_pay", PRICES },
  { "cost.currency", "as chosen", CHOSEN },
  { "findings", "what is unwise: stop, warn, tip", RULE },
  { "findings.level", "stop | warn | tip", RULE },
  { "findings.code", "name of the rule", RULE },
  { "findings.text", "what is wrong, where and by how much", RULE },
  { "findings.key", "the file key it is about", RULE },
  { "findings.remedy.key", "the file key that would put it right", RULE },
  { "findings.remedy.value", "the value that would put it right", RULE },
  { "findings.remedy.worsens",
    "what costs more and which warnings come with it, by solving the design with the remedy",
    RULE },
};

static SwBasis
basis_of_result (const SwResult *result)
{
  return (SwBasis){ result->key, result->formula, result->source };
}

gboolean
sw_basis_find (const char *key, SwBasis *basis)
{
  const SwResult *result = sw_result_find (key);

  if (result != NULL) {
    *basis = basis_of_result (result);
    return TRUE;
  }
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    if (strcmp (rows[i].key, key) == 0) {
      *basis = rows[i];
      return TRUE;
    }
  }
  return FALSE;
}

GArray *
sw_basis_of (const SwSolution *solution)
{
  GArray *all = g_array_new (FALSE, FALSE, sizeof (SwBasis));

  for (guint i = 0; i < sw_n_results (); i++) {
    SwBasis basis = basis_of_result (sw_result_at (i));
    if (!isnan (sw_result_value (sw_result_at (i), solution)))
      g_array_append_val (all, basis);
  }
  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    if (solution->as_built != NULL || !g_str_has_prefix (rows[i].key, "as_built"))
      g_array_append_val (all, rows[i]);
  }
  return all;
}
