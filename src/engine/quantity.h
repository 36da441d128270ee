// SPDX-License-Identifier: GPL-3.0-or-later
/* quantity.h: what kind of thing a number is; decides its units on screen and paper. */
#pragma once

typedef enum {
  SW_QUANTITY_LENGTH,       /* metres; shown m, or feet and inches */
  SW_QUANTITY_SHORT_LENGTH, /* metres; shown mm, or inches and sixteenths */
  SW_QUANTITY_ANGLE,        /* degrees */
  SW_QUANTITY_COUNT,        /* whole */
  SW_QUANTITY_MASS,         /* kilograms; kg or lb */
  SW_QUANTITY_MASS_PER_LENGTH,
  SW_QUANTITY_FORCE,     /* newtons; N or lbf */
  SW_QUANTITY_STIFFNESS, /* newtons a metre of stretch */
  SW_QUANTITY_MOMENT,    /* newton metres */
  SW_QUANTITY_PRESSURE,  /* pascals */
  SW_QUANTITY_SPEED,     /* metres a second; m/s or mph */
  SW_QUANTITY_VOLTAGE,
  SW_QUANTITY_CURRENT,
  SW_QUANTITY_POWER,
  SW_QUANTITY_ENERGY, /* kWh */
  SW_QUANTITY_RESISTANCE_PER_LENGTH,
  SW_QUANTITY_SHARE, /* 0 … 1; shown as per cent */
  SW_QUANTITY_RATIO, /* a plain number */
  SW_QUANTITY_FREQUENCY,
  SW_QUANTITY_MICROSECONDS,
  SW_QUANTITY_HOURS,
  SW_QUANTITY_MILLIMETRES, /* a key in mm (ice) */
  SW_QUANTITY_PRICE,       /* in the design's currency */
  SW_QUANTITY_NONE,        /* text, choice, flag */
} SwQuantity;
