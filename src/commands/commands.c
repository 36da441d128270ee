// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/commands.h"

#include "commands/command.h"

#include <locale.h>
#include <string.h>

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

int
sw_commands_run (int argc, char **argv)
{
  setlocale (LC_CTYPE, ""); /* words and numbers stay English */
  if (strcmp (argv[1], "--version") == 0)
    return sw_command_print ("spirewright " SW_VERSION "\n");
  for (guint i = 0; i < G_N_ELEMENTS (verbs); i++) {
    if (strcmp (argv[1], verbs[i].verb) == 0)
      return verbs[i].run (argc - 1, argv + 1);
  }
  return print_help ();
}
