// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/build-steps.h"
#include "engine/step-values.h"
#include "random-design.h"

#include <math.h>

static const SwStep *
find_step (const GPtrArray *steps, const char *id)
{
  for (guint i = 0; i < steps->len; i++) {
    const SwStep *step = steps->pdata[i];
    if (strcmp (step->row->id, id) == 0)
      return step;
  }
  return NULL;
}

static gboolean
is_used (const GPtrArray *steps, const SwPart *part)
{
  for (guint i = 0; i < steps->len; i++) {
    if (g_ptr_array_find (((const SwStep *) steps->pdata[i])->parts, part, NULL))
      return TRUE;
  }
  return FALSE;
}

static void
assert_parts_are_used (const SwSolution *solution)
{
  g_autoptr (GPtrArray) steps = sw_steps_new (solution);

  for (guint i = 0; i < solution->bom->len; i++) {
    const SwPart *part = &g_array_index (solution->bom, SwPart, i);
    if (!is_used (steps, part))
      g_error ("no step uses %s", part->id);
  }
}

static gboolean
is_listed (const SwSolution *solution, const SwPart *part)
{
  const SwPart *first = &g_array_index (solution->bom, SwPart, 0);

  return part >= first && part < first + solution->bom->len && part->quantity > 0;
}

static void
assert_parts_are_listed (const SwSolution *solution)
{
  g_autoptr (GPtrArray) steps = sw_steps_new (solution);

  for (guint i = 0; i < steps->len; i++) {
    const SwStep *step = steps->pdata[i];
    for (guint k = 0; k < step->parts->len; k++)
      g_assert_true (is_listed (solution, step->parts->pdata[k]));
  }
}

static void
test_every_part_is_used (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (51);

  for (guint i = 0; i < sw_n_starts; i++) {
    g_autoptr (SwSolution) solution = solve_with (sw_starts[i].name, "");
    assert_parts_are_used (solution);
    assert_parts_are_listed (solution);
  }
  for (guint i = 0; i < 200; i++) {
    g_autoptr (SwDesign) design = random_design (rand);
    g_autoptr (SwSolution) solution = solve_design (design);
    assert_parts_are_used (solution);
    assert_parts_are_listed (solution);
  }
}

/* No name of a value is left over, and a text of two braces is none. */
static void
assert_text_is_filled (const SwSolution *solution, const SwStep *step, const char *id)
{
  g_autofree char *text = sw_step_text (solution, id, &sw_language_english);

  if (strchr (text, '{') != NULL || strchr (text, '}') != NULL)
    g_error ("%s: %s", step->row->id, text);
}

static void
test_texts_name_only_values_there_are (void)
{
  g_autoptr (GRand) rand = g_rand_new_with_seed (52);

  for (guint i = 0; i < 30; i++) {
    g_autoptr (SwDesign) design = random_design (rand);
    g_autoptr (SwSolution) solution = solve_design (design);
    g_autoptr (GPtrArray) steps = sw_steps_new (solution);

    for (guint k = 0; k < steps->len; k++) {
      const SwStep *step = steps->pdata[k];
      assert_text_is_filled (solution, step, step->row->what);
      assert_text_is_filled (solution, step, step->row->check);
      g_assert_true (step->row->each == NULL ||
                     isfinite (sw_step_value (solution, step->row->each)));
      g_assert_cmpint (step->hands, >, 0);
    }
  }
}

/* Each change takes the first step away and brings the second. */
static const struct {
  const char *sets, *gone, *come;
} changes[] = {
  { "stand.foot=bucket", "foot-slabs", "foot-bucket" },
  { "stand.foot=socket", "foot-lap", "foot-socket" },
  { "guys.count=0", "guy-stakes", NULL },
  { "topper.kind=none", "star-stub", NULL },
  { "topper.pixels=0", "star-pixels", "star-frame" },
  { "shape.coverage_deg=180", "tension-opposite", "tension-mirrored" },
  { "stand.ring_span=arc; shape.coverage_deg=180", "ring-bend-full", "ring-bend-arc" },
  { "stand.ring_held_by=foot", "ring-ground", "ring-foot" },
  { "stand.ring_spokes=4", NULL, "ring-spokes" },
  { "data.path=up-down", "strip-pixels-one-way", "strip-pixels-both-ways" },
  { "strip.tie_n_per_m=0", "tension-stretch", NULL },
};

