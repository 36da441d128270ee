// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-as-built.c: the finished ring and crown against the drawing. */
#include "engine/finding-table.h"

#include <glib/gi18n.h>
#include <math.h>

/* Common practice, no source: what can be seen, and what a jig should hold. */
#define ROUND_MOST 0.03 /* of the ring radius, widest less narrowest */
#define SIZE_MOST 0.01  /* of the length round the ring */
#define PLUMB_MOST 0.01 /* of the crown height */

static const SwAsBuiltMark *
mark_at (const SwSolution *s, guint i)
{
  return &g_array_index (s->as_built->marks, SwAsBuiltMark, i);
}

static gboolean
ring_out_of_round (const SwSolution *s, SwFindingDraft *draft)
{
  double least_m = INFINITY, most_m = 0;

  for (guint i = 0; s->as_built != NULL && i < s->as_built->marks->len; i++) {
    least_m = MIN (least_m, mark_at (s, i)->radius_m);
    most_m = MAX (most_m, mark_at (s, i)->radius_m);
  }
  sw_draft_say (draft, "off", SW_QUANTITY_SHORT_LENGTH, most_m - least_m);
  return most_m - least_m > ROUND_MOST * s->design->shape.ring_radius_m;
}

static gboolean
ring_size_differs (const SwSolution *s, SwFindingDraft *draft)
{
  double drawn_m = 2 * G_PI * (s->design->shape.ring_radius_m + s->ring_od_m / 2);

  if (s->as_built == NULL || fabs (s->as_built->perimeter_m - drawn_m) <= SIZE_MOST * drawn_m)
    return FALSE;
  sw_draft_say (draft, "measured", SW_QUANTITY_LENGTH, s->as_built->perimeter_m);
  sw_draft_say (draft, "drawn", SW_QUANTITY_LENGTH, drawn_m);
  return TRUE;
}

static gboolean
crown_out_of_plumb (const SwSolution *s, SwFindingDraft *draft)
{
  const SwMeasured *measured = &s->design->as_built;
  double off_m = hypot (measured->crown_offset_x_m, measured->crown_offset_y_m);

  sw_draft_say (draft, "off", SW_QUANTITY_SHORT_LENGTH, off_m);
  return off_m > PLUMB_MOST * s->design->shape.crown_height_m;
}

/* Only where the design's own strips fit: otherwise that is said already. */
static gboolean
strip_too_long_as_built (const SwSolution *s, SwFindingDraft *draft)
{
  double least_m = 0;
  guint worst = 0;

  for (guint i = 0; s->as_built != NULL && i < s->as_built->marks->len; i++) {
    if (mark_at (s, i)->tail_m < least_m) {
      least_m = mark_at (s, i)->tail_m;
      worst = i + 1;
    }
  }
  if (worst == 0 || s->cone.tail_m < 0)
    return FALSE;
  sw_draft_say (draft, "strip", SW_QUANTITY_COUNT, worst);
  sw_draft_say (draft, "over", SW_QUANTITY_SHORT_LENGTH, -least_m);
  sw_draft_remedy (draft,
                   "strip.pixels",
                   s->design->strip.pixels - ceil (-least_m / s->design->strip.pitch_m - 1e-9));
  return TRUE;
}

const SwFindingRow sw_findings_as_built[] = {
  { SW_LEVEL_STOP,
    "as-built-strip-too-long",
    "as_built.ring_points",
    N_ ("As measured, strip {strip} is {over} too long for its place. Set the ring right, or "
        "take pixels off."),
    strip_too_long_as_built },
  { SW_LEVEL_WARN,
    "ring-out-of-round",
    "as_built.ring_points",
    N_ ("The finished ring is out of round by {off}. Use the tape and the marks of the ring as "
        "measured."),
    ring_out_of_round },
  { SW_LEVEL_WARN,
    "crown-out-of-plumb",
    "as_built.crown_offset_x_m",
    N_ (
      "The crown stands {off} out of plumb: strips on one side hang slack, and the post leans. "
      "Plumb it before you hang the strips."),
    crown_out_of_plumb },
  { SW_LEVEL_TIP,
    "ring-size-differs",
    "as_built.ring_length_m",
    N_ ("The finished ring measures {measured} round; drawn are {drawn}. Use the tape of the "
        "ring "
        "as measured."),
    ring_size_differs },
  { 0 }
};
