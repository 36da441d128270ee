// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/finding-table.h"

#include "engine/fit.h"

#include <glib/gi18n.h>
#include <math.h>

#define REACH_M 3.05 /* 10 ft: lines up to 50 kV, 29 CFR 1910.333(c)(3) */

static void
add (SwFinding *finding, const char *name, SwQuantity quantity, double value)
{
  finding->values[finding->n_values++] = (SwFindingValue){ name, quantity, value, NULL };
}

static void
add_text (SwFinding *finding, const char *name, const char *text)
{
  finding->values[finding->n_values++] = (SwFindingValue){ name, SW_QUANTITY_NONE, 0, text };
}

static void
remedy (SwFinding *finding, const char *key, double value)
{
  finding->remedy_key = key;
  finding->remedy_value = value;
}

/* As many pixels as leave the least gap, when that is a way out. */
static void
remedy_pixels (const SwSolution *solution, SwFinding *finding)
{
  g_autoptr (SwDesign) fit = sw_fit_tail (solution->design, SW_GIVES_PIXELS, NULL);

  if (fit != NULL)
    remedy (finding, "strip.pixels", fit->strip.pixels);
}

/* Shape and strips */

static gboolean
strip_too_long (const SwSolution *s, SwFinding *finding)
{
  add (finding, "over", SW_QUANTITY_SHORT_LENGTH, -s->cone.tail_m);
  remedy_pixels (s, finding);
  return s->cone.tail_m < 0;
}

static gboolean
gap_short (const SwSolution *s, SwFinding *finding)
{
  add (finding, "gap", SW_QUANTITY_SHORT_LENGTH, s->cone.tail_m);
  add (finding, "least", SW_QUANTITY_SHORT_LENGTH, s->design->strip.tail_min_m);
  remedy_pixels (s, finding);
  return s->cone.tail_m >= 0 && s->cone.tail_m < s->design->strip.tail_min_m - 1e-9;
}

static gboolean
gap_long (const SwSolution *s, SwFinding *finding)
{
  double spare_m = s->cone.tail_m - s->design->strip.tail_min_m;

  add (finding, "gap", SW_QUANTITY_SHORT_LENGTH, s->cone.tail_m);
  add (finding, "more", SW_QUANTITY_COUNT, floor (spare_m / s->design->strip.pitch_m + 1e-9));
  remedy_pixels (s, finding);
  return spare_m >= 3 * s->design->strip.pitch_m && spare_m > 0.25;
}

static gboolean
crown_crowded (const SwSolution *s, SwFinding *finding)
{
  double step = s->cone.spacing_crown_m / s->design->shape.crown_radius_m;

  add (finding, "spacing", SW_QUANTITY_SHORT_LENGTH, s->cone.spacing_crown_m);
  add (finding, "width", SW_QUANTITY_SHORT_LENGTH, s->design->strip.width_m);
  remedy (finding,
          "shape.crown_radius_m",
          ceil (s->design->strip.width_m / step * 1000 + 0.5) / 1000);
  return s->cone.spacing_crown_m < s->design->strip.width_m;
}

static gboolean
crown_wider (const SwSolution *s, SwFinding *finding)
{
  add (finding, "crown", SW_QUANTITY_LENGTH, s->design->shape.crown_radius_m);
  add (finding, "ring", SW_QUANTITY_LENGTH, s->design->shape.ring_radius_m);
  return s->design->shape.crown_radius_m > s->design->shape.ring_radius_m;
}

static gboolean
flat_cone (const SwSolution *s, SwFinding *finding)
{
  add (finding, "lean", SW_QUANTITY_ANGLE, s->cone.lean_deg);
  return s->cone.lean_deg > 45;
}

