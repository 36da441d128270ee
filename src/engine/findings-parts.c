// SPDX-License-Identifier: GPL-3.0-or-later
/* findings-parts.c: ids that the catalogue does not have. */
#include "engine/finding-table.h"

#include <glib/gi18n.h>

#define UNKNOWN                                                                                   \
  N_ (                                                                                            \
    "“{id}” is not in the catalogue, so what depends on it is not worked out. Choose a part " \
    "that is.")

/* Says the id when it is unknown. */
static gboolean
unknown (const SwSolution *s, SwFindingDraft *draft, const char *kind, const char *id)
{
  if (sw_catalogue_name (s->catalogue, kind, id) != NULL)
    return FALSE;
  sw_draft_say_text (draft, "id", id);
  return TRUE;
}

static gboolean
unknown_post (const SwSolution *s, SwFindingDraft *draft)
{
  return unknown (s, draft, "pipe", s->design->stand.post);
}

static gboolean
unknown_ring_pipe (const SwSolution *s, SwFindingDraft *draft)
{
  return unknown (s, draft, "pipe", s->design->stand.ring_pipe);
}

static gboolean
unknown_sleeve (const SwSolution *s, SwFindingDraft *draft)
{
  return unknown (s, draft, "pipe", s->design->stand.sleeve);
}

static gboolean
unknown_stub (const SwSolution *s, SwFindingDraft *draft)
{
  return unknown (s, draft, "pipe", s->design->topper.stub);
}

static gboolean
unknown_hook (const SwSolution *s, SwFindingDraft *draft)
{
  return unknown (s, draft, "hook", s->design->crown.hook);
}

static gboolean
unknown_line (const SwSolution *s, SwFindingDraft *draft)
{
  return unknown (s, draft, "line", s->design->guys.line);
}

const SwFindingRow sw_findings_of_parts[] = {
  { SW_LEVEL_STOP, "unknown-post", "stand.post", UNKNOWN, unknown_post },
  { SW_LEVEL_STOP, "unknown-ring-pipe", "stand.ring_pipe", UNKNOWN, unknown_ring_pipe },
  { SW_LEVEL_STOP, "unknown-sleeve", "stand.sleeve", UNKNOWN, unknown_sleeve },
  { SW_LEVEL_STOP, "unknown-stub", "topper.stub", UNKNOWN, unknown_stub },
  { SW_LEVEL_STOP, "unknown-hook", "crown.hook", UNKNOWN, unknown_hook },
  { SW_LEVEL_STOP, "unknown-line", "guys.line", UNKNOWN, unknown_line },
  { 0 }
};
