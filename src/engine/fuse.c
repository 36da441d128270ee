// SPDX-License-Identifier: GPL-3.0-or-later
#include "engine/fuse.h"

#include <math.h>

const double sw_fuses_a[] = { 1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 40 };
const guint sw_n_fuses = G_N_ELEMENTS (sw_fuses_a);

/* A load that rounding lifted by a billionth still fits. */
#define ROUNDING (1 + 1e-9)

double
sw_fuse_for (double load_a)
{
  for (guint i = 0; i < sw_n_fuses; i++) {
    if (load_a <= SW_FUSE_LOAD_MOST * sw_fuses_a[i] * ROUNDING)
      return sw_fuses_a[i];
  }
  return NAN;
}

double
sw_fuse_load_under (double limit_a)
{
  double load_a = 0;

  for (guint i = 0; i < sw_n_fuses && sw_fuses_a[i] <= limit_a * ROUNDING; i++)
    load_a = SW_FUSE_LOAD_MOST * sw_fuses_a[i];
  return load_a;
}
