// SPDX-License-Identifier: GPL-3.0-or-later
/* main.c: a verb runs a command; no verb opens the window. */
#include "app/application.h"
#include "commands/commands.h"

int
main (int argc, char **argv)
{
  if (argc > 1 && sw_commands_know (argv[1]))
    return sw_commands_run (argc, argv);
  return sw_application_main (argc, argv);
}
