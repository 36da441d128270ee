// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/starts.h"

#include "engine/design-file.h"
#include "engine/error.h"

#include <gio/gio.h>
#include <glib/gi18n.h>

GResource *sw_engine_data_get_resource (void);

const SwStart sw_starts[] = {
  { "porch", N_ ("Porch"), N_ ("A half tree for a deck or a doorstep, lower than a door") },
  { "lawn", N_ ("Lawn"), N_ ("A full tree for a front lawn, guyed, on crossed boards") },
  { "landmark",
    N_ ("Landmark"),
    N_ ("A tall tree for an open green, on a socket in the ground") },
};
const guint sw_n_starts = G_N_ELEMENTS (sw_starts);

static SwDesign *
load (const char *name, GError **error)
{
  g_autofree char *path =
    g_strdup_printf ("/org/spirewright/Spirewright/data/examples/%s.spire", name);
  g_autoptr (GBytes) bytes = g_resource_lookup_data (sw_engine_data_get_resource (),
                                                     path,
                                                     G_RESOURCE_LOOKUP_FLAGS_NONE,
                                                     error);
  gsize length;
  const char *data = bytes == NULL ? NULL : g_bytes_get_data (bytes, &length);

  return data == NULL ? NULL : sw_design_load_from_data (data, length, error);
}

SwDesign *
sw_start_new (const char *name, GError **error)
{
  for (guint i = 0; i < sw_n_starts; i++) {
    if (g_ascii_strcasecmp (sw_starts[i].name, name) == 0)
      return load (sw_starts[i].name, error);
  }
  g_autofree char *shown = g_strescape (name, NULL);
  g_set_error (error,
               SW_ERROR,
               SW_ERROR_CHOICE,
               "--example: \"%s\" is not one of porch | lawn | landmark",
               shown);
  return NULL;
}