static gboolean
tie_too_long (const SwSolution *s, SwFinding *finding)
{
  const SwStrip *strip = &s->design->strip;
  double length_m =
    strip->tie_length_m + (strip->tie_n_per_m > 0 ? strip->tension_n / strip->tie_n_per_m : 0);

  add (finding, "length", SW_QUANTITY_SHORT_LENGTH, length_m);
  add (finding, "gap", SW_QUANTITY_SHORT_LENGTH, s->cone.tail_m);
  return s->cone.tail_m >= 0 && length_m > s->cone.tail_m;
}

static gboolean
tie_bottomed (const SwSolution *s, SwFinding *finding)
{
  const SwStrip *strip = &s->design->strip;
  double stretch_m = strip->tie_n_per_m > 0 ? strip->tension_n / strip->tie_n_per_m : 0;
  double most_m = strip->tie_length_m * (strip->tie_stretch_max - 1);

  add (finding, "stretch", SW_QUANTITY_SHORT_LENGTH, stretch_m);
  add (finding, "most", SW_QUANTITY_SHORT_LENGTH, most_m);
  /* a little over what is needed leaves room for the wind */
  remedy (finding,
          "strip.tie_length_m",
          ceil (1.25 * stretch_m / MAX (strip->tie_stretch_max - 1, 0.05) * 200) / 200);
  return strip->tie_length_m > 0 && strip->tie_n_per_m > 0 && strip->tie_stretch_max > 1 &&
         stretch_m > most_m;
}

static gboolean
strip_unmeasured (const SwSolution *s, SwFinding *finding)
{
  return !s->design->strip.measured;
}

static gboolean
nothing_gives (const SwSolution *s, SwFinding *finding)
{
  static const char *const paths[] = {
    NULL,           "shape.crown_height_m", "shape.ring_radius_m",
    "strip.pixels", "strip.pitch_m",        "strip.lead_m"
  };
  const char *path = paths[s->design->gives_way];

  return path != NULL && sw_design_holds (s->design, path);
}

/* As built */

static gboolean
ring_out_of_round (const SwSolution *s, SwFinding *finding)
{
  double least = INFINITY, most = 0;

  if (s->as_built == NULL)
    return FALSE;
  for (guint i = 0; i < s->as_built->marks->len; i++) {
    double radius_m = g_array_index (s->as_built->marks, SwAsBuiltMark, i).radius_m;
    least = MIN (least, radius_m);
    most = MAX (most, radius_m);
  }
  add (finding, "most", SW_QUANTITY_SHORT_LENGTH, most - least);
  return most - least > 0.03 * s->design->shape.ring_radius_m;
}

static gboolean
as_built_too_long (const SwSolution *s, SwFinding *finding)
{
  int worst = 0;
  double least = 0;

  for (guint i = 0; s->as_built != NULL && i < s->as_built->marks->len; i++) {
    double tail_m = g_array_index (s->as_built->marks, SwAsBuiltMark, i).tail_m;
    if (tail_m < least) {
      least = tail_m;
      worst = (int) i + 1;
    }
  }
  add (finding, "strip", SW_QUANTITY_COUNT, worst);
  add (finding, "over", SW_QUANTITY_SHORT_LENGTH, -least);
  return worst > 0 && s->cone.tail_m >= 0;
}

/* Site */

static double
fall_m (const SwSolution *s)
{
  return s->cone.overall_height_m + REACH_M;
}

static gboolean
clear_not_looked (const SwSolution *s, SwFinding *finding)
{
  add (finding, "fall", SW_QUANTITY_LENGTH, s->cone.overall_height_m);
  return !(s->design->site.clear_radius_m > 0);
}

static gboolean
clear_too_small (const SwSolution *s, SwFinding *finding)
{
  double clear_m = s->design->site.clear_radius_m;

  add (finding, "clear", SW_QUANTITY_LENGTH, clear_m);
  add (finding, "height", SW_QUANTITY_LENGTH, s->cone.overall_height_m);
  return clear_m > 0 && clear_m < s->cone.overall_height_m;
}

static gboolean
line_not_looked (const SwSolution *s, SwFinding *finding)
{
  add (finding, "fall", SW_QUANTITY_LENGTH, fall_m (s));
  return !(s->design->site.line_distance_m > 0);
}

