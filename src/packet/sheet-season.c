// SPDX-License-Identifier: GPL-3.0-or-later
/* The first evening and the season: power on, weekly check, taking down. */
#include "engine/step-values.h"
#include "packet/form.h"
#include "packet/sheet-pages.h"

#include <glib/gi18n.h>
#include <math.h>

static const char *const before_power[] = {
  N_ ("All fuses out, mains unplugged, driver box off."),
  N_ (
    "Every feeder, at the supply’s end, from + to −: no short. (A few hundred ohms and more is "
    "the pixels; near zero is a fault.)"),
  N_ ("Every + feeds a +: at each plug, by colour and by meter."),
  N_ ("Every box closed, its leads entering from below, each with a drip loop."),
  N_ ("The outlet’s residual-current (ground-fault) device trips by its test button."),
  NULL,
};

static const SwColumn reading_columns[] = {
  { N_ ("With this on"), SW_TEXT_LEFT, 1 },
  { N_ ("The meter must read"), SW_TEXT_RIGHT, 0 },
  { N_ ("Found"), SW_TEXT_RIGHT, 0 },
};

static void
add_reading (const SwPen *pen, SwTable *table, const char *what, char *value)
{
  g_autofree char *owned = value;
  const char *cells[] = { what, owned, SW_CELL_WRITE };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_idle_readings (const SwPen *pen, SwTable *table)
{
  double supply_v = pen->solution->design->power.supply_v;
  g_autofree char *low = sw_pen_number (pen, 0.97 * supply_v, SW_QUANTITY_VOLTAGE);
  g_autofree char *high = sw_pen_number (pen, 1.03 * supply_v, SW_QUANTITY_VOLTAGE);

  add_reading (pen,
               table,
               sw_pen_word (pen, N_ ("Mains on, no fuse in: each supply’s output")),
               sw_pen_say (pen, N_ ("%s to %s"), low, high));
}

static void
add_strip_readings (const SwPen *pen, SwTable *table)
{
  const SwPower *power = &pen->solution->power;
  g_autofree char *pixel = g_strdup_printf ("%d", power->worst_pixel);
  g_autofree char *worst =
    sw_pen_say (pen, N_ ("The same: at its pixel %s, counted from the ring"), pixel);

  add_reading (pen,
               table,
               sw_pen_word (pen, N_ ("First fuse in, strip 1 white: its current")),
               sw_pen_number (pen, power->strip_current_a, SW_QUANTITY_CURRENT));
  add_reading (pen,
               table,
               worst,
               sw_pen_number (pen, power->worst_pixel_v, SW_QUANTITY_VOLTAGE));
}

/* Each supply with all that hangs on it. */
static void
add_supply_readings (const SwPen *pen, SwTable *table)
{
  const SwSolution *solution = pen->solution;

  for (int i = 0; i < solution->zones.count; i++) {
    SwZone zone = sw_zones_get (&solution->zones, i);
    double amps = zone.load_w / solution->design->power.supply_v;
    g_autofree char *what =
      sw_pen_say (pen, N_ ("All fuses in, all white: what supply %d gives"), i + 1);

    add_reading (pen, table, what, sw_pen_number (pen, amps, SW_QUANTITY_CURRENT));
  }
}

static void
add_mains_readings (const SwPen *pen, SwTable *table)
{
  const SwWiring *wiring = &pen->solution->wiring;
  g_autofree char *low = sw_pen_number (pen, wiring->mains_a, SW_QUANTITY_CURRENT);
  g_autofree char *high = sw_pen_number (pen, wiring->mains_most_a, SW_QUANTITY_CURRENT);

  add_reading (pen,
               table,
               sw_pen_word (pen, N_ ("The same: all mains leads together")),
               sw_pen_say (pen, N_ ("%s to %s"), low, high));
}

static void
add_readings (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (reading_columns, G_N_ELEMENTS (reading_columns));

  add_idle_readings (pen, table);
  if (pen->solution->power.feasible) {
    add_strip_readings (pen, table);
    add_supply_readings (pen, table);
    add_mains_readings (pen, table);
  }
  sw_flow_table (flow, table);
}

void
sw_power_on_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autofree char *cap =
    sw_pen_number (pen, pen->solution->design->power.cap, SW_QUANTITY_SHARE);
  g_autofree char *white = sw_pen_say (
    pen,
    N_ ("White is white at the highest brightness allowed, %s. Within a tenth of what stands "
        "here; more is a fault or another pixel than was designed for, and the fuses and wires "
        "are not sized for it: off, and find out why."),
    cap);

  sw_flow_caution (
    flow,
    sw_pen_word (pen, N_ ("Mains")),
    sw_pen_word (pen,
                 N_ ("dry hands, dry ground, boxes closed before the mains is on. "
                     "Measure mains current with a clamp round one wire of a "
                     "splitter made for it, never with probes.")));
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Before")));
  sw_flow_ticks (flow, before_power);
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("On, one after the other")));
  sw_flow_text (flow, white);
  add_readings (flow);
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("After an hour")));
  sw_flow_tick (
    flow,
    sw_pen_word (pen,
                 N_ ("No plug, fuse, splice or supply is too hot to keep a hand on, "
                     "and nothing has gone dark.")));
}

