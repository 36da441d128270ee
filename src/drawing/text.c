// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/text.h"

/* Layouts are kept by "look|text". A cache is emptied when it grows past what one picture
 * needs. */
#define CACHE_MOST 600

struct SwTextCache {
  GHashTable *layouts; /* char * → PangoLayout * */
};

SwTextCache *
sw_text_cache_new (void)
{
  SwTextCache *cache = g_new0 (SwTextCache, 1);

  cache->layouts = g_hash_table_new_full (g_str_hash, g_str_equal, g_free, g_object_unref);
  return cache;
}

void
sw_text_cache_free (SwTextCache *cache)
{
  g_hash_table_unref (cache->layouts);
  g_free (cache);
}

static PangoLayout *
layout_new (cairo_t *cr, const SwStyle *style, const SwTextLook *look, const char *text)
{
  PangoLayout *layout = pango_cairo_create_layout (cr);
  PangoFontDescription *font = pango_font_description_from_string (style->font);

  pango_font_description_set_absolute_size (font, look->size * PANGO_SCALE);
  pango_font_description_set_weight (font,
                                     look->bold ? PANGO_WEIGHT_BOLD : PANGO_WEIGHT_NORMAL);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  if (look->tabular) {
    PangoAttrList *attributes = pango_attr_list_new ();
    pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
    pango_layout_set_attributes (layout, attributes);
    pango_attr_list_unref (attributes);
  }
  /* Positions must not depend on the device's pixels: paper and screen measure alike. */
  PangoContext *context = pango_layout_get_context (layout);
  pango_context_set_round_glyph_positions (context, FALSE);
  pango_layout_context_changed (layout);
  pango_layout_set_text (layout, text, -1);
  return layout;
}

/* Returns: (transfer full). */
static PangoLayout *
layout_for (cairo_t *cr,
            SwTextCache *cache,
            const SwStyle *style,
            const SwTextLook *look,
            const char *text)
{
  PangoLayout *layout;

  if (cache == NULL)
    return layout_new (cr, style, look, text);
  g_autofree char *key =
    g_strdup_printf ("%.2f|%d%d|%s", look->size, look->bold, look->tabular, text);
  layout = g_hash_table_lookup (cache->layouts, key);
  if (layout != NULL)
    return g_object_ref (layout);
  if (g_hash_table_size (cache->layouts) >= CACHE_MOST)
    g_hash_table_remove_all (cache->layouts);
  layout = layout_new (cr, style, look, text);
  g_hash_table_insert (cache->layouts, g_steal_pointer (&key), g_object_ref (layout));
  return layout;
}

static double
aligned_x (const SwTextLook *look, double x, double width)
{
  switch (look->align) {
  case SW_TEXT_CENTRE:
    return x - width / 2;
  case SW_TEXT_RIGHT:
    return x - width;
  case SW_TEXT_LEFT:
    break;
  }
  return x;
}

void
sw_text_draw (cairo_t *cr,
              SwTextCache *cache,
              const SwStyle *style,
              const SwTextLook *look,
              double x,
              double y,
              const char *text)
{
  g_autoptr (PangoLayout) layout = layout_for (cr, cache, style, look, text);
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  double baseline = (double) pango_layout_get_baseline (layout) / PANGO_SCALE;
  cairo_move_to (cr, aligned_x (look, x, (double) logical.width / PANGO_SCALE), y - baseline);
  pango_cairo_show_layout (cr, layout);
}

void
sw_text_measure (cairo_t *cr,
                 SwTextCache *cache,
                 const SwStyle *style,
                 const SwTextLook *look,
                 const char *text,
                 double *width,
                 double *height)
{
  g_autoptr (PangoLayout) layout = layout_for (cr, cache, style, look, text);
  PangoRectangle logical;

  pango_layout_get_extents (layout, NULL, &logical);
  if (width != NULL)
    *width = (double) logical.width / PANGO_SCALE;
  if (height != NULL)
    *height = (double) logical.height / PANGO_SCALE;
}

double
sw_text_draw_wrapped (cairo_t *cr,
                      const SwStyle *style,
                      const SwTextLook *look,
                      double x,
                      double y,
                      double width,
                      const char *text)
{
  g_autoptr (PangoLayout) layout = layout_new (cr, style, look, text);
  PangoRectangle logical;

  pango_layout_set_width (layout, (int) (width * PANGO_SCALE));
  pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  pango_layout_get_extents (layout, NULL, &logical);
  cairo_move_to (cr, x, y);
  pango_cairo_show_layout (cr, layout);
  return (double) logical.height / PANGO_SCALE;
}
