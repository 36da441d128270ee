// SPDX-License-Identifier: GPL-3.0-or-later
/* steps-raising.c: raising, tensioning and power on. */
#include "engine/build-steps.h"
#include "engine/raising.h"

#include <glib/gi18n-lib.h>

static gboolean
has_guys (const SwSolution *s)
{
  return s->design->guys.count > 0;
}

static int
people_with_bare_post (const SwSolution *s)
{
  SwRaising raising;

  sw_raising_init (&raising, s);
  return raising.bare.people;
}

static int
people_with_all (const SwSolution *s)
{
  SwRaising raising;

  sw_raising_init (&raising, s);
  return raising.whole.people;
}

static gboolean
goes_round (const SwSolution *s)
{
  return s->design->shape.coverage_deg >= 360;
}

static gboolean
is_partial (const SwSolution *s)
{
  return !goes_round (s);
}

static gboolean
tie_gives (const SwSolution *s)
{
  return s->design->strip.tie_n_per_m > 0;
}

static gboolean
is_solved (const SwSolution *s)
{
  return s->power.feasible;
}

const SwStepRow sw_steps_of_raising[] = {
  { .subject = SW_STEP_RAISING,
    .id = "raise-clear",
    .what =
      N_ ("Rope off the fall circle of {fall} round the post: nobody stays in it who does not "
          "lift, and no ladder ever leans on the post. Look up: no line in reach."),
    .check = N_ ("Paced off all round; less than {fall} somewhere, or any gust that sways the "
                 "treetops: not today."),
    .tools = N_ ("rope or tape, gloves, helmets"),
    .minutes = 20,
    .hands = 1 },
  { .subject = SW_STEP_RAISING,
    .id = "raise-rehearse",
    .what =
      N_ ("Rehearse with the bare post: no crown, no star, no strips. Each person knows the "
          "place, the words “up”, “hold” and “down”, and how it is laid down again."),
    .check = N_ ("Up and down twice without anyone changing hands in between."),
    .parts = "@post",
    .tools = N_ ("rope, block for the foot"),
    .minutes = 30,
    .hands_of = people_with_bare_post },
  { .subject = SW_STEP_RAISING,
    .id = "raise-up",
    .what =
      N_ ("Bolt crown and star on the post while it lies, hook the strips on, and raise all "
          "of it ({lift}) by the sheet Raising. Put the bolt through sleeve and post before "
          "anyone lets go."),
    .check = N_ ("The bolt is in with its nut on, and the post stands without a hand on it."),
    .parts = "@post crown-plate ?through-bolt ?star-frame ?cable-tie",
    .tools = N_ ("rope, block for the foot, wrenches"),
    .minutes = 45,
    .hands_of = people_with_all },
  { .subject = SW_STEP_RAISING,
    .id = "raise-guys",
    .applies = has_guys,
    .what = N_ ("Bring the {guys} guys to {guy_pull} each by their turnbuckles, opposite ones "
                "in turn, a little at a time; then lock the turnbuckles with wire."),
    .check =
      N_ ("Each guy reads {guy_pull} within a tenth, and the crown is plumb within {plumb}."),
    .parts = "turnbuckle @line",
    .tools = N_ ("scale or tension gauge, wrench, plumb line"),
    .minutes = 15,
    .each = "guys",
    .hands = 2 },
  { .subject = SW_STEP_RAISING,
    .id = "raise-plumb",
    .what = N_ ("Hang a plumb line from the crown, {crown} down, in front of the post and then "
                "beside it."),
    .check = N_ ("Crown plumb within {plumb} both ways. If not: shim the foot and measure "
                 "again before a strip is tied."),
    .tools = N_ ("plumb line, tape measure, shims"),
    .minutes = 20,
    .hands = 2 },
  { .subject = SW_STEP_TENSION,
    .id = "tension-opposite",
    .applies = goes_round,
    .what =
      N_ ("Tie the strips to the ring in opposite pairs, in the order of the sheet Raising, "
          "each at its mark: all at half pull first, then once more round to {pull}."),
    .check =
      N_ ("After each round the crown is plumb within {plumb}; no strip’s gap at the tie "
          "differs from {tail} by more than 10 mm (3/8″)."),
    .parts = "elastic-tie cable-tie",
    .tools = N_ ("luggage scale or tape measure, plumb line"),
    .minutes = 3,
    .each = "strips",
    .hands = 2 },
  { .subject = SW_STEP_TENSION,
    .id = "tension-mirrored",
    .applies = is_partial,
    .what = N_ ("Tie the strips to the ring in mirrored pairs, in the order of the sheet "
                "Raising: all at half pull first, then once more to {pull}. They all pull to "
                "one side: the crown leans a little towards them."),
    .check =
      N_ ("Left and right alike: the crown is not off to either side by more than {plumb}; no "
          "strip’s gap at the tie differs from {tail} by more than 10 mm (3/8″)."),
    .parts = "elastic-tie cable-tie",
    .tools = N_ ("luggage scale or tape measure, plumb line"),
    .minutes = 3,
    .each = "strips",
    .hands = 2 },
  { .subject = SW_STEP_TENSION,
    .id = "tension-stretch",
    .applies = tie_gives,
    .what = N_ ("Without a scale: a tie of {tie} is stretched by {stretch} when it pulls "
                "{pull}. Mark that length on a stick and hold it beside each tie."),
    .check =
      N_ ("Three ties picked at random, by scale: {pull} within a fifth. If not, your ties "
          "are not those of the design: go by the scale."),
    .parts = "elastic-tie",
    .tools = N_ ("stick, marker, luggage scale"),
    .minutes = 15,
    .hands = 1 },
  { .subject = SW_STEP_POWER,
    .id = "power-off-checks",
    .what = N_ ("Mains off and unplugged. Measure every feeder at the supply’s end and tick it "
                "on the sheet Power on."),
    .check = N_ ("No feeder reads a short from + to −, and every + goes to a +. One that does: "
                 "leave its fuse out and find out why."),
    .tools = N_ ("meter"),
    .minutes = 2,
    .each = "feeders",
    .hands = 1 },
  { .subject = SW_STEP_POWER,
    .id = "power-first-strip",
    .applies = is_solved,
    .what = N_ (
      "Only the first fuse in: strip 1 white at {cap}. Then the rest, one fuse after another."),
    .check =
      N_ ("One strip draws {strip_amps} within a tenth, and its pixel {worst_pixel} from the "
          "ring has {worst_volts} or more, never less than {least_volts}."),
    .parts = "?fuse-*",
    .tools = N_ ("meter, clamp meter for direct current"),
    .minutes = 30,
    .hands = 1 },
  { .subject = SW_STEP_POWER,
    .id = "power-all",
    .applies = is_solved,
    .what = N_ ("All white at {cap} for an hour; then the walk test of the sheet Driver box."),
    .check =
      N_ ("All supplies together give {tree_amps} or less; after the hour no plug, fuse or "
          "supply is too hot to keep a hand on."),
    .tools = N_ ("clamp meter for direct current"),
    .minutes = 75,
    .hands = 1 },
  { 0 },
};
