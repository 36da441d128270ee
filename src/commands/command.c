// SPDX-License-Identifier: GPL-3.0-or-later
#define _GNU_SOURCE /* strerrordesc_np */
#include "commands/command.h"

#include "engine/design-file.h"
#include "engine/error.h"
#include "engine/own-rows.h"
#include "packet/process-catalogue.h"

#include <errno.h>
#include <stdio.h>
#include <string.h>

/* Whatever some reader takes for the end of a line: control characters, and NEL, LS and PS of
 * Unicode (UAX 14) as UTF-8 bytes; file names may be any bytes.
 */
static void
join_lines (char *text)
{
  static const char *const breaks[] = { "\302\205", "\342\200\250", "\342\200\251" };

  for (guint i = 0; i < G_N_ELEMENTS (breaks); i++) {
    for (char *at = strstr (text, breaks[i]); at != NULL; at = strstr (at, breaks[i]))
      memset (at, ' ', strlen (breaks[i]));
  }
  for (char *c = text; *c != '\0'; c++) {
    if (g_ascii_iscntrl (*c))
      *c = ' ';
  }
}

int
sw_command_fail (int status, const char *file, const char *message)
{
  g_autofree char *line = file == NULL ? g_strdup_printf ("spirewright: %s", message)
                                       : g_strdup_printf ("spirewright: %s: %s", file, message);

  join_lines (line);
  fprintf (stderr, "%s\n", line);
  return status;
}

static gboolean
refuse_rest (const SwCommandForm *form, const char *verb, int files, int *status)
{
  if (form->files == SW_COMMAND_ANY_FILES || files == form->files)
    return TRUE;
  g_autofree char *message = g_strdup_printf ("usage: spirewright %s %s", verb, form->usage);
  *status = sw_command_fail (SW_EXIT_USAGE, NULL, message);
  return FALSE;
}

gboolean
sw_command_parse (const SwCommandForm *form, int argc, char **argv, GStrv *files, int *status)
{
  g_autoptr (GOptionContext) context = g_option_context_new (form->usage);
  g_autoptr (GError) error = NULL;
  g_auto (GStrv) copy = g_strdupv (argv);
  gboolean help = FALSE;
  const GOptionEntry own[] = {
    { "help", 'h', 0, G_OPTION_ARG_NONE, &help, "Show this help", NULL },
    G_OPTION_ENTRY_NULL
  };

  g_option_context_set_summary (context, form->summary);
  g_option_context_set_help_enabled (context, FALSE);
  g_option_context_add_main_entries (context, own, NULL);
  g_option_context_add_main_entries (context, form->entries, NULL);
  if (!g_option_context_parse_strv (context, &copy, &error)) {
    *status = sw_command_fail (SW_EXIT_USAGE, NULL, error->message);
    return FALSE;
  }
  if (help) {
    g_autofree char *prefix = g_strdup_printf ("spirewright %s", argv[0]);
    g_set_prgname (prefix);
    g_autofree char *text = g_option_context_get_help (context, TRUE, NULL);
    *status = sw_command_print (text);
    return FALSE;
  }
  if (g_strv_length (copy) > 1 && strcmp (copy[1], "--") == 0) {
    g_free (copy[1]);
    memmove (&copy[1], &copy[2], g_strv_length (copy + 2) * sizeof *copy + sizeof *copy);
  }
  if (!refuse_rest (form, argv[0], (int) g_strv_length (copy) - 1, status))
    return FALSE;
  *files = g_strdupv (copy + 1);
  return TRUE;
}

static gboolean
apply_set (SwDesign *design, const char *set, GError **error)
{
  const char *equals = strchr (set, '=');

  if (equals == NULL) {
    g_set_error (error, SW_ERROR, SW_ERROR_SYNTAX, "--set %s: PATH=VALUE is allowed", set);
    return FALSE;
  }
  g_autofree char *path = g_strndup (set, (gsize) (equals - set));
  return sw_design_set (design, path, equals + 1, error);
}

SwDesign *
sw_command_load (const char *file, char **sets, int *status)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) loaded = sw_design_load (file, &error);

  if (loaded == NULL) {
    *status = sw_command_fail (SW_EXIT_FILE, file, error->message);
    return NULL;
  }
  g_autoptr (SwDesign) design = sw_design_copy (loaded);
  for (guint i = 0; sets != NULL && sets[i] != NULL; i++) {
    if (!apply_set (design, sets[i], &error)) {
      *status = sw_command_fail (SW_EXIT_USAGE, file, error->message);
      return NULL;
    }
  }
  if (!sw_design_check (design, &error)) { /* the file was good: --set broke it */
    *status = sw_command_fail (SW_EXIT_USAGE, file, error->message);
    return NULL;
  }
  const SwCatalogue *catalogue = sw_catalogue_of_process (NULL); /* what fails is said later */
  return catalogue == NULL ? g_steal_pointer (&design) : sw_own_rows_carry (design, catalogue);
}

/* Whether the file alone can be solved: then --set is to blame. */
static gboolean
solves_alone (const char *file, const SwCatalogue *catalogue)
{
  g_autoptr (SwDesign) design = sw_design_load (file, NULL);
  g_autoptr (SwSolution) solution =
    design == NULL ? NULL : sw_solution_new (design, catalogue, NULL);

  return solution != NULL;
}

SwSolution *
sw_command_solve_design (SwDesign *design, const char *file, char **sets, int *status)
{
  g_autoptr (GError) error = NULL;
  const SwCatalogue *catalogue = sw_catalogue_of_process (&error);
  SwSolution *solution = NULL;

  if (catalogue != NULL)
    solution = sw_solution_new_with_cuts (design, catalogue, NULL, &error);
  if (solution == NULL) {
    gboolean set_wrong = sets != NULL && catalogue != NULL && solves_alone (file, catalogue);
    *status = sw_command_fail (set_wrong ? SW_EXIT_USAGE : SW_EXIT_FILE, file, error->message);
  }
  return solution;
}

SwSolution *
sw_command_solve (const char *file, char **sets, int *status)
{
  g_autoptr (SwDesign) design = sw_command_load (file, sets, status);

  return design == NULL ? NULL : sw_command_solve_design (design, file, sets, status);
}

int
sw_command_status (const SwSolution *solution)
{
  return sw_findings_count (solution->findings, SW_LEVEL_STOP) > 0 ? SW_EXIT_STOPS
                                                                   : SW_EXIT_DONE;
}

int
sw_command_say (const SwSolution *solution, const char *done)
{
  g_autoptr (GString) text = g_string_new (done);

  for (guint i = 0; i < solution->findings->len; i++) {
    const SwFinding *finding = &g_array_index (solution->findings, SwFinding, i);
    g_autofree char *sentence =
      sw_finding_text (finding, solution->design, &sw_language_english);
    if (finding->level == SW_LEVEL_STOP)
      g_string_append_printf (text, "stop: %s\n", sentence);
  }
  int status = sw_command_print (text->str);
  return status == SW_EXIT_DONE ? sw_command_status (solution) : status;
}

const char *
sw_command_system_words (int number)
{
  const char *words = strerrordesc_np (number);

  return words == NULL ? "unknown error" : words;
}

int
sw_command_print (const char *text)
{
  if (fputs (text, stdout) >= 0 && fflush (stdout) == 0)
    return SW_EXIT_DONE;
  g_autofree char *message =
    g_strdup_printf ("can't be written: %s", sw_command_system_words (errno));
  return sw_command_fail (SW_EXIT_FILE, "standard output", message);
}