typedef struct {
  gboolean (*applies) (const SwSolution *solution); /* NULL: always */
  const char *words;                                /* N_(), with values */
} Line;

static gboolean
has_guys (const SwSolution *s)
{
  return s->design->guys.count > 0;
}

static gboolean
has_pegs (const SwSolution *s)
{
  return s->design->stand.ring_held_by == SW_HELD_BY_GROUND && s->design->stand.ring_ties > 0;
}

static gboolean
has_star (const SwSolution *s)
{
  return s->design->topper.kind == SW_TOPPER_STAR;
}

static gboolean
has_slabs (const SwSolution *s)
{
  return s->foot.slabs > 0;
}

static gboolean
has_boards (const SwSolution *s)
{
  return s->heights.board != NULL;
}

static gboolean
has_sleeve (const SwSolution *s)
{
  return s->heights.sleeve_m > 0;
}

static void
add_lines (SwFlow *flow, const Line *lines)
{
  const SwPen *pen = sw_flow_pen (flow);

  for (guint i = 0; lines[i].words != NULL; i++) {
    if (lines[i].applies != NULL && !lines[i].applies (pen->solution))
      continue;
    g_autofree char *text = sw_step_text (pen->solution, lines[i].words, pen->language);
    sw_flow_tick (flow, text);
  }
}

static const Line weekly[] = {
  { NULL, N_ ("Plumb line from the crown: within {plumb} both ways, as on the first day.") },
  { has_guys,
    N_ ("Each guy reads {guy_pull} within a fifth; no stake has moved; markers are there.") },
  { has_pegs, N_ ("Every peg and strap of the ring is tight; none has lifted.") },
  { has_slabs,
    N_ ("All {slabs} slabs lie where they lay, {slabs_each} on each arm, straps tight.") },
  { NULL,
    N_ ("Strips: none twisted, rubbing or slack; ties not cracked. One by scale: {pull}.") },
  { has_star, N_ ("Star: does not turn, its tether is whole.") },
  { NULL,
    N_ ("Plugs and boxes above snow and puddles, leads with their drip loops, no box wet "
        "inside.") },
  { NULL, N_ ("The residual-current (ground-fault) device trips by its test button.") },
  { NULL,
    N_ ("A look from the walk: dark or wrong pixels, written down by strip and number.") },
  { NULL, N_ ("The forecast of gusts for the week against the storm plan of the sheet Wind.") },
  { NULL, NULL },
};

