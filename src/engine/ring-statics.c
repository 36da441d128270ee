// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/ring-statics.h"

#include <math.h>
#include <string.h>

#define FEWEST_TIES 3
#define ELEMENTS_A_BAY 12
#define FREEDOMS 3 /* a node: up, turn about x, turn about y */
#define BAND (2 * FREEDOMS)

/* Σ over n = K, 3K, 5K … of 1/(n² − 1)² for bending, and of 1/(n²(n² − 1)²) for twist, in
 * closed form: from Σ over odd m of 1/(m² − a²) = π·tan (πa/2)/4a and its derivative
 * (Gradshteyn & Ryzhik 1.421), with u = π/2K.
 */
void
sw_ring_series (int ties, double *bending, double *twist)
{
  double u = G_PI / (2 * ties), t = tan (u);

  *bending = u / 4 * (u * (1 + t * t) - t);
  *twist = u / 2 * (u - t) + *bending;
}

static void
closed_ring (const SwRingLoad *load, SwRingAnswer *answer)
{
  double w = load->lift_n_per_m, r = load->radius_m, half_bay = G_PI / load->ties;
  double bending, twist;

  sw_ring_series (load->ties, &bending, &twist);
  double at = acos (sin (half_bay) / half_bay); /* from mid-bay, where the twist is largest */
  *answer = (SwRingAnswer){
    .lift_m = 4 * w * pow (r, 4) * (bending / load->ei + twist / load->gj),
    .moment_nm = w * r * r * (1 - half_bay / tan (half_bay)),
    .torque_nm = w * r * r * fabs (at - half_bay * sin (at) / sin (half_bay)),
    .tie_n = 2 * w * r * half_bay,
  };
}

/* Grid element between two nodes, length l along (c, s): deflection up, rotations about the x
 * and y axes. */
typedef struct {
  double k[2 * FREEDOMS][2 * FREEDOMS];
} Element;

static Element
grid_element (double ei, double gj, double l, double c, double s)
{
  double a = 12 * ei / (l * l * l), b = 6 * ei / (l * l), d = 4 * ei / l, e = 2 * ei / l,
         t = gj / l;
  /* local: w, twist about the axis, bend about the normal; dw/dξ = −bend */
  const double local[6][6] = {
    { a, 0, -b, -a, 0, -b }, { 0, t, 0, 0, -t, 0 }, { -b, 0, d, b, 0, e },
    { -a, 0, b, a, 0, b },   { 0, -t, 0, 0, t, 0 }, { -b, 0, e, b, 0, d },
  };
  const double turn[3][3] = { { 1, 0, 0 }, { 0, c, s }, { 0, -s, c } };
  Element element;

  memset (&element, 0, sizeof element);
  for (int i = 0; i < 6; i++) {
    for (int j = 0; j < 6; j++) {
      for (int p = 0; p < 3; p++) {
        for (int q = 0; q < 3; q++)
          element.k[i][j] +=
            turn[p][i % 3] * local[i / 3 * 3 + p][j / 3 * 3 + q] * turn[q][j % 3];
      }
    }
  }
  return element;
}

typedef struct {
  int nodes, elements;
  double step, length; /* radians and metres an element */
  double *band;        /* [row][column − row], symmetric, BAND wide */
  double *load, *move;
  const SwRingLoad *given;
} Arc;

static double *
cell (Arc *arc, int row, int column)
{
  int low = MIN (row, column), high = MAX (row, column);

  return &arc->band[low * BAND + (high - low)];
}

static Element
element_of (const Arc *arc, int i)
{
  double middle = (i + 0.5) * arc->step;

  return grid_element (arc->given->ei,
                       arc->given->gj,
                       arc->length,
                       -sin (middle),
                       cos (middle));
}

static gboolean
is_tie (const Arc *arc, int node)
{
  return node % ELEMENTS_A_BAY == 0;
}

static void
assemble (Arc *arc)
{
  for (int i = 0; i < arc->elements; i++) {
    Element element = element_of (arc, i);
    for (int p = 0; p < 6; p++) {
      for (int q = p; q < 6; q++)
        *cell (arc, i * FREEDOMS + p, i * FREEDOMS + q) += element.k[p][q];
    }
    /* the even lift goes half to each end */
    double half_n = arc->given->lift_n_per_m * arc->given->radius_m * arc->step / 2;
    arc->load[i * FREEDOMS] += half_n;
    arc->load[(i + 1) * FREEDOMS] += half_n;
  }
}

