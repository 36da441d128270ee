// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/report.h"

#include "commands/command.h"
#include "engine/json-text.h"

static char *
text_of (const SwSolution *solution, gboolean json)
{
  if (!json)
    return sw_report_to_text (solution);
  g_autoptr (JsonNode) root = sw_report_to_json (solution);
  return sw_json_to_text (root, NULL);
}

int
sw_command_report (int argc, char **argv)
{
  g_auto (GStrv) sets = NULL;
  gboolean json = FALSE;
  const GOptionEntry entries[] = {
    { "json", 'j', 0, G_OPTION_ARG_NONE, &json, "Print a JSON object", NULL },
    SW_COMMAND_SET_ENTRY (&sets),
    G_OPTION_ENTRY_NULL
  };
  const SwCommandForm form = { "FILE [--json] [--set PATH=VALUE]…",
                               "Solves a design and prints every result.",
                               entries,
                               1 };
  g_auto (GStrv) files = NULL;
  int status;

  if (!sw_command_parse (&form, argc, argv, &files, &status))
    return status;
  g_autoptr (SwSolution) solution = sw_command_solve (files[0], sets, &status);
  if (solution == NULL)
    return status;
  g_autofree char *text = text_of (solution, json);
  status = sw_command_print (text);
  return status == SW_EXIT_DONE ? sw_command_status (solution) : status;
}
