// SPDX-License-Identifier: GPL-3.0-or-later
/* catalogue.h: data/…json as typed, checked rows: things of the world, each with its source.
 *
 * The rows are compiled in. A bad row is an error that names file, id and key. Lengths, masses
 * and forces are SI here; the files keep the figures as published ("od_in": 2.375). Prices are
 * USD, our own estimates.
 */
#pragma once
#include <json-glib/json-glib.h>

typedef enum {
  SW_MATERIAL_STEEL_CONDUIT,
  SW_MATERIAL_STEEL_PIPE,
  SW_MATERIAL_ALUMINIUM,
  SW_MATERIAL_PVC
} SwMaterial;

typedef struct {
  char *id;   /* "sch40-2" */
  char *name; /* "2 in steel pipe, schedule 40" */
  SwMaterial material;
  double od_m, wall_m;
  double id_m; /* OD − 2·wall; PVC: the published mean, its wall being a minimum */
  double mass_kg_per_m;
  double stock_m;    /* usual length as sold */
  double cut_step_m; /* shops also cut it to a multiple of this; 0 = whole lengths only */
  double price_per_m;
  char *source;
  char *note; /* nullable: where sources disagree */
} SwPipe;

typedef struct {
  char *id, *name;
  double thickness_m, width_m; /* actual, dry */
  double mass_kg_per_m;
  double stock_m;      /* shortest length as sold */
  double stock_step_m; /* longer ones come in these steps */
  double stock_longest_m;
  double price_per_m;
  char *source;
  char *note; /* nullable */
} SwBoard;

typedef enum {
  SW_HOOK_EYE,  /* closed: a cable tie through eye and grommet holds the strip */
  SW_HOOK_OPEN, /* the grommet slips on */
} SwHookForm;

typedef struct {
  char *id, *name;
  char *thread; /* "1/4", "m6": nuts and washers are goods "nut-1/4", "washer-1/4" */
  SwHookForm form;
  double diameter_m; /* of the shank */
  double hole_m;     /* clearance hole in the plate */
  double price;      /* a piece */
  double pack;
  char *source;
  char *note; /* nullable */
} SwHook;

typedef enum {
  SW_LINE_WIRE, /* ends in thimbles and clips */
  SW_LINE_ROPE, /* knotted */
} SwLineKind;

typedef struct {
  char *id, *name;
  SwLineKind kind;
  double diameter_m, break_n, stiffness_n, mass_kg_per_m;
  double price_per_m;
  char *source;
  char *note; /* nullable */
} SwLine;

typedef struct {
  char *id, *name;
  char *group;       /* one of sw_part_groups, English */
  char *unit;        /* "piece", "m", "bag" */
  double unit_price; /* USD; an estimate */
  double pack;       /* sold in packs of so many units */
  double mass_kg;    /* a unit; 0 where it does not matter */
  char *source;
} SwGoods;

typedef enum {
  SW_FITTING_FLANGE,     /* threaded floor flange */
  SW_FITTING_SET_FLANGE, /* holds a plain pipe by set screws */
  SW_FITTING_BUSHING,    /* screws into a larger thread, takes a smaller one */
  SW_FITTING_CONNECTOR,  /* holds a thin tube by set screws, screws into a thread */
  SW_FITTING_U_BOLT,
  SW_FITTING_GROMMET,
} SwFittingKind;

/* True sizes; of a thread, the outer diameter of the pipe that bears it. */
typedef struct {
  char *id, *name;
  SwFittingKind kind;
  double inside_m;     /* what it takes: bore, thread, width between legs, hole */
  double outside_m;    /* its own: disc, thread, width, rim */
  double height_m;     /* how far it stands off what it sits on; 0 where it does not matter */
  double engagement_m; /* how deep the pipe goes into it */
  double pitch_m;      /* of a flange's thread */
  double circle_m, bolt_m, hole_m; /* a flange's four bolts: circle, diameter, hole */
  double price;                    /* a piece */
  double pack;
  char *source;
  char *note; /* nullable */
} SwFitting;

/* N_(): the parts list's groups in their order, up to NULL. */
extern const char *const sw_part_groups[];

typedef struct SwCatalogue SwCatalogue;

/* The built-in rows; loaded once, by whichever thread asks first, never changed, never freed.
 * Returns: (transfer none) (nullable); Errors: SW_ERROR_CATALOGUE "FILE: ID: KEY: what is
 * wrong".
 */
const SwCatalogue *sw_catalogue_builtin (GError **error);

/* A catalogue from texts, for tests: file name → JSON text. A file that is not given has no
 * rows; an unknown name is an error. Errors: as above, and SW_ERROR_SYNTAX.
 */
SwCatalogue *sw_catalogue_new_from_texts (GHashTable *texts, GError **error);
void sw_catalogue_free (SwCatalogue *catalogue);

/* A catalogue of a person's own rows, none yet, with `base` below it: what it does not have is
 * looked up there. `base` is borrowed and must outlive it.
 */
SwCatalogue *sw_catalogue_new_over (const SwCatalogue *base);

/* Adds an own row: the keys of data/pipes.json, hooks.json or lines.json without `id`, and
 * `part`: "pipe", "hook" or "line", which is what a design names by id. `id` begins "my-", so
 * that it never replaces a built-in row. row: sealed. Errors: SW_ERROR_CATALOGUE "KEY: what is
 * wrong".
 */
gboolean sw_catalogue_add_own (SwCatalogue *catalogue,
                               const char *id,
                               JsonNode *row,
                               GError **error);

/* Returns: (transfer none) (nullable): an own row as it was added. */
JsonNode *sw_catalogue_own_row (const SwCatalogue *catalogue, const char *id);

/* Returns: (nullable): NULL for an unknown id. */
const SwPipe *sw_catalogue_pipe (const SwCatalogue *catalogue, const char *id);
const SwBoard *sw_catalogue_board (const SwCatalogue *catalogue, const char *id);
const SwHook *sw_catalogue_hook (const SwCatalogue *catalogue, const char *id);
const SwLine *sw_catalogue_line (const SwCatalogue *catalogue, const char *id);
const SwGoods *sw_catalogue_goods (const SwCatalogue *catalogue, const char *id);
const SwFitting *sw_catalogue_fitting (const SwCatalogue *catalogue, const char *id);

/* Fitting `i` in file order, NULL behind the last; all are built in. */
const SwFitting *sw_catalogue_nth_fitting (const SwCatalogue *catalogue, guint i);

/* All ids of a kind ("pipe", "board", "hook", "line", "goods", "fitting") in file order, own
 * ones last, each once.
 * Returns: (transfer container) (element-type utf8); empty for an unknown kind.
 */
GPtrArray *sw_catalogue_ids (const SwCatalogue *catalogue, const char *kind);

/* Returns: (nullable): the name of a row of that kind. */
const char *sw_catalogue_name (const SwCatalogue *catalogue, const char *kind, const char *id);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwCatalogue, sw_catalogue_free)
