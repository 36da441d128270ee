// SPDX-License-Identifier: GPL-3.0-or-later
/* The tables of marks: ring, ring as built, holes of the crown plate. Lengths in both unit
 * systems, each rounded from its own value. */
#include "engine/units.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

/* Millimetres to `decimals`; "" where absent. */
static char *
mm (const SwPen *pen, double metres, int decimals)
{
  return isfinite (metres) ? sw_pen_decimal (pen, metres * 1000, decimals) : g_strdup ("");
}

/* Feet, inches and sixteenths, or inches and sixteenths only; "" where absent. */
static char *
feet (const SwPen *pen, double metres)
{
  return isfinite (metres)
           ? sw_units_format (metres, SW_QUANTITY_LENGTH, SW_UNITS_US, pen->language)
           : g_strdup ("");
}

static char *
inches (const SwPen *pen, double metres)
{
  return isfinite (metres) ? sw_units_format_tape (metres, SW_UNITS_US, pen->language)
                           : g_strdup ("");
}

static char *
degrees (const SwPen *pen, double angle_deg)
{
  g_autofree char *number = sw_pen_decimal (pen, angle_deg, 2);

  return g_strconcat (number, "°", NULL);
}

/* Takes the cells. */
static void
add_row (SwTable *table, char **cells)
{
  sw_table_add (table, SW_ROW_PLAIN, (const char *const *) cells);
  g_strfreev (cells);
}

static const SwColumn ring_columns[] = {
  { N_ ("Strip"), SW_TEXT_RIGHT, 0 },
  { N_ ("Azimuth"), SW_TEXT_RIGHT, 0 },
  { N_ ("From mark 1, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("From mark 1, feet and inches"), SW_TEXT_RIGHT, 0 },
  { N_ ("Straight to next, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("Straight to next, inches"), SW_TEXT_RIGHT, 0 },
  { N_ ("Marked"), SW_TEXT_CENTRE, 0 },
};

static void
add_ring_mark (const SwPen *pen, SwTable *table, guint i)
{
  const SwRingMark *mark = &g_array_index (pen->solution->marks, SwRingMark, i);
  char **cells = g_new0 (char *, G_N_ELEMENTS (ring_columns) + 1);
  guint n = 0;

  cells[n++] = g_strdup_printf ("%u", i + 1);
  cells[n++] = degrees (pen, mark->azimuth_deg);
  cells[n++] = mm (pen, mark->arc_m, 0);
  cells[n++] = feet (pen, mark->arc_m);
  cells[n++] = mm (pen, mark->chord_m, 0);
  cells[n++] = inches (pen, mark->chord_m);
  cells[n] = g_strdup (SW_CELL_TICK);
  add_row (table, cells);
}

void
sw_ring_marks_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwSolution *solution = pen->solution;
  double outer_m = solution->design->shape.ring_radius_m + solution->ring_od_m / 2;
  g_autofree char *radius = sw_pen_number (pen, outer_m, SW_QUANTITY_SHORT_LENGTH);
  g_autofree char *round = sw_pen_number (pen, 2 * G_PI * outer_m, SW_QUANTITY_LENGTH);
  g_autofree char *how =
    sw_pen_say (pen,
                N_ ("All lengths run along the outer face of the ring pipe: radius %s, once "
                    "round %s."),
                radius,
                round);
  g_autoptr (SwTable) table = sw_table_new (ring_columns, G_N_ELEMENTS (ring_columns));

  sw_flow_text (flow, how);
  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Measure every mark from mark 1, with one tape laid round the "
                                 "pipe; never from the mark before. Numbers grow anticlockwise "
                                 "seen from above. Then check a few straight lengths. Or wrap "
                                 "the ring tape, ring-tape.pdf, printed at 100 %, round the "
                                 "pipe.")));
  for (guint i = 0; i < solution->marks->len; i++)
    add_ring_mark (pen, table, i);
  sw_flow_table (flow, table);
}

