// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/number-row.h"
#include "app/pages.h"
#include "engine/cone.h"
#include "harness.h"

#include <X11/keysym.h>
#include <glib/gstdio.h>
#include <math.h>
#include <string.h>

/* Presses on a grip and moves by dx, dy in steps; the button stays down. */
static void
take_and_move (Desk *desk, SwGripId id, int dx, int dy)
{
  SwViewArea *view = view_with (desk, id);
  double x, y;
  int screen_x, screen_y;

  g_assert_true (sw_view_area_find_grip (view, id, &x, &y));
  on_screen (desk, GTK_WIDGET (view), round (x), round (y), &screen_x, &screen_y);
  pointer_to (desk, screen_x, screen_y);
  pointer_button (desk, TRUE);
  for (int i = 1; i <= 5; i++)
    pointer_to (desk, screen_x + dx * i / 5, screen_y + dy * i / 5);
}

static void
drag (Desk *desk, SwGripId id, int dx, int dy)
{
  take_and_move (desk, id, dx, dy);
  pointer_button (desk, FALSE);
  spin (60);
}

/* What the geometry says a drag of dx, dy does, worked here apart from grips.c. */
static double
wanted (Desk *desk, SwGripId id, int dx, int dy)
{
  const SwView view = *sw_view_area_get_view (view_with (desk, id));
  const SwShape *shape = &sw_document_get_design (desk->document)->shape;
  double x, y, before, after, half;
  SwCone cone;

  g_assert_true (sw_view_area_find_grip (view_with (desk, id), id, &x, &y));
  sw_cone_init (&cone, sw_document_get_design (desk->document));
  switch (id) {
  case SW_GRIP_CROWN_HEIGHT:
    return shape->crown_height_m - dy / view.scale;
  case SW_GRIP_RING_HEIGHT:
    return shape->ring_height_m - dy / view.scale;
  case SW_GRIP_RING_RADIUS:
    return shape->ring_radius_m + dx / view.scale;
  case SW_GRIP_SPACING: /* outwards: the angle stays, the radius grows */
    before = hypot (x - view.x0, y - view.y0);
    after = hypot (x + dx - view.x0, y + dy - view.y0);
    return cone.spacing_ring_m + (after - before) / view.scale * 2 * G_PI / shape->strip_count;
  case SW_GRIP_STRIP_COUNT: /* strip 1 stands at the back, 180° */
    after = atan2 (x + dx - view.x0, y + dy - view.y0) * 180 / G_PI;
    return round (360 / sw_azimuth_wrap_deg (after - 180));
  case SW_GRIP_COVERAGE: /* faces 0°: twice the angle from the front */
    half = fabs (atan2 (x + dx - view.x0, y + dy - view.y0)) * 180 / G_PI;
    return 2 * half;
  case SW_GRIP_PITCH: /* has a test of its own */
  case SW_N_GRIPS:
    break;
  }
  return NAN;
}

static const struct {
  SwGripId id;
  const char *name;
  int dx, dy;
} drags[] = {
  { SW_GRIP_CROWN_HEIGHT, "crown height", 4, -31 },
  { SW_GRIP_RING_HEIGHT, "ring height", 0, -12 },
  { SW_GRIP_RING_RADIUS, "ring radius", 23, 5 },
  { SW_GRIP_STRIP_COUNT, "strip count", -18, 14 },
  { SW_GRIP_SPACING, "spacing", 17, 6 },
  { SW_GRIP_COVERAGE, "coverage", 60, 45 },
};

static void
test_a_grip_follows_the_pointer (gconstpointer data)
{
  guint i = GPOINTER_TO_UINT (data);
  Desk desk;

  desk_open (&desk, "lawn");
  g_autoptr (SwDesign) before = sw_design_copy (sw_document_get_design (desk.document));
  double value = wanted (&desk, drags[i].id, drags[i].dx, drags[i].dy);
  drag (&desk, drags[i].id, drags[i].dx, drags[i].dy);
  g_assert_cmpfloat_with_epsilon (
    sw_grip_value (drags[i].id, sw_document_get_solution (desk.document)),
    value,
    2e-3 * MAX (1, fabs (value)));
  g_assert_false (sw_design_equal (before, sw_document_get_design (desk.document)));
  sw_document_undo (desk.document); /* one drag is one step */
  g_assert_true (sw_design_equal (before, sw_document_get_design (desk.document)));
  g_assert_false (sw_document_can_undo (desk.document));
  desk_close (&desk);
}

