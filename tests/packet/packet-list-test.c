// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/error.h"
#include "packet/packet-list.h"

#include <glib/gstdio.h>
#include <string.h>

typedef struct {
  char *folder;
} Fixture;

static void
write_file (const char *folder, const char *name, const char *text)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);

  g_assert_true (g_file_set_contents (path, text, -1, NULL));
}

static void
remove_all (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (folder, name, NULL);

    g_remove (path);
  }
  g_rmdir (folder);
}

static GBytes *
sealed (const SwFolderFile *files, guint n_files)
{
  g_autoptr (JsonNode) report =
    json_from_string ("{ \"geometry\": { \"slant_m\": 2.5 } }", NULL);

  return sw_packet_list_seal (report, files, n_files);
}

/* A folder with a.csv, b.pdf and the list of both. */
static void
set_up (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) a = g_bytes_new_static ("abc", 3);
  g_autoptr (GBytes) b = g_bytes_new_static ("", 0);
  SwFolderFile files[] = { { "a.csv", a }, { "b.pdf", b } };
  g_autoptr (GBytes) list = sealed (files, 2);

  fixture->folder = g_dir_make_tmp ("packet-list-XXXXXX", NULL);
  write_file (fixture->folder, "a.csv", "abc");
  write_file (fixture->folder, "b.pdf", "");
  write_file (fixture->folder, SW_PACKET_LIST_FILE, g_bytes_get_data (list, NULL));
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  remove_all (fixture->folder);
  g_free (fixture->folder);
}

static void
assert_refused (Fixture *fixture, const char *name)
{
  g_autoptr (GError) error = NULL;
  g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

  g_assert_false (sw_packet_list_check (fixture->folder, &error));
  g_assert_error (error, SW_ERROR, SW_ERROR_EXISTS);
  g_assert_true (g_str_has_prefix (error->message, path));
}

static void
test_unchanged_is_known (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  g_assert_true (sw_packet_list_check (fixture->folder, &error));
  g_assert_no_error (error);
}

static void
test_empty_is_free (Fixture *fixture, gconstpointer data)
{
  g_autofree char *empty = g_dir_make_tmp ("packet-list-XXXXXX", NULL);

  g_assert_true (sw_packet_list_check (empty, NULL));
  g_rmdir (empty);
}

static void
test_a_changed_file_is_refused (Fixture *fixture, gconstpointer data)
{
  write_file (fixture->folder, "b.pdf", "x");
  assert_refused (fixture, "b.pdf");
}

static void
test_a_further_file_is_refused (Fixture *fixture, gconstpointer data)
{
  write_file (fixture->folder, "aa notes.txt", "mine");
  write_file (fixture->folder, "z.txt", "mine");
  assert_refused (fixture, "aa notes.txt");
}

static void
test_a_missing_file_is_refused (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "a.csv", NULL);

  g_unlink (path);
  assert_refused (fixture, "a.csv");
}

static void
test_a_missing_list_is_refused (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, SW_PACKET_LIST_FILE, NULL);

  g_unlink (path);
  assert_refused (fixture, "a.csv");
}

static void
test_a_changed_list_is_refused (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, SW_PACKET_LIST_FILE, NULL);
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  *strstr (text, "2.5") = '3';
  write_file (fixture->folder, SW_PACKET_LIST_FILE, text);
  assert_refused (fixture, SW_PACKET_LIST_FILE);
}

static void
test_a_link_to_the_same_text_is_refused (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "a.csv", NULL);
  g_autofree char *aside = g_strconcat (fixture->folder, ".aside", NULL);

  g_assert_cmpint (g_rename (path, aside), ==, 0);
  g_assert_true (g_file_test (aside, G_FILE_TEST_EXISTS));
  g_autoptr (GFile) link = g_file_new_for_path (path);
  g_assert_true (g_file_make_symbolic_link (link, aside, NULL, NULL));
  assert_refused (fixture, "a.csv");
  g_unlink (aside);
}

static void
test_a_name_with_a_slash_makes_no_list (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GBytes) bytes = g_bytes_new_static ("abc", 3);
  SwFolderFile files[] = { { "../a.csv", bytes } };
  g_autoptr (GBytes) list = sealed (files, 1);

  write_file (fixture->folder, SW_PACKET_LIST_FILE, g_bytes_get_data (list, NULL));
  assert_refused (fixture, "a.csv");
}

static void
test_an_error_is_one_line (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GError) error = NULL;

  write_file (fixture->folder, "a\nb", "");
  g_assert_false (sw_packet_list_check (fixture->folder, &error));
  g_assert_null (strchr (error->message, '\n'));
}

/* Source: FIPS 180-4, the sums of "abc" and of nothing (NIST's examples). */
static void
test_sums_are_sha_256 (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, SW_PACKET_LIST_FILE, NULL);
  g_autofree char *text = NULL;

  g_assert_true (g_file_get_contents (path, &text, NULL, NULL));
  g_assert_nonnull (
    strstr (text, "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad"));
  g_assert_nonnull (
    strstr (text, "e3b0c44298fc1c149afbf4c8996fb92427ae41e4649b934ca495991b7852b855"));
}

#define CASE(name, function)                                                                   \
  g_test_add ("/packet/packet-list/" name, Fixture, NULL, set_up, function, tear_down)

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  CASE ("an unchanged packet is known", test_unchanged_is_known);
  CASE ("an empty folder is free", test_empty_is_free);
  CASE ("a changed file is refused", test_a_changed_file_is_refused);
  CASE ("a further file is refused, first by name", test_a_further_file_is_refused);
  CASE ("a missing file is refused", test_a_missing_file_is_refused);
  CASE ("a missing list is refused", test_a_missing_list_is_refused);
  CASE ("a changed list is refused", test_a_changed_list_is_refused);
  CASE ("a link to the same text is refused", test_a_link_to_the_same_text_is_refused);
  CASE ("a name with a slash makes no list", test_a_name_with_a_slash_makes_no_list);
  CASE ("an error is one line", test_an_error_is_one_line);
  CASE ("sums are SHA-256", test_sums_are_sha_256);
  return g_test_run ();
}
