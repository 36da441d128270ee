// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/report.h"

#include "engine/basis.h"
#include "engine/design-keys.h"
#include "engine/remedy-effect.h"
#include "engine/report-power.h"
#include "engine/results.h"
#include "engine/working.h"

#include <math.h>

static JsonNode *
take_object (JsonObject *object)
{
  JsonNode *node = json_node_init_object (json_node_alloc (), object);

  json_object_unref (object);
  return node;
}

static void
add_number (JsonObject *object, const char *name, double value)
{
  if (isfinite (value))
    json_object_set_double_member (object, name, value);
}

static JsonObject *
child (JsonObject *object, const char *name)
{
  if (!json_object_has_member (object, name))
    json_object_set_object_member (object, name, json_object_new ());
  return json_object_get_object_member (object, name);
}

static void
add_result (JsonObject *root, const SwResult *result, const SwSolution *solution)
{
  g_auto (GStrv) parts = g_strsplit (result->key, ".", -1);
  double value = sw_result_value (result, solution);
  JsonObject *object = root;
  guint last = g_strv_length (parts) - 1;

  if (isnan (value))
    return;
  for (guint i = 0; i < last; i++)
    object = child (object, parts[i]);
  if (result->type == SW_RESULT_NUMBER)
    json_object_set_double_member (object, parts[last], value);
  else if (result->type == SW_RESULT_WHOLE || result->type == SW_RESULT_COUNT)
    json_object_set_int_member (object, parts[last], (gint64) value);
  else if (result->type == SW_RESULT_FLAG)
    json_object_set_boolean_member (object, parts[last], value > 0);
  else
    json_object_set_string_member (object, parts[last], sw_limit_words[(int) value]);
}

static JsonArray *
marks_array (const SwSolution *solution)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < solution->marks->len; i++) {
    const SwRingMark *mark = &g_array_index (solution->marks, SwRingMark, i);
    JsonObject *row = json_object_new ();
    json_object_set_int_member (row, "strip", i + 1);
    json_object_set_double_member (row, "azimuth_deg", mark->azimuth_deg);
    json_object_set_double_member (row, "arc_m", mark->arc_m);
    add_number (row, "chord_m", mark->chord_m);
    json_array_add_object_element (list, row);
  }
  return list;
}

static JsonArray *
crown_array (const SwSolution *solution)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < solution->crown->len; i++) {
    const SwHole *hole = &g_array_index (solution->crown, SwHole, i);
    JsonObject *row = json_object_new ();
    json_object_set_int_member (row, "strip", i + 1);
    json_object_set_double_member (row, "x_m", hole->x_m);
    json_object_set_double_member (row, "y_m", hole->y_m);
    json_array_add_object_element (list, row);
  }
  return list;
}

static JsonObject *
as_built_object (const SwAsBuilt *as_built)
{
  JsonObject *object = json_object_new ();
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < as_built->marks->len; i++) {
    const SwAsBuiltMark *mark = &g_array_index (as_built->marks, SwAsBuiltMark, i);
    JsonObject *row = json_object_new ();
    json_object_set_int_member (row, "strip", i + 1);
    json_object_set_double_member (row, "arc_m", mark->arc_m);
    json_object_set_double_member (row, "azimuth_deg", mark->azimuth_deg);
    json_object_set_double_member (row, "radius_m", mark->radius_m);
    json_object_set_double_member (row, "slant_m", mark->slant_m);
    json_object_set_double_member (row, "tail_m", mark->tail_m);
    json_array_add_object_element (list, row);
  }
  json_object_set_double_member (object, "perimeter_m", as_built->perimeter_m);
  json_object_set_array_member (object, "marks", list);
  return object;
}

