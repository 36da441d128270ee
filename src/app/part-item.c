// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/part-item.h"

/* An item may outlive its solution, and with it a row of the design: its texts are interned. */
struct _SwPartItem {
  GObject parent_instance;
  SwPart part;
};

G_DEFINE_FINAL_TYPE (SwPartItem, sw_part_item, G_TYPE_OBJECT)

static void
sw_part_item_class_init (SwPartItemClass *klass)
{
}

static void
sw_part_item_init (SwPartItem *self)
{
}

SwPartItem *
sw_part_item_new (const SwPart *part)
{
  SwPartItem *self = g_object_new (SW_TYPE_PART_ITEM, NULL);

  self->part = *part;
  self->part.id = g_intern_string (part->id);
  self->part.name = g_intern_string (part->name);
  return self;
}

const SwPart *
sw_part_item_get (SwPartItem *self)
{
  g_return_val_if_fail (SW_IS_PART_ITEM (self), NULL);
  return &self->part;
}
