// SPDX-License-Identifier: GPL-3.0-or-later
/* How it fits together: sections, every pair with its clearance, heights, and locks. */
#include "drawing/fit-section.h"
#include "engine/cuts.h"
#include "packet/frame.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <math.h>

#define SECTION_HEIGHT 205.0
#define LABEL_ROOM 60.0 /* right of a section, for its numbers */
#define CAPTION_ROOM 14.0

typedef struct {
  SwSectionSize (*size) (const SwSolution *solution);
  void (*draw) (cairo_t *cr, const SwPicture *picture, const SwSolution *solution, double x);
  const char *caption; /* N_() */
} SectionSheet;

static const SectionSheet sections[] = {
  { sw_crown_section_size, sw_crown_section_draw, N_ ("Crown, cut through the middle") },
  { sw_sleeve_section_size, sw_sleeve_section_draw, N_ ("Sleeve, cut through the middle") },
};

static void
draw_section (const SwPen *pen, const SwBox *box, const SectionSheet *sheet)
{
  SwSectionSize size = sheet->size (pen->solution);
  double width = box->width - LABEL_ROOM, height = box->height - CAPTION_ROOM - 8;
  double most = MIN (width / (2 * size.half_m), height / (size.top_m - size.lowest_m));
  char scale[16];
  SwView view = { .width = box->width, .height = box->height };
  SwPicture picture = { .view = &view, .style = pen->style, .language = pen->language };

  view.scale = sw_frame_scale (pen->solution->design->units, most, scale);
  view.x0 = width / 2;
  view.y0 = 4 + size.top_m * view.scale;
  g_autofree char *caption =
    sw_pen_say (pen, N_ ("%s. Scale %s"), sw_pen_word (pen, sheet->caption), scale);
  SwWriting writing = { .size = pen->style->text_small, .width = box->width, .one_line = TRUE };
  g_autoptr (PangoLayout) text = sw_pen_layout (pen, &writing, caption);
  cairo_save (pen->cr);
  cairo_translate (pen->cr, box->x, box->y);
  sheet->draw (pen->cr,
               &picture,
               pen->solution,
               view.x0 + size.half_m * view.scale + LABEL_ROOM / 4);
  cairo_restore (pen->cr);
  sw_pen_show (pen, SW_INK_SECOND, box->x, box->y + box->height - CAPTION_ROOM, text);
}

void
sw_sleeve_section_block (const SwPen *pen, const SwBox *box, gpointer data)
{
  draw_section (pen, box, &sections[1]);
}

static void
draw_sections (const SwPen *pen, const SwBox *box, gpointer data)
{
  double share = 0.62;
  SwBox left = { box->x, box->y, box->width * share, box->height };
  SwBox right = { box->x + left.width, box->y, box->width - left.width, box->height };

  draw_section (pen, &left, &sections[0]);
  draw_section (pen, &right, &sections[1]);
}

static const SwColumn pair_columns[] = {
  { N_ ("No."), SW_TEXT_RIGHT, 0 },    { N_ ("Pair"), SW_TEXT_LEFT, 0.5 },
  { N_ ("Parts"), SW_TEXT_LEFT, 0.5 }, { N_ ("Inner"), SW_TEXT_RIGHT, 0 },
  { N_ ("Outer"), SW_TEXT_RIGHT, 0 },  { N_ ("Room"), SW_TEXT_RIGHT, 0 },
  { N_ ("It"), SW_TEXT_LEFT, 0 },      { N_ ("Tried"), SW_TEXT_CENTRE, 0 },
};

static char *
short_length (const SwPen *pen, double metres)
{
  return sw_pen_number_or_dash (pen, metres, SW_QUANTITY_SHORT_LENGTH);
}

/* Play is less than a sixteenth of an inch: always in millimetres too. */
static char *
room (const SwPen *pen, const SwPair *pair)
{
  g_autofree char *mm = NULL;

  if (!isfinite (pair->clearance_m))
    return g_strdup ("–");
  mm = sw_pen_decimal (pen, pair->clearance_m * 1000, 1);
  return g_strdup_printf ("%s\302\240mm", mm);
}

static void
add_pair (const SwPen *pen, SwTable *table, const SwPair *pair, guint number)
{
  g_autofree char *place = g_strdup_printf ("%u", number);
  g_autofree char *inner = short_length (pen, pair->inner_m);
  g_autofree char *outer = short_length (pen, pair->outer_m);
  g_autofree char *left = room (pen, pair);
  g_autofree char *parts =
    g_strdup_printf ("%s%s%s",
                     sw_pen_word (pen, pair->inner),
                     pair->outer == NULL ? "" : " / ",
                     pair->outer == NULL ? "" : sw_pen_word (pen, pair->outer));
  const char *cells[] = { place,
                          sw_pen_word (pen, pair->what),
                          parts,
                          inner,
                          outer,
                          left,
                          sw_pen_word (pen, sw_verdict_labels[pair->verdict]),
                          SW_CELL_TICK };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_pairs (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwFitChain *fits = &pen->solution->fits;
  g_autoptr (SwTable) table = sw_table_new (pair_columns, G_N_ELEMENTS (pair_columns));

  for (guint i = 0; i < fits->n; i++)
    add_pair (pen, table, &fits->pairs[i], i + 1);
  sw_flow_table (flow, table);
  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("True sizes, not trade names; of a thread, the outside of the pipe that "
                     "bears it. Seams, zinc and tolerances take about 0.5 to 0.8 mm: try each "
                     "pair before you cut the rest. Makers' fittings differ in height: measure "
                     "yours, and move the cut by as much.")));
}

