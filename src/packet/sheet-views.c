// SPDX-License-Identifier: GPL-3.0-or-later
/* The dimensioned drawings, at a scale a ruler has, with a bar to prove it. */
#include "drawing/top-view.h"
#include "packet/frame.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>

#define BAR_ROOM 30.0 /* points at the foot of the drawing for the scale bar */
#define BESIDE 14.0   /* points between the two tables */

typedef SwView (*FitView) (const SwSolution *solution, double width, double height);
typedef void (*DrawView) (cairo_t *cr, const SwPicture *picture, const SwSolution *solution);

/* What a view needs: how it fits, how it is drawn, and the figures below it in two tables. */
typedef struct {
  FitView fit;
  DrawView draw;
  void (*facts) (const SwPen *pen, SwTable *left, SwTable *right);
  gboolean upright; /* stands on the ground: its height is in the middle of the box */
} ViewSheet;

static void
add_length (const SwPen *pen, SwTable *table, const char *words, double metres)
{
  sw_table_add_fact (table, pen, words, sw_pen_number (pen, metres, SW_QUANTITY_LENGTH));
}

static void
add_short (const SwPen *pen, SwTable *table, const char *words, double metres)
{
  sw_table_add_fact (table, pen, words, sw_pen_tape (pen, metres));
}

static void
add_angle (const SwPen *pen, SwTable *table, const char *words, double angle_deg)
{
  sw_table_add_fact (table, pen, words, sw_pen_number (pen, angle_deg, SW_QUANTITY_ANGLE));
}

static void
add_side_facts (const SwPen *pen, SwTable *left, SwTable *right)
{
  const SwDesign *design = pen->solution->design;
  const SwCone *cone = &pen->solution->cone;

  add_length (pen, left, N_ ("Top of all"), cone->overall_height_m);
  add_length (pen, left, N_ ("Crown: hooks above ground"), design->shape.crown_height_m);
  add_length (pen, left, N_ ("Ring: ties above ground"), design->shape.ring_height_m);
  add_length (pen, left, N_ ("Strip, hook to tie"), cone->slant_m);
  add_length (pen, left, N_ ("Lit length"), cone->run_m);
  add_short (pen, right, N_ ("Gap at hook"), design->strip.lead_m);
  add_short (pen, right, N_ ("Gap at tie"), cone->tail_m);
  add_short (pen, right, N_ ("Pixel to pixel"), design->strip.pitch_m);
  add_angle (pen, right, N_ ("Strips lean by"), cone->lean_deg);
  if (design->guys.count > 0)
    add_length (pen, right, N_ ("Guys meet the post at"), design->guys.height_m);
}

static void
add_top_facts (const SwPen *pen, SwTable *left, SwTable *right)
{
  const SwDesign *design = pen->solution->design;
  const SwCone *cone = &pen->solution->cone;
  double outer_m = design->shape.ring_radius_m + pen->solution->ring_od_m / 2;

  add_length (pen,
              left,
              N_ ("Ring, middle of pipe to middle"),
              2 * design->shape.ring_radius_m);
  add_length (pen, left, N_ ("Ring, outside to outside"), 2 * outer_m);
  add_short (pen, left, N_ ("Hook circle across"), 2 * design->shape.crown_radius_m);
  add_angle (pen, left, N_ ("Coverage"), design->shape.coverage_deg);
  add_angle (pen, left, N_ ("Faces azimuth"), design->shape.facing_deg);
  add_short (pen, right, N_ ("Strips apart at the ring, along it"), cone->spacing_ring_m);
  add_short (pen, right, N_ ("Strips apart at the ring, straight"), cone->chord_ring_m);
  add_short (pen, right, N_ ("Strips apart at the crown"), cone->spacing_crown_m);
  sw_table_add_fact (right,
                     pen,
                     N_ ("Ring ties"),
                     g_strdup_printf ("%d", design->stand.ring_ties));
  if (design->guys.count > 0)
    add_length (pen, right, N_ ("Stakes from the post"), design->guys.radius_m);
}

static const ViewSheet side_sheet = { sw_side_view_fit,
                                      sw_side_view_draw,
                                      add_side_facts,
                                      TRUE };
static const ViewSheet top_sheet = { sw_top_view_fit, sw_top_view_draw, add_top_facts, FALSE };

/* The two tables of figures, and the height they take. */
typedef struct {
  SwFlow *left, *right; /* owned */
  double height;
} Facts;

static void
facts_init (Facts *facts, const SwPen *pen, const ViewSheet *sheet, double width)
{
  g_autoptr (SwTable) left = sw_table_new_facts ();
  g_autoptr (SwTable) right = sw_table_new_facts ();

  sheet->facts (pen, left, right);
  facts->left = sw_flow_new (pen, (width - BESIDE) / 2, G_MAXDOUBLE);
  facts->right = sw_flow_new (pen, (width - BESIDE) / 2, G_MAXDOUBLE);
  sw_flow_table (facts->left, left);
  sw_flow_table (facts->right, right);
  facts->height = MAX (sw_flow_height (facts->left), sw_flow_height (facts->right));
}

static void
facts_clear (Facts *facts)
{
  sw_flow_free (facts->left);
  sw_flow_free (facts->right);
}

