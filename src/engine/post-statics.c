// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/post-statics.h"

#include <math.h>

double
sw_post_shear (const SwPostLoad *load)
{
  return load->crown_n + load->star_n + load->post_n + load->ring_n;
}

double
sw_post_moment (const SwPostLoad *load)
{
  return load->crown_n * load->crown_m + load->star_n * load->star_m +
         load->post_n * load->crown_m / 2 + load->ring_n * load->ring_m;
}

double
sw_post_moment_above (const SwPostLoad *load, double height_m)
{
  double above = MAX (load->crown_m - height_m, 0);

  return load->crown_n * above + load->star_n * MAX (load->star_m - height_m, 0) +
         load->post_n / load->crown_m * above * above / 2;
}

/* A force at b bends the cantilever at x ≤ b by F·x²(3b − x)/6EI; an even load w over L by
 * w·x²(6L² − 4Lx + x²)/24EI. */
double
sw_post_deflection (const SwPostLoad *load, double ei, double height_m)
{
  double x = MIN (height_m, load->crown_m), l = load->crown_m;
  double forces = load->crown_n * (3 * l - x) + load->star_n * (3 * load->star_m - x);

  return x * x * (forces / 6 + load->post_n / l * (6 * l * l - 4 * l * x + x * x) / 24) / ei;
}

double
sw_guy_worst_share (int count)
{
  return count == 3 ? 1 / cos (G_PI / 6) : 1;
}

double
sw_guy_least_pulling (int count)
{
  double least = G_MAXDOUBLE;

  for (int i = 0; i <= 60; i++) {
    double wind = i * G_PI / 60 / count * 2, sum = 0;
    for (int guy = 0; guy < count; guy++) {
      double along = cos (2 * G_PI * guy / count - wind);
      sum += along > 1e-9 ? along * along : 0;
    }
    least = MIN (least, sum);
  }
  return least;
}

/* Between the pinned base and the guys the post is a simple beam under its own wind. */
static double
span_moment (const SwPostLoad *load, const SwGuyRig *rig, double base_n)
{
  double w = load->post_n / load->crown_m, height = MIN (rig->height_m, load->crown_m);

  if (!(w > 0))
    return fabs (base_n) * height;
  double x = CLAMP (base_n / w, 0, height);
  return fabs (base_n * x - w * x * x / 2);
}

/* Sideways, of the guys that pull whichever way the wind blows. */
static double
rig_stiffness (const SwGuyRig *rig)
{
  double length = hypot (rig->height_m, rig->radius_m), cos_guy = rig->radius_m / length;

  return rig->stiffness_n / length * cos_guy * cos_guy * rig->pulling;
}

static double
fixed_base_moment (const SwPostLoad *load, const SwGuyRig *rig, double ei)
{
  double stiffness = rig_stiffness (rig);
  double free_m = sw_post_deflection (load, ei, rig->height_m);
  double prop_n = free_m / (1 / stiffness + pow (rig->height_m, 3) / (3 * ei));

  return sw_post_moment (load) - prop_n * rig->height_m;
}

SwGuyAnswer
sw_guyed_post (const SwPostLoad *load, const SwGuyRig *rig, double ei)
{
  double cos_guy = rig->radius_m / hypot (rig->height_m, rig->radius_m);
  double held_n =
    sw_post_moment (load) / rig->height_m; /* pinned base: all moment goes to the guys */
  double worst_n = sw_guy_worst_share (rig->count) * held_n / cos_guy;
  double tight_n = rig->pretension_n + 2 * held_n / (rig->count * cos_guy);
  SwGuyAnswer answer = { .tension_n = MAX (worst_n, tight_n) };

  answer.base_shear_n = fabs (sw_post_shear (load) - held_n);
  answer.base_moment_nm = fixed_base_moment (load, rig, ei);
  double pinned = MAX (sw_post_moment_above (load, rig->height_m),
                       span_moment (load, rig, sw_post_shear (load) - held_n));
  answer.post_moment_nm = MAX (pinned, fabs (answer.base_moment_nm));
  return answer;
}

double
sw_guy_down_n (int count, double held_n, double steep)
{
  return held_n * steep / cos (G_PI / count);
}

double
sw_post_critical_n (double ei, double height_m, const SwGuyRig *rig)
{
  double free_n = G_PI * G_PI * ei / pow (2.1 * height_m, 2);

  if (rig == NULL)
    return free_n;
  double z = MIN (rig->height_m, height_m);
  return MIN (G_PI * G_PI * ei / (z * z), free_n + 0.75 * rig_stiffness (rig) * z);
}

/* d = A/2·(1 + √(1 + 4.36·h/A)) with A = 2.34·P/(S1·b) and S1 the soil's strength at a third of
 * the depth: A = k/d, and without the root d³ = k·d + 1.09·h·k. The curve bends upwards, so
 * Newton's steps come down to its one root above 0.
 */
double
sw_socket_depth (double force_n, double height_m, double diameter_m, double soil_pa_per_m)
{
  if (!(force_n > 0))
    return 0;
  double k = 2.34 * 3 * force_n / (soil_pa_per_m * diameter_m), c = 1.09 * height_m * k;
  double depth = sqrt (k) + cbrt (c);

  for (int i = 0; i < 100; i++) {
    double step = (depth * (depth * depth - k) - c) / (3 * depth * depth - k);
    depth -= step;
    if (fabs (step) <= 1e-15 * depth)
      break;
  }
  return depth;
}

/* The one real root above T0 of T²(T − T0) = c. */
static double
cubic_root (double still_n, double c)
{
  double t = MAX (still_n, cbrt (c)) + still_n / 3;

  for (int i = 0; i < 100; i++) {
    double step = (t * t * (t - still_n) - c) / (t * (3 * t - 2 * still_n));
    t -= step;
    if (fabs (step) <= 1e-14 * t)
      break;
  }
  return t;
}

double
sw_strip_tension (const SwStripLine *line, double wind_n_per_m)
{
  double excess = wind_n_per_m * wind_n_per_m * pow (line->slant_m, 3) /
                  24; /* times 1/T²: the bow's extra length */
  double elastic_n = 0;

  if (!(excess > 0))
    return line->still_n;
  if (line->tie_n_per_m > 0) {
    elastic_n = cubic_root (line->still_n, line->tie_n_per_m * excess);
    if (elastic_n - line->still_n <= line->tie_n_per_m * line->give_m)
      return elastic_n;
  }
  /* Never softer than the tie was; never more bowed than its last give lets it. */
  double tight_n =
    sqrt (excess / MAX (line->give_m + SW_LEAST_GIVE * line->slant_m, SW_LEAST_GIVE_M));
  return MAX (MAX (elastic_n, tight_n), line->still_n);
}
