// SPDX-License-Identifier: GPL-3.0-or-later
/* strip-bow.c. A strip and a guy are looked at in the strip's own frame: x outward, y sideways,
 * z up, the strip in the plane y = 0. However far it bows, a strip stays in the plane of its
 * chord and the wind, so where a guy goes through that plane says which bow would touch it.
 */
#include "engine/strip-bow.h"

#include "engine/stand-model.h"

#include <math.h>

#define DIRECTIONS 48 /* winds looked at, then refined round the best */
#define PLACES 12     /* along a strip */
#define ROUNDS 24     /* of refining, each half as wide */
#define TOUCH_ROUNDS 8

double
sw_strip_pull_at (const SwDesign *design, const SwCone *cone, double gust_mps, double facing)
{
  SwStripLine line = sw_strip_line_of (design, cone);
  double pressure_pa =
    0.613 * sw_wind_kz (design->site.exposure, cone->overall_height_m) * gust_mps * gust_mps;

  return sw_strip_tension (&line,
                           pressure_pa * SW_WIND_CF_STRIP * design->strip.width_m * facing);
}

typedef struct {
  const SwDesign *design;
  SwStripLine line;
  double load; /* N/m on a facing strip, over the gust's square */
} Sail;

static Sail
sail_of (const SwDesign *design, const SwCone *cone)
{
  double kz = sw_wind_kz (design->site.exposure, cone->overall_height_m);

  return (Sail){ design,
                 sw_strip_line_of (design, cone),
                 0.613 * kz * SW_WIND_CF_STRIP * design->strip.width_m };
}

static double
bow_of (const Sail *sail, double gust_mps, double facing)
{
  double load = sail->load * gust_mps * gust_mps * facing;

  if (!(load > 0))
    return 0;
  return load * sail->line.slant_m * sail->line.slant_m /
         (8 * sw_strip_tension (&sail->line, load));
}

double
sw_strip_bow_at (const SwDesign *design, const SwCone *cone, double gust_mps, double facing)
{
  Sail sail = sail_of (design, cone);

  return bow_of (&sail, gust_mps, facing);
}

/* The least gust that bows so far, at most `most_mps`: INFINITY beyond. */
static double
gust_for_bow (const Sail *sail, double bow_m, double facing, double most_mps)
{
  double low = 0, high = most_mps;

  if (!(bow_m > 0))
    return 0;
  if (bow_of (sail, high, facing) < bow_m)
    return INFINITY;
  while (high - low > 1e-11 * most_mps) {
    double middle = (low + high) / 2;
    if (middle <= low || middle >= high)
      break;
    if (bow_of (sail, middle, facing) < bow_m)
      low = middle;
    else
      high = middle;
  }
  return high;
}

/* Where a bowed strip that faces the wind is nearest to the axis: crown + widens·ξ − 4·bow·ξ(1
 * − ξ) is least. A strip that the wind meets askew is pushed less, and past the post. */
static double
nearest_share (const SwShape *shape, double bow_m)
{
  double widens_m = shape->ring_radius_m - shape->crown_radius_m;

  if (!(bow_m > 0))
    return widens_m >= 0 ? 0 : 1;
  return CLAMP (0.5 - widens_m / (8 * bow_m), 0, 1);
}

static double
post_gap_m (const SwShape *shape, double bow_m, double post_od_m)
{
  double share = nearest_share (shape, bow_m);

  return shape->crown_radius_m + (shape->ring_radius_m - shape->crown_radius_m) * share -
         4 * bow_m * share * (1 - share) - post_od_m / 2;
}

/* The least bow that reaches the post. */
static double
post_touch_bow_m (const SwShape *shape, double post_od_m)
{
  double low = 0, high = 1;

  if (post_gap_m (shape, 0, post_od_m) <= 0)
    return 0;
  while (post_gap_m (shape, high, post_od_m) > 0)
    high *= 2;
  while (high - low > 1e-14 * high) {
    double middle = (low + high) / 2;
    if (post_gap_m (shape, middle, post_od_m) > 0)
      low = middle;
    else
      high = middle;
  }
  return high;
}

