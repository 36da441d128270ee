// SPDX-License-Identifier: GPL-3.0-or-later
/* draw-bench.c: CPU time of drawing the Landmark's views at 800 × 600, part by part, as ratios
 * to painting the picture once. */
#include "drawing/night-view.h"
#include "drawing/top-view.h"
#include "engine/starts.h"

#include <stdio.h>
#include <time.h>

#define ROUNDS 60

static double
now_ms (void)
{
  struct timespec time;

  clock_gettime (CLOCK_PROCESS_CPUTIME_ID, &time);
  return (double) time.tv_sec * 1e3 + (double) time.tv_nsec / 1e6;
}

typedef struct {
  cairo_surface_t *image;
  const SwSolution *solution;
  SwView side, top;
  SwTextCache *texts;
  SwDrawParts parts;
} Bench;

static void
draw_side (Bench *bench)
{
  SwPicture picture = { &bench->side,
                        &sw_style_light,
                        &sw_language_english,
                        bench->texts,
                        bench->parts };
  cairo_t *cr = cairo_create (bench->image);

  sw_side_view_draw (cr, &picture, bench->solution);
  cairo_destroy (cr);
}

static void
draw_top (Bench *bench)
{
  SwPicture picture = { &bench->top,
                        &sw_style_light,
                        &sw_language_english,
                        bench->texts,
                        bench->parts };
  cairo_t *cr = cairo_create (bench->image);

  sw_top_view_draw (cr, &picture, bench->solution);
  cairo_destroy (cr);
}

static void
draw_night (Bench *bench)
{
  SwNight night = { 0 };

  sw_night_view_draw (bench->image, bench->solution, &night);
}

static void
paint (Bench *bench)
{
  cairo_t *cr = cairo_create (bench->image);

  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_destroy (cr);
}

static double
time_of (void (*draw) (Bench *bench), Bench *bench)
{
  draw (bench);
  double began = now_ms ();
  for (int i = 0; i < ROUNDS; i++)
    draw (bench);
  return (now_ms () - began) / ROUNDS;
}

int
main (int argc, char **argv)
{
  g_autoptr (SwDesign) design = sw_start_new ("landmark", NULL);
  g_autoptr (SwSolution) solution = sw_solution_new (design, sw_catalogue_builtin (NULL), NULL);
  static const struct {
    const char *name;
    void (*draw) (Bench *bench);
    SwDrawParts parts;
  } cases[] = {
    { "side view, tree", draw_side, SW_DRAW_TREE },
    { "side view, dimensions", draw_side, SW_DRAW_DIMENSIONS },
    { "top view, tree", draw_top, SW_DRAW_TREE },
    { "top view, dimensions", draw_top, SW_DRAW_DIMENSIONS },
    { "night", draw_night, 0 },
  };
  Bench bench = { cairo_image_surface_create (CAIRO_FORMAT_RGB24, 800, 600),
                  solution,
                  sw_side_view_fit (solution, 800, 600),
                  sw_top_view_fit (solution, 800, 600),
                  sw_text_cache_new (),
                  0 };
  double floor_ms = time_of (paint, &bench);

  for (guint i = 0; i < G_N_ELEMENTS (cases); i++) {
    bench.parts = cases[i].parts;
    double ms = time_of (cases[i].draw, &bench);
    printf ("%-22s %6.2f ms, %5.1f times painting the picture (%.3f ms)\n",
            cases[i].name,
            ms,
            ms / floor_ms,
            floor_ms);
  }
  cairo_surface_destroy (bench.image);
  sw_text_cache_free (bench.texts);
  return 0;
}
