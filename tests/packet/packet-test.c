// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/design-file.h"
#include "engine/starts.h"
#include "packet/packet.h"

#include <glib/gstdio.h>
#include <string.h>

static const char *const always[] = {
  "crown-plate.pdf", "crown-plate.svg", "cuts.csv",      "design.spire",
  "marks.csv",       "packet.pdf",      "parts.csv",     "pixels.csv",
  "ports.csv",       "report.json",     "ring-tape.pdf", NULL,
};

typedef struct {
  char *folder;
} Fixture;

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->folder = g_dir_make_tmp ("packet-XXXXXX", NULL);
}

static void
remove_tree (const char *path)
{
  g_autoptr (GDir) dir = g_dir_open (path, 0, NULL);
  const char *name;

  while (dir != NULL && (name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *below = g_build_filename (path, name, NULL);

    remove_tree (below);
  }
  g_remove (path);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  remove_tree (fixture->folder);
  g_free (fixture->folder);
}

static void
write_design (SwDesign *design, const char *folder)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwSolution) solution =
    sw_solution_new_with_cuts (design, sw_catalogue_builtin (NULL), NULL, &error);

  g_assert_no_error (error);
  sw_packet_write (solution, folder, SW_PAPER_A4, &sw_language_english, NULL, &error);
  g_assert_no_error (error);
}

static void
write_start (const char *name, const char *folder)
{
  g_autoptr (SwDesign) design = sw_start_new (name, NULL);

  write_design (design, folder);
}

static char *
content (const char *folder, const char *name, gsize *length)
{
  g_autofree char *path = g_build_filename (folder, name, NULL);
  char *text;

  g_assert_true (g_file_get_contents (path, &text, length, NULL));
  return text;
}

static guint
count_files (const char *folder)
{
  g_autoptr (GDir) dir = g_dir_open (folder, 0, NULL);
  guint n = 0;

  while (g_dir_read_name (dir) != NULL)
    n++;
  return n;
}

static void
test_all_files_are_there (Fixture *fixture, gconstpointer data)
{
  write_start ("lawn", fixture->folder);
  for (guint i = 0; always[i] != NULL; i++) {
    gsize length;
    g_autofree char *text = content (fixture->folder, always[i], &length);

    g_assert_nonnull (text);
    g_assert_cmpuint (length, >, 0);
  }
  g_assert_cmpuint (count_files (fixture->folder), ==, G_N_ELEMENTS (always) - 1);
}

static void
test_a_measured_ring_adds_its_marks (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwDesign) design = sw_start_new ("lawn", NULL);

  design->as_built.ring_length_m = 6.5;
  write_design (design, fixture->folder);
  g_free (content (fixture->folder, "as-built-marks.csv", NULL));
  g_assert_cmpuint (count_files (fixture->folder), ==, G_N_ELEMENTS (always));
}

/* And again without: the stale table goes. */
static void
test_a_stale_file_goes (Fixture *fixture, gconstpointer data)
{
  test_a_measured_ring_adds_its_marks (fixture, data);
  write_start ("lawn", fixture->folder);
  g_assert_cmpuint (count_files (fixture->folder), ==, G_N_ELEMENTS (always) - 1);
}

static void
test_the_report_lists_every_file (Fixture *fixture, gconstpointer data)
{
  g_autoptr (JsonParser) parser = json_parser_new ();
  JsonObject *packet, *files;

  write_start ("porch", fixture->folder);
  g_autofree char *report = content (fixture->folder, "report.json", NULL);
  g_assert_true (json_parser_load_from_data (parser, report, -1, NULL));
  packet = json_object_get_object_member (json_node_get_object (json_parser_get_root (parser)),
                                          "packet");
  files = json_object_get_object_member (packet, "files");
  g_assert_cmpuint (json_object_get_size (files), ==, G_N_ELEMENTS (always) - 2);
  for (guint i = 0; always[i] != NULL; i++) {
    gsize length;
    g_autofree char *text = content (fixture->folder, always[i], &length);
    g_autofree char *sum =
      g_compute_checksum_for_data (G_CHECKSUM_SHA256, (const guchar *) text, length);

    if (!g_str_equal (always[i], "report.json"))
      g_assert_cmpstr (json_object_get_string_member (files, always[i]), ==, sum);
  }
}

static void
test_the_design_reads_back (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwDesign) design = sw_start_new ("landmark", NULL);
  g_autofree char *path = g_build_filename (fixture->folder, "design.spire", NULL);
  g_autofree char *before = sw_design_to_data (design, NULL);
  g_autofree char *after = NULL;
  g_autoptr (SwDesign) read = NULL;

  write_design (design, fixture->folder);
  read = sw_design_load (path, NULL);
  g_assert_nonnull (read);
  after = sw_design_to_data (read, NULL);
  g_assert_cmpstr (before, ==, after);
}

/* Another day, another zone, another process's memory: the same bytes. */
static void
test_the_same_design_gives_the_same_bytes (Fixture *fixture, gconstpointer data)
{
  char *first[G_N_ELEMENTS (always)];
  gsize lengths[G_N_ELEMENTS (always)];

  write_start (data, fixture->folder);
  for (guint i = 0; always[i] != NULL; i++)
    first[i] = content (fixture->folder, always[i], &lengths[i]);
  g_setenv ("TZ", "Pacific/Kiritimati", TRUE);
  g_usleep (1100000); /* the second changes */
  write_start (data, fixture->folder);
  g_unsetenv ("TZ");
  for (guint i = 0; always[i] != NULL; i++) {
    gsize length;
    g_autofree char *again = content (fixture->folder, always[i], &length);

    g_assert_cmpmem (first[i], lengths[i], again, length);
    g_free (first[i]);
  }
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
#define CASE(name, data, function)                                                             \
  g_test_add ("/packet/packet/" name, Fixture, data, set_up, function, tear_down)
  CASE ("all files are there", NULL, test_all_files_are_there);
  CASE ("a measured ring adds its marks", NULL, test_a_measured_ring_adds_its_marks);
  CASE ("a stale file goes", NULL, test_a_stale_file_goes);
  CASE ("the report lists every file", NULL, test_the_report_lists_every_file);
  CASE ("the design reads back", NULL, test_the_design_reads_back);
  CASE ("the same design gives the same bytes",
        "lawn",
        test_the_same_design_gives_the_same_bytes);
  return g_test_run ();
}
