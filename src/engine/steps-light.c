// SPDX-License-Identifier: GPL-3.0-or-later
/* steps-light.c: wiring and driver box. */
#include "engine/build-steps.h"

#include <glib/gi18n-lib.h>

const SwStepRow sw_steps_of_light[] = {
  { .subject = SW_STEP_WIRING,
    .id = "supply-boxes",
    .what = N_ ("Mount {supplies} supplies in {boxes} boxes, no more than two each. Holes only "
                "in the bottom. Mains side: by someone who is allowed to, on an outlet with "
                "a residual-current (ground-fault) device."),
    .check = N_ ("Without load each output reads between {volts_least} and {volts_most}, and "
                 "its + is at +."),
    .parts = "supply supply-box mains-lead",
    .tools = N_ ("screwdriver, step drill for the glands, meter"),
    .minutes = 45,
    .each = "supplies",
    .hands = 1 },
  { .subject = SW_STEP_WIRING,
    .id = "feeders",
    .what = N_ ("Cut {feeders} feeders of {feeder} and put a plug on each. The supply’s end "
                "goes in only when all is checked."),
    .check = N_ ("By the meter: + to + and − to − on every feeder, and open between the two."),
    .parts = "power-plug ?feeder-cable-*",
    .tools = N_ ("cable stripper, crimper, meter"),
    .minutes = 12,
    .each = "feeders",
    .hands = 1 },
  { .subject = SW_STEP_WIRING,
    .id = "splices",
    .what = N_ ("Where strips share a feeder, part it in a junction box, entry from below."),
    .check = N_ ("A tug on each wire does not move it in its clamp."),
    .parts = "power-splice",
    .tools = N_ ("cable stripper, screwdriver"),
    .minutes = 10,
    .each = "feeders",
    .hands = 1 },
  { .subject = SW_STEP_WIRING,
    .id = "fuses",
    .what =
      N_ ("Put a holder with the fuse of the sheet Power into the + of each feeder, as near "
          "the supply as it goes; where the sheet asks for it, one more at each strip."),
    .check = N_ ("Every fuse bears the number the sheet Power says, and none is bridged."),
    .parts = "fuse-* fuse-holder",
    .tools = N_ ("crimper"),
    .minutes = 6,
    .each = "feeders",
    .hands = 1 },
  { .subject = SW_STEP_BOX,
    .id = "data-leads",
    .what = N_ ("Make {ports} data leads of {data_lead} from the driver box to the first strip "
                "of each port, a plug on each."),
    .check = N_ ("By the meter: each wire from end to end, none to its neighbour."),
    .parts = "data-plug ?data-lead",
    .tools = N_ ("cable stripper, crimper, meter"),
    .minutes = 10,
    .each = "ports",
    .hands = 1 },
  { .subject = SW_STEP_BOX,
    .id = "data-jumpers",
    .what =
      N_ ("Make the data cables from strip to strip, as the sheet Data ports orders them."),
    .check = N_ ("Plugged out of order, a strip stays dark: try the first pair on the bench."),
    .parts = "data-jumper data-plug",
    .tools = N_ ("cable stripper, crimper, meter"),
    .minutes = 4,
    .each = "strips",
    .hands = 1 },
  { .subject = SW_STEP_BOX,
    .id = "driver-box",
    .what = N_ ("Set up the driver box by the sheet Driver box: {ports} ports, first universe "
                "{universe}, highest brightness allowed {cap}."),
    .check = N_ (
      "With one strip on port 1, the first pixel shows red, green and blue when asked for."),
    .parts = "driver-box-4|driver-box-16",
    .tools = N_ ("a computer, sheet Driver box"),
    .minutes = 60,
    .hands = 1 },
  { 0 },
};