static JsonArray *
joints_array (const SwSolution *solution)
{
  const SwRingJoints *joints = &solution->ring.joints;
  JsonArray *list = json_array_new ();

  for (int joint = 1; joint <= joints->count; joint++) {
    JsonObject *row = json_object_new ();
    json_object_set_int_member (row, "joint", joint);
    json_object_set_double_member (row,
                                   "azimuth_deg",
                                   sw_ring_joint_azimuth_deg (joints, joint));
    json_object_set_double_member (
      row,
      "arc_m",
      sw_ring_joint_arc_m (joints, joint, solution->design, solution->ring_od_m));
    json_array_add_object_element (list, row);
  }
  return list;
}

static JsonArray *
piece_array (const SwRingJoints *joints)
{
  JsonArray *list = json_array_new ();

  for (int piece = 1; piece <= joints->parts; piece++) {
    JsonObject *row = json_object_new ();
    json_object_set_int_member (row, "piece", piece);
    json_object_set_double_member (row, "length_m", sw_ring_piece_m (joints, piece));
    json_array_add_object_element (list, row);
  }
  return list;
}

static JsonArray *
spoke_array (const SwRingJoints *joints)
{
  JsonArray *list = json_array_new ();

  for (int spoke = 1; spoke <= joints->spokes; spoke++) {
    JsonObject *row = json_object_new ();
    json_object_set_int_member (row, "spoke", spoke);
    json_object_set_double_member (row,
                                   "azimuth_deg",
                                   sw_ring_spoke_azimuth_deg (joints, spoke));
    json_array_add_object_element (list, row);
  }
  return list;
}

static void
add_ring (JsonObject *root, const SwSolution *solution)
{
  JsonObject *ring = child (root, "ring");

  json_object_set_array_member (ring, "joints", joints_array (solution));
  json_object_set_array_member (ring, "pieces", piece_array (&solution->ring.joints));
  json_object_set_array_member (ring, "spokes", spoke_array (&solution->ring.joints));
}

static JsonArray *
ports_array (const SwSolution *solution)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < solution->data.rows->len; i++) {
    const SwPort *port = &g_array_index (solution->data.rows, SwPort, i);
    JsonObject *row = json_object_new ();
    json_object_set_int_member (row, "port", port->port);
    json_object_set_int_member (row, "first_strip", port->first_strip);
    json_object_set_int_member (row, "last_strip", port->last_strip);
    json_object_set_int_member (row, "pixels", port->pixels);
    json_object_set_int_member (row, "first_universe", port->first_universe);
    json_object_set_int_member (row, "last_universe", port->last_universe);
    json_array_add_object_element (list, row);
  }
  return list;
}

static JsonArray *
pieces_array (const SwCutPlan *plan)
{
  JsonArray *bars = json_array_new ();

  for (guint i = 0; i < plan->bars->len; i++) {
    const GArray *bar = plan->bars->pdata[i];
    JsonArray *pieces = json_array_new ();
    for (guint j = 0; j < bar->len; j++)
      json_array_add_double_element (pieces, g_array_index (bar, double, j));
    json_array_add_array_element (bars, pieces);
  }
  return bars;
}

static JsonArray *
cuts_array (const SwSolution *solution)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < solution->cuts->len; i++) {
    const SwCutPlan *plan = solution->cuts->pdata[i];
    JsonObject *row = json_object_new ();
    if (plan->stock != NULL)
      json_object_set_string_member (row, "stock", plan->stock);
    json_object_set_double_member (row, "stock_m", plan->stock_m);
    json_object_set_double_member (row, "kerf_m", plan->kerf_m);
    json_object_set_int_member (row, "bars", plan->bars->len);
    json_object_set_array_member (row, "pieces", pieces_array (plan));
    json_object_set_double_member (row, "waste_m", plan->waste_m);
    json_object_set_boolean_member (row, "optimal", plan->optimal);
    json_array_add_object_element (list, row);
  }
  return list;
}