static void
test_choices_change_the_steps (void)
{
  g_autoptr (SwSolution) lawn = solve_with ("lawn", "stand.ring_spokes=0; data.path=same-end");
  g_autoptr (GPtrArray) before = sw_steps_new (lawn);

  for (guint i = 0; i < G_N_ELEMENTS (changes); i++) {
    g_autofree char *sets =
      g_strconcat ("stand.ring_spokes=0; data.path=same-end; ", changes[i].sets, NULL);
    g_autoptr (SwSolution) solution = solve_with ("lawn", sets);
    g_autoptr (GPtrArray) after = sw_steps_new (solution);
    const char *gone = changes[i].gone, *come = changes[i].come;

    g_test_message ("%s", changes[i].sets);
    g_assert_true (gone == NULL || find_step (before, gone) != NULL);
    g_assert_true (gone == NULL || find_step (after, gone) == NULL);
    g_assert_true (come == NULL || find_step (before, come) == NULL);
    g_assert_true (come == NULL || find_step (after, come) != NULL);
  }
}

/* In the order of the work: no subject comes back, and concrete is poured before the post
 * is stood up. */
static void
test_subjects_follow_one_another (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "stand.foot=socket");
  g_autoptr (GPtrArray) steps = sw_steps_new (solution);

  g_assert_cmpuint (steps->len, >, 25);
  for (guint i = 1; i < steps->len; i++) {
    const SwStep *last = steps->pdata[i - 1], *step = steps->pdata[i];
    g_assert_cmpint (step->row->subject, >=, last->row->subject);
  }
}

/* The parts list buys the strips' material by the same cut length. */
static void
test_strips_are_cut_as_they_are_bought (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  double bought_m = 0;

  for (guint i = 0; i < solution->bom->len; i++) {
    const SwPart *part = &g_array_index (solution->bom, SwPart, i);
    if (strcmp (part->id, "strip-material") == 0)
      bought_m = part->quantity;
  }
  g_assert_cmpfloat_with_epsilon (sw_strip_cut_m (solution) * sw_step_value (solution, "made"),
                                  bought_m,
                                  1e-9);
}

/* Worked by hand: strips 1, 3, … of each port run up when data enters at the ring. */
static void
test_up_and_down_are_all_strips (void)
{
  g_autoptr (SwSolution) same = solve_with ("lawn", "data.path=same-end; data.enter=ring");
  g_autoptr (SwSolution) turned = solve_with ("lawn",
                                              "data.path=up-down; data.enter=ring; "
                                              "data.strips_per_port_max=2");
  int strips = same->design->shape.strip_count;

  g_assert_cmpint (sw_strips_up (same), ==, strips);
  g_assert_cmpint (sw_strips_up (turned), ==, strips / 2);
}

/* Worked by hand: Σ of four minutes-and-hands. */
static void
test_hours_are_hands_times_minutes (void)
{
  g_autoptr (SwSolution) solution = solve_with ("lawn", "");
  g_autoptr (GPtrArray) steps = sw_steps_new (solution);
  double minutes = 0;

  for (guint i = 0; i < steps->len; i++) {
    const SwStep *step = steps->pdata[i];
    g_assert_cmpfloat_with_epsilon (fmod (step->minutes, 5), 0, 1e-9);
    if (step->row->subject == SW_STEP_CROWN)
      minutes += step->hands * step->minutes;
  }
  g_assert_cmpfloat_with_epsilon (sw_steps_hours (steps, SW_STEP_CROWN), minutes / 60, 1e-9);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/engine/build-steps/every part is used and every used part is listed",
                   test_every_part_is_used);
  g_test_add_func ("/engine/build-steps/texts name only values that there are",
                   test_texts_name_only_values_there_are);
  g_test_add_func ("/engine/build-steps/choices change the steps",
                   test_choices_change_the_steps);
  g_test_add_func ("/engine/build-steps/subjects follow one another",
                   test_subjects_follow_one_another);
  g_test_add_func ("/engine/build-steps/strips are cut as they are bought",
                   test_strips_are_cut_as_they_are_bought);
  g_test_add_func ("/engine/build-steps/up and down are all strips",
                   test_up_and_down_are_all_strips);
  g_test_add_func ("/engine/build-steps/hours are hands times minutes",
                   test_hours_are_hands_times_minutes);
  return g_test_run ();
}
