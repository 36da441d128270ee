// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/view-picture.h"

#include "packet/process-locale.h"

#include <string.h>

struct SwViewPicture {
  SwTextCache *texts;        /* owned */
  cairo_surface_t *backdrop; /* owned, nullable */
  cairo_surface_t *tree;     /* owned, nullable: backdrop, ghost, tree and dimensions */
  const SwSolution *ghost;   /* borrowed, nullable: what the backdrop shows; only compared */
  SwBands *bands;            /* owned: the same as it is shown */
  gboolean stale;            /* the tree is older than the solution */
};

SwViewPicture *
sw_view_picture_new (void)
{
  SwViewPicture *self = g_new0 (SwViewPicture, 1);

  self->texts = sw_text_cache_new ();
  self->bands = sw_bands_new ();
  self->stale = TRUE;
  return self;
}

void
sw_view_picture_free (SwViewPicture *self)
{
  sw_view_picture_forget (self);
  sw_bands_free (self->bands);
  sw_text_cache_free (self->texts);
  g_free (self);
}

SwTextCache *
sw_view_picture_texts (SwViewPicture *self)
{
  return self->texts;
}

void
sw_view_picture_forget (SwViewPicture *self)
{
  g_clear_pointer (&self->backdrop, cairo_surface_destroy);
  g_clear_pointer (&self->tree, cairo_surface_destroy);
  self->stale = TRUE;
}

void
sw_view_picture_age (SwViewPicture *self)
{
  self->stale = TRUE;
}

static SwPicture
picture_of (SwViewPicture *self, const SwViewScene *scene, SwDrawParts parts)
{
  return (
    SwPicture){ scene->view, scene->style, sw_language_of_process (), self->texts, parts };
}

static void
draw_parts (SwViewPicture *self, const SwViewScene *scene, cairo_t *cr, SwDrawParts parts)
{
  SwPicture picture = picture_of (self, scene, parts);
  const SwSolution *solution = sw_document_get_solution (scene->document);

  if (scene->kind == SW_SIDE)
    sw_side_view_draw (cr, &picture, solution);
  else
    sw_top_view_draw (cr, &picture, solution);
}

static void
draw_ghost (SwViewPicture *self, const SwViewScene *scene, cairo_t *cr)
{
  SwPicture picture = picture_of (self, scene, SW_DRAW_TREE);
  const SwSolution *before = sw_document_get_before (scene->document);

  if (before == NULL)
    return;
  if (scene->kind == SW_SIDE)
    sw_side_view_draw_ghost (cr, &picture, before);
  else
    sw_top_view_draw_ghost (cr, &picture, before);
}

static cairo_surface_t *
surface_new (const SwViewScene *scene)
{
  cairo_surface_t *surface = cairo_image_surface_create (CAIRO_FORMAT_RGB24,
                                                         scene->width * scene->factor,
                                                         scene->height * scene->factor);

  cairo_surface_set_device_scale (surface, scene->factor, scene->factor);
  return surface;
}

static void
refresh_backdrop (SwViewPicture *self, const SwViewScene *scene)
{
  const SwSolution *before = sw_document_get_before (scene->document);

  if (self->backdrop != NULL && self->ghost == before)
    return;
  self->ghost = before;
  if (self->backdrop == NULL)
    self->backdrop = surface_new (scene);
  cairo_t *cr = cairo_create (self->backdrop);
  draw_parts (self, scene, cr, SW_DRAW_BACKDROP);
  draw_ghost (self, scene, cr);
  cairo_destroy (cr);
  cairo_surface_flush (self->backdrop);
}

/* The kept surface is used again: a new one a frame would cost more than the drawing. */
static void
refresh_tree (SwViewPicture *self, const SwViewScene *scene)
{
  if (!self->stale)
    return;
  if (self->tree == NULL)
    self->tree = surface_new (scene);
  cairo_surface_flush (self->tree);
  memcpy (cairo_image_surface_get_data (self->tree),
          cairo_image_surface_get_data (self->backdrop),
          (gsize) cairo_image_surface_get_stride (self->tree) *
            (gsize) cairo_image_surface_get_height (self->tree));
  cairo_surface_mark_dirty (self->tree);
  cairo_t *cr = cairo_create (self->tree);
  draw_parts (self, scene, cr, SW_DRAW_TREE | SW_DRAW_DIMENSIONS);
  cairo_destroy (cr);
  sw_bands_update (self->bands, self->tree, scene->factor);
  self->stale = FALSE;
}

void
sw_view_picture_append (SwViewPicture *self, const SwViewScene *scene, GtkSnapshot *snapshot)
{
  refresh_backdrop (self, scene);
  refresh_tree (self, scene);
  sw_bands_append (self->bands, snapshot);
}
