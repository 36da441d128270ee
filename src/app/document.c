// SPDX-License-Identifier: GPL-3.0-or-later
/* Undo is a list of designs with `place` on the present one. While a step is open (a drag),
 * edits replace the design at `place`; `before` and `aside` are what giving it up goes back to.
 */
#include "app/document.h"

#include "engine/design-file.h"
#include "engine/design-keys.h"
#include "engine/edit.h"
#include "engine/own-rows.h"
#include "engine/starts.h"
#include "packet/process-catalogue.h"

#include <glib/gi18n.h>
#include <string.h>

typedef struct {
  SwDesign *design; /* owned */
  char *label;      /* owned, nullable: what led to it */
} Step;

struct _SwDocument {
  GObject parent_instance;

  GPtrArray *steps; /* owned: Step */
  guint place;
  gboolean open;      /* the step at `place` is still being made */
  SwSolution *before; /* owned, nullable: where the open step began */
  GPtrArray *aside;   /* owned, nullable: what could be redone when it began */

  SwSolution *solution; /* owned: of the design at `place` */
  SwDesign *saved;      /* owned, nullable: as it stands in the file */
  GFile *file;          /* owned, nullable */
  char *refusal;        /* owned, nullable */
  guint rest;           /* source: the hand rests, time for the findings' remedies */
};

/* Shorter than a person takes from the end of a move to reading what to do about a finding. */
#define REST_MS 150

G_DEFINE_FINAL_TYPE (SwDocument, sw_document, G_TYPE_OBJECT)

enum { CHANGED, N_SIGNALS };

static guint signals[N_SIGNALS];

static void
step_free (gpointer data)
{
  Step *step = data;

  sw_design_unref (step->design);
  g_free (step->label);
  g_free (step);
}

static Step *
step_new (SwDesign *design, const char *label)
{
  Step *step = g_new (Step, 1);

  *step = (Step){ sw_design_ref (design), g_strdup (label) };
  return step;
}

static Step *
step_at (SwDocument *self, guint place)
{
  return g_ptr_array_index (self->steps, place);
}

static SwDesign *
present (SwDocument *self)
{
  return step_at (self, self->place)->design;
}

/* "shape.crown_height_m: locked" names the key for files; a person reads its label. */
static char *
in_words (const char *why)
{
  const char *colon = strstr (why, ": ");
  g_autofree char *path = colon == NULL ? NULL : g_strndup (why, colon - why);
  const SwKey *key = path == NULL ? NULL : sw_key_find (path);

  return key == NULL ? g_strdup (why) : g_strconcat (_ (key->label), colon, NULL);
}

static gboolean
refuse (SwDocument *self, const char *why)
{
  g_free (self->refusal);
  self->refusal = in_words (why);
  g_signal_emit (self, signals[CHANGED], 0);
  return FALSE;
}

/* Returns: (transfer full) (nullable): the solution; the refusal says why there is none. */
static SwSolution *
solve (SwDesign *design, GError **error)
{
  const SwCatalogue *catalogue = sw_catalogue_of_process (error);

  return catalogue == NULL ? NULL : sw_solution_new (design, catalogue, error);
}

static SwSolution *
solve_passing (SwDesign *design, GError **error)
{
  const SwCatalogue *catalogue = sw_catalogue_of_process (error);

  return catalogue == NULL ? NULL : sw_solution_new_passing (design, catalogue, error);
}

/* Returns: (transfer full): the design with the own rows that it uses. */
static SwDesign *
with_rows (SwDesign *design)
{
  const SwCatalogue *catalogue = sw_catalogue_of_process (NULL); /* solve () says what fails */

  return catalogue == NULL ? sw_design_ref (design) : sw_own_rows_carry (design, catalogue);
}

