// SPDX-License-Identifier: GPL-3.0-or-later
/* Light is summed in linear RGB as floats, one small kernel a pixel, and brought to the screen
 * once: 1 − e^(−kL) on each channel, then the sRGB curve of IEC 61966-2-1 through a table. By
 * day the tree is the side view on grey.
 */
#include "drawing/night-view.h"

#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

const char *const sw_scenes[] = { "warm-white", "rising-bands", "slow-turn",  "hoarfrost",
                                  "embers",     "colour-tide",  "star-first", NULL };
const char *const sw_scene_labels[] = { N_ ("Warm white"), N_ ("Rising bands"),
                                        N_ ("Slow turn"),  N_ ("Hoarfrost"),
                                        N_ ("Embers"),     N_ ("Colour tide"),
                                        N_ ("Star first"), NULL };

typedef struct {
  float red, green, blue;
} Light;

/* Where a light stands on the tree: up 0 … 1 from ring to top, round 0 … 1 from the seam, and
 * which one it is. */
typedef struct {
  double up, round;
  guint32 number;
  gboolean star;
} Spot;

/* Planckian white of 2700 K as sRGB 255, 174, 89, in linear light (CIE 1931, cubic fit). */
static const Light warm = { 1.000f, 0.423f, 0.100f };
static const Light frost = { 0.55f, 0.75f, 1.0f };

static Light
scaled (Light light, double by)
{
  return (
    Light){ (float) (light.red * by), (float) (light.green * by), (float) (light.blue * by) };
}

static Light
mixed (Light a, Light b, double share)
{
  return (Light){ (float) (a.red + (b.red - a.red) * share),
                  (float) (a.green + (b.green - a.green) * share),
                  (float) (a.blue + (b.blue - a.blue) * share) };
}

/* A number from 0 to 1 that belongs to a light and a step: the same on every machine. */
static double
chance (guint32 number, guint32 step)
{
  guint32 h = number * 2654435761u ^ step * 2246822519u;

  h ^= h >> 15;
  h *= 2246822519u;
  h ^= h >> 13;
  return (h & 0xffffff) / 16777216.0;
}

static double
wave (double turns)
{
  return 0.5 - 0.5 * cos (2 * G_PI * turns);
}

/* Red through amber and green to blue and back, bright enough throughout. */
static Light
tide (double turns)
{
  return (Light){ (float) (0.08 + 0.92 * pow (wave (turns + 0.5), 2)),
                  (float) (0.05 + 0.6 * pow (wave (turns + 0.17), 2)),
                  (float) (0.05 + 0.85 * pow (wave (turns - 0.17), 2)) };
}

static Light
warm_white (const Spot *spot, double time_s)
{
  return scaled (warm, 0.92 + 0.08 * wave (time_s / 7 + chance (spot->number, 1)));
}

static Light
rising_bands (const Spot *spot, double time_s)
{
  return scaled (mixed (warm, (Light){ 0.9f, 0.05f, 0.03f }, wave (spot->up * 1.5)),
                 0.06 + 0.94 * pow (wave (spot->up * 2.5 - time_s / 4), 3));
}

static Light
slow_turn (const Spot *spot, double time_s)
{
  return mixed (scaled (warm, 0.9),
                (Light){ 0.03f, 0.35f, 0.12f },
                pow (wave (spot->round * 3 - time_s / 9), 2));
}

static Light
hoarfrost (const Spot *spot, double time_s)
{
  guint32 step = (guint32) (time_s * 1.5 + chance (spot->number, 3) * 9);
  double glint =
    chance (spot->number, step) > 0.94 ? wave (time_s * 1.5 + chance (spot->number, 3) * 9) : 0;

  return scaled (mixed (frost, (Light){ 1, 1, 1 }, glint), 0.28 + 0.9 * glint);
}

static Light
embers (const Spot *spot, double time_s)
{
  double glow = wave (time_s / (3 + 4 * chance (spot->number, 5)) + chance (spot->number, 6));

  return scaled ((Light){ 1.0f, 0.22f, 0.03f },
                 (0.15 + 0.85 * glow * glow) * (1.15 - 0.75 * spot->up));
}

static Light
colour_tide (const Spot *spot, double time_s)
{
  return tide (spot->up * 0.7 + spot->round * 0.5 - time_s / 12);
}

static Light
star_first (const Spot *spot, double time_s)
{
  double front = fmod (time_s / 6, 1.4); /* comes down from the star */
  double lit = CLAMP ((front - (1 - spot->up)) * 8, 0, 1);

  return scaled (warm, spot->star ? 1 : 0.05 + 0.95 * lit);
}

static Light (*const scenes[]) (const Spot *spot, double time_s) = {
  warm_white, rising_bands, slow_turn, hoarfrost, embers, colour_tide, star_first
};

typedef struct {
  int width, height, pad, stride; /* of the sums, padded so that no kernel is cut */
  Light *sums;
  int radius;
  float *kernel;
} Canvas;

/* A bright core and a skirt that falls with the square of the angle, as the eye's own scatter
 * does (CIE 146:2002). */
