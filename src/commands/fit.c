// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/fit.h"

#include "commands/command.h"
#include "engine/design-file.h"
#include "engine/design-keys.h"
#include "engine/error.h"
#include "engine/json-text.h"

#include <math.h>
#include <string.h>

static const char *const tail_words[] = {
  [SW_GIVES_TAIL] = "tail",
  [SW_GIVES_CROWN_HEIGHT] = "crown_height",
  [SW_GIVES_RING_RADIUS] = "ring_radius",
  [SW_GIVES_PIXELS] = "pixels",
  [SW_GIVES_PITCH] = "pitch",
  [SW_GIVES_LEAD] = "lead",
};

static const char *const spacing_words[] = {
  [SW_FIT_RING_RADIUS] = "ring_radius",
  [SW_FIT_STRIP_COUNT] = "strip_count",
  [SW_FIT_COVERAGE] = "coverage",
};

static int
find_word (const char *const *words, guint n, guint first, const char *word)
{
  for (guint i = first; i < n; i++) {
    if (strcmp (words[i], word) == 0)
      return (int) i;
  }
  return -1;
}

typedef struct {
  char *give, *spacing, *to;
  char **sets;
} Options;

static gboolean
read_spacing (const char *text, double *value)
{
  char *end;

  *value = g_ascii_strtod (text, &end);
  return end != text && *end == '\0' && isfinite (*value) && *value > 0;
}

/* Returns: (nullable): the fitted design; *status is SW_EXIT_USAGE for words that are none. */
static SwDesign *
fit (const SwDesign *design, const Options *options, int *status, GError **error)
{
  double spacing_m = 0;
  int tail =
    find_word (tail_words, G_N_ELEMENTS (tail_words), SW_GIVES_CROWN_HEIGHT, options->give);
  int spacing = find_word (spacing_words, G_N_ELEMENTS (spacing_words), 0, options->give);

  *status = SW_EXIT_USAGE;
  if (options->spacing != NULL && !read_spacing (options->spacing, &spacing_m)) {
    g_set_error (error,
                 SW_ERROR,
                 SW_ERROR_TYPE,
                 "--spacing %s: a number of metres above 0 is allowed",
                 options->spacing);
    return NULL;
  }
  if (options->spacing != NULL ? spacing < 0 : tail < 0) {
    g_set_error (error,
                 SW_ERROR,
                 SW_ERROR_CHOICE,
                 "--give %s: %s are allowed",
                 options->give,
                 options->spacing != NULL
                   ? "ring_radius | strip_count | coverage"
                   : "crown_height | ring_radius | pixels | pitch | lead");
    return NULL;
  }
  *status = SW_EXIT_STOPS;
  return options->spacing != NULL
           ? sw_fit_spacing (design, (SwFitSpacing) spacing, spacing_m, error)
           : sw_fit_tail (design, (SwGives) tail, error);
}

/* "shape.ring_radius_m: 1 -> 1.0123": the one number that moved. */
static char *
moved_text (const SwDesign *before, const SwDesign *after)
{
  for (guint i = 0; i < sw_n_keys (); i++) {
    const SwKey *key = sw_key_at (i);
    if (key->type != SW_KEY_NUMBER && key->type != SW_KEY_WHOLE)
      continue;
    g_autofree char *old = sw_json_number (sw_key_get_number (key, before));
    g_autofree char *new = sw_json_number (sw_key_get_number (key, after));
    if (strcmp (old, new) != 0)
      return g_strdup_printf ("%s: %s -> %s\n", key->path, old, new);
  }
  return g_strdup ("Nothing had to move\n");
}

static int
run (const char *file, const Options *options)
{
  g_autoptr (GError) error = NULL;
  int status;

  if (options->give == NULL || options->to == NULL)
    return sw_command_fail (SW_EXIT_USAGE,
                            NULL,
                            "usage: spirewright fit FILE --give QUANTITY --to FILE2");
  g_autoptr (SwDesign) design = sw_command_load (file, options->sets, &status);
  if (design == NULL)
    return status;
  g_autoptr (SwDesign) fitted = fit (design, options, &status, &error);
  if (fitted == NULL)
    return sw_command_fail (status, file, error->message);
  g_autoptr (SwSolution) solution =
    sw_command_solve_design (fitted, file, options->sets, &status);
  if (solution == NULL)
    return status;
  if (!sw_design_save (fitted, options->to, &error))
    return sw_command_fail (SW_EXIT_FILE, options->to, error->message);
  g_autofree char *moved = moved_text (design, fitted);
  g_autofree char *done = g_strdup_printf ("%sDesign written to %s\n", moved, options->to);
  return sw_command_say (solution, done);
}

int
sw_command_fit (int argc, char **argv)
{
  Options options = { 0 };
  const GOptionEntry entries[] = {
    { "give",
      'g',
      0,
      G_OPTION_ARG_STRING,
      &options.give,
      "What moves: crown_height, ring_radius, pixels, pitch or lead; with --spacing "
      "ring_radius, strip_count or coverage",
      "QUANTITY" },
    { "spacing",
      0,
      0,
      G_OPTION_ARG_STRING,
      &options.spacing,
      "Make the spacing at the ring so many metres",
      "M" },
    SW_COMMAND_SET_ENTRY (&options.sets),
    { "to", 't', 0, G_OPTION_ARG_FILENAME, &options.to, "Where to write the design", "FILE2" },
    G_OPTION_ENTRY_NULL
  };
  const SwCommandForm form = {
    "FILE --give QUANTITY [--spacing M] [--set PATH=VALUE]… --to FILE2",
    "Makes a design exact by moving one quantity.",
    entries,
    1
  };
  g_auto (GStrv) files = NULL;
  int status;

  if (sw_command_parse (&form, argc, argv, &files, &status))
    status = run (files[0], &options);
  g_free (options.give);
  g_free (options.spacing);
  g_free (options.to);
  g_strfreev (options.sets);
  return status;
}
