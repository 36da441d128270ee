// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/commands.h"
#include "program.h"

static const char *const verbs[] = { "new", "report", "fit", "packet", "picture", "cuts" };

static void
test_knows_its_verbs (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    g_assert_true (sw_commands_know (verbs[i]));
  g_assert_true (sw_commands_know ("--help"));
  g_assert_true (sw_commands_know ("--version"));
  g_assert_false (sw_commands_know ("reprot"));
  g_assert_false (sw_commands_know ("./report"));
  g_assert_false (sw_commands_know (""));
}

static void
test_help_names_each_verb (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask (place, "--help", &answer);
  g_assert_cmpint (answer.status, ==, 0);
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    g_assert_nonnull (strstr (answer.out, verbs[i]));
}

static void
test_each_verb_has_help (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++) {
    g_auto (Answer) answer = { 0 };
    g_autofree char *words = g_strdup_printf ("%s --help", verbs[i]);
    g_autofree char *usage = g_strdup_printf ("Usage:\n  spirewright %s ", verbs[i]);
    ask (place, words, &answer);
    g_assert_cmpint (answer.status, ==, 0);
    g_assert_cmpstr (answer.err, ==, "");
    g_assert_true (g_str_has_prefix (answer.out, usage));
    g_assert_nonnull (strstr (answer.out, "--help"));
  }
}

static void
test_version (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask (place, "--version", &answer);
  g_assert_cmpint (answer.status, ==, 0);
  g_assert_cmpstr (answer.out, ==, "spirewright " SW_VERSION "\n");
}

static const struct {
  const char *words, *message;
} misused[] = {
  { "--frobnicate", "--frobnicate: no such option" },
  { "-x", "-x: no such option" },
  { "reprot lawn.spire", "reprot: no such command" },
  { "report", "usage: spirewright report FILE" },
  { "report a.spire b.spire", "usage: spirewright report FILE" },
  { "report a.spire --sat x=1", "Unknown option --sat" },
  { "report a.spire --set", "Missing argument for --set" },
  { "new", "usage: spirewright new FILE" },
  { "fit a.spire", "usage: spirewright fit FILE" },
  { "packet a.spire", "usage: spirewright packet FILE" },
  { "picture a.spire", "usage: spirewright picture FILE" },
};

static void
test_misuse (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (misused); i++)
    expect_refusal (place, misused[i].words, 2, misused[i].message);
}

static void
test_a_desktop_may_start_the_window (Place *place, gconstpointer unused)
{
  static const char *const starts[] = { "spirewright --gapplication-service",
                                        "spirewright lawn.spire",
                                        "spirewright -- -x.spire",
                                        "spirewright" };

  for (guint i = 0; i < G_N_ELEMENTS (starts); i++) {
    g_auto (GStrv) argv = g_strsplit (starts[i], " ", -1);
    g_assert_false (sw_commands_misused ((int) g_strv_length (argv), argv));
  }
}

static void
test_output_that_cannot_be_written (Place *place, gconstpointer unused)
{
  static const char *const commands[] = {
    "\"$SW\" --help >/dev/full",
    "\"$SW\" report --help >/dev/full",
    "\"$SW\" --version >&-",
  };

  for (guint i = 0; i < G_N_ELEMENTS (commands); i++) {
    g_auto (Answer) answer = { 0 };
    ask_shell (place, commands[i], &answer);
    g_assert_cmpint (answer.status, ==, 3);
    g_assert_true (g_str_has_prefix (answer.err, "spirewright: standard output: "));
  }
}

/* The reader has gone before the program writes: it waits for the reader's end first. */
static void
test_closed_pipe (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (place,
             "mkfifo gone; (read -r line <gone; \"$SW\" --help; echo $? >status) | "
             "(exec <&-; echo >gone); cat status",
             &answer);
  g_assert_cmpstr (answer.out, ==, "3\n");
  g_assert_true (
    g_str_has_prefix (answer.err, "spirewright: standard output: can't be written: Broken"));
}

/* A mast of one's own, and two bad rows beside it. */
#define OWN_ROWS                                                                               \
  "{\"my-mast\": {\"part\": \"pipe\", \"name\": \"Mast\", \"material\": \"aluminium\", "       \
  "\"od_mm\": 50, \"wall_mm\": 3, \"inside_mm\": 44, \"mass_kg_per_m\": 1.196, \"stock_m\": "  \
  "6, "                                                                                        \
  "\"price_usd_per_m\": 9, \"source\": \"own\"}, \"my-bad\": {\"part\": \"pipe\", \"name\": "  \
  "3}, "                                                                                       \
  "\"sch40-2\": {\"part\": \"pipe\"}}"

/* The folder is gone for the second command: the design brings its row along. */
static void
test_own_rows_are_taken_and_carried (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  place_write (place, "own.json", OWN_ROWS);
  ask_shell (place,
             "\"$SW\" new a.spire && mkdir -p data/spirewright/catalogue && "
             "mv own.json data/spirewright/catalogue && XDG_DATA_HOME=$PWD/data \"$SW\" fit "
             "a.spire --give lead --set stand.post=my-mast --to b.spire >/dev/null; "
             "XDG_DATA_HOME=$PWD/none \"$SW\" report b.spire --json",
             &answer);
  g_assert_cmpstr (answer.err,
                   ==,
                   "spirewright: own.json: my-bad: name: not a text\n"
                   "spirewright: own.json: sch40-2: id: does not begin with \"my-\" and a "
                   "name\n");
  g_assert_nonnull (strstr (answer.out, "\"my-mast\""));
  g_assert_null (strstr (answer.out, "\"unknown-post\""));
}

static void
test_an_own_row_that_is_gone_is_a_stop (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (place,
             "\"$SW\" new a.spire && XDG_DATA_HOME=$PWD/none \"$SW\" report a.spire --json "
             "--set stand.post=my-mast",
             &answer);
  g_assert_cmpint (answer.status, ==, 1);
  g_assert_cmpstr (answer.err, ==, "");
  g_assert_nonnull (strstr (answer.out, "\"unknown-post\""));
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_TEST ("/commands/commands/knows its verbs", test_knows_its_verbs);
  ADD_TEST ("/commands/commands/help names each verb", test_help_names_each_verb);
  ADD_TEST ("/commands/commands/each verb has help", test_each_verb_has_help);
  ADD_TEST ("/commands/commands/version", test_version);
  ADD_TEST ("/commands/commands/misuse", test_misuse);
  ADD_TEST ("/commands/commands/a desktop may start the window",
            test_a_desktop_may_start_the_window);
  ADD_TEST ("/commands/commands/output that cannot be written",
            test_output_that_cannot_be_written);
  ADD_TEST ("/commands/commands/closed pipe", test_closed_pipe);
  ADD_TEST ("/commands/commands/own rows are taken and carried",
            test_own_rows_are_taken_and_carried);
  ADD_TEST ("/commands/commands/an own row that is gone is a stop",
            test_an_own_row_that_is_gone_is_a_stop);
  return g_test_run ();
}