static JsonArray *
bom_array (const SwSolution *solution)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < solution->bom->len; i++) {
    const SwPart *part = &g_array_index (solution->bom, SwPart, i);
    JsonObject *row = json_object_new ();
    json_object_set_string_member (row, "id", part->id);
    json_object_set_string_member (row, "name", part->name);
    json_object_set_string_member (row, "group", part->group);
    json_object_set_double_member (row, "quantity", part->quantity);
    json_object_set_string_member (row, "unit", part->unit);
    json_object_set_double_member (row, "unit_price", part->unit_price);
    json_object_set_double_member (row, "total", part->total);
    json_object_set_double_member (row, "have", part->have);
    json_object_set_double_member (row, "pack", part->pack);
    json_object_set_double_member (row, "to_buy", part->to_buy);
    json_object_set_double_member (row, "to_pay", part->to_pay);
    json_array_add_object_element (list, row);
  }
  return list;
}

/* As files and --set take it. */
static JsonNode *
remedy_value (const SwFinding *finding)
{
  const SwKey *key = sw_key_find (finding->remedy_key);
  JsonNode *node = json_node_alloc ();

  if (finding->remedy_text != NULL)
    return json_node_init_string (node, finding->remedy_text);
  if (key->type == SW_KEY_CHOICE)
    return json_node_init_string (node, key->choices[(int) finding->remedy_value]);
  if (key->type == SW_KEY_WHOLE)
    return json_node_init_int (node, (gint64) finding->remedy_value);
  return json_node_init_double (node, finding->remedy_value);
}

static void
add_worsens (JsonObject *remedy, const SwFinding *finding, const SwSolution *solution)
{
  SwRemedyEffect effect;

  if (!sw_remedy_effect_init (&effect, finding, solution))
    return;
  g_autofree char *text = sw_remedy_effect_text (&effect, &sw_language_english);
  if (text != NULL)
    json_object_set_string_member (remedy, "worsens", text);
  sw_remedy_effect_clear (&effect);
}

static void
add_remedy (JsonObject *row, const SwFinding *finding, const SwSolution *solution)
{
  if (finding->remedy_key == NULL)
    return;
  JsonObject *remedy = json_object_new ();
  add_worsens (remedy, finding, solution);
  json_object_set_string_member (remedy, "key", finding->remedy_key);
  json_object_set_member (remedy, "value", remedy_value (finding));
  json_object_set_object_member (row, "remedy", remedy);
}

static JsonArray *
findings_array (const SwSolution *solution)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < solution->findings->len; i++) {
    const SwFinding *finding = &g_array_index (solution->findings, SwFinding, i);
    g_autofree char *text = sw_finding_text (finding, solution->design, &sw_language_english);
    JsonObject *row = json_object_new ();
    json_object_set_string_member (row, "level", sw_level_words[finding->level]);
    json_object_set_string_member (row, "code", finding->code);
    json_object_set_string_member (row, "text", text);
    json_object_set_string_member (row, "key", finding->key);
    add_remedy (row, finding, solution);
    json_array_add_object_element (list, row);
  }
  return list;
}

static JsonArray *
fits_array (const SwSolution *solution)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < solution->fits.n; i++) {
    const SwPair *pair = &solution->fits.pairs[i];
    JsonObject *row = json_object_new ();
    json_object_set_string_member (row, "what", pair->what);
    json_object_set_string_member (row, "inner", pair->inner);
    if (pair->outer != NULL)
      json_object_set_string_member (row, "outer", pair->outer);
    json_object_set_double_member (row, "inner_m", pair->inner_m);
    add_number (row, "outer_m", pair->outer_m);
    add_number (row, "clearance_m", pair->clearance_m);
    json_object_set_string_member (row, "verdict", sw_verdict_words[pair->verdict]);
    json_array_add_object_element (list, row);
  }
  return list;
}

static JsonObject *
basis_object (const SwSolution *solution)
{
  g_autoptr (GArray) rows = sw_basis_of (solution);
  JsonObject *object = json_object_new ();

  for (guint i = 0; i < rows->len; i++) {
    const SwBasis *row = &g_array_index (rows, SwBasis, i);
    g_autofree char *line = g_strdup_printf ("%s; %s", row->formula, row->source);
    json_object_set_string_member (object, row->key, line);
  }
  return object;
}

