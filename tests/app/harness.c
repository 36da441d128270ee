// SPDX-License-Identifier: GPL-3.0-or-later
#include "harness.h"

#include "app/application.h"

#include <X11/XKBlib.h>
#include <X11/extensions/XTest.h>
#include <gdk/x11/gdkx.h>

void
spin (int milliseconds)
{
  gint64 end = g_get_monotonic_time () + milliseconds * 1000;

  while (g_get_monotonic_time () < end) {
    if (!g_main_context_iteration (NULL, FALSE))
      g_usleep (500);
  }
}

void
desk_open (Desk *desk, const char *start)
{
  desk->application = sw_application_new (NULL, G_APPLICATION_NON_UNIQUE);
  g_application_register (G_APPLICATION (desk->application), NULL, NULL);
  desk->window = sw_window_new (GTK_APPLICATION (desk->application));
  desk->document = g_object_ref (sw_window_get_document (desk->window));
  if (start != NULL) {
    g_autofree char *path =
      g_strdup_printf ("%s/data/examples/%s.spire", g_getenv ("SW_SOURCE"), start);
    g_autoptr (GFile) file = g_file_new_for_path (path);
    g_assert_true (sw_document_load (desk->document, file, NULL));
  }
  gtk_window_present (GTK_WINDOW (desk->window));
  spin (350);
}

void
desk_close (Desk *desk)
{
  gpointer window = desk->window;

  g_object_add_weak_pointer (G_OBJECT (desk->window), &window);
  gtk_window_destroy (GTK_WINDOW (desk->window));
  spin (50);
  g_assert_null (window);
  g_assert_cmpuint (G_OBJECT (desk->document)->ref_count, ==, 1);
  g_object_unref (desk->document);
  g_object_unref (desk->application);
}

GtkWidget *
find_widget (GtkWidget *from, Wanted wanted, gconstpointer data)
{
  if (wanted (from, data))
    return from;
  for (GtkWidget *child = gtk_widget_get_first_child (from); child != NULL;
       child = gtk_widget_get_next_sibling (child)) {
    GtkWidget *found = find_widget (child, wanted, data);
    if (found != NULL)
      return found;
  }
  return NULL;
}

static Display *
x_display (Desk *desk)
{
  return gdk_x11_display_get_xdisplay (gtk_widget_get_display (GTK_WIDGET (desk->window)));
}

void
on_screen (Desk *desk, GtkWidget *widget, double x, double y, int *screen_x, int *screen_y)
{
  GtkNative *native = gtk_widget_get_native (widget);
  GdkSurface *surface = gtk_native_get_surface (native);
  graphene_point_t in_native;
  double offset_x, offset_y;
  Window child;

  g_assert_true (gtk_widget_compute_point (widget,
                                           GTK_WIDGET (native),
                                           &GRAPHENE_POINT_INIT ((float) x, (float) y),
                                           &in_native));
  gtk_native_get_surface_transform (native, &offset_x, &offset_y);
  XTranslateCoordinates (x_display (desk),
                         gdk_x11_surface_get_xid (surface),
                         DefaultRootWindow (x_display (desk)),
                         (int) (in_native.x + offset_x),
                         (int) (in_native.y + offset_y),
                         screen_x,
                         screen_y,
                         &child);
}

void
pointer_to (Desk *desk, int x, int y)
{
  XTestFakeMotionEvent (x_display (desk), -1, x, y, 0);
  XFlush (x_display (desk));
  spin (20);
}

void
pointer_button (Desk *desk, gboolean down)
{
  XTestFakeButtonEvent (x_display (desk), 1, down, 0);
  XFlush (x_display (desk));
  spin (40);
}

void
pointer_wheel (Desk *desk, gboolean nearer)
{
  guint button = nearer ? 4 : 5;

  XTestFakeButtonEvent (x_display (desk), button, TRUE, 0);
  XTestFakeButtonEvent (x_display (desk), button, FALSE, 0);
  XFlush (x_display (desk));
  spin (60);
}

void
pointer_click (Desk *desk, GtkWidget *widget)
{
  int x, y;

  on_screen (desk,
             widget,
             gtk_widget_get_width (widget) / 2.0,
             gtk_widget_get_height (widget) / 2.0,
             &x,
             &y);
  pointer_to (desk, x, y);
  spin (150);
  pointer_button (desk, TRUE);
  pointer_button (desk, FALSE);
  spin (250);
}

void
press_key (Desk *desk, guint64 key)
{
  KeyCode code = XKeysymToKeycode (x_display (desk), key);

  XTestFakeKeyEvent (x_display (desk), code, TRUE, 0);
  XTestFakeKeyEvent (x_display (desk), code, FALSE, 0);
  XFlush (x_display (desk));
  spin (30);
}

/* Which key, and whether Shift makes its second sign. */
static KeyCode
key_for (Display *display, KeySym sign, gboolean *shift)
{
  KeyCode code = XKeysymToKeycode (display, sign);

  *shift = XkbKeycodeToKeysym (display, code, 0, 0) != sign &&
           XkbKeycodeToKeysym (display, code, 0, 1) == sign;
  return code;
}

void
press_with (Desk *desk, guint64 modifier, guint64 key)
{
  KeyCode held = XKeysymToKeycode (x_display (desk), modifier);

  XTestFakeKeyEvent (x_display (desk), held, TRUE, 0);
  press_key (desk, key);
  XTestFakeKeyEvent (x_display (desk), held, FALSE, 0);
  XFlush (x_display (desk));
  spin (30);
}

void
type_text (Desk *desk, const char *text)
{
  gboolean shift;

  for (const char *at = text; *at != '\0'; at++) { /* Latin-1 signs are their own key symbols */
    KeySym sign = (KeySym) (guchar) *at;
    key_for (x_display (desk), sign, &shift);
    if (shift)
      press_with (desk, XK_Shift_L, sign);
    else
      press_key (desk, sign);
  }
}

gboolean
until (gboolean (*holds) (gpointer data), gpointer data)
{
  for (int i = 0; i < 500 && !holds (data); i++)
    spin (10);
  return holds (data);
}

GtkGesture *
drag_gesture (GtkWidget *widget)
{
  g_autoptr (GListModel) controllers = gtk_widget_observe_controllers (widget);

  for (guint i = 0; i < g_list_model_get_n_items (controllers); i++) {
    g_autoptr (GtkEventController) controller = g_list_model_get_item (controllers, i);
    if (GTK_IS_GESTURE_DRAG (controller))
      return GTK_GESTURE (controller);
  }
  return NULL;
}

static gboolean
has_grip (GtkWidget *widget, gconstpointer grip)
{
  double x, y;

  return SW_IS_VIEW_AREA (widget) &&
         sw_view_area_find_grip (SW_VIEW_AREA (widget), GPOINTER_TO_INT (grip), &x, &y);
}

SwViewArea *
view_with (Desk *desk, SwGripId id)
{
  return SW_VIEW_AREA (find_widget (GTK_WIDGET (desk->window), has_grip, GINT_TO_POINTER (id)));
}
