// SPDX-License-Identifier: GPL-3.0-or-later
/* steps-strips.c: strips and star. */
#include "engine/build-steps.h"

#include <glib/gi18n-lib.h>

static gboolean
runs_both_ways (const SwSolution *s)
{
  return s->design->data.path == SW_PATH_UP_DOWN;
}

static gboolean
star_is_dark (const SwSolution *s)
{
  return s->topper_pixels->len == 0;
}

static gboolean
runs_one_way (const SwSolution *s)
{
  return !runs_both_ways (s);
}

const SwStepRow sw_steps_of_strips[] = {
  { .subject = SW_STEP_STRIPS,
    .id = "strip-first",
    .what =
      N_ ("Make one strip before the rest: cut it, set its grommets and pixels, hang it up "
          "with the pull it will have ({pull}) and measure it. Sheet: One strip first."),
    .check =
      N_ ("Hook to last pixel within 3 mm (1/8″) of the gap at the hook and the lit length "
          "together ({lead} and {lit}). If not, enter what you measured and print again."),
    .parts = "strip-material strip-pixel grommet|@grommet elastic-tie",
    .tools = N_ ("tape measure, shears, grommet setter, luggage scale"),
    .minutes = 60,
    .hands = 1 },
  { .subject = SW_STEP_STRIPS,
    .id = "strip-cut",
    .what = N_ ("Cut {made} strips of {cut} ({spare} of them to spare), hems counted in."),
    .check = N_ ("Laid side by side, no two differ by more than 3 mm (1/8″)."),
    .parts = "strip-material",
    .tools = N_ ("tape measure, shears, marker"),
    .minutes = 3,
    .each = "made",
    .hands = 2 },
  { .subject = SW_STEP_STRIPS,
    .id = "strip-grommets",
    .what =
      N_ ("Fold a hem at both ends and set a grommet through both layers, in the middle of "
          "the width. Punch with the setter’s own punch."),
    .check = N_ ("Pulled by hand with ten times its pull, no grommet turns or tears."),
    .parts = "strip-material grommet|@grommet",
    .tools = N_ ("grommet setter and punch, hammer"),
    .minutes = 4,
    .each = "made",
    .hands = 1 },
  { .subject = SW_STEP_STRIPS,
    .id = "strip-pixels-one-way",
    .applies = runs_one_way,
    .what = N_ ("Put {pixels} pixels into each of the {made} strips, {pitch} apart, the first "
                "{lead} from the hook. Data arrows all point the same way: sheet Strips."),
    .check = N_ ("Count them: {pixels}. First to last pixel is {lit}, within 3 mm (1/8″)."),
    .parts = "strip-material strip-pixel",
    .tools = N_ ("tape measure"),
    .minutes = 25,
    .each = "made",
    .hands = 1 },
  { .subject = SW_STEP_STRIPS,
    .id = "strip-pixels-both-ways",
    .applies = runs_both_ways,
    .what =
      N_ ("Put {pixels} pixels into each strip, {pitch} apart, the highest {lead} from the "
          "hook. Two kinds: in {up} strips the data arrows point up to the crown, in {down} "
          "down to the ring. Spare strips: one of each kind. Sheet Strips."),
    .check =
      N_ ("{up} with arrows up and {down} with arrows down, each labelled at both ends."),
    .parts = "strip-material strip-pixel",
    .tools = N_ ("tape measure"),
    .minutes = 25,
    .each = "made",
    .hands = 1 },
  { .subject = SW_STEP_STRIPS,
    .id = "strip-labels",
    .what =
      N_ ("Number every strip at both ends, 1 to {strips}; at the same time label feeders "
          "and ports."),
    .check = N_ ("Both ends of each strip show the same number, and no number is missing."),
    .parts = "label",
    .tools = N_ ("sheet Labels, or a marker that lasts outdoors"),
    .minutes = 1,
    .each = "strips",
    .hands = 1 },
  { .subject = SW_STEP_STRIPS,
    .id = "strip-bench",
    .what =
      N_ ("Light each strip on the bench for an hour at {cap} white, spares too, and write "
          "down what it reads. Sheet: Bench test log."),
    .check = N_ ("After the hour every pixel is lit in its colour, and the strip draws "
                 "{strip_amps} or less."),
    .parts = "strip-pixel ?supply",
    .tools = N_ ("meter that reads volts and amps"),
    .minutes = 5,
    .each = "made",
    .hands = 1 },
  { 0 },
};

const SwStepRow sw_steps_of_star[] = {
  { .subject = SW_STEP_STAR,
    .id = "star-pixels",
    .what =
      N_ ("Put {star_pixels} pixels into the star’s frame in the order of the sheet Top view: "
          "data begins where its lead comes up from the crown."),
    .check =
      N_ ("All lit on the bench for an hour; frame and pixels weigh {star_mass} or less."),
    .parts = "star-frame star-pixel",
    .tools = N_ ("drill, bit of the pixel’s own hole size, scale"),
    .minutes = 1,
    .each = "star_pixels",
    .hands = 1 },
  { .subject = SW_STEP_STAR,
    .id = "star-frame",
    .applies = star_is_dark,
    .what = N_ ("No pixels go on the star: paint or seal its frame, and let it dry."),
    .check = N_ ("The star weighs {star_mass} or less."),
    .parts = "star-frame",
    .tools = N_ ("scale"),
    .minutes = 60,
    .hands = 1,
    .wait_days = 1 },
  { .subject = SW_STEP_STAR,
    .id = "star-stub",
    .what =
      N_ ("Cut the stub {stub} long, fit it to the star with its two U-bolts, and its lower "
          "end into flange and fittings (sheet How it fits together). Lock every joint "
          "that would turn."),
    .check = N_ ("Held by the stub, the star does not turn by hand."),
    .parts = "star-frame ?@stub ?star-clamp|@u-bolt ?star-flange|@star-flange ?@reducer-1 "
             "?@reducer-2 ?@stub-connector ?lock-screw",
    .tools = N_ ("pipe cutter, file, wrenches, 3.3 mm (no. 30) bit for the locking screws"),
    .minutes = 45,
    .hands = 1 },
  { .subject = SW_STEP_STAR,
    .id = "star-tether",
    .what =
      N_ ("Tie the tether to star and post, slack: it catches the star if its clamps let go."),
    .check =
      N_ ("Slack enough that it carries nothing, too short for the star to reach the strips."),
    .parts = "star-tether",
    .tools = NULL,
    .minutes = 10,
    .hands = 1 },
  { 0 },
};
