// SPDX-License-Identifier: GPL-3.0-or-later
/* command.h: what every verb shares: exit statuses, one-line errors, a design from a file and
 * --set. For commands only. */
#pragma once
#include "engine/solution.h"

enum {
  SW_EXIT_DONE = 0,
  SW_EXIT_STOPS = 1, /* done, but there are `stop` findings; or no solution */
  SW_EXIT_USAGE = 2,
  SW_EXIT_FILE = 3,
};

/* A verb's own function: arguments behind the verb, argv[0] = the verb. Returns: the exit
 * status. */
int sw_command_new (int argc, char **argv);
int sw_command_report (int argc, char **argv);
int sw_command_fit (int argc, char **argv);
int sw_command_packet (int argc, char **argv);
int sw_command_picture (int argc, char **argv);
int sw_command_cuts (int argc, char **argv);

#define SW_COMMAND_ANY_FILES (-1)

/* --set, as every verb with a design has it. Kept as bytes: a title may be UTF-8 in any locale.
 */
#define SW_COMMAND_SET_ENTRY(sets)                                                             \
  {                                                                                            \
    "set", 's', 0, G_OPTION_ARG_FILENAME_ARRAY, sets, "Take another value for a key",          \
      "PATH=VALUE"                                                                             \
  }

typedef struct {
  const char *usage; /* "FILE [--json] [--set PATH=VALUE]…" */
  const char *summary;
  const GOptionEntry *entries;
  int files; /* how many words without an option, exactly; or any number */
} SwCommandForm;

/* Reads options and the files behind them. Returns: whether it may go on; if not, *status is
 * what to exit with. files: (out) (transfer full): the words without an option.
 */
gboolean sw_command_parse (const SwCommandForm *form,
                           int argc,
                           char **argv,
                           GStrv *files,
                           int *status);

/* One line on standard error: "spirewright: FILE: what is wrong". `file` may be NULL. Returns:
 * status. */
int sw_command_fail (int status, const char *file, const char *message);

/* A design from a file, with --set applied. Returns: (transfer full) (nullable); *status says
 * why not. */
SwDesign *sw_command_load (const char *file, char **sets, int *status);

/* Its solution, or that of a design from it. Returns: (transfer full) (nullable); *status says
 * why not: SW_EXIT_USAGE where the file alone could be solved.
 */
SwSolution *sw_command_solve (const char *file, char **sets, int *status);

SwSolution *sw_command_solve_design (SwDesign *design,
                                     const char *file,
                                     char **sets,
                                     int *status);

/* Says on standard output what was done, and the `stop` findings. Returns: the exit status. */
int sw_command_say (const SwSolution *solution, const char *done);

/* SW_EXIT_STOPS when the design has `stop` findings. */
int sw_command_status (const SwSolution *solution);

/* An error of the system, in English whatever the locale. number: errno. */
const char *sw_command_system_words (int number);

/* Standard output, written and flushed, or SW_EXIT_FILE with a line on standard error. */
int sw_command_print (const char *text);
