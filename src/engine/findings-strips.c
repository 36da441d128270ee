// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-strips.c: does a strip fit, and does its elastic tie work in the gap that is left.
 */
#include "engine/finding-table.h"
#include "engine/fit.h"

#include <glib/gi18n.h>
#include <math.h>

/* Our own choice: a gap longer by this is seen from the street; what the end of a strip and its
 * grommet make up; stretch of a tie, of that in still air, that leaves room for the wind.
 */
#define SPARE_MOST_M 0.25
#define CORD_MOST_M 0.10
#define TIE_ROOM 1.25

/* The value that makes the gap at the tie the least allowed; NAN where there is none. */
static double
fitting_value (const SwSolution *s, SwGives quantity)
{
  g_autoptr (SwDesign) fitted = sw_fit_tail (s->design, quantity, NULL);

  if (fitted == NULL)
    return NAN;
  if (quantity == SW_GIVES_PIXELS)
    return fitted->strip.pixels;
  return quantity == SW_GIVES_RING_RADIUS ? fitted->shape.ring_radius_m
                                          : fitted->shape.crown_height_m;
}

/* Says what fits, and chooses the sentence by it. */
static void
offer_fit (const SwSolution *s,
           SwFindingDraft *draft,
           const char *both,
           const char *pixels_only)
{
  double pixels = fitting_value (s, SW_GIVES_PIXELS);
  double radius_m = sw_round_up (fitting_value (s, SW_GIVES_RING_RADIUS), 0.01);

  sw_draft_remedy (draft, "strip.pixels", pixels);
  sw_draft_remedy (draft, "shape.ring_radius_m", radius_m);
  sw_draft_remedy (draft,
                   "shape.crown_height_m",
                   sw_round_up (fitting_value (s, SW_GIVES_CROWN_HEIGHT), 0.01));
  if (!isfinite (pixels))
    return;
  draft->finding.template_id = isfinite (radius_m) ? both : pixels_only;
  sw_draft_say (draft, "off", SW_QUANTITY_COUNT, s->design->strip.pixels - pixels);
  if (isfinite (radius_m))
    sw_draft_say (draft, "radius", SW_QUANTITY_LENGTH, radius_m);
}

static gboolean
strip_too_long (const SwSolution *s, SwFindingDraft *draft)
{
  if (!(s->cone.tail_m < 0))
    return FALSE;
  sw_draft_say (draft, "over", SW_QUANTITY_SHORT_LENGTH, -s->cone.tail_m);
  offer_fit (s,
             draft,
             N_ ("Strips are {over} too long for this shape. To leave room for the tie, take "
                 "pixels off each strip ({off}), or move the ring out to {radius}."),
             N_ ("Strips are {over} too long for this shape. To leave room for the tie, take "
                 "pixels off each strip ({off})."));
  return TRUE;
}

static gboolean
gap_short (const SwSolution *s, SwFindingDraft *draft)
{
  double least_m = s->design->strip.tail_min_m;

  if (s->cone.tail_m < 0 || s->cone.tail_m >= least_m - 1e-9)
    return FALSE;
  sw_draft_say (draft, "gap", SW_QUANTITY_SHORT_LENGTH, s->cone.tail_m);
  sw_draft_say (draft, "least", SW_QUANTITY_SHORT_LENGTH, least_m);
  offer_fit (
    s,
    draft,
    N_ ("The gap at the tie is {gap}, less than the {least} the elastic tie needs. Take "
        "pixels off each strip ({off}), or move the ring out to {radius}."),
    N_ ("The gap at the tie is {gap}, less than the {least} the elastic tie needs. Take "
        "pixels off each strip ({off})."));
  return TRUE;
}

