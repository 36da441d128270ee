// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/packet-save.h"

#include "packet/process-catalogue.h"
#include "packet/process-locale.h"

typedef struct {
  SwDesign *design; /* owned */
  char *folder;     /* owned */
  SwPaper paper;
  const SwLanguage *language;
} Job;

static void
job_free (gpointer data)
{
  Job *job = data;

  sw_design_unref (job->design);
  g_free (job->folder);
  g_free (job);
}

static void
save_thread (GTask *task, gpointer source, gpointer data, GCancellable *cancellable)
{
  const Job *job = data;
  GError *error = NULL;
  const SwCatalogue *catalogue = sw_catalogue_of_process (&error);
  g_autoptr (SwSolution) solution = NULL;

  if (catalogue != NULL)
    solution = sw_solution_new_with_cuts (job->design, catalogue, cancellable, &error);
  if (solution != NULL &&
      sw_packet_write (solution, job->folder, job->paper, job->language, NULL, &error))
    g_task_return_boolean (task, TRUE);
  else
    g_task_return_error (task, error);
}

void
sw_packet_save_async (SwDesign *design,
                      const char *folder,
                      SwPaper paper,
                      GCancellable *cancellable,
                      GAsyncReadyCallback callback,
                      gpointer user_data)
{
  g_autoptr (GTask) task = g_task_new (NULL, cancellable, callback, user_data);
  Job *job = g_new0 (Job, 1);

  job->design = sw_design_ref (design);
  job->folder = g_strdup (folder);
  job->paper = paper;
  job->language = sw_language_of_process ();
  g_task_set_task_data (task, job, job_free);
  g_task_run_in_thread (task, save_thread);
}

gboolean
sw_packet_save_finish (GAsyncResult *result, GError **error)
{
  return g_task_propagate_boolean (G_TASK (result), error);
}
