// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/catalogue-kinds.h"

#include "engine/catalogue.h"

#include <glib/gi18n-lib.h>
#include <math.h>

const char *const sw_part_groups[] = {
  N_ ("Strips"), N_ ("Star"), N_ ("Crown"), N_ ("Post and foot"), N_ ("Ring"), N_ ("Guys"),
  N_ ("Power"),  N_ ("Data"), NULL,
};

static const char *const materials[] = {
  [SW_MATERIAL_STEEL_CONDUIT] = "steel-conduit",
  [SW_MATERIAL_STEEL_PIPE] = "steel-pipe",
  [SW_MATERIAL_ALUMINIUM] = "aluminium",
  [SW_MATERIAL_PVC] = "pvc",
  NULL,
};

static const char
  *const hook_forms[] = { [SW_HOOK_EYE] = "eye", [SW_HOOK_OPEN] = "open", NULL };

static const char *const fitting_kinds[] = {
  [SW_FITTING_FLANGE] = "flange",
  [SW_FITTING_SET_FLANGE] = "set-flange",
  [SW_FITTING_BUSHING] = "bushing",
  [SW_FITTING_CONNECTOR] = "connector",
  [SW_FITTING_U_BOLT] = "u-bolt",
  [SW_FITTING_GROMMET] = "grommet",
  NULL,
};

static const char
  *const line_kinds[] = { [SW_LINE_WIRE] = "wire", [SW_LINE_ROPE] = "rope", NULL };

#define TEXT(row, field)                                                                       \
  {                                                                                            \
    .name = #field, .type = SW_FIELD_TEXT, .offset = G_STRUCT_OFFSET (row, field)              \
  }
#define NOTE(row)                                                                              \
  {                                                                                            \
    .name = "note", .type = SW_FIELD_TEXT, .offset = G_STRUCT_OFFSET (row, note),              \
    .optional = TRUE                                                                           \
  }
#define FIELD(word, what, row, field, least, most)                                             \
  {                                                                                            \
    .name = word, .type = SW_FIELD_##what, .offset = G_STRUCT_OFFSET (row, field),             \
    .low = least, .high = most                                                                 \
  }

static const SwField pipe_fields[] = {
  TEXT (SwPipe, id),
  TEXT (SwPipe, name),
  { .name = "material",
    .type = SW_FIELD_CHOICE,
    .offset = G_STRUCT_OFFSET (SwPipe, material),
    .words = materials },
  FIELD ("od", LENGTH, SwPipe, od_m, 0.005, 0.5),
  FIELD ("wall", LENGTH, SwPipe, wall_m, 0.0005, 0.05),
  FIELD ("inside", LENGTH, SwPipe, id_m, 0.001, 0.5),
  FIELD ("mass", MASS_PER_LENGTH, SwPipe, mass_kg_per_m, 0.01, 200),
  FIELD ("stock", LENGTH, SwPipe, stock_m, 0.5, 15),
  { .name = "cut_step",
    .type = SW_FIELD_LENGTH,
    .offset = G_STRUCT_OFFSET (SwPipe, cut_step_m),
    .low = 0.01,
    .high = 15,
    .optional = TRUE },
  FIELD ("price", PRICE_PER_LENGTH, SwPipe, price_per_m, 0, 1000),
  TEXT (SwPipe, source),
  NOTE (SwPipe),
};

static const SwField board_fields[] = {
  TEXT (SwBoard, id),
  TEXT (SwBoard, name),
  FIELD ("thickness", LENGTH, SwBoard, thickness_m, 0.005, 0.5),
  FIELD ("width", LENGTH, SwBoard, width_m, 0.01, 1),
  FIELD ("mass", MASS_PER_LENGTH, SwBoard, mass_kg_per_m, 0.01, 200),
  FIELD ("stock", LENGTH, SwBoard, stock_m, 0.5, 15),
  FIELD ("stock_step", LENGTH, SwBoard, stock_step_m, 0.01, 15),
  FIELD ("stock_longest", LENGTH, SwBoard, stock_longest_m, 0.5, 15),
  FIELD ("price", PRICE_PER_LENGTH, SwBoard, price_per_m, 0, 1000),
  TEXT (SwBoard, source),
  NOTE (SwBoard),
};

static const SwField hook_fields[] = {
  TEXT (SwHook, id),
  TEXT (SwHook, name),
  TEXT (SwHook, thread),
  { .name = "form",
    .type = SW_FIELD_CHOICE,
    .offset = G_STRUCT_OFFSET (SwHook, form),
    .words = hook_forms },
  FIELD ("diameter", LENGTH, SwHook, diameter_m, 0.001, 0.05),
  FIELD ("hole", LENGTH, SwHook, hole_m, 0.001, 0.06),
  FIELD ("price", PRICE, SwHook, price, 0, 10000),
  FIELD ("pack", NUMBER, SwHook, pack, 1, 10000),
  TEXT (SwHook, source),
  NOTE (SwHook),
};

static const SwField line_fields[] = {
  TEXT (SwLine, id),
  TEXT (SwLine, name),
  { .name = "kind",
    .type = SW_FIELD_CHOICE,
    .offset = G_STRUCT_OFFSET (SwLine, kind),
    .words = line_kinds },
  FIELD ("diameter", LENGTH, SwLine, diameter_m, 0.0005, 0.05),
  FIELD ("break", FORCE, SwLine, break_n, 10, 1e6),
  FIELD ("stiffness", FORCE, SwLine, stiffness_n, 100, 1e9),
  FIELD ("mass", MASS_PER_LENGTH, SwLine, mass_kg_per_m, 0.001, 10),
  FIELD ("price", PRICE_PER_LENGTH, SwLine, price_per_m, 0, 1000),
  TEXT (SwLine, source),
  NOTE (SwLine),
};

