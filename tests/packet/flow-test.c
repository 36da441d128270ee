// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/flow.h"

/* Blocks that note where they were drawn. */
typedef struct {
  char name;
  GString *log;
} Mark;

static void
note_cb (const SwPen *pen, const SwBox *box, gpointer data)
{
  Mark *mark = data;

  g_string_append_printf (mark->log, "%c%g ", mark->name, box->y);
}

static const SwBlock *
add (SwFlow *flow, GString *log, char name, SwBlock block, const SwBlock *head)
{
  Mark *mark = g_new (Mark, 1);

  *mark = (Mark){ name, log };
  block.draw = note_cb;
  block.data = mark;
  block.free = g_free;
  return sw_flow_add (flow, &block, head);
}

static char *
drawn (SwFlow *flow, GString *log)
{
  int pages = sw_flow_pages (flow);

  for (int page = 0; page < pages; page++) {
    g_string_append_printf (log, "[%d] ", page);
    sw_flow_draw (flow, NULL, 0, 100, page);
  }
  return g_strchomp (log->str);
}

static void
test_blocks_stand_below_one_another (void)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (SwFlow) flow = sw_flow_new (NULL, 50, 100);

  add (flow, log, 'a', (SwBlock){ .height = 10, .gap = 7 }, NULL);
  add (flow, log, 'b', (SwBlock){ .height = 10, .gap = 5 }, NULL);
  g_assert_cmpstr (drawn (flow, log), ==, "[0] a100 b115");
  g_assert_cmpfloat_with_epsilon (sw_flow_height (flow), 25, 1e-9);
}

static void
test_what_does_not_fit_goes_on_without_its_gap (void)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (SwFlow) flow = sw_flow_new (NULL, 50, 100);

  add (flow, log, 'a', (SwBlock){ .height = 60 }, NULL);
  add (flow, log, 'b', (SwBlock){ .height = 40 }, NULL);
  add (flow, log, 'c', (SwBlock){ .height = 40, .gap = 9 }, NULL);
  g_assert_cmpstr (drawn (flow, log), ==, "[0] a100 b160 [1] c100");
}

static void
test_a_heading_never_stands_alone (void)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (SwFlow) flow = sw_flow_new (NULL, 50, 100);

  add (flow, log, 'a', (SwBlock){ .height = 70 }, NULL);
  add (flow, log, 'h', (SwBlock){ .height = 10, .keep = TRUE }, NULL);
  add (flow, log, 'b', (SwBlock){ .height = 30 }, NULL);
  g_assert_cmpstr (drawn (flow, log), ==, "[0] a100 [1] h100 b110");
}

static void
test_a_head_is_repeated (void)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (SwFlow) flow = sw_flow_new (NULL, 50, 100);
  const SwBlock *head = add (flow, log, 'h', (SwBlock){ .height = 20, .keep = TRUE }, NULL);

  for (char name = 'a'; name < 'f'; name++)
    add (flow, log, name, (SwBlock){ .height = 40 }, head);
  g_assert_cmpstr (drawn (flow, log),
                   ==,
                   "[0] h100 a120 b160 [1] h100 c120 d160 [2] h100 e120");
}

/* More than a page high: drawn once, from the top, and the flow goes on. */
static void
test_a_giant_ends_the_page (void)
{
  g_autoptr (GString) log = g_string_new (NULL);
  g_autoptr (SwFlow) flow = sw_flow_new (NULL, 50, 100);

  add (flow, log, 'a', (SwBlock){ .height = 10 }, NULL);
  add (flow, log, 'g', (SwBlock){ .height = 250 }, NULL);
  add (flow, log, 'b', (SwBlock){ .height = 10 }, NULL);
  g_assert_cmpstr (drawn (flow, log), ==, "[0] a100 [1] g100 [2] b100");
}

static void
test_nothing_is_one_page (void)
{
  g_autoptr (SwFlow) flow = sw_flow_new (NULL, 50, 100);

  g_assert_cmpint (sw_flow_pages (flow), ==, 1);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/packet/flow/blocks stand below one another",
                   test_blocks_stand_below_one_another);
  g_test_add_func ("/packet/flow/what does not fit goes on without its gap",
                   test_what_does_not_fit_goes_on_without_its_gap);
  g_test_add_func ("/packet/flow/a heading never stands alone",
                   test_a_heading_never_stands_alone);
  g_test_add_func ("/packet/flow/a head is repeated", test_a_head_is_repeated);
  g_test_add_func ("/packet/flow/a giant ends the page", test_a_giant_ends_the_page);
  g_test_add_func ("/packet/flow/nothing is one page", test_nothing_is_one_page);
  return g_test_run ();
}