static void
canvas_init (Canvas *canvas, int width, int height, double core)
{
  canvas->radius = CLAMP ((int) ceil (core * 7), 3, 24);
  canvas->pad = canvas->radius + 1;
  canvas->width = width;
  canvas->height = height;
  canvas->stride = width + 2 * canvas->pad;
  canvas->sums = g_new0 (Light, (gsize) canvas->stride * (height + 2 * canvas->pad));
  int side = 2 * canvas->radius + 1;
  canvas->kernel = g_new (float, (gsize) side *side);
  for (int y = 0; y < side; y++) {
    for (int x = 0; x < side; x++) {
      double away = hypot (x - canvas->radius, y - canvas->radius) / core;
      double edge = CLAMP (1 - away * core / (canvas->radius + 0.5), 0, 1);
      canvas->kernel[y * side + x] =
        (float) (exp (-away * away) + 0.05 * edge / (1 + away * away));
    }
  }
}

static void
canvas_clear (Canvas *canvas)
{
  g_free (canvas->sums);
  g_free (canvas->kernel);
}

static void
splat (Canvas *canvas, double x, double y, Light light)
{
  int side = 2 * canvas->radius + 1;
  int left = (int) floor (x + 0.5) - canvas->radius + canvas->pad,
      top = (int) floor (y + 0.5) - canvas->radius + canvas->pad;

  if (left < 0 || top < 0 || left + side > canvas->stride ||
      top + side > canvas->height + 2 * canvas->pad)
    return;
  for (int row = 0; row < side; row++) {
    Light *sum = &canvas->sums[(gsize) (top + row) * canvas->stride + left];
    const float *share = &canvas->kernel[row * side];
    for (int i = 0; i < side; i++) {
      sum[i].red += light.red * share[i];
      sum[i].green += light.green * share[i];
      sum[i].blue += light.blue * share[i];
    }
  }
}

#define CODES                                                                                    \
  4096 /* of the tone table: linear light 0 … 8, by its square root: the eye sees steps in the \
          dark */
#define LIGHT_MOST 8.0f

static void
tone_table (guint8 table[CODES])
{
  for (int i = 0; i < CODES; i++) {
    double shown = 1 - exp (-1.6 * LIGHT_MOST * pow ((double) i / CODES, 2));
    double code = shown <= 0.0031308 ? 12.92 * shown : 1.055 * pow (shown, 1 / 2.4) - 0.055;
    table[i] = (guint8) lround (255 * CLAMP (code, 0, 1));
  }
}

static guint32
toned (const guint8 *table, float light)
{
  int i = (int) (sqrtf (light / LIGHT_MOST) * CODES + 0.5f);

  return table[MIN (i, CODES - 1)];
}

static double
linear_of (int code)
{
  double v = code / 255.0;

  return v <= 0.04045 ? v / 12.92 : pow ((v + 0.055) / 1.055, 2.4);
}

/* Dusk: what is painted into the image (sky, ground, unlit parts) is read back as light under
 * the lamps. */
static void
develop (const Canvas *canvas, cairo_surface_t *image)
{
  guint8 table[CODES];
  float linear[256];
  int stride = cairo_image_surface_get_stride (image);

  tone_table (table);
  for (int i = 0; i < 256;
       i++) /* through the inverse tone, so that an unlit place comes back as it was */
    linear[i] = (float) (-log (1 - MIN (linear_of (i), 0.999)) / 1.6);
  cairo_surface_flush (image);
  guchar *data = cairo_image_surface_get_data (image);
  for (int y = 0; y < canvas->height; y++) {
    guint32 *row = (guint32 *) (gpointer) (data + (gsize) y * stride);
    const Light *sum = &canvas->sums[(gsize) (y + canvas->pad) * canvas->stride + canvas->pad];
    for (int x = 0; x < canvas->width; x++) {
      guint32 under = row[x];
      if (!(sum[x].red + sum[x].green + sum[x].blue > 1e-5f))
        continue;
      row[x] = 0xff000000u | toned (table, sum[x].red + linear[under >> 16 & 255]) << 16 |
               toned (table, sum[x].green + linear[under >> 8 & 255]) << 8 |
               toned (table, sum[x].blue + linear[under & 255]);
    }
  }
  cairo_surface_mark_dirty (image);
}

static void
paint_sky (cairo_t *cr, const SwView *view, gboolean day)
{
  cairo_pattern_t *sky = cairo_pattern_create_linear (0, 0, 0, view->y0);

  if (day) {
    cairo_pattern_add_color_stop_rgb (sky, 0, 0.72, 0.75, 0.78);
    cairo_pattern_add_color_stop_rgb (sky, 1, 0.84, 0.85, 0.86);
  } else {
    cairo_pattern_add_color_stop_rgb (sky, 0, 0.020, 0.027, 0.055);
    cairo_pattern_add_color_stop_rgb (sky, 1, 0.075, 0.095, 0.150);
  }
  cairo_set_source (cr, sky);
  cairo_paint (cr);
  cairo_pattern_destroy (sky);
  if (day)
    cairo_set_source_rgb (cr, 0.55, 0.60, 0.52);
  else
    cairo_set_source_rgb (cr, 0.030, 0.042, 0.046);
  cairo_rectangle (cr, 0, view->y0, view->width, view->height - view->y0);
  cairo_fill (cr);
}

