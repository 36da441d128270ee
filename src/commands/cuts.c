// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/command.h"
#include "engine/cut-plan.h"
#include "engine/error.h"
#include "engine/json-text.h"

#include <string.h>

static gboolean
read_number (const char *text, double *value)
{
  char *end;
  gboolean plain = strspn (text, "+-.0123456789eE") == strlen (text); /* no "nan", no "0x" */

  *value = g_ascii_strtod (text, &end);
  return plain && end != text && *end == '\0';
}

static gboolean
read_metres (const char *option, const char *text, double *value, GError **error)
{
  if (read_number (text, value))
    return TRUE;
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_TYPE,
               "%s %s: a number of metres is allowed",
               option,
               text);
  return FALSE;
}

/* "1.83:4" */
static gboolean
read_piece (const char *text, SwPiece *piece, GError **error)
{
  g_auto (GStrv) halves = g_strsplit (text, ":", 2);
  gint64 count = 0;

  if (g_strv_length (halves) == 2 && read_number (halves[0], &piece->length_m) &&
      g_ascii_string_to_signed (halves[1], 10, 1, G_MAXINT, &count, NULL)) {
    piece->count = (int) count;
    return TRUE;
  }
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_TYPE,
               "--piece %s: metres and a whole count from 1 are allowed, as 1.83:4",
               text);
  return FALSE;
}

static gboolean
read_pieces (GArray *pieces, char **words, GError **error)
{
  for (guint i = 0; words != NULL && words[i] != NULL; i++) {
    SwPiece piece;
    if (!read_piece (words[i], &piece, error))
      return FALSE;
    g_array_append_val (pieces, piece);
  }
  return TRUE;
}

static JsonArray *
bar_array (const GArray *bar)
{
  JsonArray *array = json_array_new ();

  for (guint k = 0; k < bar->len; k++)
    json_array_add_double_element (array, g_array_index (bar, double, k));
  return array;
}

static char *
json_of (const SwCutPlan *plan)
{
  JsonObject *object = json_object_new ();
  JsonArray *bars = json_array_new ();
  g_autoptr (JsonNode) root = json_node_new (JSON_NODE_OBJECT);

  for (guint i = 0; i < plan->bars->len; i++)
    json_array_add_array_element (bars, bar_array (plan->bars->pdata[i]));
  json_object_set_double_member (object, "stock_m", plan->stock_m);
  json_object_set_double_member (object, "kerf_m", plan->kerf_m);
  json_object_set_int_member (object, "bars", plan->bars->len);
  json_object_set_array_member (object, "pieces", bars);
  json_object_set_double_member (object, "waste_m", plan->waste_m);
  json_object_set_int_member (object, "bound", plan->bound);
  json_object_set_boolean_member (object, "optimal", plan->optimal);
  json_node_take_object (root, object);
  return sw_json_to_text (root, NULL);
}

static char *
bar_words (const SwCutPlan *plan, const GArray *bar)
{
  GString *words = g_string_new (NULL);
  double left_m = plan->stock_m + plan->kerf_m;

  for (guint k = 0; k < bar->len; k++) {
    double piece_m = g_array_index (bar, double, k);
    g_autofree char *number = sw_json_number (piece_m);
    g_string_append_printf (words, "%s%s", k > 0 ? " + " : "", number);
    left_m -= piece_m + plan->kerf_m;
  }
  char left[G_ASCII_DTOSTR_BUF_SIZE]; /* the last cut may reach past the end of the bar */
  g_ascii_formatd (left, sizeof left, "%.3f", CLAMP (left_m, 0, plan->stock_m));
  g_string_append_printf (words, ", %s m left", left);
  return g_string_free (words, FALSE);
}

/* Bars that are cut alike share a line. */
static void
add_bars (GString *text, const SwCutPlan *plan)
{
  guint alike = 0;

  for (guint i = 0; i < plan->bars->len; i++) {
    g_autofree char *words = bar_words (plan, plan->bars->pdata[i]);
    g_autofree char *next =
      i + 1 < plan->bars->len ? bar_words (plan, plan->bars->pdata[i + 1]) : g_strdup ("");
    alike++;
    if (strcmp (words, next) == 0)
      continue;
    g_string_append_printf (text, "%5u x  %s\n", alike, words);
    alike = 0;
  }
}

