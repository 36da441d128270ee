// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/report.h"

#include "commands/command.h"
#include "engine/json-text.h"
#include "engine/working.h"

static char *
text_of (const SwSolution *solution, const char *working, gboolean json)
{
  if (!json && working != NULL)
    return sw_report_workings_to_text (solution, working);
  if (!json)
    return sw_report_to_text (solution);
  g_autoptr (JsonNode) root =
    working != NULL ? sw_report_workings (solution, working) : sw_report_to_json (solution);
  return sw_json_to_text (root, NULL);
}

int
sw_command_report (int argc, char **argv)
{
  g_auto (GStrv) sets = NULL;
  g_autofree char *working = NULL;
  gboolean json = FALSE;
  const GOptionEntry entries[] = {
    { "json", 'j', 0, G_OPTION_ARG_NONE, &json, "Print a JSON object", NULL },
    { "working",
      'w',
      0,
      G_OPTION_ARG_STRING,
      &working,
      "Only the working of a result, or of a group of them",
      "KEY" },
    SW_COMMAND_SET_ENTRY (&sets),
    G_OPTION_ENTRY_NULL
  };
  const SwCommandForm form = { "FILE [--json] [--working KEY] [--set PATH=VALUE]…",
                               "Solves a design and prints every result.",
                               entries,
                               1 };
  g_auto (GStrv) files = NULL;
  int status;

  if (!sw_command_parse (&form, argc, argv, &files, &status))
    return status;
  if (working != NULL && !sw_working_known (working)) {
    g_autofree char *message =
      g_strdup_printf ("--working %s: no such result, report lists what there is", working);
    return sw_command_fail (SW_EXIT_USAGE, files[0], message);
  }
  g_autoptr (SwSolution) solution = sw_command_solve (files[0], sets, &status);
  if (solution == NULL)
    return status;
  g_autofree char *text = text_of (solution, working, json);
  status = sw_command_print (text);
  return status == SW_EXIT_DONE ? sw_command_status (solution) : status;
}
