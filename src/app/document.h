// SPDX-License-Identifier: GPL-3.0-or-later
/* document.h: one design, one solution, one signal; undo is a list of designs.
 *
 * "changed" is emitted after every change of design, path or saved state. Widgets keep no
 * second copy of a number: they read design and solution here and call an edit.
 */
#pragma once
#include "engine/solution.h"

#include <gio/gio.h>

#define SW_TYPE_DOCUMENT (sw_document_get_type ())
G_DECLARE_FINAL_TYPE (SwDocument, sw_document, SW, DOCUMENT, GObject)

SwDocument *sw_document_new (void); /* the Lawn start, untitled */

const SwDesign *sw_document_get_design (SwDocument *self);
/* Never NULL: the last design that could be solved. */
const SwSolution *sw_document_get_solution (SwDocument *self);
/* Returns: (nullable): why the last edit was refused, with the key's label ("Crown height:
 * locked"); cleared by the next good one and by the end of the step. */
const char *sw_document_get_refusal (SwDocument *self);

/* Edits in a row with the same non-NULL `label` inside one grip or slider drag are one undo
 * step; sw_document_end_edit () closes the step. label: translated, "Crown height". Returns:
 * FALSE when refused; nothing changed then.
 */
gboolean sw_document_edit_number (SwDocument *self,
                                  const char *path,
                                  double value,
                                  const char *label);
gboolean sw_document_edit_text (SwDocument *self,
                                const char *path,
                                const char *value,
                                const char *label);
gboolean sw_document_edit_design (SwDocument *self, SwDesign *design, const char *label);
void sw_document_end_edit (SwDocument *self);
/* Goes back to where the open step began; for Escape. What could be redone then can be again.
 */
void sw_document_cancel_edit (SwDocument *self);

/* Returns: (nullable): the solution where the open step began; NULL when none is open. While
 * it is, drawings keep still and show what was as a ghost.
 */
const SwSolution *sw_document_get_before (SwDocument *self);

gboolean sw_document_can_undo (SwDocument *self);
gboolean sw_document_can_redo (SwDocument *self);
void sw_document_undo (SwDocument *self);
void sw_document_redo (SwDocument *self);
const char *sw_document_get_undo_label (SwDocument *self);
const char *sw_document_get_redo_label (SwDocument *self);

/* Starts anew with a design, without a file. */
void sw_document_reset (SwDocument *self, SwDesign *design);
gboolean sw_document_load (SwDocument *self, GFile *file, GError **error);
gboolean sw_document_save (SwDocument *self, GFile *file, GError **error);
GFile *sw_document_get_file (SwDocument *self); /* nullable, borrowed */
gboolean sw_document_get_modified (SwDocument *self);
