// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/window.h"

#include "app/findings-button.h"
#include "app/pages.h"
#include "app/plan-page.h"
#include "app/title-button.h"
#include "app/window-actions.h"

#include <glib/gi18n.h>

#define SCHEMA "org.spirewright.Spirewright"
#define RECENT_MOST 8
/* px: what the header has no room for in a narrower window */
#define SAVE_ICON_BELOW 1000 /* the word "Save" */
#define SWITCHER_BELOW 960   /* the pages' names, which go below */

struct _SwWindow {
  AdwApplicationWindow parent_instance;

  SwDocument *document; /* owned */
  GSettings *settings;  /* owned, nullable: not installed */
  GtkWidget *plan;      /* borrowed */
  GtkWindow *start;     /* borrowed, nullable: the questions of a new design */
  gboolean leaving;     /* the guard was passed: close without asking again */
  int width;            /* for which the header stands as it does */
  guint turning;        /* idle that changes it */

  /* template */
  AdwSplitButton *open;
  AdwHeaderBar *header;
  GtkButton *save, *undo, *redo;
  GtkBox *findings_place;
  GtkRevealer *problem;
  GtkLabel *problem_text;
  GtkButton *problem_close;
  GtkStack *stack;
  GtkStackSwitcher *switcher, *low_switcher;
};

G_DEFINE_FINAL_TYPE (SwWindow, sw_window, ADW_TYPE_APPLICATION_WINDOW)

SwDocument *
sw_window_get_document (SwWindow *self)
{
  return self->document;
}

void
sw_window_show_problem (SwWindow *self, const char *text)
{
  gtk_label_set_text (self->problem_text, text == NULL ? "" : text);
  gtk_revealer_set_reveal_child (self->problem, text != NULL);
}

static void
hide_problem (SwWindow *self)
{
  sw_window_show_problem (self, NULL);
}

static void
show_undo (GtkButton *button, const char *verb, const char *label)
{
  g_autofree char *words =
    label == NULL ? g_strdup (verb) : g_strdup_printf ("%s: %s", verb, label);

  if (g_strcmp0 (gtk_widget_get_tooltip_text (GTK_WIDGET (button)), words) != 0)
    gtk_widget_set_tooltip_text (GTK_WIDGET (button), words);
}

static void
show (SwWindow *self)
{
  const char *title = sw_document_get_design (self->document)->title;

  if (g_strcmp0 (gtk_window_get_title (GTK_WINDOW (self)), title) != 0)
    gtk_window_set_title (GTK_WINDOW (self), title);
  show_undo (self->undo, _ ("Undo"), sw_document_get_undo_label (self->document));
  show_undo (self->redo, _ ("Redo"), sw_document_get_redo_label (self->document));
  sw_window_actions_update (self);
}

static void
fill_recent (SwWindow *self)
{
  g_autoptr (GMenu) menu = g_menu_new ();
  GList *items = gtk_recent_manager_get_items (gtk_recent_manager_get_default ());
  guint n = 0;

  for (GList *item = items; item != NULL && n < RECENT_MOST; item = item->next) {
    const char *uri = gtk_recent_info_get_uri (item->data);
    if (!g_str_has_suffix (uri, ".spire") || !gtk_recent_info_exists (item->data))
      continue;
    g_autoptr (GMenuItem) entry =
      g_menu_item_new (gtk_recent_info_get_display_name (item->data), NULL);
    g_menu_item_set_action_and_target (entry, "win.open-recent", "s", uri);
    g_menu_append_item (menu, entry);
    n++;
  }
  g_list_free_full (items, (GDestroyNotify) gtk_recent_info_unref);
  if (n == 0)
    g_menu_append (menu, _ ("Nothing opened yet"), NULL);
  adw_split_button_set_menu_model (self->open, G_MENU_MODEL (menu));
}

static void
remember (SwWindow *self, GFile *file)
{
  g_autofree char *uri = g_file_get_uri (file);

  gtk_recent_manager_add_item (gtk_recent_manager_get_default (), uri);
  fill_recent (self);
}

static void
show_file_problem (SwWindow *self, GFile *file, const GError *error)
{
  g_autofree char *name = g_file_get_basename (file);
  /* Translators: file name; what is wrong with it, naming the key. */
  g_autofree char *text =
    g_strdup_printf (_ ("%s was not opened: %s. Nothing was changed."), name, error->message);

  sw_window_show_problem (self, text);
}

