// SPDX-License-Identifier: GPL-3.0-or-later
/* The plate is seen from above: to the right is the viewer's right, up on the sheet is away
 * from the viewer. */
#include "drawing/crown-template.h"

#include "drawing/check-bar.h"
#include "drawing/page-title.h"
#include "engine/units.h"

#include <glib/gi18n.h>
#include <math.h>

#define MARGIN_MM 12.0
#define HEAD_MM 24.0
#define OVERLAP_MM 10.0
#define NUMBER_MM 9.0    /* room for the strips' numbers round the holes */
#define HEADING_PT 170.0 /* "Crown plate, sheet 9 of 9" and its translations */
#define BARS_MM 10.0     /* kept for the upright check bars */

typedef struct {
  cairo_t *cr;
  const SwSolution *solution;
  const SwStyle *style;
  const SwLanguage *language;
} Plate;

static double
hole_circle_m (const SwDesign *design)
{
  return design->shape.crown_radius_m - design->crown.hook_reach_m;
}

static double
half_mm (const SwSolution *solution)
{
  double holes_mm = hole_circle_m (solution->design) * 1000,
         post_mm = solution->post_od_m * 500;

  return MAX (holes_mm, post_mm) + NUMBER_MM + 8;
}

static double
tile_width_mm (double width_pt)
{
  return width_pt / SW_PT_PER_MM - 2 * MARGIN_MM - BARS_MM;
}

static double
tile_height_mm (double height_pt)
{
  return height_pt / SW_PT_PER_MM - 2 * MARGIN_MM - HEAD_MM - SW_CHECK_BARS_HEIGHT_MM;
}

static int
tiles_for (double size_mm, double tile_mm)
{
  return MAX (1, (int) ceil ((size_mm - OVERLAP_MM) / (tile_mm - OVERLAP_MM) - 1e-9));
}

void
sw_crown_tiles_init (SwCrownTiles *tiles,
                     const SwSolution *solution,
                     double width_pt,
                     double height_pt)
{
  double size_mm = 2 * half_mm (solution);

  *tiles = (SwCrownTiles){ .columns = tiles_for (size_mm, tile_width_mm (width_pt)),
                           .rows = tiles_for (size_mm, tile_height_mm (height_pt)),
                           .tile_width_m = tile_width_mm (width_pt) / 1000,
                           .tile_height_m = tile_height_mm (height_pt) / 1000 };
  tiles->pages = tiles->columns * tiles->rows;
}

static void
text (const Plate *plate, double x, double y, double size, gboolean bold, const char *words)
{
  SwTextLook look = { .size = size, .align = SW_TEXT_CENTRE, .bold = bold };

  sw_text_draw (plate->cr, NULL, plate->style, &look, x, y, words);
}

/* A plate of 4 m has 480 sheets: each draws only what stands on it. */
static gboolean
on_sheet (const Plate *plate, double x, double y, double reach)
{
  double x0, y0, x1, y1;

  cairo_clip_extents (plate->cr, &x0, &y0, &x1, &y1);
  return x + reach >= x0 && x - reach <= x1 && y + reach >= y0 && y - reach <= y1;
}

static void
cross (const Plate *plate, double x, double y, double arm)
{
  if (!on_sheet (plate, x, y, arm))
    return;
  cairo_move_to (plate->cr, x - arm, y);
  cairo_line_to (plate->cr, x + arm, y);
  cairo_move_to (plate->cr, x, y - arm);
  cairo_line_to (plate->cr, x, y + arm);
}

static void
thin (const Plate *plate, SwInkId ink)
{
  sw_style_set_ink (plate->style, plate->cr, ink);
  cairo_set_line_width (plate->cr, plate->style->line_thin);
}

static void
draw_holes (const Plate *plate)
{
  const SwHook *hook =
    sw_catalogue_hook (plate->solution->catalogue, plate->solution->design->crown.hook);
  double radius = (hook == NULL ? 0.003 : hook->hole_m / 2) * SW_POINTS_PER_M;

  thin (plate, SW_INK_MAIN);
  for (guint i = 0; i < plate->solution->crown->len; i++) {
    const SwHole *hole = &g_array_index (plate->solution->crown, SwHole, i);
    double x = hole->x_m * SW_POINTS_PER_M, y = -hole->y_m * SW_POINTS_PER_M;

    if (!on_sheet (plate, x, y, radius * 1.6))
      continue;
    cairo_new_sub_path (plate->cr);
    cairo_arc (plate->cr, x, y, radius, 0, 2 * G_PI);
    cross (plate, x, y, radius * 1.6);
  }
  cairo_stroke (plate->cr);
}

