// SPDX-License-Identifier: GPL-3.0-or-later
/* Wind: when the tree must come down, what it was reckoned with, and what was not reckoned. */
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

static const SwColumn factor_columns[] = {
  { N_ ("Strength over demand, in the gust of the design"), SW_TEXT_LEFT, 1 },
  { N_ ("Needed"), SW_TEXT_RIGHT, 0 },
  { N_ ("Found"), SW_TEXT_RIGHT, 0 },
};

typedef struct {
  const char *words; /* N_() */
  gsize offset;      /* into SwSupport; NAN there: no row */
  double needed;     /* NAN: a figure that stands alone */
  SwQuantity quantity;
} SupportRow;

#define AT(field) G_STRUCT_OFFSET (SwSupport, field)

static const SupportRow factor_rows[] = {
  { N_ ("Tipping over on the foot, nothing but its weight"),
    AT (tipping_factor),
    1.5,
    SW_QUANTITY_RATIO },
  { N_ ("Tipping over, strips tied to the ground helping"),
    AT (tipping_factor_held),
    1.5,
    SW_QUANTITY_RATIO },
  { N_ ("Sliding"), AT (sliding_factor), 1.5, SW_QUANTITY_RATIO },
  { N_ ("Post bending, without guys"), AT (post_factor), 1.5, SW_QUANTITY_RATIO },
  { N_ ("Post bending, weight and strips pressing it"),
    AT (checks.column.factor),
    1.5,
    SW_QUANTITY_RATIO },
  { N_ ("Boards at their half lap, lumber's own reserve counted"),
    AT (checks.board.factor),
    1,
    SW_QUANTITY_RATIO },
  { N_ ("Star's stub bending"), AT (checks.stub.factor), 1.5, SW_QUANTITY_RATIO },
  { N_ ("Guy rope"), AT (guy_factor), 3, SW_QUANTITY_RATIO },
  { N_ ("Stake, if it holds what was entered"), AT (stake_factor), 2, SW_QUANTITY_RATIO },
};

