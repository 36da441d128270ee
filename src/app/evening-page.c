// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/pages.h"
#include "drawing/night-view.h"
#include "engine/units.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>

#define SW_TYPE_EVENING_PAGE (sw_evening_page_get_type ())
G_DECLARE_FINAL_TYPE (SwEveningPage, sw_evening_page, SW, EVENING_PAGE, GtkWidget)

struct _SwEveningPage {
  GtkWidget parent_instance;

  SwDocument *document;     /* owned */
  cairo_surface_t *picture; /* owned, nullable: kept from frame to frame */
  gboolean stale;           /* the picture is older than what it shows */
  guint tick;
  gint64 started_us; /* frame time at which time_s was 0 */
  double time_s;

  /* template */
  GtkWidget *content;
  GtkDrawingArea *area;
  GtkToggleButton *play;
  GtkDropDown *scenes;
  GtkSwitch *day;
  GtkLabel *caption;
};

G_DEFINE_FINAL_TYPE (SwEveningPage, sw_evening_page, GTK_TYPE_WIDGET)

static void
redraw (SwEveningPage *self)
{
  self->stale = TRUE;
  gtk_widget_queue_draw (GTK_WIDGET (self->area));
}

static gboolean
fits (cairo_surface_t *picture, int width, int height)
{
  return picture != NULL && cairo_image_surface_get_width (picture) == width &&
         cairo_image_surface_get_height (picture) == height;
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  SwEveningPage *self = data;
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (area));

  if (!fits (self->picture, width * factor, height * factor)) {
    g_clear_pointer (&self->picture, cairo_surface_destroy);
    self->picture =
      cairo_image_surface_create (CAIRO_FORMAT_RGB24, width * factor, height * factor);
    self->stale = TRUE;
  }
  if (self->stale) {
    SwNight night = { .scene = sw_scenes[gtk_drop_down_get_selected (self->scenes)],
                      .time_s = self->time_s,
                      .day = gtk_switch_get_active (self->day) };
    sw_night_view_draw (self->picture, sw_document_get_solution (self->document), &night);
    self->stale = FALSE;
  }
  cairo_scale (cr, 1.0 / factor, 1.0 / factor);
  cairo_set_source_surface (cr, self->picture, 0, 0);
  cairo_paint (cr);
}

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  SwEveningPage *self = data;
  gint64 now_us = gdk_frame_clock_get_frame_time (clock);

  if (self->started_us == 0)
    self->started_us = now_us - (gint64) (self->time_s * G_USEC_PER_SEC);
  self->time_s = (double) (now_us - self->started_us) / G_USEC_PER_SEC;
  redraw (self);
  return G_SOURCE_CONTINUE;
}

/* GTK runs tick callbacks only while the widget is mapped: hidden is idle. */
static void
play_cb (SwEveningPage *self)
{
  gboolean playing = gtk_toggle_button_get_active (self->play);

  gtk_button_set_icon_name (GTK_BUTTON (self->play),
                            playing ? "media-playback-pause-symbolic"
                                    : "media-playback-start-symbolic");
  if (playing && self->tick == 0) {
    self->started_us = 0;
    self->tick = gtk_widget_add_tick_callback (GTK_WIDGET (self->area), tick_cb, self, NULL);
  }
  if (!playing && self->tick != 0) {
    gtk_widget_remove_tick_callback (GTK_WIDGET (self->area), self->tick);
    self->tick = 0;
  }
}

static void
day_cb (SwEveningPage *self)
{
  gboolean day = gtk_switch_get_active (self->day);

  if (day)
    gtk_toggle_button_set_active (self->play, FALSE);
  gtk_widget_set_sensitive (GTK_WIDGET (self->play), !day);
  gtk_widget_set_sensitive (GTK_WIDGET (self->scenes), !day);
  redraw (self);
}

static void
show_caption (SwEveningPage *self)
{
  const SwSolution *solution = sw_document_get_solution (self->document);
  const SwDesign *design = solution->design;
  g_autofree char *distance = sw_units_format (design->site.view_m,
                                               SW_QUANTITY_LENGTH,
                                               design->units,
                                               sw_language_of_process ());
  /* Translators: number of pixels, and from how far away the tree is seen. */
  g_autofree char *text =
    g_strdup_printf (_ ("%d pixels, seen from %s"), solution->cone.pixels_total, distance);

  gtk_label_set_text (self->caption, text);
}

static void
changed_cb (SwEveningPage *self)
{
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    show_caption (self);
  redraw (self);
}

/* A hidden page's words wait: a label that changes has the whole window measured anew. */
static void
sw_evening_page_map (GtkWidget *widget)
{
  show_caption (SW_EVENING_PAGE (widget));
  GTK_WIDGET_CLASS (sw_evening_page_parent_class)->map (widget);
}

static void
fill_scenes (SwEveningPage *self)
{
  g_autoptr (GtkStringList) names = gtk_string_list_new (NULL);

  for (guint i = 0; sw_scenes[i] != NULL; i++)
    gtk_string_list_append (names, _ (sw_scene_labels[i]));
  gtk_drop_down_set_model (self->scenes, G_LIST_MODEL (names));
}

static void
sw_evening_page_dispose (GObject *object)
{
  SwEveningPage *self = SW_EVENING_PAGE (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->picture, cairo_surface_destroy);
  g_clear_pointer (&self->content, gtk_widget_unparent);
  G_OBJECT_CLASS (sw_evening_page_parent_class)->dispose (object);
}

static void
sw_evening_page_class_init (SwEveningPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_evening_page_dispose;
  widget_class->map = sw_evening_page_map;
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/spirewright/Spirewright/evening-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwEveningPage, content);
  gtk_widget_class_bind_template_child (widget_class, SwEveningPage, area);
  gtk_widget_class_bind_template_child (widget_class, SwEveningPage, play);
  gtk_widget_class_bind_template_child (widget_class, SwEveningPage, scenes);
  gtk_widget_class_bind_template_child (widget_class, SwEveningPage, day);
  gtk_widget_class_bind_template_child (widget_class, SwEveningPage, caption);
}

static void
sw_evening_page_init (SwEveningPage *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  gtk_drawing_area_set_draw_func (self->area, draw_cb, self, NULL);
  fill_scenes (self);
  g_signal_connect_swapped (self->play, "toggled", G_CALLBACK (play_cb), self);
  g_signal_connect_swapped (self->day, "notify::active", G_CALLBACK (day_cb), self);
  g_signal_connect_swapped (self->scenes, "notify::selected", G_CALLBACK (redraw), self);
}

GtkWidget *
sw_evening_page_new (SwDocument *document)
{
  SwEveningPage *self = g_object_new (SW_TYPE_EVENING_PAGE, NULL);

  self->document = g_object_ref (document);
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  show_caption (self);
  return GTK_WIDGET (self);
}
