// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/error.h"
#include "packet/folder.h"
#include "packet/packet-list.h"

#include <glib/gstdio.h>
#include <signal.h>
#include <stdlib.h>
#include <string.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

typedef struct {
  char *outer;  /* a folder of its own */
  char *folder; /* outer/packet, missing at first */
} Fixture;

static void
remove_tree (const char *path)
{
  g_autoptr (GDir) dir = NULL;
  const char *name;

  if (!g_file_test (path, G_FILE_TEST_IS_SYMLINK) &&
      (dir = g_dir_open (path, 0, NULL)) != NULL) {
    while ((name = g_dir_read_name (dir)) != NULL) {
      g_autofree char *below = g_build_filename (path, name, NULL);

      remove_tree (below);
    }
  }
  g_remove (path);
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autofree char *made = g_dir_make_tmp ("folder-XXXXXX", NULL);

  fixture->outer = realpath (made, NULL);
  fixture->folder = g_build_filename (fixture->outer, "packet", NULL);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  remove_tree (fixture->outer);
  g_free (fixture->folder);
  free (fixture->outer);
}

/* One file of the text given, and the list. */
static gboolean
write_packet (const char *folder, const char *text, gboolean *stepwise, GError **error)
{
  g_autoptr (GBytes) bytes = g_bytes_new (text, strlen (text));
  SwFolderFile files[] = { { "marks.csv", bytes }, { SW_PACKET_LIST_FILE, NULL } };
  g_autoptr (JsonNode) report = json_from_string ("{}", NULL);
  g_autoptr (GBytes) list = sw_packet_list_seal (report, files, 1);

  files[1].bytes = list;
  return sw_folder_write (folder, files, 2, stepwise, error);
}

static void
assert_writes (const char *folder, const char *text)
{
  g_autoptr (GError) error = NULL;
  gboolean stepwise = TRUE;
  gboolean done = write_packet (folder, text, &stepwise, &error);

  g_assert_no_error (error);
  g_assert_true (done);
  g_assert_false (stepwise);
}

static void
assert_holds (const char *folder, const char *text)
{
  g_autofree char *path = g_build_filename (folder, "marks.csv", NULL);
  g_autofree char *found = NULL;

  g_assert_true (g_file_get_contents (path, &found, NULL, NULL));
  g_assert_cmpstr (found, ==, text);
}

/* Nothing but what is named stands in the folder: no left-over of a failed write. */
static void
assert_only (const char *folder, const char *const *names)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;
  guint n = 0;

  for (; (name = g_dir_read_name (dir)) != NULL; n++) {
    if (!g_strv_contains (names, name))
      g_error ("unexpected %s in %s", name, folder);
  }
  for (guint i = 0; i < n; i++)
    g_assert_nonnull (names[i]);
  g_assert_null (names[n]);
}

static const char *const packet_only[] = { "packet", NULL };
static const char *const packet_files[] = { "marks.csv", SW_PACKET_LIST_FILE, NULL };

static void
test_a_missing_folder_is_made (Fixture *fixture, gconstpointer data)
{
  assert_writes (fixture->folder, "new");
  assert_holds (fixture->folder, "new");
  assert_only (fixture->outer, packet_only);
  assert_only (fixture->folder, packet_files);
}

static void
test_an_empty_folder_is_filled (Fixture *fixture, gconstpointer data)
{
  struct stat info;

  g_mkdir (fixture->folder, 0750);
  assert_writes (fixture->folder, "new");
  assert_only (fixture->folder, packet_files);
  g_assert_cmpint (stat (fixture->folder, &info), ==, 0);
  g_assert_cmpint (info.st_mode & 07777, ==, 0750);
}

static void
test_an_earlier_packet_is_replaced (Fixture *fixture, gconstpointer data)
{
  assert_writes (fixture->folder, "old");
  assert_writes (fixture->folder, "new");
  assert_holds (fixture->folder, "new");
  assert_only (fixture->outer, packet_only);
}

