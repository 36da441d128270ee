// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/fit-chain.h"
#include "raised.h"

#include <math.h>

#define INCH_M 0.0254

/* Returns: (nullable). */
static const SwPair *
pair_of (const SwSolution *solution, const char *what)
{
  for (guint i = 0; i < solution->fits.n; i++) {
    if (strcmp (solution->fits.pairs[i].what, what) == 0)
      return &solution->fits.pairs[i];
  }
  return NULL;
}

static const SwPair *
expect_pair (const SwSolution *solution, const char *what)
{
  const SwPair *pair = pair_of (solution, what);

  if (pair == NULL)
    g_error ("no %s", what);
  return pair;
}

/* Sources of sizes: ASME B36.10M (2 in pipe 2.375 in across, 2-1/2 in pipe 2.469 in inside,
 * 1-1/2 in pipe 1.610 in inside), ANSI C80.3 (1 in EMT 1.163 in across, 1-1/4 in 1.380 in
 * inside; 1-1/2 in 1.740 in across, 2 in 2.067 in inside), ANSI C80.1 (1-1/4 in RMC 1.660 in
 * across), ASME B18.2.8 (1/4 in bolt in 9/32 in), ISO 273 (M8 in 9 mm).
 */
static const struct {
  const char *start, *sets, *what;
  double clearance_in;
  SwVerdict verdict;
} cases[] = {
  { "lawn", "", "Post in its sleeve", 2.469 - 2.375, SW_VERDICT_FITS },
  { "porch", "", "Post in its sleeve", 1.380 - 1.163, SW_VERDICT_FITS },
  { "lawn",
    "stand.post=emt-1-1/2; stand.sleeve=emt-2",
    "Post in its sleeve",
    0.327,
    SW_VERDICT_LOOSE },
  { "lawn",
    "stand.post=rmc-1-1/4; stand.sleeve=sch40-1-1/2",
    "Post in its sleeve",
    1.610 - 1.660,
    SW_VERDICT_TIGHT },
  { "lawn", "", "Hook in the crown plate", 1.0 / 32, SW_VERDICT_FITS },
  { "lawn", "crown.hook=eye-m8", "Hook in the crown plate", 1 / 25.4, SW_VERDICT_FITS },
  { "lawn", "", "Post in the flange under the plate", 0, SW_VERDICT_FITS },
  { "lawn", "", "Bushing in the flange on the plate", 0, SW_VERDICT_FITS },
  { "porch", "crown.hook=j-1/4", "Grommet on its hook", 0.125, SW_VERDICT_FITS },
  { "porch", "crown.hook=j-1/4", "Grommet in the strip", 16 / 25.4 - 0.78, SW_VERDICT_TIGHT },
};

static void
test_clearances_are_those_of_the_tables (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (cases); k++) {
    g_autoptr (SwSolution) solution = solve_with (cases[k].start, cases[k].sets);
    const SwPair *pair = expect_pair (solution, cases[k].what);
    if (fabs (pair->clearance_m - cases[k].clearance_in * INCH_M) > 1e-5 ||
        pair->verdict != cases[k].verdict)
      g_error ("%s, %s: %g in", cases[k].what, cases[k].sets, pair->clearance_m / INCH_M);
  }
}

/* Worked by hand: 15 N on 150 N/m pull a tie of 100 mm to 200 mm, a gap of 201.98 mm; 80 mm is
 * all a tie of 100 mm and 1.8 has, so 187 N/m and less leave nothing.
 */
static void
test_elastic_tie_in_its_gap (void)
{
  g_autoptr (SwSolution) lawn = solve_with ("lawn", "");
  g_autoptr (SwSolution) stiff = solve_with ("lawn", "strip.tie_n_per_m=300");
  const SwPair *gap = expect_pair (lawn, "Elastic tie in the gap at the tie");
  const SwPair *travel = expect_pair (lawn, "Travel of the elastic tie");

  g_assert_cmpfloat_with_epsilon (gap->inner_m, 0.2, 1e-12);
  g_assert_cmpfloat_with_epsilon (gap->clearance_m, lawn->cone.tail_m - 0.2, 1e-12);
  g_assert_cmpint (gap->verdict, ==, SW_VERDICT_FITS);
  g_assert_cmpfloat_with_epsilon (travel->clearance_m, 0.08 - 0.1, 1e-12);
  g_assert_cmpint (travel->verdict, ==, SW_VERDICT_TIGHT);
  g_assert_cmpint (expect_pair (stiff, "Travel of the elastic tie")->verdict,
                   ==,
                   SW_VERDICT_FITS);
}

/* Verdict and finding are one judgement. */
static void
test_verdicts_agree_with_findings (void)
{
  static const struct {
    const char *sets, *what, *code;
  } rows[] = {
    { "stand.sleeve=sch40-2", "Post in its sleeve", "post-not-in-sleeve" },
    { "stand.sleeve_depth_m=0.1", "Post in its sleeve", "sleeve-loose" },
    { "stand.post=al-2.00x0.125", "Post in the flange under the plate", "no-flange-for-post" },
    { "topper.stub=pvc40-1/2", "Stub on the flange of the crown", "no-fitting-for-stub" },
    { "shape.crown_radius_m=0.07", "Flange between the hooks", "hooks-over-flange" },
    { "shape.crown_radius_m=0.1", "Strips side by side at the crown", "crown-crowded" },
  };

  for (guint k = 0; k < G_N_ELEMENTS (rows); k++) {
    g_autoptr (SwSolution) solution = solve_with ("lawn", rows[k].sets);
    expect_finding (solution, rows[k].code);
    g_assert_cmpint (expect_pair (solution, rows[k].what)->verdict, !=, SW_VERDICT_FITS);
  }
}

/* Counted by hand: sleeve in its flange; post in its flange; bushing, connector and stub; the
 * star on its stub. With the Porch's thin tube, two more connectors.
 */
static void
test_nothing_turns (void)
{
  g_autoptr (SwSolution) lawn = solve_with ("lawn", "");
  g_autoptr (SwSolution) porch = solve_with ("porch", "");
  g_autoptr (SwSolution) bare = solve_with ("lawn", "topper.kind=none; stand.foot=socket");

  g_assert_cmpuint (sw_fit_locks (&lawn->fits), ==, 6);
  g_assert_cmpuint (sw_fit_locks (&porch->fits), ==, 8);
  g_assert_cmpuint (sw_fit_locks (&bare->fits), ==, 1);
}

static void
test_what_is_not_there_has_no_row (void)
{
  g_autoptr (SwSolution) solution =
    solve_with ("lawn", "stand.post=oak; crown.hook=oak; topper.kind=none");

  g_assert_null (pair_of (solution, "Post in its sleeve"));
  g_assert_null (pair_of (solution, "Hook in the crown plate"));
  g_assert_null (pair_of (solution, "Stub in the star's bracket"));
  g_assert_nonnull (pair_of (solution, "Sleeve in the flange on the boards"));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/fit-chain/clearances are those of the tables",
                   test_clearances_are_those_of_the_tables);
  g_test_add_func ("/engine/fit-chain/an elastic tie in its gap", test_elastic_tie_in_its_gap);
  g_test_add_func ("/engine/fit-chain/verdicts agree with findings",
                   test_verdicts_agree_with_findings);
  g_test_add_func ("/engine/fit-chain/nothing turns", test_nothing_turns);
  g_test_add_func ("/engine/fit-chain/what is not there has no row",
                   test_what_is_not_there_has_no_row);
  return g_test_run ();
}