/* Down along the strip by a twentieth of what shows of it adds a twentieth of the slant over
 * the gaps. */
static void
test_the_pitch_grip_follows_the_strip (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  const SwDesign *design = sw_document_get_design (desk.document);
  const SwView view = *sw_view_area_get_view (view_with (&desk, SW_GRIP_PITCH));
  SwPoint hook = sw_hook_point (&design->shape, 16),
          tie = sw_tie_point (&design->shape, 16); /* at 90°, the viewer's right */
  double shown_x = (tie.x_m - hook.x_m) * view.scale,
         shown_y = (hook.z_m - tie.z_m) * view.scale;
  double before = design->strip.pitch_m,
         slant = sw_document_get_solution (desk.document)->cone.slant_m;
  int gaps = (int) lround (0.6 * (design->strip.pixels - 1));
  int dx = (int) round (shown_x / 20), dy = (int) round (shown_y / 20);
  double moved =
    (dx * shown_x + dy * shown_y) / (shown_x * shown_x + shown_y * shown_y) * slant;

  drag (&desk, SW_GRIP_PITCH, dx, dy);
  g_assert_cmpfloat_with_epsilon (sw_document_get_design (desk.document)->strip.pitch_m,
                                  before + moved / gaps,
                                  2e-4);
  desk_close (&desk);
}

static double
zoom_of (Desk *desk, SwGripId id)
{
  double factor;

  g_object_get (view_with (desk, id), "zoom", &factor, NULL);
  return factor;
}

/* One notch of the wheel over the side view: what is under the pointer stays there, the top
 * view follows, a grip is dragged by the nearer drawing's scale, and the paper moves under the
 * hand.
 */
static void
test_the_wheel_brings_both_views_nearer (void)
{
  Desk desk;
  int x, y;

  desk_open (&desk, "lawn");
  SwViewArea *side = view_with (&desk, SW_GRIP_CROWN_HEIGHT);
  const SwView far = *sw_view_area_get_view (side);
  on_screen (&desk, GTK_WIDGET (side), 100, 120, &x, &y);
  pointer_to (&desk, x, y);
  pointer_wheel (&desk, TRUE);
  SwView near = *sw_view_area_get_view (side);
  g_assert_cmpfloat_with_epsilon (near.scale / far.scale, 1.25, 1e-9);
  g_assert_cmpfloat_with_epsilon (sw_view_x_m (&near, 100), sw_view_x_m (&far, 100), 0.02);
  g_assert_cmpfloat_with_epsilon (zoom_of (&desk, SW_GRIP_COVERAGE), 1.25, 1e-9);
  double value = wanted (&desk, SW_GRIP_RING_RADIUS, 30, 0);
  drag (&desk, SW_GRIP_RING_RADIUS, 30, 0);
  g_assert_cmpfloat_with_epsilon (sw_document_get_design (desk.document)->shape.ring_radius_m,
                                  value,
                                  2e-3);
  near = *sw_view_area_get_view (side);
  on_screen (&desk, GTK_WIDGET (side), 20, 200, &x, &y);
  pointer_to (&desk, x, y);
  pointer_button (&desk, TRUE);
  pointer_to (&desk, x - 10, y - 15);
  pointer_to (&desk, x - 20, y - 30);
  pointer_button (&desk, FALSE);
  g_assert_cmpfloat_with_epsilon (sw_view_area_get_view (side)->x0, near.x0 - 20, 1e-6);
  g_assert_cmpfloat_with_epsilon (sw_view_area_get_view (side)->y0, near.y0 - 30, 1e-6);
  press_key (&desk, XK_0);
  g_assert_cmpfloat_with_epsilon (zoom_of (&desk, SW_GRIP_COVERAGE), 1, 1e-9);
  desk_close (&desk);
}

static void
test_escape_gives_a_drag_up (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  g_autoptr (SwDesign) before = sw_design_copy (sw_document_get_design (desk.document));
  take_and_move (&desk, SW_GRIP_CROWN_HEIGHT, 0, -40);
  g_assert_false (sw_design_equal (before, sw_document_get_design (desk.document)));
  press_key (&desk, XK_Escape);
  g_assert_true (sw_design_equal (before, sw_document_get_design (desk.document)));
  pointer_button (&desk, FALSE);
  g_assert_true (sw_design_equal (before, sw_document_get_design (desk.document)));
  g_assert_false (sw_document_can_undo (desk.document));
  desk_close (&desk);
}

