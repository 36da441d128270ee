// SPDX-License-Identifier: GPL-3.0-or-later
/* error.h: the engine's one error domain.
 *
 * Messages read "key: what is wrong, what is allowed": lower case, no full stop, no line break.
 */
#pragma once
#include <glib.h>

#define SW_ERROR (sw_error_quark ())

typedef enum {
  SW_ERROR_SYNTAX,      /* the text is not the JSON (or the number) it should be */
  SW_ERROR_TYPE,        /* a value of the wrong type */
  SW_ERROR_RANGE,       /* a number outside what its key allows */
  SW_ERROR_CHOICE,      /* a word that is not one of the choices */
  SW_ERROR_UNKNOWN_KEY, /* no such key (only where a key is named by a person) */
  SW_ERROR_REPEATED,    /* a key given twice */
  SW_ERROR_VERSION,     /* a file from a newer program */
  SW_ERROR_CATALOGUE,   /* a bad row in data/ */
  SW_ERROR_NO_SOLUTION, /* a question with no answer inside the ranges */
  SW_ERROR_NUMERIC,     /* GSL or GLPK gave up */
  SW_ERROR_EXISTS,      /* something is in the way and is not overwritten */
} SwError;

GQuark sw_error_quark (void);

/* As g_set_error () and g_strdup_printf (), but numbers have a decimal point whatever the
 * process's locale: error lines are for scripts too.
 */
void sw_set_error (GError **error, SwError code, const char *format, ...) G_GNUC_PRINTF (3, 4);
char *sw_plain_printf (const char *format, ...) G_GNUC_PRINTF (1, 2);

/* A name or a value as it may stand in a message: control characters and line breaks are
 * written \u000a, bytes that are no UTF-8 as U+FFFD; behind 60 characters it is cut with "…".
 * `length` −1: up to the closing 0. Returns: (transfer full).
 */
char *sw_shown (const char *text, gssize length);
