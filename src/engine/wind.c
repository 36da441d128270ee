// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/wind.h"

#include <math.h>
#include <stdlib.h>

#define FOOT_M 0.3048
#define LEAST_HEIGHT_M (15 * FOOT_M) /* Kz is constant below */
#define EQUALLY_BAD 1e-9             /* relative */

/* Exponent and gradient height, ASCE 7-16 table 26.11-1. No floor is put under B. */
static const SwTerrain terrains[] = {
  [SW_EXPOSURE_B] = { 7.0, 1200 * FOOT_M },
  [SW_EXPOSURE_C] = { 9.5, 900 * FOOT_M },
  [SW_EXPOSURE_D] = { 11.5, 700 * FOOT_M },
};

const SwTerrain *
sw_wind_terrain (SwExposure exposure)
{
  return &terrains[exposure];
}

double
sw_wind_kz (SwExposure exposure, double height_m)
{
  double z = MAX (height_m, LEAST_HEIGHT_M);

  return 2.01 * pow (z / terrains[exposure].gradient_m, 2 / terrains[exposure].alpha);
}

typedef struct {
  double kink;     /* where the strip is edge-on, radians in [0, π) */
  double cos, sin; /* of its azimuth, signed so that it counts positive before the kink */
} Edge;

static int
by_kink (const void *a, const void *b)
{
  double first = ((const Edge *) a)->kink, second = ((const Edge *) b)->kink;

  return (first > second) - (first < second);
}

static Edge
edge_of (double azimuth_deg)
{
  double azimuth = azimuth_deg * G_PI / 180;
  double kink = fmod (azimuth + G_PI / 2, G_PI);
  double sign = cos (azimuth) >= 0 ? 1 : -1; /* of cos (azimuth − θ) just after θ = 0 */

  if (kink < 1e-12 || G_PI - kink < 1e-12) { /* edge-on at θ = 0 itself */
    kink = 0;
    sign = sin (azimuth) >= 0 ? 1 : -1;
  }
  return (Edge){ kink, sign * cos (azimuth), sign * sin (azimuth) };
}

typedef struct {
  double sum, angle;
} Best;

static void
consider (Best *best, double sum, double angle)
{
  gboolean better = sum > best->sum * (1 + EQUALLY_BAD);
  gboolean equal_and_less = sum > best->sum * (1 - EQUALLY_BAD) && angle < best->angle;

  if (better || equal_and_less)
    *best = (Best){ sum, angle };
}

/* Between two kinks the sum is A·cos θ + B·sin θ, largest at atan2 (B, A) or at an end. It has
 * the period π. */
double
sw_wind_widths (const SwShape *shape, double *worst_deg)
{
  int n = shape->strip_count;
  g_autofree Edge *edges = g_new (Edge, n);
  double a = 0, b = 0, from = 0;
  Best best = { -1, 0 };

  for (int i = 0; i < n; i++) {
    edges[i] = edge_of (sw_cone_azimuth_deg (shape, i + 1));
    a += edges[i].cos;
    b += edges[i].sin;
  }
  qsort (edges, n, sizeof *edges, by_kink);
  for (int i = 0; i <= n; i++) {
    double to = i < n ? edges[i].kink : G_PI, peak = atan2 (b, a);
    consider (&best, a * cos (from) + b * sin (from), from);
    if (peak >= from && peak <= to)
      consider (&best, a * cos (peak) + b * sin (peak), peak);
    if (i < n && edges[i].kink > 0) { /* behind its kink the strip's other side counts */
      a -= 2 * edges[i].cos;
      b -= 2 * edges[i].sin;
    }
    from = to;
  }
  if (worst_deg != NULL)
    *worst_deg = sw_azimuth_wrap_deg (best.angle * 180 / G_PI);
  return best.sum;
}

