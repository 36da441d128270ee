// SPDX-License-Identifier: GPL-3.0-or-later
/* pen.h: what a build sheet draws with: the solution, the language, the style, and text laid
 * out once for planning and drawing alike.
 *
 * Points (1/72 in), y down. Text metrics are not hinted, so that screen, PDF and printer break
 * lines and pages in the same places.
 */
#pragma once
#include "drawing/style.h"
#include "drawing/text.h"
#include "engine/solution.h"

#define SW_POINTS_PER_MM (72 / 25.4)

typedef struct {
  double x, y, width, height;
} SwBox;

typedef struct {
  const SwSolution *solution; /* borrowed */
  const SwLanguage *language; /* borrowed */
  const SwStyle *style;       /* borrowed */
  PangoContext *context;      /* owned */
  PangoFontDescription *font; /* owned: the style's family */
  PangoAttrList *attributes;  /* owned: of every text */
  cairo_t *cr;                /* borrowed; NULL while sheets are planned */
} SwPen;

void sw_pen_init (SwPen *pen, const SwSolution *solution, const SwLanguage *language);
void sw_pen_clear (SwPen *pen);

/* The words in the pen's language. */
const char *sw_pen_word (const SwPen *pen, const char *id) G_GNUC_FORMAT (2);

/* A sentence of the pen's language with its values, as printf () takes them; %s for numbers
 * that were formatted before. Returns: (transfer full). */
char *sw_pen_say (const SwPen *pen, const char *id, ...) G_GNUC_PRINTF (2, 3);

/* A quantity in the design's units. Returns: (transfer full). */
char *sw_pen_number (const SwPen *pen, double value, SwQuantity quantity);

/* A length as a tape measure has it: inches and sixteenths, or millimetres. Returns: (transfer
 * full). */
char *sw_pen_tape (const SwPen *pen, double metres);

/* A quantity, "–" where it is absent. Returns: (transfer full). */
char *sw_pen_number_or_dash (const SwPen *pen, double value, SwQuantity quantity);

/* A plain number with so many decimals. Returns: (transfer full). */
char *sw_pen_decimal (const SwPen *pen, double value, int decimals);

/* How a text looks and how wide it may be. */
typedef struct {
  double size;  /* points */
  double width; /* 0: one line, as long as it is */
  gboolean bold;
  gboolean one_line; /* ellipsized at `width` instead of wrapped */
  SwTextAlign align;
} SwWriting;

/* Returns: (transfer full). */
PangoLayout *sw_pen_layout (const SwPen *pen, const SwWriting *writing, const char *text);

/* Its logical size, points. */
double sw_layout_width (PangoLayout *layout);
double sw_layout_height (PangoLayout *layout);

/* Its upper left corner at x, y, in the ink given. */
void sw_pen_show (const SwPen *pen, SwInkId ink, double x, double y, PangoLayout *layout);

/* Line widths in points. */
void sw_pen_line (const SwPen *pen, SwInkId ink, double width);
void sw_pen_rule (const SwPen *pen, double x, double y, double length);
