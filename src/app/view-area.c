// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/view-area.h"

#include "app/grip-nodes.h"
#include "app/view-picture.h"
#include "app/zoom-control.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <adwaita.h>
#include <glib/gi18n.h>
#include <math.h>
#include <string.h>

#define ROOM 1.12 /* the picture is fitted anew when it could be so much larger or smaller */

struct _SwViewArea {
  GtkWidget parent_instance;

  SwDocument *document; /* owned */
  SwViewKind kind;
  SwZoomControl zoom;
  SwView view; /* what is shown */
  gboolean fitted;

  SwViewPicture *picture; /* owned */

  SwGrip grips[SW_N_GRIPS];
  guint n_grips;
  SwGripNodes nodes;
  int hover; /* index into grips, −1 = none */
  int focus; /* the one that arrow keys move, −1 = none */
  gboolean dragging;
  SwGripId dragged;
  double grab_x, grab_y; /* from the pointer to the grip's middle */
  double pointer_x, pointer_y;
  SwSolution *start; /* owned, nullable: at the begin of the drag */
};

enum { PROP_ZOOM = 1, N_PROPS };

static GParamSpec *properties[N_PROPS];

G_DEFINE_FINAL_TYPE (SwViewArea, sw_view_area, GTK_TYPE_WIDGET)

static const SwStyle *
style_now (void)
{
  AdwStyleManager *manager = adw_style_manager_get_default ();

  if (adw_style_manager_get_high_contrast (manager))
    return adw_style_manager_get_dark (manager) ? &sw_style_dark_contrast
                                                : &sw_style_light_contrast;
  return adw_style_manager_get_dark (manager) ? &sw_style_dark : &sw_style_light;
}

static SwGripLook
look_of (SwViewArea *self, guint i)
{
  if (self->dragging && self->grips[i].id == self->dragged)
    return SW_GRIP_DRAG;
  if ((int) i == self->focus && gtk_widget_has_focus (GTK_WIDGET (self)))
    return SW_GRIP_FOCUS;
  return (int) i == self->hover ? SW_GRIP_HOVER : SW_GRIP_IDLE;
}

static char *
value_words (SwViewArea *self, SwGripId id)
{
  const SwSolution *solution = sw_document_get_solution (self->document);

  return sw_units_format (sw_grip_value (id, solution),
                          sw_grip_info[id].quantity,
                          solution->design->units,
                          sw_language_of_process ());
}

static char *
tag_words (SwViewArea *self, SwGripId id)
{
  g_autofree char *value = value_words (self, id);
  const char *refusal = self->dragging ? sw_document_get_refusal (self->document) : NULL;

  return g_strdup_printf ("%s  %s%s%s",
                          _ (sw_grip_info[id].label),
                          value,
                          refusal ? "  ▲ " : "",
                          refusal ? refusal : "");
}

/* Name and value beside the grip that is dragged, hovered or focused. */
static void
append_tag (SwViewArea *self, GtkSnapshot *snapshot, const SwGrip *grip)
{
  g_autofree char *words = tag_words (self, grip->id);

  sw_grip_tag_append (snapshot,
                      sw_view_picture_texts (self->picture),
                      style_now (),
                      grip,
                      words,
                      self->view.width);
}

static int
tagged_grip (SwViewArea *self)
{
  for (guint i = 0; i < self->n_grips; i++) {
    if (self->dragging && self->grips[i].id == self->dragged)
      return (int) i;
  }
  if (self->hover >= 0)
    return self->hover;
  return gtk_widget_has_focus (GTK_WIDGET (self)) ? self->focus : -1;
}

static void
place_grips (SwViewArea *self)
{
  self->n_grips = sw_grips_place (self->kind,
                                  &self->view,
                                  sw_document_get_solution (self->document),
                                  self->grips);
}

static void
fit (SwViewArea *self)
{
  const SwSolution *solution = sw_document_get_solution (self->document);
  double width = gtk_widget_get_width (GTK_WIDGET (self)),
         height = gtk_widget_get_height (GTK_WIDGET (self));

  self->zoom.whole = self->kind == SW_SIDE ? sw_side_view_fit (solution, width, height)
                                           : sw_top_view_fit (solution, width, height);
  self->zoom.zoom = sw_zoom_shifted (&self->zoom.zoom, &self->zoom.whole, 0, 0);
  self->view = sw_zoom_view (&self->zoom.zoom, &self->zoom.whole);
  self->fitted = TRUE;
  sw_view_picture_forget (self->picture);
}