static void
show_solution (SwDocument *self, SwSolution *solution)
{
  g_clear_pointer (&self->solution, sw_solution_unref);
  self->solution = solution;
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
take_solution (SwDocument *self, SwSolution *solution)
{
  g_clear_pointer (&self->refusal, g_free);
  show_solution (self, solution);
}

/* Returns: whether the solution changed: it has its findings' remedies now. */
static gboolean
find_remedies (SwDocument *self)
{
  g_clear_handle_id (&self->rest, g_source_remove);
  if (self->solution->remedied)
    return FALSE;
  show_solution (self, solve (present (self), NULL)); /* it was solved before */
  return TRUE;
}

static gboolean
rest_cb (gpointer data)
{
  find_remedies (data);
  return G_SOURCE_REMOVE;
}

static void
await_rest (SwDocument *self)
{
  g_clear_handle_id (&self->rest, g_source_remove);
  self->rest = g_timeout_add (REST_MS, rest_cb, self);
}

static void
move_steps (GPtrArray *from, guint place, GPtrArray *to)
{
  while (from->len > place)
    g_ptr_array_add (to, g_ptr_array_steal_index (from, place));
}

static void
forget_open_step (SwDocument *self)
{
  self->open = FALSE;
  g_clear_pointer (&self->before, sw_solution_unref);
  g_clear_pointer (&self->aside, g_ptr_array_unref);
}

/* Takes the open step out of the list again. */
static void
withdraw_step (SwDocument *self)
{
  g_ptr_array_set_size (self->steps, self->place);
  self->place--;
  move_steps (self->aside, 0, self->steps);
}

static void
open_step (SwDocument *self, SwDesign *design, const char *label)
{
  self->before = sw_solution_ref (self->solution);
  self->aside = g_ptr_array_new_with_free_func (step_free);
  move_steps (self->steps, self->place + 1, self->aside);
  g_ptr_array_add (self->steps, step_new (design, label));
  self->place++;
  self->open = TRUE;
}

/* A step that ended where it began is none. Returns: whether one was open. */
static gboolean
close_step (SwDocument *self)
{
  if (!self->open)
    return FALSE;
  if (sw_design_equal (present (self), self->before->design))
    withdraw_step (self);
  forget_open_step (self);
  return TRUE;
}

/* Goes on in the open step, or opens a new one. */
static void
put (SwDocument *self, SwDesign *design, const char *label)
{
  if (self->open && g_strcmp0 (step_at (self, self->place)->label, label) == 0) {
    Step *step = step_at (self, self->place);
    sw_design_ref (design);
    sw_design_unref (step->design);
    step->design = design;
    return;
  }
  close_step (self);
  open_step (self, design, label);
  if (label == NULL)
    close_step (self);
}

gboolean
sw_document_edit_design (SwDocument *self, SwDesign *edited, const char *label)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = with_rows (edited);

  if (sw_design_equal (design, present (self))) {
    if (self->refusal != NULL) {
      g_clear_pointer (&self->refusal, g_free);
      g_signal_emit (self, signals[CHANGED], 0);
    }
    return TRUE;
  }
  SwSolution *solution =
    label == NULL ? solve (design, &error) : solve_passing (design, &error);
  if (solution == NULL)
    return refuse (self, error->message);
  put (self, design, label);
  take_solution (self, solution);
  if (label != NULL)
    await_rest (self);
  return TRUE;
}

static gboolean
take_edit (SwDocument *self, SwDesign *edited, const char *label, GError *error)
{
  g_autoptr (SwDesign) design = edited;

  if (design == NULL)
    return refuse (self, error->message);
  return sw_document_edit_design (self, design, label);
}

gboolean
sw_document_edit_number (SwDocument *self, const char *path, double value, const char *label)
{
  g_autoptr (GError) error = NULL;
  SwDesign *edited = sw_edit_number (present (self), path, value, &error);

  return take_edit (self, edited, label, error);
}

gboolean
sw_document_edit_text (SwDocument *self, const char *path, const char *value, const char *label)
{
  g_autoptr (GError) error = NULL;
  SwDesign *edited = sw_edit_text (present (self), path, value, &error);

  return take_edit (self, edited, label, error);
}

void
sw_document_end_edit (SwDocument *self)
{
  gboolean news = close_step (self) || self->refusal != NULL;

  g_clear_pointer (&self->refusal, g_free);
  if (!find_remedies (self) && news)
    g_signal_emit (self, signals[CHANGED], 0);
}

void
sw_document_cancel_edit (SwDocument *self)
{
  if (!self->open)
    return;
  SwSolution *before = g_steal_pointer (&self->before);
  withdraw_step (self);
  forget_open_step (self);
  take_solution (self, before);
  find_remedies (self);
}

const SwSolution *
sw_document_get_before (SwDocument *self)
{
  return self->before;
}

static void
go_to (SwDocument *self, guint place)
{
  self->place = place;
  take_solution (self, solve (present (self), NULL)); /* it was solved before */
}

gboolean
sw_document_can_undo (SwDocument *self)
{
  return self->place > 0;
}

gboolean
sw_document_can_redo (SwDocument *self)
{
  return self->place + 1 < self->steps->len;
}

void
sw_document_undo (SwDocument *self)
{
  close_step (self);
  if (sw_document_can_undo (self))
    go_to (self, self->place - 1);
}

