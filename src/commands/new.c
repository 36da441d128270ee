// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/command.h"
#include "engine/design-file.h"
#include "engine/starts.h"

#include <errno.h>
#include <fcntl.h>
#include <glib/gstdio.h>
#include <unistd.h>

/* Holds the name for this design, so that a file that comes up meanwhile is not written over.
 */
static int
claim (const char *file)
{
  int fd = g_open (file, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0666);

  if (fd >= 0) {
    close (fd);
    return SW_EXIT_DONE;
  }
  if (errno == EEXIST)
    return sw_command_fail (SW_EXIT_FILE, file, "file: stands already, --force writes over it");
  g_autofree char *message = g_strdup_printf ("file: %s", sw_command_system_words (errno));
  return sw_command_fail (SW_EXIT_FILE, file, message);
}

int
sw_command_new (int argc, char **argv)
{
  g_autofree char *example = NULL;
  gboolean force = FALSE;
  const GOptionEntry entries[] = { { "example",
                                     'e',
                                     0,
                                     G_OPTION_ARG_STRING,
                                     &example,
                                     "Begin with porch, lawn or landmark",
                                     "NAME" },
                                   { "force",
                                     'f',
                                     0,
                                     G_OPTION_ARG_NONE,
                                     &force,
                                     "Write over a file that stands already",
                                     NULL },
                                   G_OPTION_ENTRY_NULL };
  const SwCommandForm form = { "FILE [--example NAME] [--force]",
                               "Writes a starting design.",
                               entries,
                               1 };
  g_auto (GStrv) files = NULL;
  g_autoptr (GError) error = NULL;
  int status;

  if (!sw_command_parse (&form, argc, argv, &files, &status))
    return status;
  g_autoptr (SwDesign) design = sw_start_new (example == NULL ? "lawn" : example, &error);
  if (design == NULL)
    return sw_command_fail (SW_EXIT_USAGE, NULL, error->message);
  status = force ? SW_EXIT_DONE : claim (files[0]);
  if (status != SW_EXIT_DONE)
    return status;
  if (!sw_design_save (design, files[0], &error)) {
    if (!force)
      g_unlink (files[0]);
    return sw_command_fail (SW_EXIT_FILE, files[0], error->message);
  }
  return SW_EXIT_DONE;
}