static const SupportRow support_rows[] = {
  { N_ ("Mass on the foot"), AT (foot_mass_kg), NAN, SW_QUANTITY_MASS },
  { N_ ("Depth of socket needed"), AT (socket_depth_needed_m), NAN, SW_QUANTITY_LENGTH },
  { N_ ("Side pull of the strips in still air"), AT (side_pull_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("Pull in a strip in the gust"), AT (strip_tension_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("Pull in a guy"), AT (guy_tension_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("Lift at a ring tie in the gust"), AT (ring_tie_gust_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("Sleeve's upper end bears"), AT (checks.sleeve_top_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("Play in the sleeve lets the crown lean by"),
    AT (checks.sleeve_lean_m),
    NAN,
    SW_QUANTITY_SHORT_LENGTH },
  { N_ ("Crown moves sideways by"), AT (tip_deflection_m), NAN, SW_QUANTITY_SHORT_LENGTH },
};

#undef AT
#define AT(field) G_STRUCT_OFFSET (SwWind, field)

static const SupportRow wind_rows[] = {
  { N_ ("Wind pressure"), AT (pressure_pa), NAN, SW_QUANTITY_PRESSURE },
  { N_ ("Wind on the strips"), AT (strips_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("The same, taken as a lattice tower (a second opinion, not used)"),
    AT (lattice_n),
    NAN,
    SW_QUANTITY_FORCE },
  { N_ ("Wind on the post"), AT (post_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("Wind on the star"), AT (topper_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("Sideways force at the ground"), AT (base_shear_n), NAN, SW_QUANTITY_FORCE },
  { N_ ("Tipping moment at the ground"), AT (base_moment_nm), NAN, SW_QUANTITY_MOMENT },
};

#undef AT
#define AT(field) G_STRUCT_OFFSET (SwStripBow, field)

static const SupportRow bow_rows[] = {
  { N_ ("The wind bows a strip by up to"), AT (strip_bow_m), NAN, SW_QUANTITY_SHORT_LENGTH },
  { N_ ("A bowed strip stays off the post by (below 0: hits it)"),
    AT (strip_post_gap_m),
    NAN,
    SW_QUANTITY_SHORT_LENGTH },
  { N_ ("A bowed strip stays off the guys by (0: hits one)"),
    AT (strip_guy_gap_m),
    NAN,
    SW_QUANTITY_SHORT_LENGTH },
  { N_ ("Strips first touch post or guy in a gust of"),
    AT (strip_touch_gust_mps),
    NAN,
    SW_QUANTITY_SPEED },
};

static double
figure (gconstpointer data, gsize offset)
{
  return *(const double *) (gconstpointer) ((const char *) data + offset);
}

static void
add_factors (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (factor_columns, G_N_ELEMENTS (factor_columns));

  for (guint i = 0; i < G_N_ELEMENTS (factor_rows); i++) {
    double found = figure (&pen->solution->support, factor_rows[i].offset);

    if (!isfinite (found))
      continue;
    g_autofree char *needed = sw_pen_decimal (pen, factor_rows[i].needed, 1);
    g_autofree char *shown = sw_pen_decimal (pen, floor (found * 10) / 10, 1);
    g_autofree char *short_by = g_strconcat ("▲ ", shown, NULL);
    const char *cells[] = { sw_pen_word (pen, factor_rows[i].words),
                            needed,
                            found < factor_rows[i].needed ? short_by : shown };

    sw_table_add (table, SW_ROW_PLAIN, cells);
  }
  sw_flow_table (flow, table);
  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("▲: less than needed at that gust. The tree then must be held "
                                 "otherwise, or come down earlier.")));
}

static void
add_rows (const SwPen *pen, SwTable *table, gconstpointer data, const SupportRow *rows, guint n)
{
  for (guint i = 0; i < n; i++) {
    double found = figure (data, rows[i].offset);

    if (!isfinite (found))
      continue;
    sw_table_add_fact (table, pen, rows[i].words, sw_pen_number (pen, found, rows[i].quantity));
  }
}

static void
add_forces (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new_facts ();

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Forces in the gust of the design")));
  add_rows (pen, table, &pen->solution->wind, wind_rows, G_N_ELEMENTS (wind_rows));
  add_rows (pen, table, &pen->solution->support, support_rows, G_N_ELEMENTS (support_rows));
  add_rows (pen, table, &pen->solution->bow, bow_rows, G_N_ELEMENTS (bow_rows));
  sw_flow_table (flow, table);
}

static void
say_take_down (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  double gust_mps = pen->solution->support.take_down_gust_mps;
  g_autofree char *gust = NULL;
  g_autofree char *words = NULL;

  if (isfinite (gust_mps)) {
    gust = sw_pen_number (pen, gust_mps, SW_QUANTITY_SPEED);
    words =
      sw_pen_say (pen,
                  N_ ("take the strips off the ring before gusts of %s are forecast, and go by "
                      "the plan below. Not while it blows: then stay out of the fall circle "
                      "and keep others out."),
                  gust);
  } else {
    words = g_strdup (sw_pen_word (
      pen,
      N_ ("no gust can be given up to which this tree may stand (it is over 6 m "
          "tall, carries ice, or stands in soil that is not known). Have a licensed "
          "engineer look at it, and take it down before any strong wind.")));
  }
  sw_flow_caution (flow, sw_pen_word (pen, N_ ("Storm")), words);
}

static const SwColumn storm_columns[] = {
  { N_ ("Storm plan"), SW_TEXT_LEFT, 1 },
  { N_ ("Before gusts of"), SW_TEXT_RIGHT, 0 },
  { N_ ("That is a sustained wind of"), SW_TEXT_RIGHT, 0 },
};

static void
add_step (const SwPen *pen, SwTable *table, const char *what, const double speeds_mps[2])
{
  g_autofree char *gust = sw_pen_number (pen, speeds_mps[0], SW_QUANTITY_SPEED);
  g_autofree char *sustained = sw_pen_number (pen, speeds_mps[1], SW_QUANTITY_SPEED);
  const char *cells[] = { what, gust, sustained };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_storm_plan (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwStormPlan *storm = &pen->solution->storm;
  g_autoptr (SwTable) table = sw_table_new (storm_columns, G_N_ELEMENTS (storm_columns));

  if (!isfinite (storm->unhook_gust_mps))
    return;
  add_step (pen,
            table,
            sw_pen_word (pen, N_ ("1. Untie the strips at the ring, wind them on the post")),
            (double[]){ storm->unhook_gust_mps, storm->unhook_sustained_mps });
  add_step (pen,
            table,
            sw_pen_word (pen, N_ ("2. Lay the star and the post down")),
            (double[]){ storm->lower_gust_mps, storm->lower_sustained_mps });
  sw_flow_table (flow, table);
  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("As a weather app says it: gusts first, beside them the "
                     "sustained wind they go with (three-second gust 1.53 times the "
                     "mean of an hour: Durst, ASCE 7-16 figure C26.5-1). Where both "
                     "steps name the same gust, winding the strips gains nothing: "
                     "lay the tree down at once.")));
}

static const char *const exposures[] = {
  [SW_EXPOSURE_B] = N_ ("town or woods"),
  [SW_EXPOSURE_C] = N_ ("open ground"),
  [SW_EXPOSURE_D] = N_ ("shore"),
};

static void
say_assumptions (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwSite *site = &pen->solution->design->site;
  g_autofree char *gust = sw_pen_number (pen, site->gust_mps, SW_QUANTITY_SPEED);
  g_autofree char *reckoned =
    sw_pen_say (pen,
                N_ ("Reckoned for a three-second gust of %s at 10 m above ground, %s, by the "
                    "velocity pressure of ASCE 7-16 with all its other factors at 1."),
                gust,
                sw_pen_word (pen, exposures[site->exposure]));

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("What this rests on")));
  sw_flow_text (flow, reckoned);
  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("Friction, hold of stakes, soil and the strength of the post "
                     "are what was entered or assumed, not measured. Conduit has no "
                     "strength its maker vouches for.")));
  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("Not for ice: it makes strips heavier and wider to the wind, which is not "
                     "worked out. Take the strips down before freezing rain.")));
  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Not looked at: flutter of strips, their sag by their own "
                                 "weight (it adds to what the wind bows them), shelter "
                                 "or funnelling by buildings, people who climb or lean.")));
  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("These figures help to compare designs. They are no engineer's "
                     "certificate: local codes and licensed practice come first.")));
}

void
sw_wind_fill (SwFlow *flow)
{
  say_take_down (flow);
  add_storm_plan (flow);
  add_factors (flow);
  add_forces (flow);
  say_assumptions (flow);
}
