// SPDX-License-Identifier: GPL-3.0-or-later
#include "program.h"

/* Width and height out of the PNG's own header. Source: PNG (ISO/IEC 15948), 11.2.2: IHDR at
 * byte 16, four bytes each, highest first.
 */
static void
expect_png (const Place *place, const char *name, guint32 width, guint32 height)
{
  g_autofree char *path = place_path (place, name);
  g_autofree char *bytes = NULL;
  gsize length;
  guint32 size[2];

  g_assert_true (g_file_get_contents (path, &bytes, &length, NULL));
  g_assert_cmpuint (length, >, 1000);
  g_assert_cmpint (memcmp (bytes, "\211PNG\r\n\032\n", 8), ==, 0);
  memcpy (size, bytes + 16, sizeof size);
  g_assert_cmpuint (GUINT32_FROM_BE (size[0]), ==, width);
  g_assert_cmpuint (GUINT32_FROM_BE (size[1]), ==, height);
}

static void
test_each_view (Place *place, gconstpointer unused)
{
  static const char *const views[] = { "side", "top", "night", "day" };
  g_autoptr (GHashTable) seen = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, NULL);

  for (guint i = 0; i < G_N_ELEMENTS (views); i++) {
    g_auto (Answer) answer = { 0 };
    g_autofree char *words =
      g_strdup_printf ("picture lawn.spire --to x.png --view %s", views[i]);
    expect_done (place, words, 0);
    expect_png (place, "x.png", 1200, 900);
    ask_shell (place, "sha256sum <x.png", &answer);
    g_assert_true (g_hash_table_add (seen, g_strdup (answer.out))); /* none like another */
  }
}

static void
test_side_view_and_size (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (
    place,
    "\"$SW\" picture lawn.spire --to a.png && \"$SW\" picture lawn.spire --to b.png --view "
    "side --size 1200x900 && cmp a.png b.png && \"$SW\" picture lawn.spire --to c.png "
    "--size=320x200",
    &answer);
  g_assert_cmpstr (
    answer.out,
    ==,
    "Picture written to a.png\nPicture written to b.png\nPicture written to c.png\n");
  expect_png (place, "c.png", 320, 200);
}

/* Scenes move with time; the same time gives the same picture. */
static void
test_scene_and_time (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (
    place,
    "night='picture lawn.spire --view night --size 300x400 --scene rising-bands'; "
    "for k in 'a.png --time 0' 'b.png --time 1.3' 'c.png --time 1.3'; do \"$SW\" $night --to "
    "$k >/dev/null; done; cmp -s a.png b.png; echo $?; cmp -s b.png c.png; echo $?",
    &answer);
  g_assert_cmpstr (answer.out, ==, "1\n0\n");
}

static void
test_stop_findings_end_with_1 (Place *place, gconstpointer unused)
{
  expect_done (place, "picture lawn.spire --to x.png --set strip.pixels=60", 1);
  g_assert_true (place_has (place, "x.png"));
}

static const struct {
  const char *words, *message;
} refused[] = {
  { "--size 1200", "--size: " },
  { "--size 1200x", "--size: " },
  { "--size 1200x900x3", "--size: " },
  { "--size -5x900", "--size: " },
  { "--size 99999999999x900", "--size: " },
  { "--view front", "--view: side | top | night | day" },
  { "--scene moon", "--scene: warm-white | " },
  { "--time nan", "--time: " },
  { "--time -1", "--time: " },
  { "--time 3s", "--time: " },
};

static void
test_misuse (Place *place, gconstpointer unused)
{
  for (guint i = 0; i < G_N_ELEMENTS (refused); i++) {
    g_autofree char *words =
      g_strdup_printf ("picture lawn.spire --to x.png %s", refused[i].words);
    expect_refusal (place, words, 2, refused[i].message);
  }
  expect_refusal (place, "picture lawn.spire --to no/x.png", 3, "no/x.png: ");
  g_assert_false (place_has (place, "x.png"));
}

/* A rename over a pipe or a device would take it away. */
static void
test_only_plain_files_are_replaced (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (place, "mkfifo pipe && mkdir folder && ln -s pipe link", &answer);
  expect_refusal (place,
                  "picture lawn.spire --to pipe",
                  3,
                  "pipe: file: can't be written, not a plain file");
  expect_refusal (place, "picture lawn.spire --to link", 3, "link: file: can't be written, ");
  expect_refusal (place,
                  "picture lawn.spire --to folder",
                  3,
                  "folder: file: can't be written, a folder");
  g_auto (Answer) after = { 0 };
  ask_shell (place, "test -p pipe && test -L link && test -d folder", &after);
  g_assert_cmpint (after.status, ==, 0);
}

/* A link leads to the picture, as to a design. */
static void
test_links_are_followed (Place *place, gconstpointer unused)
{
  g_auto (Answer) answer = { 0 };

  ask_shell (place, "ln -s there.png link.png", &answer);
  expect_done (place, "picture lawn.spire --to link.png --size 320x200", 0);
  expect_png (place, "there.png", 320, 200);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  ADD_LAWN_TEST ("/commands/picture/each view", test_each_view);
  ADD_LAWN_TEST ("/commands/picture/side view and size", test_side_view_and_size);
  ADD_LAWN_TEST ("/commands/picture/scene and time", test_scene_and_time);
  ADD_LAWN_TEST ("/commands/picture/stop findings end with 1", test_stop_findings_end_with_1);
  ADD_LAWN_TEST ("/commands/picture/misuse", test_misuse);
  ADD_LAWN_TEST ("/commands/picture/only plain files are replaced",
                 test_only_plain_files_are_replaced);
  ADD_LAWN_TEST ("/commands/picture/links are followed", test_links_are_followed);
  return g_test_run ();
}