static void
sw_view_area_snapshot (GtkWidget *widget, GtkSnapshot *snapshot)
{
  SwViewArea *self = SW_VIEW_AREA (widget);
  int width = gtk_widget_get_width (widget), height = gtk_widget_get_height (widget);

  if (width < 40 || height < 40)
    return;
  if (!self->fitted)
    fit (self);
  SwViewScene scene = { self->kind,
                        &self->view,
                        style_now (),
                        self->document,
                        width,
                        height,
                        gtk_widget_get_scale_factor (widget) };
  sw_view_picture_append (self->picture, &scene, snapshot);
  place_grips (self);
  for (guint i = 0; i < self->n_grips; i++)
    sw_grip_nodes_append (&self->nodes,
                          snapshot,
                          i,
                          &self->grips[i],
                          look_of (self, i),
                          style_now ());
  int tagged = tagged_grip (self);
  if (tagged >= 0 && tagged < (int) self->n_grips)
    append_tag (self, snapshot, &self->grips[tagged]);
}

static void
sw_view_area_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwViewArea *self = SW_VIEW_AREA (widget);

  self->fitted = FALSE;
  sw_view_picture_forget (self->picture);
}

/* The picture keeps still while the tree stands well in it: nothing moves that was not asked
 * to.
 */
static gboolean
still_fits (SwViewArea *self)
{
  const SwSolution *solution = sw_document_get_solution (self->document);
  gboolean side = self->kind == SW_SIDE;
  const SwView *whole = &self->zoom.whole;
  SwView best = side ? sw_side_view_fit (solution, whole->width, whole->height)
                     : sw_top_view_fit (solution, whole->width, whole->height);

  return (side ? sw_side_view_holds (whole, solution) : sw_top_view_holds (whole, solution)) &&
         fabs (log (best.scale / whole->scale)) < log (ROOM);
}

static void
describe (SwViewArea *self)
{
  if (self->focus < 0 || self->focus >= (int) self->n_grips)
    return;
  SwGripId id = self->grips[self->focus].id;
  g_autofree char *value = value_words (self, id);
  g_autofree char *words = g_strdup_printf ("%s: %s", _ (sw_grip_info[id].label), value);
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_DESCRIPTION,
                                  words,
                                  -1);
}

