// SPDX-License-Identifier: GPL-3.0-or-later
/* Raising: which way, how many hands, what they hold; then the strips' tension. */
#include "engine/raising.h"
#include "engine/step-values.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

static const SwColumn way_columns[] = {
  { N_ ("Way"), SW_TEXT_LEFT, 0 },
  { N_ ("For this tree"), SW_TEXT_LEFT, 1 },
  { N_ ("People"), SW_TEXT_RIGHT, 0 },
};

static char *
people_text (const SwRaising *raising, SwRaiseWay way)
{
  if (way == SW_RAISE_HOIST || raising->answers[way] != SW_RAISE_YES)
    return g_strdup ("–");
  return g_strdup_printf ("%d",
                          way == SW_RAISE_TILT ? raising->whole.people
                                               : raising->platform_people);
}

static void
add_ways (SwFlow *flow, const SwRaising *raising)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (way_columns, G_N_ELEMENTS (way_columns));

  for (int way = 0; way < SW_RAISE_WAYS; way++) {
    g_autofree char *people = people_text (raising, (SwRaiseWay) way);
    const char *cells[] = { sw_pen_word (pen, sw_raise_way_labels[way]),
                            sw_pen_word (pen, sw_raise_answers[raising->answers[way]]),
                            people };

    sw_table_add (table, SW_ROW_PLAIN, cells);
  }
  sw_flow_table (flow, table);
}

static const SwColumn lift_columns[] = {
  { N_ ("Post from the ground"), SW_TEXT_RIGHT, 0 },
  { N_ ("Hands push"), SW_TEXT_RIGHT, 0 },
  { N_ ("Rope pulls"), SW_TEXT_RIGHT, 0 },
  { N_ ("Against the block"), SW_TEXT_RIGHT, 0 },
  { N_ ("Foot presses down"), SW_TEXT_RIGHT, 0 },
};

static char *
force_or_dash (const SwPen *pen, double force_n)
{
  return sw_pen_number_or_dash (pen, fabs (force_n) < 0.5 ? NAN : force_n, SW_QUANTITY_FORCE);
}

static void
add_lift_row (const SwPen *pen, SwTable *table, const SwLiftRow *row)
{
  g_autofree char *angle = sw_pen_number (pen, row->angle_deg, SW_QUANTITY_ANGLE);
  g_autofree char *push = force_or_dash (pen, row->push_n);
  g_autofree char *rope = force_or_dash (pen, row->rope_n);
  g_autofree char *block = force_or_dash (pen, row->block_n);
  g_autofree char *press = force_or_dash (pen, row->press_n);
  const char *cells[] = { angle, push, rope, block, press };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_lift (SwFlow *flow, const SwLift *lift, const char *title)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (lift_columns, G_N_ELEMENTS (lift_columns));
  g_autofree char *mass = sw_pen_number_or_dash (pen, lift->mass_kg, SW_QUANTITY_MASS);
  g_autofree char *centre = sw_pen_number_or_dash (pen, lift->centre_m, SW_QUANTITY_LENGTH);
  g_autofree char *people = sw_pen_say (
    pen,
    N_ ("%s, its middle of mass %s from the foot. %d push, %d on the rope, one on the "
        "tail rope behind, one who only watches and says the word."),
    mass,
    centre,
    lift->hands,
    lift->rope_hands);

  sw_flow_heading (flow, sw_pen_word (pen, title));
  sw_flow_text (flow, people);
  for (int i = 0; i < SW_LIFT_STEPS; i++)
    add_lift_row (pen, table, &lift->rows[i]);
  sw_flow_table (flow, table);
}

static void
say_geometry (SwFlow *flow, const SwRaising *raising)
{
  const SwPen *pen = sw_flow_pen (flow);
  double post_m = pen->solution->heights.post_m;
  g_autofree char *at = sw_pen_number_or_dash (pen, raising->rope_at_m, SW_QUANTITY_LENGTH);
  g_autofree char *walk =
    sw_pen_number_or_dash (pen, SW_RAISE_WALK * post_m, SW_QUANTITY_LENGTH);
  g_autofree char *reach = sw_pen_number (pen, SW_RAISE_REACH_M, SW_QUANTITY_LENGTH);
  g_autofree char *hold = sw_pen_number (pen, SW_RAISE_HOLD_M, SW_QUANTITY_LENGTH);
  g_autofree char *words = sw_pen_say (
    pen,
    N_ ("Reckoned at rest: hands under the post where it is %s above the ground, "
        "walking in, up to 45°; from there a rope tied %s from the foot and held %s "
        "high, %s beyond it. Jerks double these pulls: slow and steady."),
    reach,
    at,
    hold,
    walk);

  sw_flow_text (flow, words);
}

/* In the order of the work. */
static const char *const tilt_rules[] = {
  N_ ("Foot blocked: not with a shoe: a beam lies across it, "
      "staked or against the foot’s boards, that bears the push against the block above."),
  N_ (
    "Rope and tail rope tied before anyone lifts; the tail rope keeps the post from going past "
    "upright."),
  N_ ("Bare post first, twice up and down. Then crown, star and strips."),
  N_ (
    "People push from the side of the post, never from under it, and never with the foot’s end "
    "over their heads."),
  N_ ("No ladder leans on the post, ever. Nobody stands in the fall circle who does not lift."),
  N_ ("Upright: the bolt through sleeve and post, guys hand-tight, and only then hands off."),
};

