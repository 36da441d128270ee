// SPDX-License-Identifier: GPL-3.0-or-later
/* What the ring does under its strips, in the cold, and through a door. */
#include "packet/sheet-ring.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

typedef struct {
  const char *words; /* N_() */
  gsize offset;      /* into SwSolution; NAN there: no row */
  SwQuantity quantity;
  double (*value) (const SwSolution *solution); /* instead of the field */
} Row;

static double
bending_factor (const SwSolution *solution)
{
  const SwPipe *pipe =
    sw_catalogue_pipe (solution->catalogue, solution->design->stand.ring_pipe);

  return sw_material_yield (pipe->material) / solution->support.ring_stress_gust_pa;
}

#define AT(field) G_STRUCT_OFFSET (SwSolution, field)

static const Row rows[] = {
  { N_ ("Lift between two ties, over a season"),
    AT (support.ring_lift_m),
    SW_QUANTITY_SHORT_LENGTH,
    NULL },
  { N_ ("The same on the first day"), AT (ring.lift_fresh_m), SW_QUANTITY_SHORT_LENGTH, NULL },
  { N_ ("The same if it is left up for years"),
    AT (ring.lift_years_m),
    SW_QUANTITY_SHORT_LENGTH,
    NULL },
  { N_ ("Fewest ties that keep the lift at 10 mm"),
    AT (ring.fewest_ties),
    SW_QUANTITY_COUNT,
    NULL },
  { N_ ("Bending in the gust: strength over demand (needed 1.5)"),
    0,
    SW_QUANTITY_RATIO,
    bending_factor },
  { N_ ("Pull up at a tie in the gust"),
    AT (support.ring_tie_gust_n),
    SW_QUANTITY_FORCE,
    NULL },
  { N_ ("Pull towards the post at a tie in the gust"),
    AT (ring.tie_side_gust_n),
    SW_QUANTITY_FORCE,
    NULL },
  { N_ ("Buckling inwards over a season: strength over demand (needed 2.5)"),
    AT (ring.buckling_factor),
    SW_QUANTITY_RATIO,
    NULL },
  { N_ ("The same in the gust, ties holding sideways (needed 2.5)"),
    AT (ring.buckling_gust_factor),
    SW_QUANTITY_RATIO,
    NULL },
  { N_ ("Strain of the bend if made cold"), AT (ring.cold_strain), SW_QUANTITY_SHARE, NULL },
  { N_ ("Smallest radius its makers allow cold"),
    AT (ring.cold_radius_m),
    SW_QUANTITY_LENGTH,
    NULL },
  { N_ ("Shorter when 40 °C colder, all round"),
    AT (ring.shrink_m),
    SW_QUANTITY_SHORT_LENGTH,
    NULL },
  { N_ ("Gap that opens at each joint that can slide"),
    AT (ring.joint_gap_m),
    SW_QUANTITY_SHORT_LENGTH,
    NULL },
  { N_ ("Width of a section, carried straight on"),
    AT (ring.section_width_m),
    SW_QUANTITY_LENGTH,
    NULL },
  { N_ ("Fewest sections that pass the door"),
    AT (ring.sections_for_door),
    SW_QUANTITY_COUNT,
    NULL },
};

static double
value_of (const Row *row, const SwSolution *solution)
{
  gconstpointer field = (const char *) solution + row->offset;

  return row->value != NULL ? row->value (solution) : *(const double *) field;
}

static void
add_rows (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new_facts ();

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    double value = value_of (&rows[i], pen->solution);

    if (isfinite (value))
      sw_table_add_fact (table,
                         pen,
                         rows[i].words,
                         sw_pen_number (pen, value, rows[i].quantity));
  }
  sw_flow_table (flow, table);
}

static const char *const assumptions[] = {
  N_ ("Joints as strong as the pipe; ties that neither give nor slip; all strips pulling "
      "alike, in "
      "the gust each like the windward one; the pipe's own weight left out."),
  N_ ("Joints that only push together open in the cold and let go when the ring is lifted. "
      "Glue or "
      "pin those that stay; screw through the couplings where the ring comes apart."),
};

/* ASTM D1784 grades PVC by its modulus in a short test. Half of it over a season: our own
 * judgement. 60 °C: makers' limit in use. */
static const char *const plastic =
  N_ ("PVC gives way slowly. Its stiffness over a season is assumed to be half of that on the "
      "first day, which is all that is published. It softens above 60 °C: keep a ring out of "
      "closed cars and off dark ground in summer.");

static gboolean
is_plastic (const SwSolution *solution)
{
  return isfinite (solution->ring.cold_radius_m);
}

void
sw_ring_figures_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("What the ring does")));
  add_rows (flow);
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("What this rests on")));
  for (guint i = 0; i < G_N_ELEMENTS (assumptions); i++)
    sw_flow_text (flow, sw_pen_word (pen, assumptions[i]));
  if (is_plastic (pen->solution))
    sw_flow_text (flow, sw_pen_word (pen, plastic));
}
