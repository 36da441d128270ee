// SPDX-License-Identifier: GPL-3.0-or-later
/* The sheet to hand to whoever sets up the driver box. */
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

static const SwColumn first_columns[] = {
  { N_ ("Strip"), SW_TEXT_RIGHT, 0 },
  { N_ ("Port"), SW_TEXT_RIGHT, 0 },
  { N_ ("Pixel 1 is at the"), SW_TEXT_LEFT, 0 },
  { N_ ("Universe of pixel 1"), SW_TEXT_RIGHT, 0 },
  { N_ ("Channel of pixel 1"), SW_TEXT_RIGHT, 0 },
  { N_ ("Universe of last pixel"), SW_TEXT_RIGHT, 0 },
  { N_ ("Channel of last pixel"), SW_TEXT_RIGHT, 0 },
  { N_ ("Walked"), SW_TEXT_CENTRE, 0 },
};

static const char *
first_end (const SwPen *pen, int strip)
{
  if (strip == 0)
    return sw_pen_word (pen, N_ ("top of the star"));
  return sw_data_runs_up (&pen->solution->data, pen->solution->design, strip)
           ? sw_pen_word (pen, N_ ("ring"))
           : sw_pen_word (pen, N_ ("crown"));
}

static void
add_strip (const SwPen *pen, SwTable *table, int strip, int pixels)
{
  const SwDataPlan *data = &pen->solution->data;
  const SwDesign *design = pen->solution->design;
  SwAddress first = sw_data_address (data, design, strip, 1);
  SwAddress last = sw_data_address (data, design, strip, pixels);
  g_autofree char *number =
    strip == 0 ? g_strdup (sw_pen_word (pen, N_ ("star"))) : g_strdup_printf ("%d", strip);
  g_autofree char *port = g_strdup_printf ("%d", first.port);
  g_autofree char *first_universe = g_strdup_printf ("%d", first.universe);
  g_autofree char *first_channel = g_strdup_printf ("%d", first.channel);
  g_autofree char *last_universe = g_strdup_printf ("%d", last.universe);
  g_autofree char *last_channel = g_strdup_printf ("%d", last.channel);
  const char *cells[] = { number,        port,          first_end (pen, strip), first_universe,
                          first_channel, last_universe, last_channel,           SW_CELL_TICK };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_strips (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwDesign *design = pen->solution->design;
  int star_pixels = (int) pen->solution->topper_pixels->len;
  g_autoptr (SwTable) table = sw_table_new (first_columns, G_N_ELEMENTS (first_columns));

  for (int strip = 1; strip <= design->shape.strip_count; strip++)
    add_strip (pen, table, strip, design->strip.pixels);
  if (star_pixels > 0)
    add_strip (pen, table, 0, star_pixels);
  sw_flow_table (flow, table);
}

/* Where the tree stands to the viewer. */
static void
say_sides (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwShape *shape = &pen->solution->design->shape;
  g_autofree char *azimuth =
    sw_pen_number (pen, sw_cone_azimuth_deg (shape, 1), SW_QUANTITY_ANGLE);
  g_autofree char *first = sw_pen_say (
    pen,
    shape->coverage_deg >= 360
      ? N_ ("Strip 1 stands at azimuth %s, at the seam on the far side; the last of "
            "the %d strips is its neighbour.")
      : N_ ("Strip 1 stands at azimuth %s, at one end of the tree; the last of the "
            "%d strips at the other."),
    azimuth,
    shape->strip_count);

  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Azimuth 0° points from the post to the viewer and grows "
                                 "anticlockwise seen from above: 90° is on the viewer's "
                                 "right.")));
  sw_flow_text (flow, first);
  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Strip numbers grow anticlockwise seen from above: across the "
                                 "front they run from the viewer's left to the right.")));
}

static void
say_path (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwDataSetup *data = &pen->solution->design->data;
  gboolean ring = data->enter == SW_ENTER_RING;
  const char *words;

  if (data->path == SW_PATH_SAME_END)
    words = ring ? N_ ("Data enters every strip at the ring; pixel 1 is its lowest.")
                 : N_ ("Data enters every strip at the crown; pixel 1 is its highest.");
  else
    words = ring ? N_ ("Data goes up one strip and down the next: on each port the first strip "
                       "begins at the ring, the second at the crown, and so on.")
                 : N_ ("Data goes down one strip and up the next: on each port the first strip "
                       "begins at the crown, the second at the ring, and so on.");
  sw_flow_text (flow, sw_pen_word (pen, words));
}

