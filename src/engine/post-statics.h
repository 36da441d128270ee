// SPDX-License-Identifier: GPL-3.0-or-later
/* post-statics.h: the post as a cantilever or a guyed mast, the guys, and a sleeve in the
 * ground, in plain numbers.
 *
 * Source  beams: AISC Manual table 3-23 and Gere, Mechanics of Materials, appendix G; sleeve in
 * the ground without a rigid surface: IBC 1807.3.2.1 Limits  small deflections; no joint or
 * coupling weaker than the tube; guys pull only
 */
#pragma once
#include <glib.h>

/* What pushes the post sideways: forces at heights, all from one side. */
typedef struct {
  double crown_n, crown_m; /* strips' half and a partial tree's pull, at the crown */
  double star_n, star_m;   /* star, at its middle */
  double post_n;           /* wind on the post, even over 0 … crown_m */
  double ring_n, ring_m;   /* strips' other half, when the ring hangs on the foot */
} SwPostLoad;

double sw_post_shear (const SwPostLoad *load);  /* N, at the ground */
double sw_post_moment (const SwPostLoad *load); /* N m, at the ground, no guys */
double sw_post_moment_above (const SwPostLoad *load, double height_m);
/* Deflection of the bare cantilever at a height up to the crown, m. The ring's share acts on
 * the foot. */
double sw_post_deflection (const SwPostLoad *load, double ei, double height_m);

typedef struct {
  int count;
  double height_m, radius_m;
  double stiffness_n; /* E·A of the line */
  double pretension_n;
  double pulling; /* sw_guy_least_pulling (count) */
} SwGuyRig;

/* The worst single guy's share of a sideways force: 2/√3 with three guys, 1 with more. */
double sw_guy_worst_share (int count);

/* Least Σcos² over the guys that pull, whichever way the wind blows: what few guys are stiff
 * by. */
double sw_guy_least_pulling (int count);

typedef struct {
  double tension_n;      /* worst guy */
  double base_shear_n;   /* left at the pinned base */
  double post_moment_nm; /* largest in the post: the worse of pinned and fixed base */
  double base_moment_nm; /* fixed base, elastic guys */
} SwGuyAnswer;

SwGuyAnswer sw_guyed_post (const SwPostLoad *load, const SwGuyRig *rig, double ei);

/* What the guys press the post down with when they hold a sideways force, `steep` their height
 * over their reach: worst when the wind blows midway between two of them. */
double sw_guy_down_n (int count, double held_n, double steep);

/* Axial load at which the post buckles, N. Fixed at the foot and free: π²EI/(2.1·H)². With guys
 * (`rig` not NULL) of stiffness k at z: min (π²EI/z², that + ¾·k·z). The critical load of a
 * cantilever held by a spring at its top is concave in k and reaches π²EI/z² at
 * k = π²·EI/z³, so the chord is below it (Timoshenko & Gere, Theory of Elastic Stability, 2.3:
 * tan u = u − u³·EI/(k·z³), u² = P·z²/EI).
 */
double sw_post_critical_n (double ei, double height_m, const SwGuyRig *rig);

/* Depth of a round sleeve in the ground for a force at a height, lateral soil strength in Pa a
 * metre of depth. */
double sw_socket_depth (double force_n,
                        double height_m,
                        double diameter_m,
                        double soil_pa_per_m);

/* Hooks, strip and ring give a little even when the tie is as long as it goes: 0.2 % of the
 * strip, our own judgement, no source. Without it a gust on a tight line would give any
 * tension.
 */
#define SW_LEAST_GIVE 0.002
#define SW_LEAST_GIVE_M 1e-6 /* and never none at all */

/* Strip tension with wind on it: T²(T − T0) = k·w²·s³/24 through an elastic tie of stiffness k
 * (N/m) until the tie is as long as it goes; then T = w·s·√(s/24Δ) with Δ the length it could
 * still give. Irvine, Cable Structures (flat parabola).
 */
typedef struct {
  double still_n;     /* T0 */
  double tie_n_per_m; /* k; 0: no elastic tie */
  double give_m;      /* how much the tie can still stretch, ≥ 0 */
  double slant_m;
} SwStripLine;

double sw_strip_tension (const SwStripLine *line, double wind_n_per_m);
