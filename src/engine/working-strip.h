// SPDX-License-Identifier: GPL-3.0-or-later
/* working-strip.h: a strip's ladder solved once more, for what the result alone does not keep.
 * For working*.c only.
 */
#pragma once
#include "engine/design.h"

/* From the nearest feed to the pixel with the lowest voltage. */
typedef struct {
  int feed, links;      /* pixel of that feed; pixels above it, below 0 under it */
  double feed_a;        /* through that feed; NAN where the strip can't be solved */
  double link_sum_a;    /* between neighbours, added up along the way */
  double strip_a;       /* of all feeds together */
  double most_feed_a;   /* of the feed that carries most */
  double other_feeds_a; /* of all but that one */
  double first_feed_a;  /* of the feed nearest to the ring */
  double lowest_v;
  double mean_v, mean_per_v; /* means over the pixels, of volts and of 1/volts */
} SwWay;

SwWay sw_way_at (const SwDesign *design, double share);

/* Wire from a pixel to the next. */
double sw_pixel_wire_m (const SwDesign *design);
