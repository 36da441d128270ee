// SPDX-License-Identifier: GPL-3.0-or-later
/* Foot: the half lap, bolts and slabs or concrete, the sleeve, and whether it stands plumb. */
#include "drawing/foot-view.h"
#include "packet/frame.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

#define LAP_HEIGHT 120.0
#define PLAN_HEIGHT 210.0
#define BARE_PLAN_HEIGHT 160.0 /* without slabs */
#define CAPTION_ROOM 14.0
#define DEPTH_ROOM 96.0 /* both sides, for the depth of the cut */
#define LITRES 1000.0

/* The scale that fits, and its caption at the foot of the box. */
static double
scaled (const SwPen *pen, const SwBox *box, const char *words, double width_m, double height_m)
{
  double room = box->height - CAPTION_ROOM - 24;
  char scale[16];
  double points = sw_frame_scale (pen->solution->design->units,
                                  MIN ((box->width - DEPTH_ROOM) / width_m, room / height_m),
                                  scale);
  g_autofree char *caption =
    sw_pen_say (pen, N_ ("%s. Scale %s"), sw_pen_word (pen, words), scale);
  SwWriting writing = { .size = pen->style->text_small, .width = box->width, .one_line = TRUE };
  g_autoptr (PangoLayout) text = sw_pen_layout (pen, &writing, caption);

  sw_pen_show (pen, SW_INK_SECOND, box->x, box->y + box->height - CAPTION_ROOM, text);
  return points;
}

static void
draw_lap (const SwPen *pen, const SwBox *box, gpointer data)
{
  const SwFootBuild *foot = &pen->solution->foot;
  double height_m = sw_half_lap_height_m (pen->solution);
  double width_m = 2 * pen->solution->design->stand.arm_m;
  g_autofree char *start = sw_pen_tape (pen, foot->lap_start_m);
  g_autofree char *width = sw_pen_tape (pen, foot->lap_width_m);
  g_autofree char *depth = sw_pen_tape (pen, foot->lap_depth_m);
  const SwLapTexts texts = { start, width, depth };
  SwView view = { .width = box->width, .height = box->height };
  SwPicture picture = { .view = &view, .style = pen->style, .language = pen->language };

  view.scale =
    scaled (pen, box, N_ ("Both boards from the side, each with its cut"), width_m, height_m);
  view.x0 = (box->width - width_m * view.scale) / 2;
  view.y0 = 6 + height_m * view.scale;
  cairo_save (pen->cr);
  cairo_translate (pen->cr, box->x, box->y);
  sw_half_lap_draw (pen->cr, &picture, pen->solution, &texts);
  cairo_restore (pen->cr);
}

static void
draw_plan (const SwPen *pen, const SwBox *box, gpointer data)
{
  double across_m = 2 * sw_foot_plan_half_m (pen->solution);
  SwView view = { .width = box->width, .height = box->height };
  SwPicture picture = { .view = &view, .style = pen->style, .language = pen->language };

  view.scale = scaled (pen, box, N_ ("The foot from above"), across_m, across_m);
  view.x0 = box->width / 2;
  view.y0 = 4 + across_m * view.scale / 2;
  cairo_save (pen->cr);
  cairo_translate (pen->cr, box->x, box->y);
  sw_foot_plan_draw (pen->cr, &picture, pen->solution);
  cairo_restore (pen->cr);
}

static void
add_tape (const SwPen *pen, SwTable *table, const char *words, double metres)
{
  if (isfinite (metres))
    sw_table_add_fact (table, pen, words, sw_pen_tape (pen, metres));
}

static void
add_decimal (const SwPen *pen, SwTable *table, const char *words, double value, int decimals)
{
  if (isfinite (value))
    sw_table_add_fact (table, pen, words, sw_pen_decimal (pen, value, decimals));
}

static void
add_mass (const SwPen *pen, SwTable *table, const char *words, double mass_kg)
{
  if (isfinite (mass_kg))
    sw_table_add_fact (table, pen, words, sw_pen_number (pen, mass_kg, SW_QUANTITY_MASS));
}

static void
add_figures (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwFootBuild *foot = &pen->solution->foot;
  const SwStand *stand = &pen->solution->design->stand;
  gboolean ground = stand->foot == SW_FOOT_SOCKET;
  g_autoptr (SwTable) table = sw_table_new_facts ();

  add_tape (pen,
            table,
            N_ ("Half lap: from the board's end to the first cut"),
            foot->lap_start_m);
  add_tape (pen, table, N_ ("Half lap: width, as the other board measures"), foot->lap_width_m);
  add_tape (pen, table, N_ ("Half lap: depth, half the thickness"), foot->lap_depth_m);
  add_tape (pen, table, N_ ("Four bolts: off both middle lines"), foot->bolt_off_m);
  add_decimal (pen, table, N_ ("Slabs, the same number on each arm"), foot->slabs, 0);
  add_tape (pen, table, N_ ("Middle of each pile of slabs from the post"), foot->slab_off_m);
  if (ground) {
    add_tape (pen, table, N_ ("Hole across"), stand->socket_diameter_m);
    add_tape (pen, table, N_ ("Hole deep, with gravel"), stand->socket_depth_m + SW_GRAVEL_M);
    add_tape (pen, table, N_ ("The post stands deep"), -pen->solution->heights.foot_m);
  }
  add_decimal (pen, table, N_ ("Concrete, litres"), foot->concrete_m3 * LITRES, 1);
  add_decimal (pen, table, N_ ("Bags of 80 lb"), foot->bags, 0);
  add_decimal (pen,
               table,
               N_ ("Mixing water to start with, litres in all"),
               foot->water_m3 * LITRES,
               1);
  add_mass (pen, table, N_ ("A bucket holds at most"), foot->bucket_most_kg);
  if (!ground)
    add_mass (pen, table, N_ ("Ballast asked for"), stand->ballast_kg);
  add_mass (pen, table, N_ ("Ballast reached"), foot->mass_reached_kg);
  sw_flow_table (flow, table);
}

