// SPDX-License-Identifier: GPL-3.0-or-later
/* Power: what the tree draws, and what must be true of feeds and supplies. */
#include "packet/sheet-pages.h"
#include "packet/sheet-wiring.h"
#include "packet/table.h"

#include <glib/gi18n.h>

static const SwColumn columns[] = {
  { N_ ("Power"), SW_TEXT_LEFT, 2 },
  { N_ ("At the highest brightness allowed"), SW_TEXT_RIGHT, 1 },
  { N_ ("At full white"), SW_TEXT_RIGHT, 0.6 },
};

typedef struct {
  const char *words; /* N_() */
  SwQuantity quantity;
  gsize offset;      /* into SwPower */
  gsize full_offset; /* 0: no such figure at full white */
} PowerRow;

#define AT(field) G_STRUCT_OFFSET (SwPower, field)

static const PowerRow rows[] = {
  { N_ ("One strip draws"), SW_QUANTITY_CURRENT, AT (strip_current_a), 0 },
  { N_ ("Most current in one feed of a strip"), SW_QUANTITY_CURRENT, AT (most_feed_a), 0 },
  { N_ ("Whole tree with the star"),
    SW_QUANTITY_CURRENT,
    AT (tree_current_a),
    AT (full_white_current_a) },
  { N_ ("Power at the supplies"), SW_QUANTITY_POWER, AT (tree_w), AT (full_white_w) },
  { N_ ("Lowest pixel voltage"),
    SW_QUANTITY_VOLTAGE,
    AT (worst_pixel_v),
    AT (full_white_worst_v) },
};

static double
figure (const SwPower *power, gsize offset)
{
  return *(const double *) (gconstpointer) ((const char *) power + offset);
}

static void
add_figures (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwPower *power = &pen->solution->power;
  g_autoptr (SwTable) table = sw_table_new (columns, G_N_ELEMENTS (columns));

  for (guint i = 0; i < G_N_ELEMENTS (rows); i++) {
    g_autofree char *at_cap =
      power->feasible ? sw_pen_number (pen, figure (power, rows[i].offset), rows[i].quantity)
                      : g_strdup ("–");
    g_autofree char *at_full =
      rows[i].full_offset != 0 && power->full_white_feasible
        ? sw_pen_number (pen, figure (power, rows[i].full_offset), rows[i].quantity)
        : g_strdup ("–");
    const char *cells[] = { sw_pen_word (pen, rows[i].words), at_cap, at_full };

    sw_table_add (table, SW_ROW_PLAIN, cells);
  }
  sw_flow_table (flow, table);
}

static void
add_feeds (const SwPen *pen, SwTable *table)
{
  const SwPowerSetup *setup = &pen->solution->design->power;
  static const char *const where[] = {
    [SW_FEED_RING] = N_ ("the ring"),
    [SW_FEED_CROWN] = N_ ("the crown"),
    [SW_FEED_BOTH] = N_ ("ring and crown"),
  };

  sw_table_add_fact (table,
                     pen,
                     N_ ("Each strip is fed at"),
                     g_strdup (sw_pen_word (pen, where[setup->feed])));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Feeds on a strip, with those between"),
                     g_strdup_printf ("%d", pen->solution->power.n_feeds));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Strips that share a feeder"),
                     g_strdup_printf ("%d", setup->strips_per_feeder));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Length of a feeder"),
                     sw_pen_number (pen, setup->feeder_m, SW_QUANTITY_LENGTH));
}

static void
add_supplies (const SwPen *pen, SwTable *table)
{
  const SwPowerSetup *setup = &pen->solution->design->power;
  g_autofree char *volts = sw_pen_number (pen, setup->supply_v, SW_QUANTITY_VOLTAGE);
  g_autofree char *watts = sw_pen_number (pen, setup->supply_w, SW_QUANTITY_POWER);

  sw_table_add_fact (table,
                     pen,
                     N_ ("Supplies"),
                     pen->solution->power.feasible
                       ? g_strdup_printf ("%d", pen->solution->zones.count)
                       : g_strdup ("–"));
  sw_table_add_fact (table, pen, N_ ("Each supply"), g_strdup_printf ("%s, %s", volts, watts));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Loaded at most to"),
                     sw_pen_number (pen, setup->supply_load_max, SW_QUANTITY_SHARE));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Highest brightness allowed, set in the driver box"),
                     sw_pen_number (pen, setup->cap, SW_QUANTITY_SHARE));
}

static void
add_wiring (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new_facts ();

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Feeds and supplies")));
  add_feeds (pen, table);
  add_supplies (pen, table);
  sw_flow_table (flow, table);
  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("All figures at the highest brightness allowed hold only while "
                     "the driver box allows no more. Without that limit the tree "
                     "draws what stands under full white.")));
}

static const struct {
  const char *word, *text; /* N_() */
} cautions[] = {
  { N_ ("Mains"),
    N_ (
      "mains voltage kills. This sheet shows no mains wiring, on purpose: what is behind the "
      "plug, and any new outlet, is work for a licensed electrician under the local code. "
      "Feed outdoor supplies through an outlet that trips on leakage (GFCI, RCD), in housings "
      "made for rain, and unplug before you touch a wire.") },
  { N_ ("Supplies"),
    N_ ("use only those that a testing laboratory lists for where they hang, with their own "
        "lead and plug. Never join the + outputs of two supplies: the one would feed the "
        "other's fault, past every fuse. Only their 0 V are joined.") },
  { N_ ("Fire"),
    N_ ("low voltage can carry enough current to burn: put a fuse that suits the thinnest wire "
        "behind it at the supply end of every feeder.") },
};

void
sw_power_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  for (guint i = 0; i < G_N_ELEMENTS (cautions); i++)
    sw_flow_caution (flow,
                     sw_pen_word (pen, cautions[i].word),
                     sw_pen_word (pen, cautions[i].text));
  add_figures (flow);
  add_wiring (flow);
  sw_wiring_fill (flow);
}
