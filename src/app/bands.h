// SPDX-License-Identifier: GPL-3.0-or-later
/* bands.h: a picture shown in bands, so that only those whose pixels changed are painted again.
 *
 * A drag changes a third of a drawing; what is painted at every frame goes through three copies
 * on its way to the screen, which cost more than the drawing itself.
 */
#pragma once
#include <gtk/gtk.h>

typedef struct SwBands SwBands;

SwBands *sw_bands_new (void);
void sw_bands_free (SwBands *self);

/* Takes over what changed in an RGB24 image of `factor` pixels a unit. Returns: how many bands
 * did.
 */
guint sw_bands_update (SwBands *self, cairo_surface_t *image, int factor);

/* At 0, 0. */
void sw_bands_append (const SwBands *self, GtkSnapshot *snapshot);

G_DEFINE_AUTOPTR_CLEANUP_FUNC (SwBands, sw_bands_free)
