// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/glpk-guard.h"

#include "engine/error.h"

#include <glpk.h>
#include <setjmp.h>

typedef struct {
  jmp_buf back;
  GString *said; /* owned */
} Guard;

static void
error_cb (void *info)
{
  Guard *guard = info;

  longjmp (guard->back, 1);
}

/* Returns: 1, "not to the terminal". */
static int
print_cb (void *info, const char *text)
{
  Guard *guard = info;

  g_string_append (guard->said, text);
  return 1;
}

static void
set_error (const Guard *guard, GError **error)
{
  g_autofree char *said = g_strdelimit (g_strdup (guard->said->str), "\r\n", ' ');

  g_set_error (error, SW_ERROR, SW_ERROR_NUMERIC, "GLPK gave up: %s", g_strstrip (said));
}

gboolean
sw_glpk_run (SwGlpkWork work, gpointer data, GError **error)
{
  Guard guard = { .said = g_string_new (NULL) };
  volatile gboolean finished = FALSE;

  glp_term_hook (print_cb, &guard);
  glp_error_hook (error_cb, &guard);
  if (setjmp (guard.back) == 0) {
    work (data);
    finished = TRUE;
  }
  glp_free_env ();
  if (!finished)
    set_error (&guard, error);
  g_string_free (guard.said, TRUE);
  return finished;
}
