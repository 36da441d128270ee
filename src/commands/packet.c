// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/packet.h"

#include "commands/command.h"
#include "packet/process-locale.h"

#include <string.h>

typedef struct {
  char *to, *paper;
  char **sets;
} Options;

static gboolean
read_paper (const char *word, SwPaper *paper)
{
  if (word == NULL)
    *paper = sw_paper_of_process ();
  else if (strcmp (word, "a4") == 0)
    *paper = SW_PAPER_A4;
  else if (strcmp (word, "letter") == 0)
    *paper = SW_PAPER_LETTER;
  else
    return FALSE;
  return TRUE;
}

static int
run (const char *file, const Options *options)
{
  g_autoptr (GError) error = NULL;
  gboolean stepwise = FALSE;
  SwPaper paper;
  int status;

  if (options->to == NULL)
    return sw_command_fail (SW_EXIT_USAGE, NULL, "usage: spirewright packet FILE --to DIR");
  if (!read_paper (options->paper, &paper))
    return sw_command_fail (SW_EXIT_USAGE, NULL, "--paper: a4 | letter are allowed");
  g_autoptr (SwSolution) solution = sw_command_solve (file, options->sets, &status);
  if (solution == NULL)
    return status;
  if (!sw_packet_write (solution,
                        options->to,
                        paper,
                        sw_language_of_process (),
                        &stepwise,
                        &error))
    return sw_command_fail (SW_EXIT_FILE, options->to, error->message);
  g_autofree char *done = g_strdup_printf (
    "Build packet written to %s\n%s",
    options->to,
    stepwise ? "This file system cannot exchange folders, so the files were put in place one "
               "by one.\n"
             : "");
  return sw_command_say (solution, done);
}

int
sw_command_packet (int argc, char **argv)
{
  Options options = { 0 };
  const GOptionEntry entries[] = {
    { "to", 't', 0, G_OPTION_ARG_FILENAME, &options.to, "Folder to write", "DIR" },
    { "paper",
      'p',
      0,
      G_OPTION_ARG_STRING,
      &options.paper,
      "a4 or letter; without it LC_PAPER decides",
      "PAPER" },
    SW_COMMAND_SET_ENTRY (&options.sets),
    G_OPTION_ENTRY_NULL
  };
  const SwCommandForm form = { "FILE --to DIR [--paper a4|letter] [--set PATH=VALUE]…",
                               "Writes the whole build packet, or nothing.",
                               entries,
                               1 };
  g_auto (GStrv) files = NULL;
  int status;

  if (sw_command_parse (&form, argc, argv, &files, &status))
    status = run (files[0], &options);
  g_free (options.to);
  g_free (options.paper);
  g_strfreev (options.sets);
  return status;
}
