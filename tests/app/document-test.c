// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/document.h"
#include "engine/design-file.h"
#include "engine/starts.h"

#include <glib/gstdio.h>
#include <math.h>

#define HEIGHT "shape.crown_height_m"

typedef struct {
  SwDocument *document;
  guint changes;
  char *folder;
} Fixture;

static void
count_cb (Fixture *fixture)
{
  fixture->changes++;
}

static void
set_up (Fixture *fixture, gconstpointer data)
{
  fixture->document = sw_document_new ();
  fixture->folder = g_dir_make_tmp ("document-XXXXXX", NULL);
  g_signal_connect_swapped (fixture->document, "changed", G_CALLBACK (count_cb), fixture);
}

static void
tear_down (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GDir) dir = g_dir_open (fixture->folder, 0, NULL);
  const char *name;

  while ((name = g_dir_read_name (dir)) != NULL) {
    g_autofree char *path = g_build_filename (fixture->folder, name, NULL);
    g_unlink (path);
  }
  g_rmdir (fixture->folder);
  g_free (fixture->folder);
  g_assert_cmpuint (G_OBJECT (fixture->document)->ref_count, ==, 1);
  g_object_unref (fixture->document);
}

static double
height (Fixture *fixture)
{
  return sw_document_get_design (fixture->document)->shape.crown_height_m;
}

static gboolean
set_height (Fixture *fixture, double metres)
{
  return sw_document_edit_number (fixture->document, HEIGHT, metres, "Crown height");
}

static SwDesign *
copy_now (Fixture *fixture)
{
  return sw_design_copy (sw_document_get_design (fixture->document));
}

static gboolean
stands_at (Fixture *fixture, const SwDesign *design)
{
  return sw_design_equal (design, sw_document_get_design (fixture->document)) &&
         sw_design_equal (design, sw_document_get_solution (fixture->document)->design);
}

static void
test_edits_of_one_drag_are_one_step (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwDesign) start = copy_now (fixture);

  set_height (fixture, 3.0);
  set_height (fixture, 3.1);
  set_height (fixture, 3.2);
  g_assert_cmpuint (fixture->changes, ==, 3);
  sw_document_end_edit (fixture->document);
  g_assert_cmpstr (sw_document_get_undo_label (fixture->document), ==, "Crown height");
  sw_document_undo (fixture->document);
  g_assert_true (stands_at (fixture, start));
  g_assert_false (sw_document_can_undo (fixture->document));
  sw_document_redo (fixture->document);
  g_assert_cmpfloat_with_epsilon (height (fixture), 3.2, 1e-15);
}

static void
test_two_drags_are_two_steps (Fixture *fixture, gconstpointer data)
{
  set_height (fixture, 3.0);
  sw_document_end_edit (fixture->document);
  set_height (fixture, 3.2);
  sw_document_end_edit (fixture->document);
  sw_document_undo (fixture->document);
  g_assert_cmpfloat_with_epsilon (height (fixture), 3.0, 1e-15);
}

static gboolean
remedied (Fixture *fixture)
{
  return sw_document_get_solution (fixture->document)->remedied;
}

static gboolean
stop_cb (gpointer stopped)
{
  *(gboolean *) stopped = TRUE;
  return G_SOURCE_REMOVE;
}

static void
wait_ms (guint ms)
{
  gboolean stopped = FALSE;

  g_timeout_add (ms, stop_cb, &stopped);
  while (!stopped)
    g_main_context_iteration (NULL, TRUE);
}

/* What would put findings right is solved once the hand rests, and at the end of the drag. */
static void
test_remedies_wait_for_the_hand_to_rest (Fixture *fixture, gconstpointer data)
{
  set_height (fixture, 3.5);
  g_assert_false (remedied (fixture));
  wait_ms (300);
  g_assert_true (remedied (fixture));
  g_assert_cmpuint (fixture->changes, ==, 2);
  set_height (fixture, 3.4);
  g_assert_false (remedied (fixture));
  sw_document_end_edit (fixture->document);
  g_assert_true (remedied (fixture));
  set_height (fixture, 3.3);
  set_height (fixture, 3.2);
  sw_document_cancel_edit (fixture->document);
  g_assert_true (remedied (fixture));
  g_assert_cmpfloat_with_epsilon (height (fixture), 3.4, 1e-12);
}

