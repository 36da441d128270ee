// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/wire-table.h"

#define ASTM "ohms: ASTM B258 and IEC 60028; "
#define SMALL_CORD                                                                             \
  ASTM "amps: as the cord of nearest smaller area in BS 7671 table 4F3A, value from memory"
#define NEC_SMALL ASTM "amps: NEC 240.4(D), value from memory"
#define NEC_240 ASTM "amps: NEC 240.4(D)"
#define NEC_310 ASTM "amps: NEC table 310.16, 60 °C"
#define IEC "ohms: IEC 60228 table 3, class 5; "
#define CORD IEC "amps: BS 7671 table 4F3A, flexible cords, value from memory"

static const SwWire awg[] = {
  { 22, 0.325534, 0.0529622, 2, ASTM "amps: common practice, no source" },
  { 20, 0.517619, 0.0333083, 3, SMALL_CORD },
  { 18, 0.823047, 0.0209478, 7, NEC_SMALL },
  { 16, 1.308696, 0.0131742, 10, NEC_SMALL },
  { 14, 2.080908, 0.0082853, 15, NEC_240 },
  { 12, 3.308773, 0.0052107, 20, NEC_240 },
  { 10, 5.261155, 0.0032770, 30, NEC_240 },
  { 8, 8.365564, 0.0020609, 40, NEC_310 },
  { 6, 13.301768, 0.0012961, 55, NEC_310 },
};

static const SwWire mm2[] = {
  { 0.5, 0.5, 0.0390, 3, CORD },
  { 0.75, 0.75, 0.0260, 6, CORD },
  { 1, 1, 0.0195, 10, CORD },
  { 1.5, 1.5, 0.0133, 16, CORD },
  { 2.5, 2.5, 0.00798, 25, CORD },
  { 4, 4, 0.00495, 32, CORD },
  { 6, 6, 0.00330, 40, IEC "amps: common practice, no source" },
};

const SwWire *const sw_wires[SW_N_WIRE_SYSTEMS] = { [SW_WIRE_AWG] = awg, [SW_WIRE_MM2] = mm2 };
const guint sw_n_wires[SW_N_WIRE_SYSTEMS] = { [SW_WIRE_AWG] = G_N_ELEMENTS (awg),
                                              [SW_WIRE_MM2] = G_N_ELEMENTS (mm2) };

/* Strands are twisted, and so about 2 % longer than their cable; cold resistances are also
 * printed with two digits. */
#define AT_LEAST_OF_RESISTANCE 0.95

const SwWire *
sw_wire_like (double ohm_per_m)
{
  const SwWire *found = awg;

  for (guint i = 0; i < G_N_ELEMENTS (awg); i++) {
    if (awg[i].ohm_per_m >= AT_LEAST_OF_RESISTANCE * ohm_per_m)
      found = &awg[i];
  }
  return found;
}

char *
sw_wire_name (const SwWire *wire, SwWireSystem system)
{
  char size[G_ASCII_DTOSTR_BUF_SIZE];

  g_ascii_formatd (size, sizeof size, "%g", wire->size);
  return g_strconcat (size, system == SW_WIRE_AWG ? " AWG" : " mm²", NULL);
}
