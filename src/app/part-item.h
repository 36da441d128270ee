// SPDX-License-Identifier: GPL-3.0-or-later
/* part-item.h: one row of the parts list as an object, for list views. */
#pragma once
#include "engine/solution.h"

#include <gio/gio.h>

#define SW_TYPE_PART_ITEM (sw_part_item_get_type ())
G_DECLARE_FINAL_TYPE (SwPartItem, sw_part_item, SW, PART_ITEM, GObject)

SwPartItem *sw_part_item_new (const SwPart *part);

const SwPart *sw_part_item_get (SwPartItem *self);
