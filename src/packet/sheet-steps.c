// SPDX-License-Identifier: GPL-3.0-or-later
/* Build steps: what to do, with what, how long it takes, and what to check before going on. */
#include "engine/build-steps.h"
#include "engine/step-values.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>

static const SwColumn step_columns[] = {
  { N_ ("Step"), SW_TEXT_RIGHT, 0 },           { N_ ("Do this"), SW_TEXT_LEFT, 0.6 },
  { N_ ("Go on only if"), SW_TEXT_LEFT, 0.4 }, { N_ ("Hands × minutes"), SW_TEXT_RIGHT, 0 },
  { N_ ("Done"), SW_TEXT_CENTRE, 0 },
};

/* What can hurt, where it can: before the subject's first step. */
static const struct {
  SwStepSubject subject;
  const char *word, *text; /* N_() */
} cautions[] = {
  { SW_STEP_FOOT,
    N_ ("Digging and cement"),
    N_ ("have buried lines marked before you dig or drive anything (in the US call 811). Wet "
        "cement burns skin and eyes: gloves and eye protection.") },
  { SW_STEP_RING,
    N_ ("Warm PVC"),
    N_ ("heat it out of doors or with the doors open, with gloves, and never over a flame: too "
        "hot it gives off fumes that hurt lungs.") },
  { SW_STEP_GUYS,
    N_ ("Stakes"),
    N_ ("a stake that was not pull-tested holds nothing for sure. A line under load whips when "
        "it lets go: stand aside of it.") },
  { SW_STEP_WIRING,
    N_ ("Mains"),
    N_ ("unplugged while you work. Only boxes and leads made for outdoors, on an outlet with a "
        "residual-current (ground-fault) device; fixed wiring is a licensed electrician's.") },
  { SW_STEP_RAISING,
    N_ ("Height and weight"),
    N_ (
      "nobody in the fall circle, no ladder on the post, not in wind, and lay it down again at "
      "the first doubt. Keep 3 m (10 ft) and more from every overhead line.") },
};

static void
add_caution (SwFlow *flow, SwStepSubject subject)
{
  const SwPen *pen = sw_flow_pen (flow);

  for (guint i = 0; i < G_N_ELEMENTS (cautions); i++) {
    if (cautions[i].subject == subject)
      sw_flow_caution (flow,
                       sw_pen_word (pen, cautions[i].word),
                       sw_pen_word (pen, cautions[i].text));
  }
}

/* On a line of its own. Takes `line`. */
static void
append_line (GString *text, char *line)
{
  g_string_append_printf (text, "\n%s", line);
  g_free (line);
}

static char *
parts_text (const SwPen *pen, const SwStep *step)
{
  GString *names = g_string_new (NULL);

  for (guint i = 0; i < step->parts->len; i++) {
    const SwPart *part = step->parts->pdata[i];
    g_string_append_printf (names, "%s%s", i > 0 ? "; " : "", sw_pen_word (pen, part->name));
  }
  return g_string_free (names, FALSE);
}

/* What to do, then parts, tools and the time to wait, a line each. */
static char *
do_text (const SwPen *pen, const SwStep *step)
{
  const SwStepRow *row = step->row;
  g_autofree char *what = sw_step_text (pen->solution, row->what, pen->language);
  g_autofree char *parts = parts_text (pen, step);
  GString *text = g_string_new (what);

  if (*parts != '\0')
    append_line (text, sw_pen_say (pen, N_ ("Parts: %s."), parts));
  if (row->tools != NULL)
    append_line (text, sw_pen_say (pen, N_ ("Tools: %s."), sw_pen_word (pen, row->tools)));
  if (row->wait_days > 0) {
    g_autofree char *days = sw_pen_decimal (pen, row->wait_days, 0);
    append_line (text, sw_pen_say (pen, N_ ("Then wait, days: %s."), days));
  }
  return g_string_free (text, FALSE);
}

static void
add_step (const SwPen *pen, SwTable *table, const SwStep *step, guint number)
{
  g_autofree char *no = g_strdup_printf ("%u", number);
  g_autofree char *what = do_text (pen, step);
  g_autofree char *check = sw_step_text (pen->solution, step->row->check, pen->language);
  g_autofree char *time = g_strdup_printf ("%d × %.0f", step->hands, step->minutes);
  const char *cells[] = { no, what, check, time, SW_CELL_TICK };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

static void
add_subject (SwFlow *flow, const GPtrArray *steps, SwStepSubject subject)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (step_columns, G_N_ELEMENTS (step_columns));
  gboolean any = FALSE;

  for (guint i = 0; i < steps->len; i++) {
    const SwStep *step = steps->pdata[i];

    if (step->row->subject != subject)
      continue;
    add_step (pen, table, step, i + 1);
    any = TRUE;
  }
  if (!any)
    return;
  sw_flow_heading (flow, sw_pen_word (pen, sw_step_subject_labels[subject]));
  add_caution (flow, subject);
  sw_flow_table (flow, table);
}

static void
say_hours (SwFlow *flow, const GPtrArray *steps)
{
  const SwPen *pen = sw_flow_pen (flow);
  double sum = 0;

  for (SwStepSubject subject = 0; subject < SW_STEP_SUBJECTS; subject++)
    sum += sw_steps_hours (steps, subject);
  g_autofree char *hours = sw_pen_decimal (pen, sum, 0);
  g_autofree char *words = sw_pen_say (
    pen,
    N_ ("In all about %s hours of hands. Minutes are our own estimate for a careful "
        "first-timer; times to wait come on top. A check that fails is what it is "
        "for: put it right before you go on."),
    hours);

  sw_flow_text (flow, words);
}

void
sw_steps_fill (SwFlow *flow)
{
  g_autoptr (GPtrArray) steps = sw_steps_new (sw_flow_pen (flow)->solution);

  say_hours (flow, steps);
  for (SwStepSubject subject = 0; subject < SW_STEP_SUBJECTS; subject++)
    add_subject (flow, steps, subject);
}
