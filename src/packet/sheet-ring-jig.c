// SPDX-License-Identifier: GPL-3.0-or-later
/* How the ring pipe is bent: blocks on a sheet of wood, their table, and cautions. */
#include "engine/ring-jig.h"
#include "engine/units.h"
#include "packet/sheet-ring.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

#define BLOCK_POINTS 5.0
#define MARGIN 24.0

static double
longest_piece_deg (const SwSolution *solution)
{
  const SwRingJoints *joints = &solution->ring.joints;
  double longest_m = MAX (joints->first_m, MAX (joints->part_m, joints->last_m));

  return longest_m / solution->design->shape.ring_radius_m * 180 / G_PI;
}

static void
jig_of (SwRingJig *jig, const SwSolution *solution)
{
  sw_ring_jig_init (jig,
                    solution->design->shape.ring_radius_m,
                    solution->ring_od_m,
                    longest_piece_deg (solution));
}

static double
jig_scale (const SwRingJig *jig, double width)
{
  return (width - 2 * MARGIN) / jig->chord_m;
}

static void
draw_number (const SwPen *pen, double x, double y, int number)
{
  SwWriting writing = { .size = pen->style->text_small };
  g_autofree char *text = g_strdup_printf ("%d", number);
  g_autoptr (PangoLayout) layout = sw_pen_layout (pen, &writing, text);

  sw_pen_show (pen, SW_INK_MAIN, x - sw_layout_width (layout) / 2, y, layout);
}

/* Each on the inner side of the curve, touching it. */
static void
draw_blocks (const SwPen *pen, const SwRingJig *jig, double scale)
{
  for (int block = 1; block <= jig->blocks; block++) {
    double x, y;
    sw_ring_jig_block (jig, block, &x, &y);
    cairo_rectangle (pen->cr,
                     x * scale - BLOCK_POINTS / 2,
                     -y * scale,
                     BLOCK_POINTS,
                     BLOCK_POINTS);
    sw_pen_line (pen, SW_INK_MAIN, pen->style->line_middle);
    draw_number (pen, x * scale, -y * scale + BLOCK_POINTS + 1, block);
  }
}

static void
draw_curve (const SwPen *pen, const SwRingJig *jig, double scale)
{
  cairo_new_path (pen->cr);
  for (int i = 0; i <= 60; i++) {
    double along_m = jig->chord_m * i / 60;
    cairo_line_to (pen->cr, along_m * scale, -sw_ring_jig_out_m (jig, along_m) * scale - 1.5);
  }
  sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thick);
}

static void
draw_jig (const SwPen *pen, const SwBox *box, gpointer data)
{
  SwRingJig jig;

  jig_of (&jig, pen->solution);
  double scale = jig_scale (&jig, box->width);
  cairo_save (pen->cr);
  cairo_translate (pen->cr, box->x + MARGIN, box->y + 6 + jig.rise_m * scale);
  cairo_move_to (pen->cr, 0, 0);
  cairo_line_to (pen->cr, jig.chord_m * scale, 0);
  sw_pen_line (pen, SW_INK_SECOND, pen->style->line_thin);
  draw_curve (pen, &jig, scale);
  draw_blocks (pen, &jig, scale);
  cairo_restore (pen->cr);
}

static const SwColumn block_columns[] = {
  { N_ ("Blocks"), SW_TEXT_LEFT, 0 },       { N_ ("Along, mm"), SW_TEXT_RIGHT, 0 },
  { N_ ("Out, mm"), SW_TEXT_RIGHT, 0 },     { N_ ("Along, inches"), SW_TEXT_RIGHT, 0 },
  { N_ ("Out, inches"), SW_TEXT_RIGHT, 0 }, { N_ ("Fixed"), SW_TEXT_CENTRE, 0 },
};

