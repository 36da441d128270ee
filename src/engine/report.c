// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/report.h"

JsonNode *
sw_report_to_json (const SwSolution *solution)
{
  return json_node_new (JSON_NODE_NULL);
}
char *
sw_report_to_text (const SwSolution *solution)
{
  return g_strdup ("");
}
const SwBasis *
sw_basis_find (const char *key)
{
  return NULL;
}
