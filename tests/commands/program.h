// SPDX-License-Identifier: GPL-3.0-or-later
/* program.h: runs the built program as a person would, in a folder of its own. */
#pragma once
#include <gio/gio.h>
#include <glib/gstdio.h>
#include <json-glib/json-glib.h>
#include <string.h>

typedef struct {
  char *out, *err; /* owned */
  int status;
} Answer;

static inline void
answer_clear (Answer *answer)
{
  g_free (answer->out);
  g_free (answer->err);
}

G_DEFINE_AUTO_CLEANUP_CLEAR_FUNC (Answer, answer_clear)

/* A folder for one test; taken away with all in it. */
typedef struct {
  char *folder; /* owned */
} Place;

static inline void
place_up (Place *place, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;

  place->folder = g_dir_make_tmp ("spirewright-XXXXXX", &error);
  g_assert_no_error (error);
}

static inline void
place_down (Place *place, gconstpointer unused)
{
  const char *argv[] = { "rm", "-rf", place->folder, NULL };
  g_autoptr (GSubprocess) process = g_subprocess_newv (argv, G_SUBPROCESS_FLAGS_NONE, NULL);

  g_assert_true (g_subprocess_wait_check (process, NULL, NULL));
  g_free (place->folder);
}

#define ADD_TEST(path, function) g_test_add (path, Place, NULL, place_up, function, place_down)

static inline char *
place_path (const Place *place, const char *name)
{
  return g_build_filename (place->folder, name, NULL);
}

static inline gboolean
place_has (const Place *place, const char *name)
{
  g_autofree char *path = place_path (place, name);

  return g_file_test (path, G_FILE_TEST_EXISTS);
}

static inline void
place_write (const Place *place, const char *name, const char *text)
{
  g_autofree char *path = place_path (place, name);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static inline char *
place_read (const Place *place, const char *name)
{
  g_autofree char *path = place_path (place, name);
  char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  return text;
}

/* `command` goes through the shell, with the program as $SW. */
static inline void
ask_shell (const Place *place, const char *command, Answer *answer)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (GSubprocessLauncher) launcher =
    g_subprocess_launcher_new (G_SUBPROCESS_FLAGS_STDOUT_PIPE | G_SUBPROCESS_FLAGS_STDERR_PIPE);

  g_subprocess_launcher_set_cwd (launcher, place->folder);
  g_subprocess_launcher_setenv (launcher, "SW", g_getenv ("SW_PROGRAM"), TRUE);
  g_subprocess_launcher_unsetenv (launcher, "DISPLAY");
  g_subprocess_launcher_unsetenv (launcher, "WAYLAND_DISPLAY");
  g_autoptr (GSubprocess) process =
    g_subprocess_launcher_spawn (launcher, &error, "bash", "-c", command, NULL);
  g_assert_no_error (error);
  g_subprocess_communicate_utf8 (process, NULL, NULL, &answer->out, &answer->err, &error);
  g_assert_no_error (error);
  g_assert_true (g_subprocess_get_if_exited (process));
  answer->status = g_subprocess_get_exit_status (process);
}

/* The words behind "spirewright", as typed into a shell. */
static inline void
ask (const Place *place, const char *words, Answer *answer)
{
  g_autofree char *command = g_strdup_printf ("\"$SW\" %s", words);

  ask_shell (place, command, answer);
}

/* Exactly one line on standard error that begins so, nothing on standard output. */
static inline void
expect_refusal (const Place *place, const char *words, int status, const char *message)
{
  g_auto (Answer) answer = { 0 };
  g_autofree char *start = g_strconcat ("spirewright: ", message, NULL);

  ask (place, words, &answer);
  g_test_message ("%s: %s", words, answer.err);
  g_assert_cmpint (answer.status, ==, status);
  g_assert_cmpstr (answer.out, ==, "");
  g_assert_true (g_str_has_prefix (answer.err, start));
  g_assert_true (strchr (answer.err, '\n') == answer.err + strlen (answer.err) - 1);
  g_assert_null (strstr (answer.err, "\342\200\250")); /* LINE SEPARATOR */
}

/* Runs and expects that status, with nothing on standard error. */
static inline void
expect_done (const Place *place, const char *words, int status)
{
  g_auto (Answer) answer = { 0 };

  ask (place, words, &answer);
  g_test_message ("%s: %s", words, answer.err);
  g_assert_cmpint (answer.status, ==, status);
  g_assert_cmpstr (answer.err, ==, "");
}

/* A place with the Lawn in lawn.spire. */
static inline void
lawn_up (Place *place, gconstpointer unused)
{
  place_up (place, unused);
  expect_done (place, "new lawn.spire", 0);
}

#define ADD_LAWN_TEST(path, function)                                                          \
  g_test_add (path, Place, NULL, lawn_up, function, place_down)

/* The report of a design file. Returns: (transfer full). */
static inline JsonNode *
report_of (const Place *place, const char *words)
{
  g_auto (Answer) answer = { 0 };
  g_autofree char *command = g_strdup_printf ("report %s --json", words);
  g_autoptr (GError) error = NULL;

  ask (place, command, &answer);
  g_assert_cmpstr (answer.err, ==, "");
  JsonNode *root = json_from_string (answer.out, &error);
  g_assert_no_error (error);
  return root;
}

static inline double
number_at (JsonNode *report, const char *group, const char *name)
{
  JsonObject *object = json_object_get_object_member (json_node_get_object (report), group);

  g_assert_true (json_object_has_member (object, name));
  return json_object_get_double_member (object, name);
}
