// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/working.h"

#include "engine/basis.h"
#include "engine/design-keys.h"
#include "engine/results.h"
#include "engine/working-table.h"

#include <math.h>
#include <string.h>

const SwWorkingTable *const sw_working_tables[] = {
  &sw_working_shape, &sw_working_marks,  &sw_working_power, &sw_working_data,
  &sw_working_wind,  &sw_working_stand,  &sw_working_ring,  &sw_working_gust,
  &sw_working_parts, &sw_working_checks, &sw_working_build, &sw_working_foot,
  &sw_working_feeds, &sw_working_cable,  &sw_working_pipe,  &sw_working_limits,
};
const guint sw_n_working_tables = G_N_ELEMENTS (sw_working_tables);

/* A quantity's name ends in its unit; the longer ending first. */
static const struct {
  const char *ending, *unit;
} units[] = {
  { "_n_per_m", "N/m" },
  { "_ohm_per_m", "Ω/m" },
  { "_kg_per_m", "kg/m" },
  { "_pa_per_m", "Pa/m" },
  { "_per_v", "1/V" },
  { "_m_per_n", "m/N" },
  { "_nm_per_n", "N m/N" },
  { "_n_per_n", "N/N" },
  { "_nm2", "N m²" },
  { "_a2", "A²" },
  { "_nm", "N m" },
  { "_m2", "m²" },
  { "_m3", "m³" },
  { "_mps2", "m/s²" },
  { "_mps", "m/s" },
  { "_mm", "mm" },
  { "_m", "m" },
  { "_n", "N" },
  { "_pa", "Pa" },
  { "_deg", "°" },
  { "_kwh", "kWh" },
  { "_kg", "kg" },
  { "_a", "A" },
  { "_w", "W" },
  { "_v", "V" },
  { "_hz", "Hz" },
  { "_us", "µs" },
  { "hours_per_evening", "h" },
};

static const char *
unit_of (const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (units); i++) {
    if (g_str_has_suffix (name, units[i].ending))
      return units[i].unit;
  }
  return "";
}

static const char *const money[] = { "_pay", "unit_price", ".total" };

/* Prices are in the design's currency. */
static const char *
unit_in (const SwSolution *solution, const char *name)
{
  for (guint i = 0; i < G_N_ELEMENTS (money); i++) {
    if (g_str_has_suffix (name, money[i]))
      return solution->design->prices.currency;
  }
  return unit_of (name);
}

static const SwWorkingTerm *
find_term (const char *name)
{
  for (guint i = 0; i < sw_n_working_tables; i++) {
    for (guint j = 0; j < sw_working_tables[i]->n_terms; j++) {
      if (strcmp (sw_working_tables[i]->terms[j].name, name) == 0)
        return &sw_working_tables[i]->terms[j];
    }
  }
  return NULL;
}

/* "slant_m" ends "geometry.slant_m", and not "my_slant_m". */
static gboolean
ends_key (const char *key, const char *name)
{
  const char *end = strlen (key) < strlen (name) ? NULL : key + strlen (key) - strlen (name);

  return end != NULL && strcmp (end, name) == 0 && (end == key || end[-1] == '.');
}

static gboolean
read_term (SwWorkingInput *input, const SwSolution *solution)
{
  const SwWorkingTerm *term = find_term (input->name);

  if (term == NULL)
    return FALSE;
  input->value = term->value == NULL ? term->fixed : term->value (solution);
  input->what = term->what;
  input->source = term->source;
  return TRUE;
}

static gboolean
read_result (SwWorkingInput *input, const SwSolution *solution)
{
  for (guint i = 0; i < sw_n_results (); i++) {
    if (!ends_key (sw_result_at (i)->key, input->name))
      continue;
    input->key = sw_result_at (i)->key;
    input->value = sw_result_value (sw_result_at (i), solution);
    return TRUE;
  }
  return FALSE;
}

static gboolean
read_file_key (SwWorkingInput *input, const SwSolution *solution)
{
  for (guint i = 0; i < sw_n_keys (); i++) {
    if (!ends_key (sw_key_at (i)->path, input->name))
      continue;
    input->key = sw_key_at (i)->path;
    input->value = sw_key_get_number (sw_key_at (i), solution->design);
    return TRUE;
  }
  return FALSE;
}

static void
add_input (SwWorking *working, const SwSolution *solution, const char *name)
{
  SwWorkingInput input = { .value = NAN };

  for (guint i = 0; i < working->inputs->len; i++) {
    if (strcmp (g_array_index (working->inputs, SwWorkingInput, i).name, name) == 0)
      return;
  }
  input.name = g_strdup (name);
  if (!read_term (&input, solution) && !read_result (&input, solution) &&
      !read_file_key (&input, solution))
    g_critical ("working of %s: nothing is called %s", working->key, name);
  input.unit = unit_in (solution, input.key != NULL ? input.key : name);
  g_array_append_val (working->inputs, input);
}