static gboolean
line_too_near (const SwSolution *s, SwFinding *finding)
{
  add (finding, "line", SW_QUANTITY_LENGTH, s->design->site.line_distance_m);
  add (finding, "fall", SW_QUANTITY_LENGTH, fall_m (s));
  return s->design->site.line_distance_m > 0 && s->design->site.line_distance_m < fall_m (s);
}

static gboolean
digs (const SwDesign *design)
{
  return design->stand.foot == SW_FOOT_SOCKET || design->guys.count > 0 ||
         (design->stand.ring_held_by == SW_HELD_BY_GROUND && design->stand.ring_ties > 0);
}

static gboolean
dig_not_marked (const SwSolution *s, SwFinding *finding)
{
  return digs (s->design) && !s->design->site.dig_marked;
}

static gboolean
steep_ground (const SwSolution *s, SwFinding *finding)
{
  add (finding, "slope", SW_QUANTITY_ANGLE, s->design->site.slope_deg);
  return s->design->site.slope_deg > 3;
}

static gboolean
tall (const SwSolution *s, SwFinding *finding)
{
  add (finding, "height", SW_QUANTITY_LENGTH, s->cone.overall_height_m);
  return s->cone.overall_height_m > 6;
}

static gboolean
no_ice (const SwSolution *s, SwFinding *finding)
{
  return s->design->site.ice_mm > 0;
}

static gboolean
soil_unknown (const SwSolution *s, SwFinding *finding)
{
  return s->design->stand.foot == SW_FOOT_SOCKET && s->design->site.soil == SW_SOIL_UNKNOWN;
}

/* Stand and wind */

static double
best_limit (const SwSolution *s)
{
  return s->design->guys.count >= 3 ? s->support.gust_limit_guyed_mps
                                    : s->support.gust_limit_unguyed_mps;
}

static gboolean
gust_too_high (const SwSolution *s, SwFinding *finding)
{
  gboolean guyed = s->design->guys.count >= 3;
  SwLimitReason reason =
    guyed ? s->support.limit_reason_guyed : s->support.limit_reason_unguyed;

  add_text (finding, "what", sw_limit_labels[reason]);
  add (finding, "gust", SW_QUANTITY_SPEED, s->design->site.gust_mps);
  add (finding, "limit", SW_QUANTITY_SPEED, best_limit (s));
  return s->design->site.gust_mps > best_limit (s);
}

static gboolean
stakes_untested (const SwSolution *s, SwFinding *finding)
{
  double gust = s->design->site.gust_mps;

  add (finding, "gust", SW_QUANTITY_SPEED, gust);
  add (finding, "limit", SW_QUANTITY_SPEED, s->support.gust_limit_unguyed_mps);
  add (finding, "hold", SW_QUANTITY_FORCE, s->design->guys.stake_hold_n);
  return s->design->guys.count >= 3 && !s->design->guys.stakes_tested &&
         gust > s->support.gust_limit_unguyed_mps && gust <= best_limit (s);
}

static gboolean
one_guy_matters (const SwSolution *s, SwFinding *finding)
{
  double gust = s->design->site.gust_mps;

  add (finding, "limit", SW_QUANTITY_SPEED, s->support.gust_limit_unguyed_mps);
  return s->design->guys.count >= 3 && s->design->guys.stakes_tested &&
         gust > s->support.gust_limit_unguyed_mps && gust <= best_limit (s);
}

static gboolean
few_guys (const SwSolution *s, SwFinding *finding)
{
  add (finding, "count", SW_QUANTITY_COUNT, s->design->guys.count);
  remedy (finding, "guys.count", 3);
  return s->design->guys.count == 1 || s->design->guys.count == 2;
}