static void
changed_cb (SwViewArea *self)
{
  sw_view_picture_age (self->picture);
  if (sw_document_get_before (self->document) == NULL && self->fitted && !still_fits (self))
    self->fitted = FALSE;
  describe (self);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
style_changed_cb (SwViewArea *self)
{
  sw_view_picture_forget (self->picture);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static int
grip_under (SwViewArea *self, double x, double y)
{
  const SwGrip *grip = sw_grips_hit (self->grips, self->n_grips, x, y);

  return grip == NULL ? -1 : (int) (grip - self->grips);
}

static void
set_hover (SwViewArea *self, int hover)
{
  if (hover == self->hover)
    return;
  self->hover = hover;
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), hover >= 0 ? "grab" : NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
motion_cb (SwViewArea *self, double x, double y)
{
  if (!self->dragging)
    set_hover (self, grip_under (self, x, y));
}

static void
leave_cb (SwViewArea *self)
{
  if (!self->dragging)
    set_hover (self, -1);
}

static void
end_drag (SwViewArea *self)
{
  self->dragging = FALSE;
  self->view = sw_zoom_view (&self->zoom.zoom, &self->zoom.whole);
  g_clear_pointer (&self->start, sw_solution_unref);
  sw_view_picture_age (self->picture);
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), NULL);
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
drag_begin_cb (SwViewArea *self, double x, double y, GtkGesture *gesture)
{
  int under = grip_under (self, x, y);

  if (under < 0) { /* the paper */
    gtk_gesture_set_state (gesture,
                           sw_zoom_control_begin_pan (&self->zoom) ? GTK_EVENT_SEQUENCE_CLAIMED
                                                                   : GTK_EVENT_SEQUENCE_DENIED);
    return;
  }
  gtk_gesture_set_state (gesture, GTK_EVENT_SEQUENCE_CLAIMED);
  gtk_widget_grab_focus (GTK_WIDGET (self));
  sw_document_end_edit (self->document);
  self->focus = under;
  self->dragging = TRUE;
  self->dragged = self->grips[under].id;
  self->grab_x = self->grips[under].x - x;
  self->grab_y = self->grips[under].y - y;
  self->pointer_x = x;
  self->pointer_y = y;
  self->start =
    sw_solution_ref ((SwSolution *) (guintptr) sw_document_get_solution (self->document));
  gtk_widget_set_cursor_from_name (GTK_WIDGET (self), "grabbing");
  gtk_widget_queue_draw (GTK_WIDGET (self));
}

static void
drag_update_cb (SwViewArea *self, double dx, double dy)
{
  sw_zoom_control_pan (&self->zoom, dx, dy);
  if (!self->dragging)
    return;
  double value = sw_grip_value_at (self->dragged,
                                   &self->view,
                                   self->start,
                                   self->pointer_x + dx + self->grab_x,
                                   self->pointer_y + dy + self->grab_y);
  sw_document_edit_number (self->document,
                           sw_grip_info[self->dragged].path,
                           value,
                           _ (sw_grip_info[self->dragged].label));
}

static void
drag_end_cb (SwViewArea *self, double dx, double dy)
{
  sw_zoom_control_end_pan (&self->zoom);
  if (!self->dragging)
    return;
  drag_update_cb (self, dx, dy);
  end_drag (self);
  sw_document_end_edit (self->document);
}

static void
drag_cancel_cb (SwViewArea *self)
{
  sw_zoom_control_end_pan (&self->zoom);
  if (!self->dragging)
    return;
  end_drag (self);
  sw_document_cancel_edit (self->document);
}

static void
nudge (SwViewArea *self, double steps)
{
  if (self->focus < 0 || self->focus >= (int) self->n_grips)
    return;
  SwGripId id = self->grips[self->focus].id;
  const SwGripInfo *info = &sw_grip_info[id];
  double step = info->step * steps;
  if (info->quantity == SW_QUANTITY_COUNT)
    step = steps > 0 ? MAX (1, steps) : MIN (-1, steps);
  double value = sw_grip_value (id, sw_document_get_solution (self->document)) + step;
  sw_document_edit_number (self->document, info->path, value, _ (info->label));
}

static gboolean
arrow (guint keyval, double *direction)
{
  *direction = keyval == GDK_KEY_Up || keyval == GDK_KEY_Right || keyval == GDK_KEY_KP_Up ||
                   keyval == GDK_KEY_KP_Right
                 ? 1
                 : -1;
  return keyval == GDK_KEY_Up || keyval == GDK_KEY_Right || keyval == GDK_KEY_Down ||
         keyval == GDK_KEY_Left || keyval == GDK_KEY_KP_Up || keyval == GDK_KEY_KP_Right ||
         keyval == GDK_KEY_KP_Down || keyval == GDK_KEY_KP_Left;
}

static gboolean
key_cb (SwViewArea *self, guint keyval, guint keycode, GdkModifierType state)
{
  double direction;

  if (keyval == GDK_KEY_Escape && self->dragging) {
    drag_cancel_cb (self);
    return GDK_EVENT_STOP;
  }
  if (!self->dragging && !(state & GDK_CONTROL_MASK) &&
      sw_zoom_control_key (&self->zoom, keyval))
    return GDK_EVENT_STOP;
  if (self->dragging || self->focus < 0 || !arrow (keyval, &direction))
    return GDK_EVENT_PROPAGATE;
  double size = state & GDK_SHIFT_MASK ? 0.1 : state & GDK_CONTROL_MASK ? 10 : 1;
  nudge (self, direction * size);
  return GDK_EVENT_STOP;
}

static void
key_released_cb (SwViewArea *self)
{
  sw_document_end_edit (self->document);
}

/* Tab goes from grip to grip and then on to the next widget. */
static gboolean
sw_view_area_focus (GtkWidget *widget, GtkDirectionType direction)
{
  SwViewArea *self = SW_VIEW_AREA (widget);
  gboolean forward = direction == GTK_DIR_TAB_FORWARD;
  gboolean had = gtk_widget_has_focus (widget);

  if (direction != GTK_DIR_TAB_FORWARD && direction != GTK_DIR_TAB_BACKWARD)
    return had;
  int next = had ? self->focus + (forward ? 1 : -1) : forward ? 0 : (int) self->n_grips - 1;
  if (next < 0 || next >= (int) self->n_grips)
    return FALSE;
  self->focus = next;
  gtk_widget_grab_focus (widget);
  describe (self);
  gtk_widget_queue_draw (widget);
  return TRUE;
}

/* While a grip is dragged the drawing keeps still: nearer comes when the drag is over. */
static void
zoomed (GtkWidget *widget)
{
  SwViewArea *self = SW_VIEW_AREA (widget);

  if (!self->fitted)
    return;
  if (!self->dragging)
    self->view = sw_zoom_view (&self->zoom.zoom, &self->zoom.whole);
  sw_view_picture_forget (self->picture);
  gtk_widget_queue_draw (widget);
  g_object_notify_by_pspec (G_OBJECT (self), properties[PROP_ZOOM]);
}

static void
sw_view_area_get_property (GObject *object, guint id, GValue *value, GParamSpec *pspec)
{
  g_value_set_double (value, sw_zoom_control_get_factor (&SW_VIEW_AREA (object)->zoom));
}

static void
sw_view_area_set_property (GObject *object, guint id, const GValue *value, GParamSpec *pspec)
{
  sw_zoom_control_set_factor (&SW_VIEW_AREA (object)->zoom, g_value_get_double (value));
}

static void
sw_view_area_dispose (GObject *object)
{
  SwViewArea *self = SW_VIEW_AREA (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->picture, sw_view_picture_free);
  sw_grip_nodes_clear (&self->nodes);
  g_clear_pointer (&self->start, sw_solution_unref);
  G_OBJECT_CLASS (sw_view_area_parent_class)->dispose (object);
}

static void
sw_view_area_class_init (SwViewAreaClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_view_area_dispose;
  G_OBJECT_CLASS (klass)->get_property = sw_view_area_get_property;
  G_OBJECT_CLASS (klass)->set_property = sw_view_area_set_property;
  properties[PROP_ZOOM] =
    g_param_spec_double ("zoom",
                         NULL,
                         NULL,
                         1,
                         SW_ZOOM_MOST,
                         1,
                         G_PARAM_READWRITE | G_PARAM_EXPLICIT_NOTIFY | G_PARAM_STATIC_STRINGS);
  g_object_class_install_properties (G_OBJECT_CLASS (klass), N_PROPS, properties);
  widget_class->snapshot = sw_view_area_snapshot;
  widget_class->size_allocate = sw_view_area_size_allocate;
  widget_class->focus = sw_view_area_focus;
  gtk_widget_class_set_accessible_role (widget_class, GTK_ACCESSIBLE_ROLE_IMG);
  gtk_widget_class_set_css_name (widget_class, "viewarea");
}

static void
add_pointer (SwViewArea *self)
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkGesture *drag = gtk_gesture_drag_new ();

  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  g_signal_connect_swapped (motion, "leave", G_CALLBACK (leave_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), motion);
  g_signal_connect_swapped (drag, "drag-begin", G_CALLBACK (drag_begin_cb), self);
  g_signal_connect_swapped (drag, "drag-update", G_CALLBACK (drag_update_cb), self);
  g_signal_connect_swapped (drag, "drag-end", G_CALLBACK (drag_end_cb), self);
  g_signal_connect_swapped (drag, "cancel", G_CALLBACK (drag_cancel_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), GTK_EVENT_CONTROLLER (drag));
}