static void
add_tilt (SwFlow *flow, const SwRaising *raising)
{
  const SwPen *pen = sw_flow_pen (flow);

  if (raising->answers[SW_RAISE_TILT] != SW_RAISE_YES)
    return;
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Tilt up")));
  say_geometry (flow, raising);
  for (guint i = 0; i < G_N_ELEMENTS (tilt_rules); i++)
    sw_flow_tick (flow, sw_pen_word (pen, tilt_rules[i]));
  add_lift (flow, &raising->bare, N_ ("Rehearsal: the bare post"));
  add_lift (flow, &raising->whole, N_ ("With crown, star and strips"));
  sw_flow_text (
    flow,
    sw_pen_word (
      pen,
      N_ ("A hand lifts half of 23 kg (51 lb), the load constant of the NIOSH lifting "
          "equation (NIOSH 94-110), because it walks; on a rope it pulls 200 N (45 "
          "lbf): our own choice. Fewer people than that: not today.")));
}

static void
add_platform (SwFlow *flow, const SwRaising *raising)
{
  const SwPen *pen = sw_flow_pen (flow);

  if (raising->answers[SW_RAISE_PLATFORM] != SW_RAISE_YES)
    return;
  g_autofree char *high = sw_pen_number (pen, raising->platform_m, SW_QUANTITY_LENGTH);
  g_autofree char *mass = sw_pen_number_or_dash (pen, raising->bare.mass_kg, SW_QUANTITY_MASS);
  g_autofree char *post =
    sw_pen_say (pen,
                N_ ("Stand the bare post (%s) up by hand into its sleeve and bolt it; guys "
                    "hand-tight."),
                mass);
  g_autofree char *tower =
    sw_pen_say (pen,
                N_ ("A platform %s high with guard rails stands on its own beside the post and "
                    "touches neither post nor guys (29 CFR 1926.451(c)(1): no higher than four "
                    "times its least width). Two people on it, one below."),
                high);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("From a platform")));
  sw_flow_tick (flow, post);
  sw_flow_tick (flow, tower);
  sw_flow_tick (
    flow,
    sw_pen_word (pen,
                 N_ ("Haul up crown and star in pieces on a line, bolt them on, then "
                     "hook on strip after strip, opposite ones in turn.")));
}

static char *
pairs_text (const SwPen *pen)
{
  g_autoptr (GArray) order = sw_tension_order (pen->solution->design);
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < order->len; i += 2) {
    g_string_append_printf (text, "%s%d", i > 0 ? ", " : "", g_array_index (order, int, i));
    if (i + 1 < order->len)
      g_string_append_printf (text, " + %d", g_array_index (order, int, i + 1));
  }
  return g_string_free (text, FALSE);
}

static void
add_tie_figures (const SwPen *pen, SwTable *table)
{
  const SwDesign *design = pen->solution->design;
  const SwStrip *strip = &design->strip;
  double stretch_m = sw_tie_stretch_m (design);

  sw_table_add_fact (table,
                     pen,
                     N_ ("First round, by scale"),
                     sw_pen_number (pen, strip->tension_n / 2, SW_QUANTITY_FORCE));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Second round, by scale"),
                     sw_pen_number (pen, strip->tension_n, SW_QUANTITY_FORCE));
  if (!isfinite (stretch_m))
    return;
  sw_table_add_fact (table,
                     pen,
                     N_ ("Or by the tie: its length unstretched"),
                     sw_pen_tape (pen, strip->tie_length_m));
  sw_table_add_fact (table,
                     pen,
                     N_ ("First round, its length"),
                     sw_pen_tape (pen, strip->tie_length_m + stretch_m / 2));
  sw_table_add_fact (table,
                     pen,
                     N_ ("Second round, its length"),
                     sw_pen_tape (pen, strip->tie_length_m + stretch_m));
}

static void
add_tension (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  gboolean whole = pen->solution->design->shape.coverage_deg >= 360;
  g_autoptr (SwTable) table = sw_table_new_facts ();
  g_autofree char *pairs = pairs_text (pen);
  g_autofree char *most = sw_pen_tape (pen, SW_PLUMB_M);
  g_autofree char *words = sw_pen_say (
    pen,
    N_ ("After each round hang the plumb line from the crown again: off by ______ and ______. "
        "More than %s: let the strips on that side off a little and go round once more."),
    most);

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Tensioning")));
  sw_flow_text (flow,
                whole
                  ? sw_pen_word (pen,
                                 N_ ("Opposite strips in turn, two people, so that the "
                                     "crown is never pulled to one side. In this order:"))
                  : sw_pen_word (pen,
                                 N_ ("Left and right in turn, two people: a partial tree "
                                     "pulls to its open side all the same, and foot or guys "
                                     "must hold that from the first strip. In this order:")));
  sw_flow_text (flow, pairs);
  add_tie_figures (pen, table);
  sw_flow_table (flow, table);
  sw_flow_tick (flow, words);
}

void
sw_raising_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  SwRaising raising;

  sw_raising_init (&raising, pen->solution);
  g_autofree char *fall =
    sw_pen_number (pen, pen->solution->cone.overall_height_m, SW_QUANTITY_LENGTH);
  g_autofree char *caution = sw_pen_say (
    pen,
    N_ ("a circle of %s round the foot is where it can fall. Nobody is in it who does "
        "not lift. Not in gusts, not alone, not in the dark, not near a line."),
    fall);

  sw_flow_caution (flow, sw_pen_word (pen, N_ ("Height and weight")), caution);
  add_ways (flow, &raising);
  add_tilt (flow, &raising);
  add_platform (flow, &raising);
  add_tension (flow);
}