static const SwColumn as_built_columns[] = {
  { N_ ("Strip"), SW_TEXT_RIGHT, 0 },
  { N_ ("Azimuth"), SW_TEXT_RIGHT, 0 },
  { N_ ("From mark 1, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("From mark 1, feet and inches"), SW_TEXT_RIGHT, 0 },
  { N_ ("Centre to outer face, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("Hook to tie, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("Gap at tie, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("Marked"), SW_TEXT_CENTRE, 0 },
};

static void
add_as_built_mark (const SwPen *pen, SwTable *table, guint i)
{
  const SwAsBuiltMark *mark = &g_array_index (pen->solution->as_built->marks, SwAsBuiltMark, i);
  char **cells = g_new0 (char *, G_N_ELEMENTS (as_built_columns) + 1);
  guint n = 0;

  cells[n++] = g_strdup_printf ("%u", i + 1);
  cells[n++] = degrees (pen, mark->azimuth_deg);
  cells[n++] = mm (pen, mark->arc_m, 0);
  cells[n++] = feet (pen, mark->arc_m);
  cells[n++] = mm (pen, mark->radius_m, 0);
  cells[n++] = mm (pen, mark->slant_m, 0);
  cells[n++] = mm (pen, mark->tail_m, 0);
  cells[n] = g_strdup (SW_CELL_TICK);
  add_row (table, cells);
}

void
sw_as_built_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwAsBuilt *as_built = pen->solution->as_built;
  g_autofree char *round = sw_pen_number (pen, as_built->perimeter_m, SW_QUANTITY_LENGTH);
  g_autofree char *how =
    sw_pen_say (pen,
                N_ ("The same marks on the ring as it was measured: %s round the outer face. "
                    "They take the place of the marks of the design: equal lengths between "
                    "strips along the real ring."),
                round);
  g_autoptr (SwTable) table = sw_table_new (as_built_columns, G_N_ELEMENTS (as_built_columns));

  sw_flow_text (flow, how);
  for (guint i = 0; i < as_built->marks->len; i++)
    add_as_built_mark (pen, table, i);
  sw_flow_table (flow, table);
}

static const SwColumn hole_columns[] = {
  { N_ ("Strip"), SW_TEXT_RIGHT, 0 },
  { N_ ("To the right, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("Away from viewer, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("To the right, inches"), SW_TEXT_RIGHT, 0 },
  { N_ ("Away from viewer, inches"), SW_TEXT_RIGHT, 0 },
  { N_ ("Drilled"), SW_TEXT_CENTRE, 0 },
};

#define INCH_M 0.0254

static void
add_hole (const SwPen *pen, SwTable *table, guint i)
{
  const SwHole *hole = &g_array_index (pen->solution->crown, SwHole, i);
  char **cells = g_new0 (char *, G_N_ELEMENTS (hole_columns) + 1);
  guint n = 0;

  cells[n++] = g_strdup_printf ("%u", i + 1);
  cells[n++] = mm (pen, hole->x_m, 1);
  cells[n++] = mm (pen, hole->y_m, 1);
  cells[n++] = sw_pen_decimal (pen, hole->x_m / INCH_M, 3);
  cells[n++] = sw_pen_decimal (pen, hole->y_m / INCH_M, 3);
  cells[n] = g_strdup (SW_CELL_TICK);
  add_row (table, cells);
}

static void
say_hole_size (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwDesign *design = pen->solution->design;
  const SwHook *hook = sw_catalogue_hook (pen->solution->catalogue, design->crown.hook);
  double circle_m = 2 * (design->shape.crown_radius_m - design->crown.hook_reach_m);
  g_autofree char *circle = sw_pen_number (pen, circle_m, SW_QUANTITY_SHORT_LENGTH);
  g_autofree char *size = hook == NULL ? NULL : mm (pen, hook->hole_m, 1);
  g_autofree char *where =
    sw_pen_say (pen, N_ ("All holes stand on a circle of %s across."), circle);
  g_autofree char *drill =
    hook == NULL ? NULL : sw_pen_say (pen, N_ ("Drill %s mm for: %s."), size, hook->name);

  sw_flow_text (flow, where);
  if (drill != NULL)
    sw_flow_text (flow, drill);
}

void
sw_crown_holes_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (hole_columns, G_N_ELEMENTS (hole_columns));

  say_hole_size (flow);
  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Places are measured from the plate's centre with the plate "
                                 "top side up and the viewer's side towards you. Numbers grow "
                                 "anticlockwise. Drilled from below they would come out "
                                 "mirrored. Or drill through crown-plate.pdf, printed at "
                                 "100 %.")));
  sw_flow_caution (flow,
                   sw_pen_word (pen, N_ ("Drilling")),
                   sw_pen_word (pen,
                                N_ ("clamp the plate, wear eye protection, and take the burr "
                                    "off every hole: sharp edges cut hands and ties.")));
  for (guint i = 0; i < pen->solution->crown->len; i++)
    add_hole (pen, table, i);
  sw_flow_table (flow, table);
}