typedef struct {
  const SwDesign *design;
  double turn; /* from the strip to the guy, radians */
  double cos, sin;
  int strip;
} Pair;

/* The bow that brings the line `side_m` beside the strip's middle to the guy with wind from
 * `wind`; below 0 where the wind takes it away. INFINITY: it never does. */
static double
touch_of_line (const Pair *pair, double wind, double side_m)
{
  const SwShape *shape = &pair->design->shape;
  const SwGuys *guys = &pair->design->guys;
  double tall_m = shape->crown_height_m - shape->ring_height_m;
  double widens_m = shape->ring_radius_m - shape->crown_radius_m;
  double c = cos (wind), s = sin (wind);
  double first = (shape->crown_height_m - guys->height_m) / tall_m;
  double grows = guys->height_m / tall_m;
  double out_m = guys->radius_m * pair->cos, aside_m = guys->radius_m * pair->sin;
  double down = (c * side_m - s * (shape->crown_radius_m + widens_m * first)) /
                (s * (widens_m * grows - out_m) + c * aside_m); /* share of the guy */
  double share = first + grows * down;

  if (!(down >= 0 && down <= 1 && share > 0 && share < 1))
    return INFINITY;
  double moved_m = c * (shape->crown_radius_m + widens_m * share - down * out_m) +
                   s * (side_m - down * aside_m);
  return moved_m / (4 * share * (1 - share));
}

/* The least bow that brings the ribbon to the guy; 0 where the guy goes through it as it is. */
static double
touch_bow_m (const Pair *pair, double wind)
{
  double half_m = pair->design->strip.width_m / 2;
  double one = touch_of_line (pair, wind, -half_m), other = touch_of_line (pair, wind, half_m);

  if (isfinite (one) && isfinite (other) && one * other <= 0)
    return 0;
  return MIN (one >= 0 ? one : INFINITY, other >= 0 ? other : INFINITY);
}

typedef struct {
  double across_m, rise_m, gap_m;
} Gap;

/* From a place of the bowed strip to the guy, straight. */
static Gap
gap_at (const Pair *pair, double wind, double bow_m, const double place[2])
{
  const SwShape *shape = &pair->design->shape;
  const SwGuys *guys = &pair->design->guys;
  double share = place[0], moved_m = 4 * bow_m * share * (1 - share);
  double x = shape->crown_radius_m + (shape->ring_radius_m - shape->crown_radius_m) * share -
             moved_m * cos (wind);
  double y = place[1] - moved_m * sin (wind);
  double z = shape->crown_height_m - (shape->crown_height_m - shape->ring_height_m) * share;
  double out = x * pair->cos + y * pair->sin; /* along the guy's plan */
  double length2 = guys->radius_m * guys->radius_m + guys->height_m * guys->height_m;
  double down =
    CLAMP ((out * guys->radius_m + (guys->height_m - z) * guys->height_m) / length2, 0, 1);
  double across_m =
    hypot (x - down * guys->radius_m * pair->cos, y - down * guys->radius_m * pair->sin);
  double rise_m = z - guys->height_m * (1 - down);

  return (Gap){ across_m, rise_m, sqrt (across_m * across_m + rise_m * rise_m) };
}

typedef struct {
  Pair pair;
  double wind, place[2]; /* share from the hook; sideways */
  Gap gap;
} Nearest;

static void
consider_gap (Nearest *best, const Nearest *tried, const Sail *sail)
{
  double facing = fabs (cos (tried->wind));
  double bow_m = bow_of (sail, sail->design->site.gust_mps, facing);
  Gap gap = gap_at (&tried->pair, tried->wind, bow_m, tried->place);

  if (gap.gap_m < best->gap.gap_m) {
    *best = *tried;
    best->gap = gap;
  }
}

static void
refine_gap (Nearest *best, const Sail *sail)
{
  double turn = 2 * G_PI / DIRECTIONS, slide = 1.0 / PLACES;
  double half_m = sail->design->strip.width_m / 2;

  for (int round = 0; round < ROUNDS; round++, turn /= 2, slide /= 2) {
    for (int sign = -1; sign <= 1; sign += 2) {
      Nearest tried = *best;
      tried.wind += sign * turn;
      consider_gap (best, &tried, sail);
      tried = *best;
      tried.place[0] = CLAMP (tried.place[0] + sign * slide, 0, 1);
      consider_gap (best, &tried, sail);
      tried = *best;
      tried.place[1] = sign * half_m;
      consider_gap (best, &tried, sail);
    }
  }
}

