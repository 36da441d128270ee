// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-joints.h"

#include "engine/cone.h"
#include "engine/ring-load.h"

#include <math.h>

/* What joints, or tees, keep clear of. */
typedef struct {
  double *deg; /* owned: azimuths of marks, ties and, for tees, joints */
  int count;
} Crowd;

static Crowd
crowd_new (const SwDesign *design, const SwRingJoints *joints)
{
  int strips = design->shape.strip_count, ties = design->stand.ring_ties;
  int more = joints == NULL ? 0 : joints->count;
  Crowd crowd = { g_new (double, strips + ties + more), 0 };

  for (int strip = 1; strip <= strips; strip++)
    crowd.deg[crowd.count++] = sw_cone_azimuth_deg (&design->shape, strip);
  for (int tie = 1; tie <= ties; tie++)
    crowd.deg[crowd.count++] = sw_ring_tie_azimuth_deg (design, tie);
  for (int joint = 1; joint <= more; joint++)
    crowd.deg[crowd.count++] = sw_ring_joint_azimuth_deg (joints, joint);
  return crowd;
}

static int
rising_cb (gconstpointer a, gconstpointer b)
{
  double x = *(const double *) a, y = *(const double *) b;

  return (x > y) - (x < y);
}

static double
fold (double deg, double step)
{
  double left = deg - step * floor (deg / step);

  return left < step ? left : 0; /* rounding may leave a whole step */
}

/* Where evenly spaced places may stand: the crowd is laid over itself modulo their spacing. */
typedef struct {
  double *at; /* borrowed: [0, step) rising, counted from home */
  int count;
  double step_deg, most_deg; /* how far they may turn from home, either way */
} Seats;

static double
clear_at (const Seats *seats, double turn_deg)
{
  double at = fold (turn_deg, seats->step_deg), nearest = seats->step_deg / 2;

  for (int i = 0; i < seats->count; i++) {
    double apart = fabs (seats->at[i] - at);
    nearest = MIN (nearest, MIN (apart, seats->step_deg - apart));
  }
  return nearest;
}

typedef struct {
  double turn_deg, clear_deg;
} Best;

/* Of places as good as one another the one with the least turn. */
static void
offer (Best *best, double turn_deg, double clear_deg)
{
  double more = clear_deg - best->clear_deg;
  gboolean nearer = fabs (turn_deg) < fabs (best->turn_deg) - 1e-9;

  if (more > 1e-9 || (more > -1e-9 && nearer))
    *best = (Best){ turn_deg, clear_deg };
}

/* Best is midway in a gap, or an end of what may be turned. */
static Best
best_turn (const Seats *seats)
{
  Best best = { 0, clear_at (seats, 0) };

  offer (&best, seats->most_deg, clear_at (seats, seats->most_deg));
  offer (&best, -seats->most_deg, clear_at (seats, -seats->most_deg));
  for (int i = 0; i < seats->count; i++) {
    gboolean last = i + 1 == seats->count;
    double next = last ? seats->at[0] + seats->step_deg : seats->at[i + 1];
    for (int back = 0; back <= 1; back++) {
      double middle = (seats->at[i] + next) / 2 - back * seats->step_deg;
      if (fabs (middle) <= seats->most_deg + 1e-9)
        offer (&best, middle, (next - seats->at[i]) / 2);
    }
  }
  return best;
}

/* Sits evenly spaced places among the crowd; `home_deg`: one of them before any turn. Angles
 * count from the middle of the ring's front: a whole turn is no multiple of an arc's spacing.
 */
static Best
sit (Seats *seats, const Crowd *crowd, const SwShape *shape, double home_deg)
{
  g_autofree double *at = g_new (double, MAX (crowd->count, 1));

  for (int i = 0; i < crowd->count; i++)
    at[i] =
      fold (remainder (crowd->deg[i] - shape->facing_deg, 360) + shape->facing_deg - home_deg,
            seats->step_deg);
  qsort (at, crowd->count, sizeof *at, rising_cb);
  seats->at = at;
  seats->count = crowd->count;
  Best best = best_turn (seats);
  seats->at = NULL;
  return best;
}

/* What stands less than half a piece from an arc's ends is near no joint. */
static void
crowd_leave_ends (Crowd *crowd, const SwShape *shape, double half_deg)
{
  int kept = 0;

  for (int i = 0; i < crowd->count; i++) {
    double off_deg = fabs (remainder (crowd->deg[i] - shape->facing_deg, 360));
    if (off_deg <= shape->coverage_deg / 2 - half_deg)
      crowd->deg[kept++] = crowd->deg[i];
  }
  crowd->count = kept;
}

/* Nearest of all to any joint, degrees. */
static double
clear_of_joints (const SwRingJoints *joints, const SwDesign *design)
{
  Crowd crowd = crowd_new (design, NULL);
  double nearest = 180;

  for (int joint = 1; joint <= joints->count; joint++) {
    double at = sw_ring_joint_azimuth_deg (joints, joint);
    for (int i = 0; i < crowd.count; i++) {
      double apart = fabs (crowd.deg[i] - at);
      nearest = MIN (nearest, MIN (apart, 360 - apart));
    }
  }
  g_free (crowd.deg);
  return nearest;
}

