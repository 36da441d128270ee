// SPDX-License-Identifier: GPL-3.0-or-later
/* text.h: short texts by pango, with layouts reused: one cache a surface, keyed by text and
 * font. */
#pragma once
#include "drawing/style.h"

#include <pango/pangocairo.h>

typedef struct SwTextCache SwTextCache;

SwTextCache *sw_text_cache_new (void);
void sw_text_cache_free (SwTextCache *cache);

typedef enum { SW_TEXT_LEFT, SW_TEXT_CENTRE, SW_TEXT_RIGHT } SwTextAlign;

typedef struct {
  double size; /* device units */
  gboolean bold, tabular;
  SwTextAlign align; /* which side of the text stands at x */
} SwTextLook;

/* Baseline at y. `cache` may be NULL. */
void sw_text_draw (cairo_t *cr,
                   SwTextCache *cache,
                   const SwStyle *style,
                   const SwTextLook *look,
                   double x,
                   double y,
                   const char *text);

/* Ink-independent logical size. */
void sw_text_measure (cairo_t *cr,
                      SwTextCache *cache,
                      const SwStyle *style,
                      const SwTextLook *look,
                      const char *text,
                      double *width,
                      double *height);

/* A paragraph wrapped to `width`, top at y. Returns: the height used. */
double sw_text_draw_wrapped (cairo_t *cr,
                             const SwStyle *style,
                             const SwTextLook *look,
                             double x,
                             double y,
                             double width,
                             const char *text);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwTextCache, sw_text_cache_free)
