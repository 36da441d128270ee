// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/command.h"
#include "engine/cut-mix.h"
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

/* "3.048", or "3.048:5.60" with the price of a bar; without one it is 0. */
static gboolean
read_stock (const char *text, SwStock *stock, GError **error)
{
  g_auto (GStrv) halves = g_strsplit (text, ":", 2);
  gboolean priced = g_strv_length (halves) == 2;

  stock->price = 0;
  if (!priced)
    return read_metres ("--stock", text, &stock->stock_m, error);
  if (read_number (halves[0], &stock->stock_m) && read_number (halves[1], &stock->price))
    return TRUE;
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_TYPE,
               "--stock %s: metres, or metres and a price are allowed, as 3.048:5.60",
               text);
  return FALSE;
}

static gboolean
read_stocks (GArray *stocks, char **words, GError **error)
{
  gboolean several = words[1] != NULL;

  for (guint i = 0; words[i] != NULL; i++) {
    SwStock stock;
    if (!read_stock (words[i], &stock, error))
      return FALSE;
    if (several && strchr (words[i], ':') == NULL) {
      g_set_error (error,
                   SW_ERROR,
                   SW_ERROR_TYPE,
                   "--stock %s: of several lengths each needs its price, as 3.048:5.60",
                   words[i]);
      return FALSE;
    }
    g_array_append_val (stocks, stock);
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

/* What a plan and each length of a mix have. Returns: (transfer full). */
static JsonObject *
plan_object (const SwCutPlan *plan)
{
  JsonObject *object = json_object_new ();
  JsonArray *bars = json_array_new ();

  for (guint i = 0; i < plan->bars->len; i++)
    json_array_add_array_element (bars, bar_array (plan->bars->pdata[i]));
  json_object_set_double_member (object, "stock_m", plan->stock_m);
  json_object_set_double_member (object, "kerf_m", plan->kerf_m);
  json_object_set_int_member (object, "bars", plan->bars->len);
  json_object_set_array_member (object, "pieces", bars);
  json_object_set_double_member (object, "waste_m", plan->waste_m);
  return object;
}

static char *
text_of_object (JsonObject *object)
{
  g_autoptr (JsonNode) root = json_node_new (JSON_NODE_OBJECT);

  json_node_take_object (root, object);
  return sw_json_to_text (root, NULL);
}

static char *
json_of (const SwCutPlan *plan)
{
  JsonObject *object = plan_object (plan);

  json_object_set_int_member (object, "bound", plan->bound);
  json_object_set_boolean_member (object, "optimal", plan->optimal);
  return text_of_object (object);
}

static char *
mix_json_of (const SwCutMix *mix)
{
  JsonObject *object = json_object_new ();
  JsonArray *stocks = json_array_new ();

  for (guint i = 0; i < mix->plans->len; i++)
    json_array_add_object_element (stocks, plan_object (mix->plans->pdata[i]));
  json_object_set_array_member (object, "stocks", stocks);
  json_object_set_int_member (object, "bars", sw_cut_mix_bars (mix));
  json_object_set_double_member (object, "cost", mix->cost);
  json_object_set_double_member (object, "bound", mix->bound);
  json_object_set_boolean_member (object, "optimal", mix->optimal);
  return text_of_object (object);
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

static void
add_plan (GString *text, const SwCutPlan *plan)
{
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
}

static char *
text_of (const SwCutPlan *plan)
{
  GString *text = g_string_new (NULL);

  add_plan (text, plan);
  if (plan->optimal)
    g_string_append (text, "No plan needs fewer bars.\n");
  else
    g_string_append_printf (text, "No plan needs fewer than %d bars.\n", plan->bound);
  return g_string_free (text, FALSE);
}

static char *
mix_text_of (const SwCutMix *mix)
{
  GString *text = g_string_new (NULL);
  char cost[G_ASCII_DTOSTR_BUF_SIZE], bound[G_ASCII_DTOSTR_BUF_SIZE];

  for (guint i = 0; i < mix->plans->len; i++)
    add_plan (text, mix->plans->pdata[i]);
  g_ascii_formatd (cost, sizeof cost, "%.2f", mix->cost);
  g_ascii_formatd (bound, sizeof bound, "%.2f", mix->bound);
  g_string_append_printf (text, "All bars cost %s.\n", cost);
  if (mix->optimal)
    g_string_append (text, "No plan costs less.\n");
  else
    g_string_append_printf (text, "No plan costs less than %s.\n", bound);
  return g_string_free (text, FALSE);
}

typedef struct {
  char *kerf;
  char **stocks, **pieces;
  gboolean json;
} Options;

/* Bars of one length without a price: the fewest. Else the cheapest. Returns: (transfer full)
 * (nullable): what to print. */
static char *
answer_to (const Options *options, const SwCutMixJob *job, GError **error)
{
  if (job->n_stocks > 1 || strchr (options->stocks[0], ':') != NULL) {
    g_autoptr (SwCutMix) mix = sw_cut_mix_new (job, NULL, error);
    if (mix == NULL)
      return NULL;
    return options->json ? mix_json_of (mix) : mix_text_of (mix);
  }
  g_autoptr (SwCutPlan) plan = sw_cut_plan_exact (NULL,
                                                  job->stocks->stock_m,
                                                  job->kerf_m,
                                                  job->pieces,
                                                  job->n_pieces,
                                                  0,
                                                  NULL,
                                                  error);
  if (plan == NULL)
    return NULL;
  return options->json ? json_of (plan) : text_of (plan);
}

static char *
answer (const Options *options, char **more_pieces, GError **error)
{
  g_autoptr (GArray) pieces = g_array_new (FALSE, FALSE, sizeof (SwPiece));
  g_autoptr (GArray) stocks = g_array_new (FALSE, FALSE, sizeof (SwStock));
  SwCutMixJob job = { 0 };

  if (!read_stocks (stocks, options->stocks, error) ||
      !read_metres ("--kerf", options->kerf, &job.kerf_m, error) ||
      !read_pieces (pieces, options->pieces, error) ||
      !read_pieces (pieces, more_pieces, error))
    return NULL;
  job.stocks = (const SwStock *) (gpointer) stocks->data;
  job.n_stocks = stocks->len;
  job.pieces = (const SwPiece *) (gpointer) pieces->data;
  job.n_pieces = pieces->len;
  return answer_to (options, &job, error);
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

  if (options->stocks == NULL || options->kerf == NULL || options->pieces == NULL) {
    g_autofree char *usage = g_strdup_printf ("usage: spirewright cuts %s", form->usage);
    return sw_command_fail (SW_EXIT_USAGE, NULL, usage);
  }
  g_autofree char *text = answer (options, more_pieces, &error);
  if (text == NULL)
    return sw_command_fail (status_of (error), NULL, error->message);
  return sw_command_print (text);
}

int
sw_command_cuts (int argc, char **argv)
{
  Options options = { 0 };
  const GOptionEntry entries[] = {
    { "stock",
      0,
      0,
      G_OPTION_ARG_STRING_ARRAY,
      &options.stocks,
      "Length of a bar as bought; several times, with the price of each, for the least cost",
      "M[:PRICE]" },
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
  const SwCommandForm form = {
    "--stock M[:PRICE]… --kerf M --piece M:COUNT… [--json]",
    "Cuts pieces out of bars: the fewest, or the cheapest of several lengths.",
    entries,
    SW_COMMAND_ANY_FILES
  };
  g_auto (GStrv) more_pieces = NULL;
  int status;

  if (sw_command_parse (&form, argc, argv, &more_pieces, &status))
    status = run (&form, &options, more_pieces);
  g_strfreev (options.stocks);
  g_free (options.kerf);
  g_strfreev (options.pieces);
  return status;
}