static void
test_arrow_keys_move_the_focused_grip (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  drag (&desk, SW_GRIP_CROWN_HEIGHT, 0, 0); /* a click focuses it */
  double before = sw_document_get_design (desk.document)->shape.crown_height_m;
  press_key (&desk, XK_Up);
  press_key (&desk, XK_Up);
  g_assert_cmpfloat_with_epsilon (sw_document_get_design (desk.document)->shape.crown_height_m,
                                  before + 2 * sw_grip_info[SW_GRIP_CROWN_HEIGHT].step,
                                  1e-9);
  desk_close (&desk);
}

static void
test_a_locked_grip_stays (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  g_autoptr (SwDesign) locked = sw_design_copy (sw_document_get_design (desk.document));
  g_ptr_array_add (locked->held, g_strdup ("shape.crown_height_m"));
  g_assert_true (sw_document_edit_design (desk.document, locked, "Lock"));
  sw_document_end_edit (desk.document);
  drag (&desk, SW_GRIP_CROWN_HEIGHT, 0, -40);
  g_assert_true (sw_design_equal (locked, sw_document_get_design (desk.document)));
  desk_close (&desk);
}

static gboolean
is_row_of (GtkWidget *widget, gconstpointer label)
{
  if (!SW_IS_NUMBER_ROW (widget))
    return FALSE;
  GtkLabel *shown =
    GTK_LABEL (gtk_widget_get_template_child (widget, SW_TYPE_NUMBER_ROW, "label"));
  return g_str_equal (gtk_label_get_text (shown), label);
}

static GtkWidget *
entry_of (Desk *desk, const char *label)
{
  GtkWidget *row = find_widget (GTK_WIDGET (desk->window), is_row_of, label);

  g_assert_nonnull (row);
  return GTK_WIDGET (gtk_widget_get_template_child (row, SW_TYPE_NUMBER_ROW, "entry"));
}

static void
type_into (Desk *desk, GtkWidget *entry, const char *text)
{
  gtk_widget_grab_focus (entry);
  gtk_editable_set_text (GTK_EDITABLE (entry), text);
  spin (20);
  press_key (desk, XK_Return);
}

static void
test_an_entry_takes_any_unit (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  g_autoptr (SwDesign) before = sw_design_copy (sw_document_get_design (desk.document));
  type_into (&desk, entry_of (&desk, "Crown height"), "3.1 m");
  g_assert_cmpfloat_with_epsilon (sw_document_get_design (desk.document)->shape.crown_height_m,
                                  3.1,
                                  1e-12);
  type_into (&desk, entry_of (&desk, "Crown height"), "10' 6\"");
  g_assert_cmpfloat_with_epsilon (sw_document_get_design (desk.document)->shape.crown_height_m,
                                  3.2004,
                                  1e-12);
  sw_document_undo (desk.document);
  sw_document_undo (desk.document);
  g_assert_true (sw_design_equal (before, sw_document_get_design (desk.document)));
  desk_close (&desk);
}

static void
test_what_is_not_understood_changes_nothing (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  g_autoptr (SwDesign) before = sw_design_copy (sw_document_get_design (desk.document));
  type_into (&desk, entry_of (&desk, "Crown height"), "quite tall");
  GtkWidget *row = find_widget (GTK_WIDGET (desk.window), is_row_of, "Crown height");
  GtkWidget *problem =
    GTK_WIDGET (gtk_widget_get_template_child (row, SW_TYPE_NUMBER_ROW, "problem"));
  g_assert_true (gtk_widget_get_visible (problem));
  g_assert_nonnull (strstr (gtk_label_get_text (GTK_LABEL (problem)), "quite tall"));
  g_assert_true (sw_design_equal (before, sw_document_get_design (desk.document)));
  desk_close (&desk);
}

static void
test_a_bad_file_is_named_and_nothing_lost (void)
{
  g_autofree char *folder = g_dir_make_tmp ("spire-XXXXXX", NULL),
                  *path = g_build_filename (folder, "bad.spire", NULL);
  g_autoptr (GFile) file = g_file_new_for_path (path);
  Desk desk;

  g_assert_true (
    g_file_set_contents (path, "{\"shape\": {\"ring_radius_m\": 0.02}}", -1, NULL));
  desk_open (&desk, "lawn");
  g_autoptr (SwDesign) before = sw_design_copy (sw_document_get_design (desk.document));
  sw_window_open (desk.window, file);
  GtkWidget *window = GTK_WIDGET (desk.window);
  GtkRevealer *bar =
    GTK_REVEALER (gtk_widget_get_template_child (window, SW_TYPE_WINDOW, "problem"));
  GtkLabel *text =
    GTK_LABEL (gtk_widget_get_template_child (window, SW_TYPE_WINDOW, "problem_text"));
  g_assert_true (gtk_revealer_get_reveal_child (bar));
  g_assert_nonnull (strstr (gtk_label_get_text (text), "shape.ring_radius_m"));
  g_assert_true (sw_design_equal (before, sw_document_get_design (desk.document)));
  g_autofree char *kept = NULL;
  g_assert_true (g_file_get_contents (path, &kept, NULL, NULL));
  g_assert_cmpstr (kept, ==, "{\"shape\": {\"ring_radius_m\": 0.02}}");
  g_assert_true (g_file_delete (file, NULL, NULL));
  g_assert_cmpint (g_rmdir (folder), ==, 0);
  desk_close (&desk);
}

