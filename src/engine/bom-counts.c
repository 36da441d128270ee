// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/bom-counts.h"

#include "engine/fuse.h"

#include <math.h>

/* Allowances: common practice, no source, unless said otherwise. */
#define SPARE_SHARE 0.03
#define HEMS_M 0.10         /* strip material folded round the two grommets */
#define JUMPER_SLACK_M 0.30 /* to reach both plugs */
#define BOLTS_A_FLANGE 4
#define BOLTS_A_HALF_LAP 4
#define BOLTS_A_BUCKET 4
#define SCREWS_A_COUPLING 2
#define CLAMPS_A_SPOKE 2
#define SUPPLIES_A_BOX 2
#define CLIPS_AN_END 2 /* wire rope to 3/8 in: two clips an end, usual clip tables */
#define GUY_ENDS 2
#define PORTS_SMALL 4
#define PORTS_LARGE 16
#define GRAVEL_BAG_M3 0.01416 /* 50 lb, 0.5 ft³: as bags print it */

static const SwDesign *
design_of (const SwCounts *counts)
{
  return counts->solution->design;
}

static double
whole (double amount)
{
  return ceil (amount - 1e-9);
}

int
sw_bom_spare_strips (const SwDesign *design)
{
  return MAX (1, (int) whole (SPARE_SHARE * design->shape.strip_count));
}

static int
count_jumpers (const SwSolution *solution)
{
  int jumpers = 0;

  for (guint i = 0; i < solution->data.rows->len; i++) {
    const SwPort *port = &g_array_index (solution->data.rows, SwPort, i);
    if (port->first_strip > 0)
      jumpers += port->last_strip - port->first_strip;
  }
  return jumpers;
}

static gboolean
has_star (const SwCounts *counts)
{
  return design_of (counts)->topper.kind == SW_TOPPER_STAR;
}

static gboolean
has_lit_star (const SwCounts *counts)
{
  return has_star (counts) && design_of (counts)->topper.pixels > 0;
}

void
sw_counts_init (SwCounts *counts, const SwSolution *solution)
{
  const SwDesign *design = solution->design;
  g_autoptr (GArray) feeds = sw_power_feeds (design);

  *counts = (SwCounts){ .solution = solution, .strips = design->shape.strip_count };
  sw_runs_init (&counts->runs, design, solution->catalogue);
  counts->strips_made = counts->strips + sw_bom_spare_strips (design);
  counts->strip_feeds = counts->strips * (int) feeds->len;
  counts->feeders = solution->wiring.feeders;
  counts->jumpers = count_jumpers (solution);
}

static double
strip_pixels (const SwCounts *counts)
{
  return counts->strips_made * design_of (counts)->strip.pixels;
}

/* From hook to elastic tie; a tail that is too short for the tie is a finding, not less strip.
 */
static double
strip_material_m (const SwCounts *counts)
{
  const SwCone *cone = &counts->solution->cone;
  const SwStrip *strip = &design_of (counts)->strip;
  double below_m = MAX (0, cone->tail_m - strip->tie_length_m);

  return counts->strips_made * (strip->lead_m + cone->run_m + below_m + HEMS_M);
}

static double
one_a_strip_made (const SwCounts *counts)
{
  return counts->strips_made;
}

static double
two_a_strip (const SwCounts *counts)
{
  return 2 * counts->strips;
}

static double
one_star (const SwCounts *counts)
{
  return has_star (counts);
}

static double
star_pixels (const SwCounts *counts)
{
  int pixels = design_of (counts)->topper.pixels;

  return has_star (counts) ? pixels + whole (SPARE_SHARE * pixels) : 0;
}

static double
one (const SwCounts *counts)
{
  return 1;
}

static gboolean
has_boards (const SwCounts *counts)
{
  return counts->runs.board_m > 0;
}

/* Goods that stand in where the catalogue has no fitting that fits. */
static double
crown_flange_made (const SwCounts *counts)
{
  return counts->solution->fittings.post_top.flange == NULL;
}

static double
star_flange_made (const SwCounts *counts)
{
  return has_star (counts) && !counts->solution->fittings.stub_held;
}

static double
sleeve_flange_made (const SwCounts *counts)
{
  return has_boards (counts) && counts->solution->fittings.sleeve_foot.flange == NULL;
}

static double
star_clamps_made (const SwCounts *counts)
{
  return 2 * (has_star (counts) && counts->solution->fittings.u_bolt == NULL);
}

static double
grommets_made (const SwCounts *counts)
{
  return counts->solution->fittings.grommet == NULL ? 2 * counts->strips_made : 0;
}

/* The flange on the plate shares the bolts of the one below where both are of one size. The
 * sleeve's flange is held by the carriage bolts of the half lap. */
static double
flange_bolts (const SwCounts *counts)
{
  const SwFittings *fittings = &counts->solution->fittings;
  gboolean own = has_star (counts) && !(fittings->stub_held && fittings->shares_bolts);

  return BOLTS_A_FLANGE * (1 + own);
}

