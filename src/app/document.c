// SPDX-License-Identifier: GPL-3.0-or-later
/* Undo is a list of designs with `place` on the present one. While a step is open (a drag),
 * edits replace the design at `place` and the one before it is where the step began.
 */
#include "app/document.h"

#include "engine/design-file.h"
#include "engine/edit.h"
#include "engine/starts.h"

typedef struct {
  SwDesign *design; /* owned */
  char *label;      /* owned, nullable: what led to it */
} Step;

struct _SwDocument {
  GObject parent_instance;

  GPtrArray *steps; /* owned: Step */
  guint place;
  gboolean open; /* the step at `place` is still being made */

  SwSolution *solution; /* owned: of the design at `place` */
  SwDesign *saved;      /* owned, nullable: as it stands in the file */
  GFile *file;          /* owned, nullable */
  char *refusal;        /* owned, nullable */
};

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

static gboolean
refuse (SwDocument *self, const char *why)
{
  g_free (self->refusal);
  self->refusal = g_strdup (why);
  g_signal_emit (self, signals[CHANGED], 0);
  return FALSE;
}

/* Returns: (transfer full) (nullable): the solution; the refusal says why there is none. */
static SwSolution *
solve (SwDesign *design, GError **error)
{
  const SwCatalogue *catalogue = sw_catalogue_builtin (error);

  return catalogue == NULL ? NULL : sw_solution_new (design, catalogue, error);
}

static void
take_solution (SwDocument *self, SwSolution *solution)
{
  g_clear_pointer (&self->solution, sw_solution_unref);
  self->solution = solution;
  g_clear_pointer (&self->refusal, g_free);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
drop_later (SwDocument *self)
{
  if (self->place + 1 < self->steps->len)
    g_ptr_array_set_size (self->steps, self->place + 1);
}

/* Goes on in the open step, or opens a new one. */
static void
put (SwDocument *self, SwDesign *design, const char *label)
{
  drop_later (self);
  if (self->open && g_strcmp0 (step_at (self, self->place)->label, label) == 0) {
    Step *step = step_at (self, self->place);
    sw_design_ref (design);
    sw_design_unref (step->design);
    step->design = design;
    return;
  }
  g_ptr_array_add (self->steps, step_new (design, label));
  self->place = self->steps->len - 1;
  self->open = label != NULL;
}

gboolean
sw_document_edit_design (SwDocument *self, SwDesign *design, const char *label)
{
  g_autoptr (GError) error = NULL;

  if (sw_design_equal (design, present (self))) {
    if (self->refusal != NULL) {
      g_clear_pointer (&self->refusal, g_free);
      g_signal_emit (self, signals[CHANGED], 0);
    }
    return TRUE;
  }
  SwSolution *solution = solve (design, &error);
  if (solution == NULL)
    return refuse (self, error->message);
  put (self, design, label);
  take_solution (self, solution);
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
  self->open = FALSE;
  if (self->refusal == NULL)
    return;
  g_clear_pointer (&self->refusal, g_free);
  g_signal_emit (self, signals[CHANGED], 0);
}

static void
go_to (SwDocument *self, guint place)
{
  self->place = place;
  self->open = FALSE;
  take_solution (self, solve (present (self), NULL)); /* it was solved before */
}

void
sw_document_cancel_edit (SwDocument *self)
{
  if (!self->open)
    return;
  guint back = self->place - 1;
  go_to (self, back);
  drop_later (self);
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
  if (sw_document_can_undo (self))
    go_to (self, self->place - 1);
}

void
sw_document_redo (SwDocument *self)
{
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
  g_ptr_array_set_size (self->steps, 0);
  g_ptr_array_add (self->steps, step_new (design, NULL));
  self->place = 0;
  self->open = FALSE;
  set_saved (self);
  take_solution (self, solution);
}

void
sw_document_reset (SwDocument *self, SwDesign *design)
{
  g_autoptr (GError) error = NULL;
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
  g_autoptr (SwDesign) design = sw_design_load (path, error);
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
  self->open = FALSE;
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
