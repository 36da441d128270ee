// SPDX-License-Identifier: GPL-3.0-or-later
/* level-look.h: how a finding's strength shows: by shape (octagon, triangle, circle) and by
 * colour; whoever shows one adds the word.
 */
#pragma once
#include "engine/findings.h"

#include <gtk/gtk.h>

#define SW_ICON_WELL "sw-well-symbolic" /* a tick: nothing is wrong here */

/* Returns: the icon's name. */
const char *sw_level_icon (SwLevel level);

/* Gives the widget the level's colour and takes any other level's away. */
void sw_level_colour (GtkWidget *widget, SwLevel level);
void sw_level_uncolour (GtkWidget *widget);