static void
add_text (JsonObject *object, const char *name, const char *text)
{
  if (text != NULL && *text != '\0')
    json_object_set_string_member (object, name, text);
}

static JsonArray *
inputs_array (const SwWorking *working)
{
  JsonArray *list = json_array_new ();

  for (guint i = 0; i < working->inputs->len; i++) {
    const SwWorkingInput *input = &g_array_index (working->inputs, SwWorkingInput, i);
    JsonObject *row = json_object_new ();
    json_object_set_string_member (row, "name", input->name);
    json_object_set_double_member (row, "value", input->value);
    add_text (row, "unit", input->unit);
    add_text (row, "key", input->key);
    add_text (row, "what", input->what);
    add_text (row, "source", input->source);
    json_array_add_object_element (list, row);
  }
  return list;
}

/* A flag or a word has no result here: it stands under its own key. */
static JsonObject *
working_object (const SwWorking *working)
{
  JsonObject *object = json_object_new ();

  add_text (object, "formula", working->formula);
  if (working->formula == NULL)
    json_object_set_string_member (object, "words", working->words);
  if (working->formula != NULL) {
    json_object_set_array_member (object, "inputs", inputs_array (working));
    json_object_set_double_member (object, "result", working->result);
    add_text (object, "unit", working->unit);
  }
  json_object_set_string_member (object, "source", working->source);
  add_text (object, "how", working->how);
  add_text (object, "assumes", working->assumes);
  return object;
}

JsonNode *
sw_report_workings (const SwSolution *solution, const char *key_or_group)
{
  g_autoptr (GPtrArray) workings = sw_workings_new (solution);
  JsonObject *object = json_object_new ();

  for (guint i = 0; i < workings->len; i++) {
    const SwWorking *working = workings->pdata[i];
    if (key_or_group == NULL || sw_working_is_in (working, key_or_group))
      json_object_set_object_member (object, working->key, working_object (working));
  }
  return take_object (object);
}

static void
add_cost (JsonObject *root, const SwSolution *solution)
{
  JsonObject *cost = child (root, "cost");

  json_object_set_double_member (cost, "total", solution->cost_to_pay);
  json_object_set_string_member (cost, "currency", solution->design->prices.currency);
}

static void
add_power_lists (JsonObject *power, const SwSolution *solution)
{
  const SwKey *feed = sw_key_find ("power.feed");

  if (!solution->power.feasible)
    return;
  if (solution->feed_plan.found)
    json_object_set_string_member (child (power, "plan"),
                                   "feed",
                                   feed->choices[solution->feed_plan.feed]);
  json_object_set_array_member (power, "feeds", sw_report_feeds (solution));
  json_object_set_array_member (power, "zones", sw_report_zones (solution));
}

JsonNode *
sw_report_to_json (const SwSolution *solution)
{
  JsonObject *root = json_object_new ();

  json_object_set_string_member (root, "title", solution->design->title);
  child (root, "geometry");
  json_object_set_array_member (root, "marks", marks_array (solution));
  json_object_set_array_member (root, "crown", crown_array (solution));
  if (solution->as_built != NULL)
    json_object_set_object_member (root, "as_built", as_built_object (solution->as_built));
  for (guint i = 0; i < sw_n_results (); i++)
    add_result (root, sw_result_at (i), solution);
  add_ring (root, solution);
  add_power_lists (child (root, "power"), solution);
  json_object_set_array_member (child (root, "data"), "rows", ports_array (solution));
  json_object_set_array_member (root, "fits", fits_array (solution));
  json_object_set_array_member (root, "cuts", cuts_array (solution));
  json_object_set_array_member (root, "bom", bom_array (solution));
  add_cost (root, solution);
  json_object_set_array_member (root, "findings", findings_array (solution));
  json_object_set_object_member (root, "basis", basis_object (solution));
  json_object_set_member (root, "working", sw_report_workings (solution, NULL));
  return take_object (root);
}