/* The tree from above, small: where the viewer is, where strip 1 is, which way numbers grow. */
#define SKETCH_SHARE 0.34 /* of the width */
#define SKETCH_HEIGHT 150.0
#define SKETCH_RADIUS 46.0
#define NUMBER_OUT 10.0     /* points a strip's number stands outside its dot */
#define NUMBER_APART_DEG 28 /* least between two numbers */

/* Azimuth 0° down the page (the viewer), growing anticlockwise. */
static void
place_on (double azimuth_deg, double radius, double *x, double *y)
{
  double angle_rad = azimuth_deg * G_PI / 180;

  *x = radius * sin (angle_rad);
  *y = radius * cos (angle_rad);
}

static void
draw_centred (const SwPen *pen, double x, double y, const char *text, gboolean bold)
{
  SwWriting writing = { .size = pen->style->text_small, .bold = bold };
  g_autoptr (PangoLayout) layout = sw_pen_layout (pen, &writing, text);

  sw_pen_show (pen,
               SW_INK_MAIN,
               x - sw_layout_width (layout) / 2,
               y - sw_layout_height (layout) / 2,
               layout);
}

static void
draw_strips (const SwPen *pen)
{
  const SwShape *shape = &pen->solution->design->shape;
  double x, y;

  sw_style_set_ink (pen->style, pen->cr, SW_INK_MAIN);
  for (int strip = 1; strip <= shape->strip_count; strip++) {
    place_on (sw_cone_azimuth_deg (shape, strip), SKETCH_RADIUS, &x, &y);
    cairo_new_sub_path (pen->cr);
    cairo_arc (pen->cr, x, y, strip == 1 ? 3.2 : 1.4, 0, 2 * G_PI);
  }
  cairo_fill (pen->cr);
}

/* Strip 1, and as many others as have room. */
static void
draw_numbers (const SwPen *pen)
{
  const SwShape *shape = &pen->solution->design->shape;
  double step_deg = sw_cone_step_deg (shape);
  int step = (int) ceil (NUMBER_APART_DEG / step_deg);
  double last_deg = 360 - NUMBER_APART_DEG; /* or it would meet strip 1's */

  for (int strip = 1; strip <= shape->strip_count; strip += step) {
    char number[16];
    double x, y;

    if ((strip - 1) * step_deg > last_deg)
      break;
    g_snprintf (number, sizeof number, "%d", strip);
    place_on (sw_cone_azimuth_deg (shape, strip), SKETCH_RADIUS + NUMBER_OUT, &x, &y);
    draw_centred (pen, x, y, number, strip == 1);
  }
}

/* Inside the ring, a third of a turn, from strip 1 on. */
static void
draw_turn (const SwPen *pen)
{
  const SwShape *shape = &pen->solution->design->shape;
  double from_deg = sw_cone_azimuth_deg (shape, 1);
  double to_deg = from_deg + MIN (shape->coverage_deg, 360) / 3;
  double radius = SKETCH_RADIUS * 0.72;
  double x, y, tip_x, tip_y;

  cairo_new_path (pen->cr);
  for (double at_deg = from_deg; at_deg <= to_deg; at_deg += 2) {
    place_on (at_deg, radius, &x, &y);
    cairo_line_to (pen->cr, x, y);
  }
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
  place_on (to_deg + 8, radius, &tip_x, &tip_y);
  cairo_move_to (pen->cr, tip_x, tip_y);
  place_on (to_deg - 3, radius + 3.5, &x, &y);
  cairo_line_to (pen->cr, x, y);
  place_on (to_deg - 3, radius - 3.5, &x, &y);
  cairo_line_to (pen->cr, x, y);
  sw_style_set_ink (pen->style, pen->cr, SW_INK_MAIN);
  cairo_fill (pen->cr);
}

static void
draw_sketch (const SwPen *pen, double x, double y)
{
  double below = SKETCH_RADIUS + 2 * NUMBER_OUT;

  cairo_save (pen->cr);
  cairo_translate (pen->cr, x, y);
  draw_strips (pen);
  draw_numbers (pen);
  draw_turn (pen);
  cairo_new_path (pen->cr);
  cairo_arc (pen->cr, 0, 0, 2.5, 0, 2 * G_PI);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
  cairo_move_to (pen->cr, 0, below);
  cairo_rel_line_to (pen->cr, -4, 7);
  cairo_rel_line_to (pen->cr, 8, 0);
  cairo_close_path (pen->cr);
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
  draw_centred (pen, 0, below + 14, sw_pen_word (pen, N_ ("viewer")), FALSE);
  cairo_restore (pen->cr);
}