/* One a joint that would turn; a flange made to measure has one too. */
static double
lock_screws (const SwCounts *counts)
{
  return sw_fit_locks (&counts->solution->fits) + crown_flange_made (counts) +
         star_flange_made (counts);
}

static double
post_joints (const SwCounts *counts)
{
  return MAX (0, counts->runs.joints.pieces - 1);
}

/* Where no pipe of the catalogue slides over the post. */
static double
post_couplings (const SwCounts *counts)
{
  return counts->runs.joint_tube == NULL ? post_joints (counts) : 0;
}

static gboolean
in_ground (const SwCounts *counts)
{
  return design_of (counts)->stand.foot == SW_FOOT_SOCKET;
}

static double
one_a_sleeve (const SwCounts *counts)
{
  return counts->runs.sleeve_m > 0;
}

/* Post in sleeve; two a joint of the post; in the ground one for the post to stand on. */
static double
through_bolts (const SwCounts *counts)
{
  return one_a_sleeve (counts) + 2 * post_joints (counts) +
         (one_a_sleeve (counts) > 0 && in_ground (counts));
}

static double
one_on_boards (const SwCounts *counts)
{
  return has_boards (counts);
}

static gboolean
has_bucket (const SwCounts *counts)
{
  return design_of (counts)->stand.foot == SW_FOOT_BUCKET;
}

static double
carriage_bolts (const SwCounts *counts)
{
  return BOLTS_A_HALF_LAP * has_boards (counts) + BOLTS_A_BUCKET * has_bucket (counts);
}

static double
counted (double amount)
{
  return amount > 0 ? amount : 0; /* also of NAN */
}

static double
slabs (const SwCounts *counts)
{
  return counted (counts->solution->foot.slabs);
}

static double
one_bucket (const SwCounts *counts)
{
  return has_bucket (counts);
}

static double
concrete_bags (const SwCounts *counts)
{
  return counted (counts->solution->foot.bags);
}

static double
gravel_bags (const SwCounts *counts)
{
  return counted (whole (counts->solution->foot.gravel_m3 / GRAVEL_BAG_M3));
}

/* A ring closes on itself; an arc has an end more than joints. */
static double
ring_couplings (const SwCounts *counts)
{
  return MAX (0, counts->runs.ring_parts - (counts->runs.ring_closed ? 0 : 1));
}

static double
ring_screws (const SwCounts *counts)
{
  return SCREWS_A_COUPLING * ring_couplings (counts);
}

static double
ring_tees (const SwCounts *counts)
{
  return counts->runs.spoke_m > 0 ? design_of (counts)->stand.ring_spokes : 0;
}

/* Joints inside a section, and tees, are glued; where the ring comes apart it is screwed. */
static double
pvc_cement (const SwCounts *counts)
{
  const SwStand *stand = &design_of (counts)->stand;
  const SwPipe *pipe = sw_catalogue_pipe (counts->solution->catalogue, stand->ring_pipe);
  gboolean stays = counts->runs.ring_parts > stand->ring_sections || ring_tees (counts) > 0;

  return pipe != NULL && pipe->material == SW_MATERIAL_PVC && stays;
}

static double
spoke_hub (const SwCounts *counts)
{
  return ring_tees (counts) > 0;
}

static double
spoke_clamps (const SwCounts *counts)
{
  return CLAMPS_A_SPOKE * ring_tees (counts);
}

static double
ring_pegs (const SwCounts *counts)
{
  const SwStand *stand = &design_of (counts)->stand;

  return stand->ring_held_by == SW_HELD_BY_GROUND ? stand->ring_ties : 0;
}

static double
ring_straps (const SwCounts *counts)
{
  return design_of (counts)->stand.ring_ties;
}

static double
one_a_guy (const SwCounts *counts)
{
  return design_of (counts)->guys.count;
}

static double
one_with_guys (const SwCounts *counts)
{
  return design_of (counts)->guys.count > 0;
}

/* Ends of wire; a rope is knotted and needs the thimbles too. */
static double
guy_ends (const SwCounts *counts)
{
  return GUY_ENDS * design_of (counts)->guys.count;
}

static double
wire_clips (const SwCounts *counts)
{
  const SwLine *line =
    sw_catalogue_line (counts->solution->catalogue, design_of (counts)->guys.line);

  return line != NULL && line->kind == SW_LINE_WIRE ? CLIPS_AN_END * guy_ends (counts) : 0;
}

/* Outputs are never joined: as many as zones, which can be more than the watts ask for. */
static double
supplies (const SwCounts *counts)
{
  return counts->solution->zones.count;
}

static double
supply_boxes (const SwCounts *counts)
{
  return whole (supplies (counts) / SUPPLIES_A_BOX);
}

char *
sw_feeder_cable_id (const SwCounts *counts)
{
  return g_strdup_printf ("feeder-cable-%.0f", counts->solution->wiring.feeder_wire->size);
}

double
sw_feeder_cable_m (const SwCounts *counts)
{
  return counts->feeders * design_of (counts)->power.feeder_m;
}