/* A drag against a wall keeps saying what it hit while the hand rests there. */
static void
test_resting_keeps_the_refusal (Fixture *fixture, gconstpointer data)
{
  set_height (fixture, 3.5);
  sw_document_edit_number (fixture->document, "shape.none", 1, "None");
  g_assert_nonnull (sw_document_get_refusal (fixture->document));
  wait_ms (300);
  g_assert_true (remedied (fixture));
  g_assert_nonnull (sw_document_get_refusal (fixture->document));
}

static void
test_a_drag_back_to_its_start_is_no_step (Fixture *fixture, gconstpointer data)
{
  double start = height (fixture);

  set_height (fixture, 3.0);
  set_height (fixture, start);
  sw_document_end_edit (fixture->document);
  g_assert_false (sw_document_can_undo (fixture->document));
  g_assert_false (sw_document_get_modified (fixture->document));
}

static void
test_giving_up_keeps_what_can_be_redone (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwDesign) start = copy_now (fixture);

  set_height (fixture, 3.0);
  sw_document_end_edit (fixture->document);
  sw_document_undo (fixture->document);
  sw_document_edit_number (fixture->document, "shape.strip_count", 30, "Strips");
  g_assert_nonnull (sw_document_get_before (fixture->document));
  g_assert_true (sw_design_equal (start, sw_document_get_before (fixture->document)->design));
  sw_document_cancel_edit (fixture->document);
  g_assert_null (sw_document_get_before (fixture->document));
  g_assert_true (stands_at (fixture, start));
  g_assert_true (sw_document_can_redo (fixture->document));
  sw_document_redo (fixture->document);
  g_assert_cmpfloat_with_epsilon (height (fixture), 3.0, 1e-15);
}

static void
test_a_new_edit_ends_what_could_be_redone (Fixture *fixture, gconstpointer data)
{
  set_height (fixture, 3.0);
  sw_document_end_edit (fixture->document);
  sw_document_undo (fixture->document);
  set_height (fixture, 3.3);
  sw_document_end_edit (fixture->document);
  g_assert_false (sw_document_can_redo (fixture->document));
}

static void
test_undo_in_a_drag_takes_the_drag_back (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwDesign) start = copy_now (fixture);

  set_height (fixture, 3.0);
  sw_document_undo (fixture->document);
  g_assert_true (stands_at (fixture, start));
  g_assert_null (sw_document_get_before (fixture->document));
}

static void
test_a_refused_edit_changes_nothing_and_says_why (Fixture *fixture, gconstpointer data)
{
  g_autoptr (SwDesign) locked = copy_now (fixture);

  g_ptr_array_add (locked->held, g_strdup (HEIGHT));
  g_assert_true (sw_document_edit_design (fixture->document, locked, "Lock"));
  sw_document_end_edit (fixture->document);
  g_assert_false (set_height (fixture, 3.0));
  g_assert_cmpstr (sw_document_get_refusal (fixture->document), ==, "Crown height: locked");
  g_assert_true (stands_at (fixture, locked));
  sw_document_end_edit (fixture->document);
  g_assert_null (sw_document_get_refusal (fixture->document));
}

static GFile *
file_in (Fixture *fixture, const char *name)
{
  g_autofree char *path = g_build_filename (fixture->folder, name, NULL);

  return g_file_new_for_path (path);
}

static void
test_saved_is_unmodified_until_the_next_edit (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GFile) file = file_in (fixture, "tree.spire");
  g_autoptr (SwDocument) other = sw_document_new ();

  set_height (fixture, 3.0);
  g_assert_true (sw_document_get_modified (fixture->document));
  g_assert_true (sw_document_save (fixture->document, file, NULL));
  g_assert_false (sw_document_get_modified (fixture->document));
  set_height (fixture, 3.1);
  g_assert_true (sw_document_get_modified (fixture->document));
  sw_document_undo (fixture->document);
  g_assert_false (sw_document_get_modified (fixture->document));
  g_assert_true (sw_document_load (other, file, NULL));
  g_assert_cmpfloat_with_epsilon (sw_document_get_design (other)->shape.crown_height_m,
                                  3.0,
                                  1e-15);
}

