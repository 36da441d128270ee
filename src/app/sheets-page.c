// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/packet-save.h"
#include "app/pages.h"
#include "packet/process-locale.h"

#include <glib/gi18n.h>

#define SW_TYPE_SHEETS_PAGE (sw_sheets_page_get_type ())
G_DECLARE_FINAL_TYPE (SwSheetsPage, sw_sheets_page, SW, SHEETS_PAGE, GtkWidget)

#define MARGIN 16          /* px round the sheet on the desk */
#define READING_WIDTH 1000 /* px: a sheet is not shown wider than this */

struct _SwSheetsPage {
  GtkWidget parent_instance;

  SwDocument *document;   /* owned */
  SwSolution *solution;   /* owned: the one the sheets show */
  SwSheets *sheets;       /* owned, nullable */
  cairo_surface_t *drawn; /* owned, nullable: the sheet as last drawn */
  gboolean stale;

  /* template */
  AdwToastOverlay *toasts;
  GtkListView *list;
  GtkScrolledWindow *scroller;
  GtkDrawingArea *area;
  GtkDropDown *paper;
  GtkLabel *note;
  GtkSpinner *busy;
  GtkButton *save;
};

G_DEFINE_FINAL_TYPE (SwSheetsPage, sw_sheets_page, GTK_TYPE_WIDGET)

static GtkSingleSelection *
selection_of (SwSheetsPage *self)
{
  return GTK_SINGLE_SELECTION (gtk_list_view_get_model (self->list));
}

/* Returns: (nullable): the sheet that is shown. */
static const SwSheet *
shown_sheet (SwSheetsPage *self)
{
  guint selected = gtk_single_selection_get_selected (selection_of (self));

  if (self->sheets == NULL || selected >= sw_sheets_count (self->sheets))
    return NULL;
  return sw_sheets_get (self->sheets, selected);
}

static double
shown_width (int width)
{
  return MAX (MIN (width - 2 * MARGIN, READING_WIDTH), 50);
}

static void
fit_height (SwSheetsPage *self)
{
  const SwSheet *sheet = shown_sheet (self);
  double width = shown_width (gtk_widget_get_width (GTK_WIDGET (self->scroller)));

  if (sheet != NULL)
    gtk_drawing_area_set_content_height (self->area,
                                         (int) (width * sheet->height_pt / sheet->width_pt) +
                                           2 * MARGIN);
}

static void
show_selected (SwSheetsPage *self)
{
  const SwSheet *sheet = shown_sheet (self);

  g_clear_pointer (&self->drawn, cairo_surface_destroy);
  if (sheet == NULL)
    return;
  gtk_label_set_text (self->note,
                      sheet->true_size ? _ ("True size: print at 100 %, never “fit to page”.")
                                       : "");
  gtk_accessible_update_property (GTK_ACCESSIBLE (self->area),
                                  GTK_ACCESSIBLE_PROPERTY_LABEL,
                                  sheet->title,
                                  -1);
  fit_height (self);
  gtk_adjustment_set_value (gtk_scrolled_window_get_vadjustment (self->scroller), 0);
  gtk_widget_queue_draw (GTK_WIDGET (self->area));
}

static void
draw_sheet (SwSheetsPage *self, const SwSheet *sheet, double width, int factor)
{
  double scale = width / sheet->width_pt;
  int pixels_wide = (int) (width * factor);
  int pixels_high = (int) (scale * sheet->height_pt * factor);

  if (self->drawn != NULL && cairo_image_surface_get_width (self->drawn) == pixels_wide)
    return;
  g_clear_pointer (&self->drawn, cairo_surface_destroy);
  self->drawn = cairo_image_surface_create (CAIRO_FORMAT_RGB24, pixels_wide, pixels_high);
  cairo_t *cr = cairo_create (self->drawn);
  cairo_set_source_rgb (cr, 1, 1, 1);
  cairo_paint (cr);
  cairo_scale (cr, scale * factor, scale * factor);
  sw_sheets_draw (self->sheets, gtk_single_selection_get_selected (selection_of (self)), cr);
  cairo_destroy (cr);
}

static void
draw_cb (GtkDrawingArea *area, cairo_t *cr, int width, int height, gpointer data)
{
  SwSheetsPage *self = data;
  const SwSheet *sheet = shown_sheet (self);
  int factor = gtk_widget_get_scale_factor (GTK_WIDGET (area));
  double wide = shown_width (width);

  if (sheet == NULL)
    return;
  draw_sheet (self, sheet, wide, factor);
  cairo_translate (cr, (int) ((width - wide) / 2), MARGIN);
  cairo_scale (cr, 1.0 / factor, 1.0 / factor);
  cairo_set_source_surface (cr, self->drawn, 0, 0);
  cairo_paint (cr);
}

static void
setup_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkWidget *label = gtk_label_new (NULL);

  gtk_label_set_xalign (GTK_LABEL (label), 0);
  gtk_label_set_ellipsize (GTK_LABEL (label), PANGO_ELLIPSIZE_END);
  gtk_list_item_set_child (item, label);
}

