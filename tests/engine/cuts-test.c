// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/cuts.h"
#include "engine/error.h"
#include "engine/starts.h"

#include <math.h>
#include <string.h>

static const SwCatalogue *
catalogue (void)
{
  g_autoptr (GError) error = NULL;
  const SwCatalogue *builtin = sw_catalogue_builtin (&error);

  g_assert_no_error (error);
  return builtin;
}

static GPtrArray *
cuts_of (const SwDesign *design)
{
  g_autoptr (GError) error = NULL;
  GPtrArray *cuts = sw_cuts_new (design, catalogue (), &error);

  g_assert_no_error (error);
  return cuts;
}

static const SwCutPlan *
find_plan (const GPtrArray *cuts, const char *stock)
{
  for (guint i = 0; i < cuts->len; i++) {
    const SwCutPlan *plan = cuts->pdata[i];
    if (strcmp (plan->stock, stock) == 0)
      return plan;
  }
  return NULL;
}

static const SwCutPlan *
plan_for (const GPtrArray *cuts, const char *stock)
{
  const SwCutPlan *found = find_plan (cuts, stock);

  if (found == NULL)
    g_error ("no %s", stock);
  return found;
}

/* All pieces of a plan, metres. */
static double
length_in (const SwCutPlan *plan)
{
  return plan->bars->len * plan->stock_m - plan->waste_m;
}

static guint
pieces_in (const SwCutPlan *plan)
{
  guint pieces = 0;

  for (guint i = 0; i < plan->bars->len; i++)
    pieces += ((const GArray *) plan->bars->pdata[i])->len;
  return pieces;
}

/* The starting design, worked by hand: a post of 2.86 m less 1.5 in of board and 0.303 in of
 * flange out of 6.40 m; a sleeve of 0.35 m less 0.258 in of flange out of pipe cut to 2 ft; two
 * boards of 1.90 m out of 8 ft lumber; four quarters of a ring of 2π·1 m out of 10 ft pipe (two
 * of 1.571 m do not fit one); a stub of 0.15 m less 6 mm of plate and 1.59 in of fittings, and
 * 0.10 m behind the star.
 */
static const struct {
  const char *stock;
  double stock_m;
  guint bars, pieces;
  double length_m;
} lawn[] = {
  { "sch40-2", 6.40, 1, 1, 2.8142038 }, { "sch40-2-1/2", 0.6096, 1, 1, 0.3434468 },
  { "board-2x6", 2.4384, 2, 2, 3.80 },  { "pvc40-1", 3.048, 4, 4, 6.283185307 },
  { "emt-1/2", 3.048, 1, 1, 0.203614 },
};

static void
test_lawn (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (GPtrArray) cuts = cuts_of (design);

  g_assert_cmpuint (cuts->len, ==, G_N_ELEMENTS (lawn));
  for (guint k = 0; k < G_N_ELEMENTS (lawn); k++) {
    const SwCutPlan *plan = plan_for (cuts, lawn[k].stock);
    g_assert_cmpfloat_with_epsilon (plan->stock_m, lawn[k].stock_m, 1e-12);
    g_assert_cmpuint (plan->bars->len, ==, lawn[k].bars);
    g_assert_cmpuint (pieces_in (plan), ==, lawn[k].pieces);
    g_assert_cmpfloat_with_epsilon (length_in (plan), lawn[k].length_m, 1e-9);
  }
}