static void
test_a_bad_file_leaves_all_as_it_was (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GFile) good = file_in (fixture, "good.spire"),
                    bad = file_in (fixture, "bad.spire");
  g_autoptr (GError) error = NULL;

  g_assert_true (sw_document_save (fixture->document, good, NULL));
  set_height (fixture, 3.0);
  sw_document_end_edit (fixture->document);
  g_autoptr (SwDesign) before = copy_now (fixture);
  g_assert_true (
    g_file_set_contents (g_file_peek_path (bad), "{\"strip\": {\"pixels\": 0}}", -1, NULL));
  g_assert_false (sw_document_load (fixture->document, bad, &error));
  g_assert_nonnull (g_strrstr (error->message, "strip.pixels"));
  g_assert_true (stands_at (fixture, before));
  g_assert_true (g_file_equal (sw_document_get_file (fixture->document), good));
  g_assert_true (sw_document_can_undo (fixture->document));
}

static void
test_a_new_design_has_no_file_and_no_past (Fixture *fixture, gconstpointer data)
{
  g_autoptr (GFile) file = file_in (fixture, "tree.spire");
  g_autoptr (SwDesign) porch = sw_start_new ("porch", NULL);

  set_height (fixture, 3.0);
  g_assert_true (sw_document_save (fixture->document, file, NULL));
  sw_document_reset (fixture->document, porch);
  g_assert_null (sw_document_get_file (fixture->document));
  g_assert_false (sw_document_can_undo (fixture->document));
  g_assert_true (stands_at (fixture, porch));
}

static void
add (const char *claim, void (*test) (Fixture *fixture, gconstpointer data))
{
  g_autofree char *path = g_strconcat ("/app/document/", claim, NULL);

  g_test_add (path, Fixture, NULL, set_up, test, tear_down);
}

/* The folder of own rows is empty here: what the design does not carry is not known. */
static void
test_undo_brings_an_own_row_back (Fixture *fixture, gconstpointer data)
{
  g_autofree char *path = g_build_filename (fixture->folder, "own.spire", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  g_autoptr (GError) error = NULL;

  g_assert_true (g_file_set_contents (
    path,
    "{\"stand\": {\"post\": \"my-mast\"}, \"catalogue\": {\"my-mast\": {\"part\": \"pipe\", "
    "\"name\": \"Mast\", \"material\": \"aluminium\", \"od_mm\": 50, \"wall_mm\": 3, "
    "\"inside_mm\": 44, \"mass_kg_per_m\": 1.196, \"stock_m\": 6, \"price_usd_per_m\": 9, "
    "\"source\": \"own\"}}}",
    -1,
    NULL));
  g_assert_true (sw_document_load (fixture->document, file, &error));
  g_assert_no_error (error);
  g_assert_false (sw_document_get_modified (fixture->document));
  g_assert_true (
    sw_document_edit_text (fixture->document, "stand.post", "sch40-2", "Post pipe"));
  g_assert_null (sw_document_get_design (fixture->document)->own_rows);
  sw_document_undo (fixture->document);
  g_assert_nonnull (sw_document_get_design (fixture->document)->own_rows);
  g_assert_cmpfloat_with_epsilon (sw_document_get_solution (fixture->document)->post_od_m,
                                  0.05,
                                  1e-15);
}

int
main (int argc, char **argv)
{
  g_test_init (&argc, &argv, NULL);
  add ("edits of one drag are one step", test_edits_of_one_drag_are_one_step);
  add ("two drags are two steps", test_two_drags_are_two_steps);
  add ("remedies wait for the hand to rest", test_remedies_wait_for_the_hand_to_rest);
  add ("resting keeps the refusal", test_resting_keeps_the_refusal);
  add ("a drag back to its start is no step", test_a_drag_back_to_its_start_is_no_step);
  add ("giving up keeps what can be redone", test_giving_up_keeps_what_can_be_redone);
  add ("a new edit ends what could be redone", test_a_new_edit_ends_what_could_be_redone);
  add ("undo in a drag takes the drag back", test_undo_in_a_drag_takes_the_drag_back);
  add ("a refused edit changes nothing and says why",
       test_a_refused_edit_changes_nothing_and_says_why);
  add ("saved is unmodified until the next edit", test_saved_is_unmodified_until_the_next_edit);
  add ("a bad file leaves all as it was", test_a_bad_file_leaves_all_as_it_was);
  add ("a new design has no file and no past", test_a_new_design_has_no_file_and_no_past);
  add ("undo brings an own row back", test_undo_brings_an_own_row_back);
  return g_test_run ();
}