void
sw_window_open (SwWindow *self, GFile *file)
{
  g_autoptr (GError) error = NULL;

  if (!sw_document_load (self->document, file, &error)) {
    show_file_problem (self, file, error);
    return;
  }
  hide_problem (self);
  remember (self, file);
}

typedef struct {
  SwWindow *window; /* owned */
  SwWindowNext then;
  gpointer data;
} Next;

static Next *
next_new (SwWindow *self, SwWindowNext then, gpointer data)
{
  Next *next = g_new (Next, 1);

  *next = (Next){ g_object_ref (self), then, data };
  return next;
}

static void
next_run (Next *next, gboolean go_on)
{
  if (go_on && next->then != NULL)
    next->then (next->window, next->data);
  g_object_unref (next->window);
  g_free (next);
}

static gboolean
save_to (SwWindow *self, GFile *file)
{
  g_autoptr (GError) error = NULL;

  if (sw_document_save (self->document, file, &error)) {
    hide_problem (self);
    remember (self, file);
    return TRUE;
  }
  g_autofree char *name = g_file_get_basename (file);
  /* Translators: file name; why it could not be written. */
  g_autofree char *text = g_strdup_printf (_ ("%s was not saved: %s."), name, error->message);
  sw_window_show_problem (self, text);
  return FALSE;
}

static void
save_chosen_cb (GtkNativeDialog *dialog, int response, gpointer data)
{
  Next *next = data;
  gboolean saved = FALSE;

  if (response == GTK_RESPONSE_ACCEPT) {
    g_autoptr (GFile) file = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
    saved = save_to (next->window, file);
  }
  g_object_unref (dialog);
  next_run (next, saved);
}

static char *
suggested_name (SwWindow *self)
{
  g_autofree char *plain =
    g_strdelimit (g_strstrip (g_strdup (sw_document_get_design (self->document)->title)),
                  "/\\:*?\"<>|\n",
                  '-');

  return g_strdup_printf ("%s.spire", *plain == '\0' ? _ ("Tree") : plain);
}

static void
ask_name_and_save (SwWindow *self, SwWindowNext then, gpointer data)
{
  GtkFileChooserNative *chooser = gtk_file_chooser_native_new (_ ("Save the design"),
                                                               GTK_WINDOW (self),
                                                               GTK_FILE_CHOOSER_ACTION_SAVE,
                                                               _ ("_Save"),
                                                               _ ("_Cancel"));
  g_autofree char *name = suggested_name (self);

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  g_signal_connect (chooser,
                    "response",
                    G_CALLBACK (save_chosen_cb),
                    next_new (self, then, data));
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* A number that is still being typed counts: its entry takes it when it loses the focus. */
static void
finish_typing (SwWindow *self)
{
  gtk_window_set_focus (GTK_WINDOW (self), NULL);
}

void
sw_window_save (SwWindow *self, gboolean ask_name, SwWindowNext then, gpointer data)
{
  finish_typing (self);

  GFile *file = sw_document_get_file (self->document);

  if (ask_name || file == NULL)
    ask_name_and_save (self, then, data);
  else if (save_to (self, file) && then != NULL)
    then (self, data);
}

static void
guard_response_cb (AdwMessageDialog *dialog, const char *response, gpointer data)
{
  Next *next = data;

  /* What comes next may end the window while the dialog still stands on it. */
  gtk_window_set_transient_for (GTK_WINDOW (dialog), NULL);
  if (g_str_equal (response, "save")) {
    sw_window_save (next->window, FALSE, next->then, next->data);
    next_run (next, FALSE);
  } else {
    next_run (next, g_str_equal (response, "discard"));
  }
}

void
sw_window_guard (SwWindow *self, SwWindowNext go_on, gpointer data)
{
  finish_typing (self);
  if (!sw_document_get_modified (self->document)) {
    go_on (self, data);
    return;
  }
  GtkWidget *dialog = adw_message_dialog_new (GTK_WINDOW (self), _ ("Save the changes?"), NULL);
  adw_message_dialog_format_body (
    ADW_MESSAGE_DIALOG (dialog),
    _ ("“%s” was changed since it was saved. Without saving, the changes are lost."),
    sw_document_get_design (self->document)->title);
  adw_message_dialog_add_responses (ADW_MESSAGE_DIALOG (dialog),
                                    "cancel",
                                    _ ("_Cancel"),
                                    "discard",
                                    _ ("_Discard"),
                                    "save",
                                    _ ("_Save"),
                                    NULL);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog),
                                              "discard",
                                              ADW_RESPONSE_DESTRUCTIVE);
  adw_message_dialog_set_response_appearance (ADW_MESSAGE_DIALOG (dialog),
                                              "save",
                                              ADW_RESPONSE_SUGGESTED);
  adw_message_dialog_set_default_response (ADW_MESSAGE_DIALOG (dialog), "save");
  adw_message_dialog_set_close_response (ADW_MESSAGE_DIALOG (dialog), "cancel");
  g_signal_connect (dialog,
                    "response",
                    G_CALLBACK (guard_response_cb),
                    next_new (self, go_on, data));
  gtk_window_present (GTK_WINDOW (dialog));
}