static void
bind_cb (GtkSignalListItemFactory *factory, GtkListItem *item, gpointer data)
{
  GtkStringObject *name = gtk_list_item_get_item (item);
  GtkWidget *label = gtk_list_item_get_child (item);

  gtk_label_set_text (GTK_LABEL (label), gtk_string_object_get_string (name));
  gtk_widget_set_tooltip_text (label, gtk_string_object_get_string (name));
}

static GtkStringList *
titles_of (const SwSheets *sheets)
{
  GtkStringList *titles = gtk_string_list_new (NULL);

  for (guint i = 0; i < sw_sheets_count (sheets); i++) {
    g_autofree char *title =
      g_strdup_printf ("%u  %s", i + 1, sw_sheets_get (sheets, i)->title);
    gtk_string_list_append (titles, title);
  }
  return titles;
}

/* The list is laid anew only when its titles change, so that the place in it stays. */
static void
show_titles (SwSheetsPage *self)
{
  GtkSingleSelection *selection = selection_of (self);
  guint selected = gtk_single_selection_get_selected (selection);
  g_autoptr (GtkStringList) titles = titles_of (self->sheets);

  gtk_single_selection_set_model (selection, G_LIST_MODEL (titles));
  if (selected != GTK_INVALID_LIST_POSITION)
    gtk_single_selection_set_selected (selection,
                                       MIN (selected, sw_sheets_count (self->sheets) - 1));
}

static void
refresh (SwSheetsPage *self)
{
  SwPaper paper = gtk_drop_down_get_selected (self->paper) == 0 ? SW_PAPER_A4 : SW_PAPER_LETTER;

  g_clear_pointer (&self->sheets, sw_sheets_free);
  g_clear_pointer (&self->solution, sw_solution_unref);
  self->solution =
    sw_solution_ref ((SwSolution *) (guintptr) sw_document_get_solution (self->document));
  self->sheets = sw_sheets_new (self->solution, paper, sw_language_of_process ());
  self->stale = FALSE;
  show_titles (self);
  show_selected (self);
}

static void
changed_cb (SwSheetsPage *self)
{
  self->stale = TRUE;
  if (gtk_widget_get_mapped (GTK_WIDGET (self)))
    refresh (self);
}

static void
tell (SwSheetsPage *self, const char *text)
{
  AdwToast *toast = adw_toast_new (text);

  adw_toast_set_timeout (toast, 8);
  adw_toast_overlay_add_toast (self->toasts, toast);
}

static void
saved_cb (GObject *source, GAsyncResult *result, gpointer data)
{
  g_autoptr (SwSheetsPage) self = data;
  g_autoptr (GError) error = NULL;
  gboolean saved = sw_packet_save_finish (result, &error);

  gtk_spinner_stop (self->busy);
  gtk_widget_set_sensitive (GTK_WIDGET (self->save), TRUE);
  if (saved) {
    tell (self, _ ("The build packet is saved."));
    return;
  }
  /* Translators: why a folder could not be written. */
  g_autofree char *text =
    g_strdup_printf (_ ("Not saved: %s. Choose another name."), error->message);
  tell (self, text);
}

static void
sw_sheets_page_save_to (SwSheetsPage *self, const char *folder)
{
  SwPaper paper = gtk_drop_down_get_selected (self->paper) == 0 ? SW_PAPER_A4 : SW_PAPER_LETTER;

  gtk_spinner_start (self->busy);
  gtk_widget_set_sensitive (GTK_WIDGET (self->save), FALSE);
  sw_packet_save_async (sw_document_get_solution (self->document)->design,
                        folder,
                        paper,
                        NULL,
                        saved_cb,
                        g_object_ref (self));
}

static void
chosen_cb (GtkNativeDialog *dialog, int response, gpointer data)
{
  SwSheetsPage *self = data;
  g_autoptr (GFile) folder = NULL;

  if (response == GTK_RESPONSE_ACCEPT) {
    folder = gtk_file_chooser_get_file (GTK_FILE_CHOOSER (dialog));
    if (folder != NULL && g_file_peek_path (folder) != NULL)
      sw_sheets_page_save_to (self, g_file_peek_path (folder));
  }
  g_object_unref (dialog);
}

static char *
folder_name (const char *title)
{
  g_autofree char *plain = g_strdelimit (g_strstrip (g_strdup (title)), "/\\:*?\"<>|", '-');

  /* Translators: the folder's name: "Library lawn build packet". */
  return g_strdup_printf (_ ("%s build packet"), *plain == '\0' ? _ ("Tree") : plain);
}

static void
choose_folder (SwSheetsPage *self)
{
  GtkWindow *window = GTK_WINDOW (gtk_widget_get_root (GTK_WIDGET (self)));
  GtkFileChooserNative *chooser =
    gtk_file_chooser_native_new (_ ("Save the build packet as a folder"),
                                 window,
                                 GTK_FILE_CHOOSER_ACTION_SAVE,
                                 _ ("_Save"),
                                 _ ("_Cancel"));
  g_autofree char *name = folder_name (sw_document_get_design (self->document)->title);

  gtk_native_dialog_set_modal (GTK_NATIVE_DIALOG (chooser), TRUE);
  gtk_file_chooser_set_current_name (GTK_FILE_CHOOSER (chooser), name);
  g_signal_connect_object (chooser, "response", G_CALLBACK (chosen_cb), self, 0);
  gtk_native_dialog_show (GTK_NATIVE_DIALOG (chooser));
}

