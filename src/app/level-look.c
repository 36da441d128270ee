// SPDX-License-Identifier: GPL-3.0-or-later
#include "app/level-look.h"

static const struct {
  const char *icon, *css;
} looks[] = {
  [SW_LEVEL_STOP] = { "sw-stop-symbolic", "error" },
  [SW_LEVEL_WARN] = { "sw-warn-symbolic", "warning" },
  [SW_LEVEL_TIP] = { "sw-tip-symbolic", "tip" },
};

const char *
sw_level_icon (SwLevel level)
{
  return looks[level].icon;
}

void
sw_level_uncolour (GtkWidget *widget)
{
  for (guint i = 0; i < G_N_ELEMENTS (looks); i++)
    gtk_widget_remove_css_class (widget, looks[i].css);
}

void
sw_level_colour (GtkWidget *widget, SwLevel level)
{
  if (gtk_widget_has_css_class (widget, looks[level].css))
    return;
  sw_level_uncolour (widget);
  gtk_widget_add_css_class (widget, looks[level].css);
}
