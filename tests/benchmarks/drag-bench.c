// SPDX-License-Identifier: GPL-3.0-or-later
/* drag-bench.c: a scripted drag of the Landmark's crown in a real window: before-paint to
 * after-paint, frame by frame, and frame-clock ticks that were missed. The floor is an
 * AdwApplicationWindow with a header bar and an empty drawing area, redrawn as often in the
 * same run. Xvfb without MIT-SHM, and the allocator kept as main () keeps it.
 */
#include "../app/harness.h"

#include <malloc.h>
#include <stdio.h>
#include <stdlib.h>

#define FRAMES 120
#define WARM 15

typedef struct {
  double ms[FRAMES];
  int n;
  gint64 began_us, last_tick_us;
  int missed;
} Frames;

static void
before_cb (GdkFrameClock *clock, gpointer data)
{
  ((Frames *) data)->began_us = g_get_monotonic_time ();
}

static void
after_cb (GdkFrameClock *clock, gpointer data)
{
  Frames *frames = data;
  gint64 tick_us = gdk_frame_clock_get_frame_time (clock);

  if (frames->n < FRAMES)
    frames->ms[frames->n++] = (double) (g_get_monotonic_time () - frames->began_us) / 1000;
  if (frames->last_tick_us > 0 && tick_us - frames->last_tick_us > 25000)
    frames->missed++;
  frames->last_tick_us = tick_us;
}

static int
by_size (const void *a, const void *b)
{
  double first = *(const double *) a, second = *(const double *) b;

  return (first > second) - (first < second);
}

static double
percentile (Frames *frames, double share)
{
  int n = frames->n - WARM;

  qsort (frames->ms + WARM, n, sizeof (double), by_size);
  return frames->ms[WARM + (int) (share * (n - 1))];
}

typedef void (*Step) (gpointer data, int i);

typedef struct {
  Step step;
  gpointer data;
  int i;
} Run;

static gboolean
tick_cb (GtkWidget *widget, GdkFrameClock *clock, gpointer data)
{
  Run *run = data;

  run->step (run->data, run->i++);
  return run->i < FRAMES;
}

static Frames
measure (GtkWidget *window, Step step, gpointer data)
{
  Frames frames = { 0 };
  Run run = { step, data, 0 };
  GdkFrameClock *clock = gtk_widget_get_frame_clock (window);
  gulong before = g_signal_connect (clock, "before-paint", G_CALLBACK (before_cb), &frames);
  gulong after = g_signal_connect (clock, "after-paint", G_CALLBACK (after_cb), &frames);

  gtk_widget_add_tick_callback (window, tick_cb, &run, NULL);
  while (run.i < FRAMES)
    g_main_context_iteration (NULL, TRUE);
  spin (40);
  g_signal_handler_disconnect (clock, before);
  g_signal_handler_disconnect (clock, after);
  return frames;
}

static void
redraw_step (gpointer area, int i)
{
  gtk_widget_queue_draw (area);
}

static void
drag_step (gpointer document, int i)
{
  sw_document_edit_number (document,
                           "shape.crown_height_m",
                           4.94 + 0.002 * (i % 60),
                           "Crown height");
}

static Frames
measure_floor (void)
{
  GtkWidget *window = g_object_new (ADW_TYPE_APPLICATION_WINDOW,
                                    "default-width",
                                    1280,
                                    "default-height",
                                    800,
                                    NULL);
  GtkWidget *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0),
            *area = gtk_drawing_area_new ();

  gtk_widget_set_vexpand (area, TRUE);
  gtk_box_append (GTK_BOX (column), adw_header_bar_new ());
  gtk_box_append (GTK_BOX (column), area);
  adw_application_window_set_content (ADW_APPLICATION_WINDOW (window), column);
  gtk_window_present (GTK_WINDOW (window));
  spin (300);
  Frames frames = measure (window, redraw_step, area);
  gtk_window_destroy (GTK_WINDOW (window));
  return frames;
}

int
main (int argc, char **argv)
{
  Desk desk;

  mallopt (M_MMAP_THRESHOLD, 64 << 20);
  mallopt (M_TRIM_THRESHOLD, 256 << 20);
  mallopt (M_TOP_PAD, 16 << 20);
  gtk_init ();
  adw_init ();
  Frames floor = measure_floor ();
  desk_open (&desk, "landmark");
  Frames drag = measure (GTK_WIDGET (desk.window), drag_step, desk.document);
  desk_close (&desk);
  double floor_ms = percentile (&floor, 0.95), drag_ms = percentile (&drag, 0.95);
  printf ("drag of Landmark, before-paint to after-paint: median %.2f ms, p95 %.2f ms, %.1f "
          "times the floor's p95 (%.2f ms); ticks missed %d, floor %d\n",
          percentile (&drag, 0.5),
          drag_ms,
          drag_ms / floor_ms,
          floor_ms,
          drag.missed,
          floor.missed);
  return 0;
}
