// SPDX-License-Identifier: GPL-3.0-or-later
/* steps-stand.c: post and foot, ring, crown and guys. */
#include "engine/build-steps.h"

#include <glib/gi18n-lib.h>

static gboolean
on_slabs (const SwSolution *s)
{
  return s->design->stand.foot == SW_FOOT_SLABS;
}

static gboolean
in_bucket (const SwSolution *s)
{
  return s->design->stand.foot == SW_FOOT_BUCKET;
}

static gboolean
in_ground (const SwSolution *s)
{
  return s->design->stand.foot == SW_FOOT_SOCKET;
}

static gboolean
on_boards (const SwSolution *s)
{
  return !in_ground (s);
}

static gboolean
has_joints (const SwSolution *s)
{
  SwPostJoints joints;

  sw_post_joints_init (&joints, s->heights.post_m, s->design->stand.post_stock_m);
  return joints.pieces > 1;
}

static gboolean
has_no_sleeve (const SwSolution *s)
{
  return !(s->heights.sleeve_m > 0);
}

const SwStepRow sw_steps_of_foot[] = {
  { .subject = SW_STEP_FOOT,
    .id = "foot-lap",
    .applies = on_boards,
    .what =
      N_ ("Saw the two boards to length. Half lap in the middle of each: first cut {lap_start} "
          "from the end, {lap_width} wide as the other board measures, {lap_depth} deep. Try "
          "it dry, then glue. Sheet Foot."),
    .check =
      N_ ("Both boards lie flat; the diagonals between their ends differ by less than 5 mm "
          "(3/16″)."),
    .parts = "@board wood-glue",
    .tools = N_ ("saw, chisel, square, clamps"),
    .minutes = 90,
    .hands = 1,
    .wait_days = 1 },
  { .subject = SW_STEP_FOOT,
    .id = "foot-sleeve",
    .applies = on_boards,
    .what =
      N_ ("Cut the sleeve {sleeve} long. Stand its flange on the middle of the lap, mark the "
          "four bolts {bolt_off} off both middle lines, drill ({foot_hole} for this flange), "
          "and bolt through. Drill a drain hole of 8 mm (5/16″) at the sleeve’s foot."),
    .check = N_ ("A level against the sleeve shows plumb on two faces, boards lying flat."),
    .parts = "@sleeve carriage-bolt ?sleeve-flange|@foot-flange ?@foot-connector",
    .tools = N_ ("pipe cutter, drill and bits, wrenches, level"),
    .minutes = 60,
    .hands = 1 },
  { .subject = SW_STEP_FOOT,
    .id = "foot-bolts",
    .applies = has_no_sleeve,
    .what = N_ ("Bolt the half lap through, {bolt_off} off both middle lines."),
    .check = N_ ("The lap does not open when one arm is lifted."),
    .parts = "carriage-bolt ?sleeve-flange|@foot-flange",
    .tools = N_ ("drill and bits, wrenches"),
    .minutes = 30,
    .hands = 1 },
  { .subject = SW_STEP_FOOT,
    .id = "foot-bucket",
    .applies = in_bucket,
    .what =
      N_ ("Bolt the bucket to the arms, hold the sleeve plumb in its middle and fill with "
          "{bags} bags of mixed concrete ({ballast} in all). No load for {cure} days, longer "
          "in the cold."),
    .check =
      N_ ("Sleeve still plumb on two faces after the first hour, while it can be moved."),
    .parts = "bucket ?concrete-bag carriage-bolt",
    .tools = N_ ("mixing tub, hoe, level, gloves and eye protection"),
    .minutes = 90,
    .hands = 2,
    .wait_days = SW_BAG_CURE_DAYS },
  { .subject = SW_STEP_FOOT,
    .id = "foot-hole",
    .applies = in_ground,
    .what =
      N_ ("Buried lines marked first. Dig the hole {hole_across} across and {hole_deep} deep, "
          "and put {gravel} of gravel in it."),
    .check =
      N_ ("Measured from a straight edge across it the hole is no shallower than said, and "
          "its sides are the ground as it grew, not filled."),
    .parts = "drain-gravel",
    .tools = N_ ("post-hole digger, bar, tape measure"),
    .minutes = 120,
    .hands = 2 },
  { .subject = SW_STEP_FOOT,
    .id = "foot-socket",
    .applies = in_ground,
    .what =
      N_ ("Cut the sleeve {sleeve} long, put a bolt across it {sleeve_depth} below its top "
          "for the post to stand on, set it on the gravel plumb, and fill with {bags} bags of "
          "mixed concrete. No load for {cure} days, longer in the cold."),
    .check =
      N_ ("With the post stood in it for a moment, plumb on two faces; else move it before "
          "the concrete sets."),
    .parts = "@sleeve through-bolt ?concrete-bag",
    .tools = N_ ("mixing tub, hoe, level, drill, gloves and eye protection"),
    .minutes = 120,
    .hands = 2,
    .wait_days = SW_BAG_CURE_DAYS },
  { .subject = SW_STEP_FOOT,
    .id = "post-cut",
    .what =
      N_ ("Cut the post {post} long and take off the burr. Its upper end goes into flange or "
          "connector; lock it so that it cannot turn."),
    .check =
      N_ ("Measured twice from the same end: within 2 mm (1/16″). It slides into its sleeve "
          "by hand."),
    .parts = "@post crown-flange|@post-flange ?@post-connector ?lock-screw",
    .tools = N_ ("pipe cutter or fine saw, file, 3.3 mm (no. 30) bit for the locking screw"),
    .minutes = 45,
    .hands = 2 },
  { .subject = SW_STEP_FOOT,
    .id = "post-coupling",
    .what =
      N_ ("Join the post’s lengths with couplings, two bolts through each. Sheet How it fits "
          "together says where."),
    .check = N_ ("Sighted along its length the post is straight within 10 mm (3/8″)."),
    .parts = "post-coupling through-bolt",
    .tools = N_ ("drill, bit of the bolt’s own diameter, wrenches"),
    .minutes = 45,
    .hands = 2 },
  { .subject = SW_STEP_FOOT,
    .id = "post-tube",
    .applies = has_joints,
    .what = N_ ("Cut the tube that slides over the post’s joint to length, centre it on the "
                "joint and bolt it through "
                "twice. Sheet How it fits together says where."),
    .check = N_ ("Sighted along its length the post is straight within 10 mm (3/8″)."),
    .parts = "@joint-tube through-bolt",
    .tools = N_ ("drill, bit of the bolt’s own diameter, wrenches"),
    .minutes = 45,
    .hands = 2 },
  { .subject = SW_STEP_FOOT,
    .id = "post-bolt",
    .what =
      N_ ("Stand the bare post in the sleeve once and drill post and sleeve together for the "
          "through-bolt, with a bit of the bolt’s own diameter. Mark which face is the front."),
    .check =
      N_ ("The bolt goes in by hand; the post turns by no more than 2 mm (1/16″) at its face."),
    .parts = "@post @sleeve through-bolt",
    .tools = N_ ("drill, bit of the bolt’s own diameter, level"),
    .minutes = 30,
    .hands = 2 },
  { .subject = SW_STEP_FOOT,
    .id = "foot-slabs",
    .applies = on_slabs,
    .what =
      N_ ("Level the ground, lay the boards, and pile {slabs_each} slabs on each arm ({slabs} "
          "in all, {ballast}), the middle of each pile {slab_off} from the post. Strap each "
          "pile to its arm. They go on after the post is up."),
    .check = N_ ("Level on both boards within 5 mm (3/16″) from end to end; no board rocks."),
    .parts = "slab",
    .tools = N_ ("level, spade, gloves"),
    .minutes = 8,
    .each = "slabs",
    .hands = 2 },
  { .subject = SW_STEP_FOOT,
    .id = "foot-cap",
    .what = N_ ("Cap the sleeve whenever no post stands in it."),
    .check = N_ ("No water stands in the sleeve the morning after rain."),
    .parts = "sleeve-plug",
    .minutes = 5,
    .hands = 1 },
  { 0 },
};

