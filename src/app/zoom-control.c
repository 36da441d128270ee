// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/zoom-control.h"

#include <math.h>

#define STEP 1.25 /* of a notch of the wheel, or a key */

static void
take (SwZoomControl *self, SwZoom zoom)
{
  self->zoom = zoom;
  self->changed (self->widget);
}

double
sw_zoom_control_get_factor (const SwZoomControl *self)
{
  return MAX (self->zoom.factor, 1);
}

void
sw_zoom_control_set_factor (SwZoomControl *self, double factor)
{
  if (fabs (factor - sw_zoom_control_get_factor (self)) <= 0)
    return;
  take (self,
        sw_zoom_at (&self->zoom,
                    &self->whole,
                    factor,
                    self->whole.width / 2,
                    self->whole.height / 2));
}

gboolean
sw_zoom_control_key (SwZoomControl *self, guint keyval)
{
  double now = sw_zoom_control_get_factor (self);

  if (keyval == GDK_KEY_plus || keyval == GDK_KEY_equal || keyval == GDK_KEY_KP_Add)
    sw_zoom_control_set_factor (self, now * STEP);
  else if (keyval == GDK_KEY_minus || keyval == GDK_KEY_KP_Subtract)
    sw_zoom_control_set_factor (self, now / STEP);
  else if (keyval == GDK_KEY_0 || keyval == GDK_KEY_KP_0)
    sw_zoom_control_set_factor (self, 1);
  else
    return FALSE;
  return TRUE;
}

gboolean
sw_zoom_control_begin_pan (SwZoomControl *self)
{
  self->panning = sw_zoom_control_get_factor (self) > 1;
  self->panned_x = self->panned_y = 0;
  return self->panning;
}

void
sw_zoom_control_pan (SwZoomControl *self, double dx, double dy)
{
  if (!self->panning)
    return;
  take (self,
        sw_zoom_shifted (&self->zoom, &self->whole, dx - self->panned_x, dy - self->panned_y));
  self->panned_x = dx;
  self->panned_y = dy;
}

void
sw_zoom_control_end_pan (SwZoomControl *self)
{
  self->panning = FALSE;
}

static void
motion_cb (SwZoomControl *self, double x, double y)
{
  self->pointer_x = x;
  self->pointer_y = y;
}

static gboolean
scroll_cb (SwZoomControl *self, double dx, double dy)
{
  take (self,
        sw_zoom_at (&self->zoom,
                    &self->whole,
                    sw_zoom_control_get_factor (self) * pow (STEP, -dy),
                    self->pointer_x,
                    self->pointer_y));
  return GDK_EVENT_STOP;
}

static void
pinch_begin_cb (SwZoomControl *self)
{
  self->pinched = sw_zoom_control_get_factor (self);
}

static void
pinch_cb (SwZoomControl *self, double scale, GtkGesture *gesture)
{
  double x, y;

  if (gtk_gesture_get_bounding_box_center (gesture, &x, &y))
    take (self, sw_zoom_at (&self->zoom, &self->whole, self->pinched * scale, x, y));
}

void
sw_zoom_control_init (SwZoomControl *self,
                      GtkWidget *widget,
                      void (*changed) (GtkWidget *widget))
{
  GtkEventController *motion = gtk_event_controller_motion_new ();
  GtkEventController *scroll =
    gtk_event_controller_scroll_new (GTK_EVENT_CONTROLLER_SCROLL_VERTICAL);
  GtkGesture *pinch = gtk_gesture_zoom_new ();

  *self = (SwZoomControl){ .widget = widget, .changed = changed, .zoom = { 1, 0, 0 } };
  g_signal_connect_swapped (motion, "motion", G_CALLBACK (motion_cb), self);
  gtk_widget_add_controller (widget, motion);
  g_signal_connect_swapped (scroll, "scroll", G_CALLBACK (scroll_cb), self);
  gtk_widget_add_controller (widget, scroll);
  g_signal_connect_swapped (pinch, "begin", G_CALLBACK (pinch_begin_cb), self);
  g_signal_connect_swapped (pinch, "scale-changed", G_CALLBACK (pinch_cb), self);
  gtk_widget_add_controller (widget, GTK_EVENT_CONTROLLER (pinch));
}