/* Outside the holes; every nth where the holes stand close. */
static void
draw_numbers (const Plate *plate)
{
  guint n = plate->solution->crown->len;
  double circle_mm = hole_circle_m (plate->solution->design) * 1000;
  double apart_mm =
    2 * G_PI * (circle_mm + 6) / n * plate->solution->design->shape.coverage_deg / 360;
  guint step = MAX (1, (guint) ceil (5.0 / MAX (apart_mm, 0.01)));

  for (guint i = 0; i < n; i += step) {
    const SwHole *hole = &g_array_index (plate->solution->crown, SwHole, i);
    double out = (circle_mm + 6.5) / MAX (circle_mm, 0.01);
    double x = hole->x_m * out * SW_POINTS_PER_M, y = -hole->y_m * out * SW_POINTS_PER_M;
    g_autofree char *number = g_strdup_printf ("%u", i + 1);

    if (on_sheet (plate, x, y, 20))
      text (plate, x, y + 3, 8, i == 0, number);
  }
}

static void
draw_middle (const Plate *plate)
{
  const double dashes[] = { 4, 3 };

  thin (plate, SW_INK_SECOND);
  cross (plate, 0, 0, 10);
  cairo_new_sub_path (plate->cr);
  cairo_arc (plate->cr,
             0,
             0,
             hole_circle_m (plate->solution->design) * SW_POINTS_PER_M,
             0,
             2 * G_PI);
  cairo_stroke (plate->cr);
  cairo_save (plate->cr);
  cairo_set_dash (plate->cr, dashes, 2, 0);
  cairo_arc (plate->cr, 0, 0, plate->solution->post_od_m / 2 * SW_POINTS_PER_M, 0, 2 * G_PI);
  cairo_stroke (plate->cr);
  cairo_restore (plate->cr);
}

/* Words on the plate itself, so that it is not drilled mirrored. */
static void
draw_words (const Plate *plate)
{
  const SwShape *shape = &plate->solution->design->shape;
  double inside = hole_circle_m (plate->solution->design) * SW_POINTS_PER_M;
  SwPoint first = sw_point_on_circle (sw_cone_azimuth_deg (shape, 1), 1, 0);

  sw_style_set_ink (plate->style, plate->cr, SW_INK_MAIN);
  if (inside > 60) {
    text (plate,
          0,
          -inside * 0.45,
          10,
          TRUE,
          sw_language_text (plate->language, N_ ("top side up")));
    text (plate, 0, inside * 0.45, 8, FALSE, sw_language_text (plate->language, N_ ("post")));
  }
  if (shape->coverage_deg >= 360 && inside > 60)
    text (plate,
          first.x_m * inside * 0.78,
          -first.y_m * inside * 0.78 + 3,
          8,
          TRUE,
          sw_language_text (plate->language, N_ ("seam here")));
}

void
sw_crown_template_draw (cairo_t *cr,
                        const SwSolution *solution,
                        const SwStyle *style,
                        const SwLanguage *language)
{
  Plate plate = { cr, solution, style, language };

  draw_middle (&plate);
  draw_holes (&plate);
  draw_words (&plate);
  draw_numbers (&plate);
}

