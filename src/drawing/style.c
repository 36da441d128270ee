// SPDX-License-Identifier: GPL-3.0-or-later
#include "drawing/style.h"

#include <math.h>

#define HEX(r, g, b)                                                                           \
  {                                                                                            \
    r / 255.0, g / 255.0, b / 255.0                                                            \
  }
#define TEXTS                                                                                  \
  .text_small = 11, .text_normal = 12.5, .text_large = 15,                                     \
  .font = "Cantarell, DejaVu Sans, sans-serif"
#define LINES(thin, middle, thick) .line_thin = thin, .line_middle = middle, .line_thick = thick
#define MM (72 / 25.4)

const SwStyle sw_style_light = {
  .inks = { [SW_INK_PAPER] = HEX (0xF7, 0xF5, 0xF0),
            [SW_INK_MAIN] = HEX (0x1D, 0x24, 0x33),
            [SW_INK_SECOND] = HEX (0x59, 0x62, 0x73),
            [SW_INK_DIMENSION] = HEX (0x2F, 0x5D, 0x8A),
            [SW_INK_GRIP] = HEX (0xB4, 0x53, 0x0A),
            [SW_INK_TREE] = HEX (0x1B, 0x6E, 0x4F),
            [SW_INK_STOP] = HEX (0xB3, 0x26, 0x1E),
            [SW_INK_WARN] = HEX (0x8A, 0x5A, 0x00),
            [SW_INK_TIP] = HEX (0x2B, 0x5F, 0xA8),
            [SW_INK_PIXEL] = HEX (0xC2, 0x7C, 0x0E),
            [SW_INK_GHOST] = HEX (0x9A, 0xA0, 0xAA) },
  TEXTS,
  LINES (1, 1.5, 2),
};

const SwStyle sw_style_dark = {
  .inks = { [SW_INK_PAPER] = HEX (0x14, 0x18, 0x21),
            [SW_INK_MAIN] = HEX (0xE9, 0xE6, 0xDE),
            [SW_INK_SECOND] = HEX (0xA3, 0xAB, 0xBA),
            [SW_INK_DIMENSION] = HEX (0x8D, 0xB8, 0xE0),
            [SW_INK_GRIP] = HEX (0xFF, 0xB0, 0x66),
            [SW_INK_TREE] = HEX (0x79, 0xCF, 0xA8),
            [SW_INK_STOP] = HEX (0xFF, 0x8A, 0x80),
            [SW_INK_WARN] = HEX (0xF2, 0xC1, 0x4E),
            [SW_INK_TIP] = HEX (0x9C, 0xC3, 0xFF),
            [SW_INK_PIXEL] = HEX (0xFF, 0xE0, 0x9A),
            [SW_INK_GHOST] = HEX (0x5C, 0x64, 0x73) },
  TEXTS,
  LINES (1, 1.5, 2),
};

const SwStyle sw_style_light_contrast = {
  .inks = { [SW_INK_PAPER] = HEX (0xFF, 0xFF, 0xFF),
            [SW_INK_MAIN] = HEX (0x00, 0x00, 0x00),
            [SW_INK_SECOND] = HEX (0x22, 0x22, 0x22),
            [SW_INK_DIMENSION] = HEX (0x00, 0x2F, 0x5F),
            [SW_INK_GRIP] = HEX (0x7A, 0x33, 0x00),
            [SW_INK_TREE] = HEX (0x00, 0x44, 0x2B),
            [SW_INK_STOP] = HEX (0x8C, 0x00, 0x00),
            [SW_INK_WARN] = HEX (0x5A, 0x38, 0x00),
            [SW_INK_TIP] = HEX (0x00, 0x2F, 0x80),
            [SW_INK_PIXEL] = HEX (0x5A, 0x38, 0x00),
            [SW_INK_GHOST] = HEX (0x66, 0x66, 0x66) },
  TEXTS,
  LINES (2, 3, 4),
};

const SwStyle sw_style_dark_contrast = {
  .inks = { [SW_INK_PAPER] = HEX (0x00, 0x00, 0x00),
            [SW_INK_MAIN] = HEX (0xFF, 0xFF, 0xFF),
            [SW_INK_SECOND] = HEX (0xDD, 0xDD, 0xDD),
            [SW_INK_DIMENSION] = HEX (0xB9, 0xDC, 0xFF),
            [SW_INK_GRIP] = HEX (0xFF, 0xC8, 0x8A),
            [SW_INK_TREE] = HEX (0x9D, 0xF0, 0xC8),
            [SW_INK_STOP] = HEX (0xFF, 0xB0, 0xA8),
            [SW_INK_WARN] = HEX (0xFF, 0xDD, 0x80),
            [SW_INK_TIP] = HEX (0xC4, 0xDC, 0xFF),
            [SW_INK_PIXEL] = HEX (0xFF, 0xF0, 0xC0),
            [SW_INK_GHOST] = HEX (0x99, 0x99, 0x99) },
  TEXTS,
  LINES (2, 3, 4),
};

/* Darker, so that every line survives a grey printer. */
const SwStyle sw_style_paper = {
  .inks = { [SW_INK_PAPER] = HEX (0xFF, 0xFF, 0xFF),
            [SW_INK_MAIN] = HEX (0x10, 0x14, 0x1E),
            [SW_INK_SECOND] = HEX (0x45, 0x4C, 0x59),
            [SW_INK_DIMENSION] = HEX (0x1F, 0x42, 0x66),
            [SW_INK_GRIP] = HEX (0x7A, 0x38, 0x06),
            [SW_INK_TREE] = HEX (0x12, 0x4D, 0x37),
            [SW_INK_STOP] = HEX (0x8F, 0x1B, 0x14),
            [SW_INK_WARN] = HEX (0x66, 0x42, 0x00),
            [SW_INK_TIP] = HEX (0x1C, 0x45, 0x80),
            [SW_INK_PIXEL] = HEX (0x6B, 0x43, 0x05),
            [SW_INK_GHOST] = HEX (0x9A, 0xA0, 0xAA) },
  .line_thin = 0.18 * MM,
  .line_middle = 0.35 * MM,
  .line_thick = 0.5 * MM,
  .text_small = 7.6,
  .text_normal = 9,
  .text_large = 12,
  .font = "Cantarell, DejaVu Sans, sans-serif",
  .paper = TRUE,
};

void
sw_style_set_ink (const SwStyle *style, cairo_t *cr, SwInkId ink)
{
  sw_style_set_ink_alpha (style, cr, ink, 1);
}

void
sw_style_set_ink_alpha (const SwStyle *style, cairo_t *cr, SwInkId ink, double alpha)
{
  SwInk colour = style->inks[ink];

  cairo_set_source_rgba (cr, colour.red, colour.green, colour.blue, alpha);
}

static double
linear (double code)
{
  return code <= 0.04045 ? code / 12.92 : pow ((code + 0.055) / 1.055, 2.4);
}

static double
luminance (SwInk ink)
{
  return 0.2126 * linear (ink.red) + 0.7152 * linear (ink.green) + 0.0722 * linear (ink.blue);
}

double
sw_ink_contrast (SwInk a, SwInk b)
{
  double first = luminance (a) + 0.05, second = luminance (b) + 0.05;

  return MAX (first, second) / MIN (first, second);
}