static gboolean
is_full (const SwSolution *s)
{
  return s->design->stand.ring_span == SW_SPAN_FULL;
}

static gboolean
is_arc (const SwSolution *s)
{
  return !is_full (s);
}

static gboolean
held_by_foot (const SwSolution *s)
{
  return s->design->stand.ring_held_by == SW_HELD_BY_FOOT;
}

const SwStepRow sw_steps_of_ring[] = {
  { .subject = SW_STEP_RING,
    .id = "ring-bend-full",
    .applies = is_full,
    .what = N_ (
      "Cut {ring_pieces} pieces of {ring_piece} and bend each on the jig of the sheet Ring: "
      "a whole ring of {ring_radius} to the middle of the pipe."),
    .check = N_ (
      "Pieces laid end to end on the floor close, and two ways across differ by less than 20 "
      "mm (3/4″)."),
    .parts = "@ring-pipe",
    .tools = N_ ("saw, jig, tape measure; PVC: heat, gloves, fresh air"),
    .minutes = 30,
    .each = "ring_pieces",
    .hands = 2 },
  { .subject = SW_STEP_RING,
    .id = "ring-bend-arc",
    .applies = is_arc,
    .what =
      N_ ("Cut {ring_pieces} pieces (about {ring_piece} each; sheet Ring has each length) and "
          "bend them on the jig: an arc over "
          "{coverage}, {ring_radius} to the middle of the pipe. Its ends stay open: cap them."),
    .check =
      N_ ("The chord between the two ends is what the sheet Ring says, within 10 mm (3/8″)."),
    .parts = "@ring-pipe",
    .tools = N_ ("saw, jig, tape measure; PVC: heat, gloves, fresh air"),
    .minutes = 30,
    .each = "ring_pieces",
    .hands = 2 },
  { .subject = SW_STEP_RING,
    .id = "ring-join",
    .what =
      N_ ("Join the pieces with couplings, two screws through each coupling that comes apart. "
          "Joints that stay are glued where the pipe is PVC."),
    .check = N_ ("No joint pulls apart by hand, and none lies on a strip’s mark."),
    .parts = "ring-coupling ring-screw ?pvc-cement",
    .tools = N_ ("drill, 3.3 mm (no. 30) bit, screwdriver"),
    .minutes = 10,
    .each = "ring_joints",
    .hands = 1 },
  { .subject = SW_STEP_RING,
    .id = "ring-cement",
    .what = N_ ("Let glued joints of PVC cure as the can says for the day’s warmth before the "
                "ring is bent or lifted."),
    .check = N_ ("A glued joint does not turn by hand."),
    .parts = "pvc-cement",
    .tools = N_ ("gloves, fresh air"),
    .minutes = 15,
    .hands = 1,
    .wait_days = 1 },
  { .subject = SW_STEP_RING,
    .id = "ring-spokes",
    .what =
      N_ ("Set {spokes} spokes into their tees and clamp each to the hub with two U-bolts."),
    .check = N_ ("Hub’s middle to the ring’s outer face is {ring_face} along each spoke, "
                 "within 5 mm (3/16″)."),
    .parts = "ring-tee spoke-hub spoke-clamp @ring-pipe ?pvc-cement",
    .tools = N_ ("drill, wrenches, tape measure"),
    .minutes = 20,
    .each = "spokes",
    .hands = 2 },
  { .subject = SW_STEP_RING,
    .id = "ring-marks",
    .what = N_ ("Wrap the ring tape round the outside and mark all {strips} strips with their "
                "numbers. Check bar first."),
    .check = N_ ("Straight across from mark 1 to mark 2 is the sheet’s chord within 1 mm "
                 "(1/32″), and the last "
                 "mark falls where its running length says within 3 mm (1/8″)."),
    .parts = "@ring-pipe",
    .tools = N_ ("ring-tape.pdf printed at 100 %, tape, marker"),
    .minutes = 60,
    .hands = 1 },
  { .subject = SW_STEP_RING,
    .id = "ring-ground",
    .what = N_ ("Hold the ring {ring_height} above the ground with {ring_ties} straps to pegs "
                "driven at the places of "
                "the sheet Ring. Buried lines marked before a peg is driven."),
    .check =
      N_ ("Each peg, pulled straight up with a scale, holds {tie_hold} and does not move."),
    .parts = "ring-strap ring-peg",
    .tools = N_ ("hammer, luggage scale, level"),
    .minutes = 8,
    .each = "ring_ties",
    .hands = 1 },
  { .subject = SW_STEP_RING,
    .id = "ring-foot",
    .applies = held_by_foot,
    .what =
      N_ ("Strap the ring to the foot at {ring_ties} places, {ring_height} above the ground."),
    .check = N_ ("The ring lies level within 10 mm (3/8″) all round."),
    .parts = "ring-strap",
    .tools = N_ ("level"),
    .minutes = 8,
    .each = "ring_ties",
    .hands = 1 },
  { 0 },
};

