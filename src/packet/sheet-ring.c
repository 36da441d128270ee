// SPDX-License-Identifier: GPL-3.0-or-later
/* Ring: its pieces, where joints, ties and spokes go, how to bend it, and what it then does. */
#include "packet/sheet-ring.h"

#include "engine/units.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

#define PLAN_HEIGHT 160.0
#define PLAN_RADIUS 64.0
#define LABEL_OUT 11.0 /* points a joint's name stands outside the pipe */

static void
say_pieces (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwRingJoints *joints = &pen->solution->ring.joints;
  const char *id = pen->solution->design->stand.ring_pipe;
  const SwPipe *pipe = sw_catalogue_pipe (pen->solution->catalogue, id);
  g_autofree char *length = sw_pen_number (pen, joints->part_m, SW_QUANTITY_LENGTH);
  g_autofree char *first = sw_pen_number (pen, joints->first_m, SW_QUANTITY_LENGTH);
  g_autofree char *last = sw_pen_number (pen, joints->last_m, SW_QUANTITY_LENGTH);
  g_autofree char *pieces = NULL;

  if (joints->parts == 1)
    pieces = sw_pen_say (pen, N_ ("Cut one piece of %s from: %s."), length, pipe->name);
  else if (fabs (joints->first_m - joints->last_m) < 5e-4)
    pieces =
      sw_pen_say (pen, N_ ("Cut %d of %s each from: %s."), joints->parts, length, pipe->name);
  else
    pieces =
      sw_pen_say (pen,
                  N_ ("Cut %d from: %s. The first is %s long, the last %s, those between "
                      "them %s, so that no joint falls on a mark or a tie."),
                  joints->parts,
                  pipe->name,
                  first,
                  last,
                  length);
  sw_flow_text (flow, pieces);
  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Lengths run along the middle of the pipe, without what the "
                                 "stops inside couplings take up.")));
}

/* Azimuth 0° down the page (the viewer), growing anticlockwise. */
static void
place_on (double azimuth_deg, double radius, double *x, double *y)
{
  double angle = azimuth_deg * G_PI / 180;

  *x = radius * sin (angle);
  *y = radius * cos (angle);
}

static void
add_radial (const SwPen *pen, double azimuth_deg, double from, double to)
{
  double x, y;

  place_on (azimuth_deg, from, &x, &y);
  cairo_move_to (pen->cr, x, y);
  place_on (azimuth_deg, to, &x, &y);
  cairo_line_to (pen->cr, x, y);
}

static void
draw_pipe (const SwPen *pen)
{
  const SwDesign *design = pen->solution->design;
  double half_deg = sw_ring_is_arc (design) ? design->shape.coverage_deg / 2 : 180, x, y;

  cairo_new_path (pen->cr);
  for (double off = -half_deg; off < half_deg + 1; off += 2) {
    place_on (design->shape.facing_deg + MIN (off, half_deg), PLAN_RADIUS, &x, &y);
    cairo_line_to (pen->cr, x, y);
  }
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thick);
}

static void
draw_marks (const SwPen *pen)
{
  const SwShape *shape = &pen->solution->design->shape;

  for (int strip = 1; strip <= shape->strip_count; strip++)
    add_radial (pen,
                sw_cone_azimuth_deg (shape, strip),
                PLAN_RADIUS - (strip == 1 ? 9 : 4),
                PLAN_RADIUS);
  sw_pen_line (pen, SW_INK_SECOND, pen->style->line_thin);
}

static void
draw_spokes (const SwPen *pen)
{
  const SwRingJoints *joints = &pen->solution->ring.joints;

  for (int spoke = 1; spoke <= joints->spokes; spoke++)
    add_radial (pen, sw_ring_spoke_azimuth_deg (joints, spoke), 3, PLAN_RADIUS);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
}

static void
draw_ties (const SwPen *pen)
{
  const SwDesign *design = pen->solution->design;
  double x, y;

  for (int tie = 1; tie <= design->stand.ring_ties; tie++) {
    place_on (sw_ring_tie_azimuth_deg (design, tie), PLAN_RADIUS, &x, &y);
    cairo_new_sub_path (pen->cr);
    cairo_arc (pen->cr, x, y, 2.6, 0, 2 * G_PI);
  }
  sw_style_set_ink (pen->style, pen->cr, SW_INK_PAPER);
  cairo_fill_preserve (pen->cr);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
}

static void
draw_name (const SwPen *pen, double azimuth_deg, const char *name)
{
  SwWriting writing = { .size = pen->style->text_small, .bold = TRUE };
  g_autoptr (PangoLayout) layout = sw_pen_layout (pen, &writing, name);
  double x, y;

  place_on (azimuth_deg, PLAN_RADIUS + LABEL_OUT, &x, &y);
  sw_pen_show (pen,
               SW_INK_MAIN,
               x - sw_layout_width (layout) / 2,
               y - sw_layout_height (layout) / 2,
               layout);
}

static void
draw_joints (const SwPen *pen)
{
  const SwRingJoints *joints = &pen->solution->ring.joints;

  for (int joint = 1; joint <= joints->count; joint++) {
    g_autofree char *name = g_strdup_printf ("%d", joint);
    double at = sw_ring_joint_azimuth_deg (joints, joint);
    add_radial (pen, at, PLAN_RADIUS - 5, PLAN_RADIUS + 5);
    sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thick);
    if (joints->step_deg > 10)
      draw_name (pen, at, name);
  }
}