static void
draw_sides (const SwPen *pen, const SwBox *box, gpointer data)
{
  double width = box->width * SKETCH_SHARE;

  sw_flow_draw (data, pen, box->x, box->y, 0);
  draw_sketch (pen, box->x + box->width - width / 2, box->y + SKETCH_RADIUS + 2 * NUMBER_OUT);
}

/* Words on the left, the sketch on the right. */
static void
add_sides (SwFlow *flow)
{
  double width = sw_flow_width (flow) * (1 - SKETCH_SHARE);
  SwFlow *words = sw_flow_new (sw_flow_pen (flow), width, G_MAXDOUBLE);

  say_sides (words);
  say_path (words);
  sw_flow_add (flow,
               &(SwBlock){ .height = MAX (sw_flow_height (words), SKETCH_HEIGHT),
                           .gap = 4,
                           .draw = draw_sides,
                           .data = words,
                           .free = (GDestroyNotify) sw_flow_free },
               NULL);
}

static void
add_settings (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwDesign *design = pen->solution->design;
  const SwDataSetup *data = &design->data;
  g_autofree char *cap = sw_pen_number (pen, design->power.cap, SW_QUANTITY_SHARE);
  g_autofree char *brightness =
    sw_pen_say (pen,
                N_ ("Highest brightness allowed set to %s in the driver box. Wires, fuses and "
                    "supplies are sized by it."),
                cap);
  g_autofree char *order = sw_pen_say (pen,
                                       N_ ("Colour order %s, %d channels a pixel."),
                                       data->colour_order,
                                       pen->solution->data.channels_per_pixel);
  g_autofree char *skipped =
    sw_pen_say (pen,
                N_ ("Skipped pixels (driven, but dark), first on every port: %d."),
                data->skipped_pixels);
  g_autofree char *universe =
    sw_pen_say (pen,
                N_ ("First universe %d; %d pixels in a universe; channels count from 1."),
                data->first_universe,
                data->pixels_per_universe);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Set in the driver box")));
  sw_flow_tick (flow, brightness);
  sw_flow_tick (flow, order);
  sw_flow_tick (flow, skipped);
  sw_flow_tick (flow, universe);
}

/* Steps of the walk that need no number of the design. */
static const char *const walk_start[] = {
  N_ ("All dark. Light pixel 1 of strip 1 alone, red: it is where the sides above say."),
  N_ ("The same pixel green, then blue: other colours mean another colour order."),
  N_ ("Strip 1, one pixel after another: the light runs from end to end with no gap."),
  N_ ("Strip after strip, each whole: the light goes round anticlockwise seen from above, and "
      "no strip is left out or lit twice."),
  N_ ("The last pixel of the last strip on each port."),
};

static void
add_walk (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwPower *power = &pen->solution->power;
  g_autofree char *amps = sw_pen_number (pen, power->tree_current_a, SW_QUANTITY_CURRENT);
  g_autofree char *volts =
    sw_pen_number (pen, pen->solution->design->power.min_pixel_v, SW_QUANTITY_VOLTAGE);
  g_autofree char *full =
    sw_pen_say (pen,
                N_ ("All white for five minutes at the brightness set above: all supplies "
                    "together give no more than %s, the far end of the worst strip has %s or "
                    "more, and no plug or wire is warm."),
                amps,
                volts);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Walk test")));
  for (guint i = 0; i < G_N_ELEMENTS (walk_start); i++)
    sw_flow_tick (flow, sw_pen_word (pen, walk_start[i]));
  if (pen->solution->topper_pixels->len > 0)
    sw_flow_tick (flow, sw_pen_word (pen, N_ ("The star, pixel 1 to the last.")));
  if (power->feasible)
    sw_flow_tick (flow, full);
}

void
sw_driver_box_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("For whoever sets up what drives the lights. Places of all "
                                 "pixels, with port, universe and channel: pixels.csv.")));
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Sides and order")));
  add_sides (flow);
  add_settings (flow);
  add_walk (flow);
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Where each strip begins")));
  add_strips (flow);
}