const SwStepRow sw_steps_of_crown[] = {
  { .subject = SW_STEP_CROWN,
    .id = "crown-plate",
    .what =
      N_ ("Print crown-plate.pdf at 100 %, measure its bar, stick it on the plate, punch every "
          "cross and drill: {strips} holes of {hook_hole} for the hooks, {flange_hole} for the "
          "flange."),
    .check = N_ ("Two holes opposite each other are as far apart as the sheet Crown holes "
                 "says, within 1 mm (1/32″); "
                 "strip 1 is where the template says, top side up."),
    .parts = "crown-plate",
    .tools = N_ ("centre punch, drill, bits, deburring tool"),
    .minutes = 3,
    .each = "strips",
    .hands = 1 },
  { .subject = SW_STEP_CROWN,
    .id = "crown-hooks",
    .what = N_ ("Put a hook through each of the {strips} holes, a nut and a washer above and "
                "below the plate. Number "
                "each on the plate’s edge."),
    .check = N_ ("All hooks point outwards and none turns by hand."),
    .parts = "@hook nut-* washer-*",
    .tools = N_ ("two wrenches, marker"),
    .minutes = 2,
    .each = "strips",
    .hands = 1 },
  { .subject = SW_STEP_CROWN,
    .id = "crown-bolt",
    .what = N_ ("Bolt plate and flange together, with what carries the star on the same side "
                "up as on the sheet How it fits together."),
    .check = N_ ("With the post lying on two trestles the plate is square to it: its edge runs "
                 "out by less than 5 mm (3/16″) "
                 "in a turn."),
    .parts = "crown-plate flange-bolt ?crown-flange|@post-flange ?star-flange|@star-flange",
    .tools = N_ ("wrenches, trestles"),
    .minutes = 30,
    .hands = 2 },
  { .subject = SW_STEP_GUYS,
    .id = "guy-lines",
    .what = N_ ("Cut {guys} guys of {guy_line}, a thimble at each end, and shackle them to the "
                "collar that goes "
                "on the post {guy_height} above the ground."),
    .check = N_ ("Hung from a scale, each end holds a person’s pull without slipping."),
    .parts = "guy-collar @line thimble shackle ?wire-clip",
    .tools = N_ ("cable cutter, wrench, tape measure"),
    .minutes = 20,
    .each = "guys",
    .hands = 1 },
  { .subject = SW_STEP_GUYS,
    .id = "guy-stakes",
    .what = N_ ("Buried lines marked first. Drive {guys} stakes {guy_radius} from the post and "
                "leaning away from it, and pull each one in the line of its guy."),
    .check =
      N_ ("Each holds {stake_hold} on the scale for a minute and has not moved. If it has: "
          "a longer stake or other ground, and test again."),
    .parts = "stake turnbuckle",
    .tools = N_ ("sledge hammer, pulling scale or load cell, eye protection"),
    .minutes = 20,
    .each = "guys",
    .hands = 2 },
  { .subject = SW_STEP_GUYS,
    .id = "guy-markers",
    .what = N_ ("Hang a bright marker on every guy at the height of people’s eyes and keep a "
                "path clear of them."),
    .check = N_ ("Seen from the walk after dark, each guy can be made out."),
    .parts = "guy-marker",
    .minutes = 5,
    .each = "guys",
    .hands = 1 },
  { 0 },
};
