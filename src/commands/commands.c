// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/commands.h"

gboolean
sw_commands_know (const char *word)
{
  return FALSE;
}

int
sw_commands_run (int argc, char **argv)
{
  return 2;
}
