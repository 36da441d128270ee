// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/fit-section.h"

#include <math.h>

#define POST_SHOWN_M 0.09  /* below its fittings */
#define SHANK_UP_M 0.012   /* a hook's thread above the plate */
#define SHANK_DOWN_M 0.045 /* and below it, drawn only */
#define PLATE_EDGE_M 0.02  /* outside the holes, as the crown plate's template has it */
#define SHELL_M 0.004      /* drawn wall of fittings; their makers do not print it */
#define ABOVE_SLEEVE_M 0.08
#define LABEL_STEP 12.0 /* device units from number to number */

typedef struct {
  cairo_t *cr;
  const SwPicture *picture;
  const SwSolution *solution;
  double label_x;
  double label_y; /* of the last number */
} Section;

/* Both cut sides of something round, hatched by a grey fill. */
static void
ring (const Section *section, double inner_m, double outer_m, double low_m, double high_m)
{
  const SwView *view = section->picture->view;
  double wide = (outer_m - inner_m) * view->scale, tall = (high_m - low_m) * view->scale;

  for (int side = -1; side <= 1; side += 2) {
    double x_m = side < 0 ? -outer_m : inner_m;
    cairo_rectangle (section->cr, sw_view_x (view, x_m), sw_view_y (view, high_m), wide, tall);
  }
  sw_style_set_ink_alpha (section->picture->style, section->cr, SW_INK_SECOND, 0.25);
  cairo_fill_preserve (section->cr);
  sw_style_set_ink (section->picture->style, section->cr, SW_INK_MAIN);
  cairo_set_line_width (section->cr, section->picture->style->line_thin);
  cairo_stroke (section->cr);
}

static void
tube (const Section *section, const SwPipe *pipe, double low_m, double high_m)
{
  ring (section, pipe->id_m / 2, pipe->od_m / 2, low_m, high_m);
}

/* All the numbers of pairs at one place: "7, 8". */
static char *
numbers_at (const SwSolution *solution, SwPairPlace place)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < solution->fits.n; i++) {
    if (solution->fits.pairs[i].place == place)
      g_string_append_printf (text, "%s%u", text->len > 0 ? ", " : "", i + 1);
  }
  return g_string_free (text, FALSE);
}

/* Places come from the top down, so that leaders do not cross. */
static void
label (Section *section, SwPairPlace place, double x_m, double up_m)
{
  const SwView *view = section->picture->view;
  const SwStyle *style = section->picture->style;
  SwTextLook look = { .size = style->text_small, .bold = TRUE };
  g_autofree char *numbers = numbers_at (section->solution, place);
  double y = MAX (sw_view_y (view, up_m), section->label_y + LABEL_STEP);

  if (*numbers == '\0')
    return;
  section->label_y = y;
  sw_style_set_ink (style, section->cr, SW_INK_DIMENSION);
  cairo_set_line_width (section->cr, style->line_thin);
  cairo_move_to (section->cr, sw_view_x (view, x_m), sw_view_y (view, up_m));
  cairo_line_to (section->cr, section->label_x - 4, y);
  cairo_stroke (section->cr);
  cairo_arc (section->cr, sw_view_x (view, x_m), sw_view_y (view, up_m), 1.2, 0, 2 * G_PI);
  cairo_fill (section->cr);
  sw_style_set_ink (style, section->cr, SW_INK_MAIN);
  sw_text_draw (section->cr,
                section->picture->texts,
                style,
                &look,
                section->label_x,
                y + style->text_small * 0.35,
                numbers);
}

static double
hole_circle_m (const SwDesign *design)
{
  return design->shape.crown_radius_m - design->crown.hook_reach_m;
}

static double
plate_m (const SwSolution *solution)
{
  return solution->heights.plate_m;
}

/* Disc and hub; `up` is 1 on the plate, −1 under it. */
static void
draw_flange (const Section *section, const SwFitting *flange, double face_m, int up)
{
  double disc_m = flange->height_m * 0.35, hub_m = flange->inside_m / 2 + 1.5 * SHELL_M;
  double far_m = face_m + up * flange->height_m, rim_m = face_m + up * disc_m;

  ring (section,
        flange->inside_m / 2,
        flange->outside_m / 2,
        MIN (face_m, rim_m),
        MAX (face_m, rim_m));
  ring (section, flange->inside_m / 2, hub_m, MIN (rim_m, far_m), MAX (rim_m, far_m));
}

