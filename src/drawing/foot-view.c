// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/foot-view.h"

#include "drawing/dimension.h"

#include <math.h>

#define BETWEEN 6.0 /* thicknesses between the two boards, for dimensions */
#define ASIDE 18.0  /* right of a short dimension, past its outer arrow */
#define BELOW 16.0  /* device units a dimension stands off its board */

static const SwBoard *
board_of (const SwSolution *solution)
{
  return solution->heights.board;
}

double
sw_half_lap_height_m (const SwSolution *solution)
{
  return board_of (solution) == NULL ? 0 : (2 + BETWEEN) * board_of (solution)->thickness_m;
}

/* The outline of a board from the side, its cut above or below. */
static void
lapped_board (cairo_t *cr,
              const SwPicture *picture,
              const SwSolution *solution,
              double low_m,
              gboolean cut_above)
{
  const SwFootBuild *foot = &solution->foot;
  double from_m = foot->lap_start_m, to_m = from_m + foot->lap_width_m;
  double length_m = 2 * solution->design->stand.arm_m;
  double high_m = low_m + board_of (solution)->thickness_m,
         middle_m = low_m + foot->lap_depth_m;
  double flat_m = cut_above ? low_m : high_m, cut_m = cut_above ? high_m : low_m;
  const SwPoint corners[] = { { 0, 0, flat_m },       { length_m, 0, flat_m },
                              { length_m, 0, cut_m }, { to_m, 0, cut_m },
                              { to_m, 0, middle_m },  { from_m, 0, middle_m },
                              { from_m, 0, cut_m },   { 0, 0, cut_m } };

  cairo_new_path (cr);
  for (guint i = 0; i < G_N_ELEMENTS (corners); i++)
    cairo_line_to (cr,
                   sw_view_x (picture->view, corners[i].x_m),
                   sw_view_y (picture->view, corners[i].z_m));
  cairo_close_path (cr);
  sw_style_set_ink_alpha (picture->style, cr, SW_INK_SECOND, 0.15);
  cairo_fill_preserve (cr);
  sw_style_set_ink (picture->style, cr, SW_INK_MAIN);
  cairo_set_line_width (cr, picture->style->line_middle);
  cairo_stroke (cr);
}

void
sw_half_lap_draw (cairo_t *cr,
                  const SwPicture *picture,
                  const SwSolution *solution,
                  const SwLapTexts *texts)
{
  const SwView *view = picture->view;
  const SwFootBuild *foot = &solution->foot;
  SwTextLook look = sw_dimension_look (picture->style);
  double upper_m, from_x, to_x, end_x, bottom_y;

  if (board_of (solution) == NULL)
    return;
  upper_m = (1 + BETWEEN) * board_of (solution)->thickness_m;
  lapped_board (cr, picture, solution, upper_m, TRUE);
  lapped_board (cr, picture, solution, 0, FALSE);
  from_x = sw_view_x (view, foot->lap_start_m);
  to_x = sw_view_x (view, foot->lap_start_m + foot->lap_width_m);
  bottom_y = sw_view_y (view, upper_m);
  sw_dimension_width (cr,
                      picture,
                      sw_view_x (view, 0),
                      from_x,
                      bottom_y + BELOW,
                      bottom_y,
                      texts->start);
  sw_dimension_width (cr, picture, from_x, to_x, bottom_y + BELOW, bottom_y, "");
  look.align = SW_TEXT_LEFT;
  sw_text_draw (cr,
                picture->texts,
                picture->style,
                &look,
                to_x + ASIDE,
                bottom_y + BELOW + picture->style->text_small * 0.35,
                texts->width);
  end_x = sw_view_x (view, 2 * solution->design->stand.arm_m);
  sw_dimension_height (cr,
                       picture,
                       &(SwHeightDimension){
                         .x = end_x + BELOW,
                         .y_low = sw_view_y (view, 0),
                         .y_high = sw_view_y (view, foot->lap_depth_m),
                         .from_low = end_x,
                         .from_high = to_x,
                         .text = texts->depth,
                       });
}

double
sw_foot_plan_half_m (const SwSolution *solution)
{
  const SwFootBuild *foot = &solution->foot;
  double slabs_m = foot->slabs > 0 ? foot->slab_off_m + SW_SLAB_M / 2 : 0;

  return MAX (solution->design->stand.arm_m, slabs_m);
}

static void
box (cairo_t *cr, const SwView *view, double x_m, double up_m, double wide_m, double tall_m)
{
  cairo_rectangle (cr,
                   sw_view_x (view, x_m - wide_m / 2),
                   sw_view_y (view, up_m + tall_m / 2),
                   wide_m * view->scale,
                   tall_m * view->scale);
}

static void
circle (cairo_t *cr, const SwView *view, double x_m, double up_m, double across_m)
{
  cairo_new_sub_path (cr);
  cairo_arc (cr,
             sw_view_x (view, x_m),
             sw_view_y (view, up_m),
             across_m / 2 * view->scale,
             0,
             2 * G_PI);
}

static void
stroke (cairo_t *cr, const SwPicture *picture, SwInkId ink, double width)
{
  sw_style_set_ink (picture->style, cr, ink);
  cairo_set_line_width (cr, width);
  cairo_stroke (cr);
}

static void
draw_slabs (cairo_t *cr, const SwPicture *picture, const SwFootBuild *foot)
{
  const double dashes[] = { 4, 3 };

  if (!(foot->slabs > 0))
    return;
  for (int arm = 0; arm < 4; arm++) {
    double x_m = foot->slab_off_m * (arm == 0 ? 1 : arm == 2 ? -1 : 0);
    double up_m = foot->slab_off_m * (arm == 1 ? 1 : arm == 3 ? -1 : 0);
    box (cr, picture->view, x_m, up_m, SW_SLAB_M, SW_SLAB_M);
  }
  cairo_save (cr);
  cairo_set_dash (cr, dashes, 2, 0);
  stroke (cr, picture, SW_INK_SECOND, picture->style->line_thin);
  cairo_restore (cr);
}

static void
draw_flange (cairo_t *cr, const SwPicture *picture, const SwSolution *solution)
{
  const SwFitting *flange = solution->fittings.sleeve_foot.flange;
  double off_m = solution->foot.bolt_off_m;

  if (flange == NULL)
    return;
  circle (cr, picture->view, 0, 0, flange->outside_m);
  circle (cr, picture->view, 0, 0, solution->fittings.sleeve->od_m);
  stroke (cr, picture, SW_INK_MAIN, picture->style->line_thin);
  for (int bolt = 0; bolt < 4; bolt++)
    circle (cr,
            picture->view,
            bolt % 2 == 0 ? off_m : -off_m,
            bolt < 2 ? off_m : -off_m,
            flange->bolt_m);
  sw_style_set_ink (picture->style, cr, SW_INK_MAIN);
  cairo_fill (cr);
}

void
sw_foot_plan_draw (cairo_t *cr, const SwPicture *picture, const SwSolution *solution)
{
  const SwBoard *board = board_of (solution);
  double length_m = 2 * solution->design->stand.arm_m;

  if (board == NULL)
    return;
  box (cr, picture->view, 0, 0, length_m, board->width_m);
  box (cr, picture->view, 0, 0, board->width_m, length_m);
  stroke (cr, picture, SW_INK_MAIN, picture->style->line_middle);
  draw_slabs (cr, picture, &solution->foot);
  draw_flange (cr, picture, solution);
}
