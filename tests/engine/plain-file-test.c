// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/plain-file.h"

#include <glib/gstdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

typedef struct {
  char *folder, *file; /* owned */
} Place;

static void
place_up (Place *place, gconstpointer unused)
{
  place->folder = g_dir_make_tmp ("plain-XXXXXX", NULL);
  place->file = g_build_filename (place->folder, "file", NULL);
}

static void
place_down (Place *place, gconstpointer unused)
{
  g_unlink (place->file);
  g_assert_cmpint (g_rmdir (place->folder), ==, 0); /* nothing was left beside it */
  g_free (place->file);
  g_free (place->folder);
}

static void
expect_text (const char *path, const char *expected)
{
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, expected);
}

static void
test_writes_and_replaces (Place *place, gconstpointer unused)
{
  g_autoptr (GError) error = NULL;
  struct stat info;

  g_assert_true (sw_plain_file_replace (place->file, "one", 3, &error));
  g_assert_no_error (error);
  expect_text (place->file, "one");
  g_assert_cmpint (g_chmod (place->file, 0604), ==, 0);
  g_assert_true (sw_plain_file_replace (place->file, "second", 6, &error));
  expect_text (place->file, "second");
  g_assert_cmpint (g_stat (place->file, &info), ==, 0);
  g_assert_cmpuint (info.st_mode & 0777, ==, 0604);
}

/* Neither read, which might wait, nor taken away. */
static void
test_pipes_are_refused (Place *place, gconstpointer unused)
{
  g_autoptr (GError) written = NULL, got = NULL;
  struct stat info;

  g_assert_cmpint (mkfifo (place->file, 0600), ==, 0);
  g_assert_false (sw_plain_file_replace (place->file, "x", 1, &written));
  g_assert_error (written, G_FILE_ERROR, G_FILE_ERROR_INVAL);
  g_assert_cmpstr (written->message, ==, "file: can't be written, not a plain file");
  g_assert_null (sw_plain_file_read (place->file, 100, &got));
  g_assert_error (got, G_FILE_ERROR, G_FILE_ERROR_INVAL);
  g_assert_cmpint (g_stat (place->file, &info), ==, 0);
  g_assert_true (S_ISFIFO (info.st_mode));
}

static void
test_folders_are_refused (Place *place, gconstpointer unused)
{
  g_autoptr (GError) written = NULL, got = NULL;

  g_assert_false (sw_plain_file_replace (place->folder, "x", 1, &written));
  g_assert_error (written, G_FILE_ERROR, G_FILE_ERROR_ISDIR);
  g_assert_null (sw_plain_file_read (place->folder, 100, &got));
  g_assert_error (got, G_FILE_ERROR, G_FILE_ERROR_ISDIR);
}

static void
test_reads_all_or_a_little_too_much (Place *place, gconstpointer unused)
{
  g_autofree char *text = g_strnfill (100000, 'x');

  g_assert_true (g_file_set_contents (place->file, text, -1, NULL));
  g_autoptr (GString) all = sw_plain_file_read (place->file, 100000, NULL);
  g_assert_cmpstr (all->str, ==, text);
  g_autoptr (GString) much = sw_plain_file_read (place->file, 1000, NULL);
  g_assert_cmpuint (much->len, >, 1000);
  g_assert_cmpuint (much->len, <, 100000);
}

static void
test_what_is_not_there (Place *place, gconstpointer unused)
{
  g_autoptr (GError) got = NULL, written = NULL;
  g_autofree char *deep = g_build_filename (place->folder, "no", "file", NULL);

  g_assert_null (sw_plain_file_read (place->file, 100, &got));
  g_assert_error (got, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_cmpstr (got->message, ==, "file: can't be read, no such file or folder");
  g_assert_false (sw_plain_file_replace (deep, "x", 1, &written));
  g_assert_error (written, G_FILE_ERROR, G_FILE_ERROR_NOENT);
}

#define ADD_TEST(path, function) g_test_add (path, Place, NULL, place_up, function, place_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_TEST ("/engine/plain-file/writes and replaces", test_writes_and_replaces);
  ADD_TEST ("/engine/plain-file/pipes are refused", test_pipes_are_refused);
  ADD_TEST ("/engine/plain-file/folders are refused", test_folders_are_refused);
  ADD_TEST ("/engine/plain-file/reads all or a little too much",
            test_reads_all_or_a_little_too_much);
  ADD_TEST ("/engine/plain-file/what is not there", test_what_is_not_there);
  return g_test_run ();
}
