// SPDX-License-Identifier: GPL-3.0-or-later
/* view-picture.h: a document's drawing as it is kept between frames.
 *
 * The backdrop (paper, ground, person, and while a step is open the tree as it was) changes
 * with size, style and view only, the tree with the solution. Both are image surfaces that are
 * used again; what changed is shown in bands.
 */
#pragma once
#include "app/bands.h"
#include "app/document.h"
#include "drawing/grips.h"
#include "drawing/side-view.h"
#include "drawing/top-view.h"

typedef struct SwViewPicture SwViewPicture;

typedef struct {
  SwViewKind kind;
  const SwView *view;
  const SwStyle *style;
  SwDocument *document;
  int width, height, factor; /* units, and pixels a unit */
} SwViewScene;

SwViewPicture *sw_view_picture_new (void);
void sw_view_picture_free (SwViewPicture *self);

/* The layouts of the texts, for what is drawn over the picture; borrowed. */
SwTextCache *sw_view_picture_texts (SwViewPicture *self);

/* After another size, style or view. */
void sw_view_picture_forget (SwViewPicture *self);

/* After another solution, or a step that opened or closed. */
void sw_view_picture_age (SwViewPicture *self);

/* Draws what is stale and appends all of it at 0, 0. */
void sw_view_picture_append (SwViewPicture *self,
                             const SwViewScene *scene,
                             GtkSnapshot *snapshot);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwViewPicture, sw_view_picture_free)