static void
start_chosen_cb (SwDesign *design, gpointer data)
{
  SwWindow *self = data;

  if (design != NULL) {
    sw_document_reset (self->document, design);
    sw_design_unref (design);
    sw_window_show_page (self, "plan");
  }
  gtk_window_destroy (self->start);
}

void
sw_window_show_start (SwWindow *self)
{
  GtkWidget *window = adw_window_new (), *column = gtk_box_new (GTK_ORIENTATION_VERTICAL, 0),
            *bar = adw_header_bar_new ();

  adw_header_bar_set_title_widget (ADW_HEADER_BAR (bar),
                                   adw_window_title_new (_ ("New design"), NULL));
  gtk_box_append (GTK_BOX (column), bar);
  gtk_box_append (GTK_BOX (column), sw_start_page_new (start_chosen_cb, self));
  adw_window_set_content (ADW_WINDOW (window), column);
  gtk_window_set_transient_for (GTK_WINDOW (window), GTK_WINDOW (self));
  gtk_window_set_modal (GTK_WINDOW (window), TRUE);
  gtk_window_set_default_size (GTK_WINDOW (window), 1080, 640);
  g_set_weak_pointer (&self->start, GTK_WINDOW (window));
  gtk_window_present (GTK_WINDOW (window));
}

void
sw_window_show_page (SwWindow *self, const char *name)
{
  if (gtk_stack_get_child_by_name (self->stack, name) != NULL)
    gtk_stack_set_visible_child_name (self->stack, name);
}

void
sw_window_search (SwWindow *self)
{
  sw_window_show_page (self, "plan");
  sw_plan_page_search (SW_PLAN_PAGE (self->plan));
}

static void
key_chosen_cb (SwWindow *self, const char *path)
{
  sw_window_show_page (self, "plan");
  sw_plan_page_show_key (SW_PLAN_PAGE (self->plan), path);
}

static void
leave (SwWindow *self, gpointer unused)
{
  self->leaving = TRUE;
  gtk_window_close (GTK_WINDOW (self));
}

static void
keep_state (SwWindow *self)
{
  int width, height;

  if (self->settings == NULL)
    return;
  gtk_window_get_default_size (GTK_WINDOW (self), &width, &height);
  g_settings_set_int (self->settings, "window-width", width);
  g_settings_set_int (self->settings, "window-height", height);
  g_settings_set_string (self->settings,
                         "page",
                         gtk_stack_get_visible_child_name (self->stack));
}

static gboolean
sw_window_close_request (GtkWindow *window)
{
  SwWindow *self = SW_WINDOW (window);

  finish_typing (self);
  if (!self->leaving && sw_document_get_modified (self->document)) {
    sw_window_guard (self, leave, NULL);
    return TRUE;
  }
  keep_state (self);
  return GTK_WINDOW_CLASS (sw_window_parent_class)->close_request (window);
}

/* A missing schema would abort the program: it is looked for first. */
static GSettings *
find_settings (void)
{
  GSettingsSchemaSource *source = g_settings_schema_source_get_default ();
  g_autoptr (GSettingsSchema) schema =
    source == NULL ? NULL : g_settings_schema_source_lookup (source, SCHEMA, TRUE);

  return schema == NULL ? NULL : g_settings_new_full (schema, NULL, NULL);
}