static gboolean
gap_long (const SwSolution *s, SwFindingDraft *draft)
{
  double spare_m = s->cone.tail_m - s->design->strip.tail_min_m;
  double pixels = fitting_value (s, SW_GIVES_PIXELS);

  if (!(spare_m > SPARE_MOST_M && pixels > s->design->strip.pixels))
    return FALSE;
  sw_draft_say (draft, "gap", SW_QUANTITY_SHORT_LENGTH, s->cone.tail_m);
  sw_draft_say (draft, "more", SW_QUANTITY_COUNT, pixels - s->design->strip.pixels);
  sw_draft_remedy (draft, "strip.pixels", pixels);
  return TRUE;
}

/* How far still air stretches the tie, and how far it goes at all. */
static double
stretch_m (const SwStrip *strip)
{
  return strip->tie_n_per_m > 0 ? strip->tension_n / strip->tie_n_per_m : 0;
}

static double
stretch_most_m (const SwStrip *strip)
{
  return strip->tie_length_m * (strip->tie_stretch_max - 1);
}

static gboolean
has_elastic (const SwStrip *strip)
{
  return strip->tie_length_m > 0 && strip->tie_n_per_m > 0;
}

static gboolean
tie_too_long (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStrip *strip = &s->design->strip;
  double pulled_m = strip->tie_length_m + stretch_m (strip);

  if (!has_elastic (strip) || s->cone.tail_m < strip->tail_min_m - 1e-9 ||
      pulled_m <= s->cone.tail_m + 0.001)
    return FALSE;
  double length_m = sw_round_down (s->cone.tail_m - stretch_m (strip), 0.005);
  sw_draft_say (draft, "length", SW_QUANTITY_SHORT_LENGTH, pulled_m);
  sw_draft_say (draft, "pull", SW_QUANTITY_FORCE, strip->tension_n);
  sw_draft_say (draft, "gap", SW_QUANTITY_SHORT_LENGTH, s->cone.tail_m);
  if (length_m > 0)
    sw_draft_remedy (draft, "strip.tie_length_m", length_m);
  sw_draft_remedy (draft,
                   "strip.tie_n_per_m",
                   sw_round_up (strip->tension_n / (s->cone.tail_m - strip->tie_length_m), 5));
  return TRUE;
}

static gboolean
tie_bottomed (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStrip *strip = &s->design->strip;

  if (!has_elastic (strip) || !(stretch_m (strip) > stretch_most_m (strip)))
    return FALSE;
  double per_m = strip->tie_stretch_max - 1;
  sw_draft_say (draft, "stretch", SW_QUANTITY_SHORT_LENGTH, stretch_m (strip));
  sw_draft_say (draft, "most", SW_QUANTITY_SHORT_LENGTH, stretch_most_m (strip));
  sw_draft_remedy (draft,
                   "strip.tie_n_per_m",
                   sw_round_up (TIE_ROOM * strip->tension_n / stretch_most_m (strip), 5));
  sw_draft_remedy (draft,
                   "strip.tie_length_m",
                   sw_round_up (TIE_ROOM * stretch_m (strip) / per_m, 0.005));
  return TRUE;
}

static gboolean
tie_short (const SwSolution *s, SwFindingDraft *draft)
{
  const SwStrip *strip = &s->design->strip;
  double longest_m = strip->tie_length_m * strip->tie_stretch_max;
  double cord_m = s->cone.tail_m - longest_m;

  if (!has_elastic (strip) || !(cord_m > CORD_MOST_M))
    return FALSE;
  sw_draft_say (draft, "gap", SW_QUANTITY_SHORT_LENGTH, s->cone.tail_m);
  sw_draft_say (draft, "longest", SW_QUANTITY_SHORT_LENGTH, longest_m);
  sw_draft_say (draft, "cord", SW_QUANTITY_SHORT_LENGTH, cord_m);
  sw_draft_remedy (draft,
                   "strip.tie_length_m",
                   sw_round_down (s->cone.tail_m - stretch_m (strip), 0.005));
  return TRUE;
}

static gboolean
strip_unmeasured (const SwSolution *s, SwFindingDraft *draft)
{
  return !s->design->strip.measured;
}

