// SPDX-License-Identifier: GPL-3.0-or-later
/* glpk-guard.h: runs work with GLPK so that its errors come back as GError.
 *
 * GLPK ends the program when it is called wrongly or runs out of memory, and prints to the
 * terminal. Inside the guard it does neither. GLPK's environment belongs to the thread (as
 * Debian builds it); the guard throws it away afterwards with every problem object in it.
 */
#pragma once
#include <glib.h>

/* May leave by longjmp at any call into GLPK: it keeps nothing on its own stack that has to be
 * freed, all of that is in `data`.
 */
typedef void (*SwGlpkWork) (gpointer data);

/* Errors: SW_ERROR_NUMERIC with what GLPK said. */
gboolean sw_glpk_run (SwGlpkWork work, gpointer data, GError **error);