static void
add_length (const SwPen *pen, SwTable *table, const char *words, double metres)
{
  if (isfinite (metres))
    sw_table_add_fact (table, pen, words, sw_pen_tape (pen, metres));
}

static void
add_heights (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwHeightChain *heights = &pen->solution->heights;
  g_autoptr (SwTable) table = sw_table_new_facts ();

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Heights, from the ground up")));
  add_length (pen,
              table,
              N_ ("The post stands above ground (below it: minus)"),
              heights->foot_m);
  add_length (pen, table, N_ ("+ post, cut"), heights->post_m);
  add_length (pen, table, N_ ("+ from the post's end to under the plate"), heights->flange_m);
  add_length (pen, table, N_ ("− hooks hang below the plate by"), heights->hook_drop_m);
  add_length (pen, table, N_ ("= crown above ground"), sw_height_chain_crown_m (heights));
  add_length (pen, table, N_ ("Sleeve, cut"), heights->sleeve_m);
  add_length (pen, table, N_ ("Star stub, cut"), heights->stub_m);
  if (isfinite (pen->solution->lift_kg))
    sw_table_add_fact (table,
                       pen,
                       N_ ("To lift: post, crown, strips and star"),
                       sw_pen_number (pen, pen->solution->lift_kg, SW_QUANTITY_MASS));
  sw_flow_table (flow, table);
}

static void
add_joints (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwSolution *solution = pen->solution;
  const SwPipe *post = solution->fittings.post;
  SwPostJoints joints;

  if (post == NULL)
    return;
  sw_post_joints_init (&joints,
                       solution->heights.post_m,
                       sw_pipe_stock_m (post, solution->design));
  if (joints.pieces < 2)
    return;
  const SwPipe *tube = sw_joint_tube (solution->catalogue, post);
  g_autofree char *lowest = sw_pen_tape (pen, joints.lowest_joint_m);
  g_autofree char *length = sw_pen_tape (pen, sw_joint_tube_m (post));
  g_autofree char *words =
    tube == NULL
      ? sw_pen_say (pen,
                    N_ ("The post is of %d pieces; the lowest joint is %s above its foot."),
                    joints.pieces,
                    lowest)
      : sw_pen_say (
          pen,
          N_ ("The post is of %d pieces; the lowest joint is %s above its foot. Sleeve "
              "each joint with %s, %s long, half to each side, and two through-bolts."),
          joints.pieces,
          lowest,
          sw_pen_word (pen, tube->name),
          length);
  sw_flow_text (flow, words);
}

static void
add_locks (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  const SwFitChain *fits = &pen->solution->fits;

  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Nothing turns: a lock on each joint")));
  sw_flow_text (
    flow,
    sw_pen_word (pen,
                 N_ ("Screwed tight, drill through the outer part into the inner one and set a "
                     "locking screw: for 1/4-20 drill no. 7 (5.1 mm) and tap. Tick each.")));
  for (guint i = 0; i < fits->n; i++) {
    if (!fits->pairs[i].locked)
      continue;
    g_autofree char *words =
      g_strdup_printf ("%u: %s", i + 1, sw_pen_word (pen, fits->pairs[i].what));
    sw_flow_tick (flow, words);
  }
  sw_flow_tick (flow, sw_pen_word (pen, N_ ("Post: a through-bolt across post and sleeve.")));
  if (pen->solution->design->topper.kind == SW_TOPPER_STAR)
    sw_flow_tick (flow, sw_pen_word (pen, N_ ("Star: a tether from its frame to the post.")));
}

static void
add_lift_caution (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autofree char *mass = sw_pen_number (pen, pen->solution->lift_kg, SW_QUANTITY_MASS);
  g_autofree char *words = sw_pen_say (
    pen,
    N_ ("all of it weighs %s. Raise the bare post first, with enough people, in still "
        "air, and well away from overhead lines; nobody stands below."),
    mass);

  if (isfinite (pen->solution->lift_kg))
    sw_flow_caution (flow, sw_pen_word (pen, N_ ("Lifting")), words);
}

void
sw_fits_fill (SwFlow *flow)
{
  add_lift_caution (flow);
  sw_flow_add (flow, &(SwBlock){ SECTION_HEIGHT, 6, FALSE, draw_sections, NULL, NULL }, NULL);
  add_pairs (flow);
  add_heights (flow);
  add_joints (flow);
  add_locks (flow);
}