static const SwColumn week_columns[] = {
  { N_ ("Week"), SW_TEXT_RIGHT, 0 },
  { N_ ("Date"), SW_TEXT_CENTRE, 1 },
  { N_ ("Out of plumb"), SW_TEXT_CENTRE, 1 },
  { N_ ("One tie, pull"), SW_TEXT_CENTRE, 1 },
  { N_ ("All ticked, by"), SW_TEXT_CENTRE, 1 },
};

#define WEEKS 8 /* a season, and some */

void
sw_weekly_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (week_columns, G_N_ELEMENTS (week_columns));

  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("Once a week, by daylight, with the lights off; and after every "
                     "storm. Anything that fails here is put right before the "
                     "evening, or the tree stays dark or comes down.")));
  add_lines (flow, weekly);
  for (int week = 1; week <= WEEKS; week++) {
    g_autofree char *number = g_strdup_printf ("%d", week);
    const char *cells[] = { number,
                            SW_CELL_WRITE,
                            SW_CELL_WRITE,
                            SW_CELL_WRITE,
                            SW_CELL_WRITE };

    sw_table_add (table, SW_ROW_PLAIN, cells);
  }
  sw_flow_table (flow, table);
}

static const Line down[] = {
  { NULL,
    N_ ("A dry day without gusts. Mains unplugged, fuses out, driver box off; fall circle of "
        "{fall} roped off.") },
  { NULL, N_ ("Unplug data leads and feeders; leave every label on.") },
  { NULL,
    N_ ("Untie the strips at the ring in pairs, the tensioning order backwards, and let them "
        "hang.") },
  { has_guys,
    N_ ("Guys hand-tight; two people at the rope and one at the tail rope before the "
        "first shackle is opened.") },
  { NULL, N_ ("Lay the tree down the way it was raised, {lift} in all, with as many people.") },
  { has_star, N_ ("Star off first, its tether last.") },
  { NULL,
    N_ ("Strips off their hooks in number order, 1 to {strips}; wipe, and hang them indoors "
        "until they are dry, two days.") },
  { NULL,
    N_ ("Roll each with its pixels outwards, not tighter than a dinner plate, and box them "
        "in number order: 1 on top.") },
  { NULL,
    N_ ("Ring apart into its {ring_sections} sections; mark the joints A–A, B–B before you "
        "open them.") },
  { has_slabs, N_ ("Slabs off last: until the post is down they hold it.") },
  { has_sleeve, N_ ("Cap the sleeve.") },
  { NULL,
    N_ ("Supplies and driver box indoors, dry, leads coiled with their labels outside.") },
  { NULL, NULL },
};

static const Line yearly[] = {
  { NULL, N_ ("Elastic ties: all new, they age in the sun whether they look it or not.") },
  { NULL, N_ ("Cable ties: all new.") },
  { has_guys,
    N_ ("Guys: new when a strand is broken, rust comes off on the hand, or after five "
        "seasons; stakes pull-tested again.") },
  { NULL, N_ ("Fuse holders and plugs: new where green, brown or warm.") },
  { has_boards,
    N_ ("Boards: a screwdriver does not go in at lap and bolts; seal them again.") },
  { NULL, N_ ("Post, plate and hooks: no crack, no rust that flakes, nuts tight.") },
  { NULL, N_ ("PVC: new where it is chalky, cracked or has crept out of round.") },
  { NULL, N_ ("One strip on the bench for an hour, and its reading beside last year’s.") },
  { NULL, NULL },
};

void
sw_take_down_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);

  sw_flow_caution (
    flow,
    sw_pen_word (pen, N_ ("Height and weight")),
    sw_pen_word (pen,
                 N_ ("coming down is the same lift as going up, with tired people "
                     "and cold hands: as many people, the same block and ropes, "
                     "nobody in the fall circle.")));
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("In this order")));
  add_lines (flow, down);
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Before the next season")));
  sw_flow_text (flow,
                sw_pen_word (pen,
                             N_ ("Times to renew are common practice, no source; a maker’s own "
                                 "word comes first.")));
  add_lines (flow, yearly);
}