/* "sheets.save-to" takes the folder; scripts and tests save without a dialog. */
static void
save_to_action (GtkWidget *widget, const char *name, GVariant *folder)
{
  sw_sheets_page_save_to (SW_SHEETS_PAGE (widget), g_variant_get_string (folder, NULL));
}

static void
sw_sheets_page_map (GtkWidget *widget)
{
  SwSheetsPage *self = SW_SHEETS_PAGE (widget);

  if (self->stale)
    refresh (self);
  GTK_WIDGET_CLASS (sw_sheets_page_parent_class)->map (widget);
}

static void
sw_sheets_page_size_allocate (GtkWidget *widget, int width, int height, int baseline)
{
  GTK_WIDGET_CLASS (sw_sheets_page_parent_class)
    ->size_allocate (widget, width, height, baseline);
  fit_height (SW_SHEETS_PAGE (widget));
}

static void
sw_sheets_page_dispose (GObject *object)
{
  SwSheetsPage *self = SW_SHEETS_PAGE (object);

  if (self->document != NULL)
    g_signal_handlers_disconnect_by_data (self->document, self);
  g_clear_object (&self->document);
  g_clear_pointer (&self->drawn, cairo_surface_destroy);
  g_clear_pointer (&self->sheets, sw_sheets_free);
  g_clear_pointer (&self->solution, sw_solution_unref);
  if (self->toasts != NULL)
    gtk_widget_unparent (GTK_WIDGET (self->toasts));
  self->toasts = NULL;
  G_OBJECT_CLASS (sw_sheets_page_parent_class)->dispose (object);
}

static void
bind_template (GtkWidgetClass *widget_class)
{
  gtk_widget_class_set_template_from_resource (widget_class,
                                               "/org/spirewright/Spirewright/sheets-page.ui");
  gtk_widget_class_bind_template_child (widget_class, SwSheetsPage, toasts);
  gtk_widget_class_bind_template_child (widget_class, SwSheetsPage, list);
  gtk_widget_class_bind_template_child (widget_class, SwSheetsPage, scroller);
  gtk_widget_class_bind_template_child (widget_class, SwSheetsPage, area);
  gtk_widget_class_bind_template_child (widget_class, SwSheetsPage, paper);
  gtk_widget_class_bind_template_child (widget_class, SwSheetsPage, note);
  gtk_widget_class_bind_template_child (widget_class, SwSheetsPage, busy);
  gtk_widget_class_bind_template_child (widget_class, SwSheetsPage, save);
}

static void
sw_sheets_page_class_init (SwSheetsPageClass *klass)
{
  GtkWidgetClass *widget_class = GTK_WIDGET_CLASS (klass);

  G_OBJECT_CLASS (klass)->dispose = sw_sheets_page_dispose;
  widget_class->map = sw_sheets_page_map;
  widget_class->size_allocate = sw_sheets_page_size_allocate;
  bind_template (widget_class);
  gtk_widget_class_install_action (widget_class, "sheets.save-to", "s", save_to_action);
}

static void
sw_sheets_page_init (SwSheetsPage *self)
{
  GtkListItemFactory *factory = gtk_signal_list_item_factory_new ();
  GtkSingleSelection *selection = gtk_single_selection_new (NULL);

  gtk_widget_init_template (GTK_WIDGET (self));
  g_signal_connect (factory, "setup", G_CALLBACK (setup_cb), NULL);
  g_signal_connect (factory, "bind", G_CALLBACK (bind_cb), NULL);
  gtk_list_view_set_factory (self->list, factory);
  gtk_list_view_set_model (self->list, GTK_SELECTION_MODEL (selection));
  g_object_unref (factory);
  g_object_unref (selection);
  gtk_drawing_area_set_draw_func (self->area, draw_cb, self, NULL);
  gtk_drop_down_set_selected (self->paper, sw_paper_of_process () == SW_PAPER_A4 ? 0 : 1);
  g_signal_connect_swapped (selection, "notify::selected", G_CALLBACK (show_selected), self);
  g_signal_connect_swapped (self->paper, "notify::selected", G_CALLBACK (changed_cb), self);
  g_signal_connect_swapped (self->save, "clicked", G_CALLBACK (choose_folder), self);
}

GtkWidget *
sw_sheets_page_new (SwDocument *document)
{
  SwSheetsPage *self = g_object_new (SW_TYPE_SHEETS_PAGE, NULL);

  self->document = g_object_ref (document);
  self->stale = TRUE;
  g_signal_connect_swapped (document, "changed", G_CALLBACK (changed_cb), self);
  return GTK_WIDGET (self);
}