/* The fitted view brought down to a scale of the ruler, its middle kept in the middle. */
static SwView
scaled_view (const SwPen *pen, const ViewSheet *sheet, const SwBox *box, char label[16])
{
  SwView view = sheet->fit (pen->solution, box->width, box->height);
  double middle_x_m = sw_view_x_m (&view, view.width / 2);
  double middle_up_m = sw_view_up_m (&view, view.height / 2);
  double lowest_y = view.y0;

  view.scale = sw_frame_scale (pen->solution->design->units, view.scale, label);
  view.x0 = view.width / 2 - middle_x_m * view.scale;
  view.y0 = view.height / 2 + middle_up_m * view.scale;
  if (sheet->upright)
    view.y0 =
      MIN (view.height / 2 + pen->solution->cone.overall_height_m * view.scale / 2, lowest_y);
  return view;
}

/* A bar of four equal parts with a round length, at most a third of the width. */
static void
draw_scale_bar (const SwPen *pen, const SwBox *box, double scale)
{
  static const double metric_m[] = { 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01 };
  static const double us_ft[] = { 20, 10, 5, 4, 2, 1, 0.5, 0.25 };
  gboolean metric = pen->solution->design->units == SW_UNITS_METRIC;
  guint n = metric ? G_N_ELEMENTS (metric_m) : G_N_ELEMENTS (us_ft);
  guint i = 0;
  double length_m = 0;
  double x = box->x;
  double y = box->y + box->height - 6;

  for (; i < n; i++) {
    length_m = metric ? metric_m[i] : us_ft[i] * 0.3048;
    if (length_m * scale <= box->width / 3)
      break;
  }
  g_autofree char *label = sw_pen_number (pen, length_m, SW_QUANTITY_LENGTH);
  g_autoptr (PangoLayout) text =
    sw_pen_layout (pen, &(SwWriting){ .size = pen->style->text_normal }, label);

  for (int part = 0; part < 4; part++) {
    cairo_rectangle (pen->cr, x + part * length_m * scale / 4, y - 4, length_m * scale / 4, 4);
    if (part % 2 == 0) {
      sw_style_set_ink (pen->style, pen->cr, SW_INK_MAIN);
      cairo_fill_preserve (pen->cr);
    }
    sw_pen_line (pen, SW_INK_MAIN, pen->style->line_thin);
  }
  sw_pen_show (pen,
               SW_INK_MAIN,
               x + length_m * scale + 6,
               y - 2 - sw_layout_height (text) / 2,
               text);
}

static void
draw_view (const SwPen *pen, const ViewSheet *sheet, const SwBox *box)
{
  char label[16];
  SwView view = scaled_view (pen, sheet, box, label);
  SwPicture picture = { .view = &view,
                        .style = pen->style,
                        .language = pen->language,
                        .parts = SW_DRAW_ALL };

  cairo_save (pen->cr);
  cairo_rectangle (pen->cr, box->x, box->y, view.width, view.height);
  cairo_clip (pen->cr);
  cairo_translate (pen->cr, box->x, box->y);
  sheet->draw (pen->cr, &picture, pen->solution);
  cairo_restore (pen->cr);
}

/* The box without what stands at its foot: scale bar, then the figures. */
static SwBox
view_box (const SwBox *box, const Facts *facts)
{
  return (SwBox){ box->x, box->y, box->width, box->height - facts->height - BAR_ROOM };
}

static void
draw_sheet (const SwPen *pen, const ViewSheet *sheet, const SwBox *box)
{
  Facts facts;
  char label[16];
  SwBox above, bar;
  double y = box->y + box->height;

  facts_init (&facts, pen, sheet, box->width);
  above = view_box (box, &facts);
  bar = (SwBox){ box->x, box->y, box->width, box->height - facts.height - BAR_ROOM / 3 };
  draw_view (pen, sheet, &above);
  draw_scale_bar (pen, &bar, scaled_view (pen, sheet, &above, label).scale);
  sw_flow_draw (facts.left, pen, box->x, y - facts.height, 0);
  sw_flow_draw (facts.right, pen, box->x + (box->width + BESIDE) / 2, y - facts.height, 0);
  facts_clear (&facts);
}

static double
sheet_scale (const SwPen *pen, const ViewSheet *sheet, const SwBox *box, char label[16])
{
  Facts facts;
  SwBox above;

  facts_init (&facts, pen, sheet, box->width);
  above = view_box (box, &facts);
  facts_clear (&facts);
  return scaled_view (pen, sheet, &above, label).scale;
}

void
sw_side_sheet_draw (const SwPen *pen, const SwBox *box)
{
  draw_sheet (pen, &side_sheet, box);
}

double
sw_side_sheet_scale (const SwPen *pen, const SwBox *box, char label[16])
{
  return sheet_scale (pen, &side_sheet, box, label);
}

void
sw_top_sheet_draw (const SwPen *pen, const SwBox *box)
{
  draw_sheet (pen, &top_sheet, box);
}

double
sw_top_sheet_scale (const SwPen *pen, const SwBox *box, char label[16])
{
  return sheet_scale (pen, &top_sheet, box, label);
}