void
sw_document_redo (SwDocument *self)
{
  close_step (self);
  if (sw_document_can_redo (self))
    go_to (self, self->place + 1);
}

const char *
sw_document_get_undo_label (SwDocument *self)
{
  return sw_document_can_undo (self) ? step_at (self, self->place)->label : NULL;
}

const char *
sw_document_get_redo_label (SwDocument *self)
{
  return sw_document_can_redo (self) ? step_at (self, self->place + 1)->label : NULL;
}

static void
set_saved (SwDocument *self)
{
  g_clear_pointer (&self->saved, sw_design_unref);
  self->saved = sw_design_ref (present (self));
}

static void
begin (SwDocument *self, SwDesign *design, SwSolution *solution)
{
  forget_open_step (self);
  g_ptr_array_set_size (self->steps, 0);
  g_ptr_array_add (self->steps, step_new (design, NULL));
  self->place = 0;
  set_saved (self);
  take_solution (self, solution);
}

void
sw_document_reset (SwDocument *self, SwDesign *start)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = with_rows (start);
  SwSolution *solution = solve (design, &error);

  if (solution == NULL) {
    refuse (self, error->message);
    return;
  }
  g_clear_object (&self->file);
  begin (self, design, solution);
}

gboolean
sw_document_load (SwDocument *self, GFile *file, GError **error)
{
  const char *path = g_file_peek_path (file);

  if (path == NULL) {
    g_set_error (error,
                 G_IO_ERROR,
                 G_IO_ERROR_NOT_SUPPORTED,
                 "only files on this computer can be opened");
    return FALSE;
  }
  g_autoptr (SwDesign) loaded = sw_design_load (path, error);
  g_autoptr (SwDesign) design = loaded == NULL ? NULL : with_rows (loaded);
  SwSolution *solution = design == NULL ? NULL : solve (design, error);
  if (solution == NULL)
    return FALSE;
  g_set_object (&self->file, file);
  begin (self, design, solution);
  return TRUE;
}

gboolean
sw_document_save (SwDocument *self, GFile *file, GError **error)
{
  const char *path = g_file_peek_path (file);

  if (path == NULL) {
    g_set_error (error,
                 G_IO_ERROR,
                 G_IO_ERROR_NOT_SUPPORTED,
                 "only files on this computer can be written");
    return FALSE;
  }
  if (!sw_design_save (present (self), path, error))
    return FALSE;
  g_set_object (&self->file, file);
  close_step (self);
  set_saved (self);
  g_signal_emit (self, signals[CHANGED], 0);
  return TRUE;
}

GFile *
sw_document_get_file (SwDocument *self)
{
  return self->file;
}

gboolean
sw_document_get_modified (SwDocument *self)
{
  return !sw_design_equal (self->saved, present (self));
}

const SwDesign *
sw_document_get_design (SwDocument *self)
{
  return present (self);
}

const SwSolution *
sw_document_get_solution (SwDocument *self)
{
  return self->solution;
}

const char *
sw_document_get_refusal (SwDocument *self)
{
  return self->refusal;
}

static void
sw_document_finalize (GObject *object)
{
  SwDocument *self = SW_DOCUMENT (object);

  g_clear_handle_id (&self->rest, g_source_remove);
  forget_open_step (self);
  g_clear_pointer (&self->steps, g_ptr_array_unref);
  g_clear_pointer (&self->solution, sw_solution_unref);
  g_clear_pointer (&self->saved, sw_design_unref);
  g_clear_object (&self->file);
  g_clear_pointer (&self->refusal, g_free);
  G_OBJECT_CLASS (sw_document_parent_class)->finalize (object);
}

static void
sw_document_class_init (SwDocumentClass *klass)
{
  G_OBJECT_CLASS (klass)->finalize = sw_document_finalize;
  signals[CHANGED] = g_signal_new ("changed",
                                   G_TYPE_FROM_CLASS (klass),
                                   G_SIGNAL_RUN_LAST,
                                   0,
                                   NULL,
                                   NULL,
                                   NULL,
                                   G_TYPE_NONE,
                                   0);
}

static void
sw_document_init (SwDocument *self)
{
  g_autoptr (GError) error = NULL;
  g_autoptr (SwDesign) design = sw_start_new ("lawn", &error);
  SwSolution *solution = design == NULL ? NULL : solve (design, &error);

  if (solution == NULL)
    g_error ("the built-in start can't be solved: %s", error->message);
  self->steps = g_ptr_array_new_with_free_func (step_free);
  begin (self, design, solution);
}

SwDocument *
sw_document_new (void)
{
  return g_object_new (SW_TYPE_DOCUMENT, NULL);
}
