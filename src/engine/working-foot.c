// SPDX-License-Identifier: GPL-3.0-or-later
/* working-foot.c: boards, bolts, slabs, concrete, and the lengths that begin at the ground. */
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

#define PIPES "data/pipes.json"
#define FITTINGS "data/fittings.json; where it stands: measure yours"
#define GOODS "data/goods.json"
#define BAG_SHEET "data sheet of an 80 lb bag, ASTM C387 mix"

static gboolean
in_socket (const SwSolution *s)
{
  return s->design->stand.foot == SW_FOOT_SOCKET;
}

static gboolean
on_slabs (const SwSolution *s)
{
  return s->design->stand.foot == SW_FOOT_SLABS;
}

static double
board_m (const SwSolution *s)
{
  return s->heights.board_m;
}

static double
board_width_m (const SwSolution *s)
{
  return s->heights.board == NULL ? NAN : s->heights.board->width_m;
}

static double
bucket_floor_m (const SwSolution *s)
{
  return s->heights.bucket_floor_m;
}

static double
bolt_circle_m (const SwSolution *s)
{
  const SwFitting *flange = s->fittings.sleeve_foot.flange;

  return flange == NULL ? NAN : flange->circle_m;
}

static double
crown_flange_m (const SwSolution *s)
{
  const SwFitting *flange = s->fittings.post_top.flange;

  return flange == NULL ? 0 : flange->height_m;
}

static double
crown_connector_m (const SwSolution *s)
{
  const SwPipeEnd *end = &s->fittings.post_top;

  return end->flange == NULL || end->connector == NULL ? 0 : end->connector->height_m;
}

static double
crown_engagement_m (const SwSolution *s)
{
  const SwPipeEnd *end = &s->fittings.post_top;
  const SwFitting *last = end->connector != NULL ? end->connector : end->flange;

  return end->flange == NULL ? 0 : last->engagement_m;
}

static double
sleeve_end_m (const SwSolution *s)
{
  return sw_pipe_end_m (&s->fittings.sleeve_foot);
}

static double
stub_end_m (const SwSolution *s)
{
  return sw_fittings_stub_end_m (&s->fittings);
}

static double
sleeve_od_m (const SwSolution *s)
{
  return s->fittings.sleeve == NULL ? 0 : s->fittings.sleeve->od_m;
}

static double
mass_of_kg (const SwSolution *s, const char *id)
{
  const SwGoods *goods = sw_catalogue_goods (s->catalogue, id);

  return goods == NULL ? NAN : goods->mass_kg;
}

static double
slab_kg (const SwSolution *s)
{
  return mass_of_kg (s, "slab");
}

static double
bag_kg (const SwSolution *s)
{
  return mass_of_kg (s, "concrete-bag");
}

static const SwWorkingTerm terms[] = {
  { "board_m",
    board_m,
    0,
    N_ ("thickness of the board whose width is nearest, 0 without boards"),
    "ALSC PS 20: actual size" },
  { "board_width_m", board_width_m, 0, N_ ("its width"), "ALSC PS 20: actual size" },
  { "bucket_floor_m",
    bucket_floor_m,
    0,
    N_ ("floor of the bucket, 0 without one"),
    "pail of 90 mil: common practice, no source" },
  { "bolt_circle_m",
    bolt_circle_m,
    0,
    N_ ("circle of the bolts in the sleeve's flange"),
    FITTINGS },
  { "crown_flange_m",
    crown_flange_m,
    0,
    N_ ("height of the flange below the crown"),
    FITTINGS },
  { "crown_connector_m",
    crown_connector_m,
    0,
    N_ ("length of the connector below it, 0 without one"),
    FITTINGS },
  { "crown_engagement_m",
    crown_engagement_m,
    0,
    N_ ("how far the post goes into the last of them"),
    "ASME B1.20.1, or data/fittings.json" },
  { "sleeve_end_m", sleeve_end_m, 0, N_ ("what the sleeve's flange adds below it"), FITTINGS },
  { "stub_end_m",
    stub_end_m,
    0,
    N_ ("from the plate's top to the stub's end inside its fittings"),
    FITTINGS },
  { "sleeve_od_m", sleeve_od_m, 0, N_ ("outside of the sleeve"), PIPES },
  { "slab_kg", slab_kg, 0, N_ ("mass of a slab"), GOODS },
  { "bag_kg", bag_kg, 0, N_ ("mass of a bag"), GOODS },
  { "bag_m3", NULL, SW_BAG_M3, N_ ("what a bag sets to: 0.60 ft³"), BAG_SHEET },
  { "bag_water_m3",
    NULL,
    SW_BAG_WATER_M3,
    N_ ("water for a bag, 6 US pints to start with"),
    BAG_SHEET },
};

