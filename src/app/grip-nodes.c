// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/grip-nodes.h"

#include <math.h>

#define GRIP_ROOM 20 /* units round a grip's middle that its ring, marks and halo need */

static GskRenderNode *
grip_node_new (const SwGrip *grip, SwGripLook look, const SwStyle *style)
{
  graphene_rect_t bounds = GRAPHENE_RECT_INIT ((float) floor (grip->x - GRIP_ROOM),
                                               (float) floor (grip->y - GRIP_ROOM),
                                               2 * GRIP_ROOM + 1,
                                               2 * GRIP_ROOM + 1);
  GskRenderNode *node = gsk_cairo_node_new (&bounds);
  cairo_t *cr = gsk_cairo_node_get_draw_context (node);

  sw_grip_draw (cr, style, grip, look);
  cairo_destroy (cr);
  return node;
}

static gboolean
stands_as (const SwGripNode *kept, const SwGrip *grip)
{
  return kept->grip.id == grip->id && fabs (kept->grip.x - grip->x) <= 0 &&
         fabs (kept->grip.y - grip->y) <= 0 &&
         fabs (kept->grip.direction_rad - grip->direction_rad) <= 0;
}

void
sw_grip_nodes_clear (SwGripNodes *self)
{
  for (guint i = 0; i < SW_N_GRIPS; i++)
    g_clear_pointer (&self->nodes[i].node, gsk_render_node_unref);
}

void
sw_grip_nodes_append (SwGripNodes *self,
                      GtkSnapshot *snapshot,
                      guint i,
                      const SwGrip *grip,
                      SwGripLook look,
                      const SwStyle *style)
{
  SwGripNode *kept = &self->nodes[i];
  gboolean same =
    kept->node != NULL && kept->look == look && kept->style == style && stands_as (kept, grip);

  if (!same) {
    g_clear_pointer (&kept->node, gsk_render_node_unref);
    *kept = (SwGripNode){ *grip, look, style, grip_node_new (grip, look, style) };
  }
  gtk_snapshot_append_node (snapshot, kept->node);
}

void
sw_grip_tag_append (GtkSnapshot *snapshot,
                    SwTextCache *texts,
                    const SwStyle *style,
                    const SwGrip *grip,
                    const char *words,
                    double room)
{
  SwTextLook look = { .size = style->text_normal, .tabular = TRUE };
  double width, height;
  cairo_surface_t *none = cairo_image_surface_create (CAIRO_FORMAT_A8, 0, 0);
  cairo_t *ruler = cairo_create (none);

  sw_text_measure (ruler, texts, style, &look, words, &width, &height);
  cairo_destroy (ruler);
  cairo_surface_destroy (none);
  double x = CLAMP (grip->x + 18, 8, MAX (room - width - 16, 8));
  double y = grip->y - height - 16 < 6 ? grip->y + 18 : grip->y - height - 16;
  graphene_rect_t bounds = GRAPHENE_RECT_INIT ((float) floor (x - 8),
                                               (float) floor (y - 5),
                                               (float) ceil (width + 17),
                                               (float) ceil (height + 11));
  cairo_t *cr = gtk_snapshot_append_cairo (snapshot, &bounds);
  sw_style_set_ink_alpha (style, cr, SW_INK_PAPER, 0.94);
  cairo_rectangle (cr,
                   floor (x - 6) + 0.5,
                   floor (y - 3) + 0.5,
                   ceil (width + 12),
                   ceil (height + 6));
  cairo_fill_preserve (cr);
  sw_style_set_ink (style, cr, SW_INK_GRIP);
  cairo_set_line_width (cr, 1);
  cairo_stroke (cr);
  sw_style_set_ink (style, cr, SW_INK_MAIN);
  sw_text_draw (cr, texts, style, &look, x, y + height * 0.8, words);
  cairo_destroy (cr);
}
