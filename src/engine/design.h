// SPDX-License-Identifier: GPL-3.0-or-later
/* design.h: what a person chose. All that follows from it is in solution.h.
 *
 * Units    SI and degrees, as each name says
 * Axes     origin on the ground under the middle of the ring; x to the right of a viewer in
 *          front, y away from the viewer, z up; azimuth 0° points at the viewer (−y) and grows
 *          anticlockwise seen from above
 * Sharing  a design held by more than one owner is never changed: take sw_design_copy (),
 *          change the copy, hand it on
 *
 * Field names are the file keys. Ranges, starts and help texts stand in design-keys.c only.
 */
#pragma once
#include <json-glib/json-glib.h>

typedef enum { SW_UNITS_US, SW_UNITS_METRIC } SwUnits;
typedef enum { SW_TOPPER_NONE, SW_TOPPER_STAR } SwTopperKind;
typedef enum { SW_HELD_BY_GROUND, SW_HELD_BY_FOOT } SwRingHeldBy;
typedef enum { SW_SPAN_FULL, SW_SPAN_ARC } SwRingSpan;
typedef enum { SW_FOOT_BUCKET, SW_FOOT_SLABS, SW_FOOT_SOCKET } SwFootKind;
typedef enum { SW_EXPOSURE_B, SW_EXPOSURE_C, SW_EXPOSURE_D } SwExposure;
typedef enum { SW_LOAD_CONSTANT_CURRENT, SW_LOAD_CONSTANT_POWER } SwLoad;
typedef enum { SW_FEED_RING, SW_FEED_CROWN, SW_FEED_BOTH } SwFeed;
typedef enum { SW_ENTER_RING, SW_ENTER_CROWN } SwEnter;
typedef enum { SW_PATH_SAME_END, SW_PATH_UP_DOWN } SwPath;
typedef enum {
  SW_SOIL_UNKNOWN,
  SW_SOIL_CLAY,   /* clay, silt: IBC class 5 */
  SW_SOIL_SAND,   /* sand, silty or clayey sand and gravel: class 4 */
  SW_SOIL_GRAVEL, /* sandy gravel, gravel: class 3 */
} SwSoil;
typedef enum {
  SW_GIVES_TAIL,
  SW_GIVES_CROWN_HEIGHT,
  SW_GIVES_RING_RADIUS,
  SW_GIVES_PIXELS,
  SW_GIVES_PITCH,
  SW_GIVES_LEAD,
} SwGives;

typedef struct {
  double crown_height_m, ring_height_m; /* hook circle, tie circle above ground */
  double crown_radius_m;                /* hanging circle */
  double ring_radius_m;                 /* tie circle = centreline of the ring pipe */
  double coverage_deg, facing_deg;
  int strip_count;
} SwShape;

typedef struct {
  int pixels;
  double pitch_m, lead_m, tail_min_m, width_m, mass_kg_per_m, tension_n;
  double tie_length_m, tie_stretch_max, tie_n_per_m;
  gboolean measured;
} SwStrip;

typedef struct {
  char *hook; /* owned; catalogue id */
  double hook_reach_m, hook_drop_m, plate_thickness_m, mass_kg;
} SwCrown;

typedef struct {
  SwTopperKind kind;
  int pixels, points, rings;
  double height_m, width_m, mass_kg, solidity;
  char *stub; /* owned; catalogue id */
  double stub_m;
} SwTopper;

typedef struct {
  char *post; /* owned; catalogue id */
  double post_stock_m;
  char *ring_pipe; /* owned; catalogue id */
  int ring_ties;
  SwRingHeldBy ring_held_by;
  SwRingSpan ring_span;
  int ring_sections, ring_spokes;
  double tie_hold_n;
  SwFootKind foot;
  double arm_m, arm_width_m;
  char *sleeve; /* owned; catalogue id */
  double sleeve_depth_m, socket_depth_m, socket_diameter_m, ballast_kg, friction;
} SwStand;

typedef struct {
  int count;
  double height_m, radius_m, first_azimuth_deg;
  char *line; /* owned; catalogue id */
  double break_n, end_efficiency, stiffness_n, pretension_n, stake_hold_n;
  gboolean stakes_tested;
} SwGuys;

typedef struct {
  double gust_mps;
  SwExposure exposure;
  SwSoil soil;
  double slope_deg, ice_mm;
  double clear_radius_m, line_distance_m; /* 0 = not looked */
  gboolean dig_marked;
  double view_m;
  double door_m; /* narrowest door a ring section must pass; 0 = not looked */
} SwSite;

typedef struct {
  double supply_v, pixel_a;
  SwLoad load;
  double cap, brightness, min_pixel_v, strip_ohm_per_m, wire_per_pixel_m;
  SwFeed feed;
  int inject_every, strips_per_feeder;
  double feeder_m, feeder_ohm_per_m, strip_wire_max_a, supply_w, supply_load_max;
  double hours_per_evening, energy_price;
} SwPowerSetup;

typedef struct {
  int bits_per_pixel;
  double bit_rate_hz, reset_us, frame_hz;
  int port_pixels_max, strips_per_port_max, skipped_pixels;
  double lead_m;
  char *colour_order; /* owned */
  SwEnter enter;
  SwPath path;
  int first_universe, pixels_per_universe;
} SwDataSetup;

typedef struct {
  char *currency;       /* owned */
  GHashTable *override; /* owned: part id (char *) → double *; a price of one's own */
  GHashTable *have;     /* owned: part id (char *) → double *; what is in the shed */
} SwPrices;

typedef struct {
  double azimuth_deg; /* 0 ≤ azimuth < 360 */
  double radius_m;    /* centre to the OUTER face of the pipe */
} SwRingPoint;

typedef struct {
  GArray *ring_points; /* owned: SwRingPoint, sorted by azimuth, each azimuth once */
  double ring_length_m;
  double crown_offset_x_m, crown_offset_y_m;
} SwMeasured;

typedef struct SwDesign SwDesign;
struct SwDesign {
  char *title; /* owned */
  SwUnits units;
  SwShape shape;
  SwStrip strip;
  SwCrown crown;
  SwTopper topper;
  SwStand stand;
  SwGuys guys;
  SwSite site;
  SwPowerSetup power;
  SwDataSetup data;
  SwGives gives_way;
  GPtrArray *held; /* owned: char *, key paths that must not move */
  SwPrices prices;
  SwMeasured as_built;
  JsonNode *own_rows; /* owned, nullable, sealed: the person's own catalogue rows that it uses,
                         id → row; they win over those of own-rows.h's folder */
  JsonNode *extra;    /* owned, nullable, sealed: the object the design was read from; keeps
                         unknown keys */
};

/* Returns: (transfer full): every key at its start, the Lawn's numbers. */
SwDesign *sw_design_new (void);

/* Returns: (transfer full): an equal design with one owner, which may be changed. */
SwDesign *sw_design_copy (const SwDesign *design);

SwDesign *sw_design_ref (SwDesign *design);
void sw_design_unref (SwDesign *design);

/* Every known key equal, to the bit; unknown keys equal as JSON. */
gboolean sw_design_equal (const SwDesign *a, const SwDesign *b);

/* Whether the key path may not move: sw_design_holds (design, "shape.crown_height_m"). */
gboolean sw_design_holds (const SwDesign *design, const char *path);

/* The rules that join two keys (ring below crown, hook reach below crown radius, …). Ranges of
 * single keys are sw_key_check ()'s.
 * Errors: SW_ERROR_RANGE naming the key that would have to move.
 */
gboolean sw_design_check (const SwDesign *design, GError **error);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwDesign, sw_design_unref)