#define PACKED N_ ("the billionth makes up for rounding")

static const SwWorkingRow rows[] = {
  { .key = "heights.foot_m",
    .applies = in_socket,
    .formula = "−min(sleeve_depth_m, socket_depth_m)",
    .assumes = N_ ("the post stands on a bolt across the sleeve") },
  { .key = "heights.foot_m",
    .formula = "board_m + bucket_floor_m",
    .assumes = N_ ("the boards lap flush") },
  { .key = "heights.flange_m",
    .formula = "crown_flange_m + crown_connector_m − crown_engagement_m" },
  { .key = "heights.sleeve_m", .applies = in_socket, .formula = "socket_depth_m" },
  { .key = "heights.sleeve_m", .formula = "max(0, sleeve_depth_m − sleeve_end_m)" },
  { .key = "heights.stub_m",
    .formula = "max(0, topper.stub_m − hook_drop_m − plate_thickness_m − stub_end_m + 0.10)",
    .assumes = N_ ("0.10 m of it behind the star, for two U-bolts") },

  { .key = "foot.lap_depth_m", .formula = "board_m/2" },
  { .key = "foot.lap_width_m", .formula = "board_width_m" },
  { .key = "foot.lap_start_m", .formula = "max(0, arm_m − board_width_m/2)" },
  { .key = "foot.bolt_off_m",
    .formula = "bolt_circle_m/2/√2",
    .assumes = N_ ("four bolts stand on the lap's diagonals") },
  { .key = "foot.bolt_edge_m", .formula = "board_width_m/2 − bolt_off_m" },
  { .key = "foot.slabs",
    .formula = "4·ceil(ballast_kg/4/slab_kg − 10^−9)",
    .assumes = N_ ("as many on each arm") },
  { .key = "foot.slab_off_m",
    .formula = "0.4064",
    .assumes = N_ ("slabs of 16 in: from there on those of neighbouring arms clear one "
                   "another") },
  { .key = "foot.concrete_m3",
    .applies = in_socket,
    .formula = "max(0, π/4·socket_diameter_m^2 − π/4·sleeve_od_m^2)·socket_depth_m",
    .assumes = N_ ("the hole is as wide as it was drawn, and filled round the sleeve") },
  { .key = "foot.concrete_m3", .formula = "ballast_kg/(bag_kg/bag_m3)" },
  { .key = "foot.bags", .formula = "ceil(concrete_m3/bag_m3 − 10^−9)", .assumes = PACKED },
  { .key = "foot.water_m3", .formula = "concrete_m3/bag_m3·bag_water_m3" },
  { .key = "foot.gravel_m3",
    .formula = "π/4·socket_diameter_m^2·0.15",
    .assumes = N_ ("0.15 m of gravel below the sleeve") },
  { .key = "foot.mass_reached_kg", .applies = on_slabs, .formula = "slabs·slab_kg" },
  { .key = "foot.mass_reached_kg", .formula = "min(ballast_kg, bucket_most_kg)" },
  { .key = "foot.bucket_most_kg",
    .formula = "(0.018927 − π/4·sleeve_od_m^2·min(sleeve_depth_m, 0.362))·bag_kg/bag_m3",
    .assumes = N_ ("a bucket of 5 US gallons, 1155 in³, filled to the brim, 0.362 m deep") },
};

const SwWorkingTable sw_working_foot = { terms,
                                         G_N_ELEMENTS (terms),
                                         rows,
                                         G_N_ELEMENTS (rows) };
