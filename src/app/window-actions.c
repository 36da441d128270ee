// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window-actions.h"

#include "engine/edit.h"

#include <glib/gi18n.h>

static gboolean
always (SwDocument *document)
{
  return TRUE;
}

static void
show_start (SwWindow *self, gpointer unused)
{
  sw_window_show_start (self);
}

static void
new_design (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_window_guard (SW_WINDOW (widget), show_start, NULL);
}

static void
open_chosen_cb (GtkNativeDialog *dialog, int response, gpointer data)
{
  g_autoptr (GFile) file = NULL;

  if (response == GTK_RESPONSE_ACCEPT) {
    file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
    sw_window_open (SW_WINDOW (data), file);
  }
  g_object_unref (dialog);
}

static GtkFileFilter *
design_filter (void)
{
  GtkFileFilter *filter = gtk_file_filter_new ();

  gtk_file_filter_set_name (filter, _ ("Spirewright designs"));
  gtk_file_filter_add_pattern (filter, "*.spire");
  return filter;
}

static void
choose_file (SwWindow *self, gpointer unused)
{
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (_ ("Open a design"),
                                                               GTK_WINDOW (self),
                                                               GTK_FILE_CHOOSER_ACTION_OPEN,
                                                               _ ("_Open"),
                                                               _ ("_Cancel"));
  g_autoptr (GtkFileFilter) filter = design_filter ();

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_add_filter (GTK_FILE_CHOOSER (chooser), filter);
  g_signal_connect_object (chooser, "response", G_CALLBACK (open_chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

static void
open_design (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_window_guard (SW_WINDOW (widget), choose_file, NULL);
}

static void
open_this (SwWindow *self, gpointer data)
{
  g_autoptr (GFile) file = G_FILE (data);

  sw_window_open (self, file);
}

static void
open_recent (GtkWidget *widget, const char *name, GVariant *uri)
{
  sw_window_guard (SW_WINDOW (widget),
                   open_this,
                   g_file_new_for_uri (g_variant_get_string (uri, NULL)));
}

static void
save (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_window_save (SW_WINDOW (widget), FALSE, NULL, NULL);
}

static void
save_as (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_window_save (SW_WINDOW (widget), TRUE, NULL, NULL);
}

static void
undo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_document_undo (sw_window_get_document (SW_WINDOW (widget)));
}

static void
redo (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_document_redo (sw_window_get_document (SW_WINDOW (widget)));
}

static void
metric (GtkWidget *widget, const char *name, GVariant *parameter)
{
  SwDocument *document = sw_window_get_document (SW_WINDOW (widget));
  gboolean is_metric = sw_document_get_design (document)->units == SW_UNITS_METRIC;

  sw_document_edit_text (document, "units", is_metric ? "us" : "metric", _ ("Units"));
  sw_document_end_edit (document);
}

static void
find (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_window_search (SW_WINDOW (widget));
}

static void
show_page (GtkWidget *widget, const char *name, GVariant *parameter)
{
  sw_window_show_page (SW_WINDOW (widget), g_variant_get_string (parameter, NULL));
}

static void
help (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GError) error = NULL;

  if (!g_app_info_launch_default_for_uri ("help:spirewright", NULL, &error))
    sw_window_show_problem (
      SW_WINDOW (widget),
      _ ("There is no program here that shows help pages. Read the folder help/C instead."));
}

static void
about (GtkWidget *widget, const char *name, GVariant *parameter)
{
  adw_show_about_window (GTK_WINDOW (widget),
                         "application-name",
                         "Spirewright",
                         "application-icon",
                         "org.spirewright.Spirewright",
                         "version",
                         SW_VERSION,
                         "license-type",
                         GTK_LICENSE_GPL_3_0,
                         "comments",
                         _ ("Plan a mega tree and print what it takes to build it."),
                         NULL);
}

static const struct {
  const char *title, *keys;
} shortcuts[] = {
  { N_ ("New design"), "<Control>n" },
  { N_ ("Open a design"), "<Control>o" },
  { N_ ("Save"), "<Control>s" },
  { N_ ("Save as"), "<Control><Shift>s" },
  { N_ ("Undo"), "<Control>z" },
  { N_ ("Redo"), "<Control><Shift>z" },
  { N_ ("Find a setting"), "<Control>f" },
  { N_ ("Metric units or feet and inches"), "<Control>u" },
  { N_ ("Plan, Evening, Parts, Build sheets"), "<Alt>1...4" },
  { N_ ("From grip to grip in a drawing"), "Tab" },
  { N_ ("Move the grip; Shift finely, Ctrl by a lot"), "Up Down" },
  { N_ ("Give up a drag"), "Escape" },
};

static void
show_shortcuts (GtkWidget *widget, const char *name, GVariant *parameter)
{
  g_autoptr (GString) ui = g_string_new (
    "<interface><object class=\"GtkShortcutsWindow\" id=\"window\"><property "
    "name=\"modal\">1</property>"
    "<child><object class=\"GtkShortcutsSection\"><property "
    "name=\"section-name\">main</property><child>"
    "<object class=\"GtkShortcutsGroup\"><property name=\"title\">Spirewright</property>");

  for (guint i = 0; i < G_N_ELEMENTS (shortcuts); i++) {
    g_autofree char *row =
      g_markup_printf_escaped ("<child><object class=\"GtkShortcutsShortcut\"><property "
                               "name=\"title\">%s</property><property "
                               "name=\"accelerator\">%s</property></object></child>",
                               _ (shortcuts[i].title),
                               shortcuts[i].keys);
    g_string_append (ui, row);
  }
  g_string_append (ui, "</object></child></object></child></object></interface>");
  g_autoptr (GtkBuilder) builder = gtk_builder_new_from_string (ui->str, -1);
  GtkWindow *window = GTK_WINDOW (gtk_builder_get_object (builder, "window"));
  gtk_window_set_transient_for (window, GTK_WINDOW (widget));
  gtk_window_present (window);
}

static void
close_window (GtkWidget *widget, const char *name, GVariant *parameter)
{
  gtk_window_close (GTK_WINDOW (widget));
}

static const struct {
  const char *name;
  const char *parameter;
  GtkWidgetActionActivateFunc run;
  gboolean (*enabled) (SwDocument *document);
  const char *accels[3];
} actions[] = {
  { "win.new", NULL, new_design, always, { "<Control>n" } },
  { "win.open", NULL, open_design, always, { "<Control>o" } },
  { "win.open-recent", "s", open_recent, always, { NULL } },
  { "win.save", NULL, save, always, { "<Control>s" } },
  { "win.save-as", NULL, save_as, always, { "<Control><Shift>s" } },
  { "win.undo", NULL, undo, sw_document_can_undo, { "<Control>z" } },
  { "win.redo", NULL, redo, sw_document_can_redo, { "<Control><Shift>z", "<Control>y" } },
  { "win.metric", NULL, metric, always, { "<Control>u" } },
  { "win.find", NULL, find, always, { "<Control>f" } },
  { "win.page", "s", show_page, always, { NULL } },
  { "win.help", NULL, help, always, { "F1" } },
  { "win.shortcuts", NULL, show_shortcuts, always, { "<Control>question" } },
  { "win.about", NULL, about, always, { NULL } },
  { "win.close", NULL, close_window, always, { "<Control>w" } },
};

void
sw_window_actions_install (GtkWidgetClass *widget_class)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_class_install_action (widget_class,
                                     actions[i].name,
                                     actions[i].parameter,
                                     actions[i].run);
}

void
sw_window_actions_update (SwWindow *self)
{
  for (guint i = 0; i < G_N_ELEMENTS (actions); i++)
    gtk_widget_action_set_enabled (GTK_WIDGET (self),
                                   actions[i].name,
                                   actions[i].enabled (sw_window_get_document (self)));
}

void
sw_window_actions_set_accels (GtkApplication *application)
{
  static const char *const pages[] = { "plan", "evening", "parts", "sheets" };

  for (guint i = 0; i < G_N_ELEMENTS (actions); i++) {
    if (actions[i].accels[0] != NULL)
      gtk_application_set_accels_for_action (application, actions[i].name, actions[i].accels);
  }
  for (guint i = 0; i < G_N_ELEMENTS (pages); i++) {
    g_autofree char *action = g_strdup_printf ("win.page::%s", pages[i]);
    g_autofree char *key = g_strdup_printf ("<Alt>%u", i + 1);
    const char *keys[] = { key, NULL };
    gtk_application_set_accels_for_action (application, action, keys);
  }
}
