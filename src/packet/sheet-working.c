// SPDX-License-Identifier: GPL-3.0-or-later
/* Working: for whoever checks the numbers: how each came about, from what, by which source. */
#include "engine/results.h"
#include "engine/working-text.h"
#include "engine/working.h"
#include "packet/sheet-pages.h"
#include "packet/table.h"

#include <glib/gi18n.h>
#include <string.h>

static const SwColumn columns[] = {
  { N_ ("Number"), SW_TEXT_LEFT, 1.1 },       { N_ ("Formula"), SW_TEXT_LEFT, 1.7 },
  { N_ ("What goes in"), SW_TEXT_LEFT, 1.9 }, { N_ ("Result"), SW_TEXT_LEFT, 0.7 },
  { N_ ("Source"), SW_TEXT_LEFT, 1.2 },
};

static const SwColumn term_columns[] = {
  { N_ ("Name"), SW_TEXT_LEFT, 0.8 },
  { N_ ("Value"), SW_TEXT_LEFT, 0.6 },
  { N_ ("What it is"), SW_TEXT_LEFT, 1.6 },
  { N_ ("Source"), SW_TEXT_LEFT, 1.6 },
};

/* By the first word of their keys. */
static const struct {
  const char *group, *heading; /* N_() */
} groups[] = {
  { "geometry", N_ ("Shape") },    { "heights", N_ ("Lengths along the post") },
  { "foot", N_ ("Foot") },         { "power", N_ ("Power") },
  { "data", N_ ("Data ports") },   { "wind", N_ ("Wind") },
  { "support", N_ ("Hold") },      { "ring", N_ ("Ring") },
  { "storm", N_ ("Storm plan") },  { "checks", N_ ("Checks of single parts") },
  { "marks", N_ ("Ring marks") },  { "crown", N_ ("Crown holes") },
  { "as_built", N_ ("As built") }, { "fits", N_ ("Fits") },
  { "cuts", N_ ("Cut list") },     { "bom", N_ ("Parts") },
  { "cost", N_ ("Cost") },
};

static const char *
heading_of (const SwPen *pen, const char *group)
{
  for (guint i = 0; i < G_N_ELEMENTS (groups); i++) {
    if (strcmp (groups[i].group, group) == 0)
      return sw_pen_word (pen, groups[i].heading);
  }
  return group;
}

static char *
group_of (const SwWorking *working)
{
  return g_strndup (working->key, strcspn (working->key, "."));
}

/* The key without its group, which stands above. */
static const char *
name_of (const SwWorking *working)
{
  const char *dot = strchr (working->key, '.');

  return dot == NULL ? working->key : dot + 1;
}

/* A formula may break before any "·" or "/", so that no name is broken. */
static char *
with_breaks (const char *formula)
{
  GString *text = g_string_new (formula);

  g_string_replace (text, "·", "\u200b·", 0);
  g_string_replace (text, "/", "\u200b/", 0);
  return g_string_free (text, FALSE);
}

static char *
inputs_text (const SwPen *pen, const SwWorking *working)
{
  GString *text = g_string_new (NULL);

  for (guint i = 0; i < working->inputs->len; i++) {
    const SwWorkingInput *input = &g_array_index (working->inputs, SwWorkingInput, i);
    g_autofree char *value = sw_working_text_si (input->value, input->unit, pen->language);

    g_string_append_printf (text,
                            "%s%s\u00a0=\u00a0%s",
                            i > 0 ? ";  " : "",
                            input->name,
                            value);
  }
  g_string_replace (text, "/", "/\u2060", 0); /* no line ends inside "kg/m" */
  return g_string_free (text, FALSE);
}

static char *
result_text (const SwPen *pen, const SwWorking *working)
{
  const SwResult *result = sw_result_find (working->key);

  if (result != NULL && result->type == SW_RESULT_FLAG)
    return g_strdup (sw_pen_word (pen, working->result > 0 ? N_ ("yes") : N_ ("no")));
  if (result != NULL && result->type == SW_RESULT_REASON)
    return g_strdup ("–"); /* a word; the sheet of the wind has it */
  g_autofree char *si = sw_working_text_si (working->result, working->unit, pen->language);
  g_autofree char *own = sw_working_text_in_units (working->result,
                                                   working->unit,
                                                   pen->solution->design->units,
                                                   pen->language);
  return pen->solution->design->units == SW_UNITS_METRIC || strcmp (si, own) == 0
           ? g_steal_pointer (&si)
           : g_strdup_printf ("%s\n%s", si, own);
}