typedef struct {
  double gust_mps, bow_m, facing;
  int strip;
} Touch;

static void
consider_touch (Touch *best, const Pair *pair, double wind, const Sail *sail)
{
  double facing = fabs (cos (wind)), bow_m = touch_bow_m (pair, wind);

  if (!isfinite (bow_m) || bow_of (sail, best->gust_mps, facing) < bow_m)
    return;
  double gust_mps = gust_for_bow (sail, bow_m, facing, best->gust_mps);
  if (gust_mps < best->gust_mps)
    *best = (Touch){ gust_mps, bow_m, facing, pair->strip };
}

/* Guys that stand alike to the strips need looking at only once. */
static int
guys_to_look_at (const SwDesign *design)
{
  gboolean alike = design->shape.coverage_deg >= 360 && design->guys.count > 0 &&
                   design->shape.strip_count % design->guys.count == 0;

  return alike ? 1 : design->guys.count;
}

static gboolean
has_guys (const SwDesign *design)
{
  return design->guys.count > 0 && design->guys.height_m > 0 && design->guys.radius_m > 0;
}

/* Returns FALSE for a strip that has two others between itself and the guy: they hit first.
 * The end strips of a partial tree always count. */
static gboolean
pair_of (Pair *pair, const SwDesign *design, int guy, int strip)
{
  double guy_deg = design->guys.first_azimuth_deg + guy * 360.0 / design->guys.count;
  double turn_deg =
    sw_azimuth_wrap_deg (guy_deg - sw_cone_azimuth_deg (&design->shape, strip) + 180) - 180;

  *pair = (Pair){ design, turn_deg * G_PI / 180, 0, 0, strip };
  pair->cos = cos (pair->turn);
  pair->sin = sin (pair->turn);
  gboolean is_end =
    design->shape.coverage_deg < 360 && (strip == 1 || strip == design->shape.strip_count);
  return is_end || fabs (turn_deg) <= MIN (2 * sw_cone_step_deg (&design->shape), 90) + 1e-9;
}

typedef void (*PairFunc) (const Pair *pair, double wind, gpointer data);

static void
each_pair (const SwDesign *design, PairFunc look, gpointer data)
{
  Pair pair;

  for (int guy = 0; guy < guys_to_look_at (design); guy++) {
    for (int strip = 1; strip <= design->shape.strip_count; strip++) {
      if (!pair_of (&pair, design, guy, strip))
        continue;
      for (int i = 0; i < DIRECTIONS; i++)
        look (&pair, i * 2 * G_PI / DIRECTIONS, data);
    }
  }
}

typedef struct {
  const Sail *sail;
  Touch touch;
  Pair pair; /* of the first touch */
  double wind;
  Nearest nearest;
} Search;

static void
look_for_touch (const Pair *pair, double wind, gpointer data)
{
  Search *search = data;
  double before = search->touch.gust_mps;

  consider_touch (&search->touch, pair, wind, search->sail);
  if (search->touch.gust_mps < before) {
    search->pair = *pair;
    search->wind = wind;
  }
}

static Touch
guy_touch (const Sail *sail, double most_mps)
{
  Search search = { .sail = sail, .touch = { .gust_mps = most_mps } };

  each_pair (sail->design, look_for_touch, &search);
  double turn = G_PI / DIRECTIONS;
  for (int round = 0; search.touch.strip > 0 && round < TOUCH_ROUNDS; round++, turn /= 2) {
    double wind = search.wind;
    Pair pair = search.pair;
    look_for_touch (&pair, wind - turn, &search);
    look_for_touch (&pair, wind + turn, &search);
  }
  return search.touch;
}

static void
look_for_hit (const Pair *pair, double wind, gpointer data)
{
  Search *search = data;
  double bow_m = search->touch.strip > 0 ? INFINITY : touch_bow_m (pair, wind);

  if (isfinite (bow_m) &&
      bow_of (search->sail, search->touch.gust_mps, fabs (cos (wind))) >= bow_m)
    search->touch.strip = pair->strip;
}