static gboolean
guys_too_high (const SwSolution *s, SwFinding *finding)
{
  add (finding, "guys", SW_QUANTITY_LENGTH, s->design->guys.height_m);
  add (finding, "crown", SW_QUANTITY_LENGTH, s->design->shape.crown_height_m);
  remedy (finding, "guys.height_m", floor (s->design->shape.crown_height_m * 95) / 100);
  return s->design->guys.count > 0 &&
         s->design->guys.height_m > s->design->shape.crown_height_m;
}

static gboolean
guys_inside_ring (const SwSolution *s, SwFinding *finding)
{
  add (finding, "guys", SW_QUANTITY_LENGTH, s->design->guys.radius_m);
  add (finding, "ring", SW_QUANTITY_LENGTH, s->design->shape.ring_radius_m);
  return s->design->guys.count > 0 &&
         s->design->guys.radius_m <= s->design->shape.ring_radius_m;
}

static gboolean
ties_untested (const SwSolution *s, SwFinding *finding)
{
  add (finding, "pull", SW_QUANTITY_FORCE, 2 * s->support.ring_tie_gust_n);
  return s->design->stand.ring_ties > 0 && !(s->design->stand.tie_hold_n > 0) &&
         isfinite (s->support.ring_tie_gust_n);
}

static gboolean
few_ties (const SwSolution *s, SwFinding *finding)
{
  add (finding, "ties", SW_QUANTITY_COUNT, s->design->stand.ring_ties);
  remedy (finding, "stand.ring_ties", 8);
  return s->design->stand.ring_ties < 3;
}

static gboolean
ring_lifts (const SwSolution *s, SwFinding *finding)
{
  add (finding, "lift", SW_QUANTITY_SHORT_LENGTH, s->support.ring_lift_m);
  add (finding, "ties", SW_QUANTITY_COUNT, s->design->stand.ring_ties);
  /* lift falls with the fourth power of the ties */
  double more = s->design->stand.ring_ties * sqrt (sqrt (s->support.ring_lift_m / 0.01));
  remedy (finding, "stand.ring_ties", isfinite (more) ? ceil (CLAMP (more, 3, 511)) + 1 : 8);
  return s->support.ring_lift_m > 0.010;
}

static gboolean
ring_bent_cold (const SwSolution *s, SwFinding *finding)
{
  const SwPipe *pipe = sw_catalogue_pipe (s->catalogue, s->design->stand.ring_pipe);

  if (pipe == NULL || pipe->material != SW_MATERIAL_PVC)
    return FALSE;
  add (finding, "least", SW_QUANTITY_LENGTH, 300 * pipe->od_m);
  add (finding, "radius", SW_QUANTITY_LENGTH, s->design->shape.ring_radius_m);
  return s->design->shape.ring_radius_m < 300 * pipe->od_m;
}

static gboolean
pulls_sideways (const SwSolution *s, SwFinding *finding)
{
  add (finding, "pull", SW_QUANTITY_FORCE, s->support.side_pull_n);
  return s->support.side_pull_n > 1 && s->design->stand.ring_held_by == SW_HELD_BY_GROUND;
}

static gboolean
sways (const SwSolution *s, SwFinding *finding)
{
  add (finding, "hz", SW_QUANTITY_FREQUENCY, s->support.first_hz);
  return s->support.first_hz < 1;
}

static gboolean
post_in_sleeve (const SwSolution *s, SwFinding *finding)
{
  const SwPipe *post = sw_catalogue_pipe (s->catalogue, s->design->stand.post);
  const SwPipe *sleeve = sw_catalogue_pipe (s->catalogue, s->design->stand.sleeve);

  if (post == NULL || sleeve == NULL)
    return FALSE;
  add (finding, "post", SW_QUANTITY_SHORT_LENGTH, post->od_m);
  add (finding, "sleeve", SW_QUANTITY_SHORT_LENGTH, sleeve->id_m);
  return post->od_m > sleeve->id_m - 0.0005;
}

/* Power */

static gboolean
collapse (const SwSolution *s, SwFinding *finding)
{
  return !s->power.feasible;
}