static void
add_keys (SwViewArea *self)
{
  GtkEventController *keys = gtk_event_controller_key_new ();
  GtkEventController *focus = gtk_event_controller_focus_new ();

  g_signal_connect_swapped (keys, "key-pressed", G_CALLBACK (key_cb), self);
  g_signal_connect_swapped (keys, "key-released", G_CALLBACK (key_released_cb), self);
  gtk_widget_add_controller (GTK_WIDGET (self), keys);
  g_signal_connect_swapped (focus, "leave", G_CALLBACK (gtk_widget_queue_draw), self);
  gtk_widget_add_controller (GTK_WIDGET (self), focus);
}

static void
sw_view_area_init (SwViewArea *self)
{
  AdwStyleManager *manager = adw_style_manager_get_default ();

  self->hover = -1;
  self->focus = -1;
  self->picture = sw_view_picture_new ();
  gtk_widget_set_focusable (GTK_WIDGET (self), TRUE);
  gtk_widget_set_hexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_vexpand (GTK_WIDGET (self), TRUE);
  gtk_widget_set_size_request (GTK_WIDGET (self), 160, 150);
  gtk_widget_set_overflow (GTK_WIDGET (self), GTK_OVERFLOW_HIDDEN);
  sw_zoom_control_init (&self->zoom, GTK_WIDGET (self), zoomed);
  add_pointer (self);
  add_keys (self);
  g_signal_connect_object (manager,
                           "notify::dark",
                           G_CALLBACK (style_changed_cb),
                           self,
                           G_CONNECT_SWAPPED);
  g_signal_connect_object (manager,
                           "notify::high-contrast",
                           G_CALLBACK (style_changed_cb),
                           self,
                           G_CONNECT_SWAPPED);
}

GtkWidget *
sw_view_area_new (SwDocument *document, SwViewKind kind)
{
  SwViewArea *self = g_object_new (SW_TYPE_VIEW_AREA, NULL);

  self->document = g_object_ref (document);
  self->kind = kind;
  gtk_accessible_update_property (GTK_ACCESSIBLE (self),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  kind == SW_SIDE ? _ ("Side view") : _ ("Top view"),
                                  -1);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  return GTK_WIDGET (self);
}

gboolean
sw_view_area_find_grip (SwViewArea *self, SwGripId id, double *x, double *y)
{
  place_grips (self);
  for (guint i = 0; i < self->n_grips; i++) {
    if (self->grips[i].id == id) {
      *x = self->grips[i].x;
      *y = self->grips[i].y;
      return TRUE;
    }
  }
  return FALSE;
}

const SwView *
sw_view_area_get_view (SwViewArea *self)
{
  return &self->view;
}