/* A tie lets its node turn but not rise: a stiff spring would cost digits, so its row and
 * column go. */
static void
hold (Arc *arc, int freedom)
{
  int all = arc->nodes * FREEDOMS;

  for (int other = MAX (0, freedom - BAND + 1); other < MIN (all, freedom + BAND); other++)
    *cell (arc, freedom, other) = 0;
  *cell (arc, freedom, freedom) = 1;
  arc->load[freedom] = 0;
}

static gboolean
solve_band (Arc *arc)
{
  int n = arc->nodes * FREEDOMS;

  for (int i = 0; i < n; i++) {
    double pivot = *cell (arc, i, i);
    if (!(pivot > 0))
      return FALSE;
    for (int j = i + 1; j < MIN (n, i + BAND); j++) {
      double share = *cell (arc, i, j) / pivot;
      for (int k = j; k < MIN (n, i + BAND); k++)
        *cell (arc, j, k) -= share * *cell (arc, i, k);
      arc->load[j] -= share * arc->load[i];
    }
  }
  for (int i = n - 1; i >= 0; i--) {
    double sum = arc->load[i];
    for (int j = i + 1; j < MIN (n, i + BAND); j++)
      sum -= *cell (arc, i, j) * arc->move[j];
    arc->move[i] = sum / *cell (arc, i, i);
  }
  return TRUE;
}

/* Forces of an element on its ends: up, and moments about x and y. */
static void
end_forces (const Arc *arc, int i, double forces[6])
{
  Element element = element_of (arc, i);

  for (int p = 0; p < 6; p++) {
    forces[p] = 0;
    for (int q = 0; q < 6; q++)
      forces[p] += element.k[p][q] * arc->move[i * FREEDOMS + q];
  }
}

static void
read_answer (const Arc *arc, SwRingAnswer *answer)
{
  double half_n = arc->given->lift_n_per_m * arc->given->radius_m * arc->step / 2;
  g_autofree double *node_n = g_new0 (double, arc->nodes);

  *answer = (SwRingAnswer){ 0 };
  for (int i = 0; i < arc->elements; i++) {
    double f[6], middle = (i + 0.5) * arc->step, c = -sin (middle), s = cos (middle);
    end_forces (arc, i, f);
    node_n[i] += f[0] - half_n;
    node_n[i + 1] += f[3] - half_n;
    for (int end = 0; end < 2; end++) {
      double torque = c * f[3 * end + 1] + s * f[3 * end + 2],
             moment = -s * f[3 * end + 1] + c * f[3 * end + 2];
      answer->moment_nm = MAX (answer->moment_nm, fabs (moment));
      answer->torque_nm = MAX (answer->torque_nm, fabs (torque));
    }
  }
  for (int node = 0; node < arc->nodes; node++) {
    answer->lift_m = MAX (answer->lift_m, arc->move[node * FREEDOMS]);
    if (is_tie (arc, node))
      answer->tie_n = MAX (answer->tie_n, fabs (node_n[node]));
  }
}

static gboolean
open_arc (const SwRingLoad *load, SwRingAnswer *answer)
{
  Arc arc = { .elements = (load->ties - 1) * ELEMENTS_A_BAY, .given = load };
  gboolean solved;

  arc.nodes = arc.elements + 1;
  arc.step = load->span_deg * G_PI / 180 / arc.elements;
  arc.length = 2 * load->radius_m * sin (arc.step / 2);
  g_autofree double *band = g_new0 (double, arc.nodes *FREEDOMS *BAND);
  g_autofree double *work = g_new0 (double, 2 * arc.nodes * FREEDOMS);
  arc.band = band;
  arc.load = work;
  arc.move = work + arc.nodes * FREEDOMS;
  assemble (&arc);
  for (int node = 0; node < arc.nodes; node++) {
    if (is_tie (&arc, node))
      hold (&arc, node * FREEDOMS);
  }
  solved = solve_band (&arc);
  if (solved)
    read_answer (&arc, answer);
  return solved;
}

gboolean
sw_ring_statics (const SwRingLoad *load, SwRingAnswer *answer)
{
  gboolean sound = load->ties >= FEWEST_TIES && load->ei > 0 && load->gj > 0;

  *answer = (SwRingAnswer){ NAN, NAN, NAN, NAN };
  if (!sound)
    return FALSE;
  if (load->span_deg < 360)
    return open_arc (load, answer);
  closed_ring (load, answer);
  return TRUE;
}