static void
add_row (const SwPen *pen, SwTable *table, const SwWorking *working)
{
  const char *formula = working->formula != NULL ? working->formula : working->words;
  g_autofree char *broken = with_breaks (formula);
  g_autofree char *inputs = inputs_text (pen, working);
  g_autofree char *result = result_text (pen, working);
  const char *cells[] = { name_of (working), broken, inputs, result, working->source };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

/* One note, with the names of all that it is about. */
typedef struct {
  const char *text; /* N_() */
  GString *names;   /* owned */
} Note;

static void
clear_note (gpointer note)
{
  g_string_free (((Note *) note)->names, TRUE);
}

static void
add_note (GArray *notes, const char *text, const char *name)
{
  Note note = { text, NULL };

  if (text == NULL)
    return;
  for (guint i = 0; i < notes->len; i++) {
    Note *known = &g_array_index (notes, Note, i);
    if (strcmp (known->text, text) == 0) {
      g_string_append_printf (known->names, ", %s", name);
      return;
    }
  }
  note.names = g_string_new (name);
  g_array_append_val (notes, note);
}

static GArray *
notes_new (void)
{
  GArray *notes = g_array_new (FALSE, FALSE, sizeof (Note));

  g_array_set_clear_func (notes, clear_note);
  return notes;
}

/* One paragraph: some groups have a dozen of them. */
static void
say_notes (SwFlow *flow, const GArray *notes, const char *word)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (GString) text = g_string_new (sw_pen_word (pen, word));

  for (guint i = 0; i < notes->len; i++) {
    const Note *note = &g_array_index (notes, Note, i);

    g_string_append_printf (text,
                            "  •\u00a0%s: %s.",
                            note->names->str,
                            sw_pen_word (pen, note->text));
  }
  if (notes->len > 0)
    sw_flow_text (flow, text->str);
}

static void
add_group (SwFlow *flow, GPtrArray *workings, const char *group)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (columns, G_N_ELEMENTS (columns));
  g_autoptr (GArray) solved = notes_new ();
  g_autoptr (GArray) assumed = notes_new ();

  sw_table_set_small (table);
  for (guint i = 0; i < workings->len; i++) {
    const SwWorking *working = workings->pdata[i];

    if (!sw_working_is_in (working, group))
      continue;
    add_row (pen, table, working);
    add_note (solved, working->how, name_of (working));
    add_note (assumed, working->assumes, name_of (working));
  }
  sw_flow_heading (flow, heading_of (pen, group));
  sw_flow_table (flow, table);
  say_notes (flow, solved, N_ ("How it was found"));
  say_notes (flow, assumed, N_ ("Taken for granted"));
}

/* In the order of the report; what lists add to a group stands with it. */
static void
add_groups (SwFlow *flow, GPtrArray *workings)
{
  g_autoptr (GHashTable) done = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < workings->len; i++) {
    char *group = group_of (workings->pdata[i]);

    if (!g_hash_table_contains (done, group))
      add_group (flow, workings, group);
    g_hash_table_add (done, group);
  }
}

static void
add_term (const SwPen *pen, SwTable *table, const SwWorkingInput *input)
{
  g_autofree char *value = sw_working_text_si (input->value, input->unit, pen->language);
  const char *cells[] = { input->name, value, sw_pen_word (pen, input->what), input->source };

  sw_table_add (table, SW_ROW_PLAIN, cells);
}

/* What goes in and is neither a number of these sheets nor one of the design's. */
static void
add_terms (SwFlow *flow, GPtrArray *workings)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (SwTable) table = sw_table_new (term_columns, G_N_ELEMENTS (term_columns));
  g_autoptr (GHashTable) seen = g_hash_table_new (g_str_hash, g_str_equal);

  sw_table_set_small (table);
  for (guint i = 0; i < workings->len; i++) {
    const SwWorking *working = workings->pdata[i];

    for (guint j = 0; j < working->inputs->len; j++) {
      const SwWorkingInput *input = &g_array_index (working->inputs, SwWorkingInput, j);
      if (input->what != NULL && g_hash_table_add (seen, input->name))
        add_term (pen, table, input);
    }
  }
  sw_flow_heading (flow, sw_pen_word (pen, N_ ("Constants, and what was found on the way")));
  sw_flow_table (flow, table);
}

void
sw_working_fill (SwFlow *flow)
{
  const SwPen *pen = sw_flow_pen (flow);
  g_autoptr (GPtrArray) workings = sw_workings_new (pen->solution);

  sw_flow_text (
    flow,
    sw_pen_word (
      pen,
      N_ ("For whoever checks the numbers. Formulas reckon in metres, kilograms, "
          "newtons, volts and amperes, angles in radians; · and / go from left to "
          "right, ^ from right to left. first(x, …) is the first of the rest that is at least "
          "x, count(x, …) how many of them are. A name is the end of a key of the report or "
          "of the design's file; the others stand in the last table.")));
  add_groups (flow, workings);
  add_terms (flow, workings);
}
