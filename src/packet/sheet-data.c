// SPDX-License-Identifier: GPL-3.0-or-later
/* Data: which strips stand on which port. */
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>

static const SwColumn port_columns[] = {
  { N_ ("Port"), SW_TEXT_RIGHT, 0 },       { N_ ("Strips"), SW_TEXT_RIGHT, 0 },
  { N_ ("Lit pixels"), SW_TEXT_RIGHT, 0 }, { N_ ("Skipped, first"), SW_TEXT_RIGHT, 0 },
  { N_ ("Universes"), SW_TEXT_RIGHT, 0 },  { N_ ("Plugged in"), SW_TEXT_CENTRE, 0 },
};

/* "3 – 7", or "3" when both are the same. */
static char *
range (int first, int last)
{
  return first == last ? g_strdup_printf ("%d", first)
                       : g_strdup_printf ("%d – %d", first, last);
}

static void
add_port (const SwPen *pen, SwTable *table, const SwPort *port)
{
  g_autofree char *number = g_strdup_printf ("%d", port->port);
  g_autofree char *strips = port->first_strip == 0
                              ? g_strdup (sw_pen_word (pen, N_ ("star")))
                              : range (port->first_strip, port->last_strip);
  g_autofree char *pixels = g_strdup_printf ("%d", port->pixels);
  g_autofree char *skipped = g_strdup_printf ("%d", pen->solution->design->data.skipped_pixels);
  g_autofree char *universes = range (port->first_universe, port->last_universe);
  const char *cells[] = { number, strips, pixels, skipped, universes, SW_CELL_TICK };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_limits (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwDataPlan *data = &pen->solution->data;
  const SwDataSetup *setup = &pen->solution->design->data;
  g_autoptr (SwTable) table = sw_table_new_facts ();

  sw_table_add_fact (table,
                     pen,
                     N_ ("Most pixels a port can drive, skipped ones included"),
                     g_strdup_printf ("%d", data->port_pixels_max));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Frames a second"),
                     sw_pen_number (pen, setup->frame_hz, SW_QUANTITY_FREQUENCY));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Whole strips on a port"),
                     g_strdup_printf ("%d", data->strips_per_port));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Data lead to the first strip of a port"),
                     sw_pen_number (pen, setup->lead_m, SW_QUANTITY_LENGTH));
  sw_flow_table (flow, table);
}

void
sw_ports_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const GArray *ports = pen->solution->data.rows;
  g_autoptr (SwTable) table = sw_table_new (port_columns, G_N_ELEMENTS (port_columns));

  add_limits (flow);
  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Whole strips fill a port in order. Each port begins a new "
                                 "universe, and no pixel is split across two. Label both ends "
                                 "of every data lead with its port number.")));
  for (guint i = 0; i < ports->len; i++)
    add_port (pen, table, &g_array_index (ports, SwPort, i));
  sw_flow_table (flow, table);
}
