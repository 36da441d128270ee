// SPDX-License-Identifier: GPL-3.0-or-later
#include "packet/pen.h"

#include "engine/units.h"

#include <math.h>
#include <string.h>

/* Figures as wide as one another, for columns. A word broken for want of room gets no hyphen:
 * names and titles must read back as they are. */
static PangoAttrList *
new_attributes (void)
{
  PangoAttrList *attributes = pango_attr_list_new ();

  pango_attr_list_insert (attributes, pango_attr_insert_hyphens_new (FALSE));
  pango_attr_list_insert (attributes, pango_attr_font_features_new ("tnum=1"));
  return attributes;
}

void
sw_pen_init (SwPen *pen, const SwSolution *solution, const SwLanguage *language)
{
  cairo_font_options_t *options = cairo_font_options_create ();

  *pen = (SwPen){ .solution = solution, .language = language, .style = &sw_style_paper };
  pen->font = pango_font_description_from_string (pen->style->font);
  pen->attributes = new_attributes ();
  pen->context = pango_font_map_create_context (pango_cairo_font_map_get_default ());
  cairo_font_options_set_hint_style (options, CAIRO_HINT_STYLE_NONE);
  cairo_font_options_set_hint_metrics (options, CAIRO_HINT_METRICS_OFF);
  pango_cairo_context_set_font_options (pen->context, options);
  pango_cairo_context_set_resolution (pen->context, 72);
  pango_context_set_round_glyph_positions (pen->context, FALSE);
  cairo_font_options_destroy (options);
}

void
sw_pen_clear (SwPen *pen)
{
  g_clear_object (&pen->context);
  g_clear_pointer (&pen->font, pango_font_description_free);
  g_clear_pointer (&pen->attributes, pango_attr_list_unref);
}

const char *
sw_pen_word (const SwPen *pen, const char *id)
{
  return sw_language_text (pen->language, id);
}

char *
sw_pen_say (const SwPen *pen, const char *id, ...)
{
  va_list values;
  char *said;

  va_start (values, id);
#pragma GCC diagnostic push
#pragma GCC diagnostic ignored                                                                 \
  "-Wformat-nonliteral" /* the call was checked against the msgid */
  said = g_strdup_vprintf (sw_pen_word (pen, id), values);
#pragma GCC diagnostic pop
  va_end (values);
  return said;
}

char *
sw_pen_number (const SwPen *pen, double value, SwQuantity quantity)
{
  return sw_units_format (value, quantity, pen->solution->design->units, pen->language);
}

char *
sw_pen_tape (const SwPen *pen, double metres)
{
  return sw_units_format_tape (metres, pen->solution->design->units, pen->language);
}

char *
sw_pen_number_or_dash (const SwPen *pen, double value, SwQuantity quantity)
{
  return isfinite (value) ? sw_pen_number (pen, value, quantity) : g_strdup ("–");
}

char *
sw_pen_decimal (const SwPen *pen, double value, int decimals)
{
  char format[8];
  char digits[G_ASCII_DTOSTR_BUF_SIZE + 32];
  const char *shown = digits;
  g_auto (GStrv) parts = NULL;

  g_snprintf (format, sizeof format, "%%.%df", decimals);
  g_ascii_formatd (digits, sizeof digits, format, value);
  if (digits[0] == '-' && strspn (digits, "-0.") == strlen (digits))
    shown++; /* no "-0.0" */
  parts = g_strsplit (shown, ".", 2);
  return g_strjoinv (pen->language->decimal, parts);
}

PangoLayout *
sw_pen_layout (const SwPen *pen, const SwWriting *writing, const char *text)
{
  static const PangoAlignment alignments[] = {
    [SW_TEXT_LEFT] = PANGO_ALIGN_LEFT,
    [SW_TEXT_CENTRE] = PANGO_ALIGN_CENTER,
    [SW_TEXT_RIGHT] = PANGO_ALIGN_RIGHT,
  };
  PangoLayout *layout = pango_layout_new (pen->context);
  PangoFontDescription *font = pango_font_description_copy_static (pen->font);

  pango_font_description_set_absolute_size (font, writing->size * PANGO_SCALE);
  if (writing->bold)
    pango_font_description_set_weight (font, PANGO_WEIGHT_BOLD);
  pango_layout_set_font_description (layout, font);
  pango_font_description_free (font);
  pango_layout_set_attributes (layout, pen->attributes);
  pango_layout_set_alignment (layout, alignments[writing->align]);
  if (writing->width > 0) {
    pango_layout_set_width (layout, pango_units_from_double (writing->width));
    pango_layout_set_wrap (layout, PANGO_WRAP_WORD_CHAR);
  }
  if (writing->one_line) {
    pango_layout_set_ellipsize (layout, PANGO_ELLIPSIZE_END);
    pango_layout_set_single_paragraph_mode (layout, TRUE);
  }
  pango_layout_set_text (layout, text, -1);
  return layout;
}

double
sw_layout_width (PangoLayout *layout)
{
  int width;

  pango_layout_get_size (layout, &width, NULL);
  return pango_units_to_double (width);
}

double
sw_layout_height (PangoLayout *layout)
{
  int height;

  pango_layout_get_size (layout, NULL, &height);
  return pango_units_to_double (height);
}

void
sw_pen_show (const SwPen *pen, SwInkId ink, double x, double y, PangoLayout *layout)
{
  sw_style_set_ink (pen->style, pen->cr, ink);
  cairo_move_to (pen->cr, x, y);
  pango_cairo_show_layout (pen->cr, layout);
}

void
sw_pen_line (const SwPen *pen, SwInkId ink, double width)
{
  sw_style_set_ink (pen->style, pen->cr, ink);
  cairo_set_line_width (pen->cr, width);
  cairo_stroke (pen->cr);
}

void
sw_pen_rule (const SwPen *pen, double x, double y, double length)
{
  cairo_move_to (pen->cr, x, y);
  cairo_rel_line_to (pen->cr, length, 0);
}
