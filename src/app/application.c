// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/application.h"

#include "app/window-actions.h"
#include "app/window.h"
#include "packet/process-catalogue.h"

#include <adwaita.h>
#include <glib/gi18n.h>
#include <locale.h>
#include <stdio.h>

#define APP_ID "org.spirewright.Spirewright"
#define RESOURCES "/org/spirewright/Spirewright"

static SwWindow *
window_of (GtkApplication *application)
{
  GtkWindow *active = gtk_application_get_active_window (application);

  return SW_IS_WINDOW (active) ? SW_WINDOW (active) : NULL;
}

static void
show_catalogue_problems (SwWindow *window)
{
  const GPtrArray *problems = sw_catalogue_problems_of_process ();
  g_autoptr (GString) text = g_string_new (_ ("Left out of your own catalogue:"));

  for (guint i = 0; i < problems->len; i++)
    g_string_append_printf (text, "\n%s", (const char *) problems->pdata[i]);
  if (problems->len > 0)
    sw_window_show_problem (window, text->str);
}

static void
activate_cb (GtkApplication *application)
{
  SwWindow *window = window_of (application);
  gboolean first = window == NULL;

  if (first)
    window = sw_window_new (application);
  gtk_window_present (GTK_WINDOW (window));
  if (!first)
    return;
  show_catalogue_problems (window);
  sw_window_show_start (window);
}

/* Each file has a window of its own. */
static void
open_cb (GtkApplication *application, GFile **files, int n_files)
{
  for (int i = 0; i < n_files; i++) {
    SwWindow *window = sw_window_new (application);
    sw_window_open (window, files[i]);
    if (sw_document_get_file (sw_window_get_document (window)) != NULL)
      show_catalogue_problems (window);
    gtk_window_present (GTK_WINDOW (window));
  }
}

/* libadwaita loads style.css, style-dark.css and style-hc.css from the resources itself. */
static void
startup_cb (GtkApplication *application)
{
  gtk_icon_theme_add_resource_path (gtk_icon_theme_get_for_display (gdk_display_get_default ()),
                                    RESOURCES "/icons");
  sw_window_actions_set_accels (application);
  const GPtrArray *problems = sw_catalogue_problems_of_process ();
  for (guint i = 0; i < problems->len; i++)
    fprintf (stderr, "spirewright: %s\n", (const char *) problems->pdata[i]);
}

AdwApplication *
sw_application_new (const char *id, GApplicationFlags flags)
{
  AdwApplication *application = adw_application_new (id, flags | G_APPLICATION_HANDLES_OPEN);

  g_application_set_resource_base_path (G_APPLICATION (application), RESOURCES);
  g_signal_connect (application, "startup", G_CALLBACK (startup_cb), NULL);
  g_signal_connect (application, "activate", G_CALLBACK (activate_cb), NULL);
  g_signal_connect (application, "open", G_CALLBACK (open_cb), NULL);
  return application;
}

/* The drawings are cairo's, so is the renderer: no copy to a graphics card and back, and no
 * probe for one at the start. Whoever sets GSK_RENDERER keeps the say.
 */
static void
choose_renderer (void)
{
  if (g_getenv ("GSK_RENDERER") != NULL)
    return;
  g_setenv ("GSK_RENDERER", "cairo", TRUE);
  g_setenv ("GDK_DEBUG", "gl-disable", FALSE);
}

int
sw_application_main (int argc, char **argv)
{
  setlocale (LC_ALL, "");
  bindtextdomain (GETTEXT_PACKAGE, SW_LOCALEDIR);
  bind_textdomain_codeset (GETTEXT_PACKAGE, "UTF-8");
  textdomain (GETTEXT_PACKAGE);
  choose_renderer ();
  if (!gtk_init_check ()) {
    fprintf (stderr,
             "spirewright: there is no display to open a window on; spirewright --help lists "
             "what works without one\n");
    return 3;
  }
  g_autoptr (AdwApplication) application =
    sw_application_new (APP_ID, G_APPLICATION_DEFAULT_FLAGS);
  return g_application_run (G_APPLICATION (application), argc, argv);
}