static void
draw_head (const Plate *plate, const SwCrownTiles *tiles, double width_pt, int page)
{
  double x = MARGIN_MM * SW_PT_PER_MM, y = x;
  SwTextLook bold = { .size = 12, .bold = TRUE }, plain = { .size = 8.4 };
  const SwHook *hook =
    sw_catalogue_hook (plate->solution->catalogue, plate->solution->design->crown.hook);
  g_autofree char *title =
    g_strdup_printf (sw_language_text (plate->language, N_ ("Crown plate, sheet %d of %d")),
                     page + 1,
                     tiles->pages);
  g_autofree char *hole =
    hook == NULL
      ? g_strdup (sw_language_text (plate->language, N_ ("hole: drill for your hook")))
      : sw_units_format (hook->hole_m, SW_QUANTITY_SHORT_LENGTH, SW_UNITS_US, plate->language);
  g_autofree char *metric = sw_units_format (hook == NULL ? 0 : hook->hole_m,
                                             SW_QUANTITY_SHORT_LENGTH,
                                             SW_UNITS_METRIC,
                                             plate->language);
  g_autofree char *holes =
    hook == NULL
      ? g_strdup (hole)
      /* Translators: number of holes, diameter in inches and millimetres. */
      : g_strdup_printf (
          sw_language_text (
            plate->language,
            N_ ("%u holes ⌀ %s (%s). Seen from above, top side up: do not drill it mirrored.")),
          plate->solution->crown->len,
          hole,
          metric);

  sw_style_set_ink (plate->style, plate->cr, SW_INK_MAIN);
  sw_text_draw (plate->cr, NULL, plate->style, &bold, x, y + 11, title);
  sw_page_title_draw (plate->cr,
                      plate->style,
                      &(SwHeadLine){ x, width_pt - x, y + 11, HEADING_PT },
                      plate->solution->design->title);
  sw_text_draw (plate->cr, NULL, plate->style, &plain, x, y + 26, holes);
  sw_text_draw (plate->cr,
                NULL,
                plate->style,
                &plain,
                x,
                y + 38,
                sw_language_text (
                  plate->language,
                  N_ ("Print at 100 %. The lower edge of the sheet is the viewer's side.")));
  if (tiles->pages > 1)
    sw_text_draw (
      plate->cr,
      NULL,
      plate->style,
      &plain,
      x,
      y + 50,
      sw_language_text (plate->language,
                        N_ ("Join the sheets so that the crosses lie on one another.")));
}

/* Crosses where neighbouring sheets overlap, at the same places on both. */
static void
draw_register (const Plate *plate, const SwCrownTiles *tiles)
{
  double step_x = (tiles->tile_width_m * 1000 - OVERLAP_MM) * SW_PT_PER_MM,
         step_y = (tiles->tile_height_m * 1000 - OVERLAP_MM) * SW_PT_PER_MM;
  double half = OVERLAP_MM / 2 * SW_PT_PER_MM;

  thin (plate, SW_INK_SECOND);
  for (int column = 1; column < tiles->columns; column++) {
    for (int row = 0; row <= 2 * tiles->rows; row++)
      cross (plate, column * step_x + half, row * step_y / 2 + 2 * half, 5);
  }
  for (int row = 1; row < tiles->rows; row++) {
    for (int column = 0; column <= 2 * tiles->columns; column++)
      cross (plate, column * step_x / 2 + 2 * half, row * step_y + half, 5);
  }
  cairo_stroke (plate->cr);
}

void
sw_crown_template_draw_page (cairo_t *cr,
                             const SwCrownTiles *tiles,
                             const SwSolution *solution,
                             const SwStyle *style,
                             const SwLanguage *language,
                             double width_pt,
                             double height_pt,
                             int page)
{
  Plate plate = { cr, solution, style, language };
  double tile_w = tiles->tile_width_m * SW_POINTS_PER_M,
         tile_h = tiles->tile_height_m * SW_POINTS_PER_M;
  double overlap = OVERLAP_MM * SW_PT_PER_MM, left = MARGIN_MM * SW_PT_PER_MM,
         top = (MARGIN_MM + HEAD_MM) * SW_PT_PER_MM;
  int column = page % tiles->columns, row = page / tiles->columns;
  double all_w = tiles->columns * (tile_w - overlap) + overlap,
         all_h = tiles->rows * (tile_h - overlap) + overlap;

  cairo_save (cr);
  draw_head (&plate, tiles, width_pt, page);
  sw_check_bars_draw (cr, style, language, width_pt, height_pt, left);
  cairo_rectangle (cr, left, top, tile_w, tile_h);
  cairo_clip (cr);
  cairo_translate (cr, left - column * (tile_w - overlap), top - row * (tile_h - overlap));
  if (tiles->pages > 1)
    draw_register (&plate, tiles);
  cairo_translate (cr, all_w / 2, all_h / 2);
  sw_crown_template_draw (cr, solution, style, language);
  cairo_restore (cr);
}