static void
draw_shell (const Section *section, const SwFitting *fitting, double low_m, double high_m)
{
  ring (section, fitting->inside_m / 2, fitting->inside_m / 2 + SHELL_M, low_m, high_m);
}

static void
draw_bushing (const Section *section, const SwFitting *bushing, double low_m)
{
  double outer_m = MAX (bushing->outside_m, bushing->inside_m + 2 * SHELL_M) / 2;

  ring (section, bushing->inside_m / 2, outer_m, low_m, low_m + bushing->height_m);
}

static void
draw_post (const Section *section)
{
  const SwFittings *fittings = &section->solution->fittings;
  const SwPipeEnd *end = &fittings->post_top;
  double end_m = -sw_pipe_end_m (end);

  if (fittings->post == NULL)
    return;
  if (end->flange != NULL)
    draw_flange (section, end->flange, 0, -1);
  if (end->connector != NULL)
    draw_shell (section,
                end->connector,
                -end->flange->height_m - end->connector->height_m,
                -end->flange->height_m);
  tube (section, fittings->post, sw_crown_section_size (section->solution).lowest_m, end_m);
}

static void
draw_plate (const Section *section)
{
  const SwSolution *solution = section->solution;
  const SwHook *hook = solution->fittings.hook;
  double circle_m = hole_circle_m (solution->design), hole_m = hook == NULL ? 0 : hook->hole_m;

  ring (section, 0, circle_m - hole_m / 2, 0, plate_m (solution));
  ring (section, circle_m + hole_m / 2, circle_m + PLATE_EDGE_M, 0, plate_m (solution));
  if (hook != NULL)
    ring (section,
          circle_m - hook->diameter_m / 2,
          circle_m + hook->diameter_m / 2,
          -SHANK_DOWN_M,
          plate_m (solution) + SHANK_UP_M);
}

static void
draw_bolts (const Section *section)
{
  const SwFitting *flange = section->solution->fittings.post_top.flange;
  double off_m, reach_m;

  if (flange == NULL)
    return;
  off_m = flange->circle_m / 2;
  reach_m = flange->height_m * 0.35 + flange->bolt_m;
  ring (section,
        off_m - flange->bolt_m / 2,
        off_m + flange->bolt_m / 2,
        -reach_m,
        plate_m (section->solution) + reach_m);
}

static void
draw_stub (const Section *section)
{
  const SwFittings *fittings = &section->solution->fittings;
  double up_m = plate_m (section->solution);

  if (!fittings->stub_held)
    return;
  draw_flange (section, fittings->top_flange, up_m, 1);
  up_m += fittings->top_flange->height_m;
  for (guint i = 0; i < fittings->n_reducers; i++) {
    draw_bushing (section, fittings->reducers[i], up_m);
    up_m += fittings->reducers[i]->height_m;
  }
  if (fittings->stub_connector != NULL)
    draw_shell (section,
                fittings->stub_connector,
                up_m,
                up_m + fittings->stub_connector->height_m);
  tube (section,
        fittings->stub,
        plate_m (section->solution) + sw_fittings_stub_end_m (fittings),
        sw_crown_section_size (section->solution).top_m);
}

SwSectionSize
sw_crown_section_size (const SwSolution *solution)
{
  const SwFittings *fittings = &solution->fittings;
  const SwPipeEnd *end = &fittings->post_top;
  double below_m = (end->flange == NULL ? 0 : end->flange->height_m) +
                   (end->connector == NULL ? 0 : end->connector->height_m) + POST_SHOWN_M;
  double flange_m = end->flange == NULL ? 0 : end->flange->outside_m / 2;

  return (SwSectionSize){
    .half_m = MAX (hole_circle_m (solution->design) + PLATE_EDGE_M, flange_m),
    .lowest_m = -below_m,
    .top_m = plate_m (solution) + sw_fittings_stack_m (fittings) + POST_SHOWN_M / 2
  };
}

