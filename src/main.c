// SPDX-License-Identifier: GPL-3.0-or-later
/* main.c: a verb runs a command; no verb opens the window. */
#include "app/application.h"
#include "commands/commands.h"

#include <malloc.h>
#include <signal.h>

/* Frame-sized blocks stay with the program: fetching fresh pages from the system at every frame
 * costs more than drawing it. */
static void
keep_large_blocks (void)
{
  mallopt (M_MMAP_THRESHOLD, 64 << 20);
  mallopt (M_TRIM_THRESHOLD, 256 << 20);
  mallopt (M_TOP_PAD, 16 << 20);
}

int
main (int argc, char **argv)
{
  signal (SIGXFSZ, SIG_IGN); /* a file past the limit is an error to tell, not an end */
  if (argc > 1 && (sw_commands_know (argv[1]) || sw_commands_misused (argc, argv)))
    return sw_commands_run (argc, argv);
  keep_large_blocks ();
  return sw_application_main (argc, argv);
}