static char *
text_of (const SwCutPlan *plan)
{
  GString *text = g_string_new (NULL);
  g_autofree char *stock = sw_json_number (plan->stock_m);
  g_autofree char *kerf = sw_json_number (plan->kerf_m);
  char waste[G_ASCII_DTOSTR_BUF_SIZE];

  g_string_append_printf (text,
                          "%u %s of %s m, a cut takes %s m\n",
                          plan->bars->len,
                          plan->bars->len == 1 ? "bar" : "bars",
                          stock,
                          kerf);
  add_bars (text, plan);
  g_ascii_formatd (waste, sizeof waste, "%.3f", plan->waste_m);
  g_string_append_printf (text, "Cuts and rests: %s m\n", waste);
  if (plan->optimal)
    g_string_append (text, "No plan needs fewer bars.\n");
  else
    g_string_append_printf (text, "No plan needs fewer than %d bars.\n", plan->bound);
  return g_string_free (text, FALSE);
}

typedef struct {
  char *stock, *kerf;
  char **pieces;
  gboolean json;
} Options;

static SwCutPlan *
plan_of (const Options *options, char **more_pieces, GError **error)
{
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (SwPiece));
  double stock_m, kerf_m;

  if (!read_metres ("--stock", options->stock, &stock_m, error) ||
      !read_metres ("--kerf", options->kerf, &kerf_m, error) ||
      !read_pieces (pieces, options->pieces, error) ||
      !read_pieces (pieces, more_pieces, error))
    return NULL;
  const SwPiece *first = (const SwPiece *) (gpointer) pieces->data;
  return sw_cut_plan_exact (NULL, stock_m, kerf_m, first, pieces->len, 0, NULL, error);
}

static int
status_of (const GError *error)
{
  gboolean unsolved = g_error_matches (error, SW_ERROR, SW_ERROR_NO_SOLUTION) ||
                      g_error_matches (error, SW_ERROR, SW_ERROR_NUMERIC);

  return unsolved ? SW_EXIT_STOPS : SW_EXIT_USAGE;
}

static int
run (const SwCommandForm *form, const Options *options, char **more_pieces)
{
  g_autoptr (GError) error = NULL;

  if (options->stock == NULL || options->kerf == NULL || options->pieces == NULL) {
    g_autofree char *usage = g_strdup_printf ("usage: spirewright cuts %s", form->usage);
    return sw_command_fail (SW_EXIT_USAGE, NULL, usage);
  }
  g_autoptr (SwCutPlan) plan = plan_of (options, more_pieces, &error);
  if (plan == NULL)
    return sw_command_fail (status_of (error), NULL, error->message);
  g_autofree char *text = options->json ? json_of (plan) : text_of (plan);
  return sw_command_print (text);
}

int
sw_command_cuts (int argc, char **argv)
{
  Options options = { 0 };
  const GOptionEntry entries[] = {
    { "stock", 0, 0, G_OPTION_ARG_STRING, &options.stock, "Length of a bar as bought", "M" },
    { "kerf", 0, 0, G_OPTION_ARG_STRING, &options.kerf, "What one cut takes away", "M" },
    { "piece",
      0,
      0,
      G_OPTION_ARG_STRING_ARRAY,
      &options.pieces,
      "So many pieces of that length, in metres",
      "M:COUNT" },
    { "json", 'j', 0, G_OPTION_ARG_NONE, &options.json, "Print a JSON object", NULL },
    G_OPTION_ENTRY_NULL
  };
  const SwCommandForm form = { "--stock M --kerf M --piece M:COUNT… [--json]",
                               "Cuts pieces out of bars with the fewest bars.",
                               entries,
                               SW_COMMAND_ANY_FILES };
  g_auto (GStrv) more_pieces = NULL;
  int status;

  if (sw_command_parse (&form, argc, argv, &more_pieces, &status))
    status = run (&form, &options, more_pieces);
  g_free (options.stock);
  g_free (options.kerf);
  g_strfreev (options.pieces);
  return status;
}