typedef struct {
  gboolean boards, bucket, ground;
  const char *words; /* N_() */
} Step;

/* In the order of the work; a step is for the kinds of foot it is marked for. */
static const Step steps[] = {
  { TRUE,
    TRUE,
    FALSE,
    N_ ("Measure your boards: the cut is as wide as the other board really "
        "is. Saw to half the thickness, chisel out, and try it dry.") },
  { TRUE,
    TRUE,
    FALSE,
    N_ ("Glue the lap. Bolt the sleeve's flange through both boards, its bolts "
        "on the diagonals, heads let in below.") },
  { FALSE,
    TRUE,
    FALSE,
    N_ ("Stand the bucket on the lap. Four more bolts, one on each arm inside "
        "the bucket, come up through boards and floor into the concrete.") },
  { FALSE,
    FALSE,
    TRUE,
    N_ ("Have buried lines marked before you dig. Dig, and put 150 mm (6 in) "
        "of gravel at the bottom.") },
  { FALSE,
    FALSE,
    TRUE,
    N_ ("Set the sleeve on the gravel with its top at the ground, a bolt "
        "across it where the post is to stand.") },
  { TRUE,
    TRUE,
    FALSE,
    N_ ("Drain: drill a hole at the foot of the sleeve, so that no water "
        "stands and freezes in it.") },
  { FALSE,
    TRUE,
    TRUE,
    N_ ("Mix as the bag says; it counts before this sheet. Start with 6 US "
        "pints (2.8 l) of water a bag of 80 lb. Cement burns: gloves and "
        "eye protection.") },
  { FALSE,
    TRUE,
    TRUE,
    N_ ("Hold the sleeve plumb both ways while it sets. No load for 7 days, or "
        "as long as the bag says; longer in the cold.") },
  { TRUE,
    FALSE,
    FALSE,
    N_ ("Lay the slabs flat on the arms, the same on each, and strap each "
        "pile to its arm.") },
  { TRUE, TRUE, TRUE, N_ ("Cap the sleeve whenever no post stands in it.") },
};

static gboolean
applies (const Step *step, SwFootKind foot)
{
  switch (foot) {
  case SW_FOOT_SLABS:
    return step->boards;
  case SW_FOOT_BUCKET:
    return step->bucket;
  case SW_FOOT_SOCKET:
    return step->ground;
  }
  return FALSE;
}

static void
add_steps (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Making it")));
  for (guint i = 0; i < G_N_ELEMENTS (steps); i++) {
    if (applies (&steps[i], pen->solution->design->stand.foot))
      sw_flow_tick (flow, sw_pen_word (pen, steps[i].words));
  }
}

/* A check that can fail, with the figure to write down. */
static void
add_plumb (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  double drop_m = pen->solution->design->shape.crown_height_m;
  g_autofree char *most = sw_pen_tape (pen, SW_PLUMB_M);
  g_autofree char *drop = sw_pen_tape (pen, drop_m);
  g_autofree char *words = sw_pen_say (
    pen,
    N_ ("Hang a plumb line from the crown, %s down, in front of the post and then "
        "beside it. Off by ______ and ______. More than %s: shim, and measure again "
        "before a strip is hung."),
    drop,
    most);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Plumb")));
  sw_flow_tick (flow, words);
}

void
sw_foot_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  if (pen->solution->heights.board != NULL) {
    sw_flow_add (flow, &(SwBlock){ LAP_HEIGHT, 6, FALSE, draw_lap, NULL, NULL }, NULL);
    double plan = pen->solution->foot.slabs > 0 ? PLAN_HEIGHT : BARE_PLAN_HEIGHT;
    sw_flow_add (flow, &(SwBlock){ plan, 6, FALSE, draw_plan, NULL, NULL }, NULL);
  }
  if (pen->solution->design->stand.foot == SW_FOOT_SOCKET) {
    sw_flow_add (flow,
                 &(SwBlock){ PLAN_HEIGHT, 6, FALSE, sw_sleeve_section_block, NULL, NULL },
                 NULL);
    sw_flow_text (
      flow,
      sw_pen_word (pen, N_ ("Numbers are those of the sheet How it fits together.")));
  }
  add_figures (flow);
  add_steps (flow);
  add_plumb (flow);
}