static const SwField goods_fields[] = {
  TEXT (SwGoods, id),
  TEXT (SwGoods, name),
  TEXT (SwGoods, group),
  TEXT (SwGoods, unit),
  FIELD ("price", PRICE, SwGoods, unit_price, 0, 10000),
  FIELD ("pack", NUMBER, SwGoods, pack, 0.01, 10000),
  FIELD ("mass", MASS, SwGoods, mass_kg, 0, 1000),
  TEXT (SwGoods, source),
};

#define MAYBE(word, row, field, least, most)                                                   \
  {                                                                                            \
    .name = word, .type = SW_FIELD_LENGTH, .offset = G_STRUCT_OFFSET (row, field),             \
    .low = least, .high = most, .optional = TRUE                                               \
  }

static const SwField fitting_fields[] = {
  TEXT (SwFitting, id),
  TEXT (SwFitting, name),
  { .name = "kind",
    .type = SW_FIELD_CHOICE,
    .offset = G_STRUCT_OFFSET (SwFitting, kind),
    .words = fitting_kinds },
  FIELD ("inside", LENGTH, SwFitting, inside_m, 0.001, 0.5),
  FIELD ("outside", LENGTH, SwFitting, outside_m, 0.001, 1),
  MAYBE ("height", SwFitting, height_m, 0.001, 0.5),
  MAYBE ("engagement", SwFitting, engagement_m, 0.001, 0.5),
  MAYBE ("pitch", SwFitting, pitch_m, 0.0005, 0.01),
  MAYBE ("circle", SwFitting, circle_m, 0.01, 1),
  MAYBE ("bolt", SwFitting, bolt_m, 0.002, 0.05),
  MAYBE ("hole", SwFitting, hole_m, 0.002, 0.06),
  FIELD ("price", PRICE, SwFitting, price, 0, 10000),
  FIELD ("pack", NUMBER, SwFitting, pack, 1, 10000),
  TEXT (SwFitting, source),
  NOTE (SwFitting),
};

/* A published inside diameter may differ from OD − 2·wall by rounding, and in PVC, whose wall
 * is a minimum, by twice the usual surplus of wall (up to 0.03 in to NPS 3).
 */
#define INSIDE_SLACK_M 0.0013

static const char *
check_pipe (gconstpointer row)
{
  const SwPipe *pipe = row;

  if (pipe->id_m >= pipe->od_m)
    return "inside: not smaller than od";
  if (fabs (pipe->od_m - 2 * pipe->wall_m - pipe->id_m) > INSIDE_SLACK_M)
    return "inside: does not agree with od less two walls";
  return NULL;
}

static const char *
check_board (gconstpointer row)
{
  const SwBoard *board = row;

  if (board->width_m < board->thickness_m)
    return "width: smaller than thickness";
  if (board->stock_longest_m < board->stock_m)
    return "stock_longest: shorter than stock";
  return NULL;
}

static const char *
check_hook (gconstpointer row)
{
  const SwHook *hook = row;

  return hook->hole_m < hook->diameter_m ? "hole: smaller than diameter" : NULL;
}

static gboolean
is_flange (const SwFitting *fitting)
{
  return fitting->kind == SW_FITTING_FLANGE || fitting->kind == SW_FITTING_SET_FLANGE;
}

static const char *
check_fitting (gconstpointer row)
{
  const SwFitting *fitting = row;

  if (is_flange (fitting) && !(fitting->circle_m > fitting->inside_m))
    return "circle: not wider than inside";
  if (is_flange (fitting) && !(fitting->outside_m > fitting->circle_m + fitting->hole_m))
    return "outside: does not hold the bolts";
  if (is_flange (fitting) && !(fitting->hole_m > fitting->bolt_m && fitting->bolt_m > 0))
    return "hole: not wider than bolt";
  if (is_flange (fitting) && !(fitting->height_m >= fitting->engagement_m))
    return "height: less than engagement";
  if (fitting->kind == SW_FITTING_FLANGE && !(fitting->pitch_m > 0))
    return "pitch: missing";
  return NULL;
}

static const char *
check_goods (gconstpointer row)
{
  const SwGoods *goods = row;

  if (!g_strv_contains (sw_part_groups, goods->group))
    return "group: not a group of the parts list";
  return NULL;
}

#define FIELDS(table)                                                                          \
  {                                                                                            \
    table, G_N_ELEMENTS (table)                                                                \
  }

const SwKind sw_kinds[SW_N_KINDS] = {
  [SW_KIND_PIPE] = { "pipe", "pipes.json", sizeof (SwPipe), FIELDS (pipe_fields), check_pipe },
  [SW_KIND_BOARD] = { "board",
                      "boards.json",
                      sizeof (SwBoard),
                      FIELDS (board_fields),
                      check_board },
  [SW_KIND_HOOK] = { "hook", "hooks.json", sizeof (SwHook), FIELDS (hook_fields), check_hook },
  [SW_KIND_LINE] = { "line", "lines.json", sizeof (SwLine), FIELDS (line_fields), NULL },
  [SW_KIND_GOODS] = { "goods",
                      "goods.json",
                      sizeof (SwGoods),
                      FIELDS (goods_fields),
                      check_goods },
  [SW_KIND_FITTING] = { "fitting",
                        "fittings.json",
                        sizeof (SwFitting),
                        FIELDS (fitting_fields),
                        check_fitting },
};
