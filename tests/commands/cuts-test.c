// SPDX-License-Identifier: GPL-3.0-or-later
/* Runs the program as a person would. */
#include <gio/gio.h>
#include <json-glib/json-glib.h>
#include <string.h>

typedef struct {
  char *out, *err; /* owned */
  int status;
} Answer;

static void
answer_clear (Answer *answer)
{
  g_free (answer->out);
  g_free (answer->err);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Answer, answer_clear)

/* `words` are split at spaces. */
static void
ask (const char *words, Answer *answer)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *line = g_strdup_printf ("%s cuts %s", g_getenv ("SW_PROGRAM"), words);
  g_auto (GStrv) argv = g_strsplit (line, " ", -1);
  g_autoptr (GSubprocess) process =
    g_subprocess_newv ((const char *const *) argv,
                       G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE,
                       &error);

  g_assert_no_error (error);
  g_subprocess_communicate_utf8 (process, NULL, NULL, &answer->out, &answer->err, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_get_if_exited (process));
  answer->status = g_subprocess_get_exit_status (process);
}

/* Sources: the pipe instance's optimum of 5 by glpsol 5.0; Chvátal, Linear Programming (1983),
 * chapter 13: 453. Waste worked by hand: 5·3.048 − 14.32 and 453·100 − 41524.
 */
static const struct {
  const char *words;
  gint64 bars;
  double waste_m;
} solved[] = {
  { "--stock 3.048 --kerf 0.003 --piece 1.83:4 --piece 0.96:3 --piece 0.45:6 --piece 0.355:4 "
    "--json",
    5,
    0.92 },
  { "--stock 3.048 --kerf 0.003 --json --piece 1.83:4 0.96:3 0.45:6 0.355:4", 5, 0.92 },
  { "--json --stock=100 --kerf=0 --piece=45:97 --piece=36:610 --piece=31:395 --piece=14:211",
    453,
    3776 },
  { "--json --stock 3.048 --kerf 0.003 --piece 0.762:4", 2, 3.048 },
  { "--json --stock 3.048 --kerf 0 --piece 0.762:4", 1, 0 },
};

static void
check_solved (guint k)
{
  g_auto (Answer) answer = { 0 };
  g_autoptr (GError) error = NULL;
  g_autoptr (JsonParser) parser = json_parser_new ();

  ask (solved[k].words, &answer);
  g_assert_cmpint (answer.status, ==, 0);
  g_assert_cmpstr (answer.err, ==, "");
  g_assert_true (json_parser_load_from_data (parser, answer.out, -1, &error));
  JsonObject *object = json_node_get_object (json_parser_get_root (parser));
  JsonArray *pieces = json_object_get_array_member (object, "pieces");
  g_assert_cmpint (json_object_get_int_member (object, "bars"), ==, solved[k].bars);
  g_assert_cmpint (json_array_get_length (pieces), ==, solved[k].bars);
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, "waste_m"),
                                  solved[k].waste_m,
                                  1e-9);
  g_assert_true (json_object_get_boolean_member (object, "optimal"));
  g_assert_cmpfloat (json_object_get_double_member (object, "stock_m"), >, 0);
  g_assert_cmpfloat (json_object_get_double_member (object, "kerf_m"), >=, 0);
}

static void
test_json (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (solved); k++)
    check_solved (k);
}

static void
test_text_gathers_bars_cut_alike (void)
{
  g_auto (Answer) answer = { 0 };

  ask ("--stock 10 --kerf 0 --piece 6:2 --piece 4:2", &answer);
  g_assert_cmpint (answer.status, ==, 0);
  g_assert_cmpstr (answer.out,
                   ==,
                   "2 bars of 10 m, a cut takes 0 m\n"
                   "    2 x  6 + 4, 0.000 m left\n"
                   "Cuts and rests: 0.000 m\n"
                   "No plan needs fewer bars.\n");
}

/* Worked by hand: 3 m out of a bar of 3.048 m, 1 m out of one of 1.2 m: 5 + 2; twice the long
 * one would be 10. */
static void
test_several_lengths_cost_least (void)
{
  g_auto (Answer) text = { 0 }, json = { 0 };

  ask ("--stock 3.048:5 --stock 1.2:2 --kerf 0.003 --piece 3:1 --piece 1:1", &text);
  g_assert_cmpint (text.status, ==, 0);
  g_assert_cmpstr (text.out,
                   ==,
                   "1 bar of 3.048 m, a cut takes 0.003 m\n"
                   "    1 x  3, 0.048 m left\n"
                   "Cuts and rests: 0.048 m\n"
                   "1 bar of 1.2 m, a cut takes 0.003 m\n"
                   "    1 x  1, 0.200 m left\n"
                   "Cuts and rests: 0.200 m\n"
                   "All bars cost 7.00.\n"
                   "No plan costs less.\n");
  ask ("--stock 3.048:5 --stock 1.2:2 --kerf 0.003 --piece 3:1 --piece 1:1 --json", &json);
  g_autoptr (JsonParser) parser = json_parser_new ();
  g_assert_true (json_parser_load_from_data (parser, json.out, -1, NULL));
  JsonObject *object = json_node_get_object (json_parser_get_root (parser));
  JsonArray *stocks = json_object_get_array_member (object, "stocks");
  g_assert_cmpfloat_with_epsilon (json_object_get_double_member (object, "cost"), 7, 1e-12);
  g_assert_cmpint (json_object_get_int_member (object, "bars"), ==, 2);
  g_assert_true (json_object_get_boolean_member (object, "optimal"));
  g_assert_cmpuint (json_array_get_length (stocks), ==, 2);
  g_assert_cmpint (
    json_object_get_int_member (json_array_get_object_element (stocks, 1), "bars"),
    ==,
    1);
}