static void
draw_plan (const SwPen *pen, const SwBox *box, gpointer data)
{
  cairo_save (pen->cr);
  cairo_translate (pen->cr, box->x + box->width / 2, box->y + PLAN_HEIGHT / 2);
  draw_spokes (pen);
  draw_marks (pen);
  draw_pipe (pen);
  draw_joints (pen);
  draw_ties (pen);
  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, 0, 0, 3, 0, 2 * G_PI);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
  cairo_restore (pen->cr);
}

static void
add_plan (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  sw_flow_add (flow, &(SwBlock){ PLAN_HEIGHT, 4, FALSE, draw_plan, NULL, NULL }, NULL);
  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 pen->solution->ring.joints.spokes > 0
                   ? N_ ("From above, viewer at the bottom. Numbered bars: joints. Circles: "
                         "ties. Ticks: strips, the long one strip 1. Lines: spokes.")
                   : N_ ("From above, viewer at the bottom. Numbered bars: joints. Circles: "
                         "ties. Ticks: strips, the long one strip 1.")));
}

typedef struct {
  const char *what; /* N_() */
  int number;
  double azimuth_deg, arc_m;
} Place;

static int
along_cb (gconstpointer a, gconstpointer b)
{
  double x = ((const Place *) a)->arc_m, y = ((const Place *) b)->arc_m;

  return (x > y) - (x < y);
}

static void
add_place (const SwPen *pen, GArray *places, const char *what, int number, double azimuth_deg)
{
  const SwShape *shape = &pen->solution->design->shape;
  double outer_m = shape->ring_radius_m + pen->solution->ring_od_m / 2;
  double along_deg = sw_azimuth_wrap_deg (azimuth_deg - sw_cone_azimuth_deg (shape, 1) + 1e-9);
  Place place = { what, number, azimuth_deg, outer_m * (along_deg - 1e-9) * G_PI / 180 };

  g_array_append_val (places, place);
}

/* Joints, ties and spokes in the order they come in, from mark 1 on. */
static GArray *
places_of (const SwPen *pen)
{
  const SwDesign *design = pen->solution->design;
  const SwRingJoints *joints = &pen->solution->ring.joints;
  GArray *places = g_array_new (FALSE, FALSE, sizeof (Place));

  for (int tie = 1; tie <= design->stand.ring_ties; tie++)
    add_place (pen, places, N_ ("Tie"), tie, sw_ring_tie_azimuth_deg (design, tie));
  for (int joint = 1; joint <= joints->count; joint++)
    add_place (pen, places, N_ ("Joint"), joint, sw_ring_joint_azimuth_deg (joints, joint));
  for (int spoke = 1; spoke <= joints->spokes; spoke++)
    add_place (pen, places, N_ ("Spoke"), spoke, sw_ring_spoke_azimuth_deg (joints, spoke));
  g_array_sort (places, along_cb);
  return places;
}

static const SwColumn place_columns[] = {
  { N_ ("Place"), SW_TEXT_LEFT, 0 },
  { N_ ("Azimuth"), SW_TEXT_RIGHT, 0 },
  { N_ ("From mark 1, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("From mark 1, feet and inches"), SW_TEXT_RIGHT, 0 },
  { N_ ("Marked"), SW_TEXT_CENTRE, 0 },
};

static void
add_place_row (const SwPen *pen, SwTable *table, const Place *place)
{
  g_autofree char *what =
    g_strdup_printf ("%s %d", sw_pen_word (pen, place->what), place->number);
  g_autofree char *azimuth = sw_pen_number (pen, place->azimuth_deg, SW_QUANTITY_ANGLE);
  g_autofree char *mm = sw_pen_decimal (pen, place->arc_m * 1000, 0);
  g_autofree char *feet =
    sw_units_format (place->arc_m, SW_QUANTITY_LENGTH, SW_UNITS_US, pen->language);
  const char *cells[] = { what, azimuth, mm, feet, SW_CELL_TICK };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
say_clear (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  double clear_m = pen->solution->ring.joints.clear_m;
  g_autofree char *clear = sw_pen_number (pen, clear_m, SW_QUANTITY_SHORT_LENGTH);
  g_autofree char *words = sw_pen_say (
    pen,
    N_ ("Every joint is %s or more from the nearest mark or tie. Lay the pieces out by "
        "this table before you join them."),
    clear);

  if (isfinite (clear_m))
    sw_flow_text (flow, words);
}

static void
add_places (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (GArray) places = places_of (pen);
  g_autoptr (SwTable) table = sw_table_new (place_columns, G_N_ELEMENTS (place_columns));

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Joints, ties and spokes")));
  say_clear (flow);
  for (guint i = 0; i < places->len; i++)
    add_place_row (pen, table, &g_array_index (places, Place, i));
  sw_flow_table (flow, table);
}

gboolean
sw_ring_sheet_applies (const SwSolution *solution)
{
  return solution->ring.joints.parts > 0;
}

void
sw_ring_fill (SwFlow *flow)
{
  say_pieces (flow);
  add_plan (flow);
  sw_ring_jig_fill (flow);
  add_places (flow);
  sw_ring_figures_fill (flow);
}