static gboolean
is_name_char (char c)
{
  return g_ascii_isalnum (c) || c == '_' || c == '.';
}

/* Every word of the formula that no "(" follows; a number begins with a digit. */
static void
add_inputs (SwWorking *working, const SwSolution *solution)
{
  const char *at = working->formula;

  while (at != NULL && *at != '\0') {
    const char *end = at;
    while (is_name_char (*end))
      end++;
    if (g_ascii_isalpha (*at) && *end != '(') {
      g_autofree char *name = g_strndup (at, (gsize) (end - at));
      add_input (working, solution, name);
    }
    at = MAX (end, at + 1);
  }
}

static const SwWorkingRow *
find_row (const char *key, const SwSolution *solution)
{
  for (guint i = 0; i < sw_n_working_tables; i++) {
    for (guint j = 0; j < sw_working_tables[i]->n_rows; j++) {
      const SwWorkingRow *row = &sw_working_tables[i]->rows[j];
      if (strcmp (row->key, key) == 0 &&
          (solution == NULL || row->applies == NULL || row->applies (solution)))
        return row;
    }
  }
  return NULL;
}

static double
value_of (const char *key, const SwWorkingRow *row, const SwSolution *solution)
{
  const SwResult *result = sw_result_find (key);

  if (result != NULL)
    return sw_result_value (result, solution);
  return row == NULL || row->value == NULL ? NAN : row->value (solution);
}

static void
free_input (gpointer input)
{
  g_free (((SwWorkingInput *) input)->name);
}

static SwWorking *
working_new (const SwSolution *solution, const SwBasis *basis)
{
  const SwWorkingRow *row = find_row (basis->key, solution);
  double value = value_of (basis->key, row, solution);

  if (isnan (value))
    return NULL;
  SwWorking *working = g_new0 (SwWorking, 1);
  working->key = basis->key;
  working->words = basis->formula;
  working->source = basis->source;
  working->result = value;
  working->unit = unit_in (solution, basis->key);
  working->inputs = g_array_new (FALSE, TRUE, sizeof (SwWorkingInput));
  g_array_set_clear_func (working->inputs, free_input);
  if (row != NULL) {
    working->formula = row->formula;
    working->how = row->how;
    working->assumes = row->assumes;
    add_inputs (working, solution);
  }
  return working;
}

SwWorking *
sw_working_new (const SwSolution *solution, const char *key)
{
  SwBasis basis;

  return sw_basis_find (key, &basis) ? working_new (solution, &basis) : NULL;
}

void
sw_working_free (SwWorking *working)
{
  g_array_unref (working->inputs);
  g_free (working);
}

static void
free_working (gpointer working)
{
  sw_working_free (working);
}

GPtrArray *
sw_workings_new (const SwSolution *solution)
{
  GPtrArray *workings = g_ptr_array_new_with_free_func (free_working);
  g_autoptr (GArray) rows = sw_basis_of (solution);

  for (guint i = 0; i < rows->len; i++) {
    SwWorking *working = working_new (solution, &g_array_index (rows, SwBasis, i));
    if (working != NULL)
      g_ptr_array_add (workings, working);
  }
  return workings;
}

static gboolean
is_in (const char *key, const char *group)
{
  gsize length = strlen (group);

  return g_str_has_prefix (key, group) && (key[length] == '\0' || key[length] == '.');
}

gboolean
sw_working_known (const char *key_or_group)
{
  for (guint i = 0; i < sw_n_results (); i++) {
    if (is_in (sw_result_at (i)->key, key_or_group))
      return TRUE;
  }
  for (guint i = 0; i < sw_n_working_tables; i++) {
    for (guint j = 0; j < sw_working_tables[i]->n_rows; j++) {
      if (is_in (sw_working_tables[i]->rows[j].key, key_or_group))
        return TRUE;
    }
  }
  return FALSE;
}

gboolean
sw_working_is_in (const SwWorking *working, const char *key_or_group)
{
  return is_in (working->key, key_or_group);
}

gboolean
sw_working_closed (const SwSolution *solution)
{
  return solution->design->shape.coverage_deg >= 360;
}

gboolean
sw_working_has_star (const SwSolution *solution)
{
  return solution->design->topper.kind == SW_TOPPER_STAR;
}

gboolean
sw_working_on_foot (const SwSolution *solution)
{
  return solution->design->stand.ring_held_by == SW_HELD_BY_FOOT;
}

void
sw_working_model (SwStandModel *model, const SwSolution *solution)
{
  const SwStandGiven given = { solution->design,
                               &solution->cone,
                               &solution->wind,
                               solution->catalogue };

  sw_stand_model_init (model, &given);
}