static gboolean
pixel_starved (const SwSolution *s, SwFinding *finding)
{
  add (finding, "volts", SW_QUANTITY_VOLTAGE, s->power.worst_pixel_v);
  add (finding, "least", SW_QUANTITY_VOLTAGE, s->design->power.min_pixel_v);
  add (finding, "pixel", SW_QUANTITY_COUNT, s->power.worst_pixel);
  if (s->design->power.feed != SW_FEED_BOTH)
    remedy (finding, "power.feed", SW_FEED_BOTH);
  return s->power.feasible && s->power.worst_pixel_v < s->design->power.min_pixel_v;
}

static gboolean
strip_wire_hot (const SwSolution *s, SwFinding *finding)
{
  add (finding, "current", SW_QUANTITY_CURRENT, s->power.most_feed_a);
  add (finding, "most", SW_QUANTITY_CURRENT, s->design->power.strip_wire_max_a);
  return s->power.feasible && s->power.most_feed_a > s->design->power.strip_wire_max_a;
}

static gboolean
white_frame (const SwSolution *s, SwFinding *finding)
{
  gboolean starves =
    !s->power.full_white_feasible || s->power.full_white_worst_v < s->design->power.min_pixel_v;
  gboolean overloads =
    s->power.feasible && s->power.full_white_w > s->power.supplies * s->design->power.supply_w;

  add (finding, "cap", SW_QUANTITY_SHARE, s->design->power.cap);
  return s->design->power.cap < 1 && (starves || overloads);
}

static gboolean
many_amps (const SwSolution *s, SwFinding *finding)
{
  add (finding, "current", SW_QUANTITY_CURRENT, s->power.tree_current_a);
  add (finding, "supplies", SW_QUANTITY_COUNT, s->power.supplies);
  return s->power.feasible && s->power.supplies > 1;
}

/* Data */

static gboolean
port_too_short (const SwSolution *s, SwFinding *finding)
{
  int needed = s->design->strip.pixels + s->design->data.skipped_pixels;

  add (finding, "pixels", SW_QUANTITY_COUNT, needed);
  add (finding, "most", SW_QUANTITY_COUNT, s->data.port_pixels_max);
  return s->data.strip_too_long;
}

static gboolean
star_port_too_short (const SwSolution *s, SwFinding *finding)
{
  add (finding,
       "pixels",
       SW_QUANTITY_COUNT,
       s->design->topper.pixels + s->design->data.skipped_pixels);
  add (finding, "most", SW_QUANTITY_COUNT, s->data.port_pixels_max);
  return s->data.star_too_long;
}

static gboolean
universe_overfull (const SwSolution *s, SwFinding *finding)
{
  add (finding,
       "channels",
       SW_QUANTITY_COUNT,
       s->design->data.pixels_per_universe * s->data.channels_per_pixel);
  remedy (finding, "data.pixels_per_universe", MAX (512 / s->data.channels_per_pixel, 1));
  return s->data.universe_overfull;
}

static gboolean
universe_beyond (const SwSolution *s, SwFinding *finding)
{
  add (finding,
       "last",
       SW_QUANTITY_COUNT,
       s->design->data.first_universe + s->data.universes - 1);
  if (s->data.universes <= 63999)
    remedy (finding, "data.first_universe", 63999 - s->data.universes + 1);
  return s->data.universe_beyond;
}

static gboolean
data_lead_long (const SwSolution *s, SwFinding *finding)
{
  add (finding, "lead", SW_QUANTITY_LENGTH, s->design->data.lead_m);
  return s->design->data.lead_m > 5;
}

/* Catalogue */

static gboolean
unknown (SwFinding *finding, gboolean known, const char *id)
{
  add_text (finding, "id", id);
  return !known;
}

static gboolean
unknown_post (const SwSolution *s, SwFinding *finding)
{
  const char *id = s->design->stand.post;
  return unknown (finding, sw_catalogue_pipe (s->catalogue, id) != NULL, id);
}

