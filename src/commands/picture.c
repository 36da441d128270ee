// SPDX-License-Identifier: GPL-3.0-or-later
#include "commands/command.h"
#include "drawing/night-view.h"
#include "drawing/top-view.h"
#include "engine/plain-file.h"

#include <math.h>
#include <string.h>

#define SIZE_LEAST 16
#define SIZE_MOST 8192

typedef struct {
  char *to, *size, *view, *scene, *time;
  char **sets;
} Options;

static gboolean
read_side (const char *text, int *side)
{
  guint64 value;

  if (!g_ascii_string_to_unsigned (text, 10, SIZE_LEAST, SIZE_MOST, &value, NULL))
    return FALSE;
  *side = (int) value;
  return TRUE;
}

static gboolean
read_size (const char *text, int *width, int *height)
{
  g_auto (GStrv) sides = g_strsplit (text, "x", 3);

  return g_strv_length (sides) == 2 && read_side (sides[0], width) &&
         read_side (sides[1], height);
}

static gboolean
read_time (const char *text, double *time_s)
{
  char *end;

  *time_s = g_ascii_strtod (text, &end);
  return end != text && *end == '\0' && isfinite (*time_s) && *time_s >= 0;
}

static gboolean
knows_scene (const char *name)
{
  return name == NULL || g_strv_contains (sw_scenes, name);
}

static void
draw_drawing (cairo_surface_t *image, const SwSolution *solution, gboolean from_above)
{
  int width = cairo_image_surface_get_width (image),
      height = cairo_image_surface_get_height (image);
  SwView view = from_above ? sw_top_view_fit (solution, width, height)
                           : sw_side_view_fit (solution, width, height);
  SwPicture picture = { &view, &sw_style_light, &sw_language_english, NULL, SW_DRAW_ALL };
  cairo_t *cr = cairo_create (image);

  if (from_above)
    sw_top_view_draw (cr, &picture, solution);
  else
    sw_side_view_draw (cr, &picture, solution);
  cairo_destroy (cr);
}

static cairo_status_t
write_bytes (void *data, const unsigned char *bytes, unsigned int length)
{
  g_byte_array_append (data, bytes, length);
  return CAIRO_STATUS_SUCCESS;
}

/* Whole or not at all. */
static int
save_png (cairo_surface_t *image, const char *file)
{
  g_autoptr (GByteArray) png = g_byte_array_new ();
  g_autoptr (GError) error = NULL;

  if (cairo_surface_write_to_png_stream (image, write_bytes, png) != CAIRO_STATUS_SUCCESS)
    return sw_command_fail (SW_EXIT_FILE, file, "the picture could not be made");
  if (!sw_plain_file_replace (file, (const char *) png->data, png->len, &error))
    return sw_command_fail (SW_EXIT_FILE, file, error->message);
  return SW_EXIT_DONE;
}

static int
check (const Options *options, int *width, int *height, double *time_s)
{
  static const char *const views[] = { "side", "top", "night", "day", NULL };

  if (options->to == NULL)
    return sw_command_fail (SW_EXIT_USAGE, NULL, "usage: spirewright picture FILE --to X.png");
  if (!read_size (options->size == NULL ? "1200x900" : options->size, width, height))
    return sw_command_fail (SW_EXIT_USAGE,
                            NULL,
                            "--size: WIDTHxHEIGHT is allowed, each 16 … 8192");
  if (options->view != NULL && !g_strv_contains (views, options->view))
    return sw_command_fail (SW_EXIT_USAGE,
                            NULL,
                            "--view: side | top | night | day are allowed");
  if (!knows_scene (options->scene)) {
    g_autofree char *all = g_strjoinv (" | ", (GStrv) (guintptr) sw_scenes);
    g_autofree char *message = g_strdup_printf ("--scene: %s are allowed", all);
    return sw_command_fail (SW_EXIT_USAGE, NULL, message);
  }
  if (!read_time (options->time == NULL ? "0" : options->time, time_s))
    return sw_command_fail (SW_EXIT_USAGE, NULL, "--time: seconds are allowed, 0 or more");
  return SW_EXIT_DONE;
}

static int
run (const char *file, const Options *options)
{
  const char *view = options->view == NULL ? "side" : options->view;
  double time_s = 0;
  int width = 0, height = 0, status = check (options, &width, &height, &time_s);

  if (status != SW_EXIT_DONE)
    return status;
  g_autoptr (SwSolution) solution = sw_command_solve (file, options->sets, &status);
  if (solution == NULL)
    return status;
  cairo_surface_t *image = cairo_image_surface_create (CAIRO_FORMAT_RGB24, width, height);
  if (strcmp (view, "night") == 0 || strcmp (view, "day") == 0) {
    SwNight night = { options->scene, time_s, strcmp (view, "day") == 0 };
    sw_night_view_draw (image, solution, &night);
  } else {
    draw_drawing (image, solution, strcmp (view, "top") == 0);
  }
  status = save_png (image, options->to);
  cairo_surface_destroy (image);
  if (status != SW_EXIT_DONE)
    return status;
  g_autofree char *done = g_strdup_printf ("Picture written to %s\n", options->to);
  return sw_command_say (solution, done);
}

int
sw_command_picture (int argc, char **argv)
{
  Options options = { 0 };
  const GOptionEntry entries[] = {
    { "to", 't', 0, G_OPTION_ARG_FILENAME, &options.to, "Where to write the PNG", "X.png" },
    { "size", 0, 0, G_OPTION_ARG_STRING, &options.size, "Size in pixels (1200x900)", "WxH" },
    { "view", 0, 0, G_OPTION_ARG_STRING, &options.view, "side, top, night or day", "VIEW" },
    { "scene",
      0,
      0,
      G_OPTION_ARG_STRING,
      &options.scene,
      "What the lights show at night",
      "NAME" },
    { "time", 0, 0, G_OPTION_ARG_STRING, &options.time, "Seconds into the scene", "S" },
    SW_COMMAND_SET_ENTRY (&options.sets),
    G_OPTION_ENTRY_NULL
  };
  const SwCommandForm form = { "FILE --to X.png [--size WxH] [--view side|top|night|day] "
                               "[--scene NAME] [--time S] [--set PATH=VALUE]…",
                               "Draws one picture.",
                               entries,
                               1 };
  g_auto (GStrv) files = NULL;
  int status;

  if (sw_command_parse (&form, argc, argv, &files, &status))
    status = run (files[0], &options);
  g_free (options.to);
  g_free (options.size);
  g_free (options.view);
  g_free (options.scene);
  g_free (options.time);
  g_strfreev (options.sets);
  return status;
}
