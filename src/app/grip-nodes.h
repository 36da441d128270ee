// SPDX-License-Identifier: GPL-3.0-or-later
/* grip-nodes.h: grips and the live number beside one of them, over a drawing.
 *
 * A grip that stays keeps its render node, so that it is not painted again.
 */
#pragma once
#include "drawing/grips.h"
#include "drawing/text.h"

#include <gtk/gtk.h>

typedef struct {
  SwGrip grip;
  SwGripLook look;
  const SwStyle *style;
  GskRenderNode *node; /* owned, nullable */
} SwGripNode;

/* As it was shown last; all zeros at first. */
typedef struct {
  SwGripNode nodes[SW_N_GRIPS]; /* by place in the list of grips */
} SwGripNodes;

void sw_grip_nodes_clear (SwGripNodes *self);

void sw_grip_nodes_append (SwGripNodes *self,
                           GtkSnapshot *snapshot,
                           guint i,
                           const SwGrip *grip,
                           SwGripLook look,
                           const SwStyle *style);

/* Words beside the grip, kept within 0 … room from left to right. */
void sw_grip_tag_append (GtkSnapshot *snapshot,
                         SwTextCache *texts,
                         const SwStyle *style,
                         const SwGrip *grip,
                         const char *words,
                         double room);