static void
look_for_gap (const Pair *pair, double wind, gpointer data)
{
  Search *search = data;
  double bow_m = bow_of (search->sail, search->sail->design->site.gust_mps, fabs (cos (wind)));

  for (int i = 0; i <= PLACES; i++) {
    double place[2] = { i / (double) PLACES, 0 };
    Gap gap = gap_at (pair, wind, bow_m, place);
    if (gap.gap_m < search->nearest.gap.gap_m)
      search->nearest = (Nearest){ *pair, wind, { place[0], 0 }, gap };
  }
}

static void
set_guys (SwStripBow *bow, const Sail *sail, Touch *touch)
{
  const SwDesign *design = sail->design;

  bow->strip_guy_gap_m = bow->guy_touch_mps = bow->guy_across_m = bow->guy_rise_m = NAN;
  if (!has_guys (design))
    return;
  *touch = guy_touch (sail, SW_GUST_MOST_MPS);
  bow->guy_touch_mps = touch->gust_mps;
  bow->guy_strip = touch->strip;
  if (touch->strip > 0 && touch->gust_mps <= design->site.gust_mps) {
    bow->strip_guy_gap_m = bow->guy_across_m = bow->guy_rise_m = 0;
    return;
  }
  Search search = { .sail = sail, .nearest = { .gap = { .gap_m = INFINITY } } };
  each_pair (design, look_for_gap, &search);
  refine_gap (&search.nearest, sail);
  bow->strip_guy_gap_m = search.nearest.gap.gap_m;
  bow->guy_across_m = search.nearest.gap.across_m;
  bow->guy_rise_m = search.nearest.gap.rise_m;
  bow->guy_strip = search.nearest.pair.strip;
}

static void
set_post (SwStripBow *bow, const Sail *sail, double post_od_m)
{
  const SwShape *shape = &sail->design->shape;

  bow->post_share = nearest_share (shape, bow->strip_bow_m);
  bow->strip_post_gap_m = bow->post_touch_mps = NAN;
  if (!(post_od_m > 0))
    return;
  bow->strip_post_gap_m = post_gap_m (shape, bow->strip_bow_m, post_od_m);
  bow->post_touch_mps =
    MIN (gust_for_bow (sail, post_touch_bow_m (shape, post_od_m), 1, SW_GUST_MOST_MPS),
         SW_GUST_MOST_MPS);
}

void
sw_strip_bow_init (SwStripBow *bow,
                   const SwDesign *design,
                   const SwCone *cone,
                   double post_od_m)
{
  Sail sail = sail_of (design, cone);
  Touch first = { .gust_mps = SW_GUST_MOST_MPS };

  *bow = (SwStripBow){ .strip_bow_m = bow_of (&sail, design->site.gust_mps, 1) };
  set_post (bow, &sail, post_od_m);
  set_guys (bow, &sail, &first);
  if (bow->post_touch_mps < first.gust_mps)
    first = (Touch){ bow->post_touch_mps, post_touch_bow_m (&design->shape, post_od_m), 1, 0 };
  bow->strip_touch_gust_mps = first.gust_mps;
  bow->touch_bow_m = first.bow_m;
  bow->touch_facing = first.facing;
  bow->touch_tension_n = sw_strip_pull_at (design, cone, first.gust_mps, first.facing);
}

gboolean
sw_strip_bow_hits_post (const SwDesign *design, const SwCone *cone, double post_od_m)
{
  double bow_m = sw_strip_bow_at (design, cone, design->site.gust_mps, 1);

  return post_gap_m (&design->shape, bow_m, post_od_m) <= 0;
}

gboolean
sw_strip_bow_hits_guy (const SwDesign *design, const SwCone *cone)
{
  Sail sail = sail_of (design, cone);
  Search search = { .sail = &sail, .touch = { .gust_mps = design->site.gust_mps } };

  if (has_guys (design))
    each_pair (design, look_for_hit, &search);
  return search.touch.strip > 0;
}