static double
outer_m (const SwRingJob *job, double deg)
{
  return (job->design->shape.ring_radius_m + job->pipe_od_m / 2) * deg * G_PI / 180;
}

static void
turn_ring (SwRingJoints *joints, const SwRingJob *job)
{
  double start_deg = job->design->shape.facing_deg + 180;
  Crowd crowd = crowd_new (job->design, NULL);
  Seats seats = { .step_deg = joints->step_deg, .most_deg = joints->step_deg / 2 };
  Best best = sit (&seats, &crowd, &job->design->shape, start_deg);

  joints->first_deg = sw_azimuth_wrap_deg (start_deg + best.turn_deg);
  joints->clear_m = outer_m (job, best.clear_deg);
  g_free (crowd.deg);
}

/* By a quarter of a piece at most, and until one is as long as its stock. */
static void
shift_arc (SwRingJoints *joints, const SwRingJob *job)
{
  const SwShape *shape = &job->design->shape;
  double start_deg = shape->facing_deg - shape->coverage_deg / 2;
  double spare_m = MAX (0, job->longest_m - joints->part_m);
  double spare_deg = spare_m / shape->ring_radius_m * 180 / G_PI;
  Crowd crowd = crowd_new (job->design, NULL);
  Seats seats = { .step_deg = joints->step_deg,
                  .most_deg = MIN (spare_deg, joints->step_deg / 4) };

  crowd_leave_ends (&crowd, shape, joints->step_deg / 2);
  Best best = sit (&seats, &crowd, shape, start_deg + joints->step_deg);
  double turn_m = best.turn_deg * G_PI / 180 * shape->ring_radius_m;
  joints->first_deg = sw_azimuth_wrap_deg (start_deg + joints->step_deg + best.turn_deg);
  joints->first_m += turn_m;
  joints->last_m -= turn_m;
  joints->clear_m = outer_m (job, clear_of_joints (joints, job->design));
  g_free (crowd.deg);
}

/* All round, or along an arc: half a step from its ends before any turn. */
static void
place_spokes (SwRingJoints *joints, const SwRingJob *job, gboolean arc)
{
  const SwShape *shape = &job->design->shape;
  double step_deg = (arc ? shape->coverage_deg : 360) / joints->spokes;
  double home_deg =
    arc ? shape->facing_deg - shape->coverage_deg / 2 + step_deg / 2 : shape->facing_deg + 180;
  Crowd crowd = crowd_new (job->design, joints);
  Seats seats = { .step_deg = step_deg, .most_deg = step_deg / 2 };
  Best best = sit (&seats, &crowd, shape, home_deg);

  joints->spoke_step_deg = step_deg;
  joints->spoke_first_deg = sw_azimuth_wrap_deg (home_deg + best.turn_deg);
  joints->spoke_clear_m = outer_m (job, best.clear_deg);
  g_free (crowd.deg);
}

void
sw_ring_joints_init (SwRingJoints *joints, const SwRingJob *job)
{
  const SwDesign *design = job->design;
  gboolean arc = sw_ring_is_arc (design);

  *joints = (SwRingJoints){ .parts = job->parts,
                            .clear_m = NAN,
                            .spoke_first_deg = NAN,
                            .spoke_step_deg = NAN,
                            .spoke_clear_m = NAN };
  if (job->parts <= 0)
    return;
  joints->spokes = design->stand.ring_spokes;
  joints->count = job->parts - arc;
  joints->step_deg = (arc ? design->shape.coverage_deg : 360) / job->parts;
  joints->part_m = sw_ring_length_m (design) / job->parts;
  joints->first_m = joints->last_m = joints->part_m;
  if (joints->count > 0 && arc)
    shift_arc (joints, job);
  else if (joints->count > 0)
    turn_ring (joints, job);
  if (joints->spokes > 0)
    place_spokes (joints, job, arc);
}

double
sw_ring_joint_azimuth_deg (const SwRingJoints *joints, int joint)
{
  return sw_azimuth_wrap_deg (joints->first_deg + (joint - 1) * joints->step_deg);
}

double
sw_ring_spoke_azimuth_deg (const SwRingJoints *joints, int spoke)
{
  return sw_azimuth_wrap_deg (joints->spoke_first_deg + (spoke - 1) * joints->spoke_step_deg);
}

double
sw_ring_joint_arc_m (const SwRingJoints *joints,
                     int joint,
                     const SwDesign *design,
                     double pipe_od_m)
{
  double first_deg = sw_cone_azimuth_deg (&design->shape, 1);
  double along_deg = sw_ring_joint_azimuth_deg (joints, joint) - first_deg;

  return (design->shape.ring_radius_m + pipe_od_m / 2) * sw_azimuth_wrap_deg (along_deg) *
         G_PI / 180;
}

double
sw_ring_piece_m (const SwRingJoints *joints, int piece)
{
  if (piece == 1)
    return joints->first_m;
  return piece == joints->parts ? joints->last_m : joints->part_m;
}