/* Post, ring and star as they show at dusk. */
static void
paint_unlit (cairo_t *cr, const SwView *view, const SwSolution *solution, gboolean day)
{
  const SwShape *shape = &solution->design->shape;
  double grey = day ? 0.35 : 0.13;

  cairo_set_source_rgb (cr, grey, grey, grey * 1.1);
  cairo_set_line_width (cr, MAX (solution->post_od_m * view->scale, 1.2));
  cairo_move_to (cr, view->x0, view->y0);
  cairo_line_to (cr, view->x0, sw_view_y (view, shape->crown_height_m));
  cairo_stroke (cr);
  cairo_set_line_width (cr, MAX (solution->ring_od_m * view->scale, 1.2));
  cairo_move_to (cr,
                 sw_view_x (view, -shape->ring_radius_m),
                 sw_view_y (view, shape->ring_height_m));
  cairo_line_to (cr,
                 sw_view_x (view, shape->ring_radius_m),
                 sw_view_y (view, shape->ring_height_m));
  cairo_stroke (cr);
  cairo_set_line_width (cr, day ? 1.2 : 0.7);
  for (int strip = 1; strip <= shape->strip_count; strip++) {
    SwPoint hook = sw_hook_point (shape, strip), tie = sw_tie_point (shape, strip);
    cairo_move_to (cr, sw_view_x (view, hook.x_m), sw_view_y (view, hook.z_m));
    cairo_line_to (cr, sw_view_x (view, tie.x_m), sw_view_y (view, tie.z_m));
  }
  cairo_stroke (cr);
}

static int
scene_of (const char *name)
{
  for (int i = 0; name != NULL && sw_scenes[i] != NULL; i++) {
    if (strcmp (sw_scenes[i], name) == 0)
      return i;
  }
  return 0;
}

static void
add_strips (Canvas *canvas,
            const SwView *view,
            const SwSolution *solution,
            const SwNight *night)
{
  const SwDesign *design = solution->design;
  Light (*colour) (const Spot *, double) = scenes[scene_of (night->scene)];
  g_autofree SwPoint *points = g_new (SwPoint, design->strip.pixels);
  double shape_m = solution->cone.overall_height_m;

  for (int strip = 1; strip <= design->shape.strip_count; strip++) {
    sw_pixel_points (design, strip, points);
    for (int i = 0; i < design->strip.pixels; i++) {
      Spot spot = { points[i].z_m / shape_m,
                    (strip - 1.0) / design->shape.strip_count,
                    (guint32) (strip * 4099 + i),
                    FALSE };
      /* a back strip's pixel looks away from the viewer: about half its light comes through */
      double facing = points[i].y_m > 1e-6 ? 0.5 : 1;
      splat (canvas,
             sw_view_x (view, points[i].x_m),
             sw_view_y (view, points[i].z_m),
             scaled (colour (&spot, night->time_s), facing));
    }
  }
}

static void
add_star (Canvas *canvas, const SwView *view, const SwSolution *solution, const SwNight *night)
{
  Light (*colour) (const Spot *, double) = scenes[scene_of (night->scene)];

  for (guint i = 0; i < solution->topper_pixels->len; i++) {
    SwPoint at = g_array_index (solution->topper_pixels, SwPoint, i);
    Spot spot = { 1, (double) i / solution->topper_pixels->len, 7000003 + i, TRUE };
    splat (canvas,
           sw_view_x (view, at.x_m),
           sw_view_y (view, at.z_m),
           colour (&spot, night->time_s));
  }
}

static SwView
night_fit (const SwSolution *solution, double width, double height)
{
  double half_m =
    MAX (solution->design->shape.ring_radius_m, solution->design->topper.width_m / 2) * 1.25;
  double high_m = solution->cone.overall_height_m * 1.12;
  double scale = MIN (width / (2 * half_m), height * 0.88 / high_m);

  return (SwView){ .width = width,
                   .height = height,
                   .x0 = width / 2,
                   .y0 = height * 0.90,
                   .scale = scale };
}

void
sw_night_view_draw (cairo_surface_t *image, const SwSolution *solution, const SwNight *night)
{
  int width = cairo_image_surface_get_width (image),
      height = cairo_image_surface_get_height (image);
  SwView view = night_fit (solution, width, height);
  cairo_t *cr = cairo_create (image);
  Canvas canvas;

  paint_sky (cr, &view, night->day);
  paint_unlit (cr, &view, solution, night->day);
  cairo_destroy (cr);
  if (night->day)
    return;
  canvas_init (&canvas, width, height, CLAMP (0.011 * view.scale, 0.9, 3));
  add_strips (&canvas, &view, solution, night);
  add_star (&canvas, &view, solution, night);
  develop (&canvas, image);
  canvas_clear (&canvas);
}
