// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/process-catalogue.h"

#include "engine/own-rows.h"

typedef struct {
  SwCatalogue *catalogue; /* nullable: the built-in rows are bad */
  GPtrArray *problems;
} Loaded;

static const Loaded *
load (void)
{
  static gsize done;
  static Loaded loaded;

  if (g_once_init_enter (&done)) {
    g_autofree char *folder =
      g_build_filename (g_get_user_data_dir (), "spirewright", "catalogue", NULL);
    const SwCatalogue *builtin = sw_catalogue_builtin (NULL);
    loaded.problems = g_ptr_array_new_with_free_func (g_free);
    if (builtin != NULL)
      loaded.catalogue = sw_own_rows_load (folder, builtin, loaded.problems);
    g_once_init_leave (&done, 1);
  }
  return &loaded;
}

const SwCatalogue *
sw_catalogue_of_process (GError **error)
{
  const SwCatalogue *catalogue = load ()->catalogue;

  return catalogue != NULL ? catalogue : sw_catalogue_builtin (error);
}

const GPtrArray *
sw_catalogue_problems_of_process (void)
{
  return load ()->problems;
}
