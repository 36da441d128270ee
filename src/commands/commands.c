// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/commands.h"

#include "commands/command.h"
#include "packet/process-catalogue.h"

#include <fcntl.h>
#include <locale.h>
#include <signal.h>
#include <string.h>
#include <unistd.h>

static const struct {
  const char *verb;
  int (*run) (int argc, char **argv);
  const char *summary;
} verbs[] = {
  { "new", sw_command_new, "write a starting design" },
  { "report", sw_command_report, "solve a design and print every result" },
  { "fit", sw_command_fit, "make a design exact by moving one quantity" },
  { "packet", sw_command_packet, "write the whole build packet" },
  { "picture", sw_command_picture, "draw one picture" },
  { "cuts", sw_command_cuts, "cut pieces out of bars with the fewest bars" },
};

static int
print_help (void)
{
  g_autoptr (GString) text = g_string_new ("Usage:\n"
                                           "  spirewright [FILE]            open the window\n"
                                           "  spirewright COMMAND [OPTION…]\n"
                                           "\n"
                                           "Commands, none of which needs a display:\n");

  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++)
    g_string_append_printf (text, "  %-10s %s\n", verbs[i].verb, verbs[i].summary);
  g_string_append (
    text,
    "\n"
    "spirewright COMMAND --help tells more about one of them.\n"
    "\n"
    "Exit status: 0 done; 1 done, but the design has stop findings, or there is no solution;\n"
    "2 wrong usage; 3 a file could not be read or written, or is not valid.\n");
  return sw_command_print (text->str);
}

gboolean
sw_commands_know (const char *word)
{
  static const char *const general[] = { "--help", "-h", "--version" };

  for (guint i = 0; i < G_N_ELEMENTS (general); i++) {
    if (strcmp (word, general[i]) == 0)
      return TRUE;
  }
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++) {
    if (strcmp (word, verbs[i].verb) == 0)
      return TRUE;
  }
  return FALSE;
}

gboolean
sw_commands_misused (int argc, char **argv)
{
  if (argc < 2 || sw_commands_know (argv[1]) || strcmp (argv[1], "--") == 0)
    return FALSE;
  if (argv[1][0] == '-') /* desktops start programs with --gapplication-service */
    return !g_str_has_prefix (argv[1], "--gapplication-");
  return argc > 2 && !g_file_test (argv[1], G_FILE_TEST_EXISTS);
}

static int
refuse (const char *word)
{
  g_autofree char *message =
    g_strdup_printf ("%s: no such %s, spirewright --help lists what there is",
                     word,
                     word[0] == '-' ? "option" : "command");

  return sw_command_fail (SW_EXIT_USAGE, NULL, message);
}

/* A file opened where standard output was closed would take what is printed. */
static void
hold_standard_streams (void)
{
  for (int fd = STDIN_FILENO; fd <= STDERR_FILENO; fd++) {
    if (fcntl (fd, F_GETFD) < 0)
      (void) !open ("/dev/null", O_RDONLY); /* takes the lowest free number; writing fails */
  }
}

/* A bad row of a person's own is told and left out; the verb runs all the same. */
static void
tell_catalogue_problems (void)
{
  const GPtrArray *problems = sw_catalogue_problems_of_process ();

  for (guint i = 0; i < problems->len; i++)
    sw_command_fail (SW_EXIT_DONE, NULL, problems->pdata[i]);
}

int
sw_commands_run (int argc, char **argv)
{
  setlocale (LC_CTYPE, "");  /* words and numbers stay English */
  signal (SIGPIPE, SIG_IGN); /* a closed pipe is an error to report */
  hold_standard_streams ();
  if (strcmp (argv[1], "--version") == 0)
    return sw_command_print ("spirewright " SW_VERSION "\n");
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++) {
    if (strcmp (argv[1], verbs[i].verb) != 0)
      continue;
    tell_catalogue_problems ();
    return verbs[i].run (argc - 1, argv + 1);
  }
  return sw_commands_know (argv[1]) ? print_help () : refuse (argv[1]);
}