char *
sw_fuse_id (double fuse_a)
{
  char size[G_ASCII_DTOSTR_BUF_SIZE];

  return g_strconcat ("fuse-", g_ascii_formatd (size, sizeof size, "%g", fuse_a), NULL);
}

/* A size of the table, and not the absent one. */
static gboolean
is_size (double fuse_a, double size_a)
{
  return fabs (fuse_a - size_a) < 1e-9;
}

double
sw_fuse_count (const SwCounts *counts, double fuse_a)
{
  const SwWiring *wiring = &counts->solution->wiring;
  double count = 0;

  for (guint i = 0; i < wiring->feeds->len; i++) {
    if (is_size (g_array_index (wiring->feeds, SwFeedPoint, i).fuse_a, fuse_a))
      count += wiring->groups;
  }
  if (is_size (wiring->strip_fuse_a, fuse_a))
    count += counts->strip_feeds;
  return count + is_size (wiring->star_fuse_a, fuse_a);
}

static double
fuse_holders (const SwCounts *counts)
{
  double count = 0;

  for (guint i = 0; i < sw_n_fuses; i++)
    count += sw_fuse_count (counts, sw_fuses_a[i]);
  return count;
}

/* One at each feed of a group of two strips or more. */
static double
power_splices (const SwCounts *counts)
{
  int shared = sw_wiring_shared (design_of (counts));
  int groups = counts->strips / shared + (counts->strips % shared > 1);

  return shared > 1 ? groups * (counts->strip_feeds / counts->strips) : 0;
}

static double
power_plugs (const SwCounts *counts)
{
  return counts->strip_feeds + has_lit_star (counts);
}

static int
ports (const SwCounts *counts)
{
  return counts->solution->data.ports;
}

static double
small_drivers (const SwCounts *counts)
{
  return ports (counts) <= PORTS_SMALL;
}

static double
large_drivers (const SwCounts *counts)
{
  return ports (counts) <= PORTS_SMALL ? 0 : whole ((double) ports (counts) / PORTS_LARGE);
}

static double
data_lead_m (const SwCounts *counts)
{
  return ports (counts) * design_of (counts)->data.lead_m;
}

/* Up one, down the next: only across to the neighbour. Else back along the whole strip too. */
static double
data_jumper_m (const SwCounts *counts)
{
  const SwCone *cone = &counts->solution->cone;
  double back_m = design_of (counts)->data.path == SW_PATH_UP_DOWN ? 0 : cone->slant_m;

  return counts->jumpers * (back_m + cone->chord_ring_m + JUMPER_SLACK_M);
}

static double
data_plugs (const SwCounts *counts)
{
  return ports (counts) + counts->jumpers;
}

static double
labels (const SwCounts *counts)
{
  return 2 * counts->strips + counts->feeders + ports (counts);
}

const SwCountRow sw_count_rows[] = {
  { "strip-pixel", strip_pixels },
  { "strip-material", strip_material_m },
  { "grommet", grommets_made },
  { "elastic-tie", one_a_strip_made },
  { "cable-tie", two_a_strip },
  { "star-frame", one_star },
  { "star-pixel", star_pixels },
  { "star-clamp", star_clamps_made },
  { "star-flange", star_flange_made },
  { "star-tether", one_star },
  { "crown-plate", one },
  { "crown-flange", crown_flange_made },
  { "flange-bolt", flange_bolts },
  { "lock-screw", lock_screws },
  { "post-coupling", post_couplings },
  { "through-bolt", through_bolts },
  { "sleeve-plug", one_a_sleeve },
  { "sleeve-flange", sleeve_flange_made },
  { "carriage-bolt", carriage_bolts },
  { "wood-glue", one_on_boards },
  { "slab", slabs },
  { "bucket", one_bucket },
  { "concrete-bag", concrete_bags },
  { "drain-gravel", gravel_bags },
  { "ring-coupling", ring_couplings },
  { "ring-screw", ring_screws },
  { "ring-tee", ring_tees },
  { "pvc-cement", pvc_cement },
  { "spoke-hub", spoke_hub },
  { "spoke-clamp", spoke_clamps },
  { "ring-peg", ring_pegs },
  { "ring-strap", ring_straps },
  { "guy-collar", one_with_guys },
  { "wire-clip", wire_clips },
  { "thimble", guy_ends },
  { "shackle", one_a_guy },
  { "turnbuckle", one_a_guy },
  { "stake", one_a_guy },
  { "guy-marker", one_a_guy },
  { "supply", supplies },
  { "supply-box", supply_boxes },
  { "mains-lead", supply_boxes },
  { "fuse-holder", fuse_holders },
  { "power-plug", power_plugs },
  { "power-splice", power_splices },
  { "driver-box-4", small_drivers },
  { "driver-box-16", large_drivers },
  { "data-lead", data_lead_m },
  { "data-jumper", data_jumper_m },
  { "data-plug", data_plugs },
  { "label", labels },
};
const guint sw_n_count_rows = G_N_ELEMENTS (sw_count_rows);
