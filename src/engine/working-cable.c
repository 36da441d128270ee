// SPDX-License-Identifier: GPL-3.0-or-later
/* working-cable.c: sizes of feeder cable, each tried in turn. */
#include "engine/fuse.h"
#include "engine/working-strip.h"
#include "engine/working-table.h"

#include <glib/gi18n.h>
#include <math.h>

/* The design's feeders of another size: what it asks of them. */
typedef struct {
  double fuse_a, spare_v;
} Cable;

static Cable
cable_with (const SwSolution *s, const SwWire *wire)
{
  SwDesign trial = *s->design;
  const SwPowerSetup *power = &trial.power;

  trial.power.feeder_ohm_per_m = wire->ohm_per_m;
  SwWay way = sw_way_at (&trial, power->cap);
  double feeder_a = way.most_feed_a * sw_wiring_shared (&trial);
  double drop_v = feeder_a * 2 * power->feeder_ohm_per_m * power->feeder_m;
  double over_v = way.lowest_v - power->min_pixel_v;
  double under_v = SW_FEEDER_LOSS_MOST * power->supply_v * (1 + 1e-9) - drop_v;
  if (isnan (way.feed_a))
    return (Cable){ NAN, -INFINITY };
  return (Cable){ sw_fuse_for (feeder_a), MIN (over_v, under_v) };
}

/* The table goes from 22 AWG, two apart. */
static const SwWire *
wire_of_awg (int awg)
{
  return &sw_wires[SW_WIRE_AWG][(22 - awg) / 2];
}

/* Thicker than the first that does: not looked at, and counted as one that does. 999 A: no
 * fuse, or no solution. */
static double
fuse_with_a (const SwSolution *s, int awg)
{
  if (awg < s->feed_plan.awg_by_load)
    return 0;
  double fuse_a = cable_with (s, wire_of_awg (awg)).fuse_a;
  return isnan (fuse_a) ? 999 : fuse_a;
}

static double
spare_with_v (const SwSolution *s, int awg)
{
  if (awg < s->feed_plan.awg_by_drop)
    return 0;
  return MAX (cable_with (s, wire_of_awg (awg)).spare_v, -999);
}

#define OF_SIZE(awg)                                                                           \
  static double fuse_##awg##_awg_a (const SwSolution *s)                                       \
  {                                                                                            \
    return fuse_with_a (s, awg);                                                               \
  }                                                                                            \
  static double spare_##awg##_awg_v (const SwSolution *s)                                      \
  {                                                                                            \
    return spare_with_v (s, awg);                                                              \
  }

OF_SIZE (18)
OF_SIZE (16)
OF_SIZE (14)
OF_SIZE (12)
OF_SIZE (10)
OF_SIZE (8)
OF_SIZE (6)

typedef gboolean (*Does) (const Cable *cable, const SwWire *wire);

static gboolean
carries (const Cable *cable, const SwWire *wire)
{
  return cable->fuse_a <= wire->max_a;
}

static gboolean
drops_little (const Cable *cable, const SwWire *wire)
{
  return cable->spare_v >= 0;
}

#define THINNEST_MM2 0.75

static double
thinnest_mm2 (const SwSolution *s, Does does)
{
  for (guint i = 0; i < sw_n_wires[SW_WIRE_MM2]; i++) {
    const SwWire *wire = &sw_wires[SW_WIRE_MM2][i];
    Cable cable = cable_with (s, wire);
    if (wire->mm2 >= THINNEST_MM2 && does (&cable, wire))
      return wire->size;
  }
  return NAN;
}

static double
mm2_by_load (const SwSolution *s)
{
  return thinnest_mm2 (s, carries);
}

static double
mm2_by_drop (const SwSolution *s)
{
  return thinnest_mm2 (s, drops_little);
}

#define ASKS(awg)                                                                              \
  {                                                                                            \
    "fuse_" #awg "_awg_a", fuse_##awg##_awg_a, 0,                                              \
      N_ ("fuse that a feeder of this size asks for; 0: not looked at"),                       \
      "strips solved with it; NEC 210.20(A)"                                                   \
  }
#define SPARES(awg)                                                                            \
  {                                                                                            \
    "spare_" #awg "_awg_v", spare_##awg##_awg_v, 0,                                            \
      N_ ("volts to spare with this size: of the lowest pixel over its least, and of a 5 % "   \
          "loss over the feeder's; 0: not looked at"),                                         \
      "strips solved with it; NEC 210.19(A), its note"                                         \
  }

static const SwWorkingTerm terms[] = {
  { "mm2_by_load",
    mm2_by_load,
    0,
    N_ ("thinnest size, from 0.75, that the feeder's fuse protects"),
    "strips solved with each; BS 7671 table 4F3A" },
  { "mm2_by_drop",
    mm2_by_drop,
    0,
    N_ ("thinnest size, from 0.75, that loses at most 5 % and keeps every pixel lit"),
    "strips solved with each; IEC 60228" },
  ASKS (18),
  ASKS (16),
  ASKS (14),
  ASKS (12),
  ASKS (10),
  ASKS (8),
  ASKS (6),
  SPARES (18),
  SPARES (16),
  SPARES (14),
  SPARES (12),
  SPARES (10),
  SPARES (8),
  SPARES (6),
};

#define SIZES_TRIED                                                                            \
  N_ ("the feeders solved with each size of the table, from 18 AWG; sizes are two apart, so "  \
      "those that do are counted up from 6; count(x, a) is 1 where a is at least x")

static const SwWorkingRow rows[] = {
  { .key = "power.cable.counts_as_awg",
    .formula = "24 − 2·max(1, count(0.95·feeder_ohm_per_m, 0.0529622, 0.0333083, 0.0209478, "
               "0.0131742, 0.0082853, 0.0052107, 0.0032770, 0.0020609, 0.0012961))",
    .how = N_ ("count(): how many of the sizes resist at least that"),
    .assumes = N_ ("ohms a metre of 22, 20, 18 … 6 AWG, copper at 20 °C") },
  { .key = "power.cable.awg_by_load",
    .formula = "4 + 2·(count(fuse_18_awg_a, 7) + count(fuse_16_awg_a, 10) + "
               "count(fuse_14_awg_a, 15) + count(fuse_12_awg_a, 20) + count(fuse_10_awg_a, "
               "30) + count(fuse_8_awg_a, 40) + count(fuse_6_awg_a, 55))",
    .how = SIZES_TRIED,
    .assumes = N_ ("7 … 55 A: the largest fuse that protects each size") },
  { .key = "power.cable.awg_by_drop",
    .formula = "4 + 2·(count(0, spare_18_awg_v) + count(0, spare_16_awg_v) + count(0, "
               "spare_14_awg_v) + count(0, spare_12_awg_v) + count(0, spare_10_awg_v) + "
               "count(0, spare_8_awg_v) + count(0, spare_6_awg_v))",
    .how = SIZES_TRIED },
  { .key = "power.cable.mm2", .formula = "max(mm2_by_load, mm2_by_drop)" },
};

const SwWorkingTable sw_working_cable = { terms,
                                          G_N_ELEMENTS (terms),
                                          rows,
                                          G_N_ELEMENTS (rows) };