static void
test_post_stands_deep_in_a_socket (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->stand.foot = SW_FOOT_SOCKET;
  design->crown.hook_drop_m = 0.04;
  g_autoptr (GPtrArray) cuts = cuts_of (design);
  g_assert_cmpfloat_with_epsilon (length_in (plan_for (cuts, "sch40-2")),
                                  2.86 + 0.35 + 0.04 - 0.303 * 0.0254,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (length_in (plan_for (cuts, "sch40-2-1/2")), 0.9, 1e-9);
  g_assert_null (find_plan (cuts, "board-2x6"));
}

static void
test_long_runs_are_joined (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  SwRuns runs;

  design->shape.crown_height_m = 14;
  design->shape.ring_radius_m = 3;
  sw_runs_init (&runs, design, catalogue ());
  g_assert_cmpint (runs.joints.pieces, ==, 3);
  g_assert_cmpint (runs.ring_parts, ==, 8); /* quarters of 4.71 m, each of two parts */
  g_autoptr (GPtrArray) cuts = cuts_of (design);
  g_assert_cmpuint (pieces_in (plan_for (cuts, "sch40-2")), ==, 3);
  /* the sleeve, and a tube of 12 diameters on each of two joints */
  g_assert_cmpfloat_with_epsilon (length_in (plan_for (cuts, "sch40-2-1/2")),
                                  0.3434468 + 2 * 12 * 2.375 * 0.0254,
                                  1e-9);
  g_assert_cmpfloat_with_epsilon (length_in (plan_for (cuts, "pvc40-1")), 6 * G_PI, 1e-9);
}

static void
test_arc_is_only_under_the_strips (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->shape.coverage_deg = 180;
  design->stand.ring_span = SW_SPAN_ARC;
  g_autoptr (GPtrArray) arc = cuts_of (design);
  g_assert_cmpfloat_with_epsilon (length_in (plan_for (arc, "pvc40-1")), G_PI, 1e-9);
  design->stand.ring_span = SW_SPAN_FULL;
  g_autoptr (GPtrArray) full = cuts_of (design);
  g_assert_cmpfloat_with_epsilon (length_in (plan_for (full, "pvc40-1")), 2 * G_PI, 1e-9);
}

/* Worked by hand: OD of 2 in pipe is 60.325 mm, so a spoke is 1 − 0.0301625 m. */
/* 300° of 1 m radius in four pieces: 5.236 m of pipe. Equal pieces would be 1.309 m with the
 * middle joint on the middle one of five ties; all three move by the same length, which the
 * first piece gains and the last one loses. */
static void
test_an_arc_is_cut_by_its_joints (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();
  SwRuns runs;

  design->shape.coverage_deg = 300;
  design->stand.ring_span = SW_SPAN_ARC;
  design->stand.ring_ties = 5;
  sw_runs_init (&runs, design, catalogue ());
  g_autoptr (GPtrArray) cuts = cuts_of (design);
  const SwCutPlan *plan = plan_for (cuts, "pvc40-1");
  g_assert_cmpuint (pieces_in (plan), ==, 4);
  g_assert_cmpfloat_with_epsilon (length_in (plan), 300 * G_PI / 180, 1e-9);
  double longest_m = g_array_index ((GArray *) plan->bars->pdata[0], double, 0);
  g_assert_cmpfloat_with_epsilon (longest_m,
                                  MAX (runs.ring_joints.first_m, runs.ring_joints.last_m),
                                  1e-12);
  g_assert_cmpfloat (longest_m, >, 75 * G_PI / 180 + 0.02);
  g_assert_cmpfloat (runs.ring_joints.clear_m, >, 0.02);
}

static void
test_spokes_share_the_ring_pipe (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->stand.ring_spokes = 3;
  g_autoptr (GPtrArray) cuts = cuts_of (design);
  const SwCutPlan *plan = plan_for (cuts, "pvc40-1");
  g_assert_cmpuint (pieces_in (plan), ==, 4 + 3);
  g_assert_cmpfloat_with_epsilon (length_in (plan), 2 * G_PI + 3 * (1 - 0.0301625), 1e-9);
  g_assert_cmpuint (plan->bars->len, ==, 4);
}

static void
test_same_pipe_is_one_plan (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  g_free (design->topper.stub);
  design->topper.stub = g_strdup ("sch40-2");
  g_autoptr (GPtrArray) cuts = cuts_of (design);
  const SwCutPlan *plan = plan_for (cuts, "sch40-2");
  g_assert_cmpuint (plan->bars->len, ==, 1);
  g_assert_cmpfloat_with_epsilon (plan->stock_m, 6.40, 1e-12);
  g_assert_cmpfloat_with_epsilon (length_in (plan), 2.8142038 + 0.2363038, 1e-9);
}

/* Source of the widths: ALSC PS 20, dry. */
static void
test_board_is_the_nearest_width (void)
{
  static const struct {
    double width_m, arm_m;
    const char *id;
    double stock_ft;
  } cases[] = {
    { 0.089, 0.5, "board-2x4", 8 },   { 0.140, 1.2192, "board-2x6", 8 },
    { 0.140, 1.23, "board-2x6", 10 }, { 0.2, 2.4, "board-2x8", 16 },
    { 0.5, 0.5, "board-2x12", 8 },
  };

  for (guint k = 0; k < G_N_ELEMENTS (cases); k++) {
    g_autoptr (SwDesign) design = sw_design_new ();
    design->stand.arm_width_m = cases[k].width_m;
    design->stand.arm_m = cases[k].arm_m;
    g_autoptr (GPtrArray) cuts = cuts_of (design);
    const SwCutPlan *plan = plan_for (cuts, cases[k].id);
    g_assert_cmpfloat_with_epsilon (plan->stock_m, cases[k].stock_ft * 0.3048, 1e-9);
    g_assert_cmpfloat_with_epsilon (length_in (plan), 4 * cases[k].arm_m, 1e-9);
  }
}

static void
test_unknown_ids_cut_nothing (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  g_free (design->stand.ring_pipe);
  design->stand.ring_pipe = g_strdup ("moonbeam");
  g_autoptr (GPtrArray) cuts = cuts_of (design);
  g_assert_cmpuint (cuts->len, ==, G_N_ELEMENTS (lawn) - 1);
  g_assert_null (find_plan (cuts, "moonbeam"));
}

/* Every design inside the ranges can be cut; the odd ends of the ranges too. */
static void
test_ends_of_the_ranges (void)
{
  static const double stocks_m[] = { 0, 1e-9, 0.5, 0.777, 30 };

  for (guint k = 0; k < G_N_ELEMENTS (stocks_m); k++) {
    g_autoptr (SwDesign) design = sw_design_new ();
    design->stand.post_stock_m = stocks_m[k];
    design->shape.crown_height_m = 15;
    design->shape.ring_radius_m = 10;
    design->stand.ring_sections = 64;
    design->stand.ring_spokes = 64;
    design->stand.arm_m = 5;
    design->topper.stub_m = 0;
    design->stand.sleeve_depth_m = 1e-12;
    g_autoptr (GPtrArray) cuts = cuts_of (design);
    const SwCutPlan *post = plan_for (cuts, "sch40-2");
    g_assert_cmpfloat_with_epsilon (length_in (post), 15 - 1.803 * 0.0254, 1e-6);
    g_assert_null (find_plan (cuts, "emt-1/2"));
    /* no sleeve, only what sleeves the joints */
    g_assert_cmpint (find_plan (cuts, "sch40-2-1/2") != NULL, ==, pieces_in (post) > 1);
  }
}

/* Less than a micrometre over its stock is not over it. */
static void
test_post_as_long_as_its_stock (void)
{
  g_autoptr (SwDesign) design = sw_design_new ();

  design->stand.post_stock_m = 2.8142038;
  design->shape.crown_height_m = 2.8600009;
  g_autoptr (GPtrArray) cuts = cuts_of (design);
  g_assert_cmpuint (pieces_in (plan_for (cuts, "sch40-2")), ==, 1);
}

/* By true dimensions, not by trade sizes. */
static void
test_posts_of_the_starts_go_in (void)
{
  for (guint k = 0; k < sw_n_starts; k++) {
    g_autoptr (GError) error = NULL;
    g_autoptr (SwDesign) design = sw_start_new (sw_starts[k].name, &error);
    g_assert_no_error (error);
    const SwPipe *post = sw_catalogue_pipe (catalogue (), design->stand.post);
    const SwPipe *sleeve = sw_catalogue_pipe (catalogue (), design->stand.sleeve);
    g_assert_true (post != NULL && sleeve != NULL);
    g_assert_cmpfloat (post->od_m, <, sleeve->id_m);
  }
}

static void
test_exact_is_never_more (void)
{
  g_autoptr (GError) error = NULL;

  for (int sections = 1; sections <= 9; sections++) {
    g_autoptr (SwDesign) design = sw_design_new ();
    design->stand.ring_sections = sections;
    design->stand.ring_spokes = sections;
    g_autoptr (GPtrArray) quick = cuts_of (design);
    g_autoptr (GPtrArray) best = sw_cuts_new_exact (design, catalogue (), NULL, &error);
    g_assert_no_error (error);
    g_assert_cmpuint (best->len, ==, quick->len);
    for (guint i = 0; i < best->len; i++) {
      const SwCutPlan *a = best->pdata[i], *b = quick->pdata[i];
      g_assert_cmpuint (a->bars->len, <=, b->bars->len);
      g_assert_true (a->optimal);
    }
  }
}

static void
test_exact_can_be_cancelled (void)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = sw_design_new ();
  g_autoptr (GCancellable) cancellable = g_cancellable_new ();

  g_cancellable_cancel (cancellable);
  g_assert_null (sw_cuts_new_exact (design, catalogue (), cancellable, &error));
  g_assert_error (error, G_IO_ERROR, G_IO_ERROR_CANCELLED);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/cuts/the starting design", test_lawn);
  g_test_add_func ("/engine/cuts/the post stands deep in a socket",
                   test_post_stands_deep_in_a_socket);
  g_test_add_func ("/engine/cuts/long runs are joined", test_long_runs_are_joined);
  g_test_add_func ("/engine/cuts/an arc is only under the strips",
                   test_arc_is_only_under_the_strips);
  g_test_add_func ("/engine/cuts/an arc is cut by its joints",
                   test_an_arc_is_cut_by_its_joints);
  g_test_add_func ("/engine/cuts/spokes share the ring pipe", test_spokes_share_the_ring_pipe);
  g_test_add_func ("/engine/cuts/the same pipe is one plan", test_same_pipe_is_one_plan);
  g_test_add_func ("/engine/cuts/a board is the nearest width",
                   test_board_is_the_nearest_width);
  g_test_add_func ("/engine/cuts/unknown ids cut nothing", test_unknown_ids_cut_nothing);
  g_test_add_func ("/engine/cuts/the ends of the ranges can be cut", test_ends_of_the_ranges);
  g_test_add_func ("/engine/cuts/a post may be as long as its stock",
                   test_post_as_long_as_its_stock);
  g_test_add_func ("/engine/cuts/the post of every start goes into its sleeve",
                   test_posts_of_the_starts_go_in);
  g_test_add_func ("/engine/cuts/exact is never more", test_exact_is_never_more);
  g_test_add_func ("/engine/cuts/exact can be cancelled", test_exact_can_be_cancelled);
  return g_test_run ();
}
