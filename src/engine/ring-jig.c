// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-jig.h"

#include <glib.h>
#include <math.h>

void
sw_ring_jig_init (SwRingJig *jig, double ring_radius_m, double od_m, double piece_deg)
{
  double radius_m = ring_radius_m - od_m / 2, angle_deg = MIN (piece_deg, SW_JIG_MOST_DEG);
  double half = angle_deg * G_PI / 360;
  int pairs = MAX (2, (int) ceil (radius_m * half / SW_JIG_BLOCK_M));

  *jig = (SwRingJig){ radius_m,
                      angle_deg,
                      2 * radius_m * sin (half),
                      radius_m * (1 - cos (half)),
                      2 * pairs + 1 };
}

void
sw_ring_jig_block (const SwRingJig *jig, int block, double *along_m, double *out_m)
{
  double half = jig->angle_deg * G_PI / 360;
  double angle = half * (2.0 * (block - 1) / (jig->blocks - 1) - 1);

  *along_m = jig->chord_m / 2 + jig->radius_m * sin (angle);
  *out_m = jig->radius_m * (cos (angle) - cos (half));
}

double
sw_ring_jig_out_m (const SwRingJig *jig, double along_m)
{
  double off_m = along_m - jig->chord_m / 2, half_m = jig->chord_m / 2;

  return sqrt (MAX (0, jig->radius_m * jig->radius_m - off_m * off_m)) -
         sqrt (jig->radius_m * jig->radius_m - half_m * half_m);
}
