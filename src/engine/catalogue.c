// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/catalogue.h"

struct SwCatalogue {
  int unused;
};
static const SwCatalogue builtin;
static const SwPipe pipe = { .od_m = 0.0334,
                             .id_m = 0.026,
                             .wall_m = 0.0034,
                             .mass_kg_per_m = 0.45 };
const SwCatalogue *
sw_catalogue_builtin (GError **error)
{
  return &builtin;
}
SwCatalogue *
sw_catalogue_new_from_texts (GHashTable *texts, GError **error)
{
  return NULL;
}
void
sw_catalogue_free (SwCatalogue *catalogue)
{
}
const SwPipe *
sw_catalogue_pipe (const SwCatalogue *catalogue, const char *id)
{
  return &pipe;
}
const SwHook *
sw_catalogue_hook (const SwCatalogue *catalogue, const char *id)
{
  return NULL;
}
const SwLine *
sw_catalogue_line (const SwCatalogue *catalogue, const char *id)
{
  return NULL;
}
const SwGoods *
sw_catalogue_goods (const SwCatalogue *catalogue, const char *id)
{
  return NULL;
}
GPtrArray *
sw_catalogue_ids (const SwCatalogue *catalogue, const char *kind)
{
  return g_ptr_array_new ();
}
const char *
sw_catalogue_name (const SwCatalogue *catalogue, const char *kind, const char *id)
{
  return NULL;
}