double
sw_wind_strip_area (const SwShape *shape, double width_m, double flat_m)
{
  double height_m = shape->crown_height_m - shape->ring_height_m;
  double low =
    SW_WIND_CF_ROUND * (2 * MIN (shape->crown_radius_m, shape->ring_radius_m) + width_m);
  double high =
    SW_WIND_CF_ROUND * (2 * MAX (shape->crown_radius_m, shape->ring_radius_m) + width_m);

  if (flat_m <= low)
    return flat_m * height_m;
  if (flat_m >= high)
    return (low + high) / 2 * height_m;
  double capped = (flat_m - low) / (high - low); /* share of the height where the cap counts */
  return height_m * (capped * (low + flat_m) / 2 + (1 - capped) * flat_m);
}

static double
lattice_width_m (const SwShape *shape, double width_m, double down)
{
  double rho = shape->crown_radius_m + (shape->ring_radius_m - shape->crown_radius_m) * down;
  double solid = MIN (shape->strip_count * width_m / (2 * G_PI * rho), 1);

  return (4.0 * solid * solid - 5.9 * solid + 4.0) * solid * 2 * rho;
}

/* Simpson's rule; the kink where the strips close up costs less than a ten-thousandth. */
double
sw_wind_lattice_area (const SwShape *shape, double width_m)
{
  enum { STEPS = 512 };
  double sum = 0;

  if (shape->coverage_deg < 360)
    return NAN;
  for (int i = 0; i <= STEPS; i++) {
    int weight = i == 0 || i == STEPS ? 1 : i % 2 == 1 ? 4 : 2;
    sum += weight * lattice_width_m (shape, width_m, i / (double) STEPS);
  }
  return sum / (3 * STEPS) * (shape->crown_height_m - shape->ring_height_m);
}

double
sw_wind_side_pull (const SwDesign *design, const SwCone *cone)
{
  const SwShape *shape = &design->shape;
  double half_step = sw_cone_step_deg (shape) * G_PI / 360;

  if (shape->coverage_deg >= 360)
    return 0;
  return fabs (design->strip.tension_n * sin (cone->lean_deg * G_PI / 180) *
               sin (shape->strip_count * half_step) / sin (half_step));
}

static void
add_up (SwWind *wind, const SwDesign *design, const SwCone *cone)
{
  const SwShape *shape = &design->shape;
  double half_n = wind->strips_n / 2;
  double star_m = shape->crown_height_m + design->topper.stub_m + design->topper.height_m / 2;
  gboolean on_foot = design->stand.ring_held_by == SW_HELD_BY_FOOT;

  wind->base_shear_n = half_n + wind->post_n + wind->topper_n + (on_foot ? half_n : 0);
  wind->wind_moment_nm = half_n * shape->crown_height_m +
                         wind->post_n * shape->crown_height_m / 2 + wind->topper_n * star_m +
                         (on_foot ? half_n * shape->ring_height_m : 0);
  wind->base_moment_nm = wind->wind_moment_nm;
  if (!on_foot)
    wind->base_moment_nm += sw_wind_side_pull (design, cone) * shape->crown_height_m;
}

void
sw_wind_init (SwWind *wind,
              const SwDesign *design,
              const SwCone *cone,
              const SwCatalogue *catalogue)
{
  const SwTopper *topper = &design->topper;
  const SwPipe *post = sw_catalogue_pipe (catalogue, design->stand.post);
  double width_m = design->strip.width_m;

  *wind = (SwWind){ .kz = sw_wind_kz (design->site.exposure, cone->overall_height_m) };
  wind->pressure_pa = 0.613 * wind->kz * design->site.gust_mps * design->site.gust_mps;
  double widths = sw_wind_widths (&design->shape, &wind->worst_azimuth_deg);
  wind->strips_n =
    wind->pressure_pa *
    sw_wind_strip_area (&design->shape, width_m, SW_WIND_CF_STRIP * width_m * widths);
  wind->lattice_n = wind->pressure_pa * sw_wind_lattice_area (&design->shape, width_m);
  wind->post_n = post == NULL ? NAN
                              : wind->pressure_pa * SW_WIND_CF_ROUND * post->od_m *
                                  design->shape.crown_height_m;
  if (topper->kind == SW_TOPPER_STAR)
    wind->topper_n = wind->pressure_pa * SW_WIND_CF_STAR * topper->solidity * topper->width_m *
                     topper->height_m;
  add_up (wind, design, cone);
}
