// SPDX-License-Identifier: GPL-3.0-or-later
/* keys-shape.c: title, units and the cone. */
#include "engine/key-table.h"

#include <glib/gi18n.h>

static const char *const units_words[] = { "us", "metric", NULL };
static const char *const units_labels[] = { N_ ("Feet and inches"), N_ ("Metres"), NULL };
static const char *const gives_words[] = { "tail",  "crown_height", "ring_radius", "pixels",
                                           "pitch", "lead",         NULL };
static const char *const gives_labels[] = { N_ ("Gap at tie"),
                                            N_ ("Crown height"),
                                            N_ ("Ring radius"),
                                            N_ ("Pixels a strip"),
                                            N_ ("Pixel pitch"),
                                            N_ ("Gap at hook"),
                                            NULL };

static const SwKey rows[] = {
  { TEXT (title, 200, "Harbour Street green"),
    .group = N_ ("Shape"),
    .label = N_ ("Name"),
    .help = N_ ("What this tree is called. It stands on every sheet."),
    .words = N_ ("title") },
  { CHOICE (units, units, SW_UNITS_US),
    .label = N_ ("Units"),
    .help = N_ ("What a person sees; files and reports are always metric.") },

  { NUMBER (shape.crown_height_m, 0.3, 15, 2.86),
    EASE (1.2, 6.5),
    .quantity = SW_QUANTITY_LENGTH,
    .group = N_ ("Shape"),
    .label = N_ ("Crown height"),
    .help = N_ ("Height above ground of the circle the strips hang from."),
    .words = N_ ("tall height top pole apex") },
  { NUMBER (shape.ring_height_m, 0, 14.8, 0.25),
    EASE (0, 1),
    .quantity = SW_QUANTITY_LENGTH,
    .group = N_ ("Shape"),
    .label = N_ ("Ring height"),
    .help = N_ ("Height above ground of the ring the strips are tied to."),
    .words = N_ ("base bottom hoop") },
  { NUMBER (shape.ring_radius_m, 0.1, 10, 1.00),
    EASE (0.3, 2.5),
    .quantity = SW_QUANTITY_LENGTH,
    .group = N_ ("Shape"),
    .label = N_ ("Ring radius"),
    .help = N_ ("From the post to the middle of the ring pipe."),
    .words = N_ ("base width diameter hoop") },
  { NUMBER (shape.crown_radius_m, 0.01, 2, 0.13),
    EASE (0.03, 0.4),
    .quantity = SW_QUANTITY_SHORT_LENGTH,
    .group = N_ ("Shape"),
    .label = N_ ("Crown radius"),
    .help = N_ ("From the post to where the strips hang."),
    .words = N_ ("top plate hub spinner") },
  { WHOLE (shape.strip_count, 2, 512, 20),
    EASE (4, 48),
    .quantity = SW_QUANTITY_COUNT,
    .group = N_ ("Shape"),
    .label = N_ ("Strips"),
    .help = N_ ("How many strips hang round the tree."),
    .words = N_ ("strings columns lines number") },
  { NUMBER (shape.coverage_deg, 20, 360, 360),
    EASE (90, 360),
    .quantity = SW_QUANTITY_ANGLE,
    .group = N_ ("Shape"),
    .label = N_ ("Coverage"),
    .help = N_ ("How much of the way round the strips go. 360° is a full tree, 180° a half."),
    .words = N_ ("half full degrees wrap") },
  { NUMBER (shape.facing_deg, -180, 180, 0),
    EASE (-180, 180),
    .quantity = SW_QUANTITY_ANGLE,
    .group = N_ ("Shape"),
    .label = N_ ("Faces"),
    .help = N_ ("Which way the middle of the strips looks. 0° is towards the viewer, 90° to "
                "the viewer's right."),
    .words = N_ ("turn rotate direction front seam") },
  { CHOICE (gives_way, gives, SW_GIVES_TAIL),
    .group = N_ ("Shape"),
    .label = N_ ("Gives way"),
    .help = N_ ("What moves when the strips and the shape disagree."),
    .words = N_ ("solve adjust fit") },
};

const SwKeyTable sw_keys_of_shape = { rows, G_N_ELEMENTS (rows) };