static gboolean
unknown_ring (const SwSolution *s, SwFinding *finding)
{
  const char *id = s->design->stand.ring_pipe;
  return unknown (finding, sw_catalogue_pipe (s->catalogue, id) != NULL, id);
}

static gboolean
unknown_sleeve (const SwSolution *s, SwFinding *finding)
{
  const char *id = s->design->stand.sleeve;
  return unknown (finding, sw_catalogue_pipe (s->catalogue, id) != NULL, id);
}

static gboolean
unknown_stub (const SwSolution *s, SwFinding *finding)
{
  const char *id = s->design->topper.stub;
  return unknown (finding, sw_catalogue_pipe (s->catalogue, id) != NULL, id);
}

static gboolean
unknown_hook (const SwSolution *s, SwFinding *finding)
{
  const char *id = s->design->crown.hook;
  return unknown (finding, sw_catalogue_hook (s->catalogue, id) != NULL, id);
}

static gboolean
unknown_line (const SwSolution *s, SwFinding *finding)
{
  const char *id = s->design->guys.line;
  return unknown (finding, sw_catalogue_line (s->catalogue, id) != NULL, id);
}

#define UNKNOWN                                                                                  \
  N_ ("“{id}” is not in the catalogue, so what depends on it is not worked out. Choose one " \
      "that is.")