static GtkWindow *
find_dialog (void)
{
  g_autoptr (GListModel) windows = g_object_ref (gtk_window_get_toplevels ());

  for (guint i = 0; i < g_list_model_get_n_items (windows); i++) {
    g_autoptr (GtkWindow) window = g_list_model_get_item (windows, i);
    if (ADW_IS_MESSAGE_DIALOG (window))
      return window;
  }
  return NULL;
}

static void
test_unsaved_changes_are_asked_about (void)
{
  Desk desk;

  desk_open (&desk, "lawn");
  sw_document_edit_number (desk.document, "shape.crown_height_m", 3, "Crown height");
  gtk_window_close (GTK_WINDOW (desk.window));
  spin (100);
  GtkWindow *dialog = find_dialog ();
  g_assert_nonnull (dialog);
  adw_message_dialog_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  gtk_window_destroy (dialog);
  spin (100);
  g_assert_true (gtk_widget_get_visible (GTK_WIDGET (desk.window)));
  desk_close (&desk);
}

static void
test_actions_undo_and_redo (void)
{
  Desk desk;

  desk_open (&desk, NULL);
  sw_document_edit_number (desk.document, "shape.strip_count", 24, "Strips");
  sw_document_end_edit (desk.document);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (desk.window), "win.undo", NULL));
  g_assert_cmpint (sw_document_get_design (desk.document)->shape.strip_count, ==, 20);
  g_assert_true (gtk_widget_activate_action (GTK_WIDGET (desk.window), "win.redo", NULL));
  g_assert_cmpint (sw_document_get_design (desk.document)->shape.strip_count, ==, 24);
  desk_close (&desk);
}

static void
test_every_page_can_be_shown (void)
{
  static const char *const pages[] = { "evening", "parts", "sheets", "plan" };
  Desk desk;

  desk_open (&desk, "landmark");
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++) {
    gtk_widget_activate_action (GTK_WIDGET (desk.window), "win.page", "s", pages[i]);
    spin (150);
  }
  desk_close (&desk);
}

int
main (int argc, char **argv)
{
  gtk_test_init (&argc, &argv, NULL);
  adw_init ();
  for (guint i = 0; i < G_N_ELEMENTS (drags); i++) {
    g_autofree char *path =
      g_strdup_printf ("/app/window/a grip follows the pointer/%s", drags[i].name);
    g_test_add_data_func (path, GUINT_TO_POINTER (i), test_a_grip_follows_the_pointer);
  }
  g_test_add_func ("/app/window/the pitch grip follows the strip",
                   test_the_pitch_grip_follows_the_strip);
  g_test_add_func ("/app/window/the wheel brings both views nearer",
                   test_the_wheel_brings_both_views_nearer);
  g_test_add_func ("/app/window/Escape gives a drag up", test_escape_gives_a_drag_up);
  g_test_add_func ("/app/window/arrow keys move the focused grip",
                   test_arrow_keys_move_the_focused_grip);
  g_test_add_func ("/app/window/a locked grip stays", test_a_locked_grip_stays);
  g_test_add_func ("/app/window/an entry takes any unit", test_an_entry_takes_any_unit);
  g_test_add_func ("/app/window/what is not understood changes nothing",
                   test_what_is_not_understood_changes_nothing);
  g_test_add_func ("/app/window/a bad file is named and nothing lost",
                   test_a_bad_file_is_named_and_nothing_lost);
  g_test_add_func ("/app/window/unsaved changes are asked about",
                   test_unsaved_changes_are_asked_about);
  g_test_add_func ("/app/window/actions undo and redo", test_actions_undo_and_redo);
  g_test_add_func ("/app/window/every page can be shown", test_every_page_can_be_shown);
  return g_test_run ();
}
