// SPDX-License-Identifier: GPL-3.0-or-later
#include "harness.h"

#include <glib/gstdio.h>
#include <string.h>

static gboolean
is_sheets_page (GtkWidget *widget, gconstpointer unused)
{
  return g_str_equal (G_OBJECT_TYPE_NAME (widget), "SwSheetsPage");
}

/* Waits until the worker has put the folder in its place. */
static void
wait_for (const char *file)
{
  for (int i = 0; i < 400 && !g_file_test (file, G_FILE_TEST_EXISTS); i++)
    spin (25);
  spin (100);
}

static void
run_packet_command (const char *design, const char *folder)
{
  const char *argv[] = { g_getenv ("SW_PROGRAM"), "packet", design, "--to", folder, NULL };
  g_autoptr (GError) error = NULL;
  int status;

  g_spawn_sync (NULL,
                (char **) (guintptr) argv,
                NULL,
                G_SPAWN_STDOUT_TO_DEV_NULL,
                NULL,
                NULL,
                NULL,
                NULL,
                &status,
                &error);
  g_assert_no_error (error);
  g_assert_true (g_spawn_check_wait_status (status, NULL));
}

/* Compares and removes both. Returns: how many files there were. */
static guint
compare_folders (const char *one, const char *other)
{
  g_autoptr (GDir) dir = g_dir_open (one, 0, NULL);
  guint files = 0;
  const char *name;

  g_assert_nonnull (dir);
  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *a = g_build_filename (one, name, NULL),
                    *b = g_build_filename (other, name, NULL);
    g_autofree char *left = NULL, *right = NULL;
    gsize left_length, right_length;
    g_assert_true (g_file_get_contents (a, &left, &left_length, NULL));
    g_assert_true (g_file_get_contents (b, &right, &right_length, NULL));
    if (left_length != right_length || memcmp (left, right, left_length) != 0)
      g_error ("%s differs between window and command", name);
    g_assert_cmpint (g_unlink (a) + g_unlink (b), ==, 0);
    files++;
  }
  g_assert_cmpint (g_rmdir (one) + g_rmdir (other), ==, 0); /* nothing else was in the other */
  return files;
}

static void
test_a_packet_from_the_window_is_the_commands (void)
{
  g_autofree char *top = g_dir_make_tmp ("spire-XXXXXX", NULL);
  g_autofree char *from_window = g_build_filename (top, "window", NULL),
                  *from_command = g_build_filename (top, "command", NULL);
  g_autofree char *report = g_build_filename (from_window, "report.json", NULL);
  g_autofree char *design =
    g_strdup_printf ("%s/data/examples/lawn.spire", g_getenv ("SW_SOURCE"));
  Desk desk;

  desk_open (&desk, "lawn");
  gtk_widget_activate_action (GTK_WIDGET (desk.window), "win.page", "s", "sheets");
  spin (200);
  GtkWidget *page = find_widget (GTK_WIDGET (desk.window), is_sheets_page, NULL);
  g_assert_true (gtk_widget_activate_action (page, "sheets.save-to", "s", from_window));
  wait_for (report);
  run_packet_command (design, from_command);
  g_assert_cmpuint (compare_folders (from_window, from_command), ==, 11);
  g_assert_cmpint (g_rmdir (top), ==, 0);
  desk_close (&desk);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  g_test_add_func ("/app/sheets-page/a packet from the window is the command's",
                   test_a_packet_from_the_window_is_the_commands);
  return g_test_run ();
}
