// SPDX-License-Identifier: GPL-3.0-or-later
/* commands.h: what runs without a display. One row a verb.
 *
 * Exit status: 0 done; 1 done, but the design has `stop` findings, or there is no solution; 2
 * wrong usage; 3 a file could not be read, is not valid or could not be written.
 */
#pragma once
#include <glib.h>

/* Whether argv[1] is a verb, or --help or --version. */
gboolean sw_commands_know (const char *word);

/* Whether the arguments are neither a verb's nor the window's: an unknown option, or a word
 * that is no file with more behind it, as a misspelt verb has. sw_commands_run () refuses them.
 */
gboolean sw_commands_misused (int argc, char **argv);

/* Runs argv[1]. Returns: the exit status. */
int sw_commands_run (int argc, char **argv);