const SwFindingRow sw_finding_rows[] = {
  { SW_LEVEL_STOP,
    "strip-too-long",
    "strip.pixels",
    N_ ("Strips are {over} too long for this shape. Take pixels off, or give the strips more "
        "room."),
    strip_too_long },
  { SW_LEVEL_STOP,
    "power-collapse",
    "power.feed",
    N_ ("Regulated pixels draw more than these wires can carry: the voltage collapses. Feed "
        "the strips at more places, or use thicker wire or a higher voltage."),
    collapse },
  { SW_LEVEL_STOP,
    "pixel-voltage-low",
    "power.feed",
    N_ ("Pixel {pixel} gets only {volts} of the {least} it needs. Feed the strip at both ends "
        "or more often, or shorten the feeder."),
    pixel_starved },
  { SW_LEVEL_STOP,
    "strip-wire-overloaded",
    "power.strip_wire_max_a",
    N_ ("{current} go through the wire of one strip, which carries {most}. Feed the strip at "
        "more places."),
    strip_wire_hot },
  { SW_LEVEL_STOP,
    "port-too-short",
    "strip.pixels",
    N_ ("One strip has {pixels} pixels, but a port drives {most} at this frame rate. Use a "
        "lower frame rate or shorter strips."),
    port_too_short },
  { SW_LEVEL_STOP,
    "star-port-too-short",
    "topper.pixels",
    N_ ("The star has {pixels} pixels, but a port drives {most} at this frame rate."),
    star_port_too_short },
  { SW_LEVEL_STOP,
    "universe-overfull",
    "data.pixels_per_universe",
    N_ ("A universe would need {channels} channels; it has 512."),
    universe_overfull },
  { SW_LEVEL_STOP,
    "universe-beyond",
    "data.first_universe",
    N_ ("The last universe would be {last}; 63999 is the highest there is."),
    universe_beyond },
  { SW_LEVEL_STOP,
    "gust-too-high",
    "site.gust_mps",
    N_ (
      "The tree is asked to stand a gust of {gust}, but at {limit} {what}. Strengthen that, or "
      "take the tree down earlier."),
    gust_too_high },
  { SW_LEVEL_STOP,
    "line-too-near",
    "site.line_distance_m",
    N_ ("An overhead line {line} away is within reach of the tree when it is raised or falls "
        "({fall}). Choose another place; ask the utility."),
    line_too_near },
  { SW_LEVEL_STOP,
    "post-not-in-sleeve",
    "stand.sleeve",
    N_ ("The post is {post} across and does not slide into a sleeve of {sleeve}."),
    post_in_sleeve },
  { SW_LEVEL_STOP, "unknown-post", "stand.post", UNKNOWN, unknown_post },
  { SW_LEVEL_STOP, "unknown-ring-pipe", "stand.ring_pipe", UNKNOWN, unknown_ring },
  { SW_LEVEL_STOP, "unknown-sleeve", "stand.sleeve", UNKNOWN, unknown_sleeve },
  { SW_LEVEL_STOP, "unknown-stub", "topper.stub", UNKNOWN, unknown_stub },
  { SW_LEVEL_STOP, "unknown-hook", "crown.hook", UNKNOWN, unknown_hook },
  { SW_LEVEL_STOP, "unknown-line", "guys.line", UNKNOWN, unknown_line },

  { SW_LEVEL_WARN,
    "clear-ground-not-looked",
    "site.clear_radius_m",
    N_ ("Not looked: whether {fall} round the post is free of what a falling tree could hit."),
    clear_not_looked },
  { SW_LEVEL_WARN,
    "overhead-line-not-looked",
    "site.line_distance_m",
    N_ ("Not looked: how far the nearest overhead line is. Keep every one at least {fall} from "
        "the post."),
    line_not_looked },
  { SW_LEVEL_WARN,
    "dig-not-marked",
    "site.dig_marked",
    N_ ("Buried services are not marked. Have them marked before a stake, peg or hole goes "
        "into the ground."),
    dig_not_marked },
  { SW_LEVEL_WARN,
    "clear-ground-small",
    "site.clear_radius_m",
    N_ ("Only {clear} round the post are free, but the tree is {height} high."),
    clear_too_small },
  { SW_LEVEL_WARN,
    "tall-tree",
    "shape.crown_height_m",
    N_ ("{height} is higher than these checks are made for. Have a licensed professional look "
        "at post, foot and guys."),
    tall },
  { SW_LEVEL_WARN,
    "stakes-untested",
    "guys.stakes_tested",
    N_ ("Only the guys carry a gust of {gust}; without them {limit}. Pull every stake to "
        "{hold} with a scale before you count on it."),
    stakes_untested },
  { SW_LEVEL_WARN,
    "one-guy-matters",
    "guys.count",
    N_ ("If one guy lets go, the tree stands {limit} only."),
    one_guy_matters },
  { SW_LEVEL_WARN,
    "too-few-guys",
    "guys.count",
    N_ ("{count} guys hold one way only and are not counted. Three or more hold the post."),
    few_guys },
  { SW_LEVEL_WARN,
    "guys-above-crown",
    "guys.height_m",
    N_ ("The guys meet the post at {guys}, above the crown at {crown}."),
    guys_too_high },
  { SW_LEVEL_WARN,
    "guys-inside-ring",
    "guys.radius_m",
    N_ ("Guy stakes {guys} from the post stand inside the ring ({ring}); the guys would rub on "
        "the strips."),
    guys_inside_ring },
  { SW_LEVEL_WARN,
    "too-few-ties",
    "stand.ring_ties",
    N_ ("{ties} ties do not hold a ring. Use three or more."),
    few_ties },
  { SW_LEVEL_WARN,
    "ring-lifts",
    "stand.ring_ties",
    N_ ("Between {ties} ties the strips lift the ring by {lift}. More ties or a stiffer pipe "
        "keep it level."),
    ring_lifts },
  { SW_LEVEL_WARN,
    "ring-ties-untested",
    "stand.tie_hold_n",
    N_ ("What a ring tie holds was not tested. Pull one to {pull} before you count on it."),
    ties_untested },
  { SW_LEVEL_WARN,
    "ring-bent-cold",
    "stand.ring_pipe",
    N_ ("A ring of {radius} radius is tighter than this pipe's makers allow cold ({least}). "
        "Form it warm on a jig, or expect it to creep and to spring open when cut."),
    ring_bent_cold },
  { SW_LEVEL_WARN,
    "pulls-sideways",
    "shape.coverage_deg",
    N_ ("A partial tree pulls its crown towards the strips with {pull}, all season. Put a guy "
        "on the other side."),
    pulls_sideways },
  { SW_LEVEL_WARN,
    "soil-unknown",
    "site.soil",
    N_ ("The soil is not known, so the socket is worked out for the weakest. No take-down gust "
        "is shown."),
    soil_unknown },
  { SW_LEVEL_WARN,
    "steep-ground",
    "site.slope_deg",
    N_ ("On ground with {slope} of slope a crossed foot does not stand level. Dig it in or "
        "choose a flatter place."),
    steep_ground },
  { SW_LEVEL_WARN,
    "ice-not-counted",
    "site.ice_mm",
    N_ ("Ice on the strips is not worked out: weight and wind grow with it. Take the strips "
        "down before freezing rain."),
    no_ice },
  { SW_LEVEL_WARN,
    "sways",
    "stand.post",
    N_ ("The tree sways slowly ({hz}); gusts can build up. Use a stiffer post or guys."),
    sways },
  { SW_LEVEL_WARN,
    "gap-short",
    "strip.tail_min_m",
    N_ ("The gap at the tie is {gap}, less than the {least} the elastic tie needs."),
    gap_short },
  { SW_LEVEL_WARN,
    "tie-too-long",
    "strip.tie_length_m",
    N_ ("A tie stretched to {length} does not fit the gap of {gap} at the tie."),
    tie_too_long },
  { SW_LEVEL_WARN,
    "tie-bottomed",
    "strip.tie_length_m",
    N_ ("In still air the elastic tie is stretched by {stretch}, but {most} is all it has: "
        "nothing is left for the wind. Use longer or stiffer ties."),
    tie_bottomed },
  { SW_LEVEL_WARN,
    "crown-crowded",
    "shape.crown_radius_m",
    N_ ("Strips are {spacing} apart at the crown but {width} wide: they overlap there."),
    crown_crowded },
  { SW_LEVEL_WARN,
    "crown-wider-than-ring",
    "shape.crown_radius_m",
    N_ ("The crown ({crown}) is wider than the ring ({ring})."),
    crown_wider },
  { SW_LEVEL_WARN,
    "flat-cone",
    "shape.ring_radius_m",
    N_ ("The strips lean by {lean}; they sag and pull hard on the crown."),
    flat_cone },
  { SW_LEVEL_WARN,
    "nothing-gives-way",
    "gives_way",
    N_ ("What should give way is locked, so the gap at the tie takes every difference."),
    nothing_gives },
  { SW_LEVEL_WARN,
    "white-frame",
    "power.cap",
    N_ ("Wires and supplies are sized for {cap}. A full white picture without that limit would "
        "starve pixels or overload supplies: set the limit where the lights are driven."),
    white_frame },
  { SW_LEVEL_WARN,
    "data-lead-long",
    "data.lead_m",
    N_ ("Data over {lead} of lead may arrive damaged. Keep leads short or put a booster in."),
    data_lead_long },
  { SW_LEVEL_WARN,
    "ring-out-of-round",
    "as_built.ring_points",
    N_ ("The finished ring is out of round by {most}. Use the marks for the ring as measured."),
    ring_out_of_round },
  { SW_LEVEL_WARN,
    "as-built-strip-too-long",
    "as_built.ring_points",
    N_ ("On the ring as measured strip {strip} is {over} too long."),
    as_built_too_long },

  { SW_LEVEL_TIP,
    "gap-long",
    "strip.pixels",
    N_ ("The gap at the tie is {gap}. {more} more pixels fit on each strip."),
    gap_long },
  { SW_LEVEL_TIP,
    "strip-not-measured",
    "strip.measured",
    N_ ("Make one strip first: weigh it, measure it, meter it, and type the numbers in before "
        "you order the rest."),
    strip_unmeasured },
  { SW_LEVEL_TIP,
    "many-supplies",
    "power.supply_w",
    N_ ("{current} need {supplies} supplies. Never join the + of two supplies; join only their "
        "0 V."),
    many_amps },
};
const guint sw_n_finding_rows = G_N_ELEMENTS (sw_finding_rows);