/* The least of the values, each 1.1 times the last, with which no strip reaches the post in the
 * design's gust; NAN where none up to `most` does. `at` is a number of the copy. */
static double
least_clear (const SwSolution *s, gsize at, double most)
{
  g_autoptr (SwDesign) design = sw_design_copy (s->design);
  double *number = (double *) (gpointer) ((char *) design + at);

  for (double value = *number * 1.1; value <= most && value > 0; value *= 1.1) {
    SwCone cone;
    *number = sw_round_up (value, value < 2 ? 0.01 : 1);
    sw_cone_init (&cone, design);
    if (!sw_strip_bow_hits_post (design, &cone, s->post_od_m))
      return *number;
  }
  return NAN;
}

#define CLEAR(field, most) least_clear (s, G_STRUCT_OFFSET (SwDesign, field), most)

static gboolean
strip_hits_post (const SwSolution *s, SwFindingDraft *draft)
{
  if (!(s->bow.strip_post_gap_m <= 0))
    return FALSE;
  sw_draft_say (draft, "gust", SW_QUANTITY_SPEED, s->design->site.gust_mps);
  sw_draft_say (draft, "bow", SW_QUANTITY_SHORT_LENGTH, s->bow.strip_bow_m);
  sw_draft_say (draft, "touch", SW_QUANTITY_SPEED, s->bow.post_touch_mps);
  sw_draft_remedy (draft, "strip.tension_n", CLEAR (strip.tension_n, 60));
  sw_draft_remedy (draft, "strip.tie_n_per_m", CLEAR (strip.tie_n_per_m, 1000));
  sw_draft_remedy (draft, "shape.crown_radius_m", CLEAR (shape.crown_radius_m, 0.5));
  return TRUE;
}

#undef CLEAR

const SwFindingRow sw_findings_of_strips[] = {
  { SW_LEVEL_STOP,
    "strip-too-long",
    "strip.pixels",
    N_ ("Strips are {over} too long for this shape. Give them more room, or shorten the gap at "
        "the hook."),
    strip_too_long },
  { SW_LEVEL_WARN,
    "gap-short",
    "strip.tail_min_m",
    N_ ("The gap at the tie is {gap}, less than the {least} the elastic tie needs. Give the "
        "strips more room, or shorten the gap at the hook."),
    gap_short },
  { SW_LEVEL_WARN,
    "tie-too-long",
    "strip.tie_length_m",
    N_ ("To pull with {pull} the elastic tie is {length} long, but the gap at the tie is only "
        "{gap}: the strips hang slacker than asked. Use shorter or stiffer ties."),
    tie_too_long },
  { SW_LEVEL_WARN,
    "tie-bottomed",
    "strip.tie_length_m",
    N_ ("In still air the elastic tie is stretched by {stretch}, but {most} is all it has: "
        "nothing is left for the wind. Use stiffer or longer ties."),
    tie_bottomed },
  { SW_LEVEL_TIP,
    "tie-short",
    "strip.tie_length_m",
    N_ ("The gap at the tie is {gap}, but the elastic tie reaches {longest} at its longest. "
        "Leave "
        "the strips {cord} longer than their pixels, tie them with cord, or use longer ties."),
    tie_short },
  { SW_LEVEL_TIP,
    "gap-long",
    "strip.pixels",
    N_ ("The gap at the tie is {gap}: more pixels fit on each strip ({more})."),
    gap_long },
  { SW_LEVEL_TIP,
    "strip-not-measured",
    "strip.measured",
    N_ ("Make one strip first: weigh it, measure it, meter it, and type the numbers in before "
        "you order the rest."),
    strip_unmeasured },
  { SW_LEVEL_WARN,
    "strip-hits-post",
    "strip.tension_n",
    N_ ("In a gust of {gust} the wind bows a strip by {bow}, as far as the post; it first "
        "touches "
        "at {touch}. Tie the strips tighter or on stiffer ties, or hang them further out."),
    strip_hits_post },
  { 0 }
};