static void
restore_state (SwWindow *self)
{
  self->settings = find_settings ();
  if (self->settings == NULL) {
    gtk_window_set_default_size (GTK_WINDOW (self), 1280, 800);
    return;
  }
  g_autofree char *page = g_settings_get_string (self->settings, "page");
  gtk_window_set_default_size (GTK_WINDOW (self),
                               g_settings_get_int (self->settings, "window-width"),
                               g_settings_get_int (self->settings, "window-height"));
  sw_window_show_page (self, page);
}

static void
add_pages (SwWindow *self)
{
  self->plan = sw_plan_page_new (self->document);
  gtk_stack_add_titled (self->stack, self->plan, "plan", _ ("Plan"));
  gtk_stack_add_titled (self->stack,
                        sw_evening_page_new (self->document),
                        "evening",
                        _ ("Evening"));
  gtk_stack_add_titled (self->stack, sw_parts_page_new (self->document), "parts", _ ("Parts"));
  gtk_stack_add_titled (self->stack,
                        sw_sheets_page_new (self->document),
                        "sheets",
                        _ ("Build sheets"));
}

static gboolean
turn_cb (gpointer data)
{
  SwWindow *self = data;
  gboolean below = self->width < SWITCHER_BELOW;

  self->turning = 0;
  gtk_widget_set_visible (GTK_WIDGET (self->switcher), !below);
  gtk_widget_set_visible (GTK_WIDGET (self->low_switcher), below);
  if (self->width < SAVE_ICON_BELOW)
    gtk_button_set_icon_name (self->save, "document-save-symbolic");
  else
    gtk_button_set_label (self->save, _ ("Save"));
  return G_SOURCE_REMOVE;
}

/* The header can't be changed while it is given its place: that waits for an idle moment. */
static void
sw_window_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  SwWindow *self = SW_WINDOW (widget);
  gboolean turns = (width < SWITCHER_BELOW) != (self->width < SWITCHER_BELOW) ||
                   (width < SAVE_ICON_BELOW) != (self->width < SAVE_ICON_BELOW);

  GTK_WIDGET_CLASS (sw_window_parent_class)->size_allocate (widget, width, height, baseline);
  self->width = width;
  if (turns && self->turning == 0)
    self->turning = g_idle_add (turn_cb, self);
}

static void
sw_window_dispose (GObject *object)
{
  SwWindow *self = SW_WINDOW (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_object (&self->settings);
  g_clear_weak_pointer (&self->start);
  g_clear_handle_id (&self->turning, g_source_remove);
  G_OBJECT_CLASS (sw_window_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/spirewright/Spirewright/window.ui");
  gtk_widget_class_bind_template_child (widget_class, SwWindow, open);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, save);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, undo);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, redo);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, header);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, findings_place);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, problem);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, problem_text);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, problem_close);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, stack);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, switcher);
  gtk_widget_class_bind_template_child (widget_class, SwWindow, low_switcher);
}

static void
sw_window_class_init (SwWindowClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_window_dispose;
  widget_class->size_allocate = sw_window_size_allocate;
  GTK_WINDOW_CLASS (klass)->close_request = sw_window_close_request;
  bind_template (widget_class);
  sw_window_actions_install (widget_class);
}

static void
pack_closely (GtkStackSwitcher *switcher)
{
  GtkLayoutManager *layout = gtk_widget_get_layout_manager (GTK_WIDGET (switcher));

  gtk_box_layout_set_homogeneous (GTK_BOX_LAYOUT (layout), FALSE);
}

static void
sw_window_init (SwWindow *self)
{
  gtk_widget_init_template (GTK_WIDGET (self));
  self->document = sw_document_new ();
  GtkWidget *findings = sw_findings_button_new (self->document);
  gtk_box_append (self->findings_place, findings);
  adw_header_bar_set_title_widget (self->header, sw_title_button_new (self->document));
  g_signal_connect_swapped (findings, "key-chosen", G_CALLBACK (key_chosen_cb), self);
  g_signal_connect_swapped (self->problem_close, "clicked", G_CALLBACK (hide_problem), self);
  g_signal_connect_swapped (self->document, "changed", G_CALLBACK (show), self);
  add_pages (self);
  pack_closely (self->switcher);
  pack_closely (self->low_switcher);
  self->width = G_MAXINT;
  fill_recent (self);
  restore_state (self);
  show (self);
}

SwWindow *
sw_window_new (GtkApplication *application)
{
  return g_object_new (SW_TYPE_WINDOW, "application", application, NULL);
}