void
sw_crown_section_draw (cairo_t *cr,
                       const SwPicture *picture,
                       const SwSolution *solution,
                       double label_x)
{
  const SwFittings *fittings = &solution->fittings;
  const SwFitting *flange = fittings->post_top.flange;
  SwSectionSize size = sw_crown_section_size (solution);
  Section section = { cr, picture, solution, label_x, -LABEL_STEP };
  double stub_m = fittings->stub == NULL ? 0 : fittings->stub->od_m / 2;
  double post_m = fittings->post == NULL ? 0 : fittings->post->od_m / 2;
  double circle_m = hole_circle_m (solution->design);

  draw_plate (&section);
  draw_post (&section);
  draw_stub (&section);
  draw_bolts (&section);
  label (&section, SW_AT_BRACKET, stub_m, size.top_m - 0.006);
  label (&section,
         SW_AT_STUB,
         stub_m,
         plate_m (solution) + sw_fittings_stub_end_m (fittings) + 0.006);
  label (&section, SW_AT_HOOK, circle_m, plate_m (solution) / 2);
  if (flange != NULL) {
    label (&section, SW_AT_FLANGE_BOLTS, flange->circle_m / 2, 0);
    label (&section, SW_AT_BETWEEN_HOOKS, flange->outside_m / 2, -flange->height_m * 0.17);
  }
  label (&section, SW_AT_GROMMET, circle_m, -SHANK_DOWN_M * 0.9);
  label (&section, SW_AT_POST_TOP, post_m, -sw_pipe_end_m (&fittings->post_top) - 0.004);
}

SwSectionSize
sw_sleeve_section_size (const SwSolution *solution)
{
  const SwFitting *flange = solution->fittings.sleeve_foot.flange;
  double sleeve_m = solution->fittings.sleeve == NULL ? 0 : solution->fittings.sleeve->od_m;
  double flange_m = flange == NULL ? 0 : flange->outside_m;
  gboolean ground = solution->design->stand.foot == SW_FOOT_SOCKET;
  double deeper_m = ground ? solution->design->stand.socket_depth_m + solution->heights.foot_m
                           : solution->heights.foot_m;

  return (SwSectionSize){ .half_m = ground ? solution->design->stand.socket_diameter_m / 2
                                           : MAX (flange_m, sleeve_m) / 2 + 0.01,
                          .lowest_m = -MAX (0, deeper_m),
                          .top_m = solution->design->stand.sleeve_depth_m + ABOVE_SLEEVE_M };
}

/* Concrete in the ground, or boards; what the post stands on is at 0. */
static void
draw_seat (const Section *section, const SwSectionSize *size)
{
  const SwSolution *solution = section->solution;
  const SwPipe *sleeve = solution->fittings.sleeve;
  double sleeve_m = sleeve == NULL ? 0 : sleeve->od_m / 2;

  if (solution->design->stand.foot == SW_FOOT_SOCKET)
    ring (section, sleeve_m, size->half_m, size->lowest_m, -solution->heights.foot_m);
  else
    ring (section, 0, size->half_m, size->lowest_m, 0);
}

void
sw_sleeve_section_draw (cairo_t *cr,
                        const SwPicture *picture,
                        const SwSolution *solution,
                        double label_x)
{
  const SwFittings *fittings = &solution->fittings;
  const SwPipeEnd *foot = &fittings->sleeve_foot;
  SwSectionSize size = sw_sleeve_section_size (solution);
  Section section = { cr, picture, solution, label_x, -LABEL_STEP };
  double depth_m = solution->design->stand.sleeve_depth_m;
  gboolean ground = solution->design->stand.foot == SW_FOOT_SOCKET;
  double sleeve_foot_m = ground ? size.lowest_m : sw_pipe_end_m (foot);

  draw_seat (&section, &size);
  if (foot->flange != NULL)
    draw_flange (&section, foot->flange, 0, 1);
  if (foot->connector != NULL)
    draw_shell (&section,
                foot->connector,
                foot->flange->height_m,
                foot->flange->height_m + foot->connector->height_m);
  if (fittings->sleeve != NULL)
    tube (&section, fittings->sleeve, sleeve_foot_m, depth_m);
  if (fittings->post != NULL)
    tube (&section, fittings->post, 0, size.top_m);
  if (fittings->sleeve == NULL)
    return;
  label (&section, SW_AT_SLEEVE, fittings->sleeve->id_m / 2, depth_m - 0.004);
  label (&section, SW_AT_SLEEVE_FOOT, fittings->sleeve->od_m / 2, sleeve_foot_m + 0.004);
}