static void
assert_refused (Fixture *fixture, const char *folder, const char *at)
{
  g_autoptr (GError) error = NULL;

  g_assert_false (write_packet (folder, "new", NULL, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_EXISTS);
  g_assert_true (g_str_has_prefix (error->message, at));
  g_clear_error (&error);
  g_assert_null (sw_folder_check (folder, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_EXISTS);
}

static void
test_a_foreign_file_is_kept (Fixture *fixture, gconstpointer data)
{
  g_autofree char *notes = g_build_filename (fixture->folder, "notes.txt", NULL);

  assert_writes (fixture->folder, "old");
  g_file_set_contents (notes, "mine", -1, NULL);
  assert_refused (fixture, fixture->folder, notes);
  assert_holds (fixture->folder, "old");
  assert_only (fixture->outer, packet_only);
}

static void
test_a_file_in_the_way_is_kept (Fixture *fixture, gconstpointer data)
{
  g_autofree char *text = NULL;

  g_file_set_contents (fixture->folder, "mine", -1, NULL);
  assert_refused (fixture, fixture->folder, fixture->folder);
  g_assert_true (g_file_get_contents (fixture->folder, &text, NULL, NULL));
  g_assert_cmpstr (text, ==, "mine");
}

static void
test_a_link_is_followed (Fixture *fixture, gconstpointer data)
{
  g_autofree char *link = g_build_filename (fixture->outer, "link", NULL);

  assert_writes (fixture->folder, "old");
  g_assert_cmpint (symlink ("packet", link), ==, 0);
  assert_writes (link, "new");
  assert_holds (fixture->folder, "new");
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
}

static void
test_a_link_to_nothing_is_followed (Fixture *fixture, gconstpointer data)
{
  g_autofree char *link = g_build_filename (fixture->outer, "link", NULL);

  g_assert_cmpint (symlink ("packet", link), ==, 0);
  assert_writes (link, "new");
  assert_holds (fixture->folder, "new");
  g_assert_true (g_file_test (link, G_FILE_TEST_IS_SYMLINK));
}

static void
test_slashes_at_the_end_are_nothing (Fixture *fixture, gconstpointer data)
{
  g_autofree char *slashed = g_strconcat (fixture->folder, "//", NULL);

  assert_writes (slashed, "old");
  assert_writes (slashed, "new");
  assert_holds (fixture->folder, "new");
}

static void
test_the_present_folder_is_one (Fixture *fixture, gconstpointer data)
{
  g_autofree char *before = g_get_current_dir ();

  assert_writes (fixture->folder, "old");
  g_assert_cmpint (g_chdir (fixture->folder), ==, 0);
  assert_writes (".", "new");
  g_assert_cmpint (g_chdir (before), ==, 0);
  assert_holds (fixture->folder, "new");
  assert_only (fixture->outer, packet_only);
}

static void
test_a_missing_parent_is_an_error (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *below = g_build_filename (fixture->folder, "deep", NULL);

  g_assert_false (write_packet (below, "new", NULL, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOENT);
  g_assert_true (g_str_has_prefix (error->message, fixture->folder));
}

static void
test_a_file_as_parent_is_an_error (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *below = g_build_filename (fixture->folder, "deep", NULL);

  g_file_set_contents (fixture->folder, "mine", -1, NULL);
  g_assert_false (write_packet (below, "new", NULL, &error));
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_NOTDIR);
}

/* A file that cannot be written whole leaves the earlier packet and nothing else. */
static void
test_a_full_disk_leaves_the_earlier_packet (Fixture *fixture, gconstpointer data)
{
  struct rlimit limit;
  rlim_t most;
  g_autoptr (GError) error = NULL;
  g_autofree char *large = g_strnfill (100000, 'x');

  assert_writes (fixture->folder, "old");
  signal (SIGXFSZ, SIG_IGN);
  getrlimit (RLIMIT_FSIZE, &limit);
  most = limit.rlim_cur;
  limit.rlim_cur = 65536;
  setrlimit (RLIMIT_FSIZE, &limit);
  gboolean done = write_packet (fixture->folder, large, NULL, &error);
  limit.rlim_cur = most;
  setrlimit (RLIMIT_FSIZE, &limit);
  g_assert_false (done);
  g_assert_error (error, G_FILE_ERROR, G_FILE_ERROR_FAILED); /* EFBIG */
  assert_holds (fixture->folder, "old");
  assert_only (fixture->outer, packet_only);
  g_assert_true (sw_packet_list_check (fixture->folder, NULL));
}

/* A child is killed again and again at any moment of its work: the folder always is one whole
 * packet, the old one or the new one. */
static void
test_a_kill_leaves_a_whole_packet (Fixture *fixture, gconstpointer data)
{
  assert_writes (fixture->folder, "old");
  for (int i = 0; i < 60; i++) {
    pid_t child = fork ();

    if (child == 0) {
      for (;;)
        write_packet (fixture->folder, i % 2 == 0 ? "even" : "odd", NULL, NULL);
    }
    g_usleep ((gulong) g_test_rand_int_range (0, 6000));
    kill (child, SIGKILL);
    g_assert_cmpint (waitpid (child, NULL, 0), ==, child);
    g_assert_true (sw_packet_list_check (fixture->folder, NULL));
  }
}

/* The file system in memory that has no exchange cannot be had without mounting; a mount is
 * one: nothing can be renamed onto it. */
static void
test_a_mount_is_written_file_by_file (Fixture *fixture, gconstpointer data)
{
  g_autofree char *mount = g_strdup_printf ("mount -t tmpfs none '%s'", fixture->folder);
  g_autofree char *unmount = g_strdup_printf ("umount '%s'", fixture->folder);
  g_autoptr (GError) error = NULL;
  gboolean stepwise = FALSE;

  g_mkdir (fixture->folder, 0755);
  if (geteuid () != 0 || system (mount) != 0) {
    g_test_skip ("not run here: nothing can be mounted");
    return;
  }
  for (int i = 0; i < 2; i++) {
    g_assert_true (write_packet (fixture->folder, i == 0 ? "old" : "new", &stepwise, &error));
    g_assert_no_error (error);
    g_assert_true (stepwise);
  }
  assert_holds (fixture->folder, "new");
  assert_only (fixture->folder, packet_files);
  g_assert_cmpint (system (unmount), ==, 0);
}

#define CASE(name, function)                                                                   \
  g_test_add ("/packet/folder/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  CASE ("a missing folder is made", test_a_missing_folder_is_made);
  CASE ("an empty folder is filled and keeps its mode", test_an_empty_folder_is_filled);
  CASE ("an earlier packet is replaced", test_an_earlier_packet_is_replaced);
  CASE ("a foreign file is kept", test_a_foreign_file_is_kept);
  CASE ("a file in the way is kept", test_a_file_in_the_way_is_kept);
  CASE ("a link is followed", test_a_link_is_followed);
  CASE ("a link to nothing is followed", test_a_link_to_nothing_is_followed);
  CASE ("slashes at the end are nothing", test_slashes_at_the_end_are_nothing);
  CASE ("the present folder is one", test_the_present_folder_is_one);
  CASE ("a missing parent is an error", test_a_missing_parent_is_an_error);
  CASE ("a file as parent is an error", test_a_file_as_parent_is_an_error);
  CASE ("a full disk leaves the earlier packet", test_a_full_disk_leaves_the_earlier_packet);
  CASE ("a kill leaves a whole packet", test_a_kill_leaves_a_whole_packet);
  CASE ("a mount is written file by file", test_a_mount_is_written_file_by_file);
  return g_test_run ();
}