static void
test_one_bar_is_not_bars (void)
{
  g_auto (Answer) answer = { 0 };

  ask ("--stock 2.5 --kerf 0.003 --piece 1.5:1", &answer);
  g_assert_true (g_str_has_prefix (answer.out, "1 bar of 2.5 m, a cut takes 0.003 m\n"));
}

static const struct {
  const char *words;
  int status;
  const char *message; /* after "spirewright: " */
} refused[] = {
  { "--stock 3 --kerf 0 --piece 3.1:1", 1, "piece: 3.1 m is longer than the stock of 3 m\n" },
  { "--stock 3 --kerf 0 --piece 3.1", 2, "--piece 3.1: metres and a whole count from 1" },
  { "--stock 3 --kerf 0 --piece 1:2:3", 2, "--piece 1:2:3: metres and a whole count from 1" },
  { "--stock 3 --kerf 0 --piece 1:0", 2, "--piece 1:0: metres and a whole count from 1" },
  { "--stock 3 --kerf 0 --piece 1:2 --piece 2:0", 2, "--piece 2:0: metres and a whole" },
  { "--stock 3 --kerf 0 --piece 1:-2", 2, "--piece 1:-2: metres and a whole count from 1" },
  { "--stock 3 --kerf 0 --piece 1:1.5", 2, "--piece 1:1.5: metres and a whole count from 1" },
  { "--stock 3 --kerf 0 --piece nan:1", 2, "--piece nan:1: metres and a whole count from 1" },
  { "--stock 3 --kerf 0 --piece 1:1 more", 2, "--piece more: metres and a whole count from 1" },
  { "--stock inf --kerf 0 --piece 1:1", 2, "--stock inf: a number of metres" },
  { "--stock 3 --kerf 1mm --piece 1:1", 2, "--kerf 1mm: a number of metres" },
  { "--stock 3:5 --stock 4 --kerf 0 --piece 1:1", 2, "--stock 4: of several lengths each" },
  { "--stock 3: --kerf 0 --piece 1:1", 2, "--stock 3:: metres, or metres and a price" },
  { "--stock 3:0 --kerf 0 --piece 1:1", 2, "price: 0 is not above 0" },
  { "--stock 3:5 --stock 2:4 --kerf 0 --piece 3.5:1", 1, "piece: 3.5 m is longer" },
  { "--stock 0 --kerf 0 --piece 1:1", 2, "stock: 0 m is outside" },
  { "--stock 3 --kerf -1 --piece 1:1", 2, "kerf: -1 m is outside" },
  { "--stock 3 --kerf 0 --piece 1:100001", 2, "piece: 100001 of 1 m is outside" },
  { "--kerf 0 --piece 1:1", 2, "usage: spirewright cuts --stock M[:PRICE]" },
  { "--stock 3 --piece 1:1", 2, "usage: spirewright cuts --stock M[:PRICE]" },
  { "--stock 3 --kerf 0", 2, "usage: spirewright cuts --stock M[:PRICE]" },
  { "--saw 3", 2, "" },
};

static void
test_refusals (void)
{
  for (guint k = 0; k < G_N_ELEMENTS (refused); k++) {
    g_auto (Answer) answer = { 0 };
    g_autofree char *start = g_strconcat ("spirewright: ", refused[k].message, NULL);
    ask (refused[k].words, &answer);
    g_assert_cmpint (answer.status, ==, refused[k].status);
    g_assert_cmpstr (answer.out, ==, "");
    if (!g_str_has_prefix (answer.err, start))
      g_error ("%s, expected %s", answer.err, start);
    g_assert_true (strchr (answer.err, '\n') == answer.err + strlen (answer.err) - 1);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  g_test_add_func ("/commands/cuts/json", test_json);
  g_test_add_func ("/commands/cuts/text gathers bars cut alike",
                   test_text_gathers_bars_cut_alike);
  g_test_add_func ("/commands/cuts/several lengths cost least",
                   test_several_lengths_cost_least);
  g_test_add_func ("/commands/cuts/one bar is not bars", test_one_bar_is_not_bars);
  g_test_add_func ("/commands/cuts/refusals", test_refusals);
  return g_test_run ();
}