/* A block and its mirror; the middle one has none. */
static void
add_blocks (const SwPen *pen, SwTable *table, const SwRingJig *jig, int block)
{
  int twin = jig->blocks + 1 - block;
  double along_m, out_m;

  sw_ring_jig_block (jig, block, &along_m, &out_m);
  g_autofree char *number =
    twin == block ? g_strdup_printf ("%d", block) : g_strdup_printf ("%d, %d", block, twin);
  g_autofree char *along_mm = sw_pen_decimal (pen, fabs (along_m) * 1000, 0);
  g_autofree char *out_mm = sw_pen_decimal (pen, fabs (out_m) * 1000, 0);
  g_autofree char *along_in = sw_units_format_tape (along_m, SW_UNITS_US, pen->language);
  g_autofree char *out_in = sw_units_format_tape (out_m, SW_UNITS_US, pen->language);
  const char *cells[] = { number, along_mm, out_mm, along_in, out_in, SW_CELL_TICK };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
draw_whole (const SwPen *pen, const SwBox *box, gpointer data)
{
  sw_flow_draw (data, pen, box->x, box->y, 0);
}

static void
say_jig (SwFlow *flow, const SwRingJig *jig)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autofree char *radius = sw_pen_number (pen, jig->radius_m, SW_QUANTITY_SHORT_LENGTH);
  g_autofree char *chord = sw_pen_number (pen, jig->chord_m, SW_QUANTITY_LENGTH);
  g_autofree char *rise = sw_pen_number (pen, jig->rise_m, SW_QUANTITY_SHORT_LENGTH);
  g_autofree char *what = sw_pen_say (
    pen,
    N_ ("On a sheet of wood draw a base line of %s. The pipe's inner face curves out "
        "from it with a radius of %s, %s in the middle. Screw a block at each place "
        "of the table, on the inner side: so far along the base line from its nearer "
        "end, so far out from it. One more outside each end holds the pipe."),
    chord,
    radius,
    rise);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Bending jig")));
  sw_flow_text (flow, what);
  if (longest_piece_deg (pen->solution) > jig->angle_deg + 1e-6)
    sw_flow_text (
      flow,
      sw_pen_word (pen,
                   N_ ("A piece is longer than the jig: form it from one end on and "
                       "move it along, with the part that is done against the "
                       "blocks.")));
}

/* Temperatures: a plastics dealer's page on bending PVC pipe (225–275 °F), and a bender's
 * manual (about 250 °F, radius of 4 diameters or more). Springback: common practice, no source.
 */
static void
say_warm (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  sw_flow_text (
    flow,
    sw_pen_word (
      pen,
      N_ ("Warm the pipe evenly, turning it, to 107 to 135 °C (225 to 275 °F): for a "
          "bend as wide as this the lower end is enough. Plug its ends, lay it against "
          "the blocks and leave it there until it is cold. It opens a little when "
          "it is let go: try one piece, and move the blocks in if it does.")));
  sw_flow_caution (
    flow,
    sw_pen_word (pen, N_ ("Warming PVC")),
    sw_pen_word (
      pen,
      N_ ("no flame: PVC that chars gives off hydrogen chloride, which burns eyes and "
          "lungs. Use a hot-air blanket, a heat box or a bender made for it, outdoors "
          "or with good air, with gloves. A plugged pipe holds hot air: open a plug "
          "only when it is cold.")));
}

static void
say_cold (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("Bend metal pipe cold, in many small steps, on a roll bender or "
                     "a hand bender for its size, and check it against the blocks. "
                     "It springs back: bend a little past them. A kink is where it "
                     "will fail; start again with a new piece.")));
}

/* Words and drawing stay on one page. */
static void
add_picture (SwFlow *flow, const SwRingJig *jig)
{
  double width = sw_flow_width (flow);
  SwFlow *whole = sw_flow_new (sw_flow_pen (flow), width, G_MAXDOUBLE);
  double height = jig->rise_m * jig_scale (jig, width) + 22;

  say_jig (whole, jig);
  sw_flow_add (whole, &(SwBlock){ height, 4, FALSE, draw_jig, NULL, NULL }, NULL);
  sw_flow_add (flow,
               &(SwBlock){ .height = sw_flow_height (whole),
                           .gap = 10,
                           .draw = draw_whole,
                           .data = whole,
                           .free = (GDestroyNotify) sw_flow_free },
               NULL);
}

void
sw_ring_jig_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwSolution *solution = pen->solution;
  const SwPipe *pipe =
    sw_catalogue_pipe (solution->catalogue, solution->design->stand.ring_pipe);
  g_autoptr (SwTable) table = sw_table_new (block_columns, G_N_ELEMENTS (block_columns));
  SwRingJig jig;

  jig_of (&jig, solution);
  add_picture (flow, &jig);
  for (int block = 1; block <= (jig.blocks + 1) / 2; block++)
    add_blocks (pen, table, &jig, block);
  sw_flow_table (flow, table);
  if (pipe->material == SW_MATERIAL_PVC)
    say_warm (flow);
  else
    say_cold (flow);
}
