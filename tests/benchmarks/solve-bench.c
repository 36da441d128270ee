// SPDX-License-Identifier: GPL-3.0-or-later
/* solve-bench: what follows from a design, against a floor measured in the same run.
 *
 * Floor   one division that waits for the one before, for each pixel of a strip: the least that
 *         any elimination along a ladder does
 * Claim   the Landmark is solved in less than 1 ms; the power of a tree takes less than 20 µs
 * at 90 pixels a strip and less than 500 µs at 2000
 */
#include "engine/solution.h"
#include "engine/starts.h"

enum { RUNS = 41 };

typedef struct {
  SwDesign *design; /* owned */
  volatile double sink;
} Bench;

typedef void (*Work) (Bench *bench);

static void
divide_along (Bench *bench)
{
  double value = 1;

  for (int pixel = 0; pixel < bench->design->strip.pixels; pixel++)
    value = 1 / (value + 0.5);
  bench->sink = value;
}

static void
solve_power (Bench *bench)
{
  SwPower power;

  sw_power_init (&power, bench->design);
  bench->sink = power.tree_w;
}

static void
solve_ring (Bench *bench)
{
  g_autoptr (SwAsBuilt) as_built = sw_as_built_new (bench->design, 0.0334, NULL);

  bench->sink = as_built->perimeter_m;
}

static void
solve_all (Bench *bench)
{
  g_autoptr (SwSolution) solution =
    sw_solution_new (bench->design, sw_catalogue_builtin (NULL), NULL);

  bench->sink = solution->cost_to_pay;
}

/* The fastest run, in microseconds: what else the machine does can only make one slower. */
static double
fastest_us (Bench *bench, Work work)
{
  enum { REPEATS = 20 };
  gint64 least = G_MAXINT64;

  for (int i = 0; i < RUNS; i++) {
    gint64 start = g_get_monotonic_time ();
    for (int j = 0; j < REPEATS; j++)
      work (bench);
    least = MIN (least, g_get_monotonic_time () - start);
  }
  return (double) least / REPEATS;
}

static SwDesign *
strip_of (int pixels, SwLoad load)
{
  SwDesign *design = sw_start_new ("landmark", NULL);

  design->strip.pixels = pixels;
  design->strip.pitch_m = 4.5 / pixels;
  design->power.pixel_a = 3.0 / pixels; /* so that every one has a solution */
  design->power.load = load;
  return design;
}

static SwDesign *
measured (int strips)
{
  SwDesign *design = sw_start_new ("landmark", NULL);

  design->shape.strip_count = strips;
  for (int i = 0; i < 12; i++) {
    SwRingPoint point = { 30 * i + i % 3, 1.5 + 0.02 * (i % 5) };
    g_array_append_val (design->as_built.ring_points, point);
  }
  return design;
}

static SwDesign *
largest (void)
{
  SwDesign *design = sw_start_new ("landmark", NULL);

  design->shape.strip_count = 512;
  design->strip.pixels = 2000;
  return design;
}

/* Takes over the design. Returns: whether it was fast enough. */
static gboolean
report (const char *name, SwDesign *design, Work work, double most_us)
{
  Bench bench = { .design = design };
  double floor_us = fastest_us (&bench, divide_along), us = fastest_us (&bench, work);

  g_print ("%-34s %8.1f us  %6.1f x floor%s\n",
           name,
           us,
           us / floor_us,
           us <= most_us ? "" : "  TOO SLOW");
  sw_design_unref (design);
  return us <= most_us;
}

int
main (int argc, char **argv)
{
  gboolean fast = TRUE;

  for (SwLoad load = SW_LOAD_CONSTANT_CURRENT; load <= SW_LOAD_CONSTANT_POWER; load++) {
    const char *kind = load == SW_LOAD_CONSTANT_CURRENT ? "plain" : "regulated";
    g_autofree char *few = g_strdup_printf ("power, 90 %s pixels", kind);
    g_autofree char *many = g_strdup_printf ("power, 2000 %s pixels", kind);
    fast &= report (few, strip_of (90, load), solve_power, 20);
    fast &= report (many, strip_of (2000, load), solve_power, 500);
  }
  fast &= report ("measured ring, 36 strips", measured (36), solve_ring, 500);
  fast &= report ("measured ring, 512 strips", measured (512), solve_ring, 5000);
  fast &= report ("the Lawn", sw_start_new ("lawn", NULL), solve_all, 1000);
  fast &= report ("512 strips of 2000 pixels", largest (), solve_all, 60000);
  fast &= report ("the Landmark", sw_start_new ("landmark", NULL), solve_all, 1000);
  return fast ? 0 : 1;
}
