// SPDX-License-Identifier: GPL-3.0-or-later
/* fuse.h: which blade fuse carries a load for hours, and which protects a wire.
 *
 * Sources  sizes: ISO 8820-3, blade fuses of type C and F, 1 to 40 A, 32 V direct current
 *          (35 A, which few shops have, is left out). Load: NEC 210.20(A), a load of three
 *          hours or more is at most 80 % of what its fuse is rated for
 */
#pragma once
#include <glib.h>

#define SW_FUSE_LOAD_MOST 0.8
#define SW_FUSE_MOST_V 32

/* Rising. */
extern const double sw_fuses_a[];
extern const guint sw_n_fuses;

/* The smallest that carries the load. Returns: NAN where none does. */
double sw_fuse_for (double load_a);

/* The load that the largest fuse no larger than the limit carries; 0 where there is none. */
double sw_fuse_load_under (double limit_a);
